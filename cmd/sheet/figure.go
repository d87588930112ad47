package sheet

import (
	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// A Figure is the side view of the fitting, to scale, with what is named in it.
type Figure struct {
	Title   string
	Shape   fit.Shape
	Labels  []Label // from the top down
	Bar     float64 // mm that the bar under it stands for
	BarText string
	Instead string // why there is no drawing; "" where there is one
}

// A Label names a place of the side view.
type Label struct {
	fit.Point        // mm, as in the Shape
	Letter    string // of a piece; "" for what is none
	Text      string
}

// figurePoses are the poses that may be drawn, the one that shows most first: in
// it all pieces are taut.
var figurePoses = []struct {
	pose  fit.Pose
	title string
}{
	{fit.TetherTaut, "Side view, tether taut"},
	{fit.ThighLevel, "Side view, thigh level"},
	{fit.Seated, "Side view, seated"},
}

// newFigure is the first pose in which climber and kit are known.
func newFigure(m *fit.Model, lengths []Length, unit string) *Figure {
	for _, p := range figurePoses {
		sh := m.Shape(p.pose)
		if !sh.At[fit.MarkKnee].Known() || !sh.At[fit.MarkConnectorBottom].Known() || !sh.At[fit.MarkGardaTop].Known() {
			continue
		}
		f := &Figure{Title: p.title, Shape: sh, Bar: 500, BarText: "500 mm"}
		if unit == "in" {
			f.Bar, f.BarText = 20*25.4, "20 in"
		}
		for mark, estimated := range sh.Estimated {
			if estimated && sh.At[mark].Known() {
				f.Title += ", partly estimated"
				break
			}
		}
		f.labels(lengths, unit)
		return f
	}
	return &Figure{Title: "Side view", Instead: "No drawing. It needs the hip point, the main connector and the lengths of leg, foot loop and tether, and these have to reach each other."}
}

// pieceEnds are where a piece is in the side view, from its upper end.
var pieceEnds = [fit.NumPieces][2]fit.Landmark{
	fit.PieceHitchLeft:    {fit.MarkLeftLoop, fit.MarkConnectorTop},
	fit.PieceHitchRight:   {fit.MarkRightLoop, fit.MarkConnectorTop},
	fit.PieceMainBridge:   {fit.MarkConnectorBottom, fit.MarkMainRings},
	fit.PieceTether:       {fit.MarkGardaTie, fit.MarkTetherEnd},
	fit.PieceBackupBridge: {fit.MarkTetherEnd, fit.MarkBackupRings},
	fit.PieceFootLoop:     {fit.MarkGardaTop, fit.MarkLoopEnd},
}

// labels name the pieces and the marks that count most, in the order in which
// they hang.
func (f *Figure) labels(lengths []Length, unit string) {
	at := f.Shape.At
	add := func(p fit.Point, letter, text string) {
		if p.Known() {
			f.Labels = append(f.Labels, Label{p, letter, text})
		}
	}
	piece := func(p fit.Piece, share float64) {
		a, b := at[pieceEnds[p][0]], at[pieceEnds[p][1]]
		add(fit.Point{X: a.X + share*(b.X-a.X), Y: a.Y + share*(b.Y-a.Y)}, letters[p], lengths[p].Piece+" "+lengths[p].Set)
	}
	garda, connector := at[fit.MarkGardaTop], at[fit.MarkConnectorBottom]
	under := "Garda hitch, " + rules.FormatLength(connector.Y-garda.Y, unit) + " under it"
	if garda.Y > connector.Y {
		under = "Garda hitch, " + rules.FormatLength(garda.Y-connector.Y, unit) + " INTO IT"
	}
	add(at[fit.MarkRightHitch], "", "hitch tops")
	piece(fit.PieceHitchLeft, 0.35)
	piece(fit.PieceHitchRight, 0.65)
	add(connector, "", "main connector")
	add(garda, "", under)
	piece(fit.PieceMainBridge, 0.45)
	piece(fit.PieceTether, 0.5)
	piece(fit.PieceBackupBridge, 0.4)
	add(at[fit.MarkHip], "", "hip point")
	piece(fit.PieceFootLoop, 0.75)
}
