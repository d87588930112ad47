package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/cobra/doc"
)

// manCommand writes the manual pages, one for each command. It is hidden: a
// release is built with it, nobody else needs it.
func manCommand() *cobra.Command {
	return &cobra.Command{
		Use:    "man DIR",
		Short:  "Write the manual pages into a folder",
		Hidden: true,
		Args:   words(1, 1, "DIR"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := os.MkdirAll(args[0], 0o755); err != nil { //nolint:gosec // pages for everybody to read
				return fmt.Errorf("manual pages: %w", err)
			}
			root := c.Root()
			root.DisableAutoGenTag = true
			for _, c := range root.Commands() {
				c.Long = asItStands(c.Long)
			}
			// No day of building: the pages depend on the source alone.
			day := time.Date(2026, time.January, 1, 0, 0, 0, 0, time.UTC)
			header := &doc.GenManHeader{Section: "1", Source: "hangtape", Manual: "hangtape", Date: &day}
			if err := doc.GenManTree(root, header, filepath.Clean(args[0])); err != nil {
				return fmt.Errorf("manual pages: %w", err)
			}
			return plainFlags(args[0])
		},
	}
}

// asItStands marks the lines of a help text that are set in, such as a table, so
// that the manual page does not fill them: four blanks are what Markdown asks for.
func asItStands(long string) string {
	var b strings.Builder
	for line := range strings.Lines(long) {
		if strings.HasPrefix(line, "  ") {
			line = "    " + line
		}
		b.WriteString(line)
	}
	return b.String()
}

// plainFlags takes out of the manual pages in dir what the library adds to
// flags as their default, which is off or empty: [=false] and ="".
func plainFlags(dir string) error {
	pages, err := filepath.Glob(filepath.Join(dir, "hangtape*.1"))
	if err != nil {
		return fmt.Errorf("manual pages: %w", err)
	}
	plain := strings.NewReplacer("[=false]", "", `=""`, "")
	for _, page := range pages {
		text, err := os.ReadFile(page)
		if err == nil {
			err = os.WriteFile(page, []byte(plain.Replace(string(text))), 0o644) //nolint:gosec // a page of the manual: everybody may read it
		}
		if err != nil {
			return fmt.Errorf("manual pages: %w", err)
		}
	}
	return nil
}
