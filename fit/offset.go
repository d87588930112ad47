package fit

import "math"

// An Offset is two ways of knowing one height that ought to agree: a pose that
// was read against the lengths that make it.
type Offset int

// The offsets.
const (
	LevelOffset  Offset = iota // Garda hitch at level: read less model
	TautOffset                 // Garda hitch, tether taut: read less model
	KneeOffset                 // knee at level less the hip, against level by eye
	BridgeOffset               // connector bottom and its usual drop, against rings and main bridge

	numOffsets
)

// NumOffsets is how many there are.
const NumOffsets = int(numOffsets)

// Reading is the height read in the pose, which is doubted first.
func (o Offset) Reading() Reading {
	return [numOffsets]Reading{GardaLevel, GardaTaut, KneeLevel, ConnectorBottom}[o]
}

// The connector's outside bottom hangs a little under the bridge's top, by the
// thickness of the bridge and the connector's bow; judgement.
const (
	bridgeGap  = 15.0 // mm
	bridgeGapU = 15.0
)

// Disagreement is the offset o at the values x; NaN where it was not read.
func (m *Model) Disagreement(o Offset, x []float64, s *State) float64 {
	switch o {
	case LevelOffset:
		return s.Delta
	case TautOffset:
		return s.Tau
	case KneeOffset:
		p := &m.poses
		knee, hip := p.kneeSlot, p.kneeHip
		if knee == unknown {
			knee, hip = p.kneeElsewhere, p.kneeElsewhereHip
		}
		return x[knee] - x[hip] - x[m.posture[LevelByEye]]
	default:
		if m.height[ConnectorBottom] == unknown {
			return math.NaN()
		}
		top := m.y(x, MainRings) + Rise(x[m.poses.bridgeRead[ConnectorBottom]], x[m.laid[MainBridgeRings]])
		return m.y(x, ConnectorBottom) + x[m.gap] - top
	}
}
