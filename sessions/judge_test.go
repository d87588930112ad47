package sessions

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

const example = "../testdata/sessions/examples/1-good-kit.toml"

func TestReadingsThatCannotBeTrueTogetherHaveTheirLine(t *testing.T) {
	text, err := os.ReadFile(example)
	if err != nil {
		t.Fatal(err)
	}
	edited := set(t, string(text), "kit.main_bridge", "length_mm", "[300]")
	path := filepath.Join(t.TempDir(), "short.toml")
	if err := os.WriteFile(path, []byte(edited), 0o600); err != nil {
		t.Fatal(err)
	}
	f, err := ReadFile(path, nil)
	if err != nil {
		t.Fatal(err)
	}
	_, err = f.Judge()
	var file *FileError
	if !errors.As(err, &file) || len(file.Faults) != 1 {
		t.Fatalf("got %v, want one fault", err)
	}
	if line := strings.Split(edited, "\n")[file.Faults[0].Line-1]; line != "length_mm = [300]" {
		t.Errorf("line %d is %q\n%v", file.Faults[0].Line, line, err)
	}
	if !strings.Contains(err.Error(), "a bridge of 300 mm does not reach across rings") {
		t.Errorf("got %v", err)
	}
}

func TestSchoolFileBesideASessionCounts(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "s.toml")
	if err := os.WriteFile(path, []byte(full(t)), 0o600); err != nil {
		t.Fatal(err)
	}
	days := func() int {
		f, err := ReadFile(path, nil)
		if err != nil {
			t.Fatal(err)
		}
		return f.Session.Fit.RecheckDays
	}
	if got := days(); got != 180 {
		t.Errorf("without a school file %d days, want 180", got)
	}
	if err := os.WriteFile(filepath.Join(dir, schoolName), []byte("format = 1\nrecheck_days = 90\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if got := days(); got != 90 {
		t.Errorf("the school says 90 days, got %d", got)
	}
}

func TestJudgedDifferently(t *testing.T) {
	f, err := ReadFile(example, nil)
	if err != nil {
		t.Fatal(err)
	}
	s := f.Session
	report, err := s.Judge()
	if err != nil {
		t.Fatal(err)
	}
	if d := JudgedDifferently(s, report); d != nil {
		t.Errorf("not signed, but differs: %v", d)
	}
	s.Sign("demo instructor", "", time.Date(2026, 5, 7, 10, 0, 0, 0, time.UTC), report)
	if d := JudgedDifferently(s, report); d != nil {
		t.Errorf("just signed, but differs: %v", d)
	}
	digest := s.SignOff.Rules

	s.Limits = map[rules.Limit]float64{rules.ConnectorClearance: 100}
	if s.RulesDigest() == digest || !strings.HasPrefix(digest, "sha256:") || len(digest) != len("sha256:")+64 {
		t.Errorf("digest %s does not tell another limit", digest)
	}
	report, err = s.Judge()
	if err != nil {
		t.Fatal(err)
	}
	d := JudgedDifferently(s, report)
	if len(d) != 1 || d[0].Check != "garda-under-connector" {
		t.Errorf("differences %v, want the one check of the moved limit", d)
	}
	last := report.Findings[len(report.Findings)-1]
	if last.Name != "judged-differently" || !strings.Contains(last.Text, "garda-under-connector") || !strings.Contains(last.Text, "limits or the rules have changed") {
		t.Errorf("finding %+v", last)
	}

	report.Checks = report.Checks[1:]
	if d := JudgedDifferently(s, report); len(d) != 2 || d[1].Now != "" {
		t.Errorf("differences %v, want also the check that is gone", d)
	}
	s.SignOff.Checks = s.SignOff.Checks[2:]
	if d := JudgedDifferently(s, report); len(d) != 2 || d[0].Then != "" {
		t.Errorf("differences %v, want also the check that was not there", d)
	}
}

// TestAnImpossibleSessionIsToldInItsUnit: a file's own complaint stays in the
// unit that ends its keys.
func TestAnImpossibleSessionIsToldInItsUnit(t *testing.T) {
	f, err := ReadFile(example, nil)
	if err != nil {
		t.Fatal(err)
	}
	s := f.Session
	s.Unit = Inch
	s.Fit.Laid[fit.MainBridge], s.Fit.Laid[fit.MainBridgeRings] = []float64{254}, []float64{508}
	if _, err = s.Judge(); err == nil || !strings.Contains(err.Error(), "a bridge of 10 in does not reach across rings 20 in apart") {
		t.Errorf("session: %v", err)
	}
	if err = f.Check(); err == nil || !strings.Contains(err.Error(), "a bridge of 254 mm does not reach across rings 508 mm apart") {
		t.Errorf("file: %v", err)
	}
}
