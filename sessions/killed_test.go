package sessions

import (
	"bytes"
	"crypto/rand"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

var long = flag.Bool("long", false, "kill a program at 1,000 moments in place of a few")

// killing is a disk that ends its program at one call as kill -9 does.
type killing struct {
	disk
	at, calls int
	writing   bool // between the making of a temporary file and the syncing of its folder
}

func (k *killing) call() {
	if k.calls++; k.calls != k.at {
		return
	}
	if k.writing {
		fmt.Fprintln(os.Stderr, "writing")
	}
	me, err := os.FindProcess(os.Getpid())
	if err == nil {
		err = me.Kill()
	}
	fmt.Fprintln(os.Stderr, "cannot be killed:", err)
	time.Sleep(time.Minute) // the signal is on its way
}

func (k *killing) Stat(name string) (fs.FileInfo, error) { k.call(); return k.disk.Stat(name) }

func (k *killing) CreateTemp(dir, pattern string) (TempFile, error) {
	k.call()
	f, err := k.disk.CreateTemp(dir, pattern)
	k.writing = !strings.HasPrefix(pattern, tryPrefix)
	return killingFile{f, k}, err
}

func (k *killing) Rename(from, to string) error { k.call(); return k.disk.Rename(from, to) }

func (k *killing) SyncDir(name string) error {
	k.call()
	k.writing = false
	return k.disk.SyncDir(name)
}

type killingFile struct {
	TempFile
	k *killing
}

// Write may be cut short by the end of its program.
func (f killingFile) Write(b []byte) (int, error) {
	f.k.call()
	n, err := f.TempFile.Write(b[:len(b)/2])
	if err != nil {
		return n, err
	}
	f.k.call()
	rest, err := f.TempFile.Write(b[n:])
	return n + rest, err
}

func (f killingFile) Sync() error  { f.k.call(); return f.TempFile.Sync() }
func (f killingFile) Close() error { f.k.call(); return f.TempFile.Close() }

const (
	killAt  = "HANGTAPE_TEST_KILL_AT"
	answers = 200
)

// TestSessionToBeKilled is the program that TestKilledSessions kills: a session of
// many answers, each said on standard output when it is saved.
func TestSessionToBeKilled(t *testing.T) {
	at, err := strconv.Atoi(os.Getenv(killAt))
	if err != nil {
		t.Skip("run by TestKilledSessionsLoseNoAnswer")
	}
	here, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	st, err := openStore(filepath.Join(here, "sessions"), noon, rand.Reader, &killing{at: at})
	if err != nil {
		t.Fatal(err)
	}
	ed, s, err := st.New()
	if err != nil {
		t.Fatal(err)
	}
	for i := 1; i <= answers; i++ {
		s.Notes = strconv.Itoa(i)
		if err := ed.Save(s); err != nil {
			t.Fatal(err)
		}
		fmt.Println("saved", i)
		ed.Keep()
	}
	if err := ed.Close(); err != nil {
		t.Fatal(err)
	}
}

// A program is killed at one call after the other. What it said to be saved is
// there, at most the answer being saved is lost, and the next start clears what
// was left and goes on.
func TestKilledSessionsLoseNoAnswer(t *testing.T) {
	step, writing := 47, 0
	if *long {
		step = 1
	}
	moments := 0
	for at := 1; at <= 1000; at += step {
		cmd := exec.Command(os.Args[0], "-test.run=^TestSessionToBeKilled$")
		cmd.Dir = t.TempDir()
		cmd.Env = append(os.Environ(), killAt+"="+strconv.Itoa(at))
		var out, said bytes.Buffer
		cmd.Stdout, cmd.Stderr = &out, &said
		var ended *exec.ExitError
		if err := cmd.Run(); !errors.As(err, &ended) || ended.Exited() {
			t.Fatalf("moment %d: %v, not killed: %s%s", at, err, &out, &said)
		}
		moments++
		if strings.Contains(said.String(), "writing") {
			writing++
		}
		goOn(t, at, filepath.Join(cmd.Dir, "sessions"), strings.Count(out.String(), "saved"))
	}
	t.Logf("killed at %d moments, %d of them between making a temporary file and syncing its folder", moments, writing)
	if least := moments * 3 / 10; writing < least {
		t.Errorf("%d moments while writing, want at least %d", writing, least)
	}
}

// goOn starts again after a program was killed that had said so many answers
// to be saved.
func goOn(t *testing.T, at int, dir string, told int) {
	t.Helper()
	st, err := OpenStore(dir, noon, rand.Reader)
	if err != nil {
		t.Fatalf("moment %d: %v", at, err)
	}
	if err := st.Ready(); err != nil {
		t.Fatalf("moment %d: %v", at, err)
	}
	names, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	copies, _ := os.ReadDir(st.LastGoodPath()) // none before the first
	for _, e := range append(names, copies...) {
		if strings.HasSuffix(e.Name(), tempEnding) {
			t.Errorf("moment %d: %s is left behind", at, e.Name())
		}
	}
	for _, e := range copies {
		f, err := ReadFile(filepath.Join(st.LastGoodPath(), e.Name()), nil)
		if err != nil {
			t.Errorf("moment %d: %v", at, err)
		} else if n, err := strconv.Atoi(f.Session.Notes); err != nil || n != told && n != told-1 {
			t.Errorf("moment %d: %d answers were told as saved, the last good copy has %q", at, told, f.Session.Notes)
		}
	}
	open, err := listed(st)
	if err != nil {
		t.Fatalf("moment %d: %v", at, err)
	}
	if len(open) == 0 && told == 0 {
		return // killed before the first answer was saved
	}
	if len(open) != 1 {
		t.Fatalf("moment %d: %d sessions after %d answers", at, len(open), told)
	}
	ed, s, err := st.Edit(open[0].path)
	if err != nil {
		t.Fatalf("moment %d: %v", at, err)
	}
	if got, err := strconv.Atoi(s.Notes); err != nil || got != told && got != told+1 {
		t.Errorf("moment %d: %d answers were told as saved, %q is there", at, told, s.Notes)
	}
	s.Notes = "goes on"
	if err := errors.Join(ed.Save(s), ed.Close()); err != nil {
		t.Errorf("moment %d: %v", at, err)
	}
}
