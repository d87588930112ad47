package tui

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// sideScreen is the side view over a question.
type sideScreen struct{ side side }

// openSide shows the side view of the question that is asked.
func (m *Model) openSide() tea.Cmd {
	m.screen = onSide
	m.sideScreen = sideScreen{sideOf(&m.flow, m.looked)}
	return nil
}

// sideKey goes through the poses; any other key is back.
func (m *Model) sideKey(msg tea.KeyMsg) tea.Cmd {
	if m.wantsDown(msg) {
		return m.getDown()
	}
	at := slices.Index(sidePoses[:], m.sideScreen.side.pose)
	switch keyOf(msg, false) {
	case keyNewer, keySkip, keyLonger:
		at++
	case keyOlder, keyPageUp, keyShorter:
		at += len(sidePoses) - 1
	default:
		m.screen = onAsk
		return nil
	}
	m.sideScreen.side = m.sideScreen.side.in(sidePoses[at%len(sidePoses)], &m.flow, m.looked)
	return nil
}

// sideBody is the side view as large as the window, the verdict of its check
// under it.
func (m *Model) sideBody(width, height int) []string {
	v := m.sideScreen.side
	title := m.theme.title.Render(cut(poseTitles[v.pose], width))
	var verdict []string
	if v.check != nil {
		verdict = m.checkLines(*v.check, rules.Sentence(*v.check, string(m.flow.Session.Unit)), width)
		if height < tall {
			verdict = verdict[:1] // the drawing tells the margin
		}
	}
	lines := m.sideLines(v, width, height-1-len(verdict))
	if lines == nil {
		lines = m.noSide(width)
	}
	return append(append([]string{title}, lines...), verdict...)
}

// tall is the height from which a sentence stands under the side view.
const tall = 24

// noSide says why there is nothing to draw.
func (m *Model) noSide(width int) []string {
	if m.flow.Wrong != nil {
		return m.theme.wrap("Cannot be drawn: "+m.flow.Wrong.Error(), width)
	}
	return m.theme.wrap("Nothing to draw yet: neither the body nor the kit is known. A stature is enough for a body by estimate.", width)
}

// poseTitles name the poses of the side view.
var poseTitles = map[fit.Pose]string{
	fit.Seated:     "Side view: seated, after a stand",
	fit.ThighLevel: "Side view: thigh level",
	fit.TetherTaut: "Side view: tether taut",
	fit.Standing:   "Side view: standing in the foot loop",
	fit.OnTether:   "Side view: hanging on the tether",
}
