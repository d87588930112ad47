package advice_test

import (
	"math"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
	"example.com/hangtape/sessions"
)

// goodKit is the example in which every must passes.
func goodKit(t *testing.T) *sessions.File {
	t.Helper()
	f, err := sessions.ReadFile(examples+"/1-good-kit.toml", nil)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// A piece that cannot be moved on trial says why, and stays.
func TestHeldPiecesSayWhy(t *testing.T) {
	f := goodKit(t)
	for why, c := range map[string]struct {
		piece fit.Piece
		put   func(f *fit.Fitting)
	}{
		"its length is not known":                     {fit.PieceTether, func(f *fit.Fitting) { f.Laid[fit.Tether] = nil }},
		"it is fixed":                                 {fit.PieceTether, func(f *fit.Fitting) { f.Kit.Pieces[fit.PieceTether].Change = fit.Fixed }},
		"it has no bounds":                            {fit.PieceTether, func(f *fit.Fitting) { f.Kit.Pieces[fit.PieceTether].Bounded = false }},
		"how far its rings are apart is not known":    {fit.PieceBackupBridge, func(f *fit.Fitting) { f.Laid[fit.BackupBridgeRings] = nil }},
		"its rings are further apart than its bounds": {fit.PieceBackupBridge, func(f *fit.Fitting) { f.Kit.Pieces[fit.PieceBackupBridge].Bounds = [2]float64{100, 200} }},
	} {
		s := f.Session.Clone()
		c.put(&s.Fit)
		w := advice.NewWhatIf(&s.Fit, rules.DefaultLimits(), rules.MarkMetric)
		before := w.Piece(c.piece)
		err := w.Set(c.piece, 300)
		w.Step(c.piece, 3)
		if after := w.Piece(c.piece); before.Held != why || err == nil || !strings.HasSuffix(err.Error(), why) || after.Moved() {
			t.Errorf("held because %q, said %v, want %q", before.Held, err, why)
		}
	}
}

func TestSlopesTellWhatALongerPieceDoes(t *testing.T) {
	for want, c := range map[string]struct {
		by           float64
		unit, people string
	}{
		"each mm of the backup tether adds 0.98 mm":     {0.98, "mm", "cm"},
		"each in of the backup tether adds 0.98 in":     {0.98, "mm", "in"},
		"each mm of the backup tether takes 0.0312 deg": {-0.0312, "deg", "mm"},
		"each in of the backup tether takes 0.7925 deg": {-0.0312, "deg", "in"},
		"each mm of the backup tether takes 0.0031":     {-0.0031, "", "mm"},
	} {
		if got := (advice.Slope{Piece: fit.PieceTether, PerMM: c.by}).Words(c.unit, c.people); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// A length within its bounds is tried, one beyond them is not; the present one
// takes the piece off trial, wherever it is.
func TestLengthsThatCanBeTried(t *testing.T) {
	f := goodKit(t)
	w := advice.NewWhatIf(&f.Session.Fit, rules.DefaultLimits(), rules.MarkMetric)
	n := w.Piece(fit.PieceTether)
	for _, c := range []struct {
		mm    float64
		tried bool
		moved bool
	}{
		{n.Bounds[0], true, true}, {n.Bounds[1], true, true}, {n.Bounds[0] - 1, false, true}, {n.Bounds[1] + 1, false, true}, {math.NaN(), false, true}, {n.From, true, false},
	} {
		err := w.Set(fit.PieceTether, c.mm)
		if now := w.Piece(fit.PieceTether); (err == nil) != c.tried || c.tried && now.To != c.mm || now.Moved() != c.moved {
			t.Errorf("%g mm: %v, now %+v", c.mm, err, now)
		}
		if fr := w.Frame(fit.PieceTether); fr.Holds == nil || fr.Piece.To != w.Piece(fit.PieceTether).To {
			t.Errorf("at %g mm nothing is told of how far it holds", fr.Piece.To)
		}
		if err != nil && !strings.Contains(err.Error(), "accepted is ") {
			t.Errorf("%g mm: %v", c.mm, err)
		}
	}
}

// What is not known of a piece is not known of what it does.
func TestSlopesOfAPieceThatIsNotKnown(t *testing.T) {
	f := goodKit(t)
	s := f.Session.Clone()
	s.Fit.Laid[fit.Tether] = nil
	sense := advice.Sensitivities(&s.Fit, rules.DefaultLimits())
	for e := range rules.NumEnds {
		if !math.IsNaN(sense[e][fit.PieceTether]) {
			t.Errorf("%s: the tether buys %g", e.Check(), sense[e][fit.PieceTether])
		}
	}
}
