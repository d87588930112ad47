package truth

// Limits are what the margins are held against. They are data, passed in: mm,
// degrees, kN and ratios.
type Limits struct {
	ReachReserve, LeastLoop, MostPairDifference          float64
	FaceBelow, FaceAbove, WaistBelow, WaistAbove         float64
	ConnectorClearance, ReleaseRoom, LeastOver, MostOver float64
	MostFlexion, MostDrop, PeakForce                     float64
	LeastWidthRatio, LeastCordRatio, MostCordRatio       float64
	LeastWraps, LeastHitchRatio, LeastStrengthRatio      float64
	KnotEfficiency                                       float64
}
