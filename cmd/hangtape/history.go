package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.com/hangtape/rules"
	"example.com/hangtape/rules/nearest"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/history"
	"example.com/hangtape/sessions/pages"
	"example.com/hangtape/sessions/records"
)

func historyCommand(w *world) *cobra.Command {
	var asJSON bool
	var unit unitFlag
	var dir string
	c := &cobra.Command{
		Use:   "history [CLIMBER]",
		Short: "Follow a climber through the sessions: margins over time, changes, due again when",
		Long: `Follows a climber through the sessions of the folder: when the climber is due
for a re-check, what changed from one session to the next by more than its
uncertainty, the margins over time as a chart, and what the rules and the
school's limits of today say of each old session where they judge differently.

CLIMBER is the name as it was typed in the sessions, or the start of it if no
other climber's name starts so. Without it: everybody, and who is due for a
re-check. A file that cannot be read is told and stops nothing: the exit code
is 4 then.`,
		Example: "  hangtape history demo climber A\n  hangtape history --dir try-out",
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
	list, err := records.Scan(store)
	if err != nil {
		return err
	}
	var bad []error
	for _, e := range list.Entries {
		if e.Err != nil {
			bad = append(bad, e.Err)
		}
	}
	t := historyTold{w, store, list, asJSON, unit}
	var gone []error
	if climber == "" {
		err = t.everybody()
	} else {
		gone, err = t.climber(climber)
	}
	bad = append(bad, gone...)
	complainOfFiles(w, bad)
	if err == nil && len(bad) > 0 {
		err = exit{code: exitFile}
	}
	return err
}

// complainOfFiles names bad files of a folder, the first ones if there are many.
func complainOfFiles(w *world, bad []error) {
	const most = 3
	for _, e := range bad[:min(len(bad), most)] {
		complain(w.err, e)
	}
	if more := len(bad) - most; more > 0 {
		complain(w.err, fmt.Errorf("and %s cannot be read; hangtape list is:bad tells all, and what to do", rules.Count(more, "more file", "more files")))
	}
}

// historyTold tells what a folder says of its climbers.
type historyTold struct {
	w     *world
	store *sessions.Store
	list  *records.List
	json  bool
	unit  unitFlag
}

func (t *historyTold) everybody() error {
	people, _ := history.People(t.list, t.w.now())
	if t.json {
		return writeJSON(t.w.out, struct {
			Format   int              `json:"format"`
			Climbers []history.Person `json:"climbers"`
		}{history.Format, people})
	}
	return writeLines(t.w.out, pages.People(people, look(t.w, "mm")))
}

// climber tells the history of one; gone are the errors of files that went away
// meanwhile.
func (t *historyTold) climber(name string) (gone []error, err error) {
	c, err := climberCalled(name, t.list.Climbers(), t.store.Dir())
	if err != nil {
		return nil, err
	}
	var h *history.History
	err = contain(func() error {
		h, gone = history.Load(t.store, t.list, c, t.w.now())
		return nil
	})
	switch {
	case err != nil:
		return nil, err
	case t.json:
		return gone, writeJSON(t.w.out, h)
	}
	return gone, writeLines(t.w.out, pages.History(h, look(t.w, t.unit.or(h.Unit))))
}

// climberCalled is the climber whose name was typed, whatever the letter case,
// or the only one whose name starts so, whatever the accents.
func climberCalled(typed string, all []records.Climber, dir string) (*records.Climber, error) {
	var start []*records.Climber
	var names, starts []string
	want, begin := records.Fold(typed), records.Unaccented(typed)
	for i := range all {
		c := &all[i]
		switch {
		case records.Fold(c.Name) == want:
			return c, nil
		case strings.HasPrefix(records.Unaccented(c.Name), begin):
			start, starts = append(start, c), append(starts, c.Name)
		}
		names = append(names, c.Name)
	}
	switch len(start) {
	case 0:
		hint := ""
		if near := nearest.Of(typed, names); near != "" {
			hint = fmt.Sprintf("; did you mean %q?", near)
		}
		return nil, fmt.Errorf("no session of a climber called %q in %s%s", typed, dir, hint)
	case 1:
		return start[0], nil
	}
	slices.Sort(starts)
	if more := len(starts) - mostNamed; more > 0 {
		starts = append(starts[:mostNamed], fmt.Sprintf("and %d more", more))
	}
	return nil, fmt.Errorf("%q fits several climbers; give more of the name: %s", typed, strings.Join(starts, ", "))
}
