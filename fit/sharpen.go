package fit

import (
	"gonum.org/v1/gonum/lapack/lapack64"
	"gonum.org/v1/gonum/mat"
)

// linear is a weighted sum of inputs and a constant: what the survey says of a
// body part once it is known which other parts were measured.
type linear struct {
	c     float64
	terms [mostTerms]term
	n     int // how many of terms there are
}

// mostTerms are stature, inseam, and the inputs that stand for the partners.
const mostTerms = 8

type term struct {
	s slot
	w float64
}

func (l *linear) at(x []float64) float64 {
	v := l.c
	for i := range l.n {
		v += l.terms[i].w * x[l.terms[i].s]
	}
	return v
}

func (l *linear) add(w float64, s slot) {
	if w == 0 {
		return
	}
	for i := range l.n {
		if l.terms[i].s == s {
			l.terms[i].w += w
			return
		}
	}
	l.terms[l.n] = term{s, w}
	l.n++
}

// partner is a body part that was measured, as the sum of inputs that stands for
// the survey's quantity, with the variance of those inputs.
type partner struct {
	part      BodyPart
	obs, less slot    // what was read, and what is taken off it; unknown for nothing
	r         float64 // mm²
}

// partners adds to ps the measured parts that say something of the others.
func (m *Model) partners(ps []partner) []partner {
	sole := m.posture[Sole]
	if thigh := m.laid[Thigh]; thigh != unknown {
		ps = append(ps, partner{PartThigh, thigh, unknown, m.u[thigh] * m.u[thigh]})
	}
	differs := func(part BodyPart, obs, less slot) {
		if obs != unknown && less != unknown {
			ps = append(ps, partner{part, obs, less, m.u[obs]*m.u[obs] + m.u[less]*m.u[less]})
		}
	}
	differs(PartShin, m.laid[Shin], sole)
	differs(PartDown, m.height[WristDown], m.hipOf[WristDown])
	differs(PartWaist, m.laid[Waist], sole)
	return ps
}

// A sharpening is what the partners do to the survey's estimate of a part: a
// row of S, by partner.
type sharpening struct {
	part BodyPart
	gain [NumBodyParts]float64
}

// sharpen works out what the partners do to the estimate of each part of
// estimates, and what all but itself do to that of each partner, in likely; that
// may be nil where nobody asks.
//
//	S = C_uo·(C_oo + R)⁻¹
//
// Of a partner p against the others it is −P_pa / P_pp, where P = (C_oo + R)⁻¹.
// Source: the conditional normal distribution.
func (m *Model) sharpen(estimates, likely []sharpening, ps []partner) {
	if len(ps) == 0 {
		return
	}
	cov := &m.regression.Cov
	inverse := mat.NewSymDense(len(ps), nil) // C_oo + R, inverted in place
	for a, p := range ps {
		for b := a; b < len(ps); b++ {
			inverse.SetSym(a, b, cov[p.part][ps[b].part])
		}
		inverse.SetSym(a, a, inverse.At(a, a)+p.r)
	}
	factor, ok := lapack64.Potrf(inverse.RawSymmetric())
	if ok {
		_, ok = lapack64.Potri(factor)
	}
	if !ok {
		return // cannot be: a covariance with variances added
	}
	for a, p := range ps {
		for i := range estimates {
			for b := range ps {
				estimates[i].gain[b] += cov[estimates[i].part][p.part] * inverse.At(a, b)
			}
		}
	}
	for a := range likely {
		for b := range ps {
			if a != b {
				likely[a].gain[b] = -inverse.At(a, b) / inverse.At(a, a)
			}
		}
	}
}

// mean is the sharpened estimate of a part without its residual:
// μ_u + S·(o − μ_o).
func (m *Model) mean(of *sharpening, ps []partner) linear {
	var l linear
	regressed := func(part BodyPart, w float64) {
		b := &m.regression.Beta[part]
		l.c += w * b[0]
		l.add(w*b[1], m.stature)
		l.add(w*b[2], m.inseam)
	}
	regressed(of.part, 1)
	for a, p := range ps {
		regressed(p.part, -of.gain[a])
		l.add(of.gain[a], p.obs)
		if p.less != unknown {
			l.add(-of.gain[a], p.less)
		}
	}
	return l
}

// residual is the covariance of what is left open of two parts:
//
//	cov(r) = C_uu − S·C_ou − C_uo·Sᵀ + S·C_oo·Sᵀ
func (m *Model) residual(x, y *sharpening, ps []partner) float64 {
	cov := &m.regression.Cov
	v := cov[x.part][y.part]
	for a, p := range ps {
		v -= x.gain[a]*cov[p.part][y.part] + y.gain[a]*cov[p.part][x.part]
		for b, q := range ps {
			v += x.gain[a] * cov[p.part][q.part] * y.gain[b]
		}
	}
	return v
}
