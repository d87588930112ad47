package sessions_test

import (
	"errors"
	"fmt"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/demo"
	"example.com/hangtape/sessions/forget"
	"example.com/hangtape/sessions/records"
)

const gone = "demo climber A" // who is to be forgotten

// demoDisk is a folder of the demo's sessions, one that leads to another, one that
// is damaged, last good copies, and what killed programs left, all an hour old.
func demoDisk(t *testing.T) sessions.Memory {
	t.Helper()
	if runtime.GOOS == "windows" {
		t.Skip("the disk of this test has the paths of other platforms")
	}
	d := sessions.NewMemory()
	d.Later(0)
	st, err := d.Store()
	if err != nil {
		t.Fatal(err)
	}
	id := ""
	for _, f := range demo.Files() {
		s, err := sessions.Decode(f.Name, f.Data)
		if err != nil {
			t.Fatal(err)
		}
		if s.Climber == gone {
			id = s.ID
		}
		d.Put(filepath.Join(st.Dir(), s.ID+".toml"), f.Data)
	}
	other, err := sessions.Decode("other", demo.Files()[1].Data)
	if err != nil {
		t.Fatal(err)
	}
	other.ID, other.Climber, other.Follows = "01KPFXRYR03M4T5W6X7Y8Z9A99", "somebody else", id
	d.Put(filepath.Join(st.Dir(), other.ID+".toml"), sessions.Encode(other))
	d.Put(filepath.Join(st.Dir(), "."+id+".toml.77.tmp"), []byte(`climber = "`+gone+`"`))
	d.Put(filepath.Join(st.Dir(), id+".toml.damaged"), []byte(`climber = "`+gone))
	const damaged = "01KPFXRYR03M4T5W6X7Y8Z9A97.toml"
	d.Put(filepath.Join(st.Dir(), damaged), []byte("format = 1\n[sess"))
	for name, text := range map[string]string{ // last good copies
		id + ".toml":               `climber = "` + gone + `"`,
		other.ID + ".toml":         string(sessions.Encode(other)),
		damaged:                    `climber = "` + gone + `"`,
		"." + damaged + ".78.tmp":  gone,
		"." + id + ".toml.79.tmp":  gone,
		"." + other.ID + ".1.tmp2": "of something else",
	} {
		d.Put(filepath.Join(st.LastGoodPath(), name), []byte(text))
	}
	d.Folder(st.LastGoodPath())
	d.Later(time.Hour)
	return d
}

// faults are all that a call can fail with, or two of them without -long.
func faults() []error {
	all := sessions.DiskFaults()
	if *sessions.Long {
		return all
	}
	return []error{all[0], all[len(all)-1]}
}

// listed is what a list tells, in short.
func listed(d sessions.Memory) (map[string]string, error) {
	st, err := d.Store()
	if err != nil {
		return nil, err
	}
	l, err := records.Scan(st)
	if err != nil {
		return nil, err
	}
	told := map[string]string{}
	for _, e := range l.Entries {
		told[e.Path] = fmt.Sprint(e.ID, e.Climber, e.Place, e.Started, e.Outcome)
		if e.Err != nil {
			told[e.Path] = "error: " + e.Err.Error()
		}
	}
	return told, nil
}

// A call fails while a list makes or uses its cache, once or for good, or the
// power goes: the list tells what the files say or what went wrong, and the next
// one tells the truth.
func TestNoDiskFaultMakesAListLie(t *testing.T) {
	fresh := demoDisk(t)
	truth, err := listed(fresh.Copy())
	if err != nil || len(truth) != 6 {
		t.Fatal(truth, err)
	}
	made := fresh.Copy()
	if _, err := listed(made); err != nil {
		t.Fatal(err)
	}
	if len(made.Holding("Words")) != 1 {
		t.Fatal("no cache was made")
	}
	made.Put(filepath.Join(dirOf(t, made), ".cache", "list.1.tmp"), []byte("half"))
	made.Later(2 * time.Hour)
	tried := 0
	for what, start := range map[string]sessions.Memory{"without a cache": fresh, "with one": made} {
		for n := 1; ; n++ {
			calls := 0
			for _, fault := range faults() {
				for _, forGood := range []bool{false, true} {
					for _, power := range []int{0, 1, 2} { // on, lost, lost with names that last
						if power > 0 && !forGood {
							continue
						}
						at := fmt.Sprintf("%s, call %d, %v, for good %v, power %d", what, n, fault, forGood, power)
						d := start.Copy()
						d.Fail(n, forGood, fault)
						told, err := listed(d)
						calls = max(calls, d.Calls())
						for path, entry := range told {
							if entry != truth[path] && !strings.HasPrefix(entry, "error: ") {
								t.Errorf("%s: %s is told as %s, is %s", at, path, entry, truth[path])
							}
						}
						if err == nil && len(told) < len(truth) {
							t.Errorf("%s: only %d files are told", at, len(told))
						}
						if d.Fail(0, false, nil); power > 0 {
							d.LosePower(power == 2)
						}
						if told, err = listed(d); err != nil || fmt.Sprint(told) != fmt.Sprint(truth) {
							t.Errorf("%s: the next list tells %v, %v", at, told, err)
						}
						tried++
					}
				}
			}
			if calls < n {
				break
			}
		}
	}
	t.Logf("%d faults", tried)
}

