package sessions

import (
	"bytes"
	"errors"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// A deed is something that changes one file of a folder, which has to leave it as
// it was or as it should be, whatever the disk does meanwhile.
type deed struct {
	name   string
	before func(t *testing.T, m *memory) // nil: an empty disk
	do     func(m *memory) error
	file   string
	was    []byte // nil: no such file
	wanted []byte
}

const (
	memoryHome   = "/home/somebody"
	memoryFolder = memoryHome + "/data/hangtape"
)

// zeros makes ids that are the same in every run.
type zeros struct{}

func (zeros) Read(b []byte) (int, error) { clear(b); return len(b), nil }

func storeOn(m *memory) (*Store, error) { return openStore(memoryFolder, noon, zeros{}, m) }

func firstSave(m *memory) error {
	st, err := storeOn(m)
	if err != nil {
		return err
	}
	ed, s, err := st.New()
	if err != nil {
		return err
	}
	return errors.Join(ed.Save(s), ed.Close())
}

func saveAgain(path string, notes string) func(m *memory) error {
	return func(m *memory) error {
		st, err := storeOn(m)
		if err != nil {
			return err
		}
		ed, s, err := st.Edit(path)
		if err != nil {
			return err
		}
		s.Notes = notes
		return errors.Join(ed.Save(s), ed.Close())
	}
}

func takeLastGood(path string) func(m *memory) error {
	return func(m *memory) error {
		st, err := storeOn(m)
		if err != nil {
			return err
		}
		if _, err := Decode(path, m.content(path)); err == nil {
			return st.Ready() // done already
		}
		_, err = st.TakeLastGood(path)
		return err
	}
}

func keepPiece(p TiedPiece) func(m *memory) error {
	return func(m *memory) error {
		st, err := storeOn(m)
		if err != nil {
			return err
		}
		return st.AddPiece(p)
	}
}

// deeds are what the store does to files.
func deeds(t *testing.T) []deed {
	t.Helper()
	school := DefaultSchool()
	first := school.Begin()
	st, err := storeOn(newMemory(memoryHome))
	if err != nil {
		t.Fatal(err)
	}
	if first.ID, err = st.newID(); err != nil {
		t.Fatal(err)
	}
	first.Started = noon()
	first.Fit.Started = first.Started
	again := first.Clone()
	again.Notes = "read again"
	path, pieces := filepath.Join(memoryFolder, first.ID+Ending), tiedPieces()
	cut := Encode(first)[:200]
	return []deed{
		{"first save", nil, firstSave, path, nil, Encode(first)},
		{"save", prepared(firstSave), saveAgain(path, again.Notes), path, Encode(first), Encode(again)},
		{"save as it was", prepared(firstSave), saveAgain(path, ""), path, Encode(first), Encode(first)},
		{"taking the last good copy", func(t *testing.T, m *memory) {
			t.Helper()
			prepared(firstSave)(t, m)
			m.put(path, cut)
		}, takeLastGood(path), path, cut, Encode(first)},
		{"first piece", nil, keepPiece(pieces[0]), filepath.Join(memoryFolder, PiecesFile), nil, EncodePieces(pieces[:1])},
		{"piece", prepared(keepPiece(pieces[0])), keepPiece(pieces[1]), filepath.Join(memoryFolder, PiecesFile), EncodePieces(pieces[:1]), EncodePieces(pieces[:2])},
	}
}

func prepared(do func(m *memory) error) func(t *testing.T, m *memory) {
	return func(t *testing.T, m *memory) {
		t.Helper()
		if err := do(m); err != nil {
			t.Fatal(err)
		}
		m.losePower(false)
	}
}

// needSlashes skips where paths do not start with a slash.
func needSlashes(t *testing.T) {
	t.Helper()
	if runtime.GOOS == "windows" {
		t.Skip("the disk of this test has the paths of other platforms")
	}
}

// untilPowerLoss says whether do came to its end.
func untilPowerLoss(do func()) (done bool) {
	defer func() {
		if r := recover(); r != nil && r != (powerLoss{}) {
			panic(r)
		}
	}()
	do()
	return true
}

func (d *deed) start(t *testing.T) *memory {
	t.Helper()
	m := newMemory(memoryHome)
	if d.before != nil {
		d.before(t, m)
	}
	m.calls = 0
	return m
}

// calls is how many calls the deed takes where all goes well.
func (d *deed) calls(t *testing.T) int {
	t.Helper()
	m := d.start(t)
	if err := d.do(m); err != nil {
		t.Fatalf("%s: %v", d.name, err)
	}
	if got := m.content(d.file); !bytes.Equal(got, d.wanted) {
		t.Fatalf("%s left\n%s\nwant\n%s", d.name, got, d.wanted)
	}
	return m.calls
}

// content is the file as programs see it; nil where there is none.
func (m *memory) content(path string) []byte {
	if n := m.names[path]; n != nil {
		return append([]byte{}, n.data...)
	}
	return nil
}

// put writes a file that lasts.
func (m *memory) put(path string, data []byte) {
	m.names[path] = &node{mode: 0o600, data: data, synced: data, made: m.clock}
	m.lasts[path] = m.names[path]
}

// whole holds that the file is the old one or the new one, that its last good copy
// is whole, and that what was damaged is there or set aside.
func (d *deed) whole(t *testing.T, what string, m *memory) {
	t.Helper()
	got := m.content(d.file)
	for path := range m.names {
		if filepath.Dir(path) != filepath.Join(memoryFolder, lastGoodDir) || strings.HasSuffix(path, tempEnding) {
			continue
		}
		if _, err := Decode(path, m.content(path)); err != nil {
			t.Errorf("%s: the last good copy: %v", what, err)
		}
	}
	if _, err := Decode("", d.was); d.was != nil && filepath.Base(d.file) != PiecesFile && err != nil && !bytes.Equal(got, d.was) && !bytes.Equal(m.content(d.file+asideEnding), d.was) {
		t.Errorf("%s: what was damaged is gone", what)
	}
	if !bytes.Equal(got, d.wanted) && !(bytes.Equal(got, d.was) && (got == nil) == (d.was == nil)) {
		t.Errorf("%s: the file is neither the old one nor the new one:\n%q", what, got)
	}
}

// check holds that the file is whole and that err says truly what became of it.
func (d *deed) check(t *testing.T, what string, m *memory, err error, said string) {
	t.Helper()
	d.whole(t, what, m)
	got := m.content(d.file)
	switch {
	case err == nil:
		if !bytes.Equal(got, d.wanted) {
			t.Errorf("%s: told as saved, and was not", what)
		}
	case !strings.Contains(err.Error(), said) || !strings.Contains(err.Error(), memoryFolder):
		t.Errorf("%s: %q does not say of %s that %s", what, err, memoryFolder, said)
	case strings.Contains(err.Error(), "the file is as it was") && bytes.Equal(got, d.wanted) && !bytes.Equal(d.was, d.wanted):
		t.Errorf("%s: it was saved, and told as %q", what, err)
	case strings.Contains(err.Error(), "was saved") && !bytes.Equal(got, d.wanted):
		t.Errorf("%s: it was not saved, and told as %q", what, err)
	}
}

// doAgain holds that the deed, tried again on a good disk, succeeds and leaves
// nothing behind.
func (d *deed) doAgain(t *testing.T, what string, m *memory) {
	t.Helper()
	if !bytes.Equal(m.content(d.file), d.wanted) || d.was != nil && bytes.Equal(d.was, d.wanted) {
		if err := d.do(m); err != nil {
			t.Errorf("%s: tried again: %v", what, err)
		}
		if got := m.content(d.file); !bytes.Equal(got, d.wanted) {
			t.Errorf("%s: tried again it is\n%s", what, got)
		}
	} else if st, err := storeOn(m); err != nil || st.Ready() != nil {
		t.Errorf("%s: the folder cannot be opened again: %v, %v", what, err, st.Ready())
	}
	for path := range m.names {
		if strings.HasSuffix(path, tempEnding) {
			t.Errorf("%s: %s is left behind", what, path)
		}
	}
	if len(m.locked) > 0 {
		t.Errorf("%s: still locked: %v", what, m.locked)
	}
}
