package advice_test

import (
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
	"example.com/hangtape/sessions"
)

// A piece that cannot be moved on trial says why, and stays.
func TestHeldPiecesSayWhy(t *testing.T) {
	f, err := sessions.ReadFile(examples+"/1-good-kit.toml", nil)
	if err != nil {
		t.Fatal(err)
	}
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
		w := advice.NewWhatIf(&s.Fit, rules.DefaultLimits(), advice.MarkMetric)
		before := w.Piece(c.piece)
		err := w.Set(c.piece, 300)
		w.Step(c.piece, 3)
		if after := w.Piece(c.piece); before.Held != why || err == nil || !strings.HasSuffix(err.Error(), why) || after.Moved() {
			t.Errorf("held because %q, said %v, want %q", before.Held, err, why)
		}
	}
}

func TestSlopesTellWhatAMillimetreDoes(t *testing.T) {
	for want, c := range map[string]struct {
		by   float64
		unit string
	}{
		"each mm of the backup tether adds 0.98 mm":     {0.98, "mm"},
		"each mm of the backup tether takes 0.0312 deg": {-0.0312, "deg"},
		"each mm of the backup tether takes 0.0031":     {-0.0031, ""},
	} {
		if got := (advice.Slope{Piece: fit.PieceTether, PerMM: c.by}).Words(c.unit); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
