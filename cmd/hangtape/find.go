package main

import (
	"fmt"
	"regexp"
	"strings"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/records"
)

// idStart is an id of a session or the start of one.
var idStart = regexp.MustCompile(`^[0-7][0-9A-HJKMNP-TV-Z]{1,25}$`)

// mostNamed is how many sessions or climbers are named where there are many.
const mostNamed = 10

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
