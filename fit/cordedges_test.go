package fit_test

import (
	"errors"
	"math"
	"testing"

	"example.com/hangtape/fit"
)

// What a cord may be, up to the ends of each range.
func TestCordAtTheEndsOfWhatCanBe(t *testing.T) {
	hitch := func(change func(*fit.Cord)) fit.Cord {
		c := fit.StandardCord(fit.CordHitch)
		c.Finished, c.Diameter, c.Host = 300, 8, 11
		change(&c)
		return c
	}
	for name, c := range map[string]struct {
		cord  fit.Cord
		wrong string
	}{
		"a loop that is only clipped in": {hitch(func(c *fit.Cord) { c.Hitch = fit.NoKnot }), ""},
		"closed by nothing":              {hitch(func(c *fit.Cord) { c.Closing = fit.NoKnot }), "knot"},
		"closed by what is no knot":      {hitch(func(c *fit.Cord) { c.Closing = fit.NumKnots }), "knot"},
		"hung by what is no knot":        {hitch(func(c *fit.Cord) { c.Hitch = -1 }), "hitch"},
		"hung by a bend":                 {hitch(func(c *fit.Cord) { c.Hitch = fit.TripleFishermans }), "hitch"},
		"as short as can be":             {hitch(func(c *fit.Cord) { c.Finished = fit.LeastFinished }), ""},
		"shorter":                        {hitch(func(c *fit.Cord) { c.Finished = fit.LeastFinished - 0.1 }), "finished"},
		"as long as can be":              {hitch(func(c *fit.Cord) { c.Finished = fit.MostFinished }), ""},
		"longer":                         {hitch(func(c *fit.Cord) { c.Finished = fit.MostFinished + 0.1 }), "finished"},
		"thin and on thin rope":          {hitch(func(c *fit.Cord) { c.Diameter, c.Host = fit.LeastCord, fit.LeastHost }), ""},
		"thick and on thick rope":        {hitch(func(c *fit.Cord) { c.Diameter, c.Host = fit.MostCord, fit.MostHost }), ""},
		"on thinner rope":                {hitch(func(c *fit.Cord) { c.Host = fit.LeastHost - 0.1 }), "rope"},
		"no tail":                        {hitch(func(c *fit.Cord) { c.Tail = 0 }), ""},
		"less than none":                 {hitch(func(c *fit.Cord) { c.Tail = -1 }), "tail"},
	} {
		err := c.cord.Check()
		var e *fit.CordError
		if errors.As(err, &e) != (c.wrong != "") || e != nil && e.Name != c.wrong {
			t.Errorf("%s: %v, want an error on %q", name, err, c.wrong)
		}
	}
	for role, want := range map[fit.KnotRole]string{
		fit.ClosesLoop: "double-fishermans, triple-fishermans", fit.OnConnector: "clipped, girth", fit.AtEachEnd: "scaffold, figure-eight",
	} {
		if got := fit.KnotKeys(role); got != want {
			t.Errorf("knots: %q, want %q", got, want)
		}
	}
}

// A piece that was tied cannot come from no cord, nor have left more of it over
// than was cut, nor none for its knots.
func TestTiedCordAtTheEndsOfWhatCanBe(t *testing.T) {
	if err := (fit.TiedCord{Cord: fit.StandardCord(fit.CordTether), Cut: 1100, Tails: 200}).Check(); err == nil {
		t.Error("a tether of no length was tied")
	}
	line := fit.StandardCord(fit.CordFootLoop)
	line.Finished, line.Diameter = 1000, 8 // and eyes of 305 mm twice
	for _, c := range []struct {
		cut, tails float64
		want       string
	}{
		{0, 0, "cut: 0 mm cannot be; accepted: above 0, up to 100000 mm"},
		{100001, 0, "cut: 100001 mm cannot be; accepted: above 0, up to 100000 mm"},
		{100000, 0, ""},
		{2000, 2000, "both-tails: 2000 mm cannot be; accepted: 0 to the length that was cut"},
		{2000, -1, "both-tails: -1 mm cannot be; accepted: 0 to the length that was cut"},
		{1810, 200, "cut: 1810 mm cannot be; accepted: more than the 1810 mm that strands, wraps and tails take without any knot"},
		{1811, 200, ""},
	} {
		got := ""
		if err := (fit.TiedCord{Cord: line, Cut: c.cut, Tails: c.tails}).Check(); err != nil {
			got = err.Error()
		}
		if got != c.want {
			t.Errorf("cut %g, tails %g: %q, want %q", c.cut, c.tails, got, c.want)
		}
	}
}

