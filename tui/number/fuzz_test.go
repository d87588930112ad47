package number

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/hangtape/sessions"
)

// FuzzParse holds that nothing panics, that what is accepted is finite, fits
// its field and survives being shown and typed again, that every choice offered
// gives what it says, and that no digit of an accepted text is left unread.
func FuzzParse(f *testing.F) {
	for _, s := range []string{
		"", "1220", `5' 9 1/2"`, "5′9½″", "1 220,5", "1'220", "1.220", "-5", "−5", "9 1/3 in", "12 st 5", "1m22", "84,5 kg",
		"5.9 ft", "1e3", "0x4C4", "1220±5", "٣٤٥", "１２２０", "7/16", "69-1/2\"", "1215-1225", "\xff", "5'-9\"", "13500 N", "2.1 %",
	} {
		for kind := range kindInfo {
			f.Add(s, uint8(kind), uint8(kind))
		}
	}
	f.Fuzz(func(t *testing.T, text string, kind, unit uint8) {
		field := Field{Name: "x", Kind: Kind(int(kind) % len(kindInfo)), Unit: []sessions.Unit{sessions.MM, sessions.CM, sessions.Inch}[unit%3]}
		if kind&0x80 != 0 {
			field.Accepted = Range{0.5, 2500}
		}
		if kind&0x40 != 0 {
			field.Usual = Range{10, 100}
		}
		a, err := Parse(text, field)
		var ask *Ambiguous
		var unlikely *Unlikely
		switch {
		case errors.As(err, &ask):
			if len(ask.Choices) == 0 {
				t.Fatalf("%q: a question without choices", text)
			}
			checkChoices(t, field, ask.Choices)
		case errors.As(err, &unlikely):
			checkChoices(t, field, unlikely.Likely)
			a, err = unlikely.Answer, nil
		}
		if err != nil {
			if a.Taken() || err.Error() == "" {
				t.Fatalf("%q: %v with %v", text, a.Value, err)
			}
			return
		}
		if !a.Taken() {
			if strings.TrimSpace(text) != "" {
				t.Fatalf("%q: neither taken nor refused", text)
			}
			return
		}
		v := a.Value.V
		if math.IsNaN(v) || math.IsInf(v, 0) || !field.Accepted.holds(v) || v <= 0 && !kindInfo[field.Kind].zero && v != 0 {
			t.Fatalf("%q: taken as %v", text, v)
		}
		field.Usual = Range{}
		shown := Text(v, field)
		again, err := Parse(shown, field)
		if err != nil || again.Value != a.Value {
			t.Fatalf("%q: %v is shown as %q, which gives %v, %v", text, v, shown, again.Value, err)
		}
		// Half read: with its last digit changed a text has to give another value,
		// unless that digit is beyond a millionth of the stored unit.
		if i := strings.LastIndexAny(text, "0123456789"); i >= 0 && !fine(text[:i]) {
			other := text[:i] + string('0'+(text[i]-'0'+1)%10) + text[i+1:]
			if b, err := Parse(other, field); err == nil && b.Value == a.Value {
				t.Fatalf("%q and %q are both %v", text, other, v)
			}
		}
	})
}

func fine(head string) bool {
	dot := strings.LastIndexAny(head, ".,")
	return dot >= 0 && len(head)-dot > 3
}
