package sessions

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
)

// Remove removes the file at path for good, with what a killed editor left of it
// and with its lock; of a symbolic link also what it leads to. Nothing is removed
// while another program edits it (a *LockedError), nor where still, asked under
// the lock of what the file says now, no longer agrees (a *ChangedError).
func (st *Store) Remove(path string, still func(data []byte) bool) (err error) {
	if err := st.Ready(); err != nil {
		return err
	}
	target, err := st.disk.EvalSymlinks(path)
	if err != nil {
		return unreadable(path, err, "cannot be removed: %s", reason(err))
	}
	ed := &Editor{Path: target, store: st}
	if err := ed.open(); err != nil {
		return err
	}
	defer func() { err = errors.Join(err, ed.unlock()) }()
	data, err := ed.onDisk()
	switch {
	case err != nil:
		return err
	case data == nil || !still(data):
		return &ChangedError{path, data == nil}
	}
	for _, name := range []string{target, path} {
		if err := st.disk.Remove(name); err != nil && !errors.Is(err, os.ErrNotExist) {
			return unreadable(name, err, "cannot be removed: %s", reason(err))
		}
	}
	if err := st.disk.SyncDir(filepath.Dir(target)); err != nil {
		return unreadable(target, err, "was removed, but a loss of power now might bring it back: %s", reason(err))
	}
	return nil
}

// Clear removes what a killed editor left of the session at path, which need not
// be there itself. Nothing is removed while another program edits it (a
// *LockedError).
func (st *Store) Clear(path string) error {
	ed := &Editor{Path: path, store: st}
	if err := ed.open(); err != nil {
		return err
	}
	if err := st.disk.SyncDir(filepath.Dir(path)); err != nil {
		return errors.Join(unreadable(path, err, "what was left of it may come back with a loss of power: %s", reason(err)), ed.unlock())
	}
	return ed.unlock()
}

// unlock gives back the lock of a file that is gone and takes its file away; an
// editor that has it open already finds no session to save over.
func (ed *Editor) unlock() error {
	if _, err := ed.store.disk.Stat(ed.Path); err == nil {
		return ed.Close()
	}
	name := lockOf(ed.Path)
	err := ed.Close() // before, as Windows removes nothing that is open
	if removed := ed.store.disk.Remove(name); removed != nil && !errors.Is(removed, os.ErrNotExist) {
		err = errors.Join(err, fmt.Errorf("%s: the lock of a file that is gone cannot be removed: %w", name, removed))
	}
	return err
}
