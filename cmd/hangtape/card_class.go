package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"
	"time"

	"example.com/hangtape/cmd/sheet"
	"example.com/hangtape/sessions"
)

// class is the sheet of all sessions of a day. Files that cannot be used are
// complained of and left out; skipped is the exit for that.
func class(w *world, f cardFlags) (m made, skipped, err error) {
	day, err := dayOf(w, f.class)
	if err != nil {
		return m, nil, err
	}
	entries, err := listed(w)
	if err != nil {
		return m, nil, err
	}
	cord, err := cordModel(w)
	if err != nil {
		return m, nil, err
	}
	var all []sheet.Subject
	days := map[string]bool{}
	for _, e := range entries {
		if e.Err == nil {
			on := localDay(w, e.File.Session.Started)
			if days[on] = true; on != day {
				continue
			}
		}
		j, err := judgedEntry(e)
		if err != nil {
			complain(w.err, err)
			skipped = exit{code: exitFile}
			continue
		}
		all = append(all, f.subject(w, j, cord))
	}
	if len(all) == 0 {
		return m, nil, fmt.Errorf("no session in %s began on %s%s", sessionsDir(w), day, others(days))
	}
	c := sheet.NewClass(day, all)
	return made{c, c.Title, c.At}, skipped, nil
}

// dayOf reads the day that the call names.
func dayOf(w *world, word string) (string, error) {
	if word == "today" {
		return localDay(w, w.now()), nil
	}
	if _, err := time.Parse(time.DateOnly, word); err != nil {
		return "", usage("--class is %q; accepted is a day as 2026-04-18, or today", word)
	}
	return word, nil
}

// localDay is the day of a moment where this computer is.
func localDay(w *world, t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.In(w.now().Location()).Format(time.DateOnly)
}

// listed are the files of the sessions' folder; a folder that is not there yet is
// not made for a question.
func listed(w *world) ([]sessions.Entry, error) {
	if _, err := os.Stat(sessionsDir(w)); errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	st, err := openStore(w)
	if err != nil {
		return nil, err
	}
	return st.List()
}

// judgedEntry judges a session of the folder.
func judgedEntry(e sessions.Entry) (j judged, err error) {
	if e.Err != nil {
		return j, e.Err
	}
	j.File = e.File
	err = contain(func() (err error) { j.report, err = j.Judge(); return err })
	return j, err
}

// others names the last days of which there are sessions.
func others(days map[string]bool) string {
	const most = 5
	var all []string
	for d := range days {
		if d != "" {
			all = append(all, d)
		}
	}
	slices.Sort(all)
	if len(all) == 0 {
		return "; it has none at all"
	}
	all = all[max(0, len(all)-most):]
	return "; the last days that have any: " + strings.Join(all, ", ")
}
