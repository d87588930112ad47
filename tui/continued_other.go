//go:build !unix

package tui

import "os"

// continueSignals are none: nobody stops a program here.
var continueSignals []os.Signal
