package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// An oddity is a session file that a tired person, a spreadsheet or a slip may
// leave: the first example after some edits.
type oddity struct {
	what string
	edit string // by "; ": "table.key = value" sets a key of the first such table, "-table.key" and "-table" take out
	exit int
	want string // by blanks: check=verdict, check@end, check?key that is missing, finding!name, finding!name?key; -finding!name: not told
	says string // part of what is said of it
}

// What can be true and breaks the geometry is answered by the checks, and what is
// only odd by a finding; what cannot be is refused.
var oddities = []oddity{
	{"as it was", "", exitDone, "slip-drop=pass -finding!units -finding!odd-reading -finding!heavy", ""},
	{"pounds typed as kilograms", "climber.mass_kg = 184", exitFails, "finding!heavy?climber.mass_kg", "was it pounds?"},
	{"a tape's zero above the climber", "", exitDone, "hitch-top-reach=pass", ""},
	{"digits swapped in a repeat", "climber.stature_mm = [1742, 1472]", exitShort, "finding!repeats-disagree?climber.stature_mm", ""},
	{"five times the same", "hangs.nose_mm = [1223, 1223, 1223, 1223, 1223]", exitDone, "finding!identical-repeats?hangs.1.nose_mm", ""},
	{"one strand", "kit.tether.strands = 1", exitFails, "tether-strength=fail", ""},
	{"cord that no standard rates, without its label", "kit.tether.cord_mm = 9; -kit.tether.strength_kn", exitShort, "tether-strength=unknown tether-strength?kit.tether.strength_kn", "cord strength"},
	{"metres of rope typed as mm", "rope.least_above_mm = 3", exitFails, "finding!units?rope.least_above_mm slip-force=fail", "was it metres?"},
	{"a tether outside its own bounds", "kit.tether.bounds_mm = [200, 400]", exitDone, "slip-drop=pass", "set to 135 mm, outside its bounds of 200 mm to 400 mm"},

	{"a bridge as long as its rings are apart", "kit.main_bridge.length_mm = [364]", exitFile, "", "a bridge of 364 mm does not reach across rings 364 mm apart"},
	{"a bridge shorter than its rings are apart", "kit.main_bridge.length_mm = [300]", exitFile, "", "a bridge of 300 mm does not reach"},
	{"a bridge 1 mm longer than its rings are apart", "kit.main_bridge.length_mm = [365]", exitShort, "finding!bridge-nearly-straight finding!readings-disagree?kit.main_bridge.length_mm garda-release-room=tight", ""},
	{"a foot loop that does not reach the rope", "kit.foot_loop.length_mm = [200]", exitFails, "finding!out-of-domain?kit.foot_loop.length_mm garda-under-connector=unknown tether-lets-thigh-level=unknown slip-drop=unknown slip-force=unknown", "do not reach each other"},
	{"a foot loop that just reaches", "kit.foot_loop.length_mm = [250]", exitFails, "garda-under-connector=tight tether-lets-thigh-level=tight finding!readings-disagree?hangs.1.garda_level_mm", ""},
	{"a foot loop that just reaches, its pose not read", "kit.foot_loop.length_mm = [250]; -hangs.garda_level_mm; -hangs.garda_taut_mm", exitFails, "garda-low-reach=fail slip-drop=fail", ""},
	{"a foot loop as tall as a person", "kit.foot_loop.length_mm = [1700]", exitFails, "slip-drop=fail slip-drop@below knee-bend-on-tether=fail knee-bend-on-tether@leg garda-under-connector=tight", ""},
	{"a foot loop as tall as a person, its pose not read", "kit.foot_loop.length_mm = [1700]; -hangs.garda_level_mm; -hangs.garda_taut_mm", exitFails, "slip-drop=fail slip-drop@below tether-lets-thigh-level=fail", ""},
	{"Garda hitch taut read 500 mm low", "hangs.garda_taut_mm = [494, 499]", exitFails, "slip-drop=fail slip-drop@below finding!readings-disagree?hangs.1.garda_taut_mm", ""},
	{"left and right hitch read the wrong way round", "hangs.left_loop_top_mm = [1490, 1497]; hangs.left_hitch_top_mm = [1584, 1584, 1582]; hangs.right_loop_top_mm = [1498, 1497, 1496]; hangs.right_hitch_top_mm = [1600, 1603]", exitDone, "hitch-pair-level@right hitch-top-reach@right hitch-handhold@left", ""},
	{"a loop's top above its hitch's", "hangs.left_loop_top_mm = [1620]", exitFile, "", "hangs.1.left_loop_top_mm, hangs.1.left_hitch_top_mm"},
	{"a connector upside down", "hangs.connector_top_mm = [1000]", exitFile, "", "hangs.1.connector_bottom_mm, hangs.1.connector_top_mm"},
	{"heights in inches", "hangs.hip_mm = [20.7]; hangs.nose_mm = [48.1]; hangs.wrist_up_mm = [63.9]; hangs.wrist_down_mm = [16.3]; hangs.connector_top_mm = [45.6]; hangs.connector_bottom_mm = [41.4]; hangs.left_loop_top_mm = [58.9]; hangs.left_hitch_top_mm = [63]; hangs.right_loop_top_mm = [58.8]; hangs.right_hitch_top_mm = [62.3]; hangs.main_rings_mm = [21.5]; hangs.backup_rings_mm = [20.6]; hangs.soles_mm = [-9.4]; hangs.ground_mm = [-18.3]; hangs.garda_level_mm = [38]; hangs.garda_taut_mm = [39.2]", exitFails, "finding!units?hangs.1.nose_mm finding!units?hangs.1.hip_mm", "was it inches?"},
	{"heights in centimetres", "hangs.hip_mm = [52.6]; hangs.nose_mm = [122.3]; hangs.wrist_up_mm = [162.4]; hangs.wrist_down_mm = [41.4]; hangs.connector_top_mm = [115.9]; hangs.connector_bottom_mm = [105]; hangs.left_loop_top_mm = [149.7]; hangs.left_hitch_top_mm = [160.2]; hangs.right_loop_top_mm = [149.4]; hangs.right_hitch_top_mm = [158.3]; hangs.main_rings_mm = [54.6]; hangs.backup_rings_mm = [52.4]; hangs.soles_mm = [-23.9]; hangs.ground_mm = [-46.5]; hangs.garda_level_mm = [96.7]; hangs.garda_taut_mm = [99.7]", exitFails, "finding!units?hangs.1.nose_mm", "was it centimetres?"},
	{"a thigh in inches", "climber.thigh_mm = [17.2]", exitFails, "finding!units?climber.thigh_mm finding!unlikely-reading?climber.thigh_mm", "was it inches?"},
	{"only the Garda heights in inches", "hangs.garda_level_mm = [38]; hangs.garda_taut_mm = [39.2]", exitFails, "finding!readings-disagree?hangs.1.garda_level_mm finding!readings-disagree?hangs.1.garda_taut_mm slip-drop=fail", ""},
	{"the tape upside down", "hangs.hip_mm = [1226]; hangs.nose_mm = [529]", exitFile, "", "is the tape the right way up?"},
	{"soles above the hip", "hangs.soles_mm = [600]", exitDone, "finding!odd-reading?hangs.1.soles_mm", ""},
	{"ground above the soles", "hangs.ground_mm = [-100]", exitFile, "", "the soles are below the ground"},
	{"the rope behind the hip point", "rope.ahead_mm = [-150]", exitShort, "finding!odd-reading?rope.ahead_mm", ""},
	{"the rope through the hip point", "rope.ahead_mm = [0]", exitDone, "-finding!odd-reading", ""},
	{"smaller than the survey", "climber.stature_mm = [1250]", exitShort, "finding!outside-survey?climber.stature_mm", ""},
	{"taller than the survey", "climber.stature_mm = [2150]", exitShort, "finding!outside-survey?climber.stature_mm", ""},
	{"no hip point", "-hangs.hip_mm", exitShort, "hitch-top-reach=unknown hitch-top-reach?hangs.1.hip_mm slip-drop?hangs.1.hip_mm garda-under-connector?hangs.1.hip_mm hitch-handhold=pass hitch-pair-level=pass", ""},
	{"only the stature", "-climber.thigh_mm; -climber.shin_mm; -climber.waist_mm; -climber.mass_kg; -hangs; -rope; -kit.main_bridge; -kit.hitch_left; -kit.hitch_right; -kit.garda; -kit.foot_loop; -kit.tether; -kit.backup_bridge", exitShort, "hitch-top-reach=unknown slip-drop=unknown two-load-paths=unknown hitch-wraps=unknown", ""},
	{"nothing but the format", "-session; -tape; -climber; -hangs; -rope; -kit.main_bridge; -kit.hitch_left; -kit.hitch_right; -kit.garda; -kit.foot_loop; -kit.tether; -kit.backup_bridge", exitFile, "", "session.id is missing"},
	{"too heavy for any rope", "climber.mass_kg = 240; limits.peak-force = 4", exitFails, "slip-force=fail finding!heavy", "no rope is long enough where the limit is under twice the climber's weight"},
	{"rings shared with the main bridge", "kit.backup_bridge.own_rings = false", exitFails, "two-load-paths=fail", "rings"},
	{"whose rings they are is left out", "-kit.backup_bridge.own_rings", exitShort, "two-load-paths=unknown two-load-paths?kit.backup_bridge.own_rings", ""},
	{"no tether", "-kit.tether", exitFails, "two-load-paths=fail tether-strength=unknown", ""},
	{"no backup bridge", "-kit.backup_bridge", exitFails, "two-load-paths=fail", ""},
	{"one hitch", "-kit.hitch_right; -hangs.right_loop_top_mm; -hangs.right_hitch_top_mm", exitFails, "two-load-paths=fail hitch-top-reach=unknown hitch-top-reach@right hitch-wraps=unknown", ""},
	{"cord ÷ rope at its limit", "kit.hitch_left.cord_mm = 6.6; kit.hitch_right.cord_mm = 6.6", exitDone, "hitch-cord-bite=tight", ""},
	{"started in 2099", "session.started = 2099-05-07T09:04:00Z", exitDone, "slip-drop=pass finding!odd-reading?session.started", "which clock is off?"},
	{"finished before it started", "session.finished = 2026-05-06T09:04:00Z", exitDone, "slip-drop=pass finding!odd-reading?session.finished", "before it started"},
	{"follows a session that is nowhere", `session.follows = "01KPFXRYR03M4T5W6X7Y8Z9A0B"`, exitDone, "slip-drop=pass", ""},
	{"a name that is a command to terminals", `session.climber = "\u001b[2J\u202e<script>"`, exitDone, "slip-drop=pass", ""},

	// Not from any list: what else came to mind.
	{"a hang without a reading", "hangs.hip_mm = []; hangs.nose_mm = []; hangs.wrist_up_mm = []", exitShort, "hitch-top-reach=unknown", ""},
	{"99 readings a mile apart", "hangs.hip_mm = [" + strings.Repeat("100000, -100000, ", 49) + "526]", exitFails, "finding!repeats-disagree?hangs.1.hip_mm", ""},
	{"a hip at the end of any tape", "hangs.hip_mm = [-100000]", exitFails, "finding!unlikely-reading", ""},
	{"a nose at the hip", "hangs.nose_mm = [526]; hangs.hip_mm = [526]", exitDone, "finding!unlikely-reading?hangs.1.nose_mm connector-at-face=fail", ""},
	{"a thigh of 100 m", "climber.thigh_mm = [100000]", exitFails, "finding!unlikely-reading?climber.thigh_mm", ""},
	{"a thigh of a hair", "climber.thigh_mm = [0.001]", exitFails, "finding!unlikely-reading?climber.thigh_mm", ""},
	{"a shin longer than the leg", "climber.shin_mm = [1100]", exitFails, "finding!unlikely-reading?climber.shin_mm", ""},
	{"a foot loop of 100 m", "kit.foot_loop.length_mm = [100000]", exitFails, "slip-drop=fail", ""},
	{"a tether of 100 m", "kit.tether.length_mm = [100000]", exitShort, "finding!readings-disagree?kit.tether.length_mm", ""},
	{"a bridge of 100 m", "kit.main_bridge.length_mm = [100000]", exitShort, "finding!readings-disagree?kit.main_bridge.length_mm", ""},
	{"rings wider than bounds reach", "kit.main_bridge.bounds_mm = [100, 200]", exitDone, "slip-drop=pass", "its rings keep it at 365 mm or more"},
	{"the rope 5 m ahead", "rope.ahead_mm = [5000]", exitFails, "finding!out-of-domain", ""},
	{"100 m of rope above", "rope.least_above_mm = 100000; rope.drill_above_mm = 100000", exitDone, "slip-force=pass drill-ground-room=fail", ""},
	{"stretch at the end of the label", "rope.elongation_percent = 15", exitDone, "slip-force=pass", ""},
	{"hardly any stretch", "rope.elongation_percent = 0.3", exitFails, "slip-force=fail", ""},
	{"rope as thick as its connector", "rope.diameter_mm = 20; kit.garda.inside_width_mm = 20", exitFails, "garda-connector-size=fail", ""},
	{"cord as thick as the rope", "kit.hitch_left.cord_mm = 11", exitFails, "hitch-cord-grip=fail hitch-cord-grip@left", ""},
	{"a hitch of one wrap", "kit.hitch_right.wraps = 1", exitFails, "hitch-wraps=fail hitch-wraps@right", ""},
	{"a child on an adult's kit", "climber.mass_kg = 25; climber.stature_mm = [1200]", exitShort, "finding!outside-survey", ""},
	{"the coarsest of tapes", `tape.class = "III"; tape.division_mm = 10`, exitDone, "garda-release-room=pass", ""},
	{"stature told otherwise than measured", "climber.stature_told_mm = 1200", exitDone, "-finding!outside-survey", ""},
	{"a raised wrist under the nose", "hangs.wrist_up_mm = [1100]", exitFails, "hitch-top-reach=fail finding!unlikely-reading?hangs.1.wrist_up_mm", ""},
	{"soles on the ground", "hangs.soles_mm = [-465]; hangs.ground_mm = [-465]", exitDone, "drill-ground-room=fail", ""},
	{"ground 90 m below", "hangs.ground_mm = [-90000]", exitDone, "drill-ground-room=pass", ""},
	{"a lean that no back can do", "posture.lean_deg = [80, 6]", exitShort, "hitch-top-reach=tight", ""},
	{"a posture of no uncertainty", "posture.shin_angle_deg = [0, 0]", exitFile, "", "posture.shin_angle_deg"},
	{"an uncertainty as wide as the leg", "posture.behind_rope_mm = [60, 500]", exitShort, "slip-force=tight", ""},
	{"a bridge set below its rings", "changes.piece = \"main_bridge\"; changes.to_mm = 300; changes.after_hang = 1", exitFile, "", "changes.1.to_mm"},
	{"a piece changed before anybody hung", "changes.piece = \"tether\"; changes.to_mm = 200; changes.after_hang = 0", exitFile, "", "changes.1.after_hang"},
	{"a change that was laid on as something else", "changes.piece = \"tether\"; changes.to_mm = 200; changes.measured_mm = [400]; changes.after_hang = 1", exitFails, "slip-drop=fail", ""},
	{"a length kept from nowhere", "kept.key = \"climber.thigh_mm\"", exitShort, "slip-drop=tight", ""},
	{"a length kept that is not there", "kept.key = \"kit.garda.to_tether_mm\"; -kit.garda.to_tether_mm", exitDone, "-finding!odd-reading", ""},
	{"a limit at its bound", "limits.connector-clearance = 10", exitDone, "garda-under-connector=pass", ""},
	{"limits that leave one value", "limits.least-over = 0; limits.most-over = 0", exitFile, "", "limits."},
}

