// Trial holds the whole tool against the truth: it fits 6,068 real bodies in a
// world of its own and counts how often the tool, and two rules of thumb, are
// right. Run it from the root of the module:
//
//	go run ./cmd/trial --date 2026-11-25
package main

import (
	"errors"
	"fmt"
	"os"
	"runtime"
	"runtime/debug"
	"strings"

	"github.com/spf13/pflag"
)

func main() {
	var o options
	flags := pflag.NewFlagSet("trial", pflag.ContinueOnError)
	flags.StringVar(&o.survey, "survey", "testdata/survey/ansur2.csv", "the body survey")
	flags.Uint64Var(&o.seed, "seed", 1, "seed of everything drawn")
	flags.IntVar(&o.bodies, "bodies", 0, "try so many bodies, spread over the survey; 0: all")
	flags.Float64SliceVar(&o.scales, "scales", []float64{1, 1.5, 2}, "widths of the true spreads, in what the tool assumes")
	flags.BoolVar(&o.tuning, "tuning", false, "try the tool on the bodies that its regression has seen, to look for what is wrong; report rows tune nothing")
	flags.StringVar(&o.date, "date", "", "date to print on the report")
	flags.StringVar(&o.out, "out", "", "folder for trial.md and trial.svg; else the report goes to standard output")
	flags.IntVar(&o.workers, "workers", runtime.NumCPU(), "bodies tried at once")
	if err := flags.Parse(os.Args[1:]); err != nil {
		if errors.Is(err, pflag.ErrHelp) {
			return
		}
		os.Exit(2)
	}
	debug.SetGCPercent(400) // memory is plenty, and a sixth of the time is saved
	o.command = strings.Join(append([]string{"go run ./cmd/trial"}, os.Args[1:]...), " ")
	if err := run(o, os.Stdout, os.Stderr); err != nil {
		fmt.Fprintln(os.Stderr, "trial:", err)
		os.Exit(1)
	}
}
