package pages

import (
	"errors"
	"strings"
	"testing"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/records"
)

// Whatever people typed, a list keeps to its width, in cells and not in letters.
func TestListsKeepToTheirWidth(t *testing.T) {
	at := time.Date(2026, 4, 18, 9, 0, 0, 0, time.UTC)
	e := &records.Entry{
		Path: "x.toml", ID: "01KPFXRYR03M4T5W6X7Y8Z9A0B", Started: at, Signed: rules.Tight, Differs: true, Moved: true,
		Climber: strings.Repeat("森の人", 12), Place: "a place with a name that is longer than any column of a list", Kit: strings.Repeat("木", 50),
	}
	e.Outcome = rules.Unknown
	e.Tied[fit.PieceHitchLeft] = sessions.Tied{On: time.Date(2026, 3, 18, 0, 0, 0, 0, time.UTC)}
	e.Same = []*records.Entry{e, e}
	bad := &records.Entry{Path: "/x/bad.toml", Err: errors.New("/x/bad.toml:12: climber.name is " + strings.Repeat("木", 60) + "; accepted is another\n/x/bad.toml:13: more")}
	for _, w := range []int{44, 60, 80} {
		l := Look{Width: w}
		lines := append(List([]*records.Entry{e, bad}, []string{"2025"}, l), CordList([]records.Cord{{Kit: e.Kit, Piece: fit.PieceHitchLeft, Tied: e.Tied[fit.PieceHitchLeft], Seen: e}}, at, l)...)
		for _, line := range lines {
			if n := width(line); n > w {
				t.Errorf("%d cells of %d: %s", n, w, line)
			}
		}
		all := strings.Join(lines, "\n")
		for _, want := range []string{"UNKNOWN+", "tight *", "01KPFXRYR0 !", "line 12: climber.name is", "(and 1 more)", "2026-03-18     31  left hitch loop"} {
			if !strings.Contains(all, want) {
				t.Errorf("no %q in\n%s", want, all)
			}
		}
	}
}

// A re-check reads a few marks: that its musts are unknown is no verdict.
func TestAReCheckHasNoVerdict(t *testing.T) {
	e := &records.Entry{Path: "x.toml", ID: "01KPFXRYR03M4T5W6X7Y8Z9A0B", Purpose: sessions.ReCheck, Finished: time.Date(2026, 4, 18, 9, 0, 0, 0, time.UTC)}
	for _, e.Outcome = range []rules.Verdict{rules.Unknown, rules.Fail} {
		all := strings.ToLower(strings.Join(List([]*records.Entry{e}, nil, Look{Width: 80}), "\n"))
		if strings.Contains(all, string(e.Outcome)) || strings.Count(all, "re-check") != 2 {
			t.Errorf("listed as\n%s", all)
		}
	}
	e.Outcome = rules.Unknown
	e.Purpose = sessions.FirstFitting
	if all := strings.Join(List([]*records.Entry{e}, nil, Look{Width: 80}), "\n"); !strings.Contains(all, "UNKNOWN") {
		t.Errorf("a fitting is listed as\n%s", all)
	}
}
