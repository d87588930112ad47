package main

import (
	"io"
	"time"
)

// world is all that the commands may see of what is outside the program, so
// that a test can put its own in place.
type world struct {
	in       io.Reader
	out      *output   // answers
	err      io.Writer // everything else
	terminal bool      // in and out are a terminal
	columns  int       // of the terminal that out is; 0 where it is none
	now      func() time.Time
	env      func(string) string
	dataHome string // the platform's folder for a user's data
}
