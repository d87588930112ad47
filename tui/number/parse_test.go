package number

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
)

// Fields of the tables below.
var (
	height   = Field{Name: "nose", Kind: Height}
	heightIn = Field{Name: "nose", Kind: Height, Unit: sessions.Inch}
	heightCm = Field{Name: "nose", Kind: Height, Unit: sessions.CM}
	hip      = Field{Name: "hip point", Kind: Height, Usual: Range{900, 1500}}
	laid     = Field{Name: "tether", Kind: Laid}
	laidIn   = Field{Name: "tether", Kind: Laid, Unit: sessions.Inch}
	stature  = Field{Name: "stature", Kind: Laid, Unit: sessions.Inch, Accepted: Range{500, 2500}, Usual: Range{1400, 2100}}
	ahead    = Field{Name: "rope ahead", Kind: Offset}
	weight   = Field{Name: "mass", Kind: Mass, Accepted: Range{25, 250}, Usual: Range{40, 150}}
	rope     = Field{Name: "rope", Kind: Diameter, Unit: sessions.Inch, Accepted: Range{6, 20}}
	inside   = Field{Name: "inside width", Kind: Diameter, Accepted: Range{15, 120}}
	strength = Field{Name: "strength", Kind: Force, Accepted: Range{0.5, 60}}
	stretch  = Field{Name: "elongation", Kind: Percent, Accepted: Range{0.3, 15}}
	wraps    = Field{Name: "wraps", Kind: Count, Accepted: Range{1, 12}}
	shin     = Field{Name: "shin angle", Kind: Angle, Accepted: Range{-45, 45}}
	ratio    = Field{Name: "reach factor", Kind: Ratio, Accepted: Range{0.1, 1}}
)

