package main

import (
	"errors"
	"fmt"
	"io"
	"runtime"
	"syscall"
)

// output is standard output. A reader that has gone away (head, a pager) is no
// fault: the rest is dropped and the exit code stays what it would have been.
// Any other failure is kept for the exit code.
type output struct {
	w    io.Writer
	gone bool
	err  error
}

func (o *output) Write(p []byte) (int, error) {
	if o.gone {
		return len(p), nil
	}
	n, err := o.w.Write(p)
	switch {
	case err == nil:
		return n, nil
	case closedPipe(err):
		o.gone = true
		return len(p), nil
	}
	o.err = err
	return n, err
}

// failure is what kept an answer from being written whole.
func (o *output) failure() error {
	if o.err == nil {
		return nil
	}
	return exit{exitFile, fmt.Errorf("cannot write the answer: %w", o.err)}
}

func closedPipe(err error) bool {
	const brokenPipe, noData = syscall.Errno(109), syscall.Errno(232) // their numbers on Windows
	if errors.Is(err, syscall.EPIPE) || errors.Is(err, io.ErrClosedPipe) {
		return true
	}
	return runtime.GOOS == "windows" && (errors.Is(err, brokenPipe) || errors.Is(err, noData))
}
