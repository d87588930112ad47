package forget_test

import (
	"crypto/rand"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/forget"
	"example.com/hangtape/sessions/records"
	"example.com/hangtape/sessions/sessionstest"
)

func newStore(t *testing.T) *sessions.Store {
	t.Helper()
	st, err := sessions.OpenStore(t.TempDir(), func() time.Time { return time.Date(2026, 4, 18, 12, 0, 0, 0, time.UTC) }, rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	return st
}

func look(t *testing.T, st *sessions.Store, climber string) *forget.Traces {
	t.Helper()
	traces, err := forget.Look(st, climber)
	if err != nil {
		t.Fatal(err)
	}
	return traces
}

// Not a byte of the folder names who was forgotten, and nobody else is gone.
func TestNothingIsLeftOfTheForgotten(t *testing.T) {
	st := newStore(t)
	paths, err := sessionstest.Write(st.Dir(), 60)
	if err != nil {
		t.Fatal(err)
	}
	list, err := records.Scan(st)
	if err != nil {
		t.Fatal(err)
	}
	climber := list.Entries[0].Climber
	traces := look(t, st, "  "+strings.ToUpper(climber))
	done := traces.Remove()
	if len(done.Failed) > 0 || len(done.Sessions) == 0 || len(traces.Named) > 0 || !done.Cache {
		t.Fatalf("%+v, named %v", done, traces.Named)
	}
	left := 0
	err = filepath.WalkDir(st.Dir(), func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(name)
		if strings.Contains(string(data)+" ", climber+"\"") {
			t.Errorf("%s names %s", name, climber)
		}
		if filepath.Ext(name) == ".toml" {
			left++
		}
		return err
	})
	if err != nil || left != len(paths)-len(done.Sessions) {
		t.Errorf("%d files are left of %d, %d were removed: %v", left, len(paths), len(done.Sessions), err)
	}
}

// The last good copies of the climber's sessions, those of others that lead there,
// and what was set aside as damaged go as well.
func TestCopiesAreForgotten(t *testing.T) {
	st := newStore(t)
	save := func(set func(*sessions.Session)) (string, *sessions.Session) {
		t.Helper()
		ed, s, err := st.New()
		if err != nil {
			t.Fatal(err)
		}
		if set(s); errors.Join(ed.Save(s), ed.Close()) != nil {
			t.Fatal("not saved")
		}
		return ed.Path, s
	}
	own, s := save(func(s *sessions.Session) { s.Climber = "Ash Demo" })
	other, _ := save(func(o *sessions.Session) { o.Climber, o.Follows = "Birch Demo", s.ID })
	if err := os.WriteFile(own, []byte("climber = \"Ash Demo"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := st.TakeLastGood(own); err != nil {
		t.Fatal(err)
	}
	if done := look(t, st, "Ash Demo").Remove(); len(done.Failed) > 0 || len(done.Copies) != 1 {
		t.Fatalf("%+v", done)
	}
	kept := 0
	err := filepath.WalkDir(st.Dir(), func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := os.ReadFile(name)
		if strings.Contains(string(data), "Ash Demo") || strings.Contains(string(data), s.ID) || strings.Contains(name, s.ID) {
			t.Errorf("%s is left", name)
		}
		if filepath.Base(name) == filepath.Base(other) {
			kept++
		}
		return err
	})
	if err != nil || kept != 2 {
		t.Errorf("of the other session %d files are left, want it and its copy: %v", kept, err)
	}
}

func TestSessionUnderAnEditorIsLeftAndTold(t *testing.T) {
	st := newStore(t)
	ed, s, err := st.New()
	if err != nil {
		t.Fatal(err)
	}
	s.Climber = "Ash Demo"
	if err := ed.Save(s); err != nil {
		t.Fatal(err)
	}
	done := look(t, st, "Ash Demo").Remove()
	var locked *sessions.LockedError
	if len(done.Failed) != 1 || !errors.As(done.Failed[0], &locked) || len(done.Sessions) != 0 {
		t.Errorf("%+v", done)
	}
	if err := ed.Save(s); err != nil {
		t.Error(err)
	}
	ed.Close()
	if done = look(t, st, "Ash Demo").Remove(); len(done.Failed) > 0 || len(done.Sessions) != 1 {
		t.Errorf("after it was closed: %+v", done)
	}
}

// Between looking and removing the session became somebody else's.
func TestWhatChangedSinceIsLeft(t *testing.T) {
	st := newStore(t)
	ed, s, err := st.New()
	if err != nil {
		t.Fatal(err)
	}
	s.Climber = "Ash Demo"
	if err := ed.Save(s); err != nil {
		t.Fatal(err)
	}
	traces := look(t, st, "Ash Demo")
	s.Climber = "Birch Demo"
	if err := ed.Save(s); err != nil {
		t.Fatal(err)
	}
	ed.Close()
	var changed *sessions.ChangedError
	if done := traces.Remove(); len(done.Failed) != 1 || !errors.As(done.Failed[0], &changed) {
		t.Errorf("%+v", done)
	}
	if _, err := st.Load(ed.Path); err != nil {
		t.Error(err)
	}
}

// Folders inside, and text in other encodings, are looked into and never touched.
func TestWhatIsOutOfReachIsNamed(t *testing.T) {
	st := newStore(t)
	utf16 := []byte{0xFF, 0xFE}
	for _, r := range "climber: Ash Demo" {
		utf16 = append(utf16, byte(r), 0)
	}
	for name, data := range map[string][]byte{
		"2025/old/a.toml": []byte("climber = \"Ash Demo\""), ".versions/b.toml": []byte("Ash Demo"), "c.txt": utf16, "2025/d.toml": []byte("Birch Demo"),
	} {
		path := filepath.Join(st.Dir(), filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	traces := look(t, st, "Ash Demo")
	var named []string
	for _, path := range traces.Named {
		name, err := filepath.Rel(st.Dir(), path)
		if err != nil {
			t.Fatal(err)
		}
		named = append(named, filepath.ToSlash(name))
	}
	if want := []string{".versions/b.toml", "2025/old/a.toml", "c.txt"}; !slices.Equal(named, want) || !traces.None() {
		t.Errorf("named %v, want %v", named, want)
	}
}

func TestPartOfANameIsNotTheName(t *testing.T) {
	st := newStore(t)
	for name, text := range map[string]string{"a.txt": "Ashley Demo", "b.txt": "for ash.", "c.txt": "splash"} {
		if err := os.WriteFile(filepath.Join(st.Dir(), name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	traces := look(t, st, "Ash")
	if len(traces.Named) != 1 || filepath.Base(traces.Named[0]) != "b.txt" || !traces.None() {
		t.Errorf("%+v", traces)
	}
	if none := look(t, st, " "); len(none.Named) > 0 {
		t.Errorf("no name at all: %+v", none)
	}
}
