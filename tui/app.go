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
	onFirst    screenID = iota // what the program is and what to do
	onList                     // which session to go on with or to start from
	onAsk                      // one question of the flow
	onSteps                    // all steps, over a question
	onHelp                     // help, over a question
	onSide                     // the side view, over a question
	onConflict                 // another program has written to the file
	onPast                     // the past fittings
	onPage                     // one of them, two of them, or a climber's
	onStudents                 // who else is there, over a question
	onDamaged                  // a file that was damaged, and its last good copy
)

// Model is the whole wizard. Each screen is a file: it handles the keys that
// Update hands it and draws its lines.
type Model struct {
	opts          Options
	theme         theme
	width, height int
	now           time.Time

	screen screenID
	first  firstScreen
	list   listScreen
	steps  stepsScreen
	help   helpScreen

	sideScreen sideScreen
	flow       flow.State // where the session stands; of use from onAsk on
	form       form       // the field of the question
	shown      view       // what was computed for drawing
	prose      []string   // the question in words
	scroll     int        // of what is longer than its room
	longer     bool       // something is
	page       int        // how many lines PgDn and PgUp go on by, one at least
	problem    string     // what went wrong outside the flow, until the next save
	saver      saver
	held       held
	adviser    adviser
	whatIf     whatIfScreen
	drawn      drawn
	looked     string // the check that is looked at in the review; "" for the first
	leaving    bool   // the person asked to leave
	gone       bool   // another program has removed the file

	seats    []seat              // sessions that are open beside this one; never written to
	folder   []*sessions.Session // as they were when a session was opened last
	students studentsScreen
	next     bool // the next student's session is to come once this one is saved

	past    pastScreen
	pages   []page // over the past fittings, the last one on top
	pageGen int
	damaged damagedScreen
}

// New is the wizard at its first screen.
func New(o Options) Model {
	m := Model{opts: o, theme: newTheme(o), width: 80, height: 24, now: o.Now()}
	m.layout()
	return m
}

// Init looks for unfinished sessions.
func (m Model) Init() tea.Cmd { return m.look(forFirst) }

// Update routes a message to the screen that it is for.
func (m Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	m.now = m.opts.Now()
	var cmd tea.Cmd
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		// The library asks for the size each time a field starts; a new field at
		// every answer would never come to rest.
		if msg.Width != m.width || msg.Height != m.height {
			m.width, m.height = msg.Width, msg.Height
			cmd = m.newForm()
		}
	case tea.KeyMsg:
		cmd = m.keys(msg)
	case formMsg:
		if msg.gen == m.form.gen {
			cmd = m.form.update(msg.msg)
		}
	case foundMsg:
		m.found(msg)
	case openedMsg:
		cmd = m.opened(msg)
	case savedMsg:
		cmd = m.savedAs(msg)
	case advisedMsg:
		cmd = m.advised(msg)
	case listedMsg:
		m.listed(msg)
	case pieceMsg:
		cmd = m.pieceKept(msg)
	case pageMsg:
		m.pageRead(msg)
	case takenOverMsg:
		m.damaged.takenOver(msg)
	case tickMsg:
		cmd = tick()
	}
	m.layout()
	return m, cmd
}

// keys are one key, or all the signs that were typed since the library looked
// last, which it hands over as one: each belongs to what is asked when its turn
// comes.
func (m *Model) keys(msg tea.KeyMsg) tea.Cmd {
	if msg.Type != tea.KeyRunes || msg.Paste || len(msg.Runes) < 2 {
		return m.key(msg)
	}
	var cmds []tea.Cmd
	for _, r := range msg.Runes {
		one := msg
		one.Runes = []rune{r}
		cmds = append(cmds, m.key(one))
	}
	return tea.Batch(cmds...)
}

func (m *Model) key(msg tea.KeyMsg) tea.Cmd {
	switch keyOf(msg, false) {
	case keyLeave:
		return m.leave()
	case keySuspend:
		return tea.Suspend
	}
	if m.waits() {
		return m.behind(msg)
	}
	m.held.pressed, m.held.pressing = msg, true
	defer func() { m.held.pressing = false }()
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
	case onSide:
		return m.sideKey(msg)
	case onConflict:
		return m.conflictKey(msg)
	case onStudents:
		return m.studentsKey(msg)
	case onPast:
		return m.pastKey(msg)
	case onPage:
		return m.pageKey(msg)
	case onDamaged:
		return m.damagedKey(msg)
	}
	return nil
}

func (m *Model) small() bool { return m.width < leastWidth || m.height < leastHeight }
