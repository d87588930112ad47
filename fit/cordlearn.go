package fit

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"
)

// A TiedCord is a piece that was cut, tied and hung on, as it came out. Its
// Finished is the length that it has now, and Tail is of no account.
type TiedCord struct {
	Cord
	Cut   float64 // mm, as it was cut
	Tails float64 // mm, both tails together, tied and set but not yet trimmed
}

// Check says what of t cannot be, as a *CordError.
func (t TiedCord) Check() error {
	if err := t.Cord.Check(); err != nil {
		return err
	}
	if !(t.Cut > 0 && t.Cut <= 100000) {
		return &CordError{"cut", num(t.Cut) + " mm", "above 0, up to 100000 mm"}
	}
	if !(t.Tails >= 0 && t.Tails < t.Cut) {
		return &CordError{"both-tails", num(t.Tails) + " mm", "0 to the length that was cut"}
	}
	if t.used() <= 0 {
		return &CordError{"cut", num(t.Cut) + " mm", "more than the " + num(t.laid()+t.Tails) + " mm that strands, wraps and tails take without any knot"}
	}
	return nil
}

// used is the cord that went into knots, in multiples of its diameter.
func (t TiedCord) used() float64 { return (t.Cut - t.Tails - t.laid()) / t.Diameter }

// What is taken for granted of the scatter from piece to piece tied alike, in
// multiples of the cord's diameter: a standard deviation, and how many pieces
// it weighs as much as. Not published, not measured: judgement.
const (
	priorScatter       = 3.0
	priorScatterWeight = 6.0
)

// A CordModel says how much cord knots use: coefficients in multiples of the
// cord's diameter, from their priors and from pieces tied.
//
// It is the linear model used = Σ count·coefficient + scatter with its conjugate
// prior: coefficients normal and scatter² inverse chi-square (Gelman et al.,
// Bayesian Data Analysis, ch. 14, from memory). A piece to come then follows
// Student's t.
type CordModel struct {
	Pieces int // that it has learnt from

	mean [NumKnots]float64
	v    [NumKnots][NumKnots]float64 // covariance of the coefficients over scatter²
	dof  float64
	sum  float64 // dof · scatter²
}

// LearnCord learns from pieces tied, each of which must stand its Check. The
// order of the pieces is of no account.
func LearnCord(tied []TiedCord) *CordModel {
	m := &CordModel{dof: priorScatterWeight}
	m.sum = priorScatter * priorScatter * (m.dof - 2)
	for k := range NumKnots {
		i := k.Info()
		m.mean[k] = i.PerD
		m.v[k][k] = i.U * i.U / (priorScatter * priorScatter)
	}
	for _, t := range tied {
		m.learn(t)
	}
	return m
}

// learn takes in one more piece.
func (m *CordModel) learn(t TiedCord) {
	x := t.knots()
	var gain [NumKnots]float64
	spread := 1.0
	for i := range gain {
		for j := range x {
			gain[i] += m.v[i][j] * x[j]
		}
	}
	for i := range x {
		spread += x[i] * gain[i]
	}
	off := t.used() - m.expect(x)
	for i := range gain {
		m.mean[i] += gain[i] * off / spread
	}
	for i := range gain {
		for j := range gain {
			m.v[i][j] -= gain[i] * gain[j] / spread
		}
	}
	m.sum += off * off / spread
	m.dof++
	m.Pieces++
}

func (m *CordModel) expect(x [NumKnots]float64) (d float64) {
	for k := range x {
		d += x[k] * m.mean[k]
	}
	return d
}

// scale is that of Student's t for a piece to come with the knots x.
func (m *CordModel) scale(x [NumKnots]float64) float64 {
	spread := 1.0
	for i := range x {
		for j := range x {
			spread += x[i] * m.v[i][j] * x[j]
		}
	}
	return math.Sqrt(m.sum / m.dof * spread)
}

// sd turns a scale of Student's t into a standard deviation.
func (m *CordModel) sd(scale float64) float64 { return scale * math.Sqrt(m.dof/(m.dof-2)) }

// quantile of Student's t of scale 1.
func (m *CordModel) quantile(p float64) float64 {
	return distuv.StudentsT{Sigma: 1, Nu: m.dof}.Quantile(p)
}

// Scatter is the standard deviation from piece to piece tied alike, in
// multiples of the cord's diameter.
func (m *CordModel) Scatter() float64 { return m.sd(math.Sqrt(m.sum / m.dof)) }

// Coefficient is what knot k uses, in multiples of the cord's diameter, with
// its standard deviation.
func (m *CordModel) Coefficient(k Knot) (perD, u float64) {
	return m.mean[k], m.sd(math.Sqrt(m.sum / m.dof * m.v[k][k]))
}

// A CordResidual holds one piece against all the others.
type CordResidual struct {
	Used float64 // mm, what its knots used
	Off  float64 // mm, more than the prior and all other pieces say
	U    float64 // mm, standard deviation of Off
}

// Doubtful says that a piece lies more than three standard deviations off. It
// counts all the same: the scatter grows and the next piece is cut longer, which
// is the safe side.
func (r CordResidual) Doubtful() bool { return math.Abs(r.Off) > 3*r.U }

// CordResiduals holds each piece against what the others say of it.
func CordResiduals(tied []TiedCord) []CordResidual {
	residuals := make([]CordResidual, len(tied))
	for i, t := range tied {
		m := LearnCord(append(slices.Clone(tied[:i]), tied[i+1:]...))
		x := t.knots()
		residuals[i] = CordResidual{
			Used: t.used() * t.Diameter,
			Off:  (t.used() - m.expect(x)) * t.Diameter,
			U:    m.sd(m.scale(x)) * t.Diameter,
		}
	}
	return residuals
}
