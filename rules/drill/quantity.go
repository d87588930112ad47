package drill

import (
	"math"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A Quantity is something that the drill shows and the model expects.
type Quantity int

// The quantities. Heights are above the hip point, mm.
const (
	GardaTaut  Quantity = iota // Garda hitch with the tether taut
	GardaLevel                 // Garda hitch with the thigh level
	GardaLow                   // Garda hitch after a stand, seated again
	KneeBend                   // knee's bend hanging on the tether, deg
	RoomSeated                 // boot soles above the ground, seated
	RoomTether                 // boot sole in the loop above the ground, hanging on the tether
	Sag                        // of the rope above as it takes the load slowly
	SlackLeft                  // in the tether once the Garda hitch is up under the connector
	Gain                       // hip height won by standing up
	NetGain                    // what one move climbs
	numQuantities
)

var quantityInfo = [numQuantities]struct{ what, unit string }{
	GardaTaut:  {"Garda hitch above the hip, tether taut", "mm"},
	GardaLevel: {"Garda hitch above the hip, thigh level", "mm"},
	GardaLow:   {"Garda hitch above the hip, seated after a stand", "mm"},
	KneeBend:   {"bend of the knee on the tether", "deg"},
	RoomSeated: {"boot soles above the ground, seated", "mm"},
	RoomTether: {"boot sole above the ground, on the tether", "mm"},
	Sag:        {"sag of the rope as it takes the load", "mm"},
	SlackLeft:  {"slack left in the tether", "mm"},
	Gain:       {"height won by standing up", "mm"},
	NetGain:    {"height that one move climbs", "mm"},
}

// An Expectation is what the model expects of a quantity; NaN where it is not
// known.
type Expectation struct {
	Quantity Quantity
	Value, U float64
}

// What is the quantity in words.
func (e Expectation) What() string { return quantityInfo[e.Quantity].what }

// Unit is the quantity's unit, mm or deg.
func (e Expectation) Unit() string { return quantityInfo[e.Quantity].unit }

// expectations works all quantities out.
func expectations(a *rules.Assessment) [numQuantities]Expectation {
	p := a.Model().Propagate(int(numQuantities), func(_ []float64, s *fit.State, out []float64) {
		out[GardaTaut], out[GardaLevel], out[GardaLow] = s.YTaut, s.YLevel, s.YLow
		out[KneeBend] = s.Flexion
		out[RoomSeated] = s.SolesAboveGround
		out[RoomTether] = s.HipAboveGround + s.YTaut - s.FootLoop
		out[Sag] = s.Sag
		out[SlackLeft] = math.Max(0, s.YTaut-s.ConnectorBottom)
		out[Gain], out[NetGain] = s.Gain, s.Net
	})
	var list [numQuantities]Expectation
	for q := range numQuantities {
		u, _ := p.U(int(q))
		list[q] = Expectation{q, p.Values[q], u}
	}
	return list
}
