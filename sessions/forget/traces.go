// Package forget removes a climber from a folder of sessions: the sessions, what
// leads to them, and what was made of them.
//
//	t, err := forget.Look(store, "demo climber A") // nothing is changed yet
//	done := t.Remove()                             // what is gone, what is not, and why
package forget

import (
	"bytes"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	encoding "golang.org/x/text/encoding/unicode"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/records"
)

// Traces are what a folder holds of one climber.
type Traces struct {
	Climber  string   // as it was asked for
	Sessions []string // files of the climber's own sessions
	Links    []string // files of others that lead to these, or say that the climber tied a piece
	Leftover []string // what an editor that was killed left, where it is about the climber
	Copies   []string // last good copies of other files that name the climber or lead to the sessions
	Named    []string // files that name the climber and are not the climber's, or cannot be read: never touched

	store *sessions.Store
	ids   map[string]bool // of Sessions
}

// Look looks for the traces of a climber, whose name has to be right but for
// letter case and blanks. The error is that of the folder itself.
func Look(st *sessions.Store, climber string) (*Traces, error) {
	list, err := records.Scan(st)
	if err != nil {
		return nil, err
	}
	t := &Traces{Climber: climber, store: st, ids: map[string]bool{}}
	own := map[string]bool{}
	for _, e := range list.Sessions() {
		if t.is(e.Climber) {
			t.Sessions, t.ids[e.ID], own[e.Path] = append(t.Sessions, e.Path), true, true
		}
	}
	files, err := st.Disk().ReadDir(st.Dir())
	if err != nil {
		return nil, fmt.Errorf("cannot be read: %w", err)
	}
	for _, f := range files {
		switch path := filepath.Join(st.Dir(), f.Name()); {
		case path == records.CachePath(st) || path == st.LocksPath(): // the program's own
		case path == st.LastGoodPath():
			t.lookAtCopies(path, own)
		case f.IsDir():
			t.lookInto(path, mostDeep)
		case own[path], own[sessions.BelongsTo(path)] && !sessions.IsTemp(path): // or set aside of one
		default:
			t.look(path)
		}
	}
	slices.Sort(t.Sessions)
	return t, nil
}

// mostDeep is how many folders in one another are looked into.
const mostDeep = 8

// lookInto looks for the climber in a folder of the folder, which is never
// touched.
func (t *Traces) lookInto(dir string, deep int) {
	files, err := t.store.Disk().ReadDir(dir)
	if err != nil || deep == 0 {
		t.Named = append(t.Named, dir) // nobody knows
		return
	}
	for _, f := range files {
		path := filepath.Join(dir, f.Name())
		if f.IsDir() {
			t.lookInto(path, deep-1)
		} else if _, found := t.in(path); found {
			t.Named = append(t.Named, path)
		}
	}
}

// lookAtCopies looks for the climber in the last good copies; those of the
// climber's own sessions go with these.
func (t *Traces) lookAtCopies(dir string, own map[string]bool) {
	files, err := t.store.Disk().ReadDir(dir)
	if err != nil {
		t.Named = append(t.Named, dir) // nobody knows
		return
	}
	for _, f := range files {
		path := filepath.Join(dir, f.Name())
		switch _, found := t.in(path); {
		case own[sessions.BelongsTo(path)] || !found:
		case sessions.BelongsTo(path) == "":
			t.Named = append(t.Named, path)
		default:
			t.Copies = append(t.Copies, path)
		}
	}
}

// is says whether a name is the climber's.
func (t *Traces) is(name string) bool {
	return records.Fold(name) == records.Fold(t.Climber) && records.Fold(name) != ""
}

// mostBytes is how large a file may be that is looked into: a session has a few
// kilobytes, and no file of this program has more.
const mostBytes = 16 << 20

// in reads a file and says whether it names the climber or leads there; where it
// cannot be read nobody knows.
func (t *Traces) in(path string) (data []byte, found bool) {
	info, err := t.store.Disk().Stat(path)
	if err != nil || !info.Mode().IsRegular() || info.Size() > mostBytes {
		return nil, false
	}
	if data, err = t.store.ReadBeside(path); err != nil {
		return nil, true
	}
	text := plain(data)
	return data, t.names(text) || t.leads(text)
}

// plain is a text as UTF-8, also where some editor saved it as UTF-16.
func plain(data []byte) []byte {
	text, err := encoding.UTF16(encoding.LittleEndian, encoding.ExpectBOM).NewDecoder().Bytes(data)
	if err != nil { // without the mark at its start
		return data
	}
	return text
}

// look puts a file that is no session of the climber's where it belongs.
func (t *Traces) look(path string) {
	data, found := t.in(path)
	if !found {
		return
	}
	s, err := sessions.Decode(path, data)
	switch {
	case sessions.IsTemp(path) && sessions.BelongsTo(path) != "":
		t.Leftover = append(t.Leftover, path)
	case err == nil && strings.HasSuffix(path, sessions.Ending) && t.unlink(s.Clone()):
		t.Links = append(t.Links, path)
		if t.unlink(s); t.names(sessions.Encode(s)) {
			t.Named = append(t.Named, path)
		}
	default:
		t.Named = append(t.Named, path)
	}
}

// names says whether a text has the climber's name in it, as words of its own.
func (t *Traces) names(data []byte) bool {
	text, name := []byte(records.Fold(string(data))), []byte(records.Fold(t.Climber))
	for {
		at := bytes.Index(text, name)
		if at < 0 || len(name) == 0 {
			return false
		}
		before, _ := utf8.DecodeLastRune(text[:at])
		after, _ := utf8.DecodeRune(text[at+len(name):])
		if !isWord(before) && !isWord(after) {
			return true
		}
		text = text[at+len(name):]
	}
}

func isWord(r rune) bool { return r != utf8.RuneError && (unicode.IsLetter(r) || unicode.IsDigit(r)) }

// leads says whether a text has the id of a session of the climber's in it.
func (t *Traces) leads(data []byte) bool {
	for id := range t.ids {
		if bytes.Contains(data, []byte(id)) {
			return true
		}
	}
	return false
}

// unlink takes out of another's session what leads to the climber, and says
// whether there was anything.
func (t *Traces) unlink(s *sessions.Session) (found bool) {
	if t.ids[s.Follows] {
		s.Follows, found = "", true
	}
	for i := range s.Fit.Kept {
		if k := &s.Fit.Kept[i]; t.ids[k.Session] {
			k.Session, found = "", true
		}
	}
	for p := range fit.NumPieces {
		if t.is(s.Tied[p].By) {
			s.Tied[p].By, found = "", true
		}
	}
	return found
}

// None says that nothing was found that could be removed.
func (t *Traces) None() bool { return len(t.Sessions)+len(t.Links)+len(t.Leftover)+len(t.Copies) == 0 }
