package rules

import (
	"math"

	"example.com/hangtape/fit"
)

// An End is one side or one end of a check: what has a smooth margin of its own.
type End int

// The ends, in the order of the checks and of their sides.
const (
	reachLeft End = iota
	reachRight
	handholdLeft
	handholdRight
	pairLeft
	pairRight
	faceBelow
	faceAbove
	gardaLow
	waistBelow
	waistAbove
	underConnector
	releaseRoom
	letsLevel
	stopsKnee
	bendKnee
	bendLeg
	dropAbove
	dropBelow
	slipForce
	drillLevel
	drillShort
	connectorSize
	gripLeft
	gripRight
	biteLeft
	biteRight
	wrapsLeft
	wrapsRight
	strengthLeft
	strengthRight
	tetherLimit
	tetherForce
	loadPaths

	NumEnds
)

// endsOf are the ends of each check, as the check's table names them.
var endsOf = [NumChecks][]End{
	HitchTopReach:        {reachLeft, reachRight},
	HitchHandhold:        {handholdLeft, handholdRight},
	HitchPairLevel:       {pairLeft, pairRight},
	ConnectorAtFace:      {faceBelow, faceAbove},
	GardaLowReach:        {gardaLow},
	FootLoopAtWaist:      {waistBelow, waistAbove},
	GardaUnderConnector:  {underConnector},
	GardaReleaseRoom:     {releaseRoom},
	TetherLetsThighLevel: {letsLevel},
	TetherStopsKnee:      {stopsKnee},
	KneeBendOnTether:     {bendKnee, bendLeg},
	SlipDrop:             {dropAbove, dropBelow},
	SlipForce:            {slipForce},
	DrillGroundRoom:      {drillLevel, drillShort},
	GardaConnectorSize:   {connectorSize},
	HitchCordGrip:        {gripLeft, gripRight},
	HitchCordBite:        {biteLeft, biteRight},
	HitchWraps:           {wrapsLeft, wrapsRight},
	HitchCordStrength:    {strengthLeft, strengthRight},
	TetherStrength:       {tetherLimit, tetherForce},
	TwoLoadPaths:         {loadPaths},
}

// Check is the check that e belongs to.
func (e End) Check() CheckID {
	for c, ends := range endsOf {
		for _, x := range ends {
			if x == e {
				return CheckID(c)
			}
		}
	}
	return NumChecks
}

// At is e's name within its check: its side or end, "" where the check has only
// one.
func (e End) At() string { return e.at(e.Check()) }

// at is At for an end that is known to belong to c.
func (e End) at(c CheckID) string {
	for i, x := range endsOf[c] {
		if x == e {
			return checkInfo[c].Ends[i]
		}
	}
	return ""
}

// Ends are the ends of c, in the order of its table.
func (c CheckID) Ends() []End { return endsOf[c] }

// A balance is what an end has and what it needs, in the check's unit. margin is
// has - needs for a least and needs - has for a most.
type balance struct {
	has, needs float64
	most       bool
}

func (b balance) margin() float64 {
	if b.most {
		return b.needs - b.has
	}
	return b.has - b.needs
}

