package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"io"
	"os"
	"runtime"
	"strings"
	"testing"

	"example.com/hangtape/cmd/trial/tally"
)

var update = flag.Bool("update", false, "write testdata/figures.json anew; say in the commit which figures moved and why")

const goldenFigures = "testdata/figures.json"

// reduced is the trial on 300 bodies at scale 1; under the race detector, which is
// many times slower and asks another question, on 12.
func reduced() options {
	o := options{survey: "../../testdata/survey/ansur2.csv", seed: 1, bodies: 300, workers: runtime.NumCPU(), scales: []float64{1}}
	if raceDetector {
		o.bodies = 12
	}
	return o
}

// A change that makes a figure of the reduced run worse, by more than a standard
// deviation of it, has to say so and why. Seeds are fixed: nothing but a change
// of the code moves a figure.
func TestNoFigureGotWorse(t *testing.T) {
	o := reduced()
	bodies, err := readBodies(o.survey)
	if err != nil {
		t.Fatal(err)
	}
	scales := try(o, bodies, io.Discard)
	for _, write := range []func(io.Writer) error{
		func(w io.Writer) error { return text(w, o, tally.Tables(scales)) },
		func(w io.Writer) error { return markdown(w, o, tally.Tables(scales)) },
		func(w io.Writer) error { return picture(w, scales) },
	} {
		var b bytes.Buffer
		if err := write(&b); err != nil || b.Len() == 0 || strings.Contains(b.String(), "NaN") {
			t.Errorf("%d bytes, %v", b.Len(), err)
		}
	}
	if raceDetector {
		return
	}
	figures := scales[0].Figures()
	if *update {
		writeGolden(t, figures)
	}
	golden := readGolden(t)
	if len(golden) != len(figures) {
		t.Fatalf("%d figures, the golden file has %d", len(figures), len(golden))
	}
	for i, f := range figures {
		switch {
		case f.Name != golden[i].Name:
			t.Errorf("figure %d is %q, was %q", i, f.Name, golden[i].Name)
		case f.Worse(golden[i]):
			t.Errorf("%s: %.4f, was %.4f", f.Name, f.Value, golden[i].Value)
		case golden[i].Worse(f):
			t.Logf("%s got better: %.4f, was %.4f (write the golden figures anew with -update)", f.Name, f.Value, golden[i].Value)
		}
	}
}

func writeGolden(t *testing.T, figures []tally.Figure) {
	t.Helper()
	data, err := json.MarshalIndent(figures, "", " ")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(goldenFigures, append(data, '\n'), 0o644); err != nil {
		t.Fatal(err)
	}
}

func readGolden(t *testing.T) []tally.Figure {
	t.Helper()
	data, err := os.ReadFile(goldenFigures)
	if err != nil {
		t.Fatal(err)
	}
	var figures []tally.Figure
	if err := json.Unmarshal(data, &figures); err != nil {
		t.Fatal(err)
	}
	return figures
}

// The result does not depend on how many bodies are tried at once.
func TestWorkersDoNotMatter(t *testing.T) {
	o := reduced()
	o.bodies = 6
	bodies, err := readBodies(o.survey)
	if err != nil {
		t.Fatal(err)
	}
	report := func(workers int) string {
		o.workers = workers
		var b bytes.Buffer
		if err := text(&b, o, tally.Tables(try(o, bodies, io.Discard))); err != nil {
			t.Fatal(err)
		}
		return b.String()
	}
	if report(1) != report(3) {
		t.Error("one worker and three report different figures")
	}
}

func TestBar(t *testing.T) {
	var b bytes.Buffer
	bar := newBar(&b, 200)
	for range 200 {
		bar.step()
	}
	bar.done()
	lines := strings.Split(b.String(), "\r")
	if len(lines) != 102 || !strings.HasSuffix(b.String(), "] 100 %\n") {
		t.Errorf("%d redraws, ending in %q", len(lines)-1, lines[len(lines)-1])
	}
}
