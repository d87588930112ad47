package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/number"
)

// tiedPieces are the pieces of cord kept so far. A folder that is not there yet
// is not made for a question.
func tiedPieces(w *world) ([]fit.TiedCord, error) {
	if _, err := os.Stat(sessionsDir(w)); errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	st, err := openStore(w)
	if err != nil {
		return nil, err
	}
	pieces, err := st.Pieces()
	return sessions.Cords(pieces), err
}

// cordModel is what knots take, learnt from the pieces kept so far.
func cordModel(w *world) (*fit.CordModel, error) {
	tied, err := tiedPieces(w)
	if err != nil {
		return nil, err
	}
	return fit.LearnCord(tied), nil
}

// keepTied keeps one more piece and lists them all. One that does not fit the
// others is kept and questioned.
func keepTied(w *world, f cutFlags, cord fit.Cord) error {
	if f.spool != "" {
		return usage("--spool is of pieces to cut, not of one that was tied")
	}
	cord.Tail = 0 // what came out is told by --both-tails
	t := fit.TiedCord{Cord: cord}
	for _, l := range []struct {
		flag, typed, what string
		into              *float64
	}{
		{"cut", f.cut, "the length that was cut", &t.Cut},
		{"both-tails", f.bothTails, "both tails together before they were trimmed: without it nobody knows what the knots took", &t.Tails},
	} {
		if l.typed == "" {
			return usage("cut --tied needs --%s, %s", l.flag, l.what)
		}
		var err error
		if *l.into, err = lengthTyped("--"+l.flag, l.typed, string(f.unit), number.Laid, number.Range{}); err != nil {
			return err
		}
	}
	if err := flagError(t.Check()); err != nil {
		return err
	}
	st, err := openStore(w)
	if err != nil {
		return err
	}
	day := w.now().UTC().Truncate(24 * time.Hour)
	if err := st.AddPiece(sessions.TiedPiece{On: day, TiedCord: t}); err != nil {
		return err
	}
	return listTied(w, f)
}

// listTied lists the pieces kept, each held against all the others.
func listTied(w *world, f cutFlags) error {
	tied, err := tiedPieces(w)
	if err != nil {
		return err
	}
	residuals, model := fit.CordResiduals(tied), fit.LearnCord(tied)
	if f.json {
		return writeJSON(w.out, listJSON(tied, residuals, model))
	}
	p := &page{unit: string(f.unit)}
	if len(tied) == 0 {
		p.line("No piece of your own was tied yet. hangtape cut --help shows how to keep one.")
		return writePage(w.out, p)
	}
	show := func(mm float64) string { return rules.FormatLength(mm, p.unit) }
	p.line("Pieces of your own, each with what its knots took")
	for i, t := range tied {
		r := residuals[i]
		p.item("", fmt.Sprintf("%d. %s of %s, %s mm cord, cut %s, both tails %s: %s.",
			i+1, useNames[t.Use], show(t.Finished), shortest(t.Diameter), show(t.Cut), show(t.Tails), rules.TiedWords(r, p.unit)))
		if question := rules.TiedQuestion(r); question != "" {
			p.line(indented(5, fmt.Sprintf("%s; if it is a slip, take it out of %s.", question, printable(filepath.Join(sessionsDir(w), sessions.PiecesFile)))))
		}
	}
	p.granted(model, usedKnots(tied))
	return writePage(w.out, p)
}

// usedKnots are the knots that pieces were tied with, in the order of the knots.
func usedKnots(tied []fit.TiedCord) []fit.Knot {
	var used []fit.Knot
	for k := fit.NoKnot + 1; k < fit.NumKnots; k++ {
		for _, t := range tied {
			if t.Closing == k || t.Hitch == k {
				used = append(used, k)
				break
			}
		}
	}
	return used
}

// tiedJSON is the list of pieces for programs. Lengths are mm.
type tiedJSON struct {
	Format int         `json:"format"`
	Pieces []pieceJSON `json:"pieces"`
	learntJSON
}

type pieceJSON struct {
	Piece      string    `json:"piece"`
	Cut        rules.Num `json:"cut"`
	Finished   rules.Num `json:"finished"`
	BothTails  rules.Num `json:"both_tails"`
	Cord       rules.Num `json:"cord"`
	Used       rules.Num `json:"used"` // by its knots
	Off        rules.Num `json:"off"`  // more than the others say
	U          rules.Num `json:"u"`
	Questioned bool      `json:"questioned"`
}

func listJSON(tied []fit.TiedCord, residuals []fit.CordResidual, m *fit.CordModel) tiedJSON {
	out := tiedJSON{Format: 1, Pieces: []pieceJSON{}, learntJSON: learnt(m, usedKnots(tied))}
	for i, t := range tied {
		r := residuals[i]
		out.Pieces = append(out.Pieces, pieceJSON{t.Use.Key(), tenth(t.Cut), tenth(t.Finished), tenth(t.Tails), rules.Num(t.Diameter),
			tenth(r.Used), tenth(r.Off), tenth(r.U), r.Doubtful()})
	}
	return out
}
