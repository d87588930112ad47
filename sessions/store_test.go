package sessions

import (
	"bytes"
	"crypto/rand"
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"testing"
	"time"

	"example.com/hangtape/fit"
)

// noon is a clock that stands still.
func noon() time.Time { return time.Date(2026, 4, 18, 12, 0, 0, 0, time.UTC) }

func newStore(t *testing.T) *Store {
	t.Helper()
	st, err := OpenStore(filepath.Join(t.TempDir(), "sessions"), noon, rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	return st
}

// saved is a new session of the store, saved and closed.
func saved(t *testing.T, st *Store, set func(*Session)) (string, *Session) {
	t.Helper()
	ed, s, err := st.New()
	if err != nil {
		t.Fatal(err)
	}
	defer ed.Close()
	if set != nil {
		set(s)
	}
	if err := ed.Save(s); err != nil {
		t.Fatal(err)
	}
	return ed.Path, s
}

func TestNewSaveLoad(t *testing.T) {
	st := newStore(t)
	path, s := saved(t, st, func(s *Session) {
		s.Climber = "demo \"climber\"\n\x1b[31m"
		s.Fit.Laid[fit.Thigh] = []float64{415, 411.5}
	})
	f, err := st.Load(path)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(f.Session, s) {
		t.Errorf("loaded\n%+v\nsaved\n%+v", f.Session, s)
	}
	if byID, err := st.LoadID(s.ID); err != nil || byID.Name != path {
		t.Errorf("LoadID found %+v, %v; want %s", byID, err, path)
	}
}

func TestModesKeepOthersOut(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no modes on Windows")
	}
	dir := t.TempDir()
	if err := os.Chmod(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	st, err := OpenStore(dir, noon, rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	path, _ := saved(t, st, nil)
	err = filepath.Walk(dir, func(name string, info os.FileInfo, err error) error {
		if err != nil {
			return err
		}
		if info.Mode().Perm()&0o077 != 0 {
			t.Errorf("%s has mode %v, which lets others in", name, info.Mode())
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("the session has mode %v, want 0600 (%v)", info.Mode(), err)
	}
}

func TestSecondEditorIsToldWhoHoldsIt(t *testing.T) {
	st := newStore(t)
	path, _ := saved(t, st, nil)
	first, _, err := st.Edit(path)
	if err != nil {
		t.Fatal(err)
	}
	var locked *LockedError
	if _, _, err := st.Edit(path); !errors.As(err, &locked) || locked.Holder == "" {
		t.Errorf("second Edit: %v, want a LockedError with its holder", err)
	}
	if _, err := st.Load(path); err != nil {
		t.Errorf("a locked session cannot be read: %v", err)
	}
	if err := first.Close(); err != nil {
		t.Fatal(err)
	}
	second, _, err := st.Edit(path)
	if err != nil {
		t.Fatalf("after Close: %v", err)
	}
	second.Close()
}

func TestSaveNeverOverwritesAnothersChange(t *testing.T) {
	st := newStore(t)
	path, _ := saved(t, st, nil)
	ed, s, err := st.Edit(path)
	if err != nil {
		t.Fatal(err)
	}
	defer ed.Close()
	theirs := *s
	theirs.Notes = "theirs"
	if err := os.WriteFile(path, Encode(&theirs), 0o600); err != nil {
		t.Fatal(err)
	}
	s.Notes = "mine"
	var changed *ChangedError
	if err := ed.Save(s); !errors.As(err, &changed) || changed.Gone {
		t.Fatalf("Save over a change: %v, want a ChangedError", err)
	}
	if data, _ := os.ReadFile(path); !bytes.Equal(data, Encode(&theirs)) {
		t.Error("the other program's change is lost")
	}
	if err := ed.Overwrite(); err != nil {
		t.Fatal(err)
	}
	if err := ed.Save(s); err != nil {
		t.Errorf("Save after Overwrite: %v", err)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if err := ed.Save(s); !errors.As(err, &changed) || !changed.Gone {
		t.Errorf("Save of a removed file: %v, want a ChangedError that says so", err)
	}
}

func TestIDsRiseWhenTheClockJumpsBack(t *testing.T) {
	now := noon()
	st, err := OpenStore(t.TempDir(), func() time.Time { now = now.Add(-time.Hour); return now }, rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	last := ""
	for range 100 {
		id, err := st.newID()
		if err != nil {
			t.Fatal(err)
		}
		if !ValidID(id) || id <= last {
			t.Fatalf("id %s after %s", id, last)
		}
		last = id
	}
}
