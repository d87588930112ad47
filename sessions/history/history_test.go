package history

import (
	"crypto/rand"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/demo"
	"example.com/hangtape/sessions/records"
)

// demos are the two demo sessions of one climber, the later one first.
func demos(t *testing.T) []*sessions.File {
	t.Helper()
	var files []*sessions.File
	for _, d := range demo.Files() {
		if d.Name == "a-good-kit.toml" || d.Name == "d-half-a-year-later.toml" {
			s, err := sessions.Decode(d.Name, d.Data)
			if err != nil {
				t.Fatal(err)
			}
			files = append(files, &sessions.File{Name: d.Name, Data: d.Data, Session: s})
		}
	}
	slices.Reverse(files)
	return files
}

var climber = &records.Climber{Name: "demo climber A"}

var thisDay = time.Date(2026, 11, 25, 8, 0, 0, 0, time.UTC)

func TestHistoryIsInTheOrderOfTime(t *testing.T) {
	files := demos(t)
	h := of(climber, files, sessions.DefaultSchool(), thisDay)
	if len(h.Sessions) != 2 || h.Sessions[0].Started != "2026-04-18T09:12:00Z" || h.Sessions[1].Outcome != rules.Tight {
		t.Fatalf("%+v", h.Sessions)
	}
	if files[0].Name != "d-half-a-year-later.toml" {
		t.Error("the files that were handed over were put in another order")
	}
	if h.Sessions[0].Since != nil || h.Sessions[1].Since == nil || len(h.Sessions[1].Since.Lengths) != 2 {
		t.Errorf("since: %+v", h.Sessions[1].Since)
	}
	for _, s := range h.Sessions {
		if len(s.Today.Differs) > 0 || len(s.Checks) != int(rules.NumChecks) {
			t.Errorf("%s: %+v", s.Started, s.Today)
		}
	}
}

// The limits of today are the school's, whatever the session's were.
func TestTodayJudgesUnderTheLimitsOfToday(t *testing.T) {
	files := demos(t)[1:]
	school := sessions.DefaultSchool()
	school.Limits = map[rules.Limit]float64{rules.ReleaseRoom: 62}
	h := of(climber, files, school, thisDay)
	want := []Difference{{"garda-release-room", rules.Pass, rules.Tight}}
	if got := h.Sessions[0].Today; !slices.Equal(got.Differs, want) || got.Outcome != rules.Tight {
		t.Errorf("%+v", got)
	}
	if h.Sessions[0].Outcome != rules.Pass || files[0].Session.Limits != nil {
		t.Error("the session's own limits have moved")
	}
	// what was signed counts where somebody signed
	s := files[0].Session.Clone()
	r, err := s.Judge()
	if err != nil {
		t.Fatal(err)
	}
	s.Sign("x", "", thisDay, r)
	s.SignOff.Checks[rules.SlipDrop].Verdict = rules.Fail
	h = of(climber, []*sessions.File{{Session: s}}, sessions.DefaultSchool(), thisDay)
	if got := h.Sessions[0].Today.Differs; !slices.Equal(got, []Difference{{"slip-drop", rules.Fail, rules.Pass}}) {
		t.Errorf("%+v", got)
	}
}

func TestASessionThatCannotBeStopsNothing(t *testing.T) {
	files := demos(t)
	s := files[1].Session.Clone()
	s.Fit.Hangs[0].Heights[fit.Nose] = []float64{1}
	files[1] = &sessions.File{Name: "bad.toml", Data: files[1].Data, Session: s}
	h := of(climber, files, sessions.DefaultSchool(), thisDay)
	if h.Sessions[0].Error == "" || h.Sessions[0].Outcome != "" || h.Sessions[1].Since != nil || h.Sessions[1].Outcome != rules.Tight {
		t.Errorf("%+v", h.Sessions)
	}
}

func TestDue(t *testing.T) {
	signed := func(day string) *records.Climber {
		at, err := time.Parse(time.DateOnly, day)
		if err != nil {
			t.Fatal(err)
		}
		return &records.Climber{Signed: &records.Entry{}, Due: at.AddDate(0, 0, 100)}
	}
	school := sessions.DefaultSchool()
	school.RecheckDays = 100
	for _, c := range []struct {
		climber *records.Climber
		want    Due
	}{
		{climber, Due{Now: true}}, // nobody signed
		{signed("2026-08-17"), Due{"2026-08-17", "2026-11-25", 0, true}},
		{signed("2026-08-18"), Due{"2026-08-18", "2026-11-26", 1, false}},
		{signed("2026-06-01"), Due{"2026-06-01", "2026-09-09", -77, true}},
	} {
		if got := dueOf(c.climber, school, thisDay); got != c.want {
			t.Errorf("%+v, want %+v", got, c.want)
		}
	}
}

// A file that went away since the folder was listed is told and left out.
func TestLoadLeavesOutWhatIsGone(t *testing.T) {
	dir := t.TempDir()
	for _, f := range demo.Files() {
		if _, err := f.Write(dir); err != nil {
			t.Fatal(err)
		}
	}
	st, err := sessions.OpenStore(dir, time.Now, rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	list, err := records.Scan(st)
	if err != nil {
		t.Fatal(err)
	}
	all := list.Climbers()
	i := slices.IndexFunc(all, func(c records.Climber) bool { return c.Name == "demo climber A" })
	if h, errs := Load(st, list, &all[i], thisDay); len(h.Sessions) != 2 || len(errs) > 0 {
		t.Fatal(h.Sessions, errs)
	}
	if err := os.Remove(filepath.Join(dir, "a-good-kit.toml")); err != nil {
		t.Fatal(err)
	}
	if h, errs := Load(st, list, &all[i], thisDay); len(h.Sessions) != 1 || len(errs) != 1 || h.Climber != "demo climber A" {
		t.Error(h.Sessions, errs)
	}
}

func TestPeopleWhoAreDueComeFirst(t *testing.T) {
	at := func(day string) time.Time {
		d, err := time.Parse(time.DateOnly, day)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	list := &records.List{School: sessions.DefaultSchool()}
	for _, e := range []struct{ name, started, signed string }{
		{"not yet", "2026-10-01", "2026-10-01"}, {"never", "2026-11-20", ""}, {"late", "2026-05-01", "2026-05-01"},
		{"later", "2026-01-01", "2026-01-01"}, {"never", "2025-01-01", ""},
	} {
		entry := &records.Entry{Climber: e.name, Started: at(e.started)}
		if e.signed != "" {
			entry.Signed, entry.SignedAt = rules.Pass, at(e.signed)
		}
		list.Entries = append(list.Entries, entry)
	}
	people, climbers := People(list, thisDay)
	var got []string
	for i, p := range people {
		got = append(got, p.Climber)
		if climbers[i].Name != p.Climber {
			t.Errorf("climber %s stands where %s does", climbers[i].Name, p.Climber)
		}
	}
	if want := []string{"later", "late", "never", "not yet"}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	if p := people[2]; p.Sessions != 2 || p.Last != "2026-11-20" || !p.Due.Now || p.Due.On != "" {
		t.Errorf("%+v", p)
	}
}
