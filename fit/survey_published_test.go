package fit_test

import (
	"bytes"
	"crypto/sha256"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"

	"example.com/hangtape/fit"
)

const surveyFile = "../testdata/survey/ansur2.csv"

// surveyColumns is the survey's table by sex ("M", "F") and column, in mm.
func surveyColumns(t *testing.T) map[string]map[string][]float64 {
	t.Helper()
	raw, err := os.ReadFile(surveyFile)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(raw)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	cols := map[string]map[string][]float64{"M": {}, "F": {}}
	for _, row := range rows[1:] {
		for i, name := range rows[0][1:] {
			v, err := strconv.ParseFloat(row[i+1], 64)
			if err != nil {
				t.Fatal(err)
			}
			cols[row[0]][name] = append(cols[row[0]][name], v)
		}
	}
	return cols
}

func TestSurveyFileIsThePublishedOne(t *testing.T) {
	raw, err := os.ReadFile(surveyFile)
	if err != nil {
		t.Fatal(err)
	}
	const want = "63c2a0ec1ff4772d36c8ecf733943b564a28d33b2461a31ac86e491ff2456657"
	if got := fmt.Sprintf("%x", sha256.Sum256(raw)); got != want {
		t.Errorf("sha256 of the survey's table is %s, want %s", got, want)
	}
}

// Source: Gordon et al. 2014, NATICK/TR-15/007, as public texts transcribe its
// printed tables (second hand; the report's own pages were not seen).
func TestSurveyMatchesItsPrintedReport(t *testing.T) {
	cols := surveyColumns(t)
	for _, c := range []struct {
		column, sex string
		mean, sd    float64
	}{
		{"tibialheight", "M", 468.2, 26.6},
		{"tibialheight", "F", 437.8, 25.0},
		{"lateralmalleolusheight", "M", 72.9, 5.7},
		{"lateralmalleolusheight", "F", 62.7, 5.1},
		{"poplitealheight", "M", 429.8, 24.8},
		{"poplitealheight", "F", 388.2, 23.6},
		{"radialestylionlength", "M", 267.9, 15.4},
	} {
		mean, sd := stat.MeanStdDev(cols[c.sex][c.column], nil)
		if math.Abs(mean-c.mean) > 0.05 || math.Abs(sd-c.sd) > 0.05 {
			t.Errorf("%s %s: mean %.2f, SD %.2f; printed %.1f, %.1f", c.sex, c.column, mean, sd, c.mean, c.sd)
		}
	}
	for _, c := range []struct {
		column, sex string
		p, want     float64
	}{
		{"poplitealheight", "M", 0.05, 390},
		{"poplitealheight", "M", 0.50, 430},
		{"poplitealheight", "M", 0.95, 471},
		{"poplitealheight", "F", 0.05, 350},
		{"poplitealheight", "F", 0.50, 387},
		{"poplitealheight", "F", 0.95, 428},
		{"stature", "M", 0.95, 1870},
		{"thumbtipreach", "F", 0.05, 674},
		{"buttockpopliteallength", "F", 0.05, 441},
	} {
		if got := percentile(cols[c.sex][c.column], c.p); math.Abs(got-c.want) > 0.5 {
			t.Errorf("%s %s, percentile %g: %.1f, printed %g", c.sex, c.column, 100*c.p, got, c.want)
		}
	}
	for _, c := range []struct {
		sex  string
		n    int
		mean float64 // from memory
	}{{"M", 4082, 1756}, {"F", 1986, 1629}} {
		s := cols[c.sex]["stature"]
		if mean := stat.Mean(s, nil); len(s) != c.n || math.Abs(mean-c.mean) > 0.55 {
			t.Errorf("%s: %d persons of mean stature %.1f, want %d and %g", c.sex, len(s), mean, c.n, c.mean)
		}
	}
}

// percentile interpolates between order statistics, of which the least is 0 and
// the greatest 1.
func percentile(x []float64, p float64) float64 {
	sorted := slices.Sorted(slices.Values(x))
	i, part := math.Modf(p * float64(len(x)-1))
	return sorted[int(i)] + part*(sorted[int(i)+1]-sorted[int(i)])
}

