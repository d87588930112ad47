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
	GardaTaut     Quantity = iota // Garda hitch with the tether taut
	GardaLevel                    // Garda hitch with the thigh level
	GardaLow                      // Garda hitch after a stand, seated again
	KneeBend                      // knee's bend hanging on the tether, deg
	RoomSeated                    // boot soles above the ground, seated
	RoomTether                    // boot sole in the loop above the ground, hanging on the tether
	Sag                           // of the rope above as it takes the load slowly
	SlackLeft                     // in the tether once the Garda hitch is up under the connector; below 0 where the tether is taut before
	FootOut                       // foot in front of the rope, thigh level
	HandsSeated                   // lower edge of the higher wraps, seated
	HandsStanding                 // the same, standing in the foot loop
	Gain                          // hip height won by standing up
	NetGain                       // what one move climbs
	numQuantities
)

var quantityInfo = [numQuantities]struct{ name, what, unit string }{
	GardaTaut:     {"garda_taut", "Garda hitch above the hip, tether taut", "mm"},
	GardaLevel:    {"garda_level", "Garda hitch above the hip, thigh level", "mm"},
	GardaLow:      {"garda_low", "Garda hitch above the hip, seated after a stand", "mm"},
	KneeBend:      {"knee_bend", "bend of the knee on the tether", "deg"},
	RoomSeated:    {"room_seated", "boots above the ground, seated", "mm"},
	RoomTether:    {"room_tether", "boot in the loop above the ground, on the tether", "mm"},
	Sag:           {"sag", "sag of the rope as it takes the load", "mm"},
	SlackLeft:     {"slack_left", "slack left in the tether", "mm"},
	FootOut:       {"foot_out", "foot in front of the rope, thigh level", "mm"},
	HandsSeated:   {"hands_seated", "under the wraps above the hip, seated", "mm"},
	HandsStanding: {"hands_standing", "under the wraps above the hip, standing", "mm"},
	Gain:          {"gain", "height won by standing up", "mm"},
	NetGain:       {"net", "height that one move climbs", "mm"},
}

// An Expectation is what the model expects of a quantity; NaN where it is not
// known.
type Expectation struct {
	Quantity Quantity
	Value, U float64
}

// Name is the quantity's name in answers for programs.
func (e Expectation) Name() string { return quantityInfo[e.Quantity].name }

// What is the quantity in words.
func (e Expectation) What() string { return quantityInfo[e.Quantity].what }

// Unit is the quantity's unit, mm or deg.
func (e Expectation) Unit() string { return quantityInfo[e.Quantity].unit }

// In tells the quantity with lengths in unit: "sag of the rope as it takes the
// load: 62 ± 3 mm".
func (e Expectation) In(unit string) string {
	if math.IsNaN(e.Value) {
		return e.What() + ": not known"
	}
	if !rules.IsLength(e.Unit()) {
		unit = e.Unit()
	}
	return e.What() + ": " + rules.FormatPM(e.Value, e.U, unit)
}

// propagated works all quantities out, and keeps what each rests on.
func propagated(a *rules.Assessment) (*fit.Propagation, [numQuantities]Expectation) {
	shin := a.Model().PostureInput(fit.ShinAngle)
	p := a.Model().Propagate(int(numQuantities), func(x []float64, s *fit.State, out []float64) {
		out[GardaTaut], out[GardaLevel], out[GardaLow] = s.YTaut, s.YLevel, s.YLow
		out[KneeBend] = s.Flexion
		out[RoomSeated] = s.SolesAboveGround
		out[RoomTether] = s.HipAboveGround + s.YTaut - s.FootLoop
		out[Sag] = s.Sag
		out[SlackLeft] = s.YTaut - s.ConnectorBottom
		out[FootOut] = s.Thigh + s.Shin*math.Sin(x[shin]*math.Pi/180) - s.Ahead
		out[HandsSeated] = s.ConnectorTop + math.Max(s.Loop[0], s.Loop[1])
		out[HandsStanding] = out[HandsSeated] - s.Gain
		out[Gain], out[NetGain] = s.Gain, s.Net
	})
	var list [numQuantities]Expectation
	for q := range numQuantities {
		u, _ := p.U(int(q))
		list[q] = Expectation{q, p.Values[q], u}
	}
	return p, list
}