func TestOddFilesAreNeverPassedInSilence(t *testing.T) {
	example, err := os.ReadFile("../../testdata/sessions/examples/1-good-kit.toml")
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "f.toml")
	for _, o := range oddities {
		t.Run(o.what, func(t *testing.T) {
			if err := os.WriteFile(path, []byte(edited(t, string(example), o.edit)), 0o600); err != nil {
				t.Fatal(err)
			}
			var out bytes.Buffer
			code, stderr := call(&out, "check", "--json", path)
			if code != o.exit {
				t.Errorf("exit %d, want %d: %s", code, o.exit, stderr)
			}
			said := out.String() + stderr
			var a checked
			if err := json.Unmarshal(out.Bytes(), &a); err != nil {
				t.Fatalf("%v in %s", err, &out) // NaN and infinity are no JSON
			}
			for _, want := range strings.Fields(o.want) {
				if !a.tells(want) {
					t.Errorf("not %s in\n%s", want, a)
				}
			}
			for _, command := range [][]string{{"check", path}, {"check", "--unit", "in", path}, {"advise", path}, {"drill", path}, {"show", path}, {"card", path}} {
				out.Reset()
				code, stderr := call(&out, command...)
				if code == exitFault || code == exitUsage || code == exitFile && o.exit != exitFile {
					t.Errorf("%v: exit %d: %s", command[:len(command)-1], code, stderr)
				}
				said += out.String() + stderr
			}
			if plain := strings.Join(strings.Fields(said), " "); !strings.Contains(plain, o.says) {
				t.Errorf("nowhere says %q", o.says)
			}
			if i := strings.IndexAny(said, "\x1b\u202e"); i >= 0 {
				t.Errorf("sends %q to the terminal", said[i:min(len(said), i+20)])
			}
			for _, no := range []string{"NaN", "+Inf", "-Inf", "%!"} {
				if strings.Contains(said, no) && !strings.Contains(o.says, no) {
					t.Errorf("says %s", no)
				}
			}
		})
	}
}