func TestTakenAs(t *testing.T) {
	const nbsp, narrow, thin = "\u00a0", "\u202f", "\u2009"
	for _, c := range []struct {
		f    Field
		want float64
		text []string
	}{
		// feet and inches
		{stature, 1765.3, []string{`5' 9 1/2"`, `5'9½"`, `5 ft 9.5 in`, `5′ 9½″`, `5’ 9½”`, `5 FT 9,5 IN`, `5'9 1/2`, `5'-9 1/2"`, `5'-9½"`, `5ft9½`, `5' 9½''`, `5′9½′′`, "5\u00a0ft\u00a09½\u00a0in", `5 feet 9 1/2 inches`, `5 foot 9½`}},
		{stature, 1752.6, []string{`5’9”`, `5'9`, `5' 9`, `5 ft 9`, `5 ft 9 in`, `5' 09"`}},
		{stature, 1828.8, []string{`6'`, `6 ft`, `6ft`, `6.0 ft`, `72`, `72"`, `72 in`, `6 ft 0 in`}},
		{stature, 1600.2, []string{`5.25 ft`, `5,25 ft`, `5 1/4 ft`, `63`}},
		{laidIn, 1.5875, []string{`1/16`, `1/16 in`, `0.0625`, `.0625 in`, `,0625`}},
		// inches with a fraction
		{height, 1765.3, []string{`69 1/2 in`, `69-1/2"`, `69.5in`, `69,5 in`, `69½"`, `69 ½ in`, `69 1⁄2 in`, `69 1∕2 in`, `69‑1/2 in`}},
		{heightIn, 1765.3, []string{`69 1/2`, `69.5`, `69½`, `69-1/2`}},
		{laid, 393.7, []string{`15 1/2 in`, `15½in`, `15.5"`, `1'3 1/2"`}},
		{inside, 38.1, []string{`1 1/2 in`, `38.1`, `38.100`, `38,1 mm`, `1.5 in`, `3.81 cm`}},
		{rope, 11.1125, []string{`7/16 in`, `7/16"`, `11.1125`}},
		{rope, 11.4, []string{`11.4`, `11,4`, `11.4 mm`}},
		// thousands
		{height, 1220, []string{`1220`, `1 220`, `1` + nbsp + `220`, `1` + narrow + `220`, `1` + thin + `220`, `1 220 mm`, `01220`, `1,220 m`, `1.220 m`, `1.22 m`, `1,22 m`, `122 cm`, `122cm`, `1220mm`, `1m22`, `1m 22`, `1 m 22`, `1 m 22 cm`, `1m22cm`, `1 m 220 mm`, `122,0 cm`, `  1220  `, "1220\r\n", "\t1220"}},
		{height, 1220.5, []string{`1220,5`, `1220.5`, `1,220.5`, `1.220,5`, `1 220,5`, `1 220.500`, `1'220.5 mm`, `122.05 cm`}},
		{height, 1050, []string{`1m05`, `1 m 05`, `1,05 m`}},
		{heightCm, 1742, []string{`174.2`, `174,2`, `1742 mm`, `1.742 m`, `174 cm 2 mm`}},
		{height, 0.22, []string{`0.220`, `0,22`, `.22`, `0,220`}},
		{ahead, 12345.6, []string{`12,345.6`, `12.345,6`, `12 345.6`}},
		// signs
		{height, -5, []string{`-5`, `−5`, `- 5`, `–5`, `-5 mm`, `-0.5 cm`}},
		{height, 5, []string{`+5`, `+ 5`}},
		{height, 0, []string{`0`, `-0`, `0.0`, `0 in`}},
		{ahead, -20, []string{`-20`, `-2 cm`, `−20 mm`}},
		{heightIn, -1765.3, []string{`-69 1/2`, `-5' 9 1/2"`, `−69½`}},
		// other kinds
		{weight, 84.5, []string{`84,5 kg`, `84.5`, `84500 g`, `84,500 kg`, `84,500 g`, `84 1/2`, `84.5 KG`, `84½ kilos`}},
		{weight, 78.471480, []string{`12 st 5`, `12st5`, `12 st 5 lb`, `12 stone 5 pounds`, `173 lb`, `173 lbs`}}, // 173 · 0.45359237
		{weight, 83.914588, []string{`185 lb`, `185lb`, `13 st 3`}},
		{strength, 13.5, []string{`13.5`, `13,5 kN`, `13500 N`, `1350 daN`, `13.5 kn`}},
		{strength, 24.020397, []string{`5400 lbf`, `5,400 lbf`}}, // 5400 · 0.0044482216
		{stretch, 2.1, []string{`2.1`, `2,1`, `2.1 %`, `2.1%`, `2.1 percent`}},
		{wraps, 6, []string{`6`, ` 6 `, `06`}},
		{shin, -8, []string{`-8`, `-8 deg`, `−8°`}},
		{ratio, 0.86, []string{`0.86`, `.86`, `0,86`}},
	} {
		for _, text := range c.text {
			a, err := Parse(text, c.f)
			if err != nil {
				t.Errorf("%s: %q: %v", c.f.Name, text, err)
			} else if !a.Taken() || math.Abs(a.Value.V-c.want) > 1e-9 {
				t.Errorf("%s: %q taken as %v, want %v", c.f.Name, text, a.Value, c.want)
			}
		}
	}
}

func TestEmptyIsNotTakenAndNotZero(t *testing.T) {
	for _, text := range []string{"", " ", "\t", "\n", "\r\n", "\u00a0\u202f"} {
		for _, f := range []Field{height, laid, weight, wraps} {
			if a, err := Parse(text, f); err != nil || a.Taken() || a.Value != (fit.Number{}) {
				t.Errorf("%s: %q gives %v, %v", f.Name, text, a, err)
			}
		}
	}
}

