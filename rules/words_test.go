package rules

import (
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/hangtape/internal/golden"
)

var update = flag.Bool("update", false, "write the golden files afresh")

// exampleChecks are the verdicts of an example session, as the answers beside
// the sessions tell them; what is null there is unknown here.
func exampleChecks(t *testing.T, path string) []Check {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var report struct {
		Checks []struct {
			Check
			Has    *float64 `json:"has"`
			Needs  *float64 `json:"needs"`
			Margin *float64 `json:"margin"`
			U      *float64 `json:"u"`
			Guard  *float64 `json:"guard"`
		}
	}
	if err := json.Unmarshal(data, &report); err != nil {
		t.Fatal(err)
	}
	num := func(v *float64) Num {
		if v == nil {
			return Num(math.NaN())
		}
		return Num(*v)
	}
	var checks []Check
	for _, c := range report.Checks {
		c.Check.Has, c.Check.Needs, c.Check.Margin = num(c.Has), num(c.Needs), num(c.Margin)
		c.Check.U, c.Check.Guard = num(c.U), num(c.Guard)
		checks = append(checks, c.Check)
	}
	return checks
}

// The sentences of the examples, as they were read and found good.
func TestSentencesOfTheExamples(t *testing.T) {
	files, err := filepath.Glob("../testdata/sessions/examples/*.check.json")
	if err != nil || len(files) == 0 {
		t.Fatal("no examples:", err)
	}
	var b strings.Builder
	for i, file := range files {
		unit := []string{"mm", "cm", "in"}[i%3]
		checks := exampleChecks(t, file)
		fmt.Fprintf(&b, "%s in %s: %s\n", strings.TrimSuffix(filepath.Base(file), ".check.json"), unit, Tally(checks))
		for _, c := range checks {
			fmt.Fprintf(&b, "%s %s: %s\n", strings.ToUpper(string(c.Verdict)), c.Name, Sentence(c, unit))
		}
		b.WriteString("\n")
	}
	golden.Hold(t, filepath.Join("testdata", "sentences.golden"), b.String(), *update)
}

// What the examples do not show.
func TestSentence(t *testing.T) {
	for _, c := range []struct {
		name  string
		check Check
		want  string
	}{
		{"never short by nothing",
			Check{Name: "hitch-handhold", Unit: "mm", At: "left", Verdict: Fail, Has: 304.7, Needs: 305, Margin: -0.3, U: 4},
			"the left loop is 304.7 mm long; at least 305.0 mm is needed (short by 0.3 ± 4.0 mm)"},
		{"never sure with what there is already",
			Check{Name: "hitch-handhold", Unit: "mm", At: "left", Verdict: Tight, Has: 313.1, Needs: 305, Margin: 8.1, U: 5, Guard: 8.4},
			"the left loop is 313.1 mm long; at least 305.0 mm is needed (8.1 ± 5.0 mm to spare; 8.4 mm would make it sure)"},
		{"under the connector, and above it",
			Check{Name: "garda-under-connector", Unit: "mm", Verdict: Fail, Has: -28, Needs: 25, Margin: -53, U: 10},
			"with the thigh level the Garda hitch's top is 28 mm above the main connector's bottom; at least 25 mm under is needed (short by 53 ± 10 mm)"},
		{"a moved limit turns the words",
			Check{Name: "tether-lets-thigh-level", Unit: "mm", Verdict: Fail, Has: -5, Needs: 10, Margin: -15, U: 6},
			"the tether stops the Garda hitch 5 mm short of thigh level; at least 10 mm past is needed (short by 15 ± 6 mm)"},
		{"a tether that catches too early",
			Check{Name: "slip-drop", Unit: "mm", At: "below", Verdict: Fail, Has: -12, Needs: 0, Margin: -12, U: 9},
			"after a stand the tether is 12 mm too short; it must not catch before the hitches do (short by 12 ± 9 mm)"},
		{"one way only",
			Check{Name: "two-load-paths", Verdict: Fail, Has: 1, Needs: 2, Margin: -1},
			"ways from saddle to rope that share no part: 1; 2 are needed (short by 1)"},
		{"what to read and what to tell",
			Check{Name: "slip-force", Unit: "kN", Verdict: Unknown, Has: Num(math.NaN()), Needs: 6,
				Missing: []string{"hangs.2.hip_mm", "climber.mass_kg", "rope.least_above_mm"}},
			"not known: read the hip point, hang 2; tell the climber's mass and the least rope above"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := Sentence(c.check, "mm"); got != c.want {
				t.Errorf("\n got %q\nwant %q", got, c.want)
			}
		})
	}
}

// Every check at each of its ends has words of its own for every verdict, with
// no placeholder left over.
func TestEveryEndHasWords(t *testing.T) {
	for id := range NumChecks {
		info := id.Info()
		for _, e := range id.Ends() {
			end := e.At()
			for _, v := range []Verdict{Pass, Tight, Fail, Unknown} {
				for _, sign := range []Num{1, -1} {
					c := Check{Name: info.Name, At: end, Unit: id.UnitAt(end), Verdict: v, Has: sign * 7, Needs: sign * 3, Margin: sign * 4, U: 1, Guard: 2}
					text := Sentence(c, "mm")
					if text == "" || strings.ContainsAny(text, "{}|") {
						t.Errorf("%s %s %s: %q", info.Name, end, v, text)
					}
				}
			}
		}
	}
}

func TestInputNames(t *testing.T) {
	for key, want := range map[string]string{
		"hangs.2.hip_mm":             "hip point, hang 2",
		"climber.thigh_mm":           "thigh",
		"kit.tether.length_mm":       "backup tether",
		"kit.hitch_left.cord_mm":     "left friction hitch, cord diameter",
		"kit.hitch_right":            "right hitch loop",
		"changes.1.measured_mm":      "length after change 1, laid on again",
		"rope.least_above_mm":        "least rope above",
		"kit.backup_bridge.rings_mm": "backup bridge, ring to ring",
		"posture.behind_rope_mm":     "hip behind the rope when standing",
		"something.else":             "something.else",
	} {
		if got := InputName(key); got != want {
			t.Errorf("InputName(%q) = %q, want %q", key, got, want)
		}
	}
}
