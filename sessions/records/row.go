package records

import (
	"path/filepath"
	"strings"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// A row is an entry as the cache keeps it, with what its file looked like.
type row struct {
	Name    string
	Size    int64
	Changed moment
	Inode   uint64
	Touched int64

	Err string

	ID, Impossible           string // no ID where it is the file's name
	Follows                  string
	Purpose, Outcome, Signed word
	Climber, Place           word
	Instructor, Kit          word
	Started, Finished        moment
	Verdicts                 []initial // by check; none where there is no verdict
	Troubled                 []byte    // pieces
	SignedBy                 word
	SignedAt                 moment
	Differs, Moved           bool
	Today                    word
	Inspected                moment
	Tied                     []tied // by piece, as far as anything is told
}

type tied struct {
	On moment
	By word
}

// A word is a text that many rows have in common, by its place among all.
type word int

// words are the texts of a cache; the first is the empty one.
type words struct {
	all  []string
	seen map[string]word
}

func newWords() *words { return &words{[]string{""}, map[string]word{"": 0}} }

func (w *words) of(s string) word {
	n, there := w.seen[s]
	if !there {
		n = word(len(w.all))
		w.all = append(w.all, s)
		w.seen[s] = n
	}
	return n
}

// A moment is a time in ns since 1970, moved by one so that 0 is none.
type moment int64

func momentOf(t time.Time) moment {
	if t.IsZero() {
		return 0
	}
	return moment(t.UnixNano() + 1)
}

func (m moment) time() time.Time {
	if m == 0 {
		return time.Time{}
	}
	return time.Unix(0, int64(m)-1).UTC()
}

func rowOf(f sessions.Seen, e *Entry, w *words) row {
	r := row{Name: filepath.Base(f.Path), Size: f.Size, Changed: momentOf(f.Changed), Inode: f.Inode, Touched: f.Touched}
	if e.Err != nil {
		r.Err = e.Err.Error()
		return r
	}
	if r.ID = e.ID; r.ID+sessions.Ending == r.Name {
		r.ID = ""
	}
	r.Purpose, r.Follows = w.of(string(e.Purpose)), e.Follows
	r.Climber, r.Place, r.Instructor, r.Kit = w.of(e.Climber), w.of(e.Place), w.of(e.Instructor), w.of(e.Kit)
	r.Started, r.Finished, r.Inspected = momentOf(e.Started), momentOf(e.Finished), momentOf(e.Inspected)
	r.Outcome, r.Impossible, r.Differs = w.of(string(e.Outcome)), e.Impossible, e.Differs
	r.Today, r.Moved = w.of(string(e.Today)), e.Moved
	r.Signed, r.SignedBy, r.SignedAt = w.of(string(e.Signed)), w.of(e.SignedBy), momentOf(e.SignedAt)
	if e.Outcome != "" {
		r.Verdicts = e.verdicts[:]
	}
	for p, t := range e.Tied {
		if e.troubled[p] {
			r.Troubled = append(r.Troubled, byte(p))
		}
		if t != (sessions.Tied{}) {
			r.Tied = append(r.Tied, make([]tied, p+1-len(r.Tied))...)
			r.Tied[p] = tied{momentOf(t.On), w.of(t.By)}
		}
	}
	return r
}

// seen is what the file looked like, at path.
func (r *row) seen(path string) sessions.Seen {
	return sessions.Seen{Path: path, Size: r.Size, Changed: r.Changed.time(), Inode: r.Inode, Touched: r.Touched}
}

// within says whether r is a row of a cache of that many words.
func (r *row) within(words int) bool {
	ok := len(r.Verdicts) <= int(rules.NumChecks) && len(r.Tied) <= int(fit.NumPieces)
	for _, w := range []word{r.Purpose, r.Outcome, r.Today, r.Signed, r.Climber, r.Place, r.Instructor, r.Kit, r.SignedBy} {
		ok = ok && w >= 0 && int(w) < words
	}
	for _, t := range r.Tied {
		ok = ok && t.By >= 0 && int(t.By) < words
	}
	for _, p := range r.Troubled {
		ok = ok && int(p) < int(fit.NumPieces)
	}
	return ok
}

// entry is what was made of the file at path; all is the texts of its words.
func (r *row) entry(path string, all []string) *Entry {
	if r.Err != "" {
		return &Entry{Path: path, Err: problem(r.Err)}
	}
	e := &Entry{
		Path: path, ID: r.ID, Purpose: sessions.Purpose(all[r.Purpose]), Started: r.Started.time(), Finished: r.Finished.time(),
		Climber: all[r.Climber], Place: all[r.Place], Instructor: all[r.Instructor], Kit: all[r.Kit], Follows: r.Follows,
		Signed: rules.Verdict(all[r.Signed]), SignedBy: all[r.SignedBy], SignedAt: r.SignedAt.time(), Differs: r.Differs,
		Today: rules.Verdict(all[r.Today]), Moved: r.Moved,
		Inspected: r.Inspected.time(),
	}
	if e.ID == "" {
		e.ID = strings.TrimSuffix(r.Name, sessions.Ending)
	}
	e.Outcome, e.Impossible = rules.Verdict(all[r.Outcome]), r.Impossible
	copy(e.verdicts[:], r.Verdicts)
	for _, p := range r.Troubled {
		e.troubled[p] = true
	}
	for p, t := range r.Tied {
		e.Tied[p] = sessions.Tied{On: t.On.time(), By: all[t.By]}
	}
	return e
}

// A problem is why a file is no session, in words that were kept.
type problem string

func (p problem) Error() string { return string(p) }