func TestAsks(t *testing.T) {
	for _, c := range []struct {
		f    Field
		text string
		want string // the choices
	}{
		{height, `1,220`, `1220 mm|1.22 mm`},
		{height, `1.220`, `1220 mm|1.22 mm`},
		{height, `1.234`, `1234 mm|1.2340 mm`},
		{height, `-1,220`, `-1220 mm|-1.22 mm`},
		{height, `1,220 mm`, `1220 mm|1.22 mm`},
		{height, `1'220`, `1220 mm|232 in`},
		{height, `1’220`, `1220 mm|232 in`},
		{height, `-1'220`, `-1220 mm|-232 in`},
		{laid, `1'220,5`, `1220.5 mm|232.5 in`},
		{laidIn, `1.125`, `1125 in|1.1250 in`},
		{laid, `68 1/2`, `68 1/2 in`},
		{heightCm, `-68½`, `-68 1/2 in`},
		{inside, `1 1/2`, `1 1/2 in`},
		{stature, `5.9 ft`, `5 ft 10.8 in|5 ft 9 in`},
		{stature, `5,9 ft`, `5 ft 10.8 in|5 ft 9 in`},
		{stature, `5.10'`, `5 ft 1.2 in|5 ft 10 in`},
		{stature, `6.05 feet`, `6 ft 0.6 in|6 ft 5 in`},
		{height, `-5.9 ft`, `-5 ft 10.8 in|-5 ft 9 in`},
	} {
		a, err := Parse(c.text, c.f)
		var ask *Ambiguous
		if !errors.As(err, &ask) {
			t.Errorf("%s: %q: got %v, %v", c.f.Name, c.text, a, err)
			continue
		}
		if got := texts(ask.Choices); got != c.want {
			t.Errorf("%s: %q asks %s, want %s", c.f.Name, c.text, got, c.want)
		}
		checkChoices(t, c.f, ask.Choices)
	}
}

// checkChoices holds that typing a choice gives it.
func checkChoices(t *testing.T, f Field, cs []Choice) {
	t.Helper()
	f.Usual = Range{}
	for _, c := range cs {
		if a, err := Parse(c.Text, f); err != nil || a.Value != c.Answer.Value || !a.Taken() {
			t.Errorf("%s: choice %q gives %v, %v; want %v", f.Name, c.Text, a.Value, err, c.Answer.Value)
		}
	}
}

func texts(cs []Choice) string {
	var s []string
	for _, c := range cs {
		s = append(s, c.Text)
	}
	return strings.Join(s, "|")
}

func TestQuestionsWhatIsUnusual(t *testing.T) {
	for _, c := range []struct {
		f      Field
		text   string
		value  float64
		likely string
	}{
		{hip, `122`, 122, `122 cm`},
		{hip, `12200`, 12200, ``},
		{hip, `1.22`, 1.22, `1.22 m`},
		{hip, `48`, 48, `48 in`},
		{hip, `4`, 4, `4 ft`},
		{hip, `122 mm`, 122, ``},
		{hip, `-1220`, -1220, ``},
		{weight, `185`, 185, `185 lb`},
		{weight, `30`, 30, ``},
	} {
		_, err := Parse(c.text, c.f)
		var u *Unlikely
		if !errors.As(err, &u) {
			t.Errorf("%s: %q: %v, want a question", c.f.Name, c.text, err)
			continue
		}
		if !u.Answer.Taken() || u.Answer.Value.V != c.value || texts(u.Likely) != c.likely {
			t.Errorf("%s: %q: %v, perhaps %q; want %v, perhaps %q", c.f.Name, c.text, u.Answer.Value, texts(u.Likely), c.value, c.likely)
		}
		checkChoices(t, c.f, u.Likely)
	}
	// 5.9 where feet are meant: never taken as 5 ft 9 unasked.
	_, err := Parse("5.9", Field{Name: "stature", Kind: Laid, Unit: sessions.Inch, Usual: Range{1400, 2100}})
	var u *Unlikely
	if !errors.As(err, &u) || texts(u.Likely) != "5 ft 10.8 in|5 ft 9 in" {
		t.Errorf("5.9 for a stature in inches: %v", err)
	}
	if got, want := err.Error(), "stature: 5 29/32 in = 149.9 mm; usual is 55 1/8 in to 82 11/16 in; perhaps 5 ft 10.8 in (5 ft 10 13/16 in = 70 13/16 in = 1798.3 mm), or 5 ft 9 in"; got != want {
		t.Errorf("said %q\nwant %q", got, want)
	}
}

