package main

import (
	"errors"
	"slices"

	"github.com/spf13/cobra"
)

// rootCommand is the program. Adding a command is one file beside this one and
// one line here; the order is that of the help.
func rootCommand(w *world) *cobra.Command {
	root := wizardCommand(w)
	root.SetIn(w.in)
	root.SetOut(w.out)
	root.SetErr(w.err)
	root.Args = noSuchCommand
	root.SuggestionsMinimumDistance = 2
	root.SetFlagErrorFunc(func(c *cobra.Command, err error) error { return callError(c, "%w", err) })
	root.SilenceErrors = true
	root.SilenceUsage = true
	root.AddCommand(
		checkCommand(w),
		adviseCommand(w),
		cutCommand(w),
		drillCommand(w),
		showCommand(w),
		compareCommand(w),
		listCommand(w),
		historyCommand(w),
		cardCommand(w),
		exportCommand(w),
		forgetCommand(w),
		demoCommand(w),
		explainCommand(w),
		versionCommand(w),
		manCommand(),
	)
	for _, c := range root.Commands() {
		c.RunE = fileErrors(c.RunE)
		c.DisableFlagsInUseLine = true
	}
	root.RunE = fileErrors(root.RunE)
	root.InitDefaultHelpCmd()
	if help, _, err := root.Find([]string{"help"}); err == nil {
		help.Args = func(_ *cobra.Command, args []string) error {
			if of, _, err := root.Find(args); err != nil || of != root {
				return nil // of a command, or cobra says what is wrong
			}
			return noSuchCommand(root, args)
		}
	}
	root.InitDefaultCompletionCmd()
	if completion, _, err := root.Find([]string{"completion"}); err == nil {
		completion.Args = func(c *cobra.Command, args []string) error {
			if len(args) > 0 {
				return callError(c, "%q is not a shell that completions are made for", args[0])
			}
			return nil
		}
		completion.RunE = func(c *cobra.Command, _ []string) error { return c.Help() }
	}
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
			return callError(c, "%s needs a %s", c.Name(), name)
		case most == 0 && len(args) > 0:
			return callError(c, "%s takes no words, got %q", c.Name(), args[0])
		case most > 0 && len(args) > most:
			return callError(c, "%s takes %d %s, got %d: %q is too many", c.Name(), most, name, len(args), args[most])
		case slices.Contains(args, ""):
			return callError(c, "%s needs a %s, got an empty word", c.Name(), name)
		}
		return nil
	}
}

// noSuchCommand refuses words after the program's name that are no command.
func noSuchCommand(root *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	if near := root.SuggestionsFor(args[0]); len(near) > 0 && args[0] != "" {
		return callError(root, "%q is not a command; did you mean %s?", args[0], near[0])
	}
	return callError(root, "%q is not a command", args[0])
}

// callError is a usage error that tells where the right words stand.
func callError(c *cobra.Command, format string, args ...any) error {
	return usage(format+"\n%s --help tells the words", append(args, c.CommandPath())...)
}