// checked is what check --json tells of a file.
type checked struct {
	Outcome, Error string
	Checks         []struct {
		Name, Verdict, At string
		Missing           []string
	}
	Findings []struct {
		Name   string
		Inputs []string
	}
}

func (a checked) String() string {
	s := a.Outcome + a.Error
	for _, c := range a.Checks {
		if c.Verdict != "pass" {
			s += fmt.Sprintf("\n%s=%s @%s ?%v", c.Name, c.Verdict, c.At, c.Missing)
		}
	}
	for _, f := range a.Findings {
		s += fmt.Sprintf("\n%s %v", f.Name, f.Inputs)
	}
	return s
}

// tells says whether one word of an oddity's want is so.
func (a checked) tells(want string) bool {
	want, not := strings.CutPrefix(want, "-")
	if name, found := strings.CutPrefix(want, "finding!"); found {
		name, key, _ := strings.Cut(name, "?")
		for _, f := range a.Findings {
			if f.Name == name && (key == "" || slices.Contains(f.Inputs, key)) {
				return !not
			}
		}
		return not
	}
	for _, c := range a.Checks {
		verdict, isVerdict := strings.CutPrefix(want, c.Name+"=")
		at, isAt := strings.CutPrefix(want, c.Name+"@")
		key, isKey := strings.CutPrefix(want, c.Name+"?")
		switch {
		case isVerdict:
			return c.Verdict == verdict
		case isAt:
			return c.At == at
		case isKey:
			return slices.Contains(c.Missing, key)
		}
	}
	return false
}

