package sessions

import (
	"bytes"
	"reflect"
	"testing"
	"time"

	"pgregory.net/rapid"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// The generators draw from all that a session file may hold.
var (
	anyText   = rapid.StringN(0, 30, 200)
	someText  = rapid.StringN(1, 30, 200)
	anyTime   = rapid.Map(rapid.Int64Range(-2e9, 7e9), func(s int64) time.Time { return time.Unix(s, 0).UTC() })
	anyDay    = rapid.Map(anyTime, func(t time.Time) time.Time { return t.Truncate(24 * time.Hour) })
	anyID     = rapid.StringMatching(`[0-7][0-9A-HJKMNP-TV-Z]{25}`)
	anyChoice = rapid.SampledFrom([]fit.Choice{fit.Unanswered, fit.No, fit.Yes})
	aVerdict  = rapid.SampledFrom([]rules.Verdict{rules.Fail, rules.Unknown, rules.Tight, rules.Pass})
)

// inRange draws a number that a key accepts.
func inRange(t *rapid.T, k KeyInfo) float64 {
	v := rapid.Float64Range(k.Least, k.Most).Draw(t, k.Path)
	if v < nothing && v > -nothing {
		v = 0
	}
	if !k.Holds(v) {
		return k.Most
	}
	return v
}

func maybeNumber(t *rapid.T, key string) fit.Number {
	if !rapid.Bool().Draw(t, "told") {
		return fit.Number{}
	}
	k, ok := Key(key)
	if !ok {
		t.Fatalf("no key %s", key)
	}
	if k.Kind == CountKind {
		return fit.Some(float64(rapid.IntRange(int(k.Least), int(k.Most)).Draw(t, key)))
	}
	return fit.Some(inRange(t, k))
}

func maybeList(t *rapid.T, k KeyInfo) []float64 {
	n := rapid.IntRange(-1, 4).Draw(t, "repeats")
	if n < 0 {
		return nil
	}
	list := make([]float64, n)
	for i := range list {
		list[i] = inRange(t, k)
	}
	return list
}

func drawSession(t *rapid.T) *Session {
	s := &Session{
		ID:         anyID.Draw(t, "id"),
		Purpose:    rapid.SampledFrom([]Purpose{FirstFitting, ReTune, ReCheck, Review}).Draw(t, "purpose"),
		Started:    anyTime.Draw(t, "started"),
		Finished:   anyTime.Draw(t, "finished"),
		Place:      anyText.Draw(t, "place"),
		Climber:    anyText.Draw(t, "climber"),
		Instructor: anyText.Draw(t, "instructor"),
		Unit:       rapid.SampledFrom([]Unit{MM, CM, Inch}).Draw(t, "unit"),
		Notes:      anyText.Draw(t, "notes"),
		KitLabel:   anyText.Draw(t, "label"), InspectedBy: anyText.Draw(t, "inspected_by"), Inspected: anyDay.Draw(t, "inspected"),
	}
	f := &s.Fit
	f.Started = s.Started
	f.Tape = fit.Tape{Class: rapid.SampledFrom([]fit.TapeClass{fit.ClassI, fit.ClassII, fit.ClassIII}).Draw(t, "class"),
		Division: rapid.Float64Range(0.5, 10).Draw(t, "division"), Hook: rapid.Bool().Draw(t, "hook")}
	f.Sex = rapid.SampledFrom([]fit.Sex{fit.Unsaid, fit.Male, fit.Female}).Draw(t, "sex")
	f.StatureTold = maybeNumber(t, "climber.stature_told_mm")
	f.Mass, f.MassU = maybeNumber(t, "climber.mass_kg"), maybeNumber(t, "climber.mass_u_kg")
	f.Rope = fit.Rope{Diameter: maybeNumber(t, "rope.diameter_mm"), Elongation: maybeNumber(t, "rope.elongation_percent"),
		LeastAbove: maybeNumber(t, "rope.least_above_mm"), DrillAbove: maybeNumber(t, "rope.drill_above_mm")}
	f.Hangs = make([]fit.Hang, rapid.IntRange(0, 3).Draw(t, "hangs"))
	for i := range f.Hangs {
		f.Hangs[i].Started, f.Hangs[i].Ended = anyTime.Draw(t, "from"), anyTime.Draw(t, "to")
	}
	for r := range fit.NumReadings {
		if !r.IsHeight() {
			f.Laid[r] = maybeList(t, rangeOf(r))
			continue
		}
		for i := range f.Hangs {
			f.Hangs[i].Heights[r] = maybeList(t, rangeOf(r))
		}
	}
	for p := range fit.NumPostures {
		if rapid.Bool().Draw(t, "posture") {
			f.Posture[p] = fit.Setting{V: rapid.Float64Range(0.1, 1.5).Draw(t, "v"), U: p.Info().U, Given: true}
		}
	}
	drawKit(t, s)
	for l := range rules.NumLimits {
		if l != rules.LeastOver && l != rules.MostOver && rapid.Bool().Draw(t, "moved") {
			if s.Limits == nil {
				s.Limits = map[rules.Limit]float64{}
			}
			b := l.Info().Bounds
			s.Limits[l] = inRange(t, between(b[0], b[1]))
		}
	}
	if len(f.Hangs) > 0 && rapid.Bool().Draw(t, "changed") {
		f.Changes = []fit.Change{{Piece: fit.Piece(rapid.IntRange(0, int(fit.NumPieces)-1).Draw(t, "piece")),
			From: maybeNumber(t, "changes.N.from_mm"), To: inRange(t, length), Measured: maybeList(t, length), AfterHang: len(f.Hangs)}}
	}
	if rapid.Bool().Draw(t, "kept") {
		f.Kept = []fit.Kept{{Key: rapid.SampledFrom(KeptKeys()).Draw(t, "key"), Session: anyID.Draw(t, "of"), Taken: anyDay.Draw(t, "taken")}}
	}
	if rapid.Bool().Draw(t, "drilled") {
		s.Drill = &Drill{Started: anyTime.Draw(t, "drill started"), Done: anyTime.Draw(t, "done"), Sag: maybeNumber(t, "drill.sag_mm"), Note: anyText.Draw(t, "note"),
			Steps: []DrillStep{{someText.Draw(t, "step"), anyChoice.Draw(t, "held"), maybeNumber(t, "drill.steps.N.drop_mm"), maybeNumber(t, "drill.steps.N.garda_mm"),
				anyChoice.Draw(t, "free"), anyChoice.Draw(t, "reach"), anyChoice.Draw(t, "up")}, {Name: "ease-both"}}}
	}
	if rapid.Bool().Draw(t, "signed") {
		s.SignOff = &SignOff{By: anyText.Draw(t, "by"), At: anyTime.Draw(t, "at"), Note: anyText.Draw(t, "note"), Outcome: aVerdict.Draw(t, "outcome"),
			Rules: "sha256:0123", Checks: []SignedCheck{{"hitch-top-reach", aVerdict.Draw(t, "verdict"), rules.Num(inRange(t, height)), rules.Num(inRange(t, height))}}}
	}
	return s
}

func drawKit(t *rapid.T, s *Session) {
	kit := &s.Fit.Kit
	for p := range fit.NumPieces {
		if kit.Pieces[p].Present = rapid.Bool().Draw(t, "present"); !kit.Pieces[p].Present {
			continue
		}
		key := "kit." + p.Key()
		info := fit.PieceInfo{Present: true, Change: rapid.SampledFrom([]fit.How{fit.Fixed, fit.Slides, fit.ReTie}).Draw(t, "change")}
		if info.Bounded = rapid.Bool().Draw(t, "bounded"); info.Bounded {
			info.Bounds = [2]float64{rapid.Float64Range(1, 500).Draw(t, "least"), rapid.Float64Range(500, 5000).Draw(t, "most")}
		}
		for k, at := range map[string]*fit.Number{"cord_mm": &info.Cord, "wraps": &info.Wraps, "strands": &info.Strands, "strength_kn": &info.Strength} {
			if _, ok := Key(key + "." + k); ok {
				*at = maybeNumber(t, key+"."+k)
			}
		}
		kit.Pieces[p] = info
		s.Tied[p] = Tied{anyDay.Draw(t, "tied"), anyText.Draw(t, "by")}
	}
	if !kit.Pieces[fit.PieceMainBridge].Present {
		s.Fit.Laid[fit.MainBridge], s.Fit.Laid[fit.MainBridgeRings] = nil, nil
	}
	if !kit.Pieces[fit.PieceFootLoop].Present {
		s.Fit.Laid[fit.FootLoop] = nil
	}
	if !kit.Pieces[fit.PieceTether].Present {
		s.Fit.Laid[fit.Tether] = nil
	}
	if kit.Pieces[fit.PieceBackupBridge].Present {
		kit.OwnRings = anyChoice.Draw(t, "own_rings")
	} else {
		s.Fit.Laid[fit.BackupBridge], s.Fit.Laid[fit.BackupBridgeRings] = nil, nil
	}
	kit.Garda = true
	kit.InsideWidth = maybeNumber(t, "kit.garda.inside_width_mm")
}

func TestEncodedSessionsComeBackTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSession(t)
		data := Encode(s)
		back, err := Decode("drawn", data)
		if err != nil {
			t.Fatalf("%v\n%s", err, data)
		}
		if len(s.Fit.Hangs) == 0 {
			s.Fit.Hangs = nil
		}
		if !reflect.DeepEqual(s, back) {
			t.Fatalf("got\n%+v\nwant\n%+v\n%s", back, s, data)
		}
		if again := Encode(back); !bytes.Equal(again, data) {
			t.Fatalf("written again as\n%s\nfirst\n%s", again, data)
		}
	})
}

func TestCloneSharesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSession(t)
		if c := s.Clone(); !reflect.DeepEqual(c, s) {
			t.Fatalf("clone\n%+v\nof\n%+v", c, s)
		} else if at := shared(reflect.ValueOf(c).Elem(), reflect.ValueOf(s).Elem(), "session"); at != "" {
			t.Fatalf("%s is shared", at)
		}
	})
}

// shared names the first list, map or pointer that a and b have in common.
func shared(a, b reflect.Value, at string) string {
	if a.Type() == reflect.TypeFor[time.Time]() {
		return ""
	}
	switch a.Kind() {
	case reflect.Pointer:
		if !a.IsNil() && a.Pointer() == b.Pointer() {
			return at
		} else if !a.IsNil() {
			return shared(a.Elem(), b.Elem(), at)
		}
	case reflect.Map:
		if !a.IsNil() && a.Pointer() == b.Pointer() {
			return at
		}
	case reflect.Slice:
		if a.Cap() > 0 && b.Cap() > 0 && a.Pointer() == b.Pointer() {
			return at
		}
		for i := range a.Len() {
			if s := shared(a.Index(i), b.Index(i), at); s != "" {
				return s
			}
		}
	case reflect.Array:
		for i := range a.Len() {
			if s := shared(a.Index(i), b.Index(i), at); s != "" {
				return s
			}
		}
	case reflect.Struct:
		for i := range a.NumField() {
			if s := shared(a.Field(i), b.Field(i), at+"."+a.Type().Field(i).Name); s != "" {
				return s
			}
		}
	}
	return ""
}
