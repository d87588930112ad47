package sessions

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"time"

	"example.com/hangtape/rules"
)

// The last good copy of a session's file is a file of the same name in a folder
// of its own beside it. It is for what happens to a file outside the program,
// such as a sync client that cuts it: the program itself never leaves half a file.
// It comes after the session is saved and no save waits for it.
const (
	lastGoodDir = ".last-good"
	asideEnding = ".damaged" // ends the name under which a damaged file is set aside

	// lastGoodFor is how long after it was made a copy stays beside a file that is
	// whole: a session in work makes another one, and then backups are for that.
	lastGoodFor = 31 * 24 * time.Hour
)

// A LastGood is a session as it was when its file was whole last.
type LastGood struct {
	*File           // its Name is that of the copy
	At    time.Time // when the copy was made

	// Damage is why the file is no session now; nil where it still is one, as
	// of a file that was cut between two lines.
	Damage error
	Cut    bool // the file is the beginning of the copy
}

// LastGoodPath is the folder of the last good copies.
func (st *Store) LastGoodPath() string { return filepath.Join(st.dir, lastGoodDir) }

func lastGoodOf(path string) string {
	return filepath.Join(filepath.Dir(path), lastGoodDir, filepath.Base(path))
}

// Keep makes the session as it was read or saved last the last good copy of its
// file. Call it after a Save, where nobody waits for it; Close does. Where it
// cannot be made the session is saved all the same and the copy before stays, so
// there is no error.
func (ed *Editor) Keep() {
	ed.keeping.Lock()
	defer ed.keeping.Unlock()
	ed.keep()
}

// keepLast is the last Keep: later ones do nothing.
func (ed *Editor) keepLast() {
	ed.keeping.Lock()
	defer ed.keeping.Unlock()
	ed.keep()
	ed.saving.Lock()
	defer ed.saving.Unlock()
	ed.good = nil
}

func (ed *Editor) keep() {
	ed.saving.Lock()
	good, saved := ed.good, ed.saved
	ed.saving.Unlock()
	if good == nil {
		return
	}
	disk, name := ed.store.disk, lastGoodOf(ed.Path)
	switch had, err := readPlain(disk, name); {
	case err == nil && bytes.Equal(had, good):
		return
	case err == nil && !saved && bytes.HasPrefix(had, good): // of a file that was cut and only read: the copy has more
		return
	case errors.Is(err, fs.ErrNotExist) && makeFolder(disk, filepath.Dir(name)) != nil:
		return
	}
	_, _ = ed.store.replace(name, ed.tempPrefix(), good)
}

// LastGood is the last good copy of the file at path, where that can be read and
// is damaged; else nil. A file of a later format is not damaged.
func (st *Store) LastGood(path string) *LastGood {
	good, _ := lastGood(st.disk, path)
	return good
}

// LastGoodOf is LastGood for a file anywhere.
func LastGoodOf(path string) *LastGood {
	good, _ := lastGood(disk{}, path)
	return good
}

// lastGood is nil without an error where the file is as it should be.
func lastGood(disk Files, path string) (*LastGood, error) {
	called := path
	if target, err := disk.EvalSymlinks(path); err == nil {
		path = target
	}
	name := lastGoodOf(path)
	info, err := disk.Stat(name)
	if err != nil {
		return nil, unreadable(name, err, "cannot be read: %s", reason(err))
	}
	f, err := readFile(disk, name)
	if err != nil {
		return nil, err
	}
	data, err := readPlain(disk, path)
	if err != nil {
		return nil, err
	}
	_, damage := Decode(called, data)
	var told *FileError
	cut := len(data) < len(f.Data) && bytes.HasPrefix(f.Data, data)
	if damage == nil && !cut || errors.As(damage, &told) && told.Newer {
		return nil, nil
	}
	return &LastGood{f, info.ModTime(), damage, cut}, nil
}

// Says is what the copy is: when it was made, whose session it is, and how much
// is in it.
func (g *LastGood) Says() string {
	who := g.Session.Climber
	if who == "" {
		who = "no name"
	}
	return fmt.Sprintf("of %s, %s, %s", g.At.Local().Format("2006-01-02 15:04"), who, rules.Count(g.Session.Answers(), "answer", "answers"))
}

// Answers is how much the session tells beyond what one tells that nobody has
// answered yet: a reading that was taken several times counts once.
func (s *Session) Answers() int {
	blank := DefaultSchool().Begin()
	blank.ID, blank.Started = s.ID, s.Started
	return max(0, len(s.Told())-len(blank.Told()))
}
