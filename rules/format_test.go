package rules

import (
	"math"
	"testing"
)

func TestFormatLength(t *testing.T) {
	for _, c := range []struct {
		mm   float64
		unit string
		want string
	}{
		{1742, "mm", "1742 mm"},
		{1741.6, "mm", "1742 mm"},
		{-0.2, "mm", "0 mm"},
		{1742, "cm", "174.2 cm"},
		{1739.9, "in", "68 1/2 in"},
		{25.4, "in", "1 in"},
		{3.175, "in", "1/8 in"},
		{-52.3875, "in", "-2 1/16 in"},
		{0.5, "in", "0 in"},
		{-0.5, "in", "0 in"},
		{25.3, "in", "1 in"},
		{math.NaN(), "cm", "-"},
	} {
		if got := FormatLength(c.mm, c.unit); got != c.want {
			t.Errorf("FormatLength(%v, %q) = %q, want %q", c.mm, c.unit, got, c.want)
		}
	}
}

func TestFormatPM(t *testing.T) {
	for _, c := range []struct {
		v, u float64
		unit string
		want string
	}{
		{22.5, 4.789, "mm", "22 ± 5 mm"},
		{2.94, 1, "mm", "3 ± 1 mm"}, // the last digit is not finer than u, as far as the unit goes
		{2.94, 0.99, "mm", "2.9 ± 1.0 mm"},
		{2.94, 0.001, "mm", "2.9 ± 0.0 mm"},
		{2.944, 0.1, "cm", "0.29 ± 0.01 cm"},
		{2.944, 0, "mm", "3 mm"},
		{2.94444, 0.00001, "kN", "2.944 ± 0.000 kN"},
		{-12.58, 8.12, "mm", "-13 ± 8 mm"},
		{2.9, 0.812, "mm", "2.9 ± 0.8 mm"},
		{58.8, 20.4, "cm", "5.9 ± 2.0 cm"},
		{58.8, 20.4, "in", "2.3 ± 0.8 in"},
		{2.9, 0.812, "in", "0.11 ± 0.03 in"},
		{0.330, 0.1416, "kN", "0.33 ± 0.14 kN"},
		{11.47, 1.03, "deg", "11 ± 1 deg"},
		{0.0727, 0.0225, "", "0.07 ± 0.02"},
		{0.0022, 0.0041, "", "0.002 ± 0.004"},
		{-0.3, 4, "mm", "0 ± 4 mm"},
		{1, 0, "", "1.00"},
		{12, math.NaN(), "mm", "12 mm"},
		{math.NaN(), 3, "mm", "-"},
	} {
		if got := FormatPM(c.v, c.u, c.unit); got != c.want {
			t.Errorf("FormatPM(%v, %v, %q) = %q, want %q", c.v, c.u, c.unit, got, c.want)
		}
	}
}

func TestCountsAndCapitals(t *testing.T) {
	for n, want := range map[int]string{0: "0 sessions", 1: "1 session", 12: "12 sessions"} {
		if got := Count(n, "session", "sessions"); got != want {
			t.Errorf("%d: %q, want %q", n, got, want)
		}
	}
	for text, want := range map[string]string{"hip": "Hip", "äste": "Äste", "": "", "Nose": "Nose"} {
		if got := Upper(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

func TestWhatACheckIsForTheSignOffInAWord(t *testing.T) {
	for kind, want := range map[Kind]string{Must: "must", Should: "should"} {
		if got := kind.Word(); got != want {
			t.Errorf("%q: %q, want %q", kind, got, want)
		}
	}
}