// A piece whose knots took what is expected is off by nothing, and what a cut
// takes lies in the middle of what it takes with 95 % probability.
func TestPieceTiedAsExpected(t *testing.T) {
	m := fit.LearnCord(nil)
	loop := fit.StandardCord(fit.CordHitch)
	loop.Finished, loop.Diameter, loop.Host = 330, 8, 11.4
	line := fit.StandardCord(fit.CordFootLoop)
	line.Finished, line.Diameter = 1000, 8
	for name, c := range map[string]struct {
		cord fit.Cord
		used float64 // diameters: a bend and a girth hitch, or two figure eights
		sd   float64
	}{
		"loop": {loop, 34 + 18, math.Sqrt(9*9 + 8*8 + 3*3)},
		"line": {line, 2 * 30, math.Sqrt(2*10*2*10 + 3*3)},
	} {
		r := m.Residual(tied(c.cord, c.used))
		near(t, name+" used", r.Used, c.used*8, 1e-6)
		near(t, name+" off", r.Off, 0, 0.01)
		near(t, name+" sd", r.U, c.sd*8, 0.01*c.sd*8)
		cut := m.Cut(c.cord, 0)
		lo, hi := cut.Takes-cut.Interval[0], cut.Interval[1]-cut.Takes
		near(t, name+" below", lo, 1.96*c.sd*8, 0.05*hi)
		near(t, name+" above", hi, 1.96*c.sd*8, 0.05*hi)
		trimming := cut.Parts[len(cut.Parts)-1]
		near(t, name+" trimming", trimming.Length, 1.645*c.sd*8, 0.05*trimming.Length)
		if up := m.Cut(c.cord, 50); math.Abs(math.Remainder(up.Length, 50)) > 1e-6 || up.Length < cut.Length || up.Length >= cut.Length+50 {
			t.Errorf("%s: %g mm is cut as %g mm", name, cut.Length, up.Length)
		}
	}
}

// Spools are refused by what is asked of them, however it is put.
func TestPlanSpoolsSaysWhatCannotBe(t *testing.T) {
	for _, c := range []struct {
		spool float64
		wants []fit.Want
		want  string
	}{
		{math.Inf(1), nil, "a spool of +Inf mm cannot be: more than 0"},
		{100, []fit.Want{{1, 10}, {math.MaxInt, 1}}, "9223372036854775807 pieces of 1 mm cannot be: 1 or more, and 1000 in all at most"},
		{100, []fit.Want{{600, 10}, {401, 10}}, "401 pieces of 10 mm cannot be: 1 or more, and 1000 in all at most"},
		{100, []fit.Want{{1, -3}}, "a piece of -3 mm does not come out of a spool of 100 mm"},
		{100, []fit.Want{{1, 100}}, ""},
		{1e5, []fit.Want{{600, 10}, {400, 10}}, ""},
	} {
		got := ""
		if _, err := fit.PlanSpools(c.spool, c.wants); err != nil {
			got = err.Error()
		}
		if got != c.want {
			t.Errorf("%v out of %g: %q, want %q", c.wants, c.spool, got, c.want)
		}
	}
}

// Sums that are whole but for rounding are whole.
func TestPlanSpoolsForgivesRounding(t *testing.T) {
	p, err := fit.PlanSpools(0.3, []fit.Want{{6, 0.1}})
	if err != nil || len(p.Spools) != 2 || p.Least != 2 || !p.Exact {
		t.Errorf("%+v, %v", p, err)
	}
}
