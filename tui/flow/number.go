package flow

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/hangtape/sessions"
)

// parseNumber reads text as q, in the file's unit.
func parseNumber(text string, q Quantity, unit sessions.Unit) (float64, error) {
	t := strings.TrimSpace(text)
	scale := 1.0
	if q <= Signed {
		scale = map[sessions.Unit]float64{sessions.MM: 1, sessions.CM: 10, sessions.Inch: 25.4}[unit]
		for _, u := range []struct {
			name string
			mm   float64
		}{{"mm", 1}, {"cm", 10}, {"in", 25.4}, {"m", 1000}} {
			if rest, ok := strings.CutSuffix(t, u.name); ok {
				t, scale = strings.TrimSpace(rest), u.mm
				break
			}
		}
	}
	v, err := strconv.ParseFloat(strings.ReplaceAll(t, ",", "."), 64)
	if err != nil || strings.ContainsAny(t, "xXpP_nNiI") {
		return 0, fmt.Errorf("%q is %w; write it as 1742 or 174.2 cm", text, errNotANumber)
	}
	v *= scale
	if (q == Laid || q == Mass || q == Force || q == Percent || q == Count) && v <= 0 {
		return 0, fmt.Errorf("%q: above 0 is accepted; leave it empty where it was not taken", text)
	}
	return v, nil
}

// Show is v for reading aloud, with its unit.
func (q Quantity) Show(v float64, unit sessions.Unit) string {
	n := func(v float64, digits int) string {
		s := strconv.FormatFloat(v, 'f', digits, 64)
		if strings.Contains(s, ".") {
			s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
		}
		return s
	}
	switch q {
	case Height, Laid, Signed:
		switch unit {
		case sessions.CM:
			return n(v/10, 2) + " cm"
		case sessions.Inch:
			return n(v/25.4, 2) + " in"
		case sessions.MM:
		}
		return n(v, 1) + " mm"
	case Mass, MassDoubt:
		return n(v, 1) + " kg"
	case Force:
		return n(v, 2) + " kN"
	case Percent:
		return n(v, 2) + " %"
	case Count:
	}
	return n(v, 1)
}

func exact(v float64, q Quantity, unit sessions.Unit) string {
	s := strconv.FormatFloat(v, 'f', -1, 64)
	if q <= Signed && unit != sessions.MM {
		return s + " mm"
	}
	return s
}