// bodyParts forms the body parts of every person from the survey's columns.
func bodyParts(c map[string][]float64) [fit.NumBodyParts][]float64 {
	var parts [fit.NumBodyParts][]float64
	for i := range c["stature"] {
		at := func(name string) float64 { return c[name][i] }
		hip := at("sittingheight") - at("stature") + at("trochanterionheight")
		for p, v := range [fit.NumBodyParts]float64{
			at("trochanterionheight") - at("kneeheightmidpatella"),
			at("kneeheightmidpatella"),
			at("eyeheightsitting") - 45 - hip,
			at("overheadfingertipreachsitting") - at("handlength") - hip,
			at("wristheight") - at("trochanterionheight"),
			at("waistheightomphalion"),
		} {
			parts[p] = append(parts[p], v)
		}
	}
	return parts
}

// The reference is the QR decomposition of gonum over the rows themselves, each
// scaled by the root of its weight.
func TestSurveyRegressionAgainstQR(t *testing.T) {
	cols := surveyColumns(t)
	for _, c := range []struct {
		sex   fit.Sex
		of    []string
		title string
	}{
		{fit.Male, []string{"M"}, "men"},
		{fit.Female, []string{"F"}, "women"},
		{fit.Unsaid, []string{"M", "F"}, "unsaid"},
	} {
		for _, k := range []int{2, 3} {
			t.Run(fmt.Sprintf("%s on %d", c.title, k-1), func(t *testing.T) {
				n := 0
				for _, s := range c.of {
					n += len(cols[s]["stature"])
				}
				x, y := mat.NewDense(n, k, nil), mat.NewDense(n, int(fit.NumBodyParts), nil)
				row := 0
				for _, s := range c.of {
					parts, m := bodyParts(cols[s]), len(cols[s]["stature"])
					root := math.Sqrt(float64(n) / float64(len(c.of)*m))
					for i := range m {
						x.SetRow(row, []float64{root, root * cols[s]["stature"][i], root * cols[s]["crotchheight"][i]}[:k])
						for p := range parts {
							y.Set(row, p, root*parts[p][i])
						}
						row++
					}
				}
				var qr mat.QR
				qr.Factorize(x)
				var beta, res, cov mat.Dense
				if err := qr.SolveTo(&beta, false, y); err != nil {
					t.Fatal(err)
				}
				res.Mul(x, &beta)
				res.Sub(y, &res)
				cov.Mul(res.T(), &res)
				cov.Scale(1/float64(n-k), &cov)

				got := fit.SurveyRegression(c.sex, k == 3)
				for p := range got.Beta {
					for j, b := range got.Beta[p] {
						want := 0.0
						if j < k {
							want = beta.At(j, p)
						}
						if math.Abs(b-want) > 1e-9*(1+math.Abs(want)) {
							t.Errorf("coefficient %d of part %d: %v, want %v", j, p, b, want)
						}
					}
					for q, v := range got.Cov[p] {
						if want := cov.At(p, q); math.Abs(v-want) > 1e-8*(1+math.Abs(want)) {
							t.Errorf("covariance of parts %d and %d: %v, want %v", p, q, v, want)
						}
					}
				}
			})
		}
	}
}

func TestSurveyCovarianceIsPositiveDefinite(t *testing.T) {
	for _, s := range []fit.Sex{fit.Unsaid, fit.Male, fit.Female} {
		for _, inseam := range []bool{false, true} {
			r := fit.SurveyRegression(s, inseam)
			c := mat.NewSymDense(int(fit.NumBodyParts), nil)
			for p := range r.Cov {
				for q, v := range r.Cov[p] {
					if v != r.Cov[q][p] {
						t.Errorf("sex %v, inseam %v: not symmetric at %d, %d", s, inseam, p, q)
					}
					c.SetSym(p, q, v)
				}
			}
			if !new(mat.Cholesky).Factorize(c) {
				t.Errorf("sex %v, inseam %v: not positive definite", s, inseam)
			}
		}
	}
}

func TestBodyFromStatureAlone(t *testing.T) {
	r := fit.SurveyRegression(fit.Male, false)
	var mu [fit.NumBodyParts]float64
	for p, b := range r.Beta {
		mu[p] = b[0] + b[1]*1887
	}
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"thigh", mu[fit.PartThigh], 447.56907736931504},
		{"shin in boots", mu[fit.PartShin] + 25, 558.108860724612},
		{"full reach", mu[fit.PartFull], 1257.9383971785064},
		{"waist in boots", mu[fit.PartWaist] + 25, 1171.8808690910041},
		{"wrist down", mu[fit.PartDown], 523.8910539148162 - 589},
		{"nose", mu[fit.PartNose] * math.Cos(8*math.Pi/180), 1324.4058214859356 - 589},
	} {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("%s of a man of 1887: %v, want %v", c.name, c.got, c.want)
		}
	}
}
