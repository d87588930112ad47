package tui

import (
	"io"
	"time"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// A Store keeps the sessions of one folder.
type Store interface {
	// New is a session that has not been saved yet, with the school's defaults.
	New(now time.Time) sessions.Session
	// Save writes a session so that a crash leaves the old or the new one.
	Save(sessions.Session) error
	// List are the sessions of the folder, the latest first. Its error names
	// those that could not be read, beside the others.
	List() ([]sessions.Session, error)
	// Folder is where the files go.
	Folder() string
}

// Options is what the wizard is given from outside.
type Options struct {
	Store Store
	Demo  Store // the demo's own folder, its sessions in place
	Now   func() time.Time
	In    io.Reader
	Out   io.Writer

	Judge  func(*sessions.Session) (*rules.Report, error)
	Digest string // of the limits and rules that judge

	BreakAfter time.Duration // suggest a break after so long a hang; 0 means five minutes
	NeedDrill  bool
	ASCII      bool // no signs beyond ASCII
	Contrast   bool // no colours but the terminal's own two
}

func (o Options) breakAfter() time.Duration {
	if o.BreakAfter > 0 {
		return o.BreakAfter
	}
	return 5 * time.Minute
}
