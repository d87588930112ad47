package main

import (
	"errors"

	"github.com/spf13/cobra"

	"example.com/hangtape/tui"
)

// wizardCommand is the program called without words.
func wizardCommand(w *world) *cobra.Command {
	var plain, contrast bool
	c := &cobra.Command{
		Use:   "hangtape",
		Short: "Fit a climber's two-leg ascent kit at the base of the tree",
		Long: `hangtape walks an instructor through fitting a climber's two-leg ascent kit:
the climber hangs, a tape hangs beside the rope, and what is read says which
lengths fit. Without a command it opens the wizard.

It checks lengths only: not knots, gear, tree or skill. A pass is not
permission to climb; a second person and a rescue plan come before anyone hangs.

Sessions are kept in $HANGTAPE_DIR, or else in the platform's data folder.`,
		RunE: func(*cobra.Command, []string) error { return runWizard(w, plain, contrast) },
	}
	c.Flags().BoolVar(&plain, "plain", false, "ask line by line: for screen readers, pipes and terminals that cannot draw")
	c.Flags().BoolVar(&contrast, "contrast", false, "high contrast for a screen in the sun: no colours, bold and reverse alone")
	return c
}

// runWizard opens the folder before the first question, so that nothing is
// answered that cannot be kept.
func runWizard(w *world, plain, contrast bool) error {
	store, err := openStore(w)
	if err != nil {
		return err
	}
	if err := store.Ready(); err != nil {
		return err
	}
	demo, err := openDemoStore(w)
	if err != nil {
		return err
	}
	school, err := store.School()
	if err != nil {
		return err
	}
	o := tui.Options{
		Store: store, Demo: demo, School: school,
		Now: w.now, In: w.in, Out: w.out.w,
		ASCII: asciiOnly(w.env), Contrast: contrast,
	}
	if plain || !w.terminal || w.env("TERM") == "dumb" {
		o.Out = w.out
		return tui.RunPlain(o)
	}
	err = tui.Run(o)
	if errors.Is(err, tui.ErrFault) {
		return exit{exitFault, err}
	}
	return err
}
