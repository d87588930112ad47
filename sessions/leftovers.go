package sessions

import (
	"errors"
	"io/fs"
	"path/filepath"
	"strings"
)

// tryPrefix begins the name of the file with which Ready tries the folder.
const tryPrefix = ".try."

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
		if strings.HasPrefix(e.Name(), tryPrefix) && strings.HasSuffix(e.Name(), tempEnding) {
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
	st.clearLastGood()
	return nil
}

// clearLastGood removes the last good copies that are of no more use: of files
// that are no longer there, and old ones of files that are whole. Nobody holds
// these files.
func (st *Store) clearLastGood() {
	all, _ := st.disk.ReadDir(st.LastGoodPath()) // else the next start tries again
	for _, e := range all {
		name := filepath.Join(st.LastGoodPath(), e.Name())
		path, temp := BelongsTo(name), strings.HasSuffix(name, tempEnding)
		if path == "" || !temp && !st.outlived(name, path) {
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
	info, err := st.disk.Stat(name)
	return err == nil && st.now().Sub(info.ModTime()) > lastGoodFor && st.LastGood(path) == nil
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
		of, yes = name, strings.HasSuffix(name, ending)
	case aside:
		of, yes = before, strings.HasSuffix(before, ending)
	}
	if !yes {
		return ""
	}
	return filepath.Join(dir, of)
}

// tempOf is the name of the file for which the temporary file name was written.
func tempOf(name string) (of string, ok bool) {
	inner, ends := strings.CutSuffix(name, tempEnding)
	inner, hidden := strings.CutPrefix(inner, ".")
	last := strings.LastIndexByte(inner, '.')
	if !ends || !hidden || last < 0 || !strings.HasSuffix(inner[:last], ending) {
		return "", false
	}
	return inner[:last], true
}
