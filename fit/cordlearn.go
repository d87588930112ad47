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

// Check says what of t cannot be, as a *CordError; nil where t can be learnt from.
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

// What is taken for granted of the scatter from piece to piece tied alike: its
// root mean square in diameters of the cord, and how many pieces that weighs as
// much as. Not published, not measured: judgement.
const (
	priorScatter       = 3.0
	priorScatterWeight = 6.0
)

// The scatters that are tried, in diameters of the cord, each a little larger
// than the one before.
const (
	leastScatter = 0.2
	mostScatter  = 300.0
	scatterSteps = 150
)

// A CordModel says how much cord knots use: coefficients in multiples of the
// cord's diameter, from their priors and from pieces tied.
//
// It is the linear model used = Σ count·coefficient + scatter. The coefficients
// have normal priors, and scatter² an inverse chi-square one, independent of
// each other, so that pieces tied alike teach nothing of a knot that they have
// not. For each scatter the rest is linear least squares with a prior; the
// scatters are weighed by how well the pieces fit (Gelman et al., Bayesian Data
// Analysis, ch. 14, from memory).
type CordModel struct {
	Pieces int // that it has learnt from
	tried  []scatterTried
}

// A scatterTried is what follows if the scatter is that.
type scatterTried struct {
	scatter, weight float64
	mean            [NumKnots]float64
	cov             [NumKnots][NumKnots]float64
}

// LearnCord learns from pieces tied, each of which must stand its Check. The
// order of the pieces is of no account.
func LearnCord(tied []TiedCord) *CordModel {
	m := &CordModel{Pieces: len(tied), tried: make([]scatterTried, scatterSteps)}
	best := math.Inf(-1)
	for i := range m.tried {
		t := &m.tried[i]
		t.scatter = leastScatter * math.Pow(mostScatter/leastScatter, float64(i)/(scatterSteps-1))
		for k := range NumKnots {
			t.mean[k], t.cov[k][k] = k.Info().PerD, k.Info().U*k.Info().U
		}
		// The weight is a logarithm until all are known; the density is over log
		// scatter, whose steps are equal. Sum is the squares of the pieces that the
		// prior stands for, so that its mean square is priorScatter's.
		const sum = priorScatter * priorScatter * (priorScatterWeight - 2)
		t.weight = -priorScatterWeight*math.Log(t.scatter) - sum/(2*t.scatter*t.scatter)
		for _, piece := range tied {
			t.weight += t.learn(piece.knots(), piece.used())
		}
		best = max(best, t.weight)
	}
	var total float64
	for i := range m.tried {
		m.tried[i].weight = math.Exp(m.tried[i].weight - best)
		total += m.tried[i].weight
	}
	for i := range m.tried {
		m.tried[i].weight /= total
	}
	return m
}

// learn takes in a piece with the knots x that used so much cord, and tells the
// logarithm of how likely that was.
func (t *scatterTried) learn(x [NumKnots]float64, used float64) float64 {
	mean, variance := t.expect(x)
	var gain [NumKnots]float64
	for i := range gain {
		for j := range x {
			gain[i] += t.cov[i][j] * x[j] / variance
		}
	}
	for i := range gain {
		t.mean[i] += gain[i] * (used - mean)
		for j := range gain {
			t.cov[i][j] -= gain[i] * gain[j] * variance
		}
	}
	return -(math.Log(variance) + (used-mean)*(used-mean)/variance) / 2
}

// expect is the mean and the variance of what a piece with the knots x uses.
func (t *scatterTried) expect(x [NumKnots]float64) (mean, variance float64) {
	variance = t.scatter * t.scatter
	for i := range x {
		mean += x[i] * t.mean[i]
		for j := range x {
			variance += x[i] * t.cov[i][j] * x[j]
		}
	}
	return mean, variance
}

// expect is the mean and the standard deviation of what a piece to come with
// the knots x uses.
func (m *CordModel) expect(x [NumKnots]float64) (mean, sd float64) {
	var square float64
	for i := range m.tried {
		t := &m.tried[i]
		at, variance := t.expect(x)
		mean += t.weight * at
		square += t.weight * (at*at + variance)
	}
	return mean, math.Sqrt(max(0, square-mean*mean))
}

// quantile is what a piece to come with the knots x uses no more than with
// probability p.
func (m *CordModel) quantile(x [NumKnots]float64, p float64) float64 {
	var weights, means, sds []float64
	for i := range m.tried {
		if t := &m.tried[i]; t.weight > 1e-9 {
			mean, variance := t.expect(x)
			weights, means, sds = append(weights, t.weight), append(means, mean), append(sds, math.Sqrt(variance))
		}
	}
	mean, sd := m.expect(x)
	low, high := mean-50*sd, mean+50*sd
	for high-low > 1e-6*sd {
		at := (low + high) / 2
		var below float64
		for i, w := range weights {
			below += w * distuv.UnitNormal.CDF((at-means[i])/sds[i])
		}
		if below < p {
			low = at
		} else {
			high = at
		}
	}
	return (low + high) / 2
}

// Scatter is the standard deviation from piece to piece tied alike, in
// multiples of the cord's diameter.
func (m *CordModel) Scatter() float64 {
	_, sd := m.expect([NumKnots]float64{})
	return sd
}

// Coefficient is what knot k uses, in multiples of the cord's diameter, with
// its standard deviation.
func (m *CordModel) Coefficient(k Knot) (perD, u float64) {
	var square float64
	for i := range m.tried {
		t := &m.tried[i]
		perD += t.weight * t.mean[k]
		square += t.weight * (t.mean[k]*t.mean[k] + t.cov[k][k])
	}
	return perD, math.Sqrt(max(0, square-perD*perD))
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
		residuals[i] = LearnCord(append(slices.Clone(tied[:i]), tied[i+1:]...)).Residual(t)
	}
	return residuals
}

// Residual holds t, from which m must not have learnt, against what m says of it.
func (m *CordModel) Residual(t TiedCord) CordResidual {
	mean, sd := m.expect(t.knots())
	return CordResidual{
		Used: t.used() * t.Diameter,
		Off:  (t.used() - mean) * t.Diameter,
		U:    sd * t.Diameter,
	}
}
