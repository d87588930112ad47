package fit

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// A Fault is something in a fitting that cannot be.
type Fault struct {
	Keys []string // in the session file
	Text string   // what was found and what is accepted, lengths in mm as they were typed

	format string
	args   []any
}

// mm is a length in a Fault.
type mm float64

// Told is the fault's Text with its lengths, in mm, as tell writes them.
func (f Fault) Told(tell func(mm float64) string) string {
	if f.format == "" {
		return f.Text
	}
	args := slices.Clone(f.args)
	for i, a := range args {
		if v, ok := a.(mm); ok {
			args[i] = tell(float64(v))
		}
	}
	return fmt.Sprintf(f.format, args...)
}

func inMM(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) + " mm" }

// Error is the fault in words, with its keys.
func (f Fault) Error() string { return strings.Join(f.Keys, ", ") + ": " + f.Text }

// Faults are all the things in f that cannot be, in no settled order: lengths
// that are not above 0, bridges that do not reach across their rings, heights
// in an order that no climber hangs in, changes and kept lengths that lead
// nowhere. A fitting with a fault must not be computed.
func (f *Fitting) Faults() []Fault {
	var c faultCollector
	f.lengthFaults(&c)
	for h := range f.Hangs {
		f.Hangs[h].faults(h, &c)
	}
	f.changeFaults(&c)
	f.keptFaults(&c)
	f.postureFaults(&c)
	return c.faults
}

type faultCollector struct{ faults []Fault }

func (c *faultCollector) add(keys []string, format string, args ...any) {
	f := Fault{Keys: keys, format: format, args: args}
	f.Text = f.Told(inMM)
	c.faults = append(c.faults, f)
}

func (f *Fitting) lengthFaults(c *faultCollector) {
	for r := Reading(0); r < NumReadings; r++ {
		if r.IsHeight() || r == Ahead {
			continue
		}
		for _, v := range f.Laid[r] {
			if !(v > 0) {
				c.add([]string{LaidKey(r)}, "%s is %s; a laid length is above 0, and what was not taken is left out", r, mm(v))
			}
		}
	}
	if f.StatureTold.Known && !(f.StatureTold.V > 0) {
		c.add([]string{"climber.stature_told_mm"}, "stature is %s; a length is above 0", mm(f.StatureTold.V))
	}
	if f.Mass.Known && !(f.Mass.V > 0) {
		c.add([]string{"climber.mass_kg"}, "is %g; a mass is above 0, and what was not taken is left out", f.Mass.V)
	}
	for _, b := range [][2]Reading{{MainBridge, MainBridgeRings}, {BackupBridge, BackupBridgeRings}} {
		length, rings := f.Laid[b[0]], f.Laid[b[1]]
		if len(length) > 0 && len(rings) > 0 && Mean(length) <= Mean(rings) {
			c.add([]string{LaidKey(b[0]), LaidKey(b[1])}, "a bridge of %s does not reach across rings %s apart", mm(Mean(length)), mm(Mean(rings)))
		}
	}
}

func (h *Hang) faults(i int, c *faultCollector) {
	order := func(low, high Reading, orEqual bool, text string) {
		if len(h.Heights[low]) == 0 || len(h.Heights[high]) == 0 {
			return
		}
		l, u := Mean(h.Heights[low]), Mean(h.Heights[high])
		if l < u || orEqual && l == u {
			return
		}
		c.add([]string{HeightKey(i, low), HeightKey(i, high)}, "%s and %s: %s", mm(l), mm(u), text)
	}
	order(ConnectorBottom, ConnectorTop, false, "the connector's bottom must be below its top")
	order(ConnectorTop, LeftLoopTop, false, "the left loop's top must be above the connector's top")
	order(ConnectorTop, RightLoopTop, false, "the right loop's top must be above the connector's top")
	order(LeftLoopTop, LeftHitchTop, false, "the left hitch's top must be above its loop's top")
	order(RightLoopTop, RightHitchTop, false, "the right hitch's top must be above its loop's top")
	order(Ground, Soles, true, "the soles are below the ground")
	order(Hip, Nose, true, "the nose is below the hip: is the tape the right way up?")
}

func (f *Fitting) changeFaults(c *faultCollector) {
	for i := range f.Changes {
		ch := &f.Changes[i]
		if ch.AfterHang < 1 || ch.AfterHang > len(f.Hangs) {
			c.add([]string{changesKey(i, "after_hang")}, "is %d; accepted is the number of a hang, 1 to %d", ch.AfterHang, len(f.Hangs))
		}
		to := append([]float64{ch.To}, ch.Measured...)
		key := ChangeKey(i, false)
		for j, v := range to {
			if j > 0 {
				key = ChangeKey(i, true)
			}
			if !(v > 0) {
				c.add([]string{key}, "is %s; a length is above 0", mm(v))
			}
			if rings, ok := bridgeRings[ch.Piece]; ok && len(f.Laid[rings]) > 0 && v > 0 && v <= Mean(f.Laid[rings]) {
				c.add([]string{key, LaidKey(rings)}, "a bridge of %s does not reach across rings %s apart", mm(v), mm(Mean(f.Laid[rings])))
			}
		}
	}
}

var bridgeRings = map[Piece]Reading{PieceMainBridge: MainBridgeRings, PieceBackupBridge: BackupBridgeRings}

func changesKey(i int, key string) string { return fmt.Sprintf("changes.%d.%s", i+1, key) }

// CanKeep says whether the length with the key may be taken over from an earlier
// session: a laid length of the climber or the kit, the connectors' width, or a
// cord's diameter. Heights never.
func CanKeep(key string) bool {
	switch key {
	case "kit.garda.inside_width_mm", "kit.hitch_left.cord_mm", "kit.hitch_right.cord_mm", "kit.tether.cord_mm":
		return true
	}
	for r := Reading(0); r < NumReadings; r++ {
		if !r.IsHeight() && r != Ahead && LaidKey(r) == key {
			return true
		}
	}
	return false
}

func (f *Fitting) keptFaults(c *faultCollector) {
	for i, k := range f.Kept {
		if !CanKeep(k.Key) {
			c.add([]string{fmt.Sprintf("kept.%d.key", i+1)}, "is %q; accepted is a length under climber or kit: heights are always read anew", k.Key)
		}
	}
}

func (f *Fitting) postureFaults(c *faultCollector) {
	for p := Posture(0); p < NumPostures; p++ {
		s := f.Posture[p]
		if !s.Given {
			continue
		}
		if math.IsNaN(s.V) || math.IsInf(s.V, 0) || !(s.U >= p.LeastU()) || math.IsInf(s.U, 0) {
			c.add([]string{postureKeys[p]}, "is %g ± %g; accepted is a value with a standard uncertainty of at least %g, a quarter of the default's", s.V, s.U, p.LeastU())
		}
	}
}