func TestRefuses(t *testing.T) {
	for _, c := range []struct {
		f    Field
		text string
		why  string // part of the reason
	}{
		{laid, `151/2 in`, "75.5 or 15 1/2"}, {stature, `151/2`, "75.5 or 15 1/2"},
		{stature, `5' 13"`, "13 in is not below 12 beside ft"}, {stature, `5' -2"`, "minus"}, {stature, `5' - 2"`, "minus"}, {stature, `5'−2"`, "minus"},
		{laid, `9 5/4 in`, "5/4"}, {laid, `9 1/0 in`, "1/0"}, {laid, `9 /2`, "without spaces"}, {laid, `9 1 /2 in`, "without spaces"}, {laid, `9 1/ 2 in`, "without spaces"},
		{laid, `9 0/4 in`, "0/4"}, {laid, `4/4 in`, "4/4"}, {laid, `9 1/100 in`, "1/100"}, {laid, `9.5 1/2 in`, "decimals and a fraction"}, {laid, `1/2/3 in`, "1/2"}, {laid, `1/`, "1/2"}, {laid, `/2`, "1/2"},
		{laid, `-5`, "no sign"}, {laid, `+5`, "no sign"}, {laid, `−5`, "no sign"}, {laid, `- 5`, "no sign"}, {weight, `-84`, "no sign"},
		{laid, `0`, "above 0; leave it empty"}, {laid, `0.0000001`, "above 0"}, {weight, `0`, "above 0"}, {laid, `0 in`, "above 0"},
		{laid, `1e3`, `"e" is no unit`}, {laid, `0x4C4`, `"x" is no unit`}, {laid, `1_220`, `"_"`}, {laid, `NaN`, `"nan" is no unit`}, {laid, `inf`, `"inf" is no unit`}, {height, `-inf`, `"inf" is no unit`}, {laid, `٣٤٥`, "0 to 9"}, {laid, `１２２０`, "0 to 9"}, {laid, `12²`, "0 to 9"}, {laid, `Ⅻ`, "0 to 9"},
		{laid, `~1220`, `"~"`}, {laid, `1220?`, `"?"`}, {laid, `?`, `"?"`}, {laid, `1220 or so`, `"or"`}, {laid, `1215-1225`, "range"}, {laid, `1215–1225`, "range"}, {laid, `1220±5`, `"±"`}, {laid, `1220 +/- 5`, `"+"`}, {laid, `1220 (bad)`, `"("`}, {laid, `>1220`, `">"`},
		{laid, `skip`, `"skip"`}, {laid, `back`, `"back"`}, {laid, "1220\n1215", "one line"}, {laid, "1220\r1215", "one line"}, {laid, "12\x0020", "control"}, {laid, "12\x1b[2J20", "control"}, {laid, "\xff", "text"}, {laid, "12\u200b20", `\u200b`}, {laid, strings.Repeat("1 ", 40), "too long"}, {laid, strings.Repeat("1", 21), "digits"},
		{height, `84 kg`, "a height is a length, and this is a mass"}, {weight, `84 cm`, "a mass is a mass, and this is a length"}, {strength, `3000 lb`, "a force, and this is a mass"}, {wraps, `6 mm`, "a count"}, {laid, `5 %`, "a percentage"}, {laid, `90 deg`, "an angle"}, {shin, `5 mm`, "an angle"},
		{laid, `mm`, "no number"}, {laid, `"`, "no number"}, {laid, `mm 5`, "no number"}, {laid, `- `, "no number"}, {laid, `5 mm mm`, "no number"}, {laid, `.`, "point or comma"}, {laid, `1220.`, "point or comma"}, {laid, `.5.`, "point or comma"},
		{laid, `1,22,5`, "odd places"}, {laid, `1.2,5`, "odd places"}, {laid, `1,2.5`, "odd places"}, {laid, `1..5`, "odd places"}, {laid, `1,220,5`, "odd places"}, {laid, `0,220,500`, "odd places"}, {laid, `1,220.5,0`, "odd places"},
		{laid, `12 20`, "two numbers"}, {laid, `5 9`, "two numbers"}, {laid, `1220 5`, "two numbers"}, {laid, `1 220 5`, "two numbers"}, {laid, `012 220`, "two numbers"}, {laid, `9 1½ in`, "two numbers"},
		{laid, `5 mm 3`, "two numbers"}, {laid, `5 in 3 mm`, "does not go with"}, {laid, `1 m 3 in`, "does not go with"}, {laid, `5 cm 1 m`, "does not go with"}, {laid, `5 ft 9 in 3`, "two numbers"}, {laid, `5' 9' `, "does not go with"}, {weight, `12 st 15`, "not below 14"}, {laid, `1 m 5`, "two digits"}, {laid, `1m220`, "two digits"}, {laid, `1 m 100 cm`, "not below 100"}, {stature, `5.5' 6"`, "whole"}, {stature, `5 1/2' 6"`, "whole"},
		{laid, `100001`, "more than 100 m"}, {height, `-101 m`, "more than 100 m"}, {laid, `1,220,000`, "more than 100 m"},
		{wraps, `6.5`, "whole number"}, {wraps, `0`, "below 1"}, {wraps, `13`, "above 12"}, {wraps, `-3`, "no sign"}, {wraps, `six`, `"six"`},
		{weight, `18`, "below 25 kg"}, {weight, `300`, "above 250 kg"}, {rope, `0.449`, "below 6 mm"}, {strength, `13500`, "above 60 kN"}, {stretch, `0.021`, "below 0.3 %"}, {stature, `174.2`, "above 98 7/16 in"},
	} {
		a, err := Parse(c.text, c.f)
		var r *Refused
		if !errors.As(err, &r) || a.Taken() {
			t.Errorf("%s: %q: got %v, %v; want a refusal", c.f.Name, c.text, a.Value, err)
			continue
		}
		if !strings.Contains(r.Why, c.why) {
			t.Errorf("%s: %q: refused for %q, want %q", c.f.Name, c.text, r.Why, c.why)
		}
		if r.WrongKind != strings.Contains(r.Why, "and this is") {
			t.Errorf("%s: %q: WrongKind is %v: %s", c.f.Name, c.text, r.WrongKind, r.Why)
		}
		if r.Accepted == "" || r.Example == "" || r.Typed != strings.TrimSpace(c.text) || r.Name != c.f.Name {
			t.Errorf("%s: %q: refusal lacks words: %#v", c.f.Name, c.text, r)
		}
	}
}

