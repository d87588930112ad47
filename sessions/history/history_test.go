package history

import (
	"slices"
	"testing"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/demo"
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

var thisDay = time.Date(2026, 11, 25, 8, 0, 0, 0, time.UTC)

func TestHistoryIsInTheOrderOfTime(t *testing.T) {
	files := demos(t)
	h := Of("demo climber A", files, sessions.DefaultSchool(), thisDay)
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
	h := Of("", files, school, thisDay)
	want := []Difference{{"garda-release-room", rules.Pass, rules.Tight}}
	if got := h.Sessions[0].Today; !slices.Equal(got.Differs, want) || got.Outcome != rules.Tight {
		t.Errorf("%+v", got)
	}
	if h.Sessions[0].Outcome != rules.Pass || files[0].Session.Limits != nil {
		t.Error("the session's own limits have moved")
	}
	// what was signed counts where somebody signed
	s := files[0].Session.Clone()
	s.SignOff = &sessions.SignOff{By: "x", At: thisDay, Outcome: rules.Fail}
	for c := range rules.NumChecks {
		s.SignOff.Checks = append(s.SignOff.Checks, sessions.SignedCheck{Name: c.String(), Verdict: rules.Pass})
	}
	s.SignOff.Checks[rules.SlipDrop].Verdict = rules.Fail
	h = Of("", []*sessions.File{{Session: s}}, sessions.DefaultSchool(), thisDay)
	if got := h.Sessions[0].Today.Differs; !slices.Equal(got, []Difference{{"slip-drop", rules.Fail, rules.Pass}}) {
		t.Errorf("%+v", got)
	}
}

func TestASessionThatCannotBeStopsNothing(t *testing.T) {
	files := demos(t)
	s := files[1].Session.Clone()
	s.Fit.Hangs[0].Heights[fit.Nose] = []float64{1}
	files[1] = &sessions.File{Name: "bad.toml", Data: files[1].Data, Session: s}
	h := Of("", files, sessions.DefaultSchool(), thisDay)
	if h.Sessions[0].Error == "" || h.Sessions[0].Outcome != "" || h.Sessions[1].Since != nil || h.Sessions[1].Outcome != rules.Tight {
		t.Errorf("%+v", h.Sessions)
	}
}

func TestDue(t *testing.T) {
	at := func(started, signed string) *sessions.File {
		when := func(date string) time.Time {
			day, err := time.Parse(time.DateOnly, date)
			if err != nil {
				t.Fatal(err)
			}
			return day.Add(23 * time.Hour)
		}
		s := &sessions.Session{Started: when(started), Finished: when(started)}
		switch signed {
		case "":
		case "some day":
			s.SignOff = &sessions.SignOff{}
		default:
			s.SignOff = &sessions.SignOff{At: when(signed)}
		}
		return &sessions.File{Session: s}
	}
	school := sessions.DefaultSchool()
	school.RecheckDays = 100
	for name, c := range map[string]struct {
		files []*sessions.File
		want  Due
	}{
		"nothing":            {nil, Due{Now: true}},
		"not signed":         {[]*sessions.File{at("2026-11-01", "")}, Due{Now: true}},
		"on the very day":    {[]*sessions.File{at("2026-08-16", "2026-08-17")}, Due{"2026-08-17", "2026-11-25", 0, true}},
		"tomorrow":           {[]*sessions.File{at("2026-08-18", "some day")}, Due{"2026-08-18", "2026-11-26", 1, false}},
		"the last signature": {[]*sessions.File{at("2026-01-01", "2026-06-01"), at("2026-03-01", "2026-03-01"), at("2026-11-20", "")}, Due{"2026-06-01", "2026-09-09", -77, true}},
	} {
		if got := dueOf(c.files, school, thisDay); got != c.want {
			t.Errorf("%s: %+v, want %+v", name, got, c.want)
		}
	}
}
