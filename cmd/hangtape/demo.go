package main

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"example.com/hangtape/sessions/demo"
)

func demoCommand(w *world) *cobra.Command {
	return &cobra.Command{
		Use:   "demo DIR",
		Short: "Write the demo sessions into a folder",
		Long: `Writes the demo sessions into a folder, which is made where it is missing, and
lists them. Their climbers are invented. A file that is there already is left
alone, and then nothing is written.`,
		Example: "  hangtape demo try-out\n  hangtape check try-out/*.toml",
		Args:    words(1, 1, "DIR"),
		RunE:    func(_ *cobra.Command, args []string) error { return writeDemo(w, args[0]) },
	}
}

func writeDemo(w *world, dir string) error {
	for _, f := range demo.Files() {
		name := filepath.Join(dir, f.Name)
		if _, err := os.Lstat(name); err == nil {
			return fmt.Errorf("%s is there already: nothing was written; give another folder", name)
		}
	}
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return err
	}
	for _, f := range demo.Files() {
		name, err := f.Write(dir)
		if err != nil {
			return err
		}
		if _, err := fmt.Fprintln(w.out, name); err != nil {
			return err
		}
	}
	return nil
}
