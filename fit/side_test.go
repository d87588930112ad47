package fit

import "testing"

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