// edited is a session file after the edits of an oddity.
func edited(t *testing.T, text, edits string) string {
	t.Helper()
	if edits == "" {
		return text
	}
	for _, e := range strings.Split(edits, "; ") {
		out, gone := strings.CutPrefix(e, "-")
		path, _, _ := strings.Cut(out, " = ")
		table, key := path, ""
		if at := strings.LastIndexByte(path, '.'); at > 0 && !strings.HasPrefix(path, "kit.") || strings.Count(path, ".") == 2 {
			table, key = path[:at], path[at+1:]
		}
		start, end := tableIn(text, table)
		if start < 0 {
			if gone {
				t.Fatalf("no [%s]", table)
			}
			head := "\n[" + table + "]\n"
			if table == "changes" || table == "kept" {
				head = "\n[[" + table + "]]\n"
			}
			start, text = len(text), text+head
			end = len(text)
		}
		if key == "" {
			text = text[:start] + text[end:]
			continue
		}
		line := strings.TrimPrefix(out, table+".") + "\n"
		if gone {
			line = ""
		}
		at := strings.Index(text[start:end], "\n"+key+" =")
		switch {
		case at >= 0:
			from := start + at + 1
			to := from + strings.IndexByte(text[from:], '\n') + 1
			text = text[:from] + line + text[to:]
		case gone:
			t.Fatalf("no %s in [%s]", key, table)
		default:
			text = strings.TrimRight(text[:end], "\n") + "\n" + line + "\n" + text[end:]
		}
	}
	return text
}

// tableIn is from where to where the first table of that name goes; -1 where
// there is none.
func tableIn(text, table string) (start, end int) {
	for _, head := range []string{"\n[" + table + "]\n", "\n[[" + table + "]]\n"} {
		if start = strings.Index(text, head); start < 0 {
			continue
		}
		if next := strings.Index(text[start+len(head)-1:], "\n["); next >= 0 {
			return start, start + len(head) - 1 + next
		}
		return start, len(text)
	}
	return -1, -1
}
