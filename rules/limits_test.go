package rules

import (
	"math"
	"slices"
	"strings"
	"testing"
)

func TestLimitsAreFoundByName(t *testing.T) {
	for l := range NumLimits {
		if got, ok := LimitNamed(l.String()); !ok || got != l {
			t.Errorf("LimitNamed(%q) = %v, %v", l, got, ok)
		}
	}
	if l, ok := LimitNamed("connector-clearence"); ok {
		t.Errorf("a misspelt name found %v", l)
	}
}

func TestWithMovesOnlyWhatTheSchoolMoved(t *testing.T) {
	moved := DefaultLimits().With(map[Limit]float64{ConnectorClearance: 30})
	for l := range NumLimits {
		want := l.Info().Default
		if l == ConnectorClearance {
			want = 30
		}
		if moved[l] != want {
			t.Errorf("%s = %v, want %v", l, moved[l], want)
		}
	}
	if DefaultLimits()[ConnectorClearance] != 25 {
		t.Error("moving a limit changed the defaults")
	}
}

func TestFaultsOfLimits(t *testing.T) {
	for _, c := range []struct {
		name  string
		moved map[Limit]float64
		want  []string
	}{
		{"defaults", nil, nil},
		{"at the bounds", map[Limit]float64{ConnectorClearance: 10, ReleaseRoom: 150}, nil},
		{"below", map[Limit]float64{ConnectorClearance: 9.9}, []string{"connector-clearance is 9.9 mm; accepted is 10 to 100 mm"}},
		{"above", map[Limit]float64{LeastWraps: 9}, []string{"least-wraps is 9; accepted is 2 to 8"}},
		{"not a number", map[Limit]float64{MostDrop: math.NaN()}, []string{"most-drop is NaN mm; accepted is 150 to 610 mm"}},
		{"crossed", map[Limit]float64{LeastOver: 40, MostOver: 25}, []string{"least-over is 40 mm, above most-over at 25 mm"}},
		{"equal", map[Limit]float64{LeastOver: 40, MostOver: 40}, nil},
		{"two", map[Limit]float64{PeakForce: 9, ReachReserve: -1}, []string{"reach-reserve is -1 mm", "peak-force is 9 kN; accepted is 3 to 8 kN"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			faults := DefaultLimits().With(c.moved).Faults()
			ok := slices.EqualFunc(faults, c.want, func(f LimitFault, want string) bool { return strings.Contains(f.Error(), want) })
			if !ok {
				t.Errorf("got %v, want %q", faults, c.want)
			}
		})
	}
}
