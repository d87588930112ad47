package sessions

import (
	"cmp"
	"path/filepath"
	"slices"
)

// An Entry is one file of the folder: a session, or why it is none.
type Entry struct {
	Path string
	File *File
	Err  error
}

// List reads every session of the folder, the newest first, then the files that
// are no sessions, with a school file that is none. The error is that of the folder itself.
func (st *Store) List() ([]Entry, error) {
	paths, err := st.paths()
	if err != nil {
		return nil, err
	}
	entries := make([]Entry, 0, len(paths)+1)
	school, err := st.School()
	if err != nil {
		entries = append(entries, Entry{Path: filepath.Join(st.dir, schoolName), Err: err})
		school = DefaultSchool()
	}
	for _, path := range paths {
		f, err := st.LoadFor(path, school)
		entries = append(entries, Entry{path, f, err})
	}
	slices.SortStableFunc(entries, newestFirst)
	return entries, nil
}

func newestFirst(a, b Entry) int {
	switch {
	case a.Err != nil && b.Err != nil:
		return cmp.Compare(a.Path, b.Path)
	case a.Err != nil:
		return 1
	case b.Err != nil:
		return -1
	}
	return cmp.Or(b.File.Session.Started.Compare(a.File.Session.Started), cmp.Compare(b.File.Session.ID, a.File.Session.ID))
}

// paths are the files of the folder that should be sessions.
func (st *Store) paths() ([]string, error) {
	paths, _, err := st.inside()
	return paths, err
}

// Unfinished lists the sessions without an end, the newest first.
func (st *Store) Unfinished() ([]Entry, error) {
	all, err := st.List()
	return slices.DeleteFunc(all, func(e Entry) bool { return e.Err != nil || !e.File.Session.Finished.IsZero() }), err
}
