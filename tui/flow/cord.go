package flow

import (
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// CordFor says how much cord to cut for p, to be finished at a length in mm; empty
// where nothing is said of cord, and where no such piece can be tied.
func (s *State) CordFor(p fit.Piece, finished float64) string {
	return s.cordFor(&s.Session.Fit, p, finished)
}

func (s *State) cordFor(f *fit.Fitting, p fit.Piece, finished float64) string {
	if s.Cord == nil || finished <= 0 {
		return ""
	}
	return rules.CordToCut(s.Cord, f, p, finished, string(s.Session.Unit))
}

// CordToCut says, wherever a length is to be tied, how much cord to cut for it, a
// line each; none elsewhere. The text in the field counts, as a length or as the
// diameter of the cord.
func (s *State) CordToCut(a Ask) []string {
	var out []string
	f, list := s.tying(a)
	for _, t := range list {
		if words := s.cordFor(f, t.piece, t.finished); words != "" {
			out = append(out, "To tie it: "+words+".")
		}
	}
	return out
}

// CordGoes tells of the same lengths where their cord goes, a line each.
func (s *State) CordGoes(a Ask) []string {
	var out []string
	f, list := s.tying(a)
	for _, t := range list {
		if s.Cord != nil && t.finished > 0 {
			out = append(out, rules.CordGoes(s.Cord, f, t.piece, t.finished, string(s.Session.Unit))...)
		}
	}
	return out
}

// A toTie is a piece that is to be tied at a length, in mm; 0 where nobody knows.
type toTie struct {
	piece    fit.Piece
	finished float64
}

// tying are the pieces that a question is about as far as they are to be tied, and
// the kit with the cord that is in the field.
func (s *State) tying(a Ask) (*fit.Fitting, []toTie) {
	d, f := &s.Draft, s.Session.Fit
	var list []toTie
	add := func(p fit.Piece, finished float64) { list = append(list, toTie{p, finished}) }
	key := a.Key
	switch {
	case key == "changes.to_mm" && d.Pending != nil:
		if p := d.Pending.Piece; d.reTied(p) {
			add(p, s.typedNumber(a))
		}
	case key == "set":
		for p := range fit.NumPieces {
			if d.ToSet[p] && d.lastChange(p) >= 0 && d.reTied(p) {
				add(p, d.lengthToTie(p))
			}
		}
	case a.change != nil:
		if c := f.Changes[a.change(d)]; d.reTied(c.Piece) && len(c.Measured) == 0 {
			add(c.Piece, c.To)
		}
	case strings.HasPrefix(key, "tied."):
		if p, rest, ok := pieceOf("tied.", key); ok && rest == "cut_mm" {
			add(p, d.lengthToTie(p))
		}
	case strings.HasPrefix(key, "kit."):
		p, rest, ok := pieceOf("kit.", key)
		if !ok || !d.reTied(p) {
			break
		}
		switch {
		case rest == "cord_mm":
			if v := s.typedNumber(a); v > 0 {
				f.Kit.Pieces[p].Cord = fit.Some(v)
			}
			add(p, d.lengthToTie(p))
		case rest == "change" || rest == "length_mm":
			add(p, d.lengthToTie(p))
		case strings.HasPrefix(rest, "bounds_mm."):
			add(p, s.typedNumber(a))
		}
	}
	return &f, list
}

// lengthToTie is the length that p is to be tied at, in mm: that of its last change, or
// as it is; 0 where nobody knows.
func (d *Draft) lengthToTie(p fit.Piece) float64 {
	if i := d.lastChange(p); i >= 0 {
		return d.Session.Fit.Changes[i].To
	}
	return d.length(p).V
}

// reTied says whether p gets another length by being tied anew.
func (d *Draft) reTied(p fit.Piece) bool { return d.Session.Fit.Kit.Pieces[p].Change == fit.ReTie }

// pieceOf parts a key into table, its piece and the rest.
func pieceOf(table, key string) (p fit.Piece, rest string, ok bool) {
	for p := range fit.NumPieces {
		if rest, ok := strings.CutPrefix(key, table+p.Key()+"."); ok {
			return p, rest, true
		}
	}
	return 0, "", false
}

// typedNumber is the number in the field, or else the one that was taken; 0 where
// there is none.
func (s *State) typedNumber(a Ask) float64 {
	text := s.Text()
	if blank(text) && a.Told(&s.Draft) > 0 {
		text = a.Exact(&s.Draft, 0, s.Session.Unit)
	}
	v, err := a.parse(text, s.Session.Unit, s.Session.Started)
	if err != nil {
		return 0
	}
	return v.number
}
