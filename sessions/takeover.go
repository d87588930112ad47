package sessions

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
)

// TakeLastGood puts the last good copy in the place of the damaged file at path.
// What stood there is kept beside it, byte for byte, in a file whose name is
// told. At every moment the file at path is as it was or the copy, and what it was
// is kept. Nothing is done while another program edits it (a *LockedError).
func (st *Store) TakeLastGood(path string) (aside string, err error) {
	if err := st.Ready(); err != nil {
		return "", err
	}
	if target, err := st.disk.EvalSymlinks(path); err == nil {
		path = target
	}
	ed := &Editor{Path: path, store: st}
	if err := ed.open(); err != nil {
		return "", err
	}
	defer func() { err = errors.Join(err, ed.Close()) }()
	good, err := lastGood(st.disk, path)
	switch {
	case err != nil:
		return "", err
	case good == nil:
		return "", unreadable(path, nil, "is not damaged any more; nothing was done")
	}
	if aside, err = ed.setAside(); err != nil {
		return "", err
	}
	became, err := st.replace(path, ed.tempPrefix(), good.Data)
	return aside, became.told(path, err)
}

// setAside copies the file as it is to a name that says that it is damaged, and
// that no other file has.
func (ed *Editor) setAside() (name string, err error) {
	data, err := readPlain(ed.store.disk, ed.Path)
	if err != nil {
		return "", err
	}
	for n := 1; ; n++ {
		if name = ed.Path + asideEnding; n > 1 {
			name += fmt.Sprint("-", n)
		}
		switch there, err := ed.store.ReadBeside(name); {
		case err == nil && bytes.Equal(there, data): // of a time before that came to no end
			if err := ed.store.disk.SyncDir(filepath.Dir(name)); err != nil {
				return "", unreadable(name, err, "cannot be kept: %s", reason(err))
			}
			return name, nil
		case err == nil:
			continue
		case !errors.Is(err, fs.ErrNotExist):
			return "", err
		}
		if _, err := ed.store.replace(name, ed.tempPrefix(), data); err != nil {
			return "", unreadable(name, err, "cannot be written, the damaged file is as it was: %s", reason(err))
		}
		return name, nil
	}
}