// balanceOf tells what the end has and needs in state s under the limits l. It
// is the one place where the checks' formulas stand. loadPaths does not follow
// from the state and is judged apart.
func balanceOf(e End, s *fit.State, l *Limits) balance {
	side := func(left End) int { return int(e - left) }
	switch e {
	case reachLeft, reachRight:
		return balance{has: s.WristUp - s.HitchTop[side(reachLeft)], needs: l[ReachReserve]}
	case handholdLeft, handholdRight:
		return balance{has: s.Loop[side(handholdLeft)], needs: l[LeastLoop]}
	case pairLeft:
		return balance{has: s.PairDifference, needs: l[MostPairDifference], most: true}
	case pairRight:
		return balance{has: -s.PairDifference, needs: l[MostPairDifference], most: true}
	case faceBelow:
		return balance{has: s.ConnectorTop - s.Nose, needs: -l[FaceBelow]}
	case faceAbove:
		return balance{has: s.ConnectorTop - s.Nose, needs: l[FaceAbove], most: true}
	case gardaLow:
		return balance{has: s.YLow, needs: s.WristDown}
	case waistBelow:
		return balance{has: s.FootLoop - s.Waist, needs: -l[WaistBelow]}
	case waistAbove:
		return balance{has: s.FootLoop - s.Waist, needs: l[WaistAbove], most: true}
	case underConnector:
		return balance{has: s.ConnectorBottom - s.YLevel, needs: l[ConnectorClearance]}
	case releaseRoom:
		return balance{has: s.ConnectorBottom - s.YTaut, needs: l[ReleaseRoom]}
	case letsLevel:
		return balance{has: s.Over, needs: l[LeastOver]}
	case stopsKnee:
		return balance{has: s.Over, needs: l[MostOver], most: true}
	case bendKnee:
		return balance{has: s.Flexion, needs: l[MostFlexion], most: true}
	case bendLeg:
		return balance{has: s.LegReach, needs: s.LegDistance}
	case dropAbove:
		return balance{has: s.Slack, needs: l[MostDrop], most: true}
	case dropBelow:
		return balance{has: s.Slack, needs: 0}
	case slipForce:
		return balance{has: s.PeakForce, needs: l[PeakForce], most: true}
	case drillLevel:
		return balance{has: s.SolesAboveGround + s.Gain - s.Set, needs: s.Slack + s.Stretch}
	case drillShort:
		return balance{has: s.SolesAboveGround + s.Gain - s.Set + s.Over, needs: s.Slack + s.Stretch}
	case connectorSize:
		return balance{has: s.InsideWidth, needs: l[LeastWidthRatio] * s.RopeDiameter}
	case gripLeft, gripRight:
		return balance{has: s.HitchCord[side(gripLeft)] / s.RopeDiameter, needs: l[MostCordRatio], most: true}
	case biteLeft, biteRight:
		return balance{has: s.HitchCord[side(biteLeft)] / s.RopeDiameter, needs: l[LeastCordRatio]}
	case wrapsLeft, wrapsRight:
		return balance{has: s.HitchWraps[side(wrapsLeft)], needs: l[LeastWraps]}
	case strengthLeft, strengthRight:
		return balance{has: 2 * s.HitchStrength[side(strengthLeft)] * l[KnotEfficiency], needs: l[LeastHitchRatio] * s.Weight}
	case tetherLimit:
		return balance{has: s.TetherStrands * s.TetherStrength * l[KnotEfficiency], needs: l[LeastStrengthRatio] * l[PeakForce]}
	case tetherForce:
		return balance{has: s.TetherStrands * s.TetherStrength * l[KnotEfficiency], needs: l[LeastStrengthRatio] * s.PeakForce}
	}
	return balance{has: math.NaN(), needs: math.NaN()}
}

// stagesOf are the stages of a state that the balance of an end is made of.
var stagesOf = [NumEnds]fit.Stage{
	reachLeft:      fit.TheBody | fit.TheKit,
	reachRight:     fit.TheBody | fit.TheKit,
	handholdLeft:   fit.TheKit,
	handholdRight:  fit.TheKit,
	pairLeft:       fit.TheKit,
	pairRight:      fit.TheKit,
	faceBelow:      fit.TheBody | fit.TheKit,
	faceAbove:      fit.TheBody | fit.TheKit,
	gardaLow:       fit.TheBody | fit.ThePoses,
	waistBelow:     fit.TheBody | fit.TheKit,
	waistAbove:     fit.TheBody | fit.TheKit,
	underConnector: fit.TheKit | fit.ThePoses,
	releaseRoom:    fit.TheKit | fit.ThePoses,
	letsLevel:      fit.ThePoses,
	stopsKnee:      fit.ThePoses,
	bendKnee:       fit.ThePoses,
	bendLeg:        fit.ThePoses,
	dropAbove:      fit.ThePoses,
	dropBelow:      fit.ThePoses,
	slipForce:      fit.TheSlip,
	drillLevel:     fit.TheKit | fit.ThePoses | fit.TheSlip,
	drillShort:     fit.TheKit | fit.ThePoses | fit.TheSlip,
	connectorSize:  fit.TheLabels,
	gripLeft:       fit.TheLabels,
	gripRight:      fit.TheLabels,
	biteLeft:       fit.TheLabels,
	biteRight:      fit.TheLabels,
	wrapsLeft:      fit.TheLabels,
	wrapsRight:     fit.TheLabels,
	strengthLeft:   fit.TheLabels | fit.TheSlip,
	strengthRight:  fit.TheLabels | fit.TheSlip,
	tetherLimit:    fit.TheLabels,
	tetherForce:    fit.TheLabels | fit.TheSlip,
}

