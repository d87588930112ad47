package records

import (
	"bytes"
	"crypto/rand"
	"encoding/gob"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"strings"
	"testing"
	"time"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/sessionstest"
)

func noon() time.Time { return time.Date(2026, 4, 18, 12, 0, 0, 0, time.UTC) }

// filled is a folder of 20 made-up sessions and a bad file, with a cache that
// takes all of them as written long ago.
func filled(t *testing.T) (*sessions.Store, []string) {
	t.Helper()
	st, err := sessions.OpenStore(t.TempDir(), noon, rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	paths, err := sessionstest.Write(st.Dir(), 20)
	if err != nil {
		t.Fatal(err)
	}
	paths = append(paths, filepath.Join(st.Dir(), "bad.toml"))
	if err := os.WriteFile(paths[20], []byte("format = 1\nstrange = 2\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	settle(t, st)
	return st, paths
}

func cacheFile(st *sessions.Store) string { return filepath.Join(CachePath(st), cacheName) }

func list(t *testing.T, st *sessions.Store) *List {
	t.Helper()
	l, err := Scan(st)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// told is all that a list says, for comparing.
func told(l *List) string {
	var b strings.Builder
	for _, e := range l.Entries {
		plain := *e
		plain.Err, plain.Same = nil, nil
		fmt.Fprintf(&b, "%+v %v %d\n", plain, e.Err, len(e.Same))
	}
	return b.String()
}

func fresh(t *testing.T, st *sessions.Store) string {
	t.Helper()
	if err := os.RemoveAll(CachePath(st)); err != nil {
		t.Fatal(err)
	}
	return told(list(t, st))
}

// settle makes the cache take all files as written long ago: those of a test
// are too young for the grain of the clock.
func settle(t *testing.T, st *sessions.Store) {
	t.Helper()
	school, err := st.School()
	if err != nil {
		t.Fatal(err)
	}
	files, _, err := st.Folder()
	if err != nil {
		t.Fatal(err)
	}
	w := openCache(st)
	if w == nil {
		t.Fatal("no cache can be made")
	}
	w.opened = time.Now().Add(time.Hour)
	entries, missing := (&cached{}).entries(files)
	readMissing(st, school, files, entries, missing)
	w.keep(madeBy(st, school), files, entries, missing, false)
}

// fromCache counts the files of the folder that the cache would answer for.
func fromCache(t *testing.T, st *sessions.Store) int {
	t.Helper()
	school, err := st.School()
	if err != nil {
		t.Fatal(err)
	}
	files, _, err := st.Folder()
	if err != nil {
		t.Fatal(err)
	}
	_, missing := loadCache(st, madeBy(st, school)).entries(files)
	return len(files) - len(missing)
}

func TestCachedListSaysWhatTheFilesSay(t *testing.T) {
	st, paths := filled(t)
	want := fresh(t, st)
	settle(t, st)
	if n := fromCache(t, st); n != len(paths) {
		t.Fatalf("%d files of %d are in the cache", n, len(paths))
	}
	if got := told(list(t, st)); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestRowsHoldEveryFieldOfAnEntry(t *testing.T) {
	st, paths := filled(t)
	f, err := st.Load(paths[0])
	if err != nil {
		t.Fatal(err)
	}
	f.Session.Follows = "01KPFXRYR03M4T5W6X7Y8Z9A0B"
	f.Session.Limits = map[rules.Limit]float64{rules.ReachReserve: 50}
	e, w := entryOf(f, sessions.DefaultSchool()), newWords()
	r := rowOf(sessions.Seen{Path: e.Path}, e, w)
	if again := r.entry(e.Path, w.all); !reflect.DeepEqual(again, e) {
		t.Errorf("got\n%+v\nwant\n%+v", again, e)
	}
	v := reflect.ValueOf(*e)
	for i := range v.NumField() {
		switch name := v.Type().Field(i).Name; name {
		case "Err", "Good", "Same", "Differs", "Impossible", "Moved":
		default:
			if v.Field(i).IsZero() {
				t.Errorf("the entry of this test has no %s, so nothing was tried of it", name)
			}
		}
	}
}

// A change that leaves size and time as they were is seen all the same, by the
// inode or by the time that no program sets back.
func TestChangeWithTheOldTimeIsSeen(t *testing.T) {
	if runtime.GOOS != "linux" && runtime.GOOS != "darwin" {
		t.Skip("the platform tells size and time only")
	}
	st, paths := filled(t)
	info, err := os.Stat(paths[0])
	if err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(paths[0])
	if err != nil {
		t.Fatal(err)
	}
	changed := strings.Replace(string(data), "Made-Up", "Renamed", 1)
	if err := os.WriteFile(paths[0], []byte(changed), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Chtimes(paths[0], info.ModTime(), info.ModTime()); err != nil {
		t.Fatal(err)
	}
	if got := told(list(t, st)); !strings.Contains(got, "Renamed") {
		t.Error("the old name is still told")
	}
}

func TestYoungFilesAreReadAgain(t *testing.T) {
	st, paths := filled(t)
	for _, path := range paths {
		soon := time.Now().Add(time.Hour) // however slow this machine is, they are young
		if err := os.Chtimes(path, soon, soon); err != nil {
			t.Fatal(err)
		}
	}
	remove(t, CachePath(st))
	list(t, st)
	if n := fromCache(t, st); n != 0 {
		t.Errorf("%d files that were written just now are in the cache", n)
	}
}

func TestCacheIsMadeAnewWhereItCannotBeUsed(t *testing.T) {
	for name, spoil := range map[string]func(t *testing.T, st *sessions.Store){
		"missing": func(t *testing.T, st *sessions.Store) { remove(t, CachePath(st)) },
		"empty":   func(t *testing.T, st *sessions.Store) { write(t, cacheFile(st), nil) },
		"half": func(t *testing.T, st *sessions.Store) {
			data := read(t, cacheFile(st))
			write(t, cacheFile(st), data[:len(data)/2])
		},
		"one bit": func(t *testing.T, st *sessions.Store) {
			data := read(t, cacheFile(st))
			data[len(data)/2] ^= 4
			write(t, cacheFile(st), data)
		},
		"no cache": func(t *testing.T, st *sessions.Store) { write(t, cacheFile(st), []byte("hello\nworld\n")) },
		"other days until a re-check": func(t *testing.T, st *sessions.Store) {
			write(t, st.SchoolPath(), []byte("format = 1\nrecheck_days = 7\n"))
		},
		"other limits of the school": func(t *testing.T, st *sessions.Store) {
			write(t, st.SchoolPath(), []byte("format = 1\n[limits]\nconnector-clearance = 30\n"))
		},
		"of another folder": func(t *testing.T, st *sessions.Store) {
			other, _ := filled(t)
			write(t, cacheFile(st), read(t, cacheFile(other)))
		},
		"words out of range": func(t *testing.T, st *sessions.Store) {
			school, _ := st.School()
			c := loadCache(st, madeBy(st, school))
			c.Words = c.Words[:1]
			body := encoded(t, c)
			write(t, cacheFile(st), append([]byte(checksum(body)+"\n"), body...))
		},
	} {
		t.Run(name, func(t *testing.T) {
			st, _ := filled(t)
			spoil(t, st)
			if n := fromCache(t, st); n != 0 {
				t.Errorf("%d files are answered from it", n)
			}
			if got := told(list(t, st)); got != fresh(t, st) {
				t.Error("the list is another")
			}
		})
	}
}

// A file that is never kept, as one that cannot be opened, does not make every
// list write the cache anew; one that is gone does.
func TestCacheIsWrittenOnlyWhereItChanges(t *testing.T) {
	st, paths := filled(t)
	if err := os.Symlink(filepath.Join(st.Dir(), "nowhere"), filepath.Join(st.Dir(), "link.toml")); err != nil {
		t.Skip("no symbolic links here")
	}
	before, err := os.Stat(cacheFile(st))
	if err != nil {
		t.Fatal(err)
	}
	list(t, st)
	if after, err := os.Stat(cacheFile(st)); err != nil || !os.SameFile(before, after) {
		t.Errorf("written anew (%v)", err)
	}
	if left, _ := filepath.Glob(filepath.Join(CachePath(st), cacheTemp)); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
	remove(t, paths[0])
	list(t, st)
	if after, err := os.Stat(cacheFile(st)); err != nil || os.SameFile(before, after) {
		t.Errorf("not written anew (%v)", err)
	}
}

func TestCacheOfTheFolderIsClosedToOthers(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no modes on Windows")
	}
	st, _ := filled(t)
	for name, want := range map[string]fs.FileMode{CachePath(st): 0o700, cacheFile(st): 0o600} {
		if info, err := os.Stat(name); err != nil || info.Mode().Perm() != want {
			t.Errorf("%s: %v, %v", name, info.Mode(), err)
		}
	}
}

func TestListWithoutAPlaceForTheCache(t *testing.T) {
	st, paths := filled(t)
	remove(t, CachePath(st))
	write(t, CachePath(st), []byte("in the way"))
	if l := list(t, st); len(l.Entries) != len(paths) {
		t.Errorf("%d entries of %d", len(l.Entries), len(paths))
	}
}

func TestLeftoversOfTheCacheAreCleared(t *testing.T) {
	st, paths := filled(t)
	remove(t, paths[0])
	old, young := filepath.Join(CachePath(st), "list.1.tmp"), filepath.Join(CachePath(st), "list.2.tmp")
	write(t, old, []byte("x"))
	write(t, young, []byte("x"))
	long := time.Now().Add(-2 * leftover)
	if err := os.Chtimes(old, long, long); err != nil {
		t.Fatal(err)
	}
	list(t, st)
	if _, err := os.Stat(old); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("the old one: %v", err)
	}
	if _, err := os.Stat(young); err != nil {
		t.Errorf("what another program may be writing is gone: %v", err)
	}
}

// What the operating system says of a file does not follow from its bytes.
func TestErrorsOfTheSystemAreNotKept(t *testing.T) {
	file := func(err error) error {
		return &sessions.FileError{File: "x", Faults: []sessions.Fault{{Found: "bad"}}, Err: err}
	}
	for _, c := range []struct {
		err  error
		want bool
	}{{nil, true}, {file(nil), true}, {file(fs.ErrPermission), false}, {errors.New("a fault"), false}, {fs.ErrNotExist, false}} {
		if keeps(&Entry{Err: c.err}) != c.want {
			t.Errorf("%v: want %v", c.err, c.want)
		}
	}
}

func encoded(t *testing.T, c *cached) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := gob.NewEncoder(&b).Encode(c); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func read(t *testing.T, name string) []byte {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func write(t *testing.T, name string, data []byte) {
	t.Helper()
	if err := os.WriteFile(name, data, 0o600); err != nil {
		t.Fatal(err)
	}
}

func remove(t *testing.T, name string) {
	t.Helper()
	if err := os.RemoveAll(name); err != nil {
		t.Fatal(err)
	}
}
