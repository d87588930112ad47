package compare

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/demo"
)

func demoFile(t testing.TB, name string) *sessions.File {
	t.Helper()
	for _, f := range demo.Files() {
		if f.Name == name {
			return decoded(t, name, f.Data)
		}
	}
	t.Fatalf("no demo %s", name)
	return nil
}

func decoded(t testing.TB, name string, data []byte) *sessions.File {
	t.Helper()
	s, err := sessions.Decode(name, data)
	if err != nil {
		t.Fatal(err)
	}
	return &sessions.File{Name: name, Data: data, Session: s}
}

func of(t testing.TB, a, b *sessions.File) *Comparison {
	t.Helper()
	c, err := Of(a, b)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// edited is a copy of f with a change of its own.
func edited(f *sessions.File, edit func(s *sessions.Session)) *sessions.File {
	s := f.Session.Clone()
	edit(s)
	return &sessions.File{Name: f.Name, Session: s}
}

func TestASessionAgainstItselfHasNoChange(t *testing.T) {
	files, err := filepath.Glob("../../testdata/sessions/*/*.toml")
	if err != nil || len(files) < 20 {
		t.Fatal(files, err)
	}
	for _, name := range files {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		f := decoded(t, name, data)
		c := of(t, f, f)
		if !c.Changes().None() {
			t.Errorf("%s: changes %+v", name, c.Changes())
		}
		if len(c.Checks) != int(rules.NumChecks) || len(c.Readings) == 0 {
			t.Errorf("%s: %d checks, %d readings", name, len(c.Checks), len(c.Readings))
		}
	}
}

// A difference is held against 1.96 times the root of the sum of the squares of
// what check says of each session.
func TestChangeIsMoreThanItsUncertainty(t *testing.T) {
	a, b := demoFile(t, "a-good-kit.toml"), demoFile(t, "b-short-bridge.toml")
	x, err1 := a.Judge()
	y, err2 := b.Judge()
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	changes := 0
	for i, r := range of(t, a, b).Checks {
		delta, u := float64(y.Checks[i].Margin-x.Checks[i].Margin), math.Hypot(float64(x.Checks[i].U), float64(y.Checks[i].U))
		if math.Abs(float64(r.Delta)-delta) > 1e-9 || math.Abs(float64(r.U)-u) > 1e-9 {
			t.Errorf("%s: %v ± %v, want %v ± %v", r.Name, r.Delta, r.U, delta, u)
		}
		if r.Changed != (math.Abs(delta) > 1.96*u) {
			t.Errorf("%s: changed %v at %v ± %v", r.Name, r.Changed, delta, u)
		}
		if r.VerdictChanged != (x.Checks[i].Verdict != y.Checks[i].Verdict) {
			t.Errorf("%s: verdict changed %v", r.Name, r.VerdictChanged)
		}
		if r.Changed {
			changes++
		}
	}
	if changes != 5 {
		t.Errorf("%d margins changed, want 5", changes)
	}
}

func TestABridgeIsFoundWhereverItIsTold(t *testing.T) {
	a := demoFile(t, "a-good-kit.toml")
	b := edited(a, func(s *sessions.Session) { s.Fit.Laid[fit.MainBridge] = []float64{1095} })
	c := of(t, a, b).Changes()
	if len(c.Lengths) != 1 || c.Lengths[0].Name != "main_bridge" || c.Lengths[0].Delta != 15 || len(c.Readings) != 0 {
		t.Errorf("%+v", c)
	}
	// set between two hangs it is the length at the end as well
	b = edited(a, func(s *sessions.Session) {
		s.Fit.Hangs = append(s.Fit.Hangs, fit.Hang{})
		s.Fit.Changes = []fit.Change{{Piece: fit.PieceMainBridge, To: 1150, AfterHang: 1}}
	})
	c = of(t, a, b).Changes()
	if len(c.Lengths) != 1 || c.Lengths[0].Delta != 70 || c.Lengths[0].B.Origin != "predicted" {
		t.Errorf("%+v", c.Lengths)
	}
}

func TestTheZeroOfTheTapeIsNoChange(t *testing.T) {
	a := demoFile(t, "a-good-kit.toml")
	b := edited(a, func(s *sessions.Session) {
		for r, list := range s.Fit.Hangs[0].Heights {
			for i := range list {
				s.Fit.Hangs[0].Heights[r][i] += 733
			}
		}
	})
	if c := of(t, a, b).Changes(); !c.None() {
		t.Errorf("%+v", c)
	}
}

// A kept thigh is one reading: its row is no change, and its error cancels in
// what rests on it. The size of it is worked out here by moving the thigh.
func TestKeptLengthIsTheSameReading(t *testing.T) {
	a := demoFile(t, "a-good-kit.toml")
	b := edited(a, func(s *sessions.Session) {
		s.ID = "01KPJFR4M03M4T5W6X7Y8Z9A0C"
		s.Fit.Kept = []fit.Kept{{Key: "climber.thigh_mm", Session: a.Session.ID, Taken: a.Session.Started}}
	})
	c := of(t, a, b)
	for _, r := range c.Readings {
		if r.Shared != (r.Name == "climber.thigh_mm") {
			t.Errorf("%s: shared %v", r.Name, r.Shared)
		}
	}
	i := slices.IndexFunc(c.Poses, func(r Row) bool { return r.Name == "ylevel_model" })
	if i < 0 {
		t.Fatal("no ylevel_model")
	}
	row := c.Poses[i]
	thigh := c.Readings[slices.IndexFunc(c.Readings, func(r Row) bool { return r.Name == "climber.thigh_mm" })]
	at := func(by float64) float64 {
		f := edited(a, func(s *sessions.Session) {
			for k := range s.Fit.Laid[fit.Thigh] {
				s.Fit.Laid[fit.Thigh][k] += by * float64(thigh.A.U)
			}
		})
		r, err := f.Judge()
		if err != nil {
			t.Fatal(err)
		}
		return float64(r.Poses[i].Value)
	}
	effect := (at(1) - at(-1)) / 2
	want := math.Sqrt(float64(row.A.U*row.A.U+row.B.U*row.B.U) - 2*effect*effect)
	if got := float64(row.U); math.Abs(got-want) > 0.01 || effect == 0 {
		t.Errorf("u %v, want %v (effect of the thigh %v)", got, want, effect)
	}
	// the same number read anew is another reading
	c = of(t, a, edited(a, func(s *sessions.Session) { s.ID = "01KPJFR4M03M4T5W6X7Y8Z9A0C" }))
	if c.Poses[i].U <= row.U || slices.ContainsFunc(c.Readings, func(r Row) bool { return r.Shared }) {
		t.Errorf("read anew: u %v, kept %v", c.Poses[i].U, row.U)
	}
}

func TestLimitsAndWordsThatDiffer(t *testing.T) {
	a := demoFile(t, "a-good-kit.toml")
	b := edited(a, func(s *sessions.Session) {
		s.Limits = map[rules.Limit]float64{rules.ConnectorClearance: 30}
		s.KitLabel, s.Notes = "another kit", "not compared"
		s.Fit.Kit.Pieces[fit.PieceTether].Bounds[1] = 450
	})
	c := of(t, a, b).Changes()
	if want := []LimitMove{{"connector-clearance", "mm", 25, 30}}; !slices.Equal(c.Limits, want) {
		t.Errorf("limits %+v", c.Limits)
	}
	want := []Words{{"kit.label", `"demo kit 2"`, `"another kit"`}, {"kit.tether.bounds_mm", "[80, 400]", "[80, 450]"}}
	if !slices.Equal(c.Told, want) {
		t.Errorf("told %+v", c.Told)
	}
	// read once, a limit's move is all that moved; read twice, 5 mm are inside the
	// uncertainty of two sessions
	moved := func(c *Comparison) bool {
		return slices.ContainsFunc(c.Changes().Checks, func(r CheckRow) bool { return r.Name == "garda-under-connector" })
	}
	if !moved(of(t, a, b)) {
		t.Error("stages of one session: the margin did not move with its limit")
	}
	b.Session.ID = "01KPJFR4M03M4T5W6X7Y8Z9A0C"
	if moved(of(t, a, b)) {
		t.Error("two sessions: a move inside the uncertainty counts as a change")
	}
}

func TestWhatIsUnknownIsNoChange(t *testing.T) {
	a, b := demoFile(t, "a-good-kit.toml"), demoFile(t, "c-on-the-ground.toml")
	for _, r := range of(t, a, b).Readings {
		if r.A.Value.Known() != r.B.Value.Known() && (r.Delta.Known() || r.Changed) {
			t.Errorf("%+v", r)
		}
	}
}

func BenchmarkCompare(b *testing.B) {
	x, y := demoFile(b, "a-good-kit.toml"), demoFile(b, "b-short-bridge.toml")
	for b.Loop() {
		if of(b, x, y).Changes().None() {
			b.Fatal("no change")
		}
	}
}
