package fit_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/hangtape/fit"
)

// tether is an 8 mm tether finished at 7 in.
func tether() fit.Cord {
	c := fit.StandardCord(fit.CordTether)
	c.Finished, c.Diameter = 177.8, 8
	return c
}

// tied is c as it comes out where its knots use so many diameters.
func tied(c fit.Cord, used float64) fit.TiedCord {
	const tails = 260
	laid := float64(c.Strands)*c.Finished + 2*c.Eye + fit.WrapLength(c.Wraps, c.Diameter, c.Host)
	return fit.TiedCord{Cord: c, Cut: laid + used*c.Diameter + tails, Tails: tails}
}

// The length of a turn is measured along the helix step by step.
func TestWrapLengthAlongTheHelix(t *testing.T) {
	const cord, host, turns, steps = 8.0, 11.4, 6, 100000
	var sum float64
	for range steps {
		const turn = 2 * math.Pi * turns / steps
		sum += math.Hypot(2*math.Sin(turn/2)*(host+cord)/2, cord*turns/steps)
	}
	near(t, "six turns", fit.WrapLength(turns, cord, host), sum, 0.001)
}

func TestCutSumsItsParts(t *testing.T) {
	c := fit.StandardCord(fit.CordHitch)
	c.Finished, c.Diameter, c.Host = 330, 8, 11.4
	cut := fit.LearnCord(nil).Cut(c, 5)
	want := []struct {
		name   string
		length float64
	}{
		{"strands", 660}, {"wraps", 368.8}, {"hitch", 144}, {"bend", 272}, {"tails", 200}, {"trimming", 165.2},
	}
	if len(cut.Parts) != len(want) {
		t.Fatalf("parts %v", cut.Parts)
	}
	var sum float64
	for i, p := range cut.Parts {
		if p.Name != want[i].name {
			t.Errorf("part %d is %s, want %s", i, p.Name, want[i].name)
		}
		near(t, p.Name, p.Length, want[i].length, 0.1)
		sum += p.Length
	}
	near(t, "cut", cut.Length, sum, 1e-9)
	near(t, "cut, on marks of 5 mm", math.Remainder(cut.Length, 5), 0, 1e-9)
}

// Longer, thicker and more turns never make a shorter cut, and the marks of a
// tape add less than one of them.
func TestCutGrows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := fit.StandardCord(fit.CordHitch)
		c.Finished = rapid.Float64Range(50, 1000).Draw(t, "finished")
		c.Diameter = rapid.Float64Range(4, 10).Draw(t, "cord")
		c.Host = rapid.Float64Range(9, 14).Draw(t, "rope")
		m := fit.LearnCord(nil)
		cut := m.Cut(c, 0).Length
		for name, change := range map[string]func(*fit.Cord){
			"finished": func(c *fit.Cord) { c.Finished++ },
			"cord":     func(c *fit.Cord) { c.Diameter += 0.1 },
			"rope":     func(c *fit.Cord) { c.Host += 0.1 },
			"wraps":    func(c *fit.Cord) { c.Wraps++ },
			"tail":     func(c *fit.Cord) { c.Tail++ },
		} {
			more := c
			change(&more)
			if longer := m.Cut(more, 0).Length; longer <= cut {
				t.Fatalf("more %s: %g mm, not above %g", name, longer, cut)
			}
		}
		if marked := m.Cut(c, 5).Length; marked < cut-1e-6 || marked >= cut+5 {
			t.Fatalf("on marks of 5 mm: %g for %g", marked, cut)
		}
	})
}

