package sessions

import (
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
	return nil
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
