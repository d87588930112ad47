// Package leftout fits the body survey's regressions without the people that the
// tool is then tried on.
package leftout

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/fit"
)

// Regressions are least squares of the body parts over the bodies, by sex, on
// stature alone or on stature and inseam; in place of fit.SurveyRegression.
func Regressions(bodies []truth.Body) func(fit.Sex, bool) fit.Regression {
	var tables [3][2]fit.Regression
	for _, sex := range []fit.Sex{fit.Unsaid, fit.Male, fit.Female} {
		people, weights := weigh(bodies, sex)
		for i, predictors := range []int{2, 3} {
			tables[sex][i] = regress(people, weights, predictors)
		}
	}
	return func(s fit.Sex, withInseam bool) fit.Regression {
		if withInseam {
			return tables[s][1]
		}
		return tables[s][0]
	}
}

// weigh picks the bodies of one sex; where it is unsaid, all of them, each sex with
// the same total weight and the weights summing to their number.
func weigh(bodies []truth.Body, sex fit.Sex) (people []truth.Body, weights []float64) {
	count := map[truth.Sex]int{}
	for _, b := range bodies {
		count[b.Sex]++
	}
	for _, b := range bodies {
		if sex == fit.Unsaid {
			people, weights = append(people, b), append(weights, float64(len(bodies))/2/float64(count[b.Sex]))
		} else if (sex == fit.Female) == (b.Sex == "F") {
			people, weights = append(people, b), append(weights, 1)
		}
	}
	return people, weights
}

func regress(people []truth.Body, weights []float64, predictors int) fit.Regression {
	n, parts := len(people), int(fit.NumBodyParts)
	x, y := mat.NewDense(n, predictors, nil), mat.NewDense(n, parts, nil)
	for i, b := range people {
		root := math.Sqrt(weights[i])
		for j, v := range []float64{1, b.Stature, b.Inseam}[:predictors] {
			x.Set(i, j, root*v)
		}
		for j, v := range measure(b) {
			y.Set(i, j, root*v)
		}
	}
	var beta, residual, cov mat.Dense
	if err := beta.Solve(x, y); err != nil {
		panic(err) // fewer people than predictors, or all of one stature
	}
	residual.Mul(x, &beta)
	residual.Sub(y, &residual)
	cov.Mul(residual.T(), &residual)
	var r fit.Regression
	for p := range r.Beta {
		for j := range predictors {
			r.Beta[p][j] = beta.At(j, p)
		}
		for q := range r.Cov[p] {
			r.Cov[p][q] = cov.At(p, q) / float64(n-predictors)
		}
	}
	return r
}

// measure is the body parts as the regression defines them, the nose 45 mm under
// the eye.
func measure(b truth.Body) [fit.NumBodyParts]float64 {
	return [fit.NumBodyParts]float64{
		fit.PartThigh: b.Thigh,
		fit.PartShin:  b.Shin,
		fit.PartNose:  b.Neck + b.Eye - 45,
		fit.PartFull:  b.Shoulder + b.UpperArm + b.Forearm + b.Lift,
		fit.PartDown:  b.Shoulder - b.ArmDown,
		fit.PartWaist: b.Navel,
	}
}
