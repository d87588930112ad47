package main

import (
	"github.com/spf13/cobra"

	"example.com/hangtape/sessions/pages"
)

func showCommand(w *world) *cobra.Command {
	var unit unitFlag
	c := &cobra.Command{
		Use:   "show FILE|ID",
		Short: "Show one session: people, kit and cord ages, readings, verdicts, drill, sign-off",
		Long: `Shows one session for people: who, where and when, the kit and how old its
cords are, what was read and what it comes to, the verdicts with their
sentences, findings, what was changed between the hangs and what came of it,
the drill, the sign-off, and whether the rules of today judge differently.

FILE may be the id of a session in the sessions' folder, the start of one, or -
for standard input. For programs there is check --json.`,
		Example: "  hangtape show try-out/a-good-kit.toml",
		Args:    words(1, 1, "FILE or an ID (- is standard input)"),
		RunE: func(_ *cobra.Command, names []string) error {
			f, err := readSession(w, names[0])
			if err != nil {
				return err
			}
			var lines []string
			err = contain(func() (err error) {
				lines, err = pages.Show(f, w.now(), look(w, unit.of(f.Session)))
				return err
			})
			if lines == nil {
				return err
			}
			if writeErr := writeLines(w.out, lines); writeErr != nil {
				return writeErr
			}
			return err
		},
	}
	addUnitFlag(c, &unit)
	return c
}
