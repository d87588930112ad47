package fit_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"example.com/hangtape/fit"
)

// Estimates against the conditional normal distribution, solved anew as a joint
// one of body parts and of what was read of them.
func TestEstimatesAgainstTheJointDistribution(t *testing.T) {
	const sole, stature = 25, 1720
	f := fitting(readings{
		fit.Stature: {stature}, fit.Hip: {1500}, fit.Shin: {560}, fit.WristDown: {1380}, fit.Waist: {1100},
	})
	f.Sex = fit.Female
	m, s := stateOf(f)
	u := func(key string) float64 { return input(m, key).U }

	reg := fit.SurveyRegression(fit.Female, false)
	mu := func(p fit.BodyPart) float64 { return reg.Beta[p][0] + reg.Beta[p][1]*stature }
	read := []struct {
		part  fit.BodyPart
		value float64
		r     float64
	}{
		{fit.PartShin, 560 - sole, sq(u("climber.shin_mm")) + sq(u("posture.sole_mm"))},
		{fit.PartDown, 1380 - 1500, sq(u("hangs.1.wrist_down_mm")) + sq(u("hangs.1.hip_mm"))},
		{fit.PartWaist, 1100 - sole, sq(u("climber.waist_mm")) + sq(u("posture.sole_mm"))},
	}
	told := []fit.BodyPart{fit.PartThigh, fit.PartNose, fit.PartFull}
	oo, uo := mat.NewDense(3, 3, nil), mat.NewDense(3, 3, nil)
	off := mat.NewVecDense(3, nil)
	for i, a := range read {
		off.SetVec(i, a.value-mu(a.part))
		for j, b := range read {
			oo.Set(i, j, reg.Cov[a.part][b.part])
		}
		oo.Set(i, i, oo.At(i, i)+a.r)
		for j, p := range told {
			uo.Set(j, i, reg.Cov[p][a.part])
		}
	}
	var inverse, gain mat.Dense
	var shift mat.VecDense
	if err := inverse.Inverse(oo); err != nil {
		t.Fatal(err)
	}
	gain.Mul(uo, &inverse)
	shift.MulVec(&gain, off)

	lean := math.Cos(8 * math.Pi / 180)
	near(t, "thigh", s.Thigh, mu(fit.PartThigh)+shift.AtVec(0), 1e-9)
	near(t, "nose", s.Nose, (mu(fit.PartNose)+shift.AtVec(1))*lean, 1e-9)
	near(t, "full reach", s.Full, mu(fit.PartFull)+shift.AtVec(2), 1e-9)
	near(t, "raised wrist", s.WristUp, s.Nose+0.86*(s.Full*lean-s.Nose), 1e-9)

	// With what was read uncertain by R, what is left of a part is uncertain by
	// C_uu - S·C_ou, the conditional variance; stature adds its own, and the
	// sole that two readings share counts once for both.
	for i, c := range []struct {
		name string
		of   func(*fit.State) float64
	}{
		{"thigh", func(s *fit.State) float64 { return s.Thigh }},
		{"full reach", func(s *fit.State) float64 { return s.Full }},
	} {
		row := []int{0, 2}[i]
		p := told[row]
		variance, slope := reg.Cov[p][p], reg.Beta[p][1]
		for j, a := range read {
			variance -= gain.At(row, j) * uo.At(row, j)
			slope -= gain.At(row, j) * reg.Beta[a.part][1]
		}
		variance += sq(slope * u("climber.stature_mm"))
		variance += 2 * gain.At(row, 0) * gain.At(row, 2) * sq(u("posture.sole_mm"))
		got, _ := uOf(f, c.of)
		near(t, "u of the "+c.name, got, math.Sqrt(variance), 1e-9)
	}
}

// A hanging arm hangs plumb whatever the trunk does; nose and raised wrist lean.
func TestHangingWristDoesNotLean(t *testing.T) {
	rs := readings{fit.Stature: {1720}, fit.Hip: {1500}}
	_, upright := stateOf(fitting(rs))
	f := fitting(rs)
	f.Posture[fit.Lean] = fit.Setting{V: 30, U: 6, Given: true}
	_, leant := stateOf(f)
	near(t, "hanging wrist", leant.WristDown, upright.WristDown, 0)
	ratio := math.Cos(30*math.Pi/180) / math.Cos(8*math.Pi/180)
	near(t, "nose", leant.Nose, upright.Nose*ratio, 1e-9)
	near(t, "raised wrist", leant.WristUp, upright.WristUp*ratio, 1e-9)
}

// Nothing is estimated without a stature, and never a height without its hip.
func TestNoEstimateWithoutStature(t *testing.T) {
	_, s := stateOf(fitting(readings{fit.Hip: {1500}, fit.Shin: {540}}))
	for name, v := range map[string]float64{"thigh": s.Thigh, "nose": s.Nose, "raised wrist": s.WristUp, "hanging wrist": s.WristDown, "waist": s.Waist} {
		if !math.IsNaN(v) {
			t.Errorf("%s is %v without a stature", name, v)
		}
	}
	_, s = stateOf(fitting(readings{fit.Stature: {1720}, fit.Nose: {2200}}))
	if !math.IsNaN(s.Nose) {
		t.Errorf("the nose is %v above a hip that was not read", s.Nose)
	}
}

// What the others say of a measured part is what would be estimated of it, had
// it not been read.
func TestLikelyIsTheEstimateWithoutTheReading(t *testing.T) {
	for l, c := range map[fit.Likely]struct {
		of   func(*fit.State) float64
		keys []string // of what the reading rests on
	}{
		fit.LikelyThigh:     {func(s *fit.State) float64 { return s.Thigh }, []string{"climber.thigh_mm"}},
		fit.LikelyShin:      {func(s *fit.State) float64 { return s.Shin }, []string{"climber.shin_mm"}},
		fit.LikelyWaist:     {func(s *fit.State) float64 { return s.Waist }, []string{"climber.waist_mm"}},
		fit.LikelyWristDown: {func(s *fit.State) float64 { return s.WristDown }, []string{"hangs.1.wrist_down_mm", "hangs.1.hip_mm"}},
	} {
		rs := everyReading()
		m, s := stateOf(fitting(rs))
		p := m.Propagate(1, func(x []float64, s *fit.State, out []float64) { out[0] = m.Offset(l, x, s) })
		delete(rs, l.Reading())
		_, without := stateOf(fitting(rs))
		near(t, l.Reading().String(), p.Values[0], c.of(s)-c.of(without), 1e-9)
		want, _ := uOf(fitting(rs), c.of)
		for _, key := range c.keys {
			want = math.Hypot(want, input(m, key).U)
		}
		got, _ := p.U(0)
		near(t, "u of "+l.Reading().String(), got, want, 1e-9)
	}
}

func sq(x float64) float64 { return x * x }
