package sessions

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
)

// Remove removes the file at path for good, with its last good copy, what was set
// aside of it as damaged, what a killed editor left of it and its lock; of a
// symbolic link also what it leads to. Nothing is removed
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
	aside, err := ed.aside()
	if err != nil {
		return err
	}
	return st.removeAll(append(aside, lastGoodOf(target), target, path)) // the session last: it leads to the others
}

// removeAll removes files one after the other, as far as they are there, so that
// they do not come back with a loss of power.
func (st *Store) removeAll(names []string) error {
	for i, name := range names {
		if err := st.disk.Remove(name); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return unreadable(name, err, "cannot be removed: %s", reason(err))
		}
		dir := filepath.Dir(name)
		if i+1 < len(names) && filepath.Dir(names[i+1]) == dir {
			continue
		}
		if err := st.disk.SyncDir(dir); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return unreadable(name, err, "was removed, but a loss of power now might bring it back: %s", reason(err))
		}
	}
	return nil
}

// aside are the files that were set aside of this one as damaged.
func (ed *Editor) aside() (names []string, err error) {
	dir := filepath.Dir(ed.Path)
	all, err := ed.store.disk.ReadDir(dir)
	if err != nil {
		return nil, unreadable(dir, err, "cannot be read: %s", reason(err))
	}
	for _, e := range all {
		if name := filepath.Join(dir, e.Name()); BelongsTo(name) == ed.Path && !IsTemp(name) {
			names = append(names, name)
		}
	}
	return names, nil
}

// Clear removes what the program keeps or a killed one left of the session at
// path, which need not be there itself: temporary files, and its last good copy.
// Nothing is removed while another program edits it (a *LockedError).
func (st *Store) Clear(path string) error {
	ed := &Editor{Path: path, store: st}
	if err := ed.open(); err != nil {
		return err
	}
	err := st.removeAll([]string{lastGoodOf(path)})
	if syncErr := st.disk.SyncDir(filepath.Dir(path)); syncErr != nil {
		err = errors.Join(err, unreadable(path, syncErr, "what was left of it may come back with a loss of power: %s", reason(syncErr)))
	}
	return errors.Join(err, ed.unlock())
}

// unlock gives back the lock of a file that is gone and takes its file away; an
// editor that has it open already finds no session to save over.
func (ed *Editor) unlock() error {
	if _, err := ed.store.disk.Stat(ed.Path); err == nil {
		return ed.Close()
	}
	name := lockOf(ed.Path)
	err := ed.Close() // before, as Windows removes nothing that is open
	if removed := ed.store.disk.Remove(name); removed != nil && !errors.Is(removed, fs.ErrNotExist) {
		err = errors.Join(err, fmt.Errorf("%s: the lock of a file that is gone cannot be removed: %w", name, removed))
	}
	return err
}
