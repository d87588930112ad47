package main

import (
	"errors"
	"fmt"
	"slices"

	"example.com/hangtape/internal/fault"
	"example.com/hangtape/rules"
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

// verdictExit is the exit code of a file or a drill that comes out as v.
func verdictExit(v rules.Verdict) int {
	//exhaustive:enforce
	switch v {
	case rules.Pass:
		return exitDone
	case rules.Fail:
		return exitFails
	case rules.Tight, rules.Unknown:
		return exitShort
	}
	panic("exit: an outcome that is no verdict")
}

// contain runs f; a panic becomes an exit that names the place in the program
// and nothing of what was being worked on.
func contain(f func() error) (err error) {
	if place := fault.In(func() { err = f() }); place != "" {
		return exit{exitFault, errors.New("this is a fault of the program's own, at " + place +
			"\nwhat was saved before is safe; please report this line and what you did, without anybody's name or measures")}
	}
	return err
}
