package rules

import (
	"testing"

	"example.com/hangtape/fit"
)

func TestWordsForPeople(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{ToDo("climber.thigh_mm"), "read the thigh"},
		{ToDo("climber.mass_kg"), "tell the climber's mass"},
		{HowWord(fit.Fixed), "fixed"}, {HowWord(fit.Slides), "slides"}, {HowWord(fit.ReTie), "re-tie"},
		{Verdict("").Word(), ""}, {Verdict("").Loud(), ""}, {Tight.Word(), "tight"}, {Unknown.Loud(), "UNKNOWN"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}

// A check shows between two landmarks; none, and one that there is not, nowhere.
func TestSpanOfACheck(t *testing.T) {
	known, none := Check{Name: "garda-under-connector"}, Check{Name: "no-such-check"}
	want, shows := GardaUnderConnector.Span("")
	if got, ok := known.Span(); !ok || !shows || got != want {
		t.Errorf("%+v, %v", got, ok)
	}
	if _, ok := none.Span(); ok {
		t.Error("a check that there is not shows somewhere")
	}
	if _, ok := (*Check)(nil).Span(); ok {
		t.Error("no check shows somewhere")
	}
}

// Where all readings were taken and the height is unknown all the same, it is the
// height itself that is named.
func TestFirstUnread(t *testing.T) {
	f := &fit.Fitting{}
	of := []fit.Reading{fit.ConnectorBottom, fit.Hip}
	if got := firstUnread(f, of); got != "hangs.1.connector_bottom_mm" {
		t.Errorf("of no hang: %s", got)
	}
	f.Hangs = make([]fit.Hang, 2)
	f.Hangs[1].Heights[fit.ConnectorBottom] = []float64{1050}
	if got := firstUnread(f, of); got != "hangs.2.hip_mm" {
		t.Errorf("without the hip: %s", got)
	}
	f.Hangs[1].Heights[fit.Hip] = []float64{520}
	if got := firstUnread(f, of); got != "hangs.2.connector_bottom_mm" {
		t.Errorf("with all: %s", got)
	}
}
