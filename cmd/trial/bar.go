package main

import (
	"fmt"
	"io"
	"strings"
)

const barWidth = 40

// bar is a progress bar that redraws its one line when it grows or the per cent
// changes.
type bar struct {
	w           io.Writer
	steps, of   int
	lastPercent int
}

func newBar(w io.Writer, of int) *bar { return &bar{w: w, of: of, lastPercent: -1} }

func (b *bar) step() {
	b.steps++
	percent := 100 * b.steps / b.of
	if percent == b.lastPercent {
		return
	}
	b.lastPercent = percent
	full := barWidth * b.steps / b.of
	fmt.Fprintf(b.w, "\r[%s%s] %3d %%", strings.Repeat("#", full), strings.Repeat(".", barWidth-full), percent)
}

func (b *bar) done() { fmt.Fprintln(b.w) }
