package fit_test

import (
	"flag"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"

	"example.com/hangtape/fit"
)

var long = flag.Bool("long", false, "draw a million times where propagation is held against draws")

// drawn are the quantities that the checks are made of.
var drawn = []struct {
	name string
	of   func(*fit.State) float64
}{
	{"wrist above left hitch", func(s *fit.State) float64 { return s.WristUp - s.HitchTop[0] }},
	{"connector above nose", func(s *fit.State) float64 { return s.ConnectorTop - s.Nose }},
	{"Garda low above wrist", func(s *fit.State) float64 { return s.YLow - s.WristDown }},
	{"foot loop above waist", func(s *fit.State) float64 { return s.FootLoop - s.Waist }},
	{"Garda at level under connector", func(s *fit.State) float64 { return s.ConnectorBottom - s.YLevel }},
	{"Garda at taut under connector", func(s *fit.State) float64 { return s.ConnectorBottom - s.YTaut }},
	{"over", func(s *fit.State) float64 { return s.Over }},
	{"gain", func(s *fit.State) float64 { return s.Gain }},
	{"slack", func(s *fit.State) float64 { return s.Slack }},
	{"leg reach", func(s *fit.State) float64 { return s.LegReach - s.LegDistance }},
	{"flexion", func(s *fit.State) float64 { return s.Flexion }},
	{"peak force", func(s *fit.State) float64 { return s.PeakForce }},
	{"stretch", func(s *fit.State) float64 { return s.Stretch }},
	{"cord on rope", func(s *fit.State) float64 { return s.HitchCord[0] / s.RopeDiameter }},
}

// Draws of all inputs from normal distributions, correlated ones together,
// against propagation and its second-order shift. Source of the method: JCGM
// 101. The bounds are wider where the body is estimated, since its
// uncertainties bend the model.
func TestPropagationAgainstDraws(t *testing.T) {
	rs := everyLength()
	for r, list := range map[fit.Reading][]float64{
		fit.Stature: {1765}, fit.Waist: {1110}, fit.Nose: {2218}, fit.WristUp: {2640}, fit.WristDown: {1412},
		fit.GardaLevel: {1966}, fit.KneeLevel: {1504}, fit.GardaTaut: {1976},
	} {
		rs[r] = list
	}
	read := labelled(fitting(rs))
	for _, r := range []fit.Reading{
		fit.Thigh, fit.Shin, fit.Waist, fit.Nose, fit.WristUp, fit.WristDown,
		fit.GardaLevel, fit.KneeLevel, fit.GardaTaut, fit.Ahead,
	} {
		delete(rs, r)
	}
	estimated := labelled(fitting(rs))
	n := 20_000
	if *long {
		n = 1_000_000
	}
	for _, c := range []struct {
		name            string
		f               *fit.Fitting
		uWithin, within float64 // of u, relative and in parts of it
	}{
		{"all read", read, 0.10, 0.1},
		{"all estimated", estimated, 0.25, 0.35},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := fit.NewModel(c.f, fit.Options{})
			of := func(x []float64, s *fit.State, out []float64) {
				for i := range drawn {
					out[i] = drawn[i].of(s)
				}
			}
			x, u := m.Values(), make([]float64, len(m.Inputs))
			for i, in := range m.Inputs {
				u[i] = in.U
			}
			p := m.Propagate(len(drawn), of)
			mean, sd := draw(func(x, out []float64) {
				var s fit.State
				m.At(x, &s)
				of(x, &s, out)
			}, x, u, m.Blocks(), len(drawn), n)
			for o, q := range drawn {
				got, shift := p.U(o)
				if !(math.Abs(got/sd[o]-1) <= c.uWithin) {
					t.Errorf("%s: u %.4g, of %d draws %.4g", q.name, got, n, sd[o])
				}
				if want := p.Values[o] + shift; !(math.Abs(mean[o]-want) <= c.within*got) {
					t.Errorf("%s: value and shift %.6g, mean of %d draws %.6g, u %.4g", q.name, want, n, mean[o], got)
				}
			}
		})
	}
}

// draw is the mean and the standard deviation of each of the outputs of f over
// n draws of the inputs; a draw out of an output's domain is no draw of it.
func draw(f func(x, out []float64), x, u []float64, blocks []fit.Block, outputs, n int) (mean, sd []float64) {
	rng := rand.New(rand.NewPCG(1, 2))
	roots := make([]mat.TriDense, len(blocks))
	for i, b := range blocks {
		corr := mat.NewSymDense(len(b.Corr), nil)
		for j, row := range b.Corr {
			for k := range row {
				corr.SetSym(j, k, row[k])
			}
		}
		var chol mat.Cholesky
		if !chol.Factorize(corr) {
			panic("a block whose correlations cannot be")
		}
		chol.LTo(&roots[i])
	}
	z, at, out := make([]float64, len(x)), make([]float64, len(x)), make([]float64, outputs)
	mean, sd = make([]float64, outputs), make([]float64, outputs)
	counts := make([]float64, outputs)
	for range n {
		for i := range z {
			z[i] = rng.NormFloat64()
		}
		for b, block := range blocks {
			size := len(block.Corr)
			part := z[block.Start : block.Start+size]
			var together mat.VecDense
			together.MulVec(&roots[b], mat.NewVecDense(size, append([]float64(nil), part...)))
			copy(part, together.RawVector().Data)
		}
		for i := range at {
			at[i] = x[i]
			if u[i] > 0 {
				at[i] += u[i] * z[i]
			}
		}
		f(at, out)
		for o, v := range out {
			if math.IsNaN(v) {
				continue
			}
			counts[o]++
			d := v - mean[o]
			mean[o] += d / counts[o]
			sd[o] += d * (v - mean[o])
		}
	}
	for o := range sd {
		sd[o] = math.Sqrt(sd[o] / (counts[o] - 1))
	}
	return mean, sd
}

// labelled tells f's rope, cord and climber.
func labelled(f *fit.Fitting) *fit.Fitting {
	f.Mass = fit.Some(80)
	f.Rope = fit.Rope{Diameter: fit.Some(11.4), Elongation: fit.Some(2.2), LeastAbove: fit.Some(4000), DrillAbove: fit.Some(7000)}
	f.Kit.Pieces[fit.PieceHitchLeft].Cord = fit.Some(8)
	return f
}
