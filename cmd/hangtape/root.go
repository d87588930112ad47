package main

import (
	"errors"

	"github.com/spf13/cobra"
)

// rootCommand is the program. Adding a command is one file beside this one and
// one line here; the order is that of the help.
func rootCommand(w *world) *cobra.Command {
	root := wizardCommand(w)
	root.SetIn(w.in)
	root.SetOut(w.out)
	root.SetErr(w.err)
	root.SilenceErrors = true
	root.SilenceUsage = true
	root.AddCommand(
		demoCommand(w),
		versionCommand(w),
	)
	for _, c := range root.Commands() {
		c.RunE = fileErrors(c.RunE)
		c.DisableFlagsInUseLine = true
	}
	root.RunE = fileErrors(root.RunE)
	return root
}

// fileErrors gives the errors of a running command, which know no exit code of
// their own, that of a file that cannot be used.
func fileErrors(run func(*cobra.Command, []string) error) func(*cobra.Command, []string) error {
	return func(c *cobra.Command, args []string) error {
		err := run(c, args)
		if err == nil || errors.As(err, new(exit)) {
			return err
		}
		return exit{exitFile, err}
	}
}

// words refuses a call with fewer than least or more than most of the words
// called name; most below 0 is no limit.
func words(least, most int, name string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		switch {
		case len(args) < least:
			return usage("%s needs a %s", c.Name(), name)
		case most == 0 && len(args) > 0:
			return usage("%s takes no words, got %q", c.Name(), args[0])
		case most > 0 && len(args) > most:
			return usage("%s takes %d %s, got %d: %q is too many", c.Name(), most, name, len(args), args[most])
		}
		return nil
	}
}
