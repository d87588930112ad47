package tui

import (
	"os"
	"os/signal"

	tea "github.com/charmbracelet/bubbletea"
)

// continuedMsg is for the program itself: it goes on after it was stopped.
type continuedMsg struct{}

// A continuing draws the screen anew, and takes the terminal as it needs it, where
// somebody stopped the program from outside and lets it go on: what the shell
// wrote meanwhile stands on the screen then. After Ctrl-Z the library does so itself.
type continuing struct {
	program   *tea.Program
	suspended bool // by Ctrl-Z
}

// filter is asked for every message before the library handles it.
func (c *continuing) filter(_ tea.Model, msg tea.Msg) tea.Msg {
	switch msg.(type) {
	case tea.SuspendMsg:
		c.suspended = true
	case continuedMsg:
		if !c.suspended && c.program.ReleaseTerminal() == nil {
			_ = c.program.RestoreTerminal() // a terminal that is gone shows at the next key
		}
		c.suspended = false
		return nil
	}
	return msg
}

// watch tells the program of every time that it goes on, until done.
func (c *continuing) watch(done <-chan struct{}) {
	if len(continueSignals) == 0 {
		return
	}
	goesOn := make(chan os.Signal, 1)
	signal.Notify(goesOn, continueSignals...)
	defer signal.Stop(goesOn)
	for {
		select {
		case <-goesOn:
			c.program.Send(continuedMsg{})
		case <-done:
			return
		}
	}
}
