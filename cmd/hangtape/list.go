package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions/pages"
	"example.com/hangtape/sessions/records"
)

func listCommand(w *world) *cobra.Command {
	var asJSON, cords bool
	var dir string
	c := &cobra.Command{
		Use:   "list [WORDS…]",
		Short: "List the sessions of the folder, or its cords by age",
		Long: `Lists the sessions of the folder, the newest first: how each comes out under the
rules of today, and as what it was signed. Files that cannot be read come last,
each with why; they stop nothing, and the exit code is 4 then.

Only what has all of the WORDS is listed. A word is looked for in every name,
date and verdict; letter case and accents do not count. Or in one place:

` + queryHelp() + `
A phrase stands in quotes: 'place:"old beech"'. Who is due for a re-check is told
by history without a name.`,
		Example: "  hangtape list\n  hangtape list climber:demo verdict:fail\n  hangtape list --cords",
		Args:    cobra.ArbitraryArgs,
		RunE: func(_ *cobra.Command, args []string) error {
			l, found, err := findRecords(w, dir, args)
			if err != nil {
				return err
			}
			switch {
			case cords:
				err = tellCords(w, l, found, asJSON)
			case asJSON:
				err = tellEntries(w, found)
			default:
				err = writeLines(w.out, pages.List(found, l.Aside, look(w, "mm")))
			}
			return errors.Join(err, badFiles(l))
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "one JSON object a line, in mm and kN")
	c.Flags().BoolVar(&cords, "cords", false, "the cords of all kits, the oldest first")
	c.Flags().StringVar(&dir, "dir", "", "a folder of sessions in place of one's own")
	return c
}

// queryHelp is what a word may be narrowed to, a line each.
func queryHelp() string {
	var b strings.Builder
	for _, k := range records.Keys() {
		text := strings.Split(strings.TrimRight(rules.Wrap(k.Of, textWidth-15), "\n"), "\n")
		fmt.Fprintf(&b, "  %-12s %s\n", k.Name+":", strings.Join(text, "\n"+strings.Repeat(" ", 15)))
	}
	return b.String()
}

// findRecords lists the folder called dir, or one's own, and what of it has all
// of the words.
func findRecords(w *world, dir string, args []string) (*records.List, []*records.Entry, error) {
	q, err := records.ParseQuery(strings.Join(args, " "))
	if err != nil {
		return nil, nil, usage("%w", err)
	}
	store, err := openFolder(w, dir)
	if err != nil {
		return nil, nil, err
	}
	l, err := records.Scan(store)
	if err != nil {
		return nil, nil, err
	}
	return l, l.Find(q), nil
}

// badFiles is the exit where some files of the folder are no sessions, after
// the rest was done.
func badFiles(l *records.List) error {
	if l.Bad == 0 {
		return nil
	}
	return exit{exitFile, fmt.Errorf("%s cannot be read as a session; hangtape list is:bad tells why, and what to do", rules.Count(l.Bad, "file", "files"))}
}

func tellCords(w *world, l *records.List, found []*records.Entry, asJSON bool) error {
	cords := slices.DeleteFunc(l.Cords(), func(c records.Cord) bool { return !slices.Contains(found, c.Seen) })
	if !asJSON {
		return writeLines(w.out, pages.CordList(cords, w.now(), look(w, "mm")))
	}
	for _, c := range cords {
		if err := writeJSON(w.out, cordJSON(c)); err != nil {
			return err
		}
	}
	return nil
}

func tellEntries(w *world, found []*records.Entry) error {
	for _, e := range found {
		if err := writeJSON(w.out, entryJSON(e)); err != nil {
			return err
		}
	}
	return nil
}
