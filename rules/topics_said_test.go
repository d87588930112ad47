package rules_test

import (
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// What explanations put together from their tables say.
func TestExplanationsSay(t *testing.T) {
	for name, c := range map[string]struct {
		of   func(rules.Topic) string
		want string
	}{
		"hitch-top-reach": {func(t rules.Topic) string { return t.What }, "A must: while it fails or is unknown nobody signs."},
		"hitch-handhold":  {func(t rules.Topic) string { return t.What }, "A should: advice, it does not hold up the sign-off."},
		"slip-drop":       {func(t rules.Topic) string { return t.How }, "\n- limit most-drop: 600 mm (23 5/8 in) by default; a school may set "},
		"foot-loop-at-waist": {func(t rules.Topic) string { return t.How },
			"\n- may rest on: waist, foot-loop-length"},
		"reach-reserve":     {func(t rules.Topic) string { return t.What }, "The limit of hitch-top-reach: 0 mm by default; a school may set 0 to 60 mm (0 to 2 3/8 in)."},
		"saddle-force":      {func(t rules.Topic) string { return t.What }, "A limit without a check: 4 kN (900 lbf) by default; "},
		"foot-loop-length":  {func(t rules.Topic) string { return t.How }, "Lay the tape on. "},
		"nose":              {func(t rules.Topic) string { return t.How }, "Read off the hanging tape. "},
		"rope-ahead":        {func(t rules.Topic) string { return strings.Join(t.Also, " ") }, "rope.ahead_mm"},
		"hitch-set":         {func(t rules.Topic) string { return strings.Join(t.Also, " ") }, "posture.set_mm set_mm"},
		"sole":              {func(t rules.Topic) string { return t.How }, "25 ± 5 mm (1.0 ± 0.2 in) by default. "},
		"lean":              {func(t rules.Topic) string { return t.How }, " deg by default. "},
		"reach-factor":      {func(t rules.Topic) string { return t.How }, "0.86 ± 0.05 by default. "},
		"main-bridge-rings": {func(t rules.Topic) string { return t.Name }, "main-bridge-rings"},
	} {
		topic, ok := rules.Explain(name)
		if !ok || topic.Name != name {
			t.Errorf("%s is explained by %q", name, topic.Name)
		} else if got := c.of(topic); !strings.Contains(got, c.want) {
			t.Errorf("%s: %q, want %q in it", name, got, c.want)
		}
	}
	for name, want := range map[string]bool{"nose": true, "rope-ahead": false, "tether-length": false} { // whose bare key is none of another table's
		topic, _ := rules.Explain(name)
		bare := false
		for _, a := range topic.Also {
			bare = bare || !strings.Contains(a, ".")
		}
		if bare != want {
			t.Errorf("%s is found by its bare key too: %t (%q)", name, bare, topic.Also)
		}
	}
}

// The spreads that are explained are those that are counted with.
func TestExplanationsSayTheSpreads(t *testing.T) {
	said := func(mm float64) string {
		return rules.FormatLength(mm, "mm") + " (" + rules.FormatLength(mm, "in") + ")"
	}
	usual := fit.NewModel(&fit.Fitting{Tape: fit.Tape{Class: fit.ClassII, Division: 1}}, fit.Options{}).Today()
	for _, topic := range rules.Topics() {
		if r, ok := topic.Reading(); ok {
			if want := "Spread of landing on it: " + said(usual[r.Info().Spread]) + ","; !strings.Contains(topic.How, want) {
				t.Errorf("%s: %q, want %q in it", topic.Name, topic.How, want)
			}
		}
	}
	spread, _ := rules.Explain("spread")
	for _, mm := range usual {
		if !strings.Contains(spread.What, said(mm)) {
			t.Errorf("spread: %q, want %q in it", spread.What, said(mm))
		}
	}
	setting, _ := rules.Explain("setting-spread")
	change, _ := rules.Explain("change")
	for how, words := range map[fit.How]string{fit.Slides: "slides", fit.ReTie: "re-tie"} {
		want := said(how.SettingSpread())
		if !strings.Contains(setting.What, want) || !strings.Contains(change.What, "± "+want) {
			t.Errorf("%s: %q and %q, want %q in them", words, setting.What, change.What, want)
		}
	}
}

// A part that a topic does not have has no head either.
func TestTextLeavesOutWhatIsNotThere(t *testing.T) {
	topic := rules.Topic{Name: "sag", Kind: rules.TermTopic, Title: "Sag", What: "How far the rope gives.", Why: "It tells its modulus.", Source: "judgement"}
	want := "Sag (term sag)\nHow far the rope gives.\n\nWhy\n  It tells its modulus.\n\nSource\n  judgement"
	if got := strings.Join(strings.Fields(topic.Text(60)), " "); got != strings.Join(strings.Fields(want), " ") {
		t.Errorf("%q, want %q", got, want)
	}
}
