package sessions

import (
	"bytes"
	"crypto/rand"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/hangtape/fit"
)

// damage writes something in the place of a session that was saved.
func damage(t *testing.T, path string, to func(was []byte) []byte) (was []byte) {
	t.Helper()
	was, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, to(was), 0o600); err != nil {
		t.Fatal(err)
	}
	return was
}

func half(was []byte) []byte { return was[:len(was)/2+3] }

func TestLastGoodCopyIsTakenOver(t *testing.T) {
	for name, c := range map[string]struct {
		to      func(was []byte) []byte
		decodes bool
	}{
		"cut in half":           {half, false},
		"emptied":               {func([]byte) []byte { return nil }, false},
		"a login page":          {func([]byte) []byte { return []byte("<html>") }, false},
		"cut between two lines": {func(was []byte) []byte { return was[:bytes.LastIndexByte(was[:len(was)-1], '\n')+1] }, true},
	} {
		t.Run(name, func(t *testing.T) {
			st := newStore(t)
			path, _ := saved(t, st, func(s *Session) { s.Climber, s.Fit.Mass = "Ash Demo", fit.Some(84) })
			if good := st.LastGood(path); good != nil {
				t.Fatalf("of a file that is whole: %v", good.Damage)
			}
			was := damage(t, path, c.to)
			damaged, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			good := st.LastGood(path)
			if good == nil || !strings.HasSuffix(good.Says(), ", Ash Demo, 2 answers") || (good.Damage == nil) != c.decodes || good.Cut != bytes.HasPrefix(was, damaged) {
				t.Fatalf("told is %+v", good)
			}
			aside, err := st.TakeLastGood(path)
			if err != nil {
				t.Fatal(err)
			}
			if now, err := os.ReadFile(path); err != nil || !bytes.Equal(now, was) {
				t.Errorf("%v, the file is\n%s", err, now)
			}
			if kept, err := os.ReadFile(aside); err != nil || !bytes.Equal(kept, damaged) || filepath.Base(aside) != filepath.Base(path)+".damaged" {
				t.Errorf("set aside as %s, %v:\n%s", aside, err, kept)
			}
			if list, err := listed(st); err != nil || len(list) != 1 || list[0].err != nil {
				t.Errorf("listed are %v, %v", list, err)
			}
			if _, err := st.TakeLastGood(path); err == nil || !strings.Contains(err.Error(), "is not damaged any more; nothing was done") {
				t.Errorf("a second time: %v", err)
			}
		})
	}
}

