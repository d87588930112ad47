package tui

import (
	"errors"
	"os"
	"os/signal"
	"syscall"

	tea "github.com/charmbracelet/bubbletea"
)

// ErrFault is what Run returns after a fault of the program's own.
var ErrFault = errors.New("the wizard stopped at a fault of the program's own; what was answered before is saved")

// Run is the wizard, full screen, until its user leaves it. What was taken is
// on disk then, also after a hang-up, a signal or a fault of the program's own;
// the error says what is not.
func Run(o Options) error { return run(New(o), o) }

// framesPerSecond is how often the library looks for something new to draw: a
// frame, also the first one, waits for that.
const framesPerSecond = 120

func run(w wizard, o Options) error {
	var c continuing
	p := tea.NewProgram(guarded{w}, tea.WithInput(o.In), tea.WithOutput(o.Out), tea.WithAltScreen(), tea.WithFPS(framesPerSecond), tea.WithFilter(c.filter))
	c.program = p
	hangup := make(chan os.Signal, 1)
	signal.Notify(hangup, syscall.SIGHUP)
	defer signal.Stop(hangup)
	done := make(chan struct{})
	defer close(done)
	go func() { // a closed line: restore the terminal before the process goes
		select {
		case <-hangup:
			p.Kill()
		case <-done:
		}
	}()
	go c.watch(done)
	last, err := p.Run()
	if m, ok := last.(guarded); ok {
		if saveErr := m.finish(); saveErr != nil {
			return saveErr
		}
	}
	switch {
	case errors.Is(err, tea.ErrProgramPanic):
		return ErrFault
	case errors.Is(err, tea.ErrProgramKilled), errors.Is(err, tea.ErrInterrupted): // by a signal: its user left
		return nil
	}
	return err
}
