package sessions

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"time"
)

const (
	lockDir    = ".locks"
	tempEnding = ".tmp"
)

// LocksPath is the folder of the locks: their names are the files', and all that
// stands in them is which process holds them.
func (st *Store) LocksPath() string { return filepath.Join(st.dir, lockDir) }

// An Editor holds one session's lock while it is being edited and writes it. It
// may be used from several goroutines.
type Editor struct {
	Path  string
	store *Store
	lock  io.Closer

	saving sync.Mutex
	known  []byte // the file as last read or written; nil: not there yet
	good   []byte // the session as last read or written; nil: not there yet
	saved  bool   // by this editor

	keeping sync.Mutex
}

// A LockedError says that another program is editing the session. Load still
// reads it.
type LockedError struct {
	Path   string
	Holder string // who said to hold it: "process 4242 since 2026-04-18T09:12:00Z"; may be empty
}

func (e *LockedError) Error() string { return e.Path + ": " + e.Words() }

// Words is the error without the file.
func (e *LockedError) Words() string {
	who := e.Holder
	if who == "" {
		who = "another program"
	}
	return fmt.Sprintf("is being edited by %s; until that ends it can be read only", who)
}

// A ChangedError says that a file is no longer what it was when it was read.
// Nothing was written. Either Reload takes what is there, or Overwrite and Save.
type ChangedError struct {
	Path string
	Gone bool // the file is no longer there
}

func (e *ChangedError) Error() string {
	if e.Gone {
		return e.Path + ": was removed by another program; nothing was written"
	}
	return e.Path + ": was changed by another program; nothing was written"
}

// New starts a session with the school's defaults, locked for its editor. The
// file appears with the first Save.
func (st *Store) New() (*Editor, *Session, error) {
	school, err := st.School()
	if err != nil {
		return nil, nil, err
	}
	if err := st.Ready(); err != nil {
		return nil, nil, err
	}
	id, err := st.newID()
	if err != nil {
		return nil, nil, err
	}
	s := school.Begin()
	s.ID = id
	s.Started = st.now().UTC().Truncate(time.Second)
	s.Fit.Started = s.Started
	ed := &Editor{Path: filepath.Join(st.dir, id+ending), store: st}
	if err := ed.open(); err != nil {
		return nil, nil, err
	}
	return ed, s, nil
}

// Edit reads the session at path and locks it. The error is a *LockedError
// where another program edits it.
func (st *Store) Edit(path string) (*Editor, *Session, error) {
	if err := st.Ready(); err != nil {
		return nil, nil, err
	}
	if target, err := st.disk.EvalSymlinks(path); err == nil {
		path = target // a rename would replace the link
	}
	ed := &Editor{Path: path, store: st}
	if err := ed.open(); err != nil {
		return nil, nil, err
	}
	s, err := ed.Reload()
	if err != nil {
		return nil, nil, errors.Join(err, ed.Close())
	}
	return ed, s, nil
}

// open takes the lock and clears what an editor that was killed left behind.
func (ed *Editor) open() error {
	lock, heldBy, err := ed.store.takeLock(ed.Path)
	switch {
	case err != nil:
		return err
	case lock == nil:
		return &LockedError{ed.Path, strings.TrimSpace(heldBy)}
	}
	ed.lock = lock
	if err := ed.clear(); err != nil {
		return errors.Join(err, ed.Close())
	}
	return nil
}

// lockOf is the lock of the file at path, a file of its own that is never renamed,
// and removed only where the file is gone for good.
func lockOf(path string) string {
	return filepath.Join(filepath.Dir(path), lockDir, filepath.Base(path)+".lock")
}

// takeLock takes the lock of the file at path; it is nil where heldBy holds it.
func (st *Store) takeLock(path string) (lock io.Closer, heldBy string, err error) {
	name := lockOf(path)
	dir := filepath.Dir(name)
	if err := st.disk.MkdirAll(dir, dirMode); err != nil {
		return nil, "", unreadable(dir, err, "cannot be made: %s", reason(err))
	}
	who := fmt.Sprintf("process %d since %s\n", os.Getpid(), st.now().UTC().Format(time.RFC3339))
	lock, heldBy, err = st.disk.Lock(name, who)
	if err != nil {
		return nil, "", unreadable(name, err, "cannot be locked: %s", reason(err))
	}
	return lock, heldBy, nil
}

// clear removes the temporary files of this session and of its last good copy.
func (ed *Editor) clear() error {
	dir := filepath.Dir(ed.Path)
	all, err := ed.store.disk.ReadDir(dir)
	if err != nil {
		return unreadable(dir, err, "cannot be read: %s", reason(err))
	}
	ed.clearIn(dir, all)
	dir = filepath.Dir(lastGoodOf(ed.Path))
	all, _ = ed.store.disk.ReadDir(dir) // most have no copy yet
	ed.clearIn(dir, all)
	return nil
}

func (ed *Editor) clearIn(dir string, all []fs.DirEntry) {
	for _, e := range all {
		if strings.HasPrefix(e.Name(), ed.tempPrefix()) && strings.HasSuffix(e.Name(), tempEnding) {
			_ = ed.store.disk.Remove(filepath.Join(dir, e.Name())) // the next editor tries again
		}
	}
}

func (ed *Editor) tempPrefix() string { return "." + filepath.Base(ed.Path) + "." }

// Reload reads the session anew and takes it as known.
func (ed *Editor) Reload() (*Session, error) {
	ed.saving.Lock()
	defer ed.saving.Unlock()
	f, err := ed.store.Load(ed.Path)
	if err != nil {
		return nil, err
	}
	ed.known, ed.good = f.Data, f.Data
	return f.Session, nil
}

// Overwrite takes the file as it is now as known, so that the next Save
// replaces it.
func (ed *Editor) Overwrite() error {
	ed.saving.Lock()
	defer ed.saving.Unlock()
	data, err := ed.onDisk()
	if err != nil {
		return err
	}
	ed.known = data
	return nil
}

// Save writes s: the old file or the new one is there whole at every moment,
// also after a loss of power. It writes nothing that could not be read again,
// and nothing over what another program wrote since (a *ChangedError). After an
// error the old file is untouched and Save may be tried again.
func (ed *Editor) Save(s *Session) error {
	ed.saving.Lock()
	defer ed.saving.Unlock()
	data := Encode(s)
	if err := sameAgain(ed.Path, data); err != nil {
		return err
	}
	now, err := ed.onDisk()
	if err != nil {
		return err
	}
	if !bytes.Equal(now, ed.known) {
		return &ChangedError{ed.Path, now == nil}
	}
	became, err := ed.store.replace(ed.Path, ed.tempPrefix(), data)
	if became == replaced {
		ed.known, ed.good, ed.saved = data, data, true
	}
	return became.told(ed.Path, err)
}

// onDisk is the file as it is now, which something may have emptied; nil where
// there is none.
func (ed *Editor) onDisk() ([]byte, error) {
	data, err := readPlain(ed.store.disk, ed.Path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	return data, err
}

// Close keeps the last good copy and gives the lock back. The editor must not be
// used any more.
func (ed *Editor) Close() error {
	ed.keepLast()
	if err := ed.lock.Close(); err != nil {
		return unreadable(ed.Path, err, "its lock cannot be given back: %s", reason(err))
	}
	return nil
}

// sameAgain makes sure that data reads as the session that it was written from.
func sameAgain(name string, data []byte) error {
	s, err := Decode(name, data)
	if err != nil {
		return err
	}
	if !bytes.Equal(Encode(s), data) {
		return unreadable(name, nil, "would not read back as it was written; nothing was written")
	}
	return nil
}
