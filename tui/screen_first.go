package tui

import (
	"fmt"
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// firstScreen is what was found for the first screen.
type firstScreen struct {
	unfinished []sessions.Session
	earlier    int
	problem    string
}

func (m *Model) firstKey(msg tea.KeyMsg) tea.Cmd {
	m.first.problem = ""
	switch msg.String() {
	case "enter":
		return m.look(m.opts.Demo, forDemo)
	case "1", "n":
		s := m.opts.Store.New(m.now)
		return m.open(s, m.opts.Store, nil)
	case "2", "r":
		if len(m.first.unfinished) == 1 {
			return m.openFrom(m.first.unfinished[0], m.opts.Store)
		}
		return m.look(m.opts.Store, forResume)
	case "3", "e":
		return m.look(m.opts.Store, forFollow)
	case "esc", "q":
		return m.leave()
	}
	return nil
}

// found routes the sessions of a folder to who asked for them.
func (m *Model) found(msg foundMsg) tea.Cmd {
	switch msg.why {
	case forFirst:
		m.first = firstScreen{unfinished: unfinished(msg.list), earlier: len(msg.list)}
		if msg.err != nil {
			m.first.problem = msg.err.Error()
		}
	case forDemo:
		if msg.err != nil || len(msg.list) == 0 {
			m.first.problem = fmt.Sprintf("the demo could not be read: %v", msg.err)
			return nil
		}
		return m.open(msg.list[len(msg.list)-1], m.opts.Demo, nil)
	case forResume:
		return m.choose("Go on with which session?", unfinished(msg.list), func(m *Model, s sessions.Session) tea.Cmd { return m.openFrom(s, m.opts.Store) })
	case forFollow:
		return m.choose("Start from which earlier session?", msg.list, (*Model).follow)
	}
	return nil
}

// openFrom resumes a session, with the one that it follows beside it.
func (m *Model) openFrom(s sessions.Session, in Store) tea.Cmd {
	var earlier *sessions.Session
	if s.Follows != "" {
		if list, err := in.List(); err == nil {
			for _, e := range list {
				if e.ID == s.Follows {
					earlier = &e
				}
			}
		}
	}
	return m.open(s, in, earlier)
}

// follow starts a session that takes people, tape, rope and kit from an earlier
// one; its readings stand beside the fields and are taken anew or kept.
func (m *Model) follow(e sessions.Session) tea.Cmd {
	s := m.opts.Store.New(m.now)
	s.Purpose, s.Follows = sessions.ReTune, e.ID
	s.Climber, s.Instructor, s.Place, s.Unit = e.Climber, e.Instructor, e.Place, e.Unit
	s.KitLabel, s.Tied = e.KitLabel, e.Tied
	s.Fit.Tape, s.Fit.Sex, s.Fit.Rope, s.Fit.Kit, s.Fit.Posture = e.Fit.Tape, e.Fit.Sex, e.Fit.Rope, e.Fit.Kit, e.Fit.Posture
	return m.open(s, m.opts.Store, &e)
}

func unfinished(list []sessions.Session) []sessions.Session {
	var out []sessions.Session
	for _, s := range list {
		if s.Finished.IsZero() {
			out = append(out, s)
		}
	}
	return out
}

func (m *Model) firstLines(width int) []string {
	t := m.theme
	lines := []string{t.title.Render("hangtape") + " fits a climber's two-leg ascent kit"}
	lines = append(lines, "by tape, at the base of the tree.", "")
	keys := [][2]string{{"Enter", "look around with the demo climber"}, {"1", "new fitting"}}
	if n := len(m.first.unfinished); n > 0 {
		s := m.first.unfinished[0]
		what := fmt.Sprintf("resume %s, %s", nameOr(s.Climber, "no name yet"), s.Started.Local().Format("2 Jan 15:04"))
		if n > 1 {
			what = fmt.Sprintf("resume one of %d unfinished", n)
		}
		keys = append(keys, [2]string{"2", what})
	} else {
		keys = append(keys, [2]string{"2", "resume (nothing unfinished)"})
	}
	keys = append(keys, [2]string{"3", "re-tune or re-check an earlier fitting"}, [2]string{"Esc", "leave"})
	for _, k := range keys {
		lines = append(lines, t.key.Render(pad(k[0], 7))+cut(k[1], width-7))
	}
	lines = append(lines, "")
	lines = append(lines, wrap("Files: "+clean(m.opts.Store.Folder()), width)...)
	lines = append(lines, "")
	if m.first.problem != "" {
		lines = append(lines, wrap(clean(m.first.problem), width)...)
	}
	return append(lines, wrap(rules.ShortCaution, width)...)
}

func nameOr(name, other string) string {
	if strings.TrimSpace(name) == "" {
		return other
	}
	return clean(name)
}

// hangs is how long somebody has been hanging, and whether a break is due.
func (m *Model) hanging() (d time.Duration, due bool) {
	if m.store == nil || !m.flow.Hanging() {
		return 0, false
	}
	h := m.flow.Session.Fit.Hangs
	d = max(0, m.now.Sub(h[len(h)-1].Started))
	return d, d >= m.opts.breakAfter()
}
