package main

import (
	"io"
	"time"
)

// world is all that the commands may see of what is outside the program, so
// that a test can put its own in place.
type world struct {
	in  io.Reader
	out *output   // answers
	err io.Writer // everything else
	now func() time.Time
	env func(string) string
}
