package flow

import (
	"slices"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
)

// Follow makes s a session that takes people, tape, rope and kit from an earlier
// one; its readings stand beside the fields and are taken anew or kept.
func Follow(s, e *sessions.Session) {
	s.Purpose, s.Follows = sessions.ReTune, e.ID
	s.Climber, s.Instructor, s.Place, s.Unit = e.Climber, e.Instructor, e.Place, e.Unit
	s.Fit.Sex, s.Fit.Posture = e.Fit.Sex, e.Fit.Posture
	takeGear(s, e)
}

// takeGear takes over tape, rope and kit, and their labels; what the labels of
// cord and connectors say counts as kept.
func takeGear(s, e *sessions.Session) {
	s.KitLabel, s.Tied = e.KitLabel, e.Tied
	s.Fit.Tape, s.Fit.Rope, s.Fit.Kit = e.Fit.Tape, e.Fit.Rope, e.Fit.Kit
	k := &s.Fit.Kit
	for key, n := range map[string]fit.Number{
		"kit.hitch_left.cord_mm":    k.Pieces[fit.PieceHitchLeft].Cord,
		"kit.hitch_right.cord_mm":   k.Pieces[fit.PieceHitchRight].Cord,
		"kit.tether.cord_mm":        k.Pieces[fit.PieceTether].Cord,
		"kit.garda.inside_width_mm": k.InsideWidth,
	} {
		if n.Known {
			s.Fit.Kept = append(s.Fit.Kept, keptFrom(e, key))
		}
	}
	slices.SortFunc(s.Fit.Kept, func(a, b fit.Kept) int { return fit.CompareKeys(a.Key, b.Key) })
}