func dirOf(t *testing.T, d sessions.Memory) string {
	t.Helper()
	st, err := d.Store()
	if err != nil {
		t.Fatal(err)
	}
	return st.Dir()
}

// forgotten forgets the climber and says what could not be removed.
func forgotten(d sessions.Memory) error {
	st, err := d.Store()
	if err != nil {
		return err
	}
	traces, err := forget.Look(st, gone)
	if err != nil {
		return err
	}
	errs := traces.Remove().Failed
	for _, path := range traces.Named {
		errs = append(errs, errors.New(path+" names the climber"))
	}
	return errors.Join(errs...)
}

// A call fails while somebody is forgotten, once or for good, or the power goes:
// what is still there is told, nothing of anybody else is harmed, nothing stays
// locked, and tried again all of it goes. What was told as gone does not come back
// with the power.
func TestNoDiskFaultKeepsTheForgotten(t *testing.T) {
	start := demoDisk(t)
	if _, err := listed(start); err != nil {
		t.Fatal(err)
	}
	others := len(start.Files()) - len(start.Holding(gone))
	done := start.Copy()
	if err := forgotten(done); err != nil || len(done.Holding(gone)) > 0 {
		t.Fatalf("left in %v, %v", done.Holding(gone), err)
	}
	tried := 0
	for n := 1; ; n++ {
		calls := 0
		for _, fault := range faults() {
			for _, forGood := range []bool{false, true} {
				for _, power := range []int{0, 1, 2} {
					if power > 0 && !forGood && !*sessions.Long {
						continue
					}
					at := fmt.Sprintf("call %d, %v, for good %v, power %d", n, fault, forGood, power)
					d := start.Copy()
					d.Fail(n, forGood, fault)
					err := forgotten(d)
					calls = max(calls, d.Calls())
					d.Fail(0, false, nil)
					if err == nil && len(d.Holding(gone)) > 0 {
						t.Errorf("%s: all is told as gone, and the climber is in %v", at, d.Holding(gone))
					}
					if d.Locked() > 0 {
						t.Errorf("%s: %d locks are held", at, d.Locked())
					}
					if power > 0 {
						d.LosePower(power == 2)
					}
					if left := d.Holding(gone); err == nil && len(left) > 0 {
						t.Errorf("%s: with the power came back %v", at, left)
					}
					harmless(t, at, start, d)
					if err := forgotten(d); err != nil || len(d.Holding(gone)) > 0 {
						t.Errorf("%s: tried again: %v, left in %v", at, err, d.Holding(gone))
					}
					tried++
				}
			}
		}
		if calls < n {
			break
		}
	}
	t.Logf("%d faults, %d files of others", tried, others)
}

// harmless holds that the sessions of others are whole.
func harmless(t *testing.T, at string, before, after sessions.Memory) {
	t.Helper()
	files := after.Files()
	for path, was := range before.Files() {
		if filepath.Ext(path) != ".toml" || strings.Contains(was, gone) || sessions.BelongsTo(path) != "" {
			continue
		}
		if _, err := sessions.Decode(path, []byte(was)); err != nil && files[path] == was { // damaged before
			continue
		}
		want, err1 := sessions.Decode(path, []byte(was))
		got, err2 := sessions.Decode(path, []byte(files[path]))
		if err1 != nil || err2 != nil {
			t.Errorf("%s: another's session: %v, %v", at, err1, err2)
			continue
		}
		if got.Follows == "" {
			want.Follows = ""
		}
		if string(sessions.Encode(got)) != string(sessions.Encode(want)) {
			t.Errorf("%s: another's session is\n%s", at, files[path])
		}
	}
}