// needsOf are the quantities that an end rests on, in no order that matters.
var needsOf = [NumEnds][]fit.Quantity{
	reachLeft:      {fit.NeedWristUp, fit.NeedHitchTopLeft},
	reachRight:     {fit.NeedWristUp, fit.NeedHitchTopRight},
	handholdLeft:   {fit.NeedLoopLeft},
	handholdRight:  {fit.NeedLoopRight},
	pairLeft:       {fit.NeedPair},
	pairRight:      {fit.NeedPair},
	faceBelow:      {fit.NeedNose, fit.NeedConnectorTop},
	faceAbove:      {fit.NeedNose, fit.NeedConnectorTop},
	gardaLow:       {fit.NeedYLevel, fit.NeedWristDown},
	waistBelow:     {fit.NeedFootLoop, fit.NeedWaist},
	waistAbove:     {fit.NeedFootLoop, fit.NeedWaist},
	underConnector: {fit.NeedConnectorBottom, fit.NeedYLevel},
	releaseRoom:    {fit.NeedConnectorBottom, fit.NeedYTaut},
	letsLevel:      {fit.NeedYTaut, fit.NeedYLevel},
	stopsKnee:      {fit.NeedYTaut, fit.NeedYLevel},
	bendKnee:       {fit.NeedYTaut, fit.NeedFootLoop, fit.NeedThigh, fit.NeedShin},
	bendLeg:        {fit.NeedYTaut, fit.NeedFootLoop, fit.NeedThigh, fit.NeedShin},
	dropAbove:      {fit.NeedYTaut, fit.NeedYLevel},
	dropBelow:      {fit.NeedYTaut, fit.NeedYLevel},
	slipForce:      {fit.NeedYTaut, fit.NeedYLevel, fit.NeedMass, fit.NeedElongation, fit.NeedLeastAbove},
	drillLevel:     {fit.NeedSolesAboveGround, fit.NeedYTaut, fit.NeedYLevel, fit.NeedMass, fit.NeedElongation, fit.NeedDrillAbove},
	drillShort:     {fit.NeedSolesAboveGround, fit.NeedYTaut, fit.NeedYLevel, fit.NeedMass, fit.NeedElongation, fit.NeedDrillAbove},
	connectorSize:  {fit.NeedInsideWidth, fit.NeedRopeDiameter},
	gripLeft:       {fit.NeedCordLeft, fit.NeedRopeDiameter},
	gripRight:      {fit.NeedCordRight, fit.NeedRopeDiameter},
	biteLeft:       {fit.NeedCordLeft, fit.NeedRopeDiameter},
	biteRight:      {fit.NeedCordRight, fit.NeedRopeDiameter},
	wrapsLeft:      {fit.NeedWrapsLeft},
	wrapsRight:     {fit.NeedWrapsRight},
	strengthLeft:   {fit.NeedStrengthLeft, fit.NeedMass},
	strengthRight:  {fit.NeedStrengthRight, fit.NeedMass},
	tetherLimit:    {fit.NeedTetherStrands, fit.NeedTetherStrength},
	tetherForce: {fit.NeedTetherStrands, fit.NeedTetherStrength,
		fit.NeedYTaut, fit.NeedYLevel, fit.NeedMass, fit.NeedElongation, fit.NeedLeastAbove},
}

// limitBySelf says whether what the end needs is a limit alone, and so is told
// where the end is unknown.
func limitBySelf(e End) bool {
	switch e {
	case gardaLow, bendLeg, drillLevel, drillShort, connectorSize, strengthLeft, strengthRight, tetherForce:
		return false
	}
	return true
}