func TestCordCheck(t *testing.T) {
	for _, c := range []struct {
		name   string
		use    fit.CordUse
		change func(*fit.Cord)
		want   string // the name in the error
	}{
		{"as it is", fit.CordTether, func(*fit.Cord) {}, ""},
		{"a bridge", fit.CordBridge, func(*fit.Cord) {}, ""},
		{"a foot loop", fit.CordFootLoop, func(c *fit.Cord) { c.Finished = 1000 }, ""},
		{"a foot loop tied as a closed loop", fit.CordFootLoop, func(c *fit.Cord) { *c = c.WithStrands(2) }, ""},
		{"a foot loop without eyes", fit.CordFootLoop, func(c *fit.Cord) { *c = c.WithClosing(fit.ScaffoldKnot) }, ""},
		{"a bridge with eyes", fit.CordBridge, func(c *fit.Cord) { *c = c.WithClosing(fit.FigureEightLoop) }, ""},
		{"a tether of one strand", fit.CordTether, func(c *fit.Cord) { *c = c.WithStrands(1) }, ""},
		{"clipped in", fit.CordTether, func(c *fit.Cord) { c.Hitch = fit.NoKnot }, ""},
		{"no length", fit.CordTether, func(c *fit.Cord) { c.Finished = 0 }, "finished"},
		{"not a number", fit.CordTether, func(c *fit.Cord) { c.Finished = math.NaN() }, "finished"},
		{"thick cord", fit.CordTether, func(c *fit.Cord) { c.Diameter = 15 }, "cord"},
		{"wraps on a tether", fit.CordTether, func(c *fit.Cord) { c.Wraps = 6 }, "wraps"},
		{"a hitch without a rope", fit.CordHitch, func(*fit.Cord) {}, "rope"},
		{"a hitch without wraps", fit.CordHitch, func(c *fit.Cord) { c.Host, c.Wraps = 11, 0 }, "wraps"},
		{"a hitch of a single line", fit.CordHitch, func(c *fit.Cord) { c.Host, c.Strands = 11, 1 }, "strands"},
		{"five strands", fit.CordTether, func(c *fit.Cord) { c.Strands = 5 }, "strands"},
		{"a loop closed with an end knot", fit.CordTether, func(c *fit.Cord) { c.Closing = fit.ScaffoldKnot }, "knot"},
		{"a loop not closed", fit.CordTether, func(c *fit.Cord) { c.Closing = fit.NoKnot }, "knot"},
		{"a bridge that ends in a bend", fit.CordBridge, func(c *fit.Cord) { c.Closing = fit.DoubleFishermans }, "knot"},
		{"a bridge on a girth hitch", fit.CordBridge, func(c *fit.Cord) { c.Hitch = fit.GirthHitch }, "hitch"},
		{"an eye on a tether", fit.CordTether, func(c *fit.Cord) { c.Eye = 50 }, "eye"},
		{"eyes longer than the line", fit.CordFootLoop, func(c *fit.Cord) { c.Finished = 400 }, "eye"},
		{"a tail below nothing", fit.CordTether, func(c *fit.Cord) { c.Tail = -1 }, "tail"},
	} {
		t.Run(c.name, func(t *testing.T) {
			cord := fit.StandardCord(c.use)
			cord.Finished, cord.Diameter = 700, 8
			c.change(&cord)
			var wrong *fit.CordError
			if errors.As(cord.Check(), &wrong); (wrong == nil) != (c.want == "") || wrong != nil && wrong.Name != c.want {
				t.Errorf("got %v, want an error on %q", cord.Check(), c.want)
			}
		})
	}
}

func TestTiedCordCheck(t *testing.T) {
	for _, c := range []struct {
		cut, tails float64
		want       string
	}{{1100, 250, ""}, {600, 250, "cut"}, {42, 10, "cut"}, {1100, -1, "both-tails"}, {1100, 1200, "both-tails"}, {math.NaN(), 10, "cut"}, {0, 0, "cut"}} {
		p := fit.TiedCord{Cord: tether(), Cut: c.cut, Tails: c.tails}
		var wrong *fit.CordError
		if errors.As(p.Check(), &wrong); (wrong == nil) != (c.want == "") || wrong != nil && wrong.Name != c.want {
			t.Errorf("cut %g, tails %g: got %v, want an error on %q", c.cut, c.tails, p.Check(), c.want)
		}
	}
}

