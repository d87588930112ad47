package main

import "github.com/spf13/cobra"

// wizardCommand is the program called without words.
func wizardCommand(w *world) *cobra.Command {
	c := &cobra.Command{
		Use:   "hangtape",
		Short: "Fit a climber's two-leg ascent kit at the base of the tree",
		Long: `hangtape walks an instructor through fitting a climber's two-leg ascent kit:
the climber hangs, a tape hangs beside the rope, and what is read says which
lengths fit.

It checks lengths only: not knots, gear, tree or skill. A pass is not
permission to climb; a second person and a rescue plan come before anyone hangs.`,
		RunE: func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	return c
}
