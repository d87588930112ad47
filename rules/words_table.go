package rules

// phraseFor is how the numbers of a check at one of its ends are told.
func phraseFor(c CheckID, at string) phrase {
	if p, ok := phrases[c][at]; ok {
		return p
	}
	return phrases[c][""]
}

// phrases are by check and end; the end "" serves where no other is named.
var phrases = [NumChecks]map[string]phrase{
	HitchTopReach: {"": {
		has:   "the raised wrist is {has above|under} the {at} hitch top",
		needs: "at least {needs} above is needed",
		zero:  "it has to get there",
		fails: "short by",
	}},
	HitchHandhold: {"": {
		has:   "the {at} loop is {has} long",
		needs: "at least {needs} is needed",
		fails: "short by",
	}},
	HitchPairLevel: {"": {
		has:   "the {at} hitch top is {has} higher",
		needs: "at most {needs} is fine",
		fails: "too much by",
	}},
	ConnectorAtFace: {
		"below": {
			has:      "the main connector's top is {has above|under} the nose",
			needs:    "at least {needs} above is needed",
			negative: "at most {needs} under is fine",
			fails:    "too low by",
		},
		"above": {
			has:   "the main connector's top is {has above|under} the nose",
			needs: "at most {needs} above is fine",
			fails: "too high by",
		},
	},
	GardaLowReach: {"": {
		has:   "after a stand the Garda hitch waits {has above|under} the hip point",
		needs: "the hanging wrist is {needs above|under} it",
		fails: "too low by",
	}},
	FootLoopAtWaist: {
		"below": {
			has:      "the foot loop ends {has above|under} the waist",
			needs:    "at least {needs} above is needed",
			negative: "at most {needs} under is fine",
			fails:    "too short by",
		},
		"above": {
			has:   "the foot loop ends {has above|under} the waist",
			needs: "at most {needs} above is fine",
			fails: "too long by",
		},
	},
	GardaUnderConnector: {"": {
		has:   "with the thigh level the Garda hitch's top is {has under|above} the main connector's bottom",
		needs: "at least {needs} under is needed",
		fails: "short by",
	}},
	GardaReleaseRoom: {"": {
		has:   "with the tether taut the Garda hitch's top is {has under|above} the main connector's bottom",
		needs: "at least {needs} under is needed to release it",
		fails: "short by",
	}},
	TetherLetsThighLevel: {"": {
		has:      "the tether stops the Garda hitch {has past|short of} thigh level",
		needs:    "at least {needs} past is needed",
		negative: "at most {needs} short is fine",
		fails:    "short by",
	}},
	TetherStopsKnee: {"": {
		has:   "the tether stops the Garda hitch {has past|short of} thigh level",
		needs: "at most {needs} past is fine",
		fails: "too much by",
	}},
	KneeBendOnTether: {
		"knee": {
			has:   "hanging on the tether the knee is bent {has}",
			needs: "at most {needs} is fine",
			fails: "too much by",
		},
		"leg": {
			has:   "the straight leg is {has} long",
			needs: "hanging on the tether the foot loop is {needs} from the hip point",
			fails: "out of reach by",
		},
	},
	SlipDrop: {
		"above": {
			has:   "if both hitches let go the tether catches after {has}",
			needs: "at most {needs} is fine",
			fails: "too much by",
		},
		"below": {
			has:   "after a stand the tether is {has slack|too short}",
			needs: "it must not catch before the hitches do",
			fails: "short by",
		},
	},
	SlipForce: {"": {
		has:   "if both hitches let go the catch peaks at {has}",
		needs: "at most {needs} is fine",
		fails: "too much by",
	}},
	DrillGroundRoom: {
		"level": {
			has:   "in the drill the boots are {has} up after a stand",
			needs: "drop and stretch take {needs}",
			fails: "short by",
		},
		"short": {
			has:   "in the drill the boots are {has} up after a stand cut short by the tether",
			needs: "drop and stretch take {needs}",
			fails: "short by",
		},
	},
	GardaConnectorSize: {"": {
		has:   "the Garda hitch's connectors are {has} wide inside",
		needs: "at least {needs} is needed on this rope",
		fails: "short by",
	}},
	HitchCordGrip: {"": {
		has:   "the {at} hitch's cord is {has} of the rope's diameter",
		needs: "at most {needs} is fine",
		fails: "too thick by",
	}},
	HitchCordBite: {"": {
		has:   "the {at} hitch's cord is {has} of the rope's diameter",
		needs: "at least {needs} is needed",
		fails: "too thin by",
	}},
	HitchWraps: {"": {
		has:   "wraps of the {at} hitch: {has}",
		needs: "at least {needs} are needed",
		fails: "short by",
	}},
	HitchCordStrength: {"": {
		has:   "the {at} hitch loop holds {has}",
		needs: "at least {needs} is needed for this climber",
		fails: "short by",
	}},
	TetherStrength: {
		"limit": {
			has:   "the tether holds {has}",
			needs: "at least {needs} is needed for the peak force that the limits allow",
			fails: "short by",
		},
		"force": {
			has:   "the tether holds {has}",
			needs: "at least {needs} is needed for the peak force of this drop",
			fails: "short by",
		},
	},
	TwoLoadPaths: {"": {
		has:   "ways from saddle to rope that share no part: {has}",
		needs: "{needs} are needed",
		fails: "short by",
	}},
}
