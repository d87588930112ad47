package rules

import "example.com/hangtape/fit"

// The checks of reach: what the hands get to. They are told in this order.
const (
	HitchTopReach CheckID = iota
	HitchHandhold
	HitchPairLevel
	ConnectorAtFace
	GardaLowReach
	FootLoopAtWaist

	afterReach
)

// reachEnds is how many ends they have together.
const reachEnds = 11

var reachChecks = checkTable{
	HitchTopReach: {
		Name: "hitch-top-reach", Group: "reach", Kind: Must, Unit: "mm",
		Title:    "Hitch top reach",
		What:     "The raised wrist gets to the top of each friction hitch.",
		Why:      "A hitch that the hand cannot get on top of cannot be broken loose or pulled down while hanging on it.",
		Measured: "The height of the raised wrist less the height of the hitch top, on each side, against reach-reserve.",
		Do:       "Shorten that hitch loop, or lower the main connector by shortening the main bridge; then hang and read again.",
		Source:   "common practice",
		Limits:   []Limit{ReachReserve},
		Readings: []fit.Reading{fit.Hip, fit.Nose, fit.WristUp, fit.LeftHitchTop, fit.RightHitchTop},
		ends: onBothSides(func(side int) end {
			return end{
				balance: func(s *fit.State, l *Limits) balance {
					return least(s.WristUp-s.HitchTop[side], l[ReachReserve])
				},
				stages: fit.TheBody | fit.TheKit,
				rests:  []fit.Quantity{fit.NeedWristUp, fit.NeedHitchTopLeft + fit.Quantity(side)},
				span:   Span{fit.Seated, hitchMarks[side], fit.MarkWristUp},
				says: phrase{
					has:   "the raised wrist is {has above|under} the {at} hitch top",
					needs: "at least {needs} above is needed",
					zero:  "it has to get there",
					fails: "short by",
				},
			}
		}),
	},
	HitchHandhold: {
		Name: "hitch-handhold", Group: "reach", Kind: Should, Unit: "mm",
		Title:    "Hitch handhold",
		What:     "Each hitch loop is long enough to hold under the wraps.",
		Why:      "Both hands take hold under the wraps to shove the hitches up; a short loop leaves no room for a hand above the connector.",
		Measured: "From the inside top of the main connector up to where the loop ends and the wraps begin, on each side, against least-loop.",
		Do:       "Tie that hitch with a longer loop, as far as the raised wrist still gets to its top.",
		Source:   "common practice: loops of at least a foot",
		Limits:   []Limit{LeastLoop},
		Readings: []fit.Reading{fit.ConnectorTop, fit.LeftLoopTop, fit.RightLoopTop},
		ends: onBothSides(func(side int) end {
			return end{
				balance: func(s *fit.State, l *Limits) balance {
					return least(s.Loop[side], l[LeastLoop])
				},
				stages: fit.TheKit,
				rests:  []fit.Quantity{fit.NeedLoopLeft + fit.Quantity(side)},
				span:   Span{fit.Seated, fit.MarkConnectorTop, loopMarks[side]},
				says: phrase{
					has:   "the {at} loop is {has} long",
					needs: "at least {needs} is needed",
					fails: "short by",
				},
			}
		}),
	},
	HitchPairLevel: {
		Name: "hitch-pair-level", Group: "reach", Kind: Should, Unit: "mm",
		Title:    "Hitch pair level",
		What:     "The two hitch tops stand nearly level.",
		Why:      "Both hitches go up in one shove; where one stands higher, one hand comes short and one leg of rope takes the load first.",
		Measured: "The difference between the two hitch tops, against most-pair-difference. The side told is the higher one.",
		Do:       "Tie the higher hitch shorter or the lower one longer; check that both have the same wraps and are dressed alike.",
		Source:   "judgement",
		Limits:   []Limit{MostPairDifference},
		Readings: []fit.Reading{fit.LeftHitchTop, fit.RightHitchTop},
		ends: onBothSides(func(side int) end {
			return end{
				balance: func(s *fit.State, l *Limits) balance {
					return most([2]float64{s.PairDifference, -s.PairDifference}[side], l[MostPairDifference])
				},
				stages: fit.TheKit,
				rests:  []fit.Quantity{fit.NeedPair},
				span:   Span{fit.Seated, hitchMarks[1-side], hitchMarks[side]},
				says: phrase{
					has:   "the {at} hitch top is {has} higher",
					needs: "at most {needs} is fine",
					fails: "too much by",
				},
			}
		}),
	},
	ConnectorAtFace: {
		Name: "connector-at-face", Group: "reach", Kind: Should, Unit: "mm",
		Title:    "Connector at face",
		What:     "The top of the main connector hangs in front of the face.",
		Why:      "Lower than the chin it takes the room that the Garda hitch needs under it; above the brow it takes the hitches out of reach.",
		Measured: "The inside top of the main connector against the nose: at most face-below under it, at most face-above over it.",
		Do:       "Too low: lengthen the main bridge. Too high: shorten it. Then read the hitch tops again, since they move with it.",
		Source:   "common practice: the connector at the nose",
		Limits:   []Limit{FaceBelow, FaceAbove},
		Readings: []fit.Reading{fit.Hip, fit.Nose, fit.ConnectorTop},
		ends: []end{{
			at: "below",
			balance: func(s *fit.State, l *Limits) balance {
				return least(s.ConnectorTop-s.Nose, -l[FaceBelow])
			},
			stages: fit.TheBody | fit.TheKit,
			rests:  []fit.Quantity{fit.NeedNose, fit.NeedConnectorTop},
			span:   Span{fit.Seated, fit.MarkConnectorTop, fit.MarkNose},
			says: phrase{
				has:      "the main connector's top is {has above|under} the nose",
				needs:    "at least {needs} above is needed",
				negative: "at most {needs} under is fine",
				fails:    "too low by",
			},
		}, {
			at: "above",
			balance: func(s *fit.State, l *Limits) balance {
				return most(s.ConnectorTop-s.Nose, l[FaceAbove])
			},
			stages: fit.TheBody | fit.TheKit,
			rests:  []fit.Quantity{fit.NeedNose, fit.NeedConnectorTop},
			span:   Span{fit.Seated, fit.MarkNose, fit.MarkConnectorTop},
			says: phrase{
				has:   "the main connector's top is {has above|under} the nose",
				needs: "at most {needs} above is fine",
				fails: "too high by",
			},
		}},
	},
	GardaLowReach: {
		Name: "garda-low-reach", Group: "reach", Kind: Should, Unit: "mm",
		Title:    "Garda low reach",
		What:     "After a stand the seated climber's hand still gets down to the Garda hitch.",
		Why:      "Each move starts by drawing the Garda hitch up; a climber who has to lean down for it tires, and may not get to it at all.",
		Measured: "The lowest height of the Garda hitch (seated, before drawing it up) against the wrist of the hanging arm.",
		Do:       "Lengthen the foot loop.",
		Source:   "judgement",
		Readings: []fit.Reading{fit.Thigh, fit.Shin, fit.Hip, fit.WristDown, fit.FootLoop},
		ends: []end{{
			balance: func(s *fit.State, l *Limits) balance {
				return least(s.YLow, s.WristDown)
			},
			stages:      fit.TheBody | fit.ThePoses,
			rests:       []fit.Quantity{fit.NeedYLevel, fit.NeedWristDown},
			needsFollow: true,
			span:        Span{fit.Seated, fit.MarkWristDown, fit.MarkGardaTop},
			says: phrase{
				has:   "after a stand the Garda hitch waits {has above|under} the hip point",
				needs: "the hanging wrist is {needs above|under} it",
				fails: "too low by",
			},
		}},
	},
	FootLoopAtWaist: {
		Name: "foot-loop-at-waist", Group: "reach", Kind: Should, Unit: "mm",
		Title:    "Foot loop at waist",
		What:     "The foot loop comes up to about the waist.",
		Why:      "Near the waist both hands can work the Garda hitch. Much higher and it takes the room under the connector, much lower and the move gets short.",
		Measured: "The foot loop's length against the waist's height, standing with boots on: at most waist-below under it, at most waist-above over it.",
		Do:       "Tie the foot loop longer or shorter.",
		Source:   "common practice: the foot loop at about waist height",
		Limits:   []Limit{WaistBelow, WaistAbove},
		Readings: []fit.Reading{fit.Waist, fit.FootLoop},
		ends: []end{{
			at: "below",
			balance: func(s *fit.State, l *Limits) balance {
				return least(s.FootLoop-s.Waist, -l[WaistBelow])
			},
			stages: fit.TheBody | fit.TheKit,
			rests:  []fit.Quantity{fit.NeedFootLoop, fit.NeedWaist},
			says: phrase{
				has:      "the foot loop ends {has above|under} the waist",
				needs:    "at least {needs} above is needed",
				negative: "at most {needs} under is fine",
				fails:    "too short by",
			},
		}, {
			at: "above",
			balance: func(s *fit.State, l *Limits) balance {
				return most(s.FootLoop-s.Waist, l[WaistAbove])
			},
			stages: fit.TheBody | fit.TheKit,
			rests:  []fit.Quantity{fit.NeedFootLoop, fit.NeedWaist},
			says: phrase{
				has:   "the foot loop ends {has above|under} the waist",
				needs: "at most {needs} above is fine",
				fails: "too long by",
			},
		}},
	},
}
