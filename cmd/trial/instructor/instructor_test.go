package instructor

import (
	"math"
	"os"
	"testing"

	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/fit"
)

func bodies(t *testing.T) []truth.Body {
	t.Helper()
	f, err := os.Open("../../../testdata/survey/ansur2.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := truth.ReadBodies(f)
	if err != nil {
		t.Fatal(err)
	}
	return all
}

var limits = truth.Limits{ConnectorClearance: 25, ReleaseRoom: 40, LeastOver: -20, MostOver: 50, MostFlexion: 120, MostDrop: 600, PeakForce: 6}

func session(b truth.Body, plan Plan) *Session {
	d := truth.NewDice(5, b.Row, 0, 1)
	w := truth.Draw(d, b)
	k, _ := w.BestKit(truth.SchoolBounds, &limits)
	return New(d, &w, k, truth.SchoolBounds, plan)
}

func TestEveryReadingHasAMarkOfItsOwn(t *testing.T) {
	seen := map[truth.Mark]fit.Reading{}
	for r := range fit.NumReadings {
		if other, twice := seen[marks[r]]; twice {
			t.Errorf("%v and %v are the same mark", r, other)
		}
		seen[marks[r]] = r
	}
}

// Readings lie about the truth without leaning to one side, and about as far from
// it as the tool assumes of that kind of mark: 8 mm on the body, 3 mm on hardware,
// 5 mm for the Garda hitch held in a pose.
func TestReadingsLieAboutTheTruth(t *testing.T) {
	plan := FullPlan
	plan.Blunders = 0
	var sum, square, n [fit.NumReadings]float64
	for _, b := range bodies(t)[:300] {
		s := session(b, plan)
		s.ReadAll()
		hang := s.world.Hang(s.Kit)
		for r := range fit.NumReadings {
			numbers, zero := s.Fit.Laid[r], 0.0
			if r.IsHeight() {
				numbers, zero = s.Fit.Hangs[0].Heights[r], s.zero
			}
			for _, v := range numbers {
				off := v - zero - hang.Where(marks[r], truth.Wobble{})
				sum[r], square[r], n[r] = sum[r]+off, square[r]+off*off, n[r]+1
			}
		}
	}
	assumed := map[fit.Spread]float64{fit.Body: 8, fit.Hardware: 3, fit.Garda: 5}
	for r := range fit.NumReadings {
		if r == fit.Inseam {
			continue
		}
		mean, rms := sum[r]/n[r], math.Sqrt(square[r]/n[r])
		if v := assumed[r.Info().Spread]; math.Abs(mean) > v/8 || rms < 0.7*v || rms > 1.15*v {
			t.Errorf("%v: mean %.2f, spread %.2f about the truth; assumed %g", r, mean, rms, v)
		}
	}
}

func TestSetReadsOnlyWhatTheChangeTouched(t *testing.T) {
	s := session(bodies(t)[0], FullPlan)
	s.ReadAll()
	s.Set([]Setting{{fit.PieceTether, 150}})
	hang := s.Fit.Hangs[1]
	for r, numbers := range hang.Heights {
		read := fit.Reading(r) == fit.Hip || fit.Reading(r) == fit.GardaTaut
		if (len(numbers) > 0) != read {
			t.Errorf("%v: read %v after the tether was changed", fit.Reading(r), numbers)
		}
	}
	c := s.Fit.Changes[0]
	if c.Piece != fit.PieceTether || c.To != 150 || c.AfterHang != 1 || len(c.Measured) == 0 || math.Abs(s.Kit.Lengths[truth.Tether]-150) > 25 {
		t.Errorf("change written as %+v, truly %v", c, s.Kit.Lengths)
	}
}

func TestRetake(t *testing.T) {
	s := session(bodies(t)[0], FullPlan)
	s.ReadAll()
	s.Set([]Setting{{fit.PieceTether, 150}, {fit.PieceHitchLeft, 300}})
	for r := range fit.NumReadings {
		before := s.Numbers
		if key := s.Key(r); !s.Retake(key) || s.Numbers == before {
			t.Errorf("%s was not read again", key)
		}
	}
	s.Shift(fit.Nose, 50)
	if !s.Retake("changes.1.measured_mm") {
		t.Error("a changed tether can be laid on again")
	}
	for _, key := range []string{"", "rope.diameter_mm", "changes.9.measured_mm", "posture.set_mm"} {
		if s.Retake(key) {
			t.Errorf("%q names no reading", key)
		}
	}
}
