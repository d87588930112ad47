package tui

import (
	"path/filepath"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/records"
)

// damaged is a file that was damaged outside the program, with its last good copy.
type damaged struct {
	path string
	good *sessions.LastGood
	then afterDamage
}

// afterDamage is what is gone on with.
type afterDamage int

const (
	toResume afterDamage = iota // the session
	toPast                      // the past fittings
)

// damagedScreen offers the last good copy; then it says what was done.
type damagedScreen struct {
	damaged
	from    screenID
	taking  bool
	aside   string // where the damaged file is kept once the copy was taken
	problem string
}

// takenOverMsg is for the screen: a last good copy was taken, or why not.
type takenOverMsg struct {
	aside string
	err   error
}

func (m *Model) showDamaged(d *damaged) {
	m.damaged = damagedScreen{damaged: *d, from: m.screen}
	m.screen, m.scroll = onDamaged, 0
}

func (d *damagedScreen) takenOver(msg takenOverMsg) {
	d.taking = false
	if msg.err != nil {
		d.problem = "Not taken: " + withoutFile(msg.err)
		return
	}
	d.aside = msg.aside
}

// take puts the last good copy in the place of the damaged file.
func (d damaged) take(store *sessions.Store) tea.Cmd {
	return func() tea.Msg {
		aside, err := store.TakeLastGood(d.path)
		return takenOverMsg{aside, err}
	}
}

func (m *Model) damagedKey(msg tea.KeyMsg) tea.Cmd {
	d := &m.damaged
	if d.taking {
		return nil
	}
	d.problem = ""
	key := msg.String()
	switch id := keyOf(msg, false); {
	case id == keySkip:
		m.scroll += m.page
	case id == keyPageUp:
		m.scroll -= m.page
	case m.wantsDown(msg):
		return m.getDown()
	case d.aside != "" && d.then == toPast && (id == keyEnter || id == keyBack):
		return m.openPast()
	case d.aside != "" && id == keyEnter:
		return m.goOn(d.path)
	case id == keyBack:
		m.screen = d.from
	case d.aside != "":
	case key == "1":
		d.taking = true
		return d.take(m.opts.Store)
	case key == "2" && d.mayGoOn():
		return m.goOn(d.path)
	}
	return nil
}

// mayGoOn says that the file can be gone on with as it is: it was cut, and still
// is a session.
func (d damaged) mayGoOn() bool { return d.good.Damage == nil && d.then == toResume }

func (m *Model) damagedLines(width int) []string {
	d := &m.damaged
	title, acts := d.says(), d.acts()
	if d.aside != "" {
		title, acts = d.saysTaken(), nil
	}
	lines := []string{m.theme.title.Render(title[0])}
	for _, text := range title[1:] {
		lines = append(lines, m.theme.wrap(clean(text), width)...)
	}
	lines = append(lines, "")
	for i, act := range acts {
		lines = append(lines, m.numbered(i+1, act, width)...)
	}
	if d.problem != "" {
		lines = append(lines, "")
		for _, l := range m.theme.wrap(clean(d.problem), width) {
			lines = append(lines, m.theme.refused.Render(l))
		}
	}
	return lines
}

// says is what is wrong and what there is, after a title.
func (d damaged) says() []string {
	return []string{
		"This file is damaged",
		filepath.Base(d.path) + ": " + d.trouble(),
		"There is a last good copy, " + d.good.Says() + ". The file can also be mended by hand, with any editor of plain text.",
	}
}

// trouble is what is wrong: where it was cut, no fault of the text says it better.
func (d damaged) trouble() string {
	if d.good.Cut {
		return "it was cut; the last good copy goes on where it ends."
	}
	return (&records.Entry{Path: d.path, Err: d.good.Damage}).Trouble()
}

// acts are what can be done, each by its number.
func (d damaged) acts() []string {
	acts := []string{"take the last good copy; the damaged file is kept beside it, under another name"}
	if d.mayGoOn() {
		acts = append(acts, "go on with the file as it is")
	}
	return acts
}

func (d *damagedScreen) saysTaken() []string {
	return []string{
		"The last good copy was taken",
		"It stands in " + filepath.Base(d.path) + " now. What was there is kept in " + filepath.Base(d.aside) + ": nothing was removed.",
	}
}
