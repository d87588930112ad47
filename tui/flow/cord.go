package flow

import (
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// CordToCut says, wherever a length is to be tied, how much cord to cut for it, a
// line each; none elsewhere. The text in the field counts as the length.
func (s *State) CordToCut(a Ask) []string {
	if s.Cord == nil {
		return nil
	}
	d := &s.Draft
	f := &d.Session.Fit
	var out []string
	add := func(p fit.Piece, finished float64) {
		if words := rules.CordToCut(s.Cord, f, p, finished, string(s.Session.Unit)); finished > 0 && words != "" {
			out = append(out, "To tie it: "+words+".")
		}
	}
	reTied := func(p fit.Piece) bool { return f.Kit.Pieces[p].Change == fit.ReTie }
	switch {
	case a.Key == "changes.to_mm" && d.Pending != nil:
		if p := d.Pending.Piece; reTied(p) {
			add(p, s.typedLength(a))
		}
	case a.Key == "set":
		for p := range fit.NumPieces {
			if i := d.lastChange(p); d.ToSet[p] && i >= 0 && reTied(p) {
				add(p, f.Changes[i].To)
			}
		}
	case a.change != nil:
		if c := f.Changes[a.change(d)]; reTied(c.Piece) && len(c.Measured) == 0 {
			add(c.Piece, c.To)
		}
	case strings.HasPrefix(a.Key, "kit."):
		p, key, ok := pieceOf(a.Key)
		switch {
		case !ok:
		case key == "change" || key == "length_mm":
			if n := d.length(p); n.Known && f.Kit.Pieces[p].Cord.Known {
				add(p, n.V)
			}
		case strings.HasPrefix(key, "bounds_mm.") && reTied(p):
			add(p, s.typedLength(a))
		}
	}
	return out
}

// pieceOf parts a key of the kit into its piece and the rest.
func pieceOf(key string) (p fit.Piece, rest string, ok bool) {
	for p := range fit.NumPieces {
		if rest, ok := strings.CutPrefix(key, "kit."+p.Key()+"."); ok {
			return p, rest, true
		}
	}
	return 0, "", false
}

// typedLength is the length in the field, or else the one that was taken; 0 where
// there is none.
func (s *State) typedLength(a Ask) float64 {
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
