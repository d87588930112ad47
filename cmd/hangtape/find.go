package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"regexp"
	"strings"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/records"
)

// idStart is an id of a session or the start of one.
var idStart = regexp.MustCompile(`^[0-7][0-9A-HJKMNP-TV-Z]{1,25}$`)

// mostNamed is how many sessions or climbers are named where there are many.
const mostNamed = 10

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

// findSession is the session of the folder whose id starts so; notFile is the
// error of the word as a file's name.
func findSession(w *world, id string, notFile error) (*sessions.File, error) {
	store, err := openStore(w)
	if err != nil {
		return nil, err
	}
	list, err := records.Scan(store)
	if err != nil {
		return nil, err
	}
	var found []*records.Entry
	for _, e := range list.Sessions() {
		if strings.HasPrefix(e.ID, id) {
			found = append(found, e)
		}
	}
	switch len(found) {
	case 0:
		return nil, fmt.Errorf("%w\nnor does the id of a session in %s start with it", notFile, store.Dir())
	case 1:
		return store.LoadFor(found[0].Path, list.School)
	}
	var lines []string
	for _, e := range found[:min(len(found), mostNamed)] {
		lines = append(lines, fmt.Sprintf("%s  %s, %s", e.ID, e.Climber, e.Path))
	}
	if more := len(found) - mostNamed; more > 0 {
		lines = append(lines, fmt.Sprintf("and %d more", more))
	}
	return nil, fmt.Errorf("%s fits the ids of %d sessions; give more of it, or the file:\n%s", id, len(found), strings.Join(lines, "\n"))
}
