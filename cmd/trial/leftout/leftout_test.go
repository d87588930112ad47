package leftout

import (
	"math"
	"os"
	"testing"

	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/fit"
)

// Over the whole survey these regressions are the ones that the tool embeds, which
// are computed by other means.
func TestWholeSurveyGivesTheEmbeddedRegressions(t *testing.T) {
	f, err := os.Open("../../../testdata/survey/ansur2.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	bodies, err := truth.ReadBodies(f)
	if err != nil {
		t.Fatal(err)
	}
	whole := Regressions(bodies)
	for _, sex := range []fit.Sex{fit.Unsaid, fit.Male, fit.Female} {
		for _, inseam := range []bool{false, true} {
			got, want := whole(sex, inseam), fit.SurveyRegression(sex, inseam)
			for p := range got.Beta {
				for j := range got.Beta[p] {
					near(t, got.Beta[p][j], want.Beta[p][j])
				}
				for q := range got.Cov[p] {
					near(t, got.Cov[p][q], want.Cov[p][q])
				}
			}
		}
	}
	half := Regressions(bodies[2000:])
	if half(fit.Male, false) == whole(fit.Male, false) {
		t.Error("leaving people out changes nothing")
	}
}

func near(t *testing.T, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-6*math.Max(1, math.Abs(want)) {
		t.Errorf("%.9g, want %.9g", got, want)
	}
}
