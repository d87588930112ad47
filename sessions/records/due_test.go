package records_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

func date(y int, m time.Month, d int) time.Time { return time.Date(y, m, d, 0, 0, 0, 0, time.UTC) }

func TestClimbersAreDueBySchoolAndSignature(t *testing.T) {
	st := newStore(t)
	write(t, st, "school.toml", "format = 1\nrecheck_days = 100\n")
	n := 0
	session := func(climber string, at time.Time, signed bool) {
		n++
		put(t, st, fmt.Sprintf("%d.toml", n), func(s *sessions.Session) {
			s.Climber, s.Started, s.SignOff = climber, at, nil
			if signed {
				s.SignOff = &sessions.SignOff{By: "X", At: at.Add(time.Hour), Outcome: rules.Pass}
			}
		})
	}
	session("Ash Demo", date(2026, 1, 1), true)
	session("ash  demo", date(2026, 3, 1), false)
	session("Birch Demo", date(2025, 12, 1), true)
	session("Never Signed", date(2026, 4, 1), false)
	session("", date(2026, 4, 1), true)
	var got []string
	for _, c := range scan(t, st).Climbers() {
		line := fmt.Sprintf("%s %d", c.Name, len(c.Sessions))
		if c.Signed != nil {
			line += " " + c.Due.Format(time.DateOnly)
		}
		got = append(got, line)
	}
	if got, want := strings.Join(got, ", "), "Birch Demo 1 2026-03-11, ash  demo 2 2026-04-11, Never Signed 1"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

func TestCordsByAgeAreTheNewestOfEachKit(t *testing.T) {
	st := newStore(t)
	tied := func(name, kit, climber string, at time.Time, tether, hitch time.Time) {
		put(t, st, name, func(s *sessions.Session) {
			s.KitLabel, s.Climber, s.Started = kit, climber, at
			s.Tied = [fit.NumPieces]sessions.Tied{}
			s.Tied[fit.PieceTether].On, s.Tied[fit.PieceHitchLeft].On = tether, hitch
		})
	}
	tied("1.toml", "kit 1", "Ash", date(2026, 1, 1), date(2025, 1, 1), date(2024, 6, 1))
	tied("2.toml", "Kit 1", "Birch", date(2026, 2, 1), date(2026, 1, 20), time.Time{})
	tied("3.toml", "", "Ash", date(2026, 2, 1), date(2025, 5, 5), time.Time{})
	var got []string
	for _, c := range scan(t, st).Cords() {
		got = append(got, fmt.Sprintf("%s %s %s", c.Kit, rules.PieceName(c.Piece), c.Tied.On.Format(time.DateOnly)))
	}
	if got, want := strings.Join(got, ", "), "kit 1 left hitch loop 2024-06-01,  backup tether 2025-05-05, Kit 1 backup tether 2026-01-20"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}
