package sessions

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"path/filepath"
	"strings"
	"sync"
	"time"
)

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

	keeping sync.Mutex // held while the last good copy is made, which no save waits for
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
	ed := &Editor{Path: filepath.Join(st.dir, id+Ending), store: st}
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