// A second file that was damaged is set aside beside the first, and the same one
// not twice.
func TestWhatIsSetAsideStays(t *testing.T) {
	st := newStore(t)
	path, _ := saved(t, st, nil)
	for i, text := range []string{"one", "two", "one"} {
		damage(t, path, func([]byte) []byte { return []byte(text) })
		aside, err := st.TakeLastGood(path)
		if err != nil {
			t.Fatal(err)
		}
		if want := path + []string{".damaged", ".damaged-2", ".damaged"}[i]; aside != want {
			t.Errorf("set aside as %s, want %s", aside, want)
		}
		if kept, err := os.ReadFile(aside); err != nil || string(kept) != text {
			t.Errorf("%s holds %q, %v", aside, kept, err)
		}
	}
	if err := st.Remove(path, always); err != nil {
		t.Fatal(err)
	}
	err := filepath.WalkDir(st.Dir(), func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			t.Errorf("%s is left", name)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

// No copy is offered of what is no damage or cannot be set aside, and none is
// taken under an editor.
func TestLastGoodCopyIsForDamage(t *testing.T) {
	st := newStore(t)
	path, _ := saved(t, st, nil)
	damage(t, path, func([]byte) []byte { return []byte("format = 9\n") })
	if good := st.LastGood(path); good != nil {
		t.Errorf("of a later format: %v", good.Damage)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if good := st.LastGood(path); good != nil {
		t.Errorf("of no file: %v", good.Damage)
	}

	path, _ = saved(t, st, nil)
	ed, _, err := st.Edit(path)
	if err != nil {
		t.Fatal(err)
	}
	damage(t, path, half)
	var locked *LockedError
	if _, err := st.TakeLastGood(path); !errors.As(err, &locked) {
		t.Errorf("under an editor: %v", err)
	}
	if err := ed.Close(); err != nil {
		t.Fatal(err)
	}
	damage(t, lastGoodOf(path), half)
	if good := st.LastGood(path); good != nil {
		t.Errorf("of a copy that is damaged itself: %v", good.Damage)
	}
}

// What is not a session is never the last good copy: not what was written over,
// nor a session that was cut and only looked at.
func TestLastGoodCopyIsGood(t *testing.T) {
	st := newStore(t)
	path, _ := saved(t, st, func(s *Session) { s.Fit.Mass = fit.Some(84) })
	ed, s, err := st.Edit(path)
	if err != nil {
		t.Fatal(err)
	}
	damage(t, path, half)
	if err := ed.Overwrite(); err != nil {
		t.Fatal(err)
	}
	s.Climber = string([]byte{0xFF}) // cannot be saved
	if err := ed.Save(s); err == nil {
		t.Fatal("saved")
	}
	ed.Close()
	good := st.LastGood(path)
	if good == nil {
		t.Fatal("no copy")
	}
	if _, err := st.TakeLastGood(path); err != nil {
		t.Fatal(err)
	}

	damage(t, path, func(was []byte) []byte { return was[:bytes.LastIndexByte(was[:len(was)-1], '\n')+1] })
	ed, _, err = st.Edit(path)
	if err != nil {
		t.Fatal(err)
	}
	ed.Close()
	if again := st.LastGood(path); again == nil || !bytes.Equal(again.Data, good.Data) {
		t.Error("looking at it took the copy")
	}
	ed, s, err = st.Edit(path)
	if err != nil {
		t.Fatal(err)
	}
	s.Notes = "gone on with"
	if err := ed.Save(s); err != nil {
		t.Fatal(err)
	}
	ed.Close()
	if again := st.LastGood(path); again != nil {
		t.Errorf("what was gone on with is still told as cut: %v", again.Damage)
	}
}

// A copy goes once its file is gone, or is whole and was not worked on for a month.
func TestLastGoodCopiesDoNotStayForEver(t *testing.T) {
	st := newStore(t)
	gone, _ := saved(t, st, nil)
	old, _ := saved(t, st, nil)
	damaged, _ := saved(t, st, nil)
	young, _ := saved(t, st, nil)
	if err := os.Remove(gone); err != nil {
		t.Fatal(err)
	}
	damage(t, damaged, half)
	for path, age := range map[string]time.Duration{old: 32, damaged: 400, young: 30} {
		at := noon().Add(-age * 24 * time.Hour)
		if err := os.Chtimes(lastGoodOf(path), at, at); err != nil {
			t.Fatal(err)
		}
	}
	left := filepath.Join(st.LastGoodPath(), "."+filepath.Base(old)+".1.tmp")
	strange := filepath.Join(st.LastGoodPath(), "read-me.txt")
	for _, name := range []string{left, strange} {
		if err := os.WriteFile(name, nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	again, err := OpenStore(st.Dir(), noon, rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	if err := again.Ready(); err != nil {
		t.Fatal(err)
	}
	for name, stays := range map[string]bool{
		lastGoodOf(gone): false, lastGoodOf(old): false, left: false, lastGoodOf(damaged): true, lastGoodOf(young): true, strange: true,
	} {
		if _, err := os.Stat(name); (err == nil) != stays {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A copy that cannot be kept is no fault of the save or of leaving.
func TestSaveDoesNotNeedItsCopy(t *testing.T) {
	st := newStore(t)
	if err := os.WriteFile(st.LastGoodPath(), []byte("in the way"), 0o600); err != nil {
		t.Fatal(err)
	}
	path, _ := saved(t, st, nil)
	if _, err := st.Load(path); err != nil {
		t.Error(err)
	}
}

func TestFilesBelongToSessions(t *testing.T) {
	for name, want := range map[string]string{
		"a/x.toml": "", "a/x.toml.damaged": "a/x.toml", "a/x.toml.damaged-2": "a/x.toml", "a/x.damaged": "",
		"a/.x.toml.1.tmp": "a/x.toml", "a/x.tmp": "", "a/.last-good/x.toml": "a/x.toml", "a/.last-good/.x.toml.1.tmp": "a/x.toml",
		"a/.last-good/x.txt": "", "a/.try.1.tmp": "",
	} {
		if got := filepath.ToSlash(BelongsTo(filepath.FromSlash(name))); got != want {
			t.Errorf("%s belongs to %q, want %q", name, got, want)
		}
	}
}

// A slowDisk waits before it makes a file in the folder of the copies.
type slowDisk struct {
	disk
	reached, goOn chan struct{}
}

func (s slowDisk) CreateTemp(dir, pattern string) (TempFile, error) {
	if filepath.Base(dir) == lastGoodDir {
		s.reached <- struct{}{}
		<-s.goOn
	}
	return s.disk.CreateTemp(dir, pattern)
}

// While a copy is being made on a slow disk answers are saved, and the copy that
// Close makes has the last of them.
func TestNoSaveWaitsForTheCopy(t *testing.T) {
	slow := slowDisk{reached: make(chan struct{}), goOn: make(chan struct{})}
	st, err := openStore(filepath.Join(t.TempDir(), "sessions"), noon, rand.Reader, slow)
	if err != nil {
		t.Fatal(err)
	}
	ed, s, err := st.New()
	if err != nil {
		t.Fatal(err)
	}
	if err := ed.Save(s); err != nil {
		t.Fatal(err)
	}
	go ed.Keep()
	<-slow.reached
	s.Notes = "meanwhile"
	if err := ed.Save(s); err != nil { // would wait for ever
		t.Fatal(err)
	}
	go func() {
		slow.goOn <- struct{}{}
		<-slow.reached
		slow.goOn <- struct{}{}
	}()
	if err := ed.Close(); err != nil {
		t.Fatal(err)
	}
	if f, err := ReadFile(lastGoodOf(ed.Path), nil); err != nil || f.Session.Notes != "meanwhile" {
		t.Errorf("%v, %+v", err, f)
	}
	ed.Keep() // too late: another program may have the session
}
