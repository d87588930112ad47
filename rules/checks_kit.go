package rules

import "example.com/hangtape/fit"

// The checks of the kit: sizes, wraps, strength, ways to the rope. They are told in this order.
const (
	GardaConnectorSize CheckID = afterRecovery + iota
	HitchCordGrip
	HitchCordBite
	HitchWraps
	HitchCordStrength
	TetherStrength
	TwoLoadPaths

	afterKit
)

// kitEnds is how many ends they have together.
const kitEnds = 12

var kitChecks = checkTable{
	GardaConnectorSize: {
		Name: "garda-connector-size", Group: "kit", Kind: Must, Unit: "mm",
		Title:    "Garda connector size",
		What:     "The Garda hitch's connectors are wide enough for both legs of rope.",
		Why:      "In narrow connectors the rope does not seat, and a Garda hitch that does not seat does not hold.",
		Measured: "The connectors' inside width against least-width-ratio times the rope's diameter.",
		Do:       "Use two like, wider connectors, or a thinner rope.",
		Source:   "common practice: 38.1 mm (1 1/2 in) inside on ropes up to 11.4 mm",
		Limits:   []Limit{LeastWidthRatio},
		ends: []end{{
			balance: func(s *fit.State, l *Limits) balance {
				return least(s.InsideWidth, l[LeastWidthRatio]*s.RopeDiameter)
			},
			stages:      fit.TheLabels,
			rests:       []fit.Quantity{fit.NeedInsideWidth, fit.NeedRopeDiameter},
			needsFollow: true,
			says: phrase{
				has:   "the Garda hitch's connectors are {has} wide inside",
				needs: "at least {needs} is needed on this rope",
				fails: "short by",
			},
		}},
	},
	HitchCordGrip: {
		Name: "hitch-cord-grip", Group: "kit", Kind: Must, Unit: "",
		Title:    "Hitch cord grip",
		What:     "The hitch cord is thin enough to grip the rope.",
		Why:      "Thick cord on a thin rope slides.",
		Measured: "The cord's diameter divided by the rope's, on each side, against most-cord-ratio.",
		Do:       "Tie the hitch of thinner cord that is still strong enough.",
		Source:   "trade rule, second hand: cord at 60 to 80 % of the host",
		Limits:   []Limit{MostCordRatio},
		ends: onBothSides(func(side int) end {
			return end{
				balance: func(s *fit.State, l *Limits) balance {
					return most(s.HitchCord[side]/s.RopeDiameter, l[MostCordRatio])
				},
				stages: fit.TheLabels,
				rests:  []fit.Quantity{fit.NeedCordLeft + fit.Quantity(side), fit.NeedRopeDiameter},
				says: phrase{
					has:   "the {at} hitch's cord is {has} of the rope's diameter",
					needs: "at most {needs} is fine",
					fails: "too thick by",
				},
			}
		}),
	},
	HitchCordBite: {
		Name: "hitch-cord-bite", Group: "kit", Kind: Should, Unit: "",
		Title:    "Hitch cord bite",
		What:     "The hitch cord is thick enough not to jam on the rope.",
		Why:      "Thin cord bites hard, jams, and is weaker.",
		Measured: "The cord's diameter divided by the rope's, on each side, against least-cord-ratio.",
		Do:       "Tie the hitch of thicker cord.",
		Source:   "trade rule, second hand: cord at 60 to 80 % of the host",
		Limits:   []Limit{LeastCordRatio},
		ends: onBothSides(func(side int) end {
			return end{
				balance: func(s *fit.State, l *Limits) balance {
					return least(s.HitchCord[side]/s.RopeDiameter, l[LeastCordRatio])
				},
				stages: fit.TheLabels,
				rests:  []fit.Quantity{fit.NeedCordLeft + fit.Quantity(side), fit.NeedRopeDiameter},
				says: phrase{
					has:   "the {at} hitch's cord is {has} of the rope's diameter",
					needs: "at least {needs} is needed",
					fails: "too thin by",
				},
			}
		}),
	},
	HitchWraps: {
		Name: "hitch-wraps", Group: "kit", Kind: Must, Unit: "",
		Title:    "Hitch wraps",
		What:     "Each friction hitch has enough wraps.",
		Why:      "Too few wraps do not hold.",
		Measured: "The turns of cord on the rope, on each side, against least-wraps.",
		Do:       "Tie the hitch with more wraps, then load-test it low.",
		Source:   "climbing handbooks, second hand: three wraps usually enough, one more if it slips",
		Limits:   []Limit{LeastWraps},
		counts:   true,
		ends: onBothSides(func(side int) end {
			return end{
				balance: func(s *fit.State, l *Limits) balance {
					return least(s.HitchWraps[side], l[LeastWraps])
				},
				stages: fit.TheLabels,
				rests:  []fit.Quantity{fit.NeedWrapsLeft + fit.Quantity(side)},
				says: phrase{
					has:   "wraps of the {at} hitch: {has}",
					needs: "at least {needs} are needed",
					fails: "short by",
				},
			}
		}),
	},
	HitchCordStrength: {
		Name: "hitch-cord-strength", Group: "kit", Kind: Must, Unit: "kN",
		Title:    "Hitch cord strength",
		What:     "Each hitch loop alone carries the climber ten times over, knots counted.",
		Why:      "If one hitch lets go the other one carries the whole climber.",
		Measured: "Two strands of the cord's strength times knot-efficiency, on each side, against least-hitch-ratio times the climber's weight.",
		Do:       "Use stronger cord, or tell the strength on its label.",
		Source:   "EN 564 for cord of 4 to 8 mm without a label: 0.2·d² kN; common practice: ten to one for cord that carries a person",
		Limits:   []Limit{LeastHitchRatio, KnotEfficiency},
		ends: onBothSides(func(side int) end {
			return end{
				balance: func(s *fit.State, l *Limits) balance {
					return least(2*s.HitchStrength[side]*l[KnotEfficiency], l[LeastHitchRatio]*s.Weight)
				},
				stages:      fit.TheLabels | fit.TheSlip,
				rests:       []fit.Quantity{fit.NeedStrengthLeft + fit.Quantity(side), fit.NeedMass},
				needsFollow: true,
				says: phrase{
					has:   "the {at} hitch loop holds {has}",
					needs: "at least {needs} is needed for this climber",
					fails: "short by",
				},
			}
		}),
	},
	TetherStrength: {
		Name: "tether-strength", Group: "kit", Kind: Must, Unit: "kN",
		Title:    "Tether strength",
		What:     "The backup tether holds twice the largest load that it may see, knots counted.",
		Why:      "It is all that holds when the hitches let go.",
		Measured: "Its strands times the cord's strength times knot-efficiency, against least-strength-ratio times peak-force, and times the peak force of this climber's drop.",
		Do:       "Use stronger cord or more strands, or keep more rope above so that the drop is caught more softly.",
		Source:   "29 CFR 1926.502(e)(2): twice the potential impact load; EN 564 for cord of 4 to 8 mm without a label: 0.2·d² kN",
		Limits:   []Limit{PeakForce, KnotEfficiency, LeastStrengthRatio},
		Readings: slackReadings,
		ends: []end{{
			at: "limit",
			balance: func(s *fit.State, l *Limits) balance {
				return least(s.TetherStrands*s.TetherStrength*l[KnotEfficiency], l[LeastStrengthRatio]*l[PeakForce])
			},
			stages: fit.TheLabels,
			rests:  []fit.Quantity{fit.NeedTetherStrands, fit.NeedTetherStrength},
			says: phrase{
				has:   "the tether holds {has}",
				needs: "at least {needs} is needed for the peak force that the limits allow",
				fails: "short by",
			},
		}, {
			at: "force",
			balance: func(s *fit.State, l *Limits) balance {
				return least(s.TetherStrands*s.TetherStrength*l[KnotEfficiency], l[LeastStrengthRatio]*s.PeakForce)
			},
			stages: fit.TheLabels | fit.TheSlip,
			rests: []fit.Quantity{
				fit.NeedTetherStrands, fit.NeedTetherStrength,
				fit.NeedYTaut, fit.NeedYLevel, fit.NeedMass, fit.NeedElongation, fit.NeedLeastAbove,
			},
			needsFollow: true,
			says: phrase{
				has:   "the tether holds {has}",
				needs: "at least {needs} is needed for the peak force of this drop",
				fails: "short by",
			},
		}},
	},
	TwoLoadPaths: {
		Name: "two-load-paths", Group: "kit", Kind: Must, Unit: "",
		Title:    "Two load paths",
		What:     "Two ways lead from the saddle to the rope that share no part.",
		Why:      "Where both ways go through one part, that part failing drops the climber.",
		Measured: "The ways are counted: pair of hitches, main connector, main bridge and its rings; Garda hitch, tether, backup bridge and its rings. Saddle webbing, rope and union are shared by all and not counted.",
		Do:       "Give the backup bridge rings of its own, and have the Garda hitch, the tether and both friction hitches in the kit.",
		Source:   "common practice: at least two points on the rope at all times",
		counts:   true,
		ends: []end{{
			judge: (*Assessment).judgeLoadPaths,
			says: phrase{
				has:   "ways from saddle to rope that share no part: {has}",
				needs: "{needs} are needed",
				fails: "short by",
			},
		}},
	},
}
