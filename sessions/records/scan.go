package records

import (
	"cmp"
	"fmt"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"example.com/hangtape/sessions"
)

// A List is the files of a folder in short: the sessions, the newest first, then
// the files that are none, by name. It must not be changed.
type List struct {
	Entries []*Entry
	Bad     int      // how many of them are no session
	Aside   []string // folders inside, by name, with files that may be sessions; none of them is listed
	School  *sessions.School

	foldOnce sync.Once
	folded   []folded // of Entries, for searching
}

// Sessions are the entries that are sessions.
func (l *List) Sessions() []*Entry { return l.Entries[:len(l.Entries)-l.Bad] }

// Scan lists the folder of st. A file that is no session stops nothing; a school
// file that is none is listed among the bad, and the general defaults hold in
// its place. The error is that of the folder itself.
func Scan(st *sessions.Store) (*List, error) {
	defer st.Listing()()
	l := &List{}
	var err error
	if l.School, err = st.School(); err != nil {
		l.School = sessions.DefaultSchool()
		l.Entries = append(l.Entries, &Entry{Path: st.SchoolPath(), Err: err})
	}
	all, aside, err := entriesOf(st, l.School)
	if err != nil {
		return nil, err
	}
	l.Aside = aside
	l.Entries = append(l.Entries, all...)
	for _, e := range l.Entries {
		if e.Err != nil {
			l.Bad++
			e.Good = st.LastGood(e.Path)
		}
	}
	slices.SortFunc(l.Entries, newestFirst)
	markSame(l.Sessions())
	return l, nil
}

// entriesOf takes from the cache what is still true and reads the rest; aside
// are the folders inside that may hold sessions.
func entriesOf(st *sessions.Store, school *sessions.School) (entries []*Entry, aside []string, err error) {
	of := madeBy(st, school)
	loading := make(chan *cached, 1)
	go func() { loading <- loadCache(st, of) }()
	files, aside, err := st.Folder()
	cache := <-loading
	if err != nil {
		return nil, nil, err
	}
	entries, missing := cache.entries(files)
	stale := len(files)-len(missing) < len(cache.Rows)
	if len(missing) == 0 && !stale {
		return entries, aside, nil
	}
	cw := openCache(st)
	readMissing(st, school, files, entries, missing)
	if cw != nil {
		cw.keep(of, files, entries, missing, stale)
	}
	return entries, aside, nil
}

// readMissing reads and judges the files without an entry, as many at a time as
// there are processors.
func readMissing(st *sessions.Store, school *sessions.School, files []sessions.Seen, entries []*Entry, missing []int) {
	var next atomic.Int64
	var working sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		working.Go(func() {
			for n := next.Add(1) - 1; n < int64(len(missing)); n = next.Add(1) - 1 {
				i := missing[n]
				entries[i] = readOne(st, school, files[i].Path)
			}
		})
	}
	working.Wait()
}

// readOne is what one file says. A fault of the program's own is that file's error,
// as it would be with check: it stops nothing either.
func readOne(st *sessions.Store, school *sessions.School, path string) (e *Entry) {
	defer func() {
		if recover() != nil {
			e = &Entry{Path: path, Err: fmt.Errorf("%s: reading or judging it is a fault of the program's own; hangtape check tells the place", path)}
		}
	}()
	f, err := st.LoadFor(path, school)
	if err != nil {
		return &Entry{Path: path, Err: err}
	}
	return entryOf(f, school)
}

func newestFirst(a, b *Entry) int {
	switch {
	case a.Err != nil && b.Err != nil:
		return cmp.Compare(a.Path, b.Path)
	case a.Err != nil:
		return 1
	case b.Err != nil:
		return -1
	}
	return cmp.Or(b.Started.Compare(a.Started), cmp.Compare(b.ID, a.ID), cmp.Compare(a.Path, b.Path))
}

// markSame tells every session whose id is in several files of all of them.
func markSame(all []*Entry) {
	byID := make(map[string]*Entry, len(all))
	var several []*Entry // the first file of each such id
	for _, e := range all {
		first, twice := byID[e.ID]
		if !twice {
			byID[e.ID] = e
			continue
		}
		if first.Same == nil {
			first.Same = []*Entry{first}
			several = append(several, first)
		}
		first.Same = append(first.Same, e)
	}
	for _, first := range several {
		for _, e := range first.Same {
			e.Same = first.Same
		}
	}
}
