// Surveygen computes the regressions of the body survey and writes them as Go
// source. It is run by go generate in package fit.
package main

import (
	"flag"
	"fmt"
	"os"
)

func main() {
	survey := flag.String("survey", "", "the survey's table, comma separated")
	out := flag.String("out", "", "the Go file to write")
	flag.Parse()
	if err := run(*survey, *out); err != nil {
		fmt.Fprintln(os.Stderr, "surveygen:", err)
		os.Exit(1)
	}
}

func run(survey, out string) error {
	f, err := os.Open(survey)
	if err != nil {
		return err
	}
	defer f.Close()
	people, err := readSurvey(f)
	if err != nil {
		return fmt.Errorf("%s: %w", survey, err)
	}
	src, err := source(people)
	if err != nil {
		return err
	}
	return os.WriteFile(out, src, 0o644)
}