// The coefficients and the cut are those of a million draws from the prior, each
// weighed by how likely it makes the pieces.
func TestLearnCordAgainstWeightedDraws(t *testing.T) {
	hitch := fit.StandardCord(fit.CordHitch)
	hitch.Finished, hitch.Diameter, hitch.Host, hitch.Hitch = 320, 6, 11, fit.NoKnot
	used := []struct {
		c     fit.Cord
		took  float64
		girth float64 // girth hitches in it
	}{{tether(), 61, 1}, {tether(), 57.5, 1}, {hitch, 38, 0}, {hitch, 41, 0}}
	var pieces []fit.TiedCord
	for _, u := range used {
		pieces = append(pieces, tied(u.c, u.took))
	}
	m := fit.LearnCord(pieces)
	cut := m.Cut(tether(), 0)
	longest := (cut.Length - 2*tether().Finished - 2*fit.LeastTail) / 8

	r := rand.New(rand.NewPCG(3, 5))
	bend, girth := fit.DoubleFishermans.Info(), fit.GirthHitch.Info()
	var weight, sumBend, sumGirth, squareGirth, enough float64
	for range 1_000_000 {
		b, g, s := bend.PerD+bend.U*r.NormFloat64(), girth.PerD+girth.U*r.NormFloat64(), drawScatter(r)
		w := 1.0
		for _, u := range used {
			off := (u.took - b - u.girth*g) / s
			w *= math.Exp(-off*off/2) / s
		}
		weight += w
		sumBend += w * b
		sumGirth += w * g
		squareGirth += w * g * g
		if b+g+s*r.NormFloat64() <= longest {
			enough += w
		}
	}
	gotBend, _ := m.Coefficient(fit.DoubleFishermans)
	gotGirth, u := m.Coefficient(fit.GirthHitch)
	mean := sumGirth / weight
	near(t, "bend", gotBend, sumBend/weight, 0.1)
	near(t, "girth hitch", gotGirth, mean, 0.1)
	near(t, "girth hitch, u", u, math.Sqrt(squareGirth/weight-mean*mean), 0.1)
	near(t, "share cut long enough", enough/weight, 0.95, 0.005)
}

// drawScatter draws from the prior of the scatter: a mean square of 9 and the
// weight of six pieces.
func drawScatter(r *rand.Rand) float64 {
	var chi float64
	for range 6 {
		z := r.NormFloat64()
		chi += z * z
	}
	return math.Sqrt(9 * (6 - 2) / chi)
}

// Pieces that come out alike say nothing of a knot that none of them has.
func TestOtherKnotsTeachNothingOfAKnot(t *testing.T) {
	var pieces []fit.TiedCord
	for range 30 {
		pieces = append(pieces, tied(tether(), 52))
	}
	perD, u := fit.LearnCord(pieces).Coefficient(fit.FigureEightLoop)
	near(t, "figure-eight loop, never tied", perD, fit.FigureEightLoop.Info().PerD, 1e-9)
	near(t, "its u", u, fit.FigureEightLoop.Info().U, 1e-6)
}

func TestPriorIsWhatItSays(t *testing.T) {
	m := fit.LearnCord(nil)
	for k := fit.DoubleFishermans; k < fit.NumKnots; k++ {
		perD, u := m.Coefficient(k)
		near(t, k.String(), perD, k.Info().PerD, 1e-9)
		near(t, k.String()+", u", u, k.Info().U, 1e-6)
	}
	near(t, "scatter", m.Scatter(), 3, 0.01)
}

// Trimming shrinks with every piece that comes out as foretold, down to a floor.
func TestTrimmingShrinksToItsFloor(t *testing.T) {
	c := tether()
	trimming := func(pieces []fit.TiedCord) float64 {
		parts := fit.LearnCord(pieces).Cut(c, 0).Parts
		return parts[len(parts)-1].Length
	}
	var pieces []fit.TiedCord
	last := trimming(nil)
	for range 40 {
		pieces = append(pieces, tied(c, 52))
		next := trimming(pieces)
		if next > last || next == last && last > fit.TrimmingFloor*c.Diameter {
			t.Fatalf("after %d pieces: trimming %g, before %g", len(pieces), next, last)
		}
		last = next
	}
	near(t, "trimming after 40 pieces", last, fit.TrimmingFloor*c.Diameter, 1e-9)
}

