//go:build unix

package tui

import (
	"os"
	"syscall"
)

// continueSignals say that a program that was stopped goes on.
var continueSignals = []os.Signal{syscall.SIGCONT}
