package records

import (
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// Find lists the files that match q, in the order of the list.
func (l *List) Find(q Query) []*Entry {
	if len(q.terms) == 0 {
		return l.Entries
	}
	l.Ready()
	var found []*Entry
	for i := range l.folded {
		if l.folded[i].match(&q) {
			found = append(found, l.Entries[i])
		}
	}
	return found
}

// Ready takes the time of the first search: whoever types need not wait for it.
func (l *List) Ready() {
	l.foldOnce.Do(func() {
		names := map[string]string{} // most are there many times
		name := func(s string) string {
			known, ok := names[s]
			if !ok {
				known = Unaccented(s)
				names[s] = known
			}
			return known
		}
		l.folded = make([]folded, len(l.Entries))
		for i, e := range l.Entries {
			l.folded[i] = foldEntry(e, name)
		}
	})
}

// folded is an entry as it is searched.
type folded struct {
	climber, place, instructor, kit, purpose string
	date                                     string
	checks, pieces                           string // names, a line break before each
	is                                       string // states with a blank around each, as is verdict
	verdict                                  string
	anywhere                                 string // names and words that a word without a key may be any part of
}

// foldEntry folds e, its names by fold.
func foldEntry(e *Entry, fold func(string) string) folded {
	if e.Err != nil {
		return folded{is: " bad ", anywhere: Unaccented(filepath.Base(e.Path))}
	}
	f := folded{
		climber: fold(e.Climber), place: fold(e.Place), instructor: fold(e.Instructor), kit: fold(e.Kit),
		purpose: string(e.Purpose), is: " " + strings.Join(e.states(), " ") + " ", verdict: " " + string(e.Outcome) + " ",
	}
	if day := e.Day(); !day.IsZero() {
		f.date = day.Format(time.DateOnly)
	}
	var b strings.Builder
	for c := range rules.NumChecks {
		if v := e.Verdict(c); isTrouble(v) || v == rules.Unknown {
			b.WriteString("\n" + c.String())
		}
	}
	f.checks = b.String()
	b.Reset()
	for p := range fit.NumPieces {
		if e.troubled[p] {
			b.WriteString(pieceWords()[p])
		}
	}
	f.pieces = b.String()
	f.anywhere = strings.Join([]string{f.climber, f.place, f.instructor, f.kit, f.purpose, Unaccented(e.ID)}, "\n")
	return f
}

// pieceWords are the ways to write each piece, a line break before each.
var pieceWords = sync.OnceValue(func() (all [fit.NumPieces]string) {
	dashed := strings.NewReplacer(" ", "-", "_", "-")
	for p := range fit.NumPieces {
		for _, name := range []string{rules.PieceName(p), p.Key()} {
			all[p] += "\n" + name + "\n" + dashed.Replace(name)
		}
	}
	return all
})

// pieceNames are all of them.
func pieceNames() []string {
	var names []string
	for _, words := range pieceWords() {
		for name := range strings.SplitSeq(words[1:], "\n") {
			if !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	return names
}

// states are the words of the key is.
func (e *Entry) states() []string {
	words := []string{"finished", "signed"}
	if e.Finished.IsZero() {
		words[0] = "unfinished"
	}
	if e.Signed == "" {
		words[1] = "unsigned"
	}
	if e.Differs {
		words = append(words, "differs")
	}
	if e.Moved {
		words = append(words, "moved")
	}
	if e.Same != nil {
		words = append(words, "twice")
	}
	return words
}

func (f *folded) match(q *Query) bool {
	for i := range q.terms {
		if !f.has(&q.terms[i]) {
			return false
		}
	}
	return true
}

func (f *folded) has(t *term) bool {
	switch t.key {
	case "climber":
		return strings.Contains(f.climber, t.word)
	case "place":
		return strings.Contains(f.place, t.word)
	case "instructor":
		return strings.Contains(f.instructor, t.word)
	case "kit":
		return strings.Contains(f.kit, t.word)
	case "purpose":
		return strings.Contains(f.purpose, t.word)
	case "check":
		return strings.Contains(f.checks, t.word)
	case "piece":
		return strings.Contains(f.pieces, t.word)
	case "date":
		return inDates(f.date, t.word)
	case "verdict":
		return strings.Contains(f.verdict, t.whole)
	case "is":
		return strings.Contains(f.is, t.whole)
	}
	return strings.Contains(f.anywhere, t.word) || strings.Contains(f.checks, t.begins) || strings.Contains(f.pieces, t.begins) ||
		f.date != "" && strings.HasPrefix(f.date, t.word) || strings.Contains(f.verdict, t.whole) || strings.Contains(f.is, t.whole)
}

// inDates says whether a day starts as told, or lies in a range of such starts,
// whose ends count and may be left out.
func inDates(day, told string) bool {
	from, to, ranged := strings.Cut(told, "..")
	switch {
	case day == "":
		return false
	case !ranged:
		return strings.HasPrefix(day, told)
	}
	return day >= from && (to == "" || day <= to || strings.HasPrefix(day, to))
}