func TestRefusalNamesTheLikelyUnit(t *testing.T) {
	for _, c := range []struct {
		f            Field
		text, likely string
	}{
		{strength, `13500`, `13500 N`}, {rope, `0.449`, `0.4490 in`}, {rope, `1.1`, `1.1 cm`}, {stature, `174.2`, `174.2 cm`}, {stature, `1742`, `1742 mm`},
		{stature, `5.9`, `5 ft 10.8 in|5 ft 9 in`}, {weight, `300`, `300 lb`}, {weight, `18 kg`, ``}, {stretch, `0.021`, ``},
	} {
		_, err := Parse(c.text, c.f)
		var r *Refused
		if !errors.As(err, &r) || texts(r.Likely) != c.likely {
			t.Errorf("%s: %q: %v, want perhaps %q", c.f.Name, c.text, err, c.likely)
		}
	}
}

func TestUnderstood(t *testing.T) {
	for _, c := range []struct {
		f          Field
		text, want string
	}{
		{height, `1220`, "1220 mm = 48 1/32 in"}, {heightIn, `48 1/32`, "48 1/32 in = 1220 mm"}, {heightCm, `122`, "122 cm = 48 1/32 in"},
		{height, `-5`, "-5 mm = -3/16 in"}, {height, `-0.01`, "0 mm = 0 in"}, {heightIn, `5'9½"`, "5 ft 9 1/2 in = 69 1/2 in = 1765.3 mm"}, {height, `5'9½"`, "1765.3 mm = 5 ft 9 1/2 in = 69 1/2 in"},
		{rope, `7/16 in`, "11.11 mm = 0.438 in"}, {weight, `12 st 5`, "78.5 kg = 173 lb"}, {strength, `13.5`, "13.5 kN = 3035 lbf"}, {stretch, `2,1`, "2.1 %"}, {wraps, `6`, "6"}, {shin, `-8`, "-8 deg"},
	} {
		if a, err := Parse(c.text, c.f); err != nil || a.Understood != c.want {
			t.Errorf("%s: %q: understood %q, %v; want %q", c.f.Name, c.text, a.Understood, err, c.want)
		}
	}
}

