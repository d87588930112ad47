package rules

import "example.com/hangtape/fit"

// The checks of collision: what must stay clear of what. They are told in this order.
const (
	GardaUnderConnector CheckID = afterReach + iota
	GardaReleaseRoom

	afterCollision
)

// collisionEnds is how many ends they have together.
const collisionEnds = 2

var collisionChecks = checkTable{
	GardaUnderConnector: {
		Name: "garda-under-connector", Group: "collision", Kind: Must, Unit: "mm",
		Title:    "Garda under connector",
		What:     "With the thigh level the Garda hitch stays clear under the main connector.",
		Why:      "Where they meet, the Garda hitch jams under the connector or pushes it up, and the foot never gets its full step.",
		Measured: "The outside bottom of the main connector less the top of the Garda hitch, thigh level, against connector-clearance.",
		Do:       "Lengthen the main bridge (the connector goes up) or shorten the foot loop (the Garda hitch comes down).",
		Source:   "common practice for the need; the distance is judgement",
		Limits:   []Limit{ConnectorClearance},
		Readings: []fit.Reading{fit.Thigh, fit.Shin, fit.Hip, fit.ConnectorBottom, fit.GardaLevel, fit.KneeLevel, fit.Ahead, fit.FootLoop},
		ends: []end{{
			balance: func(s *fit.State, l *Limits) balance {
				return least(s.ConnectorBottom-s.YLevel, l[ConnectorClearance])
			},
			stages: fit.TheKit | fit.ThePoses,
			rests:  []fit.Quantity{fit.NeedConnectorBottom, fit.NeedYLevel},
			span:   Span{fit.ThighLevel, fit.MarkGardaTop, fit.MarkConnectorBottom},
			says: phrase{
				has:   "with the thigh level the Garda hitch's top is {has under|above} the main connector's bottom",
				needs: "at least {needs} under is needed",
				fails: "short by",
			},
		}},
	},
	GardaReleaseRoom: {
		Name: "garda-release-room", Group: "collision", Kind: Must, Unit: "mm",
		Title:    "Garda release room",
		What:     "With the tether taut there is free rope above the Garda hitch to release it.",
		Why:      "A Garda hitch cannot be opened under load: it has to be run up a little first, and the main connector must not be in the way.",
		Measured: "The outside bottom of the main connector less the top of the Garda hitch where the tether stops it, against release-room.",
		Do:       "Shorten the tether or the backup bridge, or lengthen the main bridge.",
		Source:   "common practice for the need; the distance is judgement",
		Limits:   []Limit{ReleaseRoom},
		Readings: []fit.Reading{fit.Hip, fit.ConnectorBottom, fit.BackupRings, fit.GardaTaut, fit.GardaToTether, fit.Tether, fit.BackupBridge, fit.BackupBridgeRings},
		ends: []end{{
			balance: func(s *fit.State, l *Limits) balance {
				return least(s.ConnectorBottom-s.YTaut, l[ReleaseRoom])
			},
			stages: fit.TheKit | fit.ThePoses,
			rests:  []fit.Quantity{fit.NeedConnectorBottom, fit.NeedYTaut},
			span:   Span{fit.TetherTaut, fit.MarkGardaTop, fit.MarkConnectorBottom},
			says: phrase{
				has:   "with the tether taut the Garda hitch's top is {has under|above} the main connector's bottom",
				needs: "at least {needs} under is needed to release it",
				fails: "short by",
			},
		}},
	},
}
