package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"

	"example.com/hangtape/sessions"
)

// readSession reads the session that a word of the call means: a file, - for
// standard input, or, where there is no such file, the id or the start of an id
// of a session in the sessions' folder.
func readSession(w *world, name string) (*sessions.File, error) {
	f, err := sessions.ReadFile(name, w.in)
	if !errors.Is(err, fs.ErrNotExist) {
		return f, withLastGood(name, err)
	}
	id := strings.ToUpper(name)
	if !idStart.MatchString(id) {
		return nil, err
	}
	dir := sessionsDir(w)
	if info, statErr := os.Stat(dir); statErr != nil || !info.IsDir() {
		return nil, err
	}
	return findSession(w, id, err)
}

// withLastGood adds to the error of a damaged file where its last good copy is.
func withLastGood(name string, err error) error {
	if err == nil || name == sessions.StdinName {
		return err
	}
	good := sessions.LastGoodOf(name)
	if good == nil {
		return err
	}
	return fmt.Errorf("%w\n%s: there is a last good copy, %s; the wizard offers to take it over, under resume and past fittings: it is %s", err, name, good.Says(), good.Name)
}

// readFiles reads session files whose readings can be true together. All that
// cannot are told; one answer cannot do without any of them.
func readFiles(w *world, names []string) ([]*sessions.File, error) {
	if err := oneStdin(names); err != nil {
		return nil, err
	}
	var files []*sessions.File
	code := exitDone
	for _, name := range names {
		err := contain(func() error {
			f, err := readSession(w, name)
			if err == nil {
				files, err = append(files, f), f.Check()
			}
			return err
		})
		if err != nil {
			e := exit{code: exitFile, err: err}
			errors.As(err, &e)
			complain(w.err, e.err)
			code = worse(code, e.code)
		}
	}
	if code != exitDone {
		return nil, exit{code: code}
	}
	return files, nil
}

// oneStdin refuses to read standard input twice.
func oneStdin(files []string) error {
	n := 0
	for _, f := range files {
		if f == sessions.StdinName {
			n++
		}
	}
	if n > 1 {
		return usage("- is standard input and can be read once, got it %d times", n)
	}
	return nil
}
