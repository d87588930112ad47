package sessions

import (
	"errors"
	"io/fs"
	"path/filepath"
	"strings"
)

const (
	tempEnding = ".tmp"  // ends the names of all temporary files
	tryPrefix  = ".try." // begins that of the file with which Ready tries the folder
)

// clearLeftovers removes the temporary files of the folder that no running
// program can still need: those of the tries, and those of files that nobody
// holds. What cannot be removed is left to the next start.
func (st *Store) clearLeftovers() error {
	all, err := st.disk.ReadDir(st.dir)
	if err != nil {
		return unreadable(st.dir, err, "cannot be read: %s", reason(err))
	}
	for _, e := range all {
		name := filepath.Join(st.dir, e.Name())
		if strings.HasPrefix(e.Name(), tryPrefix) && IsTemp(e.Name()) {
			_ = st.disk.Remove(name)
			continue
		}
		of, ok := tempOf(e.Name())
		if !ok {
			continue
		}
		if lock, _, err := st.takeLock(filepath.Join(st.dir, of)); err == nil && lock != nil {
			_ = st.disk.Remove(name)
			_ = lock.Close()
		}
	}
	st.clearLastGood(all)
	return nil
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
		if strings.HasPrefix(e.Name(), ed.tempPrefix()) && IsTemp(e.Name()) {
			_ = ed.store.disk.Remove(filepath.Join(dir, e.Name())) // the next editor tries again
		}
	}
}

// clearLastGood removes the last good copies that are of no more use: of files
// that are no longer in the folder, and old ones of files that are whole. Nobody
// holds these files.
func (st *Store) clearLastGood(folder []fs.DirEntry) {
	there := map[string]bool{}
	for _, e := range folder {
		there[e.Name()] = true
	}
	all, _ := st.disk.ReadDir(st.LastGoodPath()) // else the next start tries again
	for _, e := range all {
		name := filepath.Join(st.LastGoodPath(), e.Name())
		path, temp := BelongsTo(name), IsTemp(name)
		if path == "" || !temp && there[filepath.Base(path)] && !st.isOld(name) { // most of them
			continue
		}
		ed := &Editor{Path: path, store: st}
		var err error
		if ed.lock, _, err = st.takeLock(path); err != nil || ed.lock == nil {
			continue
		}
		if temp || st.outlived(name, path) {
			_ = st.disk.Remove(name)
		}
		_ = ed.unlock()
	}
}

// outlived says that the last good copy name of the file at path is of no more use.
func (st *Store) outlived(name, path string) bool {
	if _, err := st.disk.Stat(path); err != nil {
		return errors.Is(err, fs.ErrNotExist)
	}
	if !st.isOld(name) {
		return false
	}
	good, err := lastGood(st.disk, path)
	return err == nil && good == nil // who cannot look does not know that the file is whole
}

// isOld says that the last good copy name was made long ago.
func (st *Store) isOld(name string) bool {
	info, err := st.disk.Stat(name)
	return err == nil && st.now().Sub(info.ModTime()) > lastGoodFor
}

// BelongsTo is the session's file that the one at path was made beside: as a
// temporary file, as its last good copy, or set aside as damaged; "" for any other.
func BelongsTo(path string) string {
	dir, name := filepath.Dir(path), filepath.Base(path)
	inCopies := filepath.Base(dir) == lastGoodDir
	if inCopies {
		dir = filepath.Dir(dir)
	}
	of, yes := tempOf(name)
	switch before, _, aside := strings.Cut(name, asideEnding); {
	case yes:
	case inCopies:
		of, yes = name, strings.HasSuffix(name, Ending)
	case aside:
		of, yes = before, strings.HasSuffix(before, Ending)
	}
	if !yes {
		return ""
	}
	return filepath.Join(dir, of)
}

// IsTemp says whether path names a temporary file, of which a program that was
// killed may leave some.
func IsTemp(path string) bool { return strings.HasSuffix(path, tempEnding) }

// tempOf is the name of the file for which the temporary file name was written.
func tempOf(name string) (of string, ok bool) {
	inner, ends := strings.CutSuffix(name, tempEnding)
	inner, hidden := strings.CutPrefix(inner, ".")
	last := strings.LastIndexByte(inner, '.')
	if !ends || !hidden || last < 0 || !strings.HasSuffix(inner[:last], Ending) {
		return "", false
	}
	return inner[:last], true
}

// tempPrefix begins the names of the temporary files of this session; tempOf is the
// way back.
func (ed *Editor) tempPrefix() string { return "." + filepath.Base(ed.Path) + "." }
