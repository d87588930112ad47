package truth

// A Size is what a label says and what is so.
type Size struct{ Label, True float64 }

// Gear is the part of a kit that no fitting changes: rope and sizes off labels.
// Strengths, strands and wraps are exact. Zero is: no label.
type Gear struct {
	Rope       Size    // mm
	Elongation Size    // %, between 50 kg and 150 kg
	Width      Size    // mm, inside, of the Garda hitch's connectors
	Cord       [2]Size // mm, of the friction hitches
	CordForce  float64 // kN, label of the hitch cord
	Wraps      float64
	TetherCord Size    // mm
	Strands    float64 // of the tether
	Tether     float64 // kN, label of the tether's cord
	OwnRings   bool    // the backup bridge has rings of its own
}

// drawGear takes a kit that a school would buy, and what its sizes really are.
func drawGear(d Dice) Gear {
	rope := pick(d, 10.5, 11, 11.4, 11.7)
	cord := pick(d, 7, 8, 8)
	g := Gear{
		Rope:       Size{Label: rope},
		Elongation: Size{Label: pick(d, 1.6, 2.1, 2.8, 3.5)},
		Width:      Size{Label: pick(d, 38.1, 41, 44)},
		CordForce:  pick(d, 13.5, 15, 17),
		Wraps:      pick(d, 4, 5, 6),
		TetherCord: Size{Label: 8},
		Strands:    2,
		Tether:     pick(d, 13.5, 15, 17, 19),
		OwnRings:   true,
	}
	g.Rope.True = d.Flat(g.Rope.Label, 0.19)
	g.Elongation.True = g.Elongation.Label * d.Tent(1.01, 0.048)
	g.Width.True = d.Flat(g.Width.Label, 0.48)
	for side := range g.Cord {
		g.Cord[side] = Size{cord, d.Flat(cord, 0.19)}
	}
	g.TetherCord.True = d.Flat(g.TetherCord.Label, 0.19)
	return g
}

// pick draws one of a few, each as likely.
func pick(d Dice, from ...float64) float64 { return from[d.IntN(len(from))] }

// Sound gives w gear that truly meets every must that lengths cannot mend, as far
// as twenty visits to the shop find some.
func (w *World) Sound(d Dice, l *Limits) {
	for range 20 {
		w.Gear = drawGear(d)
		w.Gear.Tether = 19
		var m Margins
		w.gearMargins(&m, l)
		if len(m.Misses()) == 0 {
			return
		}
	}
}
