package sessions

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"
)

// takeNumber reads an integer or a float and holds it against the range.
func takeNumber(v any, about KeyInfo) (float64, []wrong) {
	var n float64
	switch v := v.(type) {
	case int64:
		n = float64(v)
	case float64:
		n = v
	default:
		return 0, []wrong{{found: inWords(v)}}
	}
	if math.Abs(n) < nothing {
		n = 0 // also -0
	}
	if math.IsNaN(n) || !about.Holds(n) {
		return 0, []wrong{{found: show(v), hint: numberHint(n, about)}}
	}
	return n, nil
}

func takeText(v any) (string, []wrong) {
	s, ok := v.(string)
	switch {
	case !ok:
		return "", []wrong{{found: inWords(v)}}
	case len(s) > mostText:
		return "", []wrong{{found: fmt.Sprintf("a text of %d bytes", len(s))}}
	}
	return strings.Clone(s), nil // a part of the file's text would keep all of it in memory
}

// numberHint guesses how a number outside its range came about: something left
// untold, or told in another unit.
func numberHint(v float64, k KeyInfo) string {
	if v == 0 && k.Least >= 0 {
		return "what was not taken is left out, never 0"
	}
	usual := k
	if k.usual != [2]float64{} {
		usual = between(k.usual[0], k.usual[1])
	}
	for _, u := range otherUnits[k.Unit] {
		if in := v * u.factor; usual.Holds(in) {
			return fmt.Sprintf("%s %s would be %s %s", decimal(v), u.name, decimal(math.Round(in*100)/100), k.Unit)
		}
	}
	return ""
}

// otherUnits are what people type in place of a file's unit, the likeliest
// first, with the factor that leads to the file's unit.
var otherUnits = map[string][]struct {
	name   string
	factor float64
}{
	"mm": {{"cm", 10}, {"in", 25.4}, {"m", 1000}, {"ft", 304.8}},
	"kg": {{"lb", 0.45359237}, {"g", 0.001}, {"st", 6.35029318}},
	"kN": {{"N", 0.001}, {"lbf", 0.0044482216}},
	"%":  {{"as a fraction", 100}},
}

// unitOf is the unit that ends a key.
func unitOf(key string) string {
	for end, unit := range map[string]string{"_mm": "mm", "_kg": "kg", "_kn": "kN", "_percent": "%", "_deg": "deg", "_min": "min"} {
		if strings.HasSuffix(key, end) {
			return unit
		}
	}
	return ""
}

// nothing is what counts as 0, in a file read and in a file written: less than
// any tape, scale or angle shows.
const nothing = 1e-9

// decimal is the shortest decimal that reads back as v, without an exponent.
func decimal(v float64) string {
	if math.Abs(v) < nothing {
		return "0" // also -0
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

func decimals(v ...float64) string {
	all := make([]string, len(v))
	for i, n := range v {
		all[i] = decimal(n)
	}
	return "[" + strings.Join(all, ", ") + "]"
}

// quoted is s as a TOML text of one line. What is no UTF-8 stays as it is, so
// that it is refused and not saved as something else.
func quoted(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for i, r := range s {
		switch {
		case r == utf8.RuneError:
			_, n := utf8.DecodeRuneInString(s[i:])
			b.WriteString(s[i : i+n])
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r < ' ' || r == 0x7F:
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// inWords is a value of the wrong type, for an error.
func inWords(v any) string {
	switch v := v.(type) {
	case string:
		return "the text " + show(v)
	case bool:
		return "the truth value " + show(v)
	case int64, float64:
		return "the number " + show(v)
	case []any:
		if len(v) == 0 {
			return "an empty list"
		}
		return fmt.Sprintf("a list of %d", len(v))
	case map[string]any, []map[string]any:
		return "a table"
	case time.Time:
		switch v.Location().String() {
		case localDate:
			return "the date " + show(v)
		case localTime:
			return "the time of day " + show(v)
		case localDateTime:
			return show(v) + " without a zone"
		}
		return "the date and time " + show(v)
	}
	return fmt.Sprint(v)
}

// show is a single value much as it stands in the file, cut where it is long.
func show(v any) string {
	switch v := v.(type) {
	case string:
		const most = 40
		if len(v) > most {
			return strconv.QuoteToGraphic(v[:most]) + "…"
		}
		return strconv.QuoteToGraphic(v)
	case float64:
		return strconv.FormatFloat(v, 'g', -1, 64)
	case time.Time:
		switch v.Location().String() {
		case localDate:
			return v.Format(time.DateOnly)
		case localTime:
			return v.Format(time.TimeOnly)
		case localDateTime:
			return v.Format("2006-01-02T15:04:05")
		}
		return v.Format(time.RFC3339)
	}
	return fmt.Sprint(v)
}

// ordinal names an entry of a list where there are several.
func ordinal(i, n int) string {
	if n == 1 {
		return ""
	}
	return fmt.Sprintf(" (entry %d)", i+1)
}
