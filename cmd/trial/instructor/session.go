package instructor

import (
	"time"

	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/fit"
)

// A Plan is how often each kind of reading is taken, and how often a number is
// written down wrong.
type Plan struct {
	Body, Garda, Hardware int
	Blunders              float64 // chance that one number is a blunder
}

// FullPlan reads marks on the body and the Garda hitch's poses three times and
// hardware twice; about one session in twelve holds a blunder.
var FullPlan = Plan{Body: 3, Garda: 3, Hardware: 2, Blunders: 0.001}

// Once takes every reading once, Thrice three times.
var (
	Once   = Plan{Body: 1, Garda: 1, Hardware: 1, Blunders: FullPlan.Blunders}
	Thrice = Plan{Body: 3, Garda: 3, Hardware: 3, Blunders: FullPlan.Blunders}
)

// times is how often r is taken.
func (p Plan) times(r fit.Reading) int {
	switch r.Info().Spread {
	case fit.Body:
		return p.Body
	case fit.Garda:
		return p.Garda
	}
	return p.Hardware
}

// The stated pace of a hang: seconds for each number read off the tape, and for
// getting into each pose.
const (
	secondsPerNumber = 8
	secondsPerPose   = 20
)

// A Session is one climber being fitted by one instructor: the true world, and
// what was written down of it.
type Session struct {
	Fit  fit.Fitting
	Kit  truth.Kit // as it truly is now
	Plan Plan      // of the readings to come

	Numbers  int           // written down, retakes with them
	Hanging  time.Duration // at the stated pace
	Retied   int           // pieces set or tied anew
	Blunders int

	world *truth.World
	dice  truth.Dice
	tape  tape
	zero  float64        // of the tape in the latest hang
	level []truth.Wobble // the thigh-level pose of the latest hang, time by time
}

// New opens a session: labels, mass and bounds are written down, nothing is read
// off a tape yet.
func New(d truth.Dice, w *truth.World, k truth.Kit, b truth.Bounds, plan Plan) *Session {
	own := *w // wraps change with a loop tied anew
	s := &Session{Kit: k, world: &own, dice: d, tape: newTape(d), Plan: plan}
	f := &s.Fit
	f.Started = time.Date(2026, 5, 7, 9, 0, 0, 0, time.UTC)
	f.Tape = fit.Tape{Class: fit.ClassII, Division: division}
	f.Sex = fit.Male
	if w.Body.Sex == "F" {
		f.Sex = fit.Female
	}
	f.Mass = fit.Some(d.Flat(w.Mass, 1.9))
	g := &w.Gear
	f.Rope = fit.Rope{
		Diameter: fit.Some(g.Rope.Label), Elongation: fit.Some(g.Elongation.Label),
		LeastAbove: fit.Some(k.LeastAbove), DrillAbove: fit.Some(k.DrillAbove),
	}
	s.writeKit(b)
	return s
}

func (s *Session) writeKit(b truth.Bounds) {
	g, kit := &s.world.Gear, &s.Fit.Kit
	kit.Garda = true
	kit.InsideWidth = fit.Some(g.Width.Label)
	kit.OwnRings = fit.No
	if g.OwnRings {
		kit.OwnRings = fit.Yes
	}
	for p := range fit.NumPieces {
		how := fit.ReTie
		if p == fit.PieceMainBridge || p == fit.PieceBackupBridge {
			how = fit.Slides
		}
		kit.Pieces[p] = fit.PieceInfo{Present: true, Change: how, Bounds: b[pieces[p]], Bounded: true}
	}
	for side, p := range [2]fit.Piece{fit.PieceHitchLeft, fit.PieceHitchRight} {
		hitch := &kit.Pieces[p]
		hitch.Cord, hitch.Strength, hitch.Wraps = fit.Some(g.Cord[side].Label), fit.Some(g.CordForce), fit.Some(g.Wraps)
	}
	tether := &kit.Pieces[fit.PieceTether]
	tether.Cord, tether.Strength, tether.Strands = fit.Some(g.TetherCord.Label), fit.Some(g.Tether), fit.Some(g.Strands)
}

// World is the truth behind the session.
func (s *Session) World() *truth.World { return s.world }
