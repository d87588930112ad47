package main

import (
	"fmt"
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
	cord, err := cordModel(w)
	if err != nil {
		return m, nil, err
	}
	store, list, err := scanOwn(w)
	if err != nil {
		return m, nil, err
	}
	var all []sheet.Subject
	var bad []error
	days := map[string]bool{}
	for _, e := range list.Entries {
		if e.Err != nil {
			bad = append(bad, e.Err)
			continue
		}
		on := localDay(w, e.Started)
		if days[on] = true; on != day {
			continue
		}
		j, err := judge(func() (*sessions.File, error) { return store.LoadFor(e.Path, list.School) })
		if err != nil {
			bad = append(bad, err)
			continue
		}
		all = append(all, f.subject(w, j, cord))
	}
	complainOfFiles(w, bad)
	if len(bad) > 0 {
		skipped = exit{code: exitFile}
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
