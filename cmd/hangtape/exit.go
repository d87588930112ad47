package main

import (
	"errors"
	"fmt"
	"path"
	"runtime"
	"slices"
	"strings"
)

// exit is an error that knows its exit code. Without err there is nothing more
// to say: the answer has said it.
type exit struct {
	code int
	err  error
}

func (e exit) Error() string {
	if e.err == nil {
		return fmt.Sprintf("exit %d", e.code)
	}
	return e.err.Error()
}

func (e exit) Unwrap() error { return e.err }

// usage is an error in the words of the call.
func usage(format string, args ...any) error {
	return exit{exitUsage, fmt.Errorf(format, args...)}
}

// worse is the worse of two exit codes, where several files were gone through.
func worse(a, b int) int {
	order := []int{exitDone, exitShort, exitFails, exitFile, exitFault}
	if slices.Index(order, a) > slices.Index(order, b) {
		return a
	}
	return b
}

// contain runs f; a panic becomes an exit that names the place in the program
// and nothing of what was being worked on, which may be somebody's body.
func contain(f func() error) (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = exit{exitFault, errors.New("this is a fault of the program's own, at " + panicPlace() +
				"\nwhat was saved before is safe; please report this line and what you did, without anybody's name or measures")}
		}
	}()
	return f()
}

// panicPlace is the innermost function of ours that was running when the panic
// came, as in "rules.Judge (judge.go:12)".
func panicPlace() string {
	pcs := make([]uintptr, 64)
	frames := runtime.CallersFrames(pcs[:runtime.Callers(0, pcs)])
	for panicked := false; ; {
		f, more := frames.Next()
		if panicked && !strings.HasPrefix(f.Function, "runtime.") {
			return fmt.Sprintf("%s (%s:%d)", path.Base(f.Function), path.Base(f.File), f.Line)
		}
		panicked = panicked || f.Function == "runtime.gopanic"
		if !more {
			return "an unknown place"
		}
	}
}
