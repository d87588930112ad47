package sessions

import (
	"io/fs"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"
)

// A Seen is a file of the folder as the operating system tells it, unopened.
// Two Seen of one path that are equal are the same bytes, unless the file was
// written again within the grain of the clock (Settled).
type Seen struct {
	Path    string
	Size    int64
	Changed time.Time // of its bytes
	Inode   uint64    // and Touched: 0 where the platform does not tell them
	Touched int64     // ns since 1970 of the last change of any kind, which no program can set back
}

// grain is the coarsest step in which a file system tells times (FAT).
const grain = 2 * time.Second

// Settled says whether a change of the file after the moment at, on the same
// file system's clock, would show in its Seen.
func (s Seen) Settled(at time.Time) bool {
	latest := s.Changed
	if touched := time.Unix(0, s.Touched); touched.After(latest) {
		latest = touched
	}
	return latest.Add(grain).Before(at)
}

// Folder lists the files of the folder that should be sessions, by name. One
// that cannot even be looked at has a Path and nothing else. aside are the
// folders in it, by name, which hold files that may be sessions: nobody looks
// into them.
func (st *Store) Folder() (files []Seen, aside []string, err error) {
	paths, folders, err := st.inside()
	if err != nil {
		return nil, nil, err
	}
	for _, name := range folders {
		in, err := st.disk.ReadDir(filepath.Join(st.dir, name))
		if err == nil && slices.ContainsFunc(in, func(e fs.DirEntry) bool { return strings.HasSuffix(e.Name(), Ending) }) {
			aside = append(aside, name)
		}
	}
	all := make([]Seen, len(paths))
	for i, path := range paths {
		all[i].Path = path
	}
	var looking sync.WaitGroup
	for part := range slices.Chunk(all, max(1, (len(all)+lookers-1)/lookers)) {
		looking.Go(func() {
			for i := range part {
				st.look(&part[i])
			}
		})
	}
	looking.Wait()
	return all, aside, nil
}

// lookers is how many files are looked at together: nearly all of it is the
// operating system's time.
const lookers = 4

func (st *Store) look(s *Seen) {
	if info, err := st.disk.Stat(s.Path); err == nil {
		s.Size, s.Changed = info.Size(), info.ModTime().UTC()
		s.Inode, s.Touched = identity(info)
	}
}

// SchoolPath is the file of the school's defaults.
func (st *Store) SchoolPath() string { return filepath.Join(st.dir, schoolName) }
