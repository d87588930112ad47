package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"

	"example.com/hangtape/cmd/trial/leftout"
	"example.com/hangtape/cmd/trial/runs"
	"example.com/hangtape/cmd/trial/tally"
	"example.com/hangtape/cmd/trial/truth"
	"example.com/hangtape/rules"
)

// options are the flags of the command, which tells what they are.
type options struct {
	survey, date, out, command string
	seed                       uint64
	bodies, workers            int
	scales                     []float64
	tuning                     bool
}

// reportEvery is which rows report: every fifth. They are left out of the
// regression that serves them, and nothing is tuned on them.
const reportEvery = 5

func reports(b truth.Body) bool { return b.Row%reportEvery == 0 }

func run(o options, out, progress io.Writer) error {
	bodies, err := readBodies(o.survey)
	if err != nil {
		return err
	}
	scales := try(o, bodies, progress)
	tables := tally.Tables(scales)
	if o.out == "" {
		return text(out, o, tables)
	}
	if err := writeFile(filepath.Join(o.out, "trial.md"), func(w io.Writer) error { return markdown(w, o, tables) }); err != nil {
		return err
	}
	return writeFile(filepath.Join(o.out, "trial.svg"), func(w io.Writer) error { return picture(w, scales) })
}

// try puts the bodies through every scale.
func try(o options, bodies []truth.Body, progress io.Writer) []*tally.Scale {
	var seen []truth.Body
	for _, b := range bodies {
		if !reports(b) {
			seen = append(seen, b)
		}
	}
	survey := leftout.Regressions(seen)
	chosen, tool := choose(o, bodies)
	bar := newBar(progress, len(chosen)*len(o.scales))
	var scales []*tally.Scale
	for _, width := range o.scales {
		bench := runs.NewBench(o.seed, width, rules.DefaultLimits(), survey)
		scales = append(scales, tally.Count(width, bench.Run(chosen, tool, o.workers, bar.step)))
	}
	bar.done()
	return scales
}

// choose picks the bodies, and which of them the tool is tried on: the report
// rows, or where the run is for tuning as many of the others.
func choose(o options, bodies []truth.Body) (chosen []truth.Body, tool func(truth.Body) bool) {
	tool = reports
	if o.tuning {
		tool = func(b truth.Body) bool { return b.Row%reportEvery == 2 }
	}
	if o.bodies <= 0 {
		return bodies, tool
	}
	var tried []truth.Body
	for _, b := range bodies {
		if tool(b) {
			tried = append(tried, b)
		}
	}
	n := min(o.bodies, len(tried))
	for i := range n {
		chosen = append(chosen, tried[i*len(tried)/n])
	}
	return chosen, tool
}

func readBodies(name string) ([]truth.Body, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return truth.ReadBodies(f)
}

func writeFile(name string, write func(io.Writer) error) error {
	f, err := os.Create(name)
	if err != nil {
		return err
	}
	if err := write(f); err != nil {
		f.Close()
		return err
	}
	return f.Close()
}

func text(w io.Writer, o options, tables []tally.Table) error {
	fmt.Fprintf(w, "%s\n\n", heading(o))
	for i := range tables {
		if err := tables[i].Text(w); err != nil {
			return err
		}
	}
	return nil
}

func markdown(w io.Writer, o options, tables []tally.Table) error {
	fmt.Fprintf(w, "# The trial\n\n%s\n\n![On how many bodies every must truly holds, how often told margins hold the true one, and blunders noticed](trial.svg)\n\n", heading(o))
	for i := range tables {
		if err := tables[i].Markdown(w); err != nil {
			return err
		}
	}
	return nil
}

func heading(o options) string {
	line := fmt.Sprintf("Seed %d; `%s`", o.seed, o.command)
	if o.date != "" {
		line += "; " + o.date
	}
	return line + "."
}
