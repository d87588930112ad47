package sessions

import (
	"bytes"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"
)

// A fileFound is a file of the folder: a session, or why it is none.
type fileFound struct {
	path string
	file *File
	err  error
}

// LoadID reads the session with that id, whatever its file is called. Where
// several files say that they are it, nothing is chosen and all are named.
//
// The name is a hint: read first are the file that is named for the id and those
// that are named for none, such as copies and what a sync client set aside; the
// others only where the session is in none of these.
func (st *Store) LoadID(id string) (*File, error) {
	if !ValidID(id) {
		return nil, fmt.Errorf("%s is no id of a session; accepted are 26 capital letters and digits", show(id))
	}
	school, err := st.School()
	if err != nil {
		return nil, err
	}
	paths, _, err := st.inside()
	if err != nil {
		return nil, err
	}
	var likely, others []string
	for _, path := range paths {
		if name := strings.TrimSuffix(filepath.Base(path), Ending); name == id || !ValidID(name) {
			likely = append(likely, path)
		} else {
			others = append(others, path)
		}
	}
	found := st.withID(id, likely, school)
	if len(found) == 0 {
		found = st.withID(id, others, school)
	}
	switch len(found) {
	case 0:
		return nil, fmt.Errorf("no session %s in %s: %w", id, st.dir, fs.ErrNotExist)
	case 1:
		return found[0].file, found[0].err
	}
	var names []string
	for _, e := range found {
		names = append(names, e.path)
	}
	return nil, fmt.Errorf("session %s is in several files: %s; give the file in place of the id", id, strings.Join(names, ", "))
}

// withID are the files that say that they are the session id, or that are named
// for it and say nothing. Only what has the id somewhere in its text is decoded.
func (st *Store) withID(id string, paths []string, school *School) []fileFound {
	var found []fileFound
	for _, path := range paths {
		named := filepath.Base(path) == id+Ending
		data, err := readBytes(st.disk, path)
		if err == nil && !named && !bytes.Contains(data, []byte(id)) {
			continue
		}
		var f *File
		if err == nil {
			f, err = newFile(path, data)
		}
		switch {
		case err == nil && f.Session.ID == id:
			f.Session.Fit.RecheckDays = school.RecheckDays
			found = append(found, fileFound{path, f, nil})
		case err != nil && named:
			found = append(found, fileFound{path, nil, err})
		}
	}
	return found
}
