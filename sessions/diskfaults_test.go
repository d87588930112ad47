package sessions

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"syscall"
	"testing"
)

// diskFaults are what a call to the operating system can fail with, and what is
// said of it.
var diskFaults = []struct {
	err  error
	said string
}{
	{syscall.ENOSPC, "no space left on device"},
	{syscall.EROFS, "read-only file system"},
	{syscall.EACCES, "its permissions do not allow it"},
	{syscall.EIO, "input/output error"},
	{errDone, errDone.Error()},
}

// Every call of every deed fails once, or from then on for good. The file is then
// the old one or the new one and the error says which in words; tried again the
// deed succeeds and clears what is left.
func TestNoDiskFaultLosesAFile(t *testing.T) {
	needSlashes(t)
	tried := 0
	for _, d := range deeds(t) {
		for n := 1; n <= d.calls(t); n++ {
			for _, f := range diskFaults {
				for _, forGood := range []bool{false, true} {
					what := fmt.Sprintf("%s, call %d, %v, for good %v", d.name, n, f.err, forGood)
					m := d.start(t)
					failed := ""
					m.fault = func(call int, op string) error {
						if call == n || forGood && call > n {
							if failed == "" {
								failed = op
							}
							return f.err
						}
						return nil
					}
					err := d.do(m)
					m.fault = nil
					d.check(t, what+" at "+failed, m, err, f.said)
					d.doAgain(t, what+" at "+failed, m)
					tried++
				}
			}
		}
	}
	t.Logf("%d faults", tried)
}

// Half of what is written arrives, with and without a word about it.
func TestShortWritesLoseNoFile(t *testing.T) {
	needSlashes(t)
	for _, d := range deeds(t) {
		for n := 1; n <= d.calls(t); n++ {
			for _, silent := range []bool{false, true} {
				what := fmt.Sprintf("%s, call %d, silent %v", d.name, n, silent)
				m := d.start(t)
				m.half = func(call int) (bool, bool) { return silent, call == n }
				err := d.do(m)
				m.half = nil
				said := "short write"
				if silent {
					said = "the disk gave back something else than was written"
				}
				d.check(t, what, m, err, said)
				d.doAgain(t, what, m)
			}
		}
	}
}

// An editor outlives a fault: the answer that could not be saved is saved by the
// next try, with all that was typed meanwhile.
func TestSaveIsTriedAgainByTheSameEditor(t *testing.T) {
	needSlashes(t)
	d := deeds(t)[1]
	for n := 1; n <= d.calls(t); n++ {
		for _, f := range diskFaults {
			m := d.start(t)
			st, err := storeOn(m)
			if err != nil {
				t.Fatal(err)
			}
			ed, s, err := st.Edit(d.file)
			if err != nil {
				t.Fatal(err)
			}
			m.calls = 0
			m.fault = func(call int, _ string) error {
				if call == n {
					return f.err
				}
				return nil
			}
			s.Notes = "read"
			_ = ed.Save(s)
			m.fault = nil
			s.Notes += " again"
			if err := ed.Save(s); err != nil || !bytes.Equal(m.content(d.file), d.wanted) {
				t.Errorf("call %d, %v: tried again: %v, the file is\n%s", n, f.err, err, m.content(d.file))
			}
			if err := ed.Close(); err != nil {
				t.Error(err)
			}
		}
	}
}

// Reading a folder changes nothing in it and tells what could not be read.
func TestListStandsEveryDiskFault(t *testing.T) {
	needSlashes(t)
	d := deeds(t)[1]
	for n := 1; ; n++ {
		for _, f := range diskFaults {
			m := d.start(t)
			m.fault = func(call int, _ string) error {
				if call == n {
					return f.err
				}
				return nil
			}
			st, err := storeOn(m)
			var list []fileFound
			if err == nil {
				list, err = listed(st)
			}
			whole := err == nil && len(list) == 1 && list[0].err == nil
			for _, e := range list {
				if e.err != nil {
					err = errors.Join(err, e.err)
				}
			}
			if !bytes.Equal(m.content(d.file), d.was) {
				t.Errorf("call %d, %v: the file was changed", n, f.err)
			}
			if m.calls < n {
				return
			}
			if !whole && (err == nil || !strings.Contains(err.Error(), f.said)) {
				t.Errorf("call %d, %v: %d entries, and told is %v", n, f.err, len(list), err)
			}
		}
	}
}

// The power goes between any two calls, and after the last. What was told as
// saved lasts; else the file is the old one or the new one.
func TestNoLossOfPowerLosesAFile(t *testing.T) {
	needSlashes(t)
	tried := 0
	for _, d := range deeds(t) {
		calls := d.calls(t)
		for n := 1; n <= calls+1; n++ {
			for _, names := range []bool{false, true} {
				what := fmt.Sprintf("%s, power lost before call %d of %d, names last %v", d.name, n, calls, names)
				m := d.start(t)
				m.fault = func(call int, _ string) error {
					if call == n {
						panic(powerLoss{})
					}
					return nil
				}
				done := untilPowerLoss(func() {
					if err := d.do(m); err != nil {
						t.Errorf("%s: %v", what, err)
					}
				})
				m.fault = nil
				m.losePower(names)
				if got := m.content(d.file); done && !bytes.Equal(got, d.wanted) {
					t.Errorf("%s: it was told as saved, and is\n%s", what, got)
				}
				d.whole(t, what, m)
				d.doAgain(t, what, m)
				tried++
			}
		}
	}
	t.Logf("%d losses of power", tried)
}
