package records_test

import (
	"testing"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/records"
)

func TestUnaccented(t *testing.T) {
	for name, want := range map[string]string{
		"  Old   Beech ":    "old beech",
		"René":              "rene",
		"RENE\u0301":        "rene", // the accent as a sign of its own
		"Łukasz Żółć":       "lukasz zolc",
		"Søren Ærø":         "soren aero",
		"Große Straße":      "grosse strasse",
		"Ðorđe, Jürgen":     "dorde, jurgen",
		"İpek":              "ipek",
		"Жуков Ёлкин":       "жуков елкин",
		"Άννα":              "αννα",
		"王小明":               "王小明",
		"O’Hara 2":          "o’hara 2",
		"ﬁr, school kit №2": "fir, school kit no2",
		"\xff":              "\ufffd",
		"":                  "",
	} {
		if got := records.Unaccented(name); got != want {
			t.Errorf("%q is searched as %q, want %q", name, got, want)
		}
	}
}

// A search does without accents, on both sides; who somebody is does not.
func TestAccentsDoNotCountInASearch(t *testing.T) {
	st := newStore(t)
	put(t, st, "accent.toml", func(s *sessions.Session) { s.Climber, s.Place = "René Łoś", "große Buche" })
	put(t, st, "none.toml", func(s *sessions.Session) { s.Climber, s.Place = "Rene Los", "lime" })
	l := scan(t, st)
	for typed, want := range map[string]string{
		"rene": "accent none", "RENÉ": "accent none", "climber:los": "accent none", "place:Große": "accent", "grosse": "accent",
	} {
		q, err := records.ParseQuery(typed)
		if err != nil {
			t.Fatal(err)
		}
		if got := names(l.Find(q)); got != want {
			t.Errorf("%q found %q, want %q", typed, got, want)
		}
	}
	if n := len(l.Climbers()); n != 2 {
		t.Errorf("%d climbers, want 2", n)
	}
	if records.Fold("René") != records.Fold("rene\u0301") {
		t.Error("an accent that was typed as a sign of its own makes another name")
	}
}