func TestNotesADivisionThatNoTapeShows(t *testing.T) {
	for text, noted := range map[string]bool{`9 1/3 in`: true, `9 7/64 in`: true, `9 1/32 in`: true, `9 4/64 in`: false, `9 3/16 in`: false, `9.3 in`: false} {
		if a, err := Parse(text, laid); err != nil || (len(a.Notes) == 1) != noted {
			t.Errorf("%q: notes %q, %v", text, a.Notes, err)
		}
	}
}

// A number without a unit takes the unit that people read in at that moment;
// what was typed with one does not change.
func TestUnitSwitchedHalfWay(t *testing.T) {
	for _, f := range []Field{height, heightCm, heightIn} {
		if a, err := Parse("48 in", f); err != nil || a.Value != fit.Some(1219.2) {
			t.Errorf("%s: 48 in is %v, %v", f.Unit, a.Value, err)
		}
		if text := Text(1219.2, f); !strings.HasSuffix(text, f.bareUnit().name) {
			t.Errorf("%s: 1219.2 mm is shown as %q", f.Unit, text)
		}
	}
}

func TestErrorsReadWell(t *testing.T) {
	for _, c := range []struct {
		f          Field
		text, want string
	}{
		{height, `84 kg`, `nose: "84 kg": a height is a length, and this is a mass; accepted is a length in mm, or with mm, cm, m, in or ft; a minus sign is allowed, for example 1742, 174.2 cm, 68 1/2 in or 5 ft 8 1/2 in`},
		{height, `1,220`, `nose: "1,220": the point or comma may be between thousands or before decimals: 1220 mm, or 1.22 mm (1.2 mm = 1/16 in)?`},
		{hip, `122`, `hip point: 122 mm = 4 13/16 in; usual is 900 mm to 1500 mm; perhaps 122 cm (1220 mm = 48 1/32 in)`},
		{strength, `13500`, `strength: "13500": 13500 kN is above 60 kN; perhaps 13500 N (13.5 kN = 3035 lbf); accepted is a force in kN, or with N, daN or lbf, from 0.5 kN to 60 kN, for example 13.5 or 13500 N`},
	} {
		if _, err := Parse(c.text, c.f); err == nil || err.Error() != c.want {
			t.Errorf("said %v\nwant %s", err, c.want)
		}
	}
}

// Who reads in inches types the fraction of a label as it stands there; who reads
// in mm is asked.
func TestFractionOfALabel(t *testing.T) {
	f := Field{Name: "rope", Kind: Diameter, Unit: sessions.Inch, Accepted: Range{Least: 6, Most: 20}}
	if a, err := Parse("7/16", f); err != nil || math.Abs(a.Value.V-11.1125) > 1e-9 {
		t.Errorf("7/16 is taken as %v: %v", a.Value, err)
	}
	if _, err := Parse("1/16", f); err == nil {
		t.Error("1/16 in is taken for a rope")
	}
	f.Unit = sessions.MM
	if _, err := Parse("7/16", f); err == nil {
		t.Error("a fraction is taken where people read in mm")
	}
}

// What cannot be below 0 is not said to take a minus sign.
func TestAcceptedWords(t *testing.T) {
	for want, r := range map[string]Range{
		"a length in mm, or with mm, cm, m, in or ft; a minus sign is allowed":                           {},
		"a length in mm, or with mm, cm, m, in or ft, from 0 mm to 2000 mm":                              {Least: 0, Most: 2000},
		"a length in mm, or with mm, cm, m, in or ft; a minus sign is allowed, from -2000 mm to 2000 mm": {Least: -2000, Most: 2000},
	} {
		if got := (Field{Name: "drop", Kind: Height, Accepted: r}).AcceptedWords(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestAcceptedInInches(t *testing.T) {
	if got := (Field{Name: "bridge", Kind: Laid, Unit: sessions.Inch}).AcceptedWords(); got != "a length above 0 in inches, or with mm, cm, m, in or ft" {
		t.Error(got)
	}
}

func TestForReading(t *testing.T) {
	for r, kind := range map[fit.Reading]Kind{fit.Hip: Height, fit.GardaTaut: Height, fit.Tether: Laid, fit.Stature: Laid, fit.Ahead: Offset} {
		if f := ForReading(r, sessions.Inch); f.Kind != kind || f.Unit != sessions.Inch || f.Name != r.String() {
			t.Errorf("%s: %+v", r, f)
		}
	}
}
