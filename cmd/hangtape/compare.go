package main

import (
	"slices"

	"github.com/spf13/cobra"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/compare"
	"example.com/hangtape/sessions/pages"
)

func compareCommand(w *world) *cobra.Command {
	var asJSON, changed bool
	var unit unitFlag
	c := &cobra.Command{
		Use:   "compare A B",
		Short: "Hold two sessions side by side: what changed, and by more than its uncertainty?",
		Long: `Holds two sessions side by side: every reading, label, length, pose, margin and
verdict, what changed from A to B, by how much, and whether by more than its
uncertainty (95 %). A length that one session kept from the other is the same
reading and no change. Both are judged by the rules of today.

A and B are files, ids of sessions in the sessions' folder, or starts of ids;
one of them may be -, for standard input.`,
		Example: "  hangtape compare try-out/a-good-kit.toml try-out/d-half-a-year-later.toml",
		Args: func(c *cobra.Command, args []string) error {
			if len(args) != 2 {
				return callError(c, "compare needs two sessions, A and B; got %d", len(args))
			}
			if slices.Contains(args, "") {
				return callError(c, "compare needs two sessions, A and B; got an empty word")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, names []string) error {
			files, err := readFiles(w, names)
			if err != nil {
				return err
			}
			c, err := compared(files[0], files[1])
			if err != nil {
				return err
			}
			if asJSON {
				return writeJSON(w.out, c)
			}
			page := pages.Compare
			if changed {
				page = pages.Changes
			}
			return writeLines(w.out, page(c, look(w, unit.of(files[0].Session))))
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "one JSON object, in mm and kN")
	c.Flags().BoolVar(&changed, "changed", false, "tell only what changed")
	addUnitFlag(c, &unit)
	return c
}

// compared holds two sessions side by side.
func compared(a, b *sessions.File) (c *compare.Comparison, err error) {
	err = contain(func() (err error) {
		c, err = compare.Of(a, b)
		return err
	})
	return c, err
}
