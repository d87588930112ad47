package fit

import (
	"math"
	"slices"
	"testing"
)

// A knee read again in a later hang, without the Garda hitch, does not belong to
// the pose that was read: the knee of the pose's own hang counts, or none.
func TestKneeBelongsToItsPose(t *testing.T) {
	hang := func(knee ...float64) Hang {
		var h Hang
		h.Heights[Hip], h.Heights[KneeLevel] = []float64{1000}, knee
		return h
	}
	for _, c := range []struct {
		name  string
		first []float64
		want  float64 // above the hip, 0 by eye
	}{
		{"its own", []float64{1012}, 12},
		{"none", nil, 0},
	} {
		f := &Fitting{Tape: Tape{Class: ClassII, Division: 1}, Hangs: []Hang{hang(c.first...), hang(1050)}}
		f.Hangs[0].Heights[GardaLevel] = []float64{1500}
		m := NewModel(f, Options{})
		var s State
		m.Current(&s)
		if s.KneeAtLevel != c.want {
			t.Errorf("%s: knee at level %g, want %g", c.name, s.KneeAtLevel, c.want)
		}
		for i := range m.Inputs {
			if in := &m.Inputs[i]; in.Reading == KneeLevel && !in.Hidden && in.Hang != 0 {
				t.Errorf("%s: the knee of hang %d is listed", c.name, in.Hang+1)
			}
		}
	}
}

// sideHang is a hang whose hip reads 1000, with the heights of the map.
func sideHang(heights map[Reading]float64) Hang {
	var h Hang
	h.Heights[Hip] = []float64{1000}
	for r, v := range heights {
		h.Heights[r] = []float64{v}
	}
	return h
}

// A hitch tied anew keeps its wraps, here 100 mm: its old top over the old end of
// its loop, also where two hangs read them, with two main bridges. The bridges
// are 500 and 780 mm long on rings 300 mm apart: they rise 200 and 360 mm, since
// 15:20:25 and 15:36:39 are right triangles.
func TestWrapsOfTwoHangs(t *testing.T) {
	for _, c := range []struct {
		name    string
		hangs   []Hang
		changes []Change
	}{
		{"one hang", []Hang{
			sideHang(map[Reading]float64{ConnectorTop: 1500, LeftLoopTop: 1800, LeftHitchTop: 1900}),
		}, []Change{{Piece: PieceHitchLeft, To: 350, AfterHang: 1}}},
		{"loop before hitch", []Hang{
			sideHang(map[Reading]float64{LeftLoopTop: 1800}),
			sideHang(map[Reading]float64{ConnectorTop: 1500, LeftHitchTop: 1900}),
		}, []Change{{Piece: PieceHitchLeft, To: 350, AfterHang: 2}}},
		{"loop after hitch", []Hang{
			sideHang(map[Reading]float64{LeftHitchTop: 1900}),
			sideHang(map[Reading]float64{ConnectorTop: 1500, LeftLoopTop: 1800}),
		}, []Change{{Piece: PieceHitchLeft, To: 350, AfterHang: 2}}},
		{"loop's hang counts for nothing else", []Hang{
			sideHang(map[Reading]float64{LeftLoopTop: 1800}),
			sideHang(map[Reading]float64{LeftHitchTop: 1900}),
			sideHang(map[Reading]float64{ConnectorTop: 1500, LeftLoopTop: 1850}),
		}, []Change{{Piece: PieceHitchLeft, To: 350, AfterHang: 2}}},
		{"main bridge between loop and hitch", []Hang{
			sideHang(map[Reading]float64{LeftLoopTop: 1640}),
			sideHang(map[Reading]float64{ConnectorTop: 1500, LeftHitchTop: 1900}),
		}, []Change{{Piece: PieceMainBridge, To: 780, AfterHang: 1}, {Piece: PieceHitchLeft, To: 350, AfterHang: 2}}},
		{"loop read again, connector never", []Hang{
			sideHang(map[Reading]float64{LeftLoopTop: 1800, LeftHitchTop: 1900}),
			sideHang(map[Reading]float64{LeftLoopTop: 1850}),
		}, []Change{{Piece: PieceHitchLeft, To: 350, AfterHang: 1}}},
	} {
		f := &Fitting{Tape: Tape{Class: ClassII, Division: 1}, Hangs: c.hangs, Changes: c.changes}
		f.Laid[MainBridge], f.Laid[MainBridgeRings] = []float64{500}, []float64{300}
		m := NewModel(f, Options{})
		var s State
		m.Current(&s)
		if want := 500 + 350 + 100.0; math.Abs(s.HitchTop[0]-want) > 1e-9 {
			t.Errorf("%s: hitch top %g above the hip, want %g", c.name, s.HitchTop[0], want)
		}
		if keys := m.Missing(NeedHitchTopLeft); len(keys) > 0 {
			t.Errorf("%s: missing %v, want nothing", c.name, keys)
		}
	}
}

// Hitch tops that two hangs read are compared by their hips, connector or no
// connector, and by the main bridge only where it was another one.
func TestPairOfTwoHangs(t *testing.T) {
	left, right := sideHang(map[Reading]float64{LeftHitchTop: 1900}), sideHang(map[Reading]float64{RightHitchTop: 1890})
	right.Heights[Hip] = []float64{1005}
	f := &Fitting{Tape: Tape{Class: ClassII, Division: 1}, Hangs: []Hang{left, right}}
	m := NewModel(f, Options{})
	var s State
	m.Current(&s)
	if s.PairDifference != 15 {
		t.Errorf("left above right by %g, want 900 - 885", s.PairDifference)
	}
	f.Changes = []Change{{Piece: PieceMainBridge, To: 780, AfterHang: 2}}
	m = NewModel(f, Options{})
	m.Current(&s)
	if s.PairDifference != 15 {
		t.Errorf("left above right by %g after a change that lifts both, want 15", s.PairDifference)
	}
	f.Changes[0].AfterHang = 1
	m = NewModel(f, Options{})
	m.Current(&s)
	want := []string{"kit.main_bridge.length_mm", "kit.main_bridge.rings_mm"}
	if keys := SortKeys(m.Missing(NeedPair)); !math.IsNaN(s.PairDifference) || !slices.Equal(keys, want) {
		t.Errorf("by %g with a bridge of unknown length in between, missing %v, want unknown for want of %v", s.PairDifference, keys, want)
	}
}
