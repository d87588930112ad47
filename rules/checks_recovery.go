package rules

import "example.com/hangtape/fit"

// The checks of recovery room: what happens when the tether stops or catches. They are told in this order.
const (
	TetherLetsThighLevel CheckID = afterCollision + iota
	TetherStopsKnee
	KneeBendOnTether
	SlipDrop
	SlipForce
	DrillGroundRoom

	afterRecovery
)

// recoveryEnds is how many ends they have together.
const recoveryEnds = 9

// overReadings say how far past level the tether lets the Garda hitch come,
// slackReadings how slack the tether is after a stand.
var (
	overReadings = []fit.Reading{fit.Thigh, fit.Shin, fit.Hip, fit.BackupRings, fit.GardaLevel, fit.KneeLevel, fit.GardaTaut,
		fit.Ahead, fit.GardaToTether, fit.FootLoop, fit.Tether, fit.BackupBridge, fit.BackupBridgeRings}
	slackReadings = []fit.Reading{fit.Thigh, fit.Shin, fit.Hip, fit.BackupRings, fit.GardaTaut,
		fit.GardaToTether, fit.FootLoop, fit.Tether, fit.BackupBridge, fit.BackupBridgeRings}
)

var recoveryChecks = checkTable{
	TetherLetsThighLevel: {
		Name: "tether-lets-thigh-level", Group: "recovery-room", Kind: Must, Unit: "mm",
		Title:    "Tether lets thigh level",
		What:     "The tether lets the Garda hitch come up until the thigh is level.",
		Why:      "A tether that stops it sooner makes every move short and steep.",
		Measured: "How far past level the tether lets the Garda hitch come (less than 0: short of level), against least-over.",
		Do:       "Lengthen the tether or the backup bridge, or shorten the foot loop.",
		Source:   "common practice: from level to about 25 mm past",
		Limits:   []Limit{LeastOver},
		Readings: overReadings,
		ends: []end{{
			balance: func(s *fit.State, l *Limits) balance {
				return least(s.Over, l[LeastOver])
			},
			stages: fit.ThePoses,
			rests:  []fit.Quantity{fit.NeedYTaut, fit.NeedYLevel},
			span:   Span{fit.TetherTaut, fit.MarkGardaLevel, fit.MarkGardaTop},
			says: phrase{
				has:      "the tether stops the Garda hitch {has past|short of} thigh level",
				needs:    "at least {needs} past is needed",
				negative: "at most {needs} short is fine",
				fails:    "short by",
			},
		}},
	},
	TetherStopsKnee: {
		Name: "tether-stops-knee", Group: "recovery-room", Kind: Should, Unit: "mm",
		Title:    "Tether stops knee",
		What:     "The tether stops the Garda hitch soon after the thigh is level.",
		Why:      "Every millimetre past level is added to the drop if the hitches slip.",
		Measured: "How far past level the tether lets the Garda hitch come, against most-over.",
		Do:       "Shorten the tether or the backup bridge, or lengthen the foot loop.",
		Source:   "common practice: from level to about 25 mm past; the band is judgement",
		Limits:   []Limit{MostOver},
		Readings: overReadings,
		ends: []end{{
			balance: func(s *fit.State, l *Limits) balance {
				return most(s.Over, l[MostOver])
			},
			stages: fit.ThePoses,
			rests:  []fit.Quantity{fit.NeedYTaut, fit.NeedYLevel},
			span:   Span{fit.TetherTaut, fit.MarkGardaLevel, fit.MarkGardaTop},
			says: phrase{
				has:   "the tether stops the Garda hitch {has past|short of} thigh level",
				needs: "at most {needs} past is fine",
				fails: "too much by",
			},
		}},
	},
	KneeBendOnTether: {
		Name: "knee-bend-on-tether", Group: "recovery-room", Kind: Must, Unit: "deg",
		Title:    "Knee bend on tether",
		What:     "Hanging on the tether, the leg in the foot loop can still push the climber up.",
		Why:      "A knee that is folded too far cannot push, and a foot loop that hangs out of the leg's reach gives nothing to push on: the climber would be stuck on the tether.",
		Measured: "The bend of the knee with the foot in the loop while hanging on the tether, against most-flexion; and thigh and shin together against the distance from hip to foot.",
		Do:       "Knee folded too far: lengthen the foot loop or shorten the tether. Foot out of reach: shorten the foot loop or lengthen the tether.",
		Source:   "judgement, under the clinical 130 deg of knee flexion (Merck Manual, range of motion of joints)",
		Limits:   []Limit{MostFlexion},
		Readings: []fit.Reading{fit.Thigh, fit.Shin, fit.Hip, fit.BackupRings, fit.GardaTaut, fit.Ahead, fit.GardaToTether, fit.FootLoop, fit.Tether, fit.BackupBridge, fit.BackupBridgeRings},
		ends: []end{{
			at: "knee",
			balance: func(s *fit.State, l *Limits) balance {
				return most(s.Flexion, l[MostFlexion])
			},
			stages: fit.ThePoses,
			rests:  []fit.Quantity{fit.NeedYTaut, fit.NeedFootLoop, fit.NeedThigh, fit.NeedShin},
			span:   Span{fit.OnTether, fit.MarkSole, fit.MarkHip},
			says: phrase{
				has:   "hanging on the tether the knee is bent {has}",
				needs: "at most {needs} is fine",
				fails: "too much by",
			},
		}, {
			at:   "leg",
			unit: "mm",
			balance: func(s *fit.State, l *Limits) balance {
				return least(s.LegReach, s.LegDistance)
			},
			stages:      fit.ThePoses,
			rests:       []fit.Quantity{fit.NeedYTaut, fit.NeedFootLoop, fit.NeedThigh, fit.NeedShin},
			needsFollow: true,
			span:        Span{fit.OnTether, fit.MarkSole, fit.MarkHip},
			says: phrase{
				has:   "the straight leg is {has} long",
				needs: "hanging on the tether the foot loop is {needs} from the hip point",
				fails: "out of reach by",
			},
		}},
	},
	SlipDrop: {
		Name: "slip-drop", Group: "recovery-room", Kind: Must, Unit: "mm",
		Title:    "Slip drop",
		What:     "If both hitches let go, the tether catches the climber after a short drop, and not before they let go.",
		Why:      "The tether is a work-positioning backup, not fall arrest: a long drop hurts. A tether that catches too early takes the load off the hitches in every move.",
		Measured: "The slack in the tether after a stand, Garda hitch not yet drawn up: against most-drop, and against 0.",
		Do:       "Drop too long: shorten the tether or the backup bridge, or lengthen the foot loop. Caught too early: the other way round. Draw the Garda hitch up at once after every stand.",
		Source:   "29 CFR 1926.502(e)(1): positioning devices, free fall of at most 2 ft (610 mm)",
		Limits:   []Limit{MostDrop},
		Readings: slackReadings,
		ends: []end{{
			at: "above",
			balance: func(s *fit.State, l *Limits) balance {
				return most(s.Slack, l[MostDrop])
			},
			stages: fit.ThePoses,
			rests:  []fit.Quantity{fit.NeedYTaut, fit.NeedYLevel},
			span:   Span{Pose: fit.Standing},
			says: phrase{
				has:   "if both hitches let go the tether catches after {has}",
				needs: "at most {needs} is fine",
				fails: "too much by",
			},
		}, {
			at: "below",
			balance: func(s *fit.State, l *Limits) balance {
				return least(s.Slack, 0)
			},
			stages: fit.ThePoses,
			rests:  []fit.Quantity{fit.NeedYTaut, fit.NeedYLevel},
			span:   Span{Pose: fit.Standing},
			says: phrase{
				has:   "after a stand the tether is {has slack|too short}",
				needs: "it must not catch before the hitches do",
				fails: "short by",
			},
		}},
	},
	SlipForce: {
		Name: "slip-force", Group: "recovery-room", Kind: Must, Unit: "kN",
		Title:    "Slip force",
		What:     "If both hitches let go, the catch stays under the peak force that the body may see.",
		Why:      "Little rope above stretches little: the closer to the union, the harder the same drop is caught.",
		Measured: "The peak force of that drop, both legs of rope as a spring, for the least rope above that the climber will use, against peak-force.",
		Do:       "Keep more rope above: stay farther below the union; no rope is long enough where the limit is under twice the climber's weight. Shorten the tether; draw the Garda hitch up at once after every stand.",
		Source:   "EN 355:2002: 6 kN; energy of a mass on a linear spring",
		Limits:   []Limit{PeakForce},
		Readings: slackReadings,
		ends: []end{{
			balance: func(s *fit.State, l *Limits) balance {
				return most(s.PeakForce, l[PeakForce])
			},
			stages: fit.TheSlip,
			rests:  []fit.Quantity{fit.NeedYTaut, fit.NeedYLevel, fit.NeedMass, fit.NeedElongation, fit.NeedLeastAbove},
			span:   Span{Pose: fit.Standing},
			says: phrase{
				has:   "if both hitches let go the catch peaks at {has}",
				needs: "at most {needs} is fine",
				fails: "too much by",
			},
		}},
	},
	DrillGroundRoom: {
		Name: "drill-ground-room", Group: "recovery-room", Kind: Should, Unit: "mm",
		Title:    "Drill ground room",
		What:     "In the drill the boots stay off the ground, also when the rope stretches.",
		Why:      "A drill that ends on the ground proves nothing, and a free drop there would hurt.",
		Measured: "The soles above the ground after a stand, less the hitches' set, the slack and the rope's stretch in the catch; and the same where the tether stops short of level.",
		Do:       "Hang higher for the drill.",
		Source:   "geometry; energy of a mass on a linear spring",
		Readings: []fit.Reading{fit.Thigh, fit.Shin, fit.Hip, fit.BackupRings, fit.Soles, fit.Ground, fit.GardaLevel, fit.KneeLevel, fit.GardaTaut,
			fit.Ahead, fit.GardaToTether, fit.FootLoop, fit.Tether, fit.BackupBridge, fit.BackupBridgeRings},
		ends: []end{{
			at: "level",
			balance: func(s *fit.State, l *Limits) balance {
				return least(s.SolesAboveGround+s.Gain-s.Set, s.Slack+s.Stretch)
			},
			stages:      fit.TheKit | fit.ThePoses | fit.TheSlip,
			rests:       []fit.Quantity{fit.NeedSolesAboveGround, fit.NeedYTaut, fit.NeedYLevel, fit.NeedMass, fit.NeedElongation, fit.NeedDrillAbove},
			needsFollow: true,
			span:        Span{fit.Seated, fit.MarkGround, fit.MarkSole},
			says: phrase{
				has:   "in the drill the boots are {has} up after a stand",
				needs: "drop and stretch take {needs}",
				fails: "short by",
			},
		}, {
			at: "short",
			balance: func(s *fit.State, l *Limits) balance {
				return least(s.SolesAboveGround+s.Gain-s.Set+s.Over, s.Slack+s.Stretch)
			},
			stages:      fit.TheKit | fit.ThePoses | fit.TheSlip,
			rests:       []fit.Quantity{fit.NeedSolesAboveGround, fit.NeedYTaut, fit.NeedYLevel, fit.NeedMass, fit.NeedElongation, fit.NeedDrillAbove},
			needsFollow: true,
			span:        Span{fit.Seated, fit.MarkGround, fit.MarkSole},
			says: phrase{
				has:   "in the drill the boots are {has} up after a stand cut short by the tether",
				needs: "drop and stretch take {needs}",
				fails: "short by",
			},
		}},
	},
}
