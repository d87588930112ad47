package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
	_ "example.com/hangtape/tui/internal/quiet" // before Bubble Tea: no query at the start
)

// The least window in which every screen is whole.
const (
	leastWidth  = 44
	leastHeight = 20
)

// screenID is which screen is shown.
type screenID int

const (
	onFirst screenID = iota // what the program is and what to do
	onList                  // which session to go on with or to start from
	onAsk                   // one question of the flow
	onSteps                 // all steps, over a question
	onHelp                  // help, over a question
)

// Model is the whole wizard. Each screen is a file: it handles the keys that
// Update hands it and draws its lines.
type Model struct {
	opts          Options
	theme         theme
	width, height int
	now           time.Time

	screen  screenID
	first   firstScreen
	list    listScreen
	steps   stepsScreen
	help    helpScreen
	flow    flow.State // where the session stands; of use from onAsk on
	form    form       // the field of the question
	store   Store      // where the session is kept
	shown   view       // what was computed for drawing
	scroll  int        // of the review
	problem string     // what went wrong outside the flow, until the next save
	saver   saver
	leaving bool // the person asked to leave
}

// New is the wizard at its first screen.
func New(o Options) Model {
	m := Model{opts: o, theme: newTheme(o), width: 80, height: 24, now: o.Now()}
	m.layout()
	return m
}

// Init looks for unfinished sessions.
func (m Model) Init() tea.Cmd { return m.look(m.opts.Store, forFirst) }

// Update routes a message to the screen that it is for.
func (m Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	m.now = m.opts.Now()
	var cmd tea.Cmd
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.width, m.height = msg.Width, msg.Height
		cmd = m.newForm()
	case tea.KeyMsg:
		cmd = m.key(msg)
	case formMsg:
		if msg.gen == m.form.gen {
			cmd = m.form.update(msg.msg)
		}
	case foundMsg:
		cmd = m.found(msg)
	case savedMsg:
		cmd = m.savedAs(msg)
	case tickMsg:
		cmd = m.tick()
	}
	m.layout()
	return m, cmd
}

func (m *Model) key(msg tea.KeyMsg) tea.Cmd {
	if keyOf(msg, false) == keyLeave {
		return m.leave()
	}
	if m.small() {
		return nil
	}
	switch m.screen {
	case onFirst:
		return m.firstKey(msg)
	case onList:
		return m.listKey(msg)
	case onAsk:
		return m.askKey(msg)
	case onSteps:
		return m.stepsKey(msg)
	case onHelp:
		return m.helpKey(msg)
	}
	return nil
}

func (m *Model) small() bool { return m.width < leastWidth || m.height < leastHeight }

// open starts or resumes a session.
func (m *Model) open(s sessions.Session, in Store, earlier *sessions.Session) tea.Cmd {
	m.store, m.saver, m.problem = in, saver{}, ""
	m.flow = flow.Start(s, flow.Config{Judge: m.opts.Judge, Digest: m.opts.Digest, NeedDrill: m.opts.NeedDrill,
		Demo: in == m.opts.Demo, Earlier: earlier})
	m.screen = onAsk
	return tea.Batch(m.newForm(), tickAfterASecond())
}

// do hands an event to the flow and saves what it changed.
func (m *Model) do(e flow.Event) tea.Cmd {
	at, field := m.flow.At, m.flow.Edit
	m.flow = m.flow.Do(e)
	cmds := []tea.Cmd{m.save()}
	if m.flow.Left {
		return tea.Batch(append(cmds, m.leave())...)
	}
	if _, typed := e.(flow.Typed); !typed || m.flow.At != at || m.flow.Edit != field {
		cmds = append(cmds, m.newForm())
	}
	if m.flow.At != at {
		m.scroll = 0
	}
	return tea.Batch(cmds...)
}

// leave ends the program once all is saved.
func (m *Model) leave() tea.Cmd {
	m.leaving = true
	if m.saver.idle(m.flow.Saves) || m.problem != "" {
		return tea.Quit
	}
	return m.save()
}

// Unsaved is what has not reached the disk when the program was ended from
// outside; ok is false where all has.
func (m Model) Unsaved() (s sessions.Session, in Store, ok bool) {
	return m.flow.Session, m.store, m.store != nil && m.saver.done < m.flow.Saves
}
