package sideview

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

var update = flag.Bool("update", false, "write the goldens anew")

// looks are drawings to be looked at: a collision, a margin, the tape for a
// height and for a laid length, narrow and wide.
func looks(t testing.TB) map[string]func(ascii bool) (*fit.Shape, Options) {
	fair := bodies(t, 3)[1]
	crowded := bodies(t, 3)[1]
	crowded.Laid[fit.Tether] = []float64{270}
	look := func(f *fit.Fitting, p fit.Pose, o Options) func(bool) (*fit.Shape, Options) {
		return func(ascii bool) (*fit.Shape, Options) {
			sh := stateOf(t, f).Shape(p)
			o.ASCII = ascii
			return &sh, o
		}
	}
	release := &rules.Check{Name: "garda-release-room", Has: -45, Needs: 40, Margin: -85, Unit: "mm"}
	under := &rules.Check{Name: "garda-under-connector", Has: 131, Needs: 25, Margin: 106, Unit: "mm"}
	return map[string]func(bool) (*fit.Shape, Options){
		"seated-nose_60x30":         look(fair, fit.Seated, Options{Width: 60, Height: 30, Unit: "in", Reading: fit.Nose}),
		"seated_30x20":              look(fair, fit.Seated, Options{Width: 30, Height: 20, Unit: "mm"}),
		"level-under_44x20":         look(fair, fit.ThighLevel, Options{Width: 44, Height: 20, Unit: "mm", Check: under, Reading: fit.GardaLevel}),
		"level-under_80x40":         look(fair, fit.ThighLevel, Options{Width: 80, Height: 40, Unit: "mm", Check: under}),
		"taut-release-clash_60x34":  look(crowded, fit.TetherTaut, Options{Width: 60, Height: 34, Unit: "mm", Check: release}),
		"standing_44x20":            look(fair, fit.Standing, Options{Width: 44, Height: 20, Unit: "cm"}),
		"on-tether-foot-loop_60x34": look(fair, fit.OnTether, Options{Width: 60, Height: 34, Unit: "mm", Reading: fit.FootLoop}),
	}
}

func TestLooks(t *testing.T) {
	for name, look := range looks(t) {
		for set, ascii := range map[string]bool{"ascii": true, "unicode": false} {
			sh, o := look(ascii)
			d, err := Draw(sh, o)
			if err != nil {
				t.Fatal(err)
			}
			got := strings.Join(d.Lines, "\n") + "\n\n" + strings.Join(Describe(sh, o), "\n") + "\n"
			path := filepath.Join("testdata", name+"_"+set+".golden")
			if *update {
				if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if got != string(want) {
				t.Errorf("%s:\n%s\nwant\n%s", path, got, want)
			}
		}
	}
}
