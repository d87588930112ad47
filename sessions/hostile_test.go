package sessions

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"
)

// full is a session file with every key.
func full(t testing.TB) string {
	t.Helper()
	data, err := os.ReadFile("../testdata/sessions/full.toml")
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// set replaces a key's value in the full file; the key counts from the header
// of its table on. A value of "" takes the key out.
func set(t testing.TB, text, table, key, value string) string {
	t.Helper()
	start := 0
	if table != "" {
		if start = strings.Index(text, "\n["+table+"]"); start < 0 {
			start = strings.Index(text, "\n[["+table+"]]")
		}
	}
	at := strings.Index(text[max(0, start):], "\n"+key+" =")
	if start < 0 || at < 0 {
		t.Fatalf("no key %s in [%s]", key, table)
	}
	at += start + 1
	end := at + strings.Index(text[at:], "\n") + 1
	line := ""
	if value != "" {
		line = key + " = " + value + "\n"
	}
	return text[:at] + line + text[end:]
}

func TestFullFileHasEveryKey(t *testing.T) {
	s, err := Decode("full.toml", []byte(full(t)))
	if err != nil {
		t.Fatal(err)
	}
	written := string(Encode(s))
	for _, k := range Keys() {
		_, key, _ := cutLast(k.Path)
		if strings.HasPrefix(k.Path, "limits.") || strings.HasSuffix(k.Path, "cord_mm") {
			continue
		}
		if !strings.Contains(full(t), key+" = ") || !strings.Contains(written, key+" = ") {
			t.Errorf("%s is missing from the full file, or from what is written of it", k.Path)
		}
	}
}

// One value that cannot be, and the words that the answer has to have beside
// the file, the line and the key.
func TestValuesThatCannotBe(t *testing.T) {
	for _, c := range []struct {
		table, key, value string
		want              string // "" where it is accepted
	}{
		{"climber", "mass_kg", "-84", "-84; accepted is a number from 25 to 250 kg"},
		{"climber", "mass_kg", "0", "never 0"},
		{"climber", "mass_kg", "184", ""},
		{"climber", "mass_kg", "84500", "84500 g would be 84.5 kg"},
		{"climber", "mass_kg", `"84"`, `the text "84"; accepted is a number`},
		{"climber", "mass_u_kg", "-1", "-1"},
		{"climber", "mass_u_kg", "0", ""},
		{"hangs", "hip_mm", "[nan]", "NaN"},
		{"hangs", "hip_mm", "[inf]", "+Inf"},
		{"hangs", "hip_mm", "[-inf]", "-Inf"},
		{"hangs", "hip_mm", "[1220, nan]", "NaN (entry 2)"},
		{"hangs", "hip_mm", "[1220, 1e308]", "1e+308 (entry 2); accepted is a number from -100000 to 100000 mm"},
		{"hangs", "hip_mm", "[1e-320]", ""},
		{"hangs", "hip_mm", "[-0.0]", ""},
		{"hangs", "hip_mm", "[0]", ""},
		{"hangs", "hip_mm", "[-310]", ""},
		{"hangs", "hip_mm", "[]", ""},
		{"climber", "thigh_mm", "[0]", "never 0"},
		{"climber", "thigh_mm", "[1e-320]", "never 0"},
		{"climber", "thigh_mm", "[-415]", "-415"},
		{"climber", "stature_mm", "[1742, 1472]", ""},
		{"hangs", "nose_mm", "[1908, 1908, 1908, 1908, 1908]", ""},
		{"hangs", "hip_mm", "[" + strings.Repeat("1220, ", 100) + "]", "a list of 100; accepted is a list of at most 99"},
		{"hangs", "hip_mm", "[" + strings.Repeat("1220, ", 99) + "]", ""},
		{"hangs", "hip_mm", "1220", "the number 1220; accepted is a list of at most 99 numbers, one for each time it was taken"},
		{"hangs", "hip_mm", "1220", "did you mean [1220]?"},
		{"hangs", "hip_mm", `["1220"]`, `the text "1220"`},
		{"hangs", "hip_mm", `[true]`, `the truth value true`},
		{"hangs", "hip_mm", `[[1220]]`, `a list of 1`},
		{"hangs", "hip_mm", `[{a = 1}]`, `a table`},
		{"hangs", "hip_mm", `2026-04-18`, `the date 2026-04-18`},
		{"hangs", "hip_mm", "[1220, 1214.5]", ""},
		{"rope", "elongation_percent", "0", "never 0"},
		{"rope", "elongation_percent", "0.021", "0.021 as a fraction would be 2.1 %"},
		{"rope", "least_above_mm", "0", "never 0"},
		{"rope", "least_above_mm", "-2000", "above 0, up to 100000 mm"},
		{"rope", "least_above_mm", "2", ""},
		{"rope", "diameter_mm", "0", "never 0"},
		{"rope", "diameter_mm", "0.449", "0.449 in would be 11.4 mm"},
		{"tape", "division_mm", "0", "never 0"},
		{"tape", "division_mm", "-1", "-1"},
		{"tape", "division_mm", "100", "100"},
		{"tape", "division_mm", "", "tape.division_mm is missing"},
		{"tape", "class", `"2"`, `the text "2"; accepted is "I", "II" or "III"`},
		{"tape", "class", `"ii"`, ""},
		{"tape", "class", `""`, `""`},
		{"tape", "class", ``, "tape.class is missing"},
		{"tape", "class", `2`, "the number 2"},
		{"kit.hitch_left", "wraps", "0", "never 0"},
		{"kit.hitch_left", "wraps", "-3", "-3"},
		{"kit.hitch_left", "wraps", "6.5", "6.5; accepted is a whole number from 1 to 12"},
		{"kit.hitch_left", "wraps", "6.0", ""},
		{"kit.tether", "strands", "0", "never 0"},
		{"kit.tether", "strands", "1", ""},
		{"kit.tether", "strands", "2.5", "2.5"},
		{"kit.tether", "cord_mm", "9", ""},
		{"kit.tether", "strength_kn", "13500", "13500 N would be 13.5 kN"},
		{"kit.tether", "bounds_mm", "[500, 200]", "[500, 200]; accepted is the least length first"},
		{"kit.tether", "bounds_mm", "[]", "an empty list; accepted is a list of two numbers"},
		{"kit.tether", "bounds_mm", "[300]", "a list of 1"},
		{"kit.tether", "bounds_mm", "[200, 300, 400]", "a list of 3"},
		{"kit.tether", "bounds_mm", "[-50, 500]", "-50 (entry 1)"},
		{"kit.tether", "bounds_mm", "[200, inf]", "+Inf (entry 2)"},
		{"kit.tether", "length_mm", "[5000]", ""},
		{"kit.tether", "change", `"retie"`, `did you mean "re-tie"?`},
		{"kit.tether", "change", `"slide"`, `did you mean "slides"?`},
		{"kit.tether", "change", `"re-tie "`, `accepted is "fixed", "slides" or "re-tie"`},
		{"kit.garda", "inside_width_mm", "3.81", "3.81 cm would be 38.1 mm"},
		{"limits", "connector-clearance", "5", "from 10 to 100 mm"},
		{"limits", "connector-clearance", "nan", "NaN"},
		{"limits", "connector-clearance", "[30]", "a list of 1"},
		{"climber", "stature_mm", "[174.2]", "174.2 cm would be 1742 mm"},
		{"climber", "stature_mm", "[68.6]", "68.6 in would be 1742.44 mm"},
		{"climber", "stature_mm", "[5.9]", "5.9 ft would be 1798.32 mm"},
		{"climber", "stature_mm", "[1.742]", "1.742 m would be 1742 mm"},
		{"climber", "stature_mm", "[1250, 2150]", ""},
		{"climber", "sex", `"F"`, `did you mean "f"?`},
		{"climber", "sex", `"male"`, `accepted is "m", "f" or "unsaid"`},
		{"climber", "sex", ``, ""},
		{"rope", "ahead_mm", "[-150]", ""},
		{"rope", "ahead_mm", "[0]", ""},
		{"kit.backup_bridge", "own_rings", `"yes"`, `the text "yes"; accepted is true or false`},
		{"kit.backup_bridge", "own_rings", ``, ""},
		{"session", "id", `""`, `the text ""; accepted is an id of 26`},
		{"session", "id", `"../../etc/passwd"`, "../../etc/passwd"},
		{"session", "id", `"` + strings.Repeat("A", 300) + `"`, "AAAA"},
		{"session", "id", `"01kpfxryr03m4t5w6x7y8z9a0b"`, "capital letters"},
		{"session", "id", `"8ZZZZZZZZZZZZZZZZZZZZZZZZZ"`, "8ZZZ"},
		{"session", "id", ``, "session.id is missing"},
		{"session", "follows", `"x"`, `the text "x"`},
		{"session", "follows", `""`, ""},
		{"session", "follows", `"01KPFXRYR03M4T5W6X7Y8Z9A0B"`, "the session's own id"},
		{"session", "started", "2026-04-18T09:12:00", "without a zone; accepted is a date and time with its zone"},
		{"session", "started", "2026-04-18", "the date 2026-04-18"},
		{"session", "started", "09:12:00", "the time of day 09:12:00"},
		{"session", "started", `"2026-04-18T09:12:00Z"`, "the text"},
		{"session", "started", "1899-04-18T09:12:00Z", "a year from 1900 to 2199"},
		{"session", "started", "2099-04-18T09:12:00+02:00", ""},
		{"session", "place", `"` + strings.Repeat("x", 2001) + `"`, "a text of 2001 bytes"},
		{"session", "place", `"\u001b[31m \u202e <script> \" é 🌲"`, ""},
		{"session", "purpose", `"retune"`, `did you mean "re-tune"?`},
		{"session", "unit", `"inch"`, `accepted is "mm", "cm" or "in"`},
		{"kit", "inspected", "2026-04-18T00:00:00Z", "accepted is a date, such as"},
		{"posture", "shin_angle_deg", "[0, 1.9]", "at least 2 deg"},
		{"posture", "shin_angle_deg", "[0, 2]", ""},
		{"posture", "shin_angle_deg", "5", "the number 5; accepted is a list of two numbers"},
		{"posture", "shin_angle_deg", "[nan, 5]", "NaN (entry 1)"},
		{"changes", "piece", `"bridge"`, `"main_bridge"`},
		{"changes", "to_mm", "0", "never 0"},
		{"changes", "to_mm", "", "changes.1.to_mm is missing"},
		{"changes", "after_hang", "0", "the number 0"},
		{"changes", "after_hang", "2", "accepted is the number of a hang of this session (it has 1)"},
		{"changes", "after_hang", "1.0", "the number 1"},
		{"kept", "key", `"hangs.1.hip_mm"`, "climber.thigh_mm"},
		{"kept", "key", `"rope.ahead_mm"`, "climber.thigh_mm"},
		{"kept", "key", `"climber.mass_kg"`, "climber.thigh_mm"},
		{"kept", "key", `"kit.tether.cord_mm"`, ""},
		{"kept", "key", `"kit.garda.inside_width_mm"`, ""},
		{"kept", "taken", "2026-03-02T00:00:00Z", "accepted is a date"},
		{"kept", "taken", "", ""},
		{"drill", "steps", "[ { held = true } ]", "drill.steps.1.name is missing"},
		{"drill", "steps", "[ 5 ]", "tables [[drill.steps]]"},
		{"sign_off", "outcome", `"ok"`, `accepted is "fail", "unknown", "tight" or "pass"`},
		{"", "format", "2", "written by a newer hangtape; this one reads format 1"},
		{"", "format", `"1"`, `the text "1"; accepted is the whole number 1`},
		{"", "format", "1.0", "accepted is the whole number 1"},
		{"", "format", "0", "accepted is the whole number 1"},
		{"", "format", "", "format is missing"},
	} {
		t.Run(fmt.Sprintf("%s.%s=%.40s", c.table, c.key, c.value), func(t *testing.T) {
			text := full(t)
			if c.key == "steps" {
				text = strings.Replace(text, between2(text, "steps = [\n", "]\n"), "steps = []\n", 1)
			}
			text = set(t, text, c.table, c.key, c.value)
			_, err := Decode("f.toml", []byte(text))
			if c.want == "" {
				if err != nil {
					t.Fatalf("refused: %v", err)
				}
				return
			}
			var file *FileError
			if !errors.As(err, &file) {
				t.Fatalf("error %v, want a FileError", err)
			}
			if len(file.Faults) != 1 {
				t.Errorf("%d faults, want 1: %v", len(file.Faults), err)
			}
			f := file.Faults[0]
			if !strings.Contains(err.Error(), c.want) {
				t.Errorf("got  %v\nwant %s", err, c.want)
			}
			if !strings.HasSuffix(f.Key, c.key) && !strings.Contains(f.Key, c.key+".") {
				t.Errorf("key %q, want %s", f.Key, c.key)
			}
			if c.value != "" && !strings.HasPrefix(strings.Split(text, "\n")[f.Line-1], c.key+" =") {
				t.Errorf("line %d is not that of %s", f.Line, c.key)
			}
		})
	}
}

// between2 is text from a to the next b, both included.
func between2(text, a, b string) string {
	from := strings.Index(text, a)
	to := from + strings.Index(text[from:], b) + len(b)
	return text[from:to]
}

func TestLimitsAgainstEachOther(t *testing.T) {
	for moved, want := range map[string]string{
		"least-over = 40\nmost-over = 25": "limits.least-over is 40",
		"most-over = 25":                  "",
		"most-drop = 0.6":                 "0.6 m would be 600 mm",
		"peak-force = 6000":               "6000 N would be 6 kN",
		"conector-clearance = 30":         "did you mean limits.connector-clearance?",
	} {
		text := strings.Replace(full(t), "connector-clearance = 30", moved, 1)
		_, err := Decode("f.toml", []byte(text))
		if want == "" && err != nil || want != "" && (err == nil || !strings.Contains(err.Error(), want)) {
			t.Errorf("%q: got %v, want %q", moved, err, want)
		}
	}
}
