package fit

import "gonum.org/v1/gonum/mat"

// linear is a weighted sum of inputs and a constant: what the survey says of a
// body part once it is known which other parts were measured.
type linear struct {
	c     float64
	terms []term
}

type term struct {
	s slot
	w float64
}

func (l *linear) at(x []float64) float64 {
	v := l.c
	for _, t := range l.terms {
		v += t.w * x[t.s]
	}
	return v
}

func (l *linear) add(w float64, s slot) {
	if w != 0 {
		l.terms = append(l.terms, term{s, w})
	}
}

// partner is a body part that was measured, as the sum of inputs that stands for
// the survey's quantity, with the variance of those inputs.
type partner struct {
	part BodyPart
	obs  []term
	r    float64 // mm²
}

// partners are the measured parts that say something of the others.
func (m *Model) partners() []partner {
	var ps []partner
	add := func(part BodyPart, obs ...term) {
		r := 0.0
		for _, o := range obs {
			if o.s == unknown {
				return
			}
			r += m.u[o.s] * m.u[o.s]
		}
		ps = append(ps, partner{part, obs, r})
	}
	sole := m.posture[Sole]
	add(PartThigh, term{m.laid[Thigh], 1})
	add(PartShin, term{m.laid[Shin], 1}, term{sole, -1})
	add(PartDown, term{m.height[WristDown], 1}, term{m.hipOf[WristDown], -1})
	add(PartWaist, term{m.laid[Waist], 1}, term{sole, -1})
	return ps
}

// conditional is what the survey says of the parts, given the partners: for each
// a weighted sum of inputs without its own residual, and the covariance of the
// residuals that are left. Source: the conditional normal distribution.
//
//	estimate = μ_u + S·(o − μ_o) + r    S = C_uo·(C_oo + R)⁻¹
//	cov(r)   = C_uu − S·C_ou − C_uo·Sᵀ + S·C_oo·Sᵀ
func (m *Model) conditional(parts []BodyPart, ps []partner) ([]linear, [][]float64) {
	reg := m.regression
	nu, no := len(parts), len(ps)
	est := make([]linear, nu)
	cov := make([][]float64, nu)
	gain := make([][]float64, nu) // S
	for i := range gain {
		gain[i] = make([]float64, no)
		cov[i] = make([]float64, nu)
	}
	if no > 0 {
		oo := mat.NewSymDense(no, nil)
		for a := range ps {
			for b := a; b < no; b++ {
				v := reg.Cov[ps[a].part][ps[b].part]
				if a == b {
					v += ps[a].r
				}
				oo.SetSym(a, b, v)
			}
		}
		var chol mat.Cholesky
		if chol.Factorize(oo) { // a covariance with variances added: always so
			row, sol := mat.NewVecDense(no, nil), mat.NewVecDense(no, nil)
			for i, part := range parts {
				for a := range ps {
					row.SetVec(a, reg.Cov[part][ps[a].part])
				}
				if chol.SolveVecTo(sol, row) == nil {
					copy(gain[i], sol.RawVector().Data)
				}
			}
		}
	}
	mean := func(l *linear, part BodyPart, w float64) {
		b := reg.Beta[part]
		l.c += w * b[0]
		l.add(w*b[1], m.stature)
		l.add(w*b[2], m.inseam)
	}
	for i, part := range parts {
		mean(&est[i], part, 1)
		for a, p := range ps {
			mean(&est[i], p.part, -gain[i][a])
			for _, o := range p.obs {
				est[i].add(gain[i][a]*o.w, o.s)
			}
		}
		est[i] = est[i].merged()
	}
	for i := range parts {
		for j := range parts {
			v := reg.Cov[parts[i]][parts[j]]
			for a := range ps {
				v -= gain[i][a]*reg.Cov[ps[a].part][parts[j]] + gain[j][a]*reg.Cov[ps[a].part][parts[i]]
				for b := range ps {
					v += gain[i][a] * reg.Cov[ps[a].part][ps[b].part] * gain[j][b]
				}
			}
			cov[i][j] = v
		}
	}
	return est, cov
}

// merged adds up the terms of one input.
func (l linear) merged() linear {
	out := linear{c: l.c}
next:
	for _, t := range l.terms {
		for i := range out.terms {
			if out.terms[i].s == t.s {
				out.terms[i].w += t.w
				continue next
			}
		}
		out.terms = append(out.terms, t)
	}
	return out
}
