package main

import (
	"bufio"
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"example.com/hangtape/rules/nearest"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/forget"
	"example.com/hangtape/sessions/records"
)

func forgetCommand(w *world) *cobra.Command {
	var yes bool
	var dir string
	c := &cobra.Command{
		Use:   "forget CLIMBER",
		Short: "Remove a climber's sessions and every trace of them, for good",
		Long: `Removes a climber from the folder for good: the sessions, their last good copies,
damaged files that were set aside of them, what a killed program left of them,
the cache of the list, and in the sessions of others what leads to them or says
that the climber tied a piece. CLIMBER is the whole name; letter case does not
count.

It says first what it is about to remove and asks; --yes answers. Then it says
what is gone, and what is not and why: a session that another program edits is
left, and so are files that only mention the name, or cannot be read; the exit
code is 4 then. What was exported, printed or copied it cannot know.`,
		Example: "  hangtape forget demo climber A",
		Args:    words(1, -1, "CLIMBER"),
		RunE: func(_ *cobra.Command, args []string) error {
			store, err := openFolder(w, dir)
			if err != nil {
				return err
			}
			return forgetClimber(w, store, strings.Join(args, " "), yes)
		},
	}
	c.Flags().BoolVar(&yes, "yes", false, "do not ask")
	c.Flags().StringVar(&dir, "dir", "", "a folder of sessions in place of one's own")
	return c
}

func forgetClimber(w *world, store *sessions.Store, climber string, yes bool) error {
	t, err := forget.Look(store, climber)
	if err != nil {
		return err
	}
	if t.None() {
		if len(t.Named) == 0 {
			return nobodyCalled(store, climber)
		}
		return left(w, nil, t.Named)
	}
	if !yes {
		if err := tellTraces(w, t); err != nil {
			return err
		}
		if ok, err := confirmed(w); !ok {
			return err
		}
	}
	d := t.Remove()
	if err := tellDone(w, d); err != nil {
		return err
	}
	return left(w, d.Failed, t.Named)
}

// nobodyCalled is the error of a name that is nowhere in the folder.
func nobodyCalled(store *sessions.Store, climber string) error {
	err := fmt.Errorf("nobody is called %q in %s: nothing was removed", climber, store.Dir())
	if list, scanErr := records.Scan(store); scanErr == nil {
		var names []string
		for _, c := range list.Climbers() {
			names = append(names, c.Name)
		}
		if n := nearest.Of(climber, names); n != "" {
			err = fmt.Errorf("%w; did you mean %q?", err, n)
		}
	}
	return err
}

// tellTraces tells what is about to be removed.
func tellTraces(w *world, t *forget.Traces) error {
	lines := []string{fmt.Sprintf("To be removed of %s, for good", printable(t.Climber))}
	lines = append(lines, each("  session ", t.Sessions)...)
	lines = append(lines, each("  left by a program that was killed: ", t.Leftover)...)
	lines = append(lines, each("  in another climber's session what leads there: ", t.Links)...)
	lines = append(lines, each("  last good copy of ", t.Copies)...)
	lines = append(lines, "  the cache of the list, which makes itself anew")
	return writeLines(w.out, lines)
}

// confirmed asks. Without any answer it is an error: somebody forgot --yes.
func confirmed(w *world) (bool, error) {
	if err := writeLines(w.out, []string{"Type yes to remove all of it:"}); err != nil {
		return false, err
	}
	answer, err := bufio.NewReader(w.in).ReadString('\n')
	switch answer = strings.TrimSpace(answer); {
	case strings.EqualFold(answer, "yes"):
		return true, nil
	case answer == "" && err != nil:
		return false, usage("nothing was removed: there was no answer; --yes does without")
	}
	return false, writeLines(w.out, []string{"Nothing was removed."})
}

// tellDone tells what was removed.
func tellDone(w *world, d *forget.Done) error {
	lines := []string{"Removed"}
	lines = append(lines, each("  session ", d.Sessions)...)
	lines = append(lines, each("  left by a program that was killed: ", d.Leftover)...)
	lines = append(lines, each("  what led there in ", d.Links)...)
	lines = append(lines, each("  last good copy of ", d.Copies)...)
	if d.Cache {
		lines = append(lines, "  the cache of the list")
	}
	if len(lines) == 1 {
		lines[0] = "Nothing was removed."
	}
	return writeLines(w.out, lines)
}

// left is the exit where something is still there.
func left(w *world, failed []error, named []string) error {
	for _, err := range failed {
		complain(w.err, err)
	}
	for _, path := range named {
		complain(w.err, fmt.Errorf("%s: names the climber or one of the sessions, or cannot be read; it was left as it is: look into it yourself", path))
	}
	if len(failed)+len(named) == 0 {
		return nil
	}
	return exit{exitFile, errors.New("not every trace is gone")}
}

// each is a line for every file: what it is, and its name.
func each(what string, paths []string) []string {
	lines := make([]string, len(paths))
	for i, path := range paths {
		lines[i] = what + printable(filepath.Base(path))
	}
	return lines
}