// Pieces drawn from the prior itself: where 95 % is said, 95 % come out with
// tails no shorter than planned, however many were tied before.
func TestTrimmingCoversWhatItSays(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	bend, girth := fit.DoubleFishermans.Info(), fit.GirthHitch.Info()
	const trials = 1500
	for _, before := range []int{0, 3} {
		enough, within := 0, 0
		for range trials {
			s := drawScatter(r)
			mean := bend.PerD + girth.PerD + math.Hypot(bend.U, girth.U)*r.NormFloat64()
			c := tether()
			var pieces []fit.TiedCord
			for range before {
				pieces = append(pieces, tied(c, mean+s*r.NormFloat64()))
			}
			cut := fit.LearnCord(pieces).Cut(c, 0)
			takes := 2*c.Finished + 2*c.Tail + (mean+s*r.NormFloat64())*c.Diameter
			if takes <= cut.Length {
				enough++
			}
			if takes >= cut.Interval[0] && takes <= cut.Interval[1] {
				within++
			}
		}
		near(t, "share cut long enough", float64(enough)/trials, 0.95, 0.02)
		near(t, "share within the interval", float64(within)/trials, 0.95, 0.02)
	}
}

func TestCordResidualsQuestionAnOutlier(t *testing.T) {
	doubtful := func(pieces []fit.TiedCord) (which []int) {
		for i, r := range fit.CordResiduals(pieces) {
			if r.Doubtful() {
				which = append(which, i)
			}
		}
		return which
	}
	pieces := []fit.TiedCord{tied(tether(), 52), tied(tether(), 54), tied(tether(), 53), tied(tether(), 50), tied(tether(), 52)}
	if d := doubtful(pieces); len(d) != 0 {
		t.Errorf("pieces alike: %v are questioned", d)
	}
	pieces[2] = tied(tether(), 95)
	if d := doubtful(pieces); !slices.Equal(d, []int{2}) {
		t.Errorf("piece 2 took 43 d more: %v are questioned", d)
	}
	near(t, "what it used", fit.CordResiduals(pieces)[2].Used, 95*8, 1e-9)
	long := fit.LearnCord(pieces).Cut(tether(), 0).Length
	if short := fit.LearnCord(append(pieces[:2:2], pieces[3:]...)).Cut(tether(), 0).Length; long <= short {
		t.Errorf("with the outlier %g mm, without it %g: it must not shorten the cut", long, short)
	}
}

// The order of the pieces is of no account.
func TestLearnCordInAnyOrder(t *testing.T) {
	a := []fit.TiedCord{tied(tether(), 52), tied(tether(), 60), tied(tether(), 47)}
	b := []fit.TiedCord{a[2], a[0], a[1]}
	near(t, "cut", fit.LearnCord(a).Cut(tether(), 0).Length, fit.LearnCord(b).Cut(tether(), 0).Length, 1e-9)
}

func TestCordForAPieceOfTheKit(t *testing.T) {
	f := &fit.Fitting{Rope: fit.Rope{Diameter: fit.Some(11.4)}}
	f.Kit.Pieces[fit.PieceHitchLeft] = fit.PieceInfo{Present: true, Cord: fit.Some(8), Wraps: fit.Some(5)}
	f.Kit.Pieces[fit.PieceTether] = fit.PieceInfo{Present: true, Cord: fit.Some(7), Strands: fit.Some(4)}
	hitch := fit.CordFor(f, fit.PieceHitchLeft, 330)
	if err := hitch.Check(); err != nil || hitch.Host != 11.4 || hitch.Wraps != 5 || hitch.Diameter != 8 || hitch.Finished != 330 {
		t.Errorf("hitch %+v, %v", hitch, err)
	}
	tether := fit.CordFor(f, fit.PieceTether, 180)
	if err := tether.Check(); err != nil || tether.Strands != 4 || tether.Host != 0 {
		t.Errorf("tether %+v, %v", tether, err)
	}
	if err := fit.CordFor(f, fit.PieceMainBridge, 1100).Check(); err == nil {
		t.Error("a bridge of cord that nobody told: no error")
	}
}
