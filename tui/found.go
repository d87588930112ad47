package tui

import (
	"fmt"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/records"
	"example.com/hangtape/tui/flow"
)

// purpose says what a list of sessions was looked up for.
type purpose int

const (
	forFirst    purpose = iota // what the first screen offers
	forResume                  // which unfinished one to go on with
	forFollow                  // which earlier one to start from
	forStudents                // who else is there
)

// foundMsg is for whoever asked: the sessions of the folder, the newest first.
type foundMsg struct {
	why  purpose
	in   *records.List // all of the folder
	list []found
	bad  int // files that are no session
	err  error
}

// unread says how many files of the folder are no session and where to read on;
// empty where all are.
func (f foundMsg) unread() string {
	if f.bad == 0 {
		return ""
	}
	return fmt.Sprintf("%s of the folder cannot be read as a session; hangtape list is:bad tells why, and what to do", rules.Count(f.bad, "file", "files"))
}

// A found is one session of the folder in short; of a file that is damaged, what
// its last good copy tells.
type found struct {
	*records.Entry
	said string // how a re-check came out, of the latest ones
}

func (f found) begun() time.Time {
	if f.Good != nil {
		return f.Good.Session.Started
	}
	return f.Started
}

func (f found) who(other string) string {
	if f.Good != nil {
		return nameOr(f.Good.Session.Climber, other)
	}
	return nameOr(f.Climber, other)
}

// saidOf is of how many re-checks a list tells how they came out: more than the
// largest window has lines.
const saidOf = 60

func (m *Model) look(why purpose) tea.Cmd {
	store := m.opts.Store
	return func() tea.Msg { return lookFor(why, store) }
}

// lookFor reads the folder in short, for why.
func lookFor(why purpose, store *sessions.Store) foundMsg {
	list, err := records.Scan(store)
	if err != nil {
		return foundMsg{why: why, err: err}
	}
	msg := foundMsg{why: why, in: list, bad: list.Bad}
	said := 0
	for _, e := range list.Sessions() {
		if why != forFollow && !e.Finished.IsZero() {
			continue
		}
		one := found{Entry: e}
		if e.Purpose == sessions.ReCheck && said < saidOf {
			said++
			if f, err := store.Load(e.Path); err == nil {
				one.said = flow.Remembered(f.Session)
			}
		}
		msg.list = append(msg.list, one)
	}
	if why == forFirst || why == forResume {
		msg.list = append(damagedOf(list), msg.list...)
	}
	return msg
}

// damagedOf are the files of unfinished sessions that are damaged and have a last
// good copy.
func damagedOf(list *records.List) (all []found) {
	for _, e := range list.Entries[len(list.Sessions()):] {
		if e.Good != nil && e.Good.Session.Finished.IsZero() {
			all = append(all, found{Entry: e})
		}
	}
	return all
}

// why is why the session was held, and how a re-check came out.
func (f found) why() string {
	if f.Good != nil {
		return "damaged; there is a last good copy"
	}
	if f.said != "" {
		return fmt.Sprintf("%s: %s", f.Purpose.Word(), clean(f.said))
	}
	return f.Purpose.Word()
}

// aroundThen is how long before a session another one may have begun that has
// its kit when it begins.
const aroundThen = 48 * time.Hour

// onTheKit are the sessions of the folder that may have set the kit of s
// otherwise since: the one that its lengths are kept from, and those on a kit of
// that name that were not over long before.
func onTheKit(s *sessions.Session, store *sessions.Store) []*sessions.Session {
	list, err := records.Scan(store)
	if err != nil {
		return nil // the next saving says what is wrong with the folder
	}
	var out []*sessions.Session
	for _, e := range list.Sessions() {
		from := len(s.Fit.Kept) > 0 && s.Fit.Kept[0].Session == e.ID
		later := e.Started.After(s.Started.Add(-aroundThen))
		if !from && (!later || records.Fold(e.Kit) != records.Fold(s.KitLabel)) {
			continue
		}
		if f, err := store.Load(e.Path); err == nil {
			out = append(out, f.Session)
		}
	}
	return out
}
