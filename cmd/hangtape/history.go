package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.com/hangtape/rules/nearest"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/history"
	"example.com/hangtape/sessions/pages"
)

func historyCommand(w *world) *cobra.Command {
	var asJSON bool
	var unit unitFlag
	var dir string
	c := &cobra.Command{
		Use:   "history CLIMBER",
		Short: "Follow a climber through the sessions: margins over time, changes, due again when",
		Long: `Follows a climber through the sessions of the folder: when the climber is due
for a re-check, what changed from one session to the next by more than its
uncertainty, the margins over time as a chart, and what the rules and the
school's limits of today say of each old session where they judge differently.

CLIMBER is the name as it was typed in the sessions, or the start of it if no
other climber's name starts so. A file that cannot be read is told and stops
nothing: the exit code is 4 then.`,
		Example: "  hangtape history demo climber A\n  hangtape history --dir try-out demo climber A",
		Args:    words(1, -1, "CLIMBER"),
		RunE: func(_ *cobra.Command, args []string) error {
			return tellHistory(w, dir, strings.Join(args, " "), asJSON, unit)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "one JSON object, in mm and kN")
	c.Flags().StringVar(&dir, "dir", "", "a folder of sessions in place of one's own")
	addUnitFlag(c, &unit)
	return c
}

func tellHistory(w *world, dir, climber string, asJSON bool, unit unitFlag) error {
	store, err := openFolder(w, dir)
	if err != nil {
		return err
	}
	school, err := store.School()
	if err != nil {
		complain(w.err, err)
		school = sessions.DefaultSchool()
	}
	all, err := store.List()
	if err != nil {
		return err
	}
	byName := map[string][]*sessions.File{}
	var bad error
	for _, e := range all {
		if e.Err != nil {
			complain(w.err, e.Err)
			bad = exit{code: exitFile}
			continue
		}
		name := e.File.Session.Climber
		byName[name] = append(byName[name], e.File)
	}
	name, err := climberCalled(climber, byName, store.Dir())
	if err != nil {
		return err
	}
	var h *history.History
	if err := contain(func() error { h = history.Of(name, byName[name], school, w.now()); return nil }); err != nil {
		return err
	}
	if asJSON {
		err = writeJSON(w, h)
	} else {
		err = writeLines(w.out, pages.History(h, look(w, unit.of(byName[name][0].Session))))
	}
	if err != nil {
		return err
	}
	return bad
}

// climberCalled is the climber whose name was typed, whatever the letter case,
// or the only one whose name starts so.
func climberCalled[T any](typed string, climbers map[string]T, dir string) (string, error) {
	if _, ok := climbers[typed]; ok {
		return typed, nil
	}
	var same, start, names []string
	for name := range climbers {
		lower, want := strings.ToLower(name), strings.ToLower(typed)
		switch {
		case name == "":
			continue
		case lower == want:
			same = append(same, name)
		case strings.HasPrefix(lower, want):
			start = append(start, name)
		}
		names = append(names, name)
	}
	slices.Sort(names)
	slices.Sort(start)
	switch {
	case len(same) == 1:
		return same[0], nil
	case len(same) == 0 && len(start) == 1:
		return start[0], nil
	case len(same)+len(start) > 1:
		return "", fmt.Errorf("%q fits several climbers; give more of the name: %s", typed, strings.Join(append(same, start...), ", "))
	}
	hint := ""
	if near := nearest.Of(typed, names); near != "" {
		hint = fmt.Sprintf("; did you mean %q?", near)
	}
	return "", fmt.Errorf("no session of a climber called %q in %s%s", typed, dir, hint)
}

// openFolder opens the folder of sessions called dir, or one's own.
func openFolder(w *world, dir string) (*sessions.Store, error) {
	if dir == "" {
		return openStore(w)
	}
	full, err := filepath.Abs(dir)
	if err != nil {
		return nil, err
	}
	return openStoreAt(w, full)
}
