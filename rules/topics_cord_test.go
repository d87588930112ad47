package rules

import (
	"fmt"
	"strings"
	"testing"

	"example.com/hangtape/fit"
)

// Every knot is explained, with the figure that it starts from.
func TestKnotsAreExplainedWithTheirPriors(t *testing.T) {
	for k := range fit.NumKnots {
		i := k.Info()
		topic, ok := Explain(i.Key)
		if !ok || topic.Kind != TermTopic {
			t.Errorf("%s is not explained", i.Key)
			continue
		}
		if want := fmt.Sprintf("%g ± %g diameters", i.PerD, i.U); k != fit.NoKnot && !strings.Contains(topic.Why, want) {
			t.Errorf("%s: %q does not say %q", i.Key, topic.Why, want)
		}
	}
}

// Every part of a cut and every piece is explained.
func TestPartsOfACutAreExplained(t *testing.T) {
	names := map[string]bool{}
	for u := range fit.NumCordUses {
		names[u.Key()] = true
		c := fit.StandardCord(u)
		c.Finished, c.Diameter, c.Host = 700, 8, 11
		for _, p := range fit.LearnCord(nil).Cut(c, 0).Parts {
			names[p.Name] = true
		}
	}
	for name := range names {
		if _, ok := Explain(name); !ok {
			t.Errorf("%s has no explanation", name)
		}
	}
}
