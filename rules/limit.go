package rules

// A Limit is a number that a check holds something against. A school may move
// it within its bounds.
type Limit int

// The limits, in the order of their table.
const (
	ReachReserve Limit = iota
	LeastLoop
	MostPairDifference
	FaceBelow
	FaceAbove
	WaistBelow
	WaistAbove
	ConnectorClearance
	ReleaseRoom
	LeastOver
	MostOver
	MostFlexion
	MostDrop
	PeakForce
	SaddleForce
	LeastWidthRatio
	LeastCordRatio
	LeastWraps
	LeastHitchRatio
	MostCordRatio
	KnotEfficiency
	LeastStrengthRatio

	NumLimits
)

// Limits is a value for every limit.
type Limits [NumLimits]float64
