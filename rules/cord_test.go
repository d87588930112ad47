package rules_test

import (
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// What is told beside a length is what the model of cord says of that piece.
func TestCordToCut(t *testing.T) {
	f, m := goodFitting(), fit.LearnCord(nil)
	f.Kit.Pieces[fit.PieceTether].Cord = fit.Some(8)
	for _, c := range []struct {
		piece    fit.Piece
		finished float64
		unit     string
		want     string
	}{
		{fit.PieceTether, 178, "mm", "cut 1140 mm of 8 mm cord for a backup tether of 178 mm"},
		{fit.PieceTether, 177.8, "in", "cut 44 3/4 in of 8 mm cord for a backup tether of 7 in"},
		{fit.PieceFootLoop, 1000, "mm", "cut 2370 mm of 6 mm cord, or 2560 mm of 8 mm cord, or 2745 mm of 10 mm cord for a foot loop of 1000 mm"},
		{fit.PieceTether, -1, "mm", ""},
	} {
		if got := rules.CordToCut(m, f, c.piece, c.finished, c.unit); got != c.want {
			t.Errorf("%s of %g mm in %s: %q, want %q", c.piece.Key(), c.finished, c.unit, got, c.want)
		}
	}
	f.Kit.Pieces[fit.PieceHitchLeft].Cord, f.Rope.Diameter = fit.Some(8), fit.Some(11.4)
	loop := fit.CordFor(f, fit.PieceHitchLeft, 330)
	want := rules.FormatLength(m.Cut(loop, 5).Length, "mm")
	if got := rules.CordToCut(m, f, fit.PieceHitchLeft, 330, "mm"); !strings.HasPrefix(got, "cut "+want+" of 8 mm cord") {
		t.Errorf("%q, want %s", got, want)
	}
	f.Rope.Diameter = fit.Number{}
	if got := rules.CordToCut(m, f, fit.PieceHitchLeft, 330, "mm"); !strings.Contains(got, "once the rope's diameter is told") {
		t.Errorf("without a rope: %q", got)
	}
}

// What a cut goes into adds up to it, in words and in the order in which it is laid out.
func TestWhereTheCordGoes(t *testing.T) {
	f, m := goodFitting(), fit.LearnCord(nil)
	f.Rope.Diameter = fit.Some(11.4)
	for piece, want := range map[fit.Piece]string{
		fit.PieceHitchLeft: "Where the cord of the left hitch loop goes, 1750 mm in all (d: its diameter):\n" +
			"- strands: 660 mm, 2 x 330 mm\n- turns on the rope: 307 mm, 5 x 61 mm\n- girth hitch: 144 mm, 18.0 d\n" +
			"- double fisherman's bend: 272 mm, 34.0 d\n- tails: 200 mm, 2 x 100 mm at least\n- trimming: 167 mm, cut off again when all is well",
		fit.PieceFootLoop: "",
	} {
		if got := strings.Join(rules.CordGoes(m, f, piece, 330, "mm"), "\n"); got != want {
			t.Errorf("%s:\n%s\nwant\n%s", piece.Key(), got, want)
		}
	}
	line := fit.StandardCord(fit.CordFootLoop)
	line.Finished, line.Diameter = 1000, 8
	var got []string
	for _, p := range rules.CordParts(line, m.Cut(line, 5), "cm") {
		got = append(got, p.Name+": "+p.Length+", "+p.How)
	}
	want := "strands: 100.0 cm, 1 x 100.0 cm; eyes: 61.0 cm, 2 x 30.5 cm; figure-eight loop: 48.0 cm, 2 x 30.0 d; " +
		"tails: 20.0 cm, 2 x 10.0 cm at least; trimming: 27.0 cm, cut off again when all is well"
	if told := strings.Join(got, "; "); told != want {
		t.Errorf("%s\nwant %s", told, want)
	}
}

func TestWhatKnotsTook(t *testing.T) {
	for want, r := range map[string]fit.CordResidual{
		"knots took 420 mm, 12 mm more than foretold (± 9 mm)": {Used: 420, Off: 12, U: 9},
		"knots took 420 mm, 27 mm less than foretold (± 9 mm)": {Used: 420, Off: -27, U: 9},
		"knots took 420 mm, 28 mm less than foretold (± 9 mm)": {Used: 420, Off: -28, U: 9},
	} {
		if got := rules.TiedWords(r, "mm"); got != want {
			t.Errorf("%q, want %q", got, want)
		}
		asked := ""
		if r.Off == -28 { // more than three standard deviations
			asked = "QUESTIONED: 3.1 standard deviations off. Was it cut, tied and read as told? It counts, and makes the next pieces longer"
		}
		if got := rules.TiedQuestion(r); got != asked {
			t.Errorf("%+v: %q, want %q", r, got, asked)
		}
	}
}
