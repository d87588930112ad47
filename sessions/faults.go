package sessions

import (
	"fmt"
	"sort"
	"strconv"
	"strings"
	"unicode"
)

// A Fault is one thing in a file that cannot be.
type Fault struct {
	Line     int    // counted from 1; 0 where it is not known or the fault has none
	Key      string // with entries counted from 1: "hangs.1.hip_mm"; several after commas; empty where the file as a whole is meant
	Found    string // in words
	Accepted string // in words; empty where Found says it all
	Hint     string // what was probably meant; may be empty

	sentence bool // Found stands by itself and does not go on after "KEY is"
}

// String is the fault in one line, without the file's name.
func (f Fault) String() string {
	var b strings.Builder
	switch {
	case f.Key != "" && f.sentence:
		b.WriteString(f.Key + ": ")
	case f.Key != "":
		b.WriteString(f.Key + " is ")
	}
	b.WriteString(f.Found)
	if f.Accepted != "" {
		b.WriteString("; accepted is " + f.Accepted)
	}
	if f.Hint != "" {
		b.WriteString(" (" + f.Hint + ")")
	}
	return b.String()
}

// A FileError lists everything that is wrong with one file, in the order of its
// lines.
type FileError struct {
	File   string // empty where the session is in no file
	Faults []Fault
	Err    error // the operating system's, where the file could not be read; else nil
	Newer  bool  // a later program wrote it, and all is right with it
}

// Error has one line for each fault: FILE:LINE: what was found, what is accepted.
func (e *FileError) Error() string {
	lines := make([]string, len(e.Faults))
	name := e.File
	if strings.ContainsFunc(name, unicode.IsControl) {
		name = strconv.Quote(name) // else it would break the lines
	}
	for i, f := range e.Faults {
		switch {
		case name == "":
			lines[i] = f.String()
		case f.Line > 0:
			lines[i] = fmt.Sprintf("%s:%d: %s", name, f.Line, f)
		default:
			lines[i] = fmt.Sprintf("%s: %s", name, f)
		}
	}
	return strings.Join(lines, "\n")
}

// Unwrap is the operating system's error, so that errors.Is sees it.
func (e *FileError) Unwrap() error { return e.Err }

// fileError is nil where there is no fault.
func fileError(name string, faults []Fault) error {
	if len(faults) == 0 {
		return nil
	}
	sort.SliceStable(faults, func(i, j int) bool { return faults[i].Line < faults[j].Line })
	return &FileError{File: name, Faults: faults}
}

// unreadable is the error of a file that says nothing at all.
func unreadable(name string, err error, format string, args ...any) error {
	return &FileError{File: name, Faults: []Fault{{Found: fmt.Sprintf(format, args...)}}, Err: err}
}
