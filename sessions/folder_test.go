package sessions

import (
	"crypto/rand"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/hangtape/fit"
)

func TestFoldersThatCannotHoldSessions(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for dir, want := range map[string]string{
		"sessions":                      "is no full path",
		"~/sessions":                    "without ~",
		"":                              "is no full path",
		file:                            "is a file; the sessions need a folder",
		filepath.Join(file, "sessions"): "cannot be the sessions' folder",
	} {
		if _, err := OpenStore(dir, noon, rand.Reader); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: got %v, want %q", dir, err, want)
		}
	}
}

// readOnly is a disk on which nothing new can be written, as for a folder that
// somebody else owns; to root no real folder is.
type readOnly struct{ disk }

func (readOnly) CreateTemp(dir, pattern string) (TempFile, error) {
	return nil, &fs.PathError{Op: "open", Path: filepath.Join(dir, pattern), Err: fs.ErrPermission}
}

func TestReadOnlyFolderIsToldBeforeTheFirstQuestion(t *testing.T) {
	st, err := OpenStore(t.TempDir(), noon, rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	st.disk = readOnly{}
	if err := st.Ready(); !errors.Is(err, fs.ErrPermission) || !strings.Contains(err.Error(), "cannot be written") {
		t.Errorf("got %v", err)
	}
	if _, err := listed(st); err != nil {
		t.Errorf("a read-only folder cannot be listed: %v", err)
	}
}

func TestDefaultDir(t *testing.T) {
	if got, want := DefaultDir("", "/data"), filepath.Join("/data", "hangtape"); got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if got := DefaultDir("/own", "/data"); got != "/own" {
		t.Errorf("got %s, want /own", got)
	}
}

func TestBadSchoolFileStopsNewSessions(t *testing.T) {
	st := newStore(t)
	saved(t, st, nil)
	if err := os.WriteFile(filepath.Join(st.Dir(), schoolName), []byte("format = 1\n[limits]\nmost-drop = 5\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, _, err := st.New(); err == nil || !strings.Contains(err.Error(), "limits.most-drop is 5") {
		t.Errorf("New: %v", err)
	}
}

func TestNewSessionTakesOverFromTheSchool(t *testing.T) {
	st := newStore(t)
	text, err := os.ReadFile("../testdata/sessions/school.toml")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(st.Dir(), schoolName), text, 0o600); err != nil {
		t.Fatal(err)
	}
	school, err := st.School()
	if err != nil {
		t.Fatal(err)
	}
	again, err := DecodeSchool("again", EncodeSchool(school))
	if err != nil || again.Name != "demo school" || !again.RequireDrill || again.HangBreakMin != 5 || len(again.Limits) != 1 {
		t.Errorf("the school came back as %+v, %v", again, err)
	}
	_, s := saved(t, st, nil)
	if s.Place != "old beech by the barn" || s.Instructor != "demo instructor" || s.Fit.Tape.Class != fit.ClassII || len(s.Limits) != 1 {
		t.Errorf("the new session is %+v", s)
	}
}

func TestOneIDInTwoFilesIsNotChosenFrom(t *testing.T) {
	st := newStore(t)
	path, s := saved(t, st, nil)
	renamed := filepath.Join(st.Dir(), "renamed.toml")
	if err := os.Rename(path, renamed); err != nil {
		t.Fatal(err)
	}
	if f, err := st.LoadID(s.ID); err != nil || f.Name != renamed {
		t.Errorf("a renamed file is not found by its id: %v, %v", f, err)
	}
	if err := os.WriteFile(path, Encode(s), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := st.LoadID(s.ID); err == nil || !strings.Contains(err.Error(), path) || !strings.Contains(err.Error(), renamed) {
		t.Errorf("got %v, want both files named", err)
	}
	if _, err := st.LoadID("../../etc/passwd"); err == nil || !strings.Contains(err.Error(), "no id of a session") {
		t.Errorf("got %v", err)
	}
	if _, err := st.LoadID("01KPFXRYR03M4T5W6X7Y8Z9A0B"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("got %v", err)
	}
}

func TestIDIsFoundBehindTheNameOfAnother(t *testing.T) {
	st := newStore(t)
	path, s := saved(t, st, nil)
	other := filepath.Join(st.Dir(), "01KPFXRYR03M4T5W6X7Y8Z9A0B.toml")
	if err := os.Rename(path, other); err != nil {
		t.Fatal(err)
	}
	if f, err := st.LoadID(s.ID); err != nil || f.Name != other {
		t.Errorf("got %v, %v", f, err)
	}
	if f, err := st.LoadID("01KPFXRYR03M4T5W6X7Y8Z9A0B"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("the name was taken for the id: %v, %v", f, err)
	}
	if err := os.WriteFile(path, []byte("half"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := st.LoadID(s.ID); err == nil || !strings.Contains(err.Error(), path) {
		t.Errorf("got %v, want the error of the file that is named for it", err)
	}
}

func TestStartClearsWhatKilledProgramsLeft(t *testing.T) {
	st := newStore(t)
	path, _ := saved(t, st, nil)
	held, _, err := st.New()
	if err != nil {
		t.Fatal(err)
	}
	defer held.Close()
	beside := func(of string) string { return filepath.Join(st.Dir(), "."+of+".123.tmp") }
	left := []string{beside(filepath.Base(path)), beside("never-saved.toml"), beside(PiecesFile), filepath.Join(st.Dir(), tryPrefix+"123.tmp")}
	kept := []string{beside(filepath.Base(held.Path)), filepath.Join(st.Dir(), "notes.tmp"), beside("notes.txt")}
	for _, name := range append(left, kept...) {
		if err := os.WriteFile(name, []byte("half"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := st.Ready(); err != nil {
		t.Fatal(err)
	}
	for _, name := range left {
		if _, err := os.Stat(name); !errors.Is(err, fs.ErrNotExist) {
			t.Errorf("%s is still there", name)
		}
	}
	for _, name := range kept {
		if _, err := os.Stat(name); err != nil {
			t.Errorf("what a running program or somebody else wrote is gone: %v", err)
		}
	}
}

func TestEditorClearsWhatWasLeftBehindALink(t *testing.T) {
	st := newStore(t)
	path, _ := saved(t, st, nil)
	elsewhere := filepath.Join(t.TempDir(), filepath.Base(path))
	if err := os.Rename(path, elsewhere); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(elsewhere, path); err != nil {
		t.Skip("no symbolic links here")
	}
	left := filepath.Join(filepath.Dir(elsewhere), "."+filepath.Base(path)+".123.tmp")
	if err := os.WriteFile(left, []byte("half"), 0o600); err != nil {
		t.Fatal(err)
	}
	ed, _, err := st.Edit(path)
	if err != nil {
		t.Fatal(err)
	}
	defer ed.Close()
	if _, err := os.Stat(left); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("%s is still there", left)
	}
}

func TestSaveKeepsASymbolicLink(t *testing.T) {
	st := newStore(t)
	path, _ := saved(t, st, nil)
	target := filepath.Join(t.TempDir(), "elsewhere.toml")
	if err := os.Rename(path, target); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(target, path); err != nil {
		t.Skip("no symbolic links here")
	}
	ed, s, err := st.Edit(path)
	if err != nil {
		t.Fatal(err)
	}
	defer ed.Close()
	s.Notes = "through the link"
	if err := ed.Save(s); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Lstat(path); err != nil || info.Mode()&fs.ModeSymlink == 0 {
		t.Errorf("the link was replaced (%v)", err)
	}
	if f, err := st.Load(path); err != nil || f.Session.Notes != "through the link" {
		t.Errorf("loaded %+v, %v", f, err)
	}
}

func TestSaveRefusesWhatCouldNotBeReadAgain(t *testing.T) {
	st := newStore(t)
	path, _ := saved(t, st, nil)
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	ed, s, err := st.Edit(path)
	if err != nil {
		t.Fatal(err)
	}
	defer ed.Close()
	for what, spoil := range map[string]func(*Session){
		"a mass of -84":  func(s *Session) { s.Fit.Mass = fit.Some(-84) },
		"invalid UTF-8":  func(s *Session) { s.Notes = "\xFF" },
		"a foreign id":   func(s *Session) { s.ID = "../x" },
		"no tape class":  func(s *Session) { s.Fit.Tape.Class = 0 },
		"a strange unit": func(s *Session) { s.Unit = "furlong" },
	} {
		bad := s.Clone()
		spoil(bad)
		if err := ed.Save(bad); err == nil {
			t.Errorf("%s was saved", what)
		}
		if after, err := os.ReadFile(path); err != nil || string(after) != string(before) {
			t.Errorf("%s changed the file (%v)", what, err)
		}
	}
}
