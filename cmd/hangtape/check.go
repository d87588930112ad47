package main

import (
	"errors"
	"fmt"
	"io"

	"github.com/spf13/cobra"
)

func checkCommand(w *world) *cobra.Command {
	var asJSON bool
	var unit unitFlag
	c := &cobra.Command{
		Use:   "check FILE…",
		Short: "Judge session files: all checks, several files at once",
		Long: `Judges session files by all checks. FILE may be -, once, for standard input.

The exit code is 0 where no must is short of pass, 1 where one fails, 3 where
none fails but one is tight or unknown, 4 where a file cannot be read or says
what cannot be; of several files it is the worst: 5, 4, 1, 3, 0.`,
		Example: "  hangtape check try-out/a-good-kit.toml\n  hangtape check --json *.toml",
		Args:    words(1, -1, "FILE (- is standard input)"),
		RunE: func(_ *cobra.Command, files []string) error {
			if asJSON {
				return checkFiles(w, files, &jsonAnswer{w.out})
			}
			return checkFiles(w, files, &textAnswer{w: w, unit: unit})
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "one JSON object for each file, one a line, in mm and kN")
	addUnitFlag(c, &unit)
	return c
}

// An answer tells what came of each file, in the order in which they were
// named.
type answer interface {
	told(j judged) error
	failed(file string, err error) error
	end() error // once, after all files
}

// checkFiles goes through all files; one that cannot be judged stops nothing.
func checkFiles(w *world, files []string, a answer) error {
	if err := oneStdin(files); err != nil {
		return err
	}
	code := exitDone
	for first := 0; first < len(files); first += batch {
		part := files[first:min(first+batch, len(files))]
		found, errs := make([]judged, len(part)), make([]error, len(part))
		together(len(part), func(i int) { found[i], errs[i] = judgeWithTimes(w, part[i]) })
		for i, file := range part {
			err := errs[i]
			if err != nil {
				e := exit{code: exitFile, err: err}
				errors.As(err, &e)
				if e.code == exitFault && len(files) > 1 {
					e.err = fmt.Errorf("file %d: %w", first+i+1, e.err) // its name may be somebody's
				}
				complain(w.err, e.err)
				code = worse(code, e.code)
				err = a.failed(file, e.err)
			} else {
				code = worse(code, verdictExit(found[i].report.Outcome))
				err = a.told(found[i])
			}
			if err != nil {
				return err
			}
		}
	}
	if err := a.end(); err != nil || code == exitDone {
		return err
	}
	return exit{code: code}
}

// jsonAnswer writes one object a line.
type jsonAnswer struct{ out io.Writer }

func (a *jsonAnswer) told(j judged) error { return writeJSON(a.out, j.report) }

func (a *jsonAnswer) failed(file string, err error) error {
	return writeJSON(a.out, struct {
		File  string `json:"file"`
		Error string `json:"error"`
	}{file, err.Error()})
}

func (a *jsonAnswer) end() error { return nil }
