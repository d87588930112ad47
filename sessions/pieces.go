package sessions

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"time"

	"example.com/hangtape/fit"
)

// A TiedPiece is a piece of cord as it came out, with the day on which it was
// tied.
type TiedPiece struct {
	On time.Time // a day; zero where it is not told
	fit.TiedCord
}

// Cords are the pieces without their days.
func Cords(pieces []TiedPiece) []fit.TiedCord {
	var all []fit.TiedCord
	for _, p := range pieces {
		all = append(all, p.TiedCord)
	}
	return all
}

// PiecesFile is the name of the file of the pieces of cord that were tied, in a
// folder of sessions.
const PiecesFile = "pieces.toml"

const piecesHeader = `# Pieces of cord that were tied, as they came out. Lengths in mm.
`

// PiecesPath is the file of the pieces of cord that were tied.
func (st *Store) PiecesPath() string { return filepath.Join(st.dir, PiecesFile) }

// Pieces reads the pieces of cord that were tied, in the order in which they
// were kept; none where the folder has no file of them.
func (st *Store) Pieces() ([]TiedPiece, error) {
	switch _, err := st.disk.Stat(st.PiecesPath()); {
	case errors.Is(err, fs.ErrNotExist):
		return nil, nil
	case err != nil:
		return nil, unreadable(st.PiecesPath(), err, "cannot be read: %s", reason(err))
	}
	data, err := readBytes(st.disk, st.PiecesPath())
	if err != nil {
		return nil, err
	}
	return DecodePieces(st.PiecesPath(), data)
}

// AddPiece keeps one more piece, which must stand its Check, after all others.
// The old file or the new one is there whole at every moment.
func (st *Store) AddPiece(p TiedPiece) error {
	if err := st.Ready(); err != nil {
		return err
	}
	ed := &Editor{Path: st.PiecesPath(), store: st}
	if err := ed.open(); err != nil {
		return err
	}
	err := st.addPiece(ed, p)
	return errors.Join(err, ed.Close())
}

func (st *Store) addPiece(ed *Editor, p TiedPiece) error {
	all, err := st.Pieces()
	if err != nil {
		return err
	}
	data := EncodePieces(append(all, p))
	if _, err := DecodePieces(ed.Path, data); err != nil {
		return err
	}
	became, err := st.replace(ed.Path, ed.tempPrefix(), data)
	return became.told(ed.Path, err)
}

// DecodePieces reads a file of pieces. The name is for its errors only.
func DecodePieces(name string, data []byte) ([]TiedPiece, error) {
	p := &pieces{}
	if err := decode(name, data, piecesSchema, p, checkPieces); err != nil {
		return nil, err
	}
	return p.all, nil
}

// EncodePieces writes pieces as a file.
func EncodePieces(all []TiedPiece) []byte { return encode(piecesHeader, piecesSchema, &pieces{all}) }

type pieces struct{ all []TiedPiece }

// piecesSchema is the file of pieces: every key, in the order of the file.
var piecesSchema = schema[pieces]{
	{path: "", fields: []field[pieces]{format[pieces]()}},
	{path: "pieces", fields: []field[pieces]{
		day("tied", func(p *pieces, i int) *time.Time { return &p.all[i].On }),
		must(word("piece", func(p *pieces, i int) *fit.CordUse { return &p.all[i].Use }, cordUseWords())),
		must(plainNumber("cut_mm", func(p *pieces, i int) *float64 { return &p.all[i].Cut }, length)),
		must(plainNumber("finished_mm", func(p *pieces, i int) *float64 { return &p.all[i].Finished }, length)),
		must(plainNumber("both_tails_mm", func(p *pieces, i int) *float64 { return &p.all[i].Tails }, between(0, mostLength))),
		must(plainNumber("cord_mm", func(p *pieces, i int) *float64 { return &p.all[i].Diameter }, between(2, 14))),
		unlessNone(plainNumber("rope_mm", func(p *pieces, i int) *float64 { return &p.all[i].Host }, between(0, 20))),
		whole("wraps", func(p *pieces, i int) *int { return &p.all[i].Wraps }, 1, 12),
		must(whole("strands", func(p *pieces, i int) *int { return &p.all[i].Strands }, 1, 4)),
		must(word("knot", func(p *pieces, i int) *fit.Knot { return &p.all[i].Closing }, knotWords())),
		word("hitch", func(p *pieces, i int) *fit.Knot { return &p.all[i].Hitch }, knotWords()),
		unlessNone(plainNumber("eye_mm", func(p *pieces, i int) *float64 { return &p.all[i].Eye }, between(0, mostLength))),
	},
		many: func(p *pieces) int { return len(p.all) },
		grow: func(p *pieces, n int) { p.all = make([]TiedPiece, n) }},
}

// unlessNone leaves a 0 out.
func unlessNone[T any](f field[T]) field[T] {
	put := f.put
	f.put = func(t *T, i int) string {
		if s := put(t, i); s != "0" {
			return s
		}
		return ""
	}
	return f
}

func cordUseWords() []named[fit.CordUse] {
	var words []named[fit.CordUse]
	for u := range fit.NumCordUses {
		words = append(words, named[fit.CordUse]{u.Key(), u})
	}
	return words
}

func knotWords() []named[fit.Knot] {
	var words []named[fit.Knot]
	for k := range fit.NumKnots {
		words = append(words, named[fit.Knot]{k.Info().Key, k})
	}
	return words
}

// pieceKeyOf are the file's keys where a quantity of a cord is called otherwise.
var pieceKeyOf = map[string]string{
	"cut": "cut_mm", "finished": "finished_mm", "both-tails": "both_tails_mm", "cord": "cord_mm", "rope": "rope_mm", "eye": "eye_mm",
}

// checkPieces is what cannot be between several keys of a piece.
func checkPieces(p *pieces) []Fault {
	var faults []Fault
	for i, t := range p.all {
		var wrong *fit.CordError
		if !errors.As(t.Check(), &wrong) {
			continue
		}
		key := wrong.Name
		if k, ok := pieceKeyOf[key]; ok {
			key = k
		}
		faults = append(faults, Fault{Key: fmt.Sprintf("pieces.%d.%s", i+1, key), Found: wrong.Found, Accepted: wrong.Accepted})
	}
	return faults
}
