package tui

import (
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
)

// pieceMsg is for the flow of the session with that id: what came of keeping a
// piece that was tied.
type pieceMsg struct {
	session string
	kept    flow.KeptTied
}

// keepPiece keeps the piece that the flow asks to keep, if it does.
func (m *Model) keepPiece() tea.Cmd {
	if m.flow.Tied == nil {
		return nil
	}
	store, t, s, now := m.opts.storeOf(m.flow.Demo), *m.flow.Tied, m.flow.Session, m.now
	return func() tea.Msg { return pieceMsg{s.ID, addPiece(store, t, string(s.Unit), now)} }
}

// pieceKept hands it to its flow; where another session is looked at by now, what
// went wrong is said there.
func (m *Model) pieceKept(msg pieceMsg) tea.Cmd {
	if msg.session == m.flow.Session.ID {
		return m.do(msg.kept)
	}
	if msg.kept.Err != nil {
		m.problem = "the piece of cord: " + msg.kept.Err.Error()
	}
	return nil
}

// addPiece keeps t with the pieces of store, and holds it against all others.
func addPiece(store *sessions.Store, t flow.TiedUp, unit string, now time.Time) flow.KeptTied {
	kept := flow.KeptTied{Piece: t.Piece}
	day := now.UTC().Truncate(24 * time.Hour)
	if kept.Err = store.AddPiece(sessions.TiedPiece{On: day, TiedCord: t.Cord}); kept.Err != nil {
		return kept
	}
	pieces, err := store.Pieces()
	if kept.Err = err; err != nil {
		return kept
	}
	cords := sessions.Cords(pieces)
	r := fit.LearnCord(cords[:len(cords)-1]).Residual(t.Cord)
	kept.Cord, kept.Words = fit.LearnCord(cords), rules.TiedWords(r, unit)
	if question := rules.TiedQuestion(r); question != "" {
		kept.Words += ". " + question + "; if it is a slip, take it out of " + store.PiecesPath()
	}
	return kept
}

// storeOf is where the sessions of a kind are kept, and the pieces beside them.
func (o Options) storeOf(demo bool) *sessions.Store {
	if demo {
		return o.Demo
	}
	return o.Store
}
