package main

import (
	"io"

	"github.com/spf13/cobra"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
	"example.com/hangtape/sessions"
)

func adviseCommand(w *world) *cobra.Command {
	var asJSON bool
	var unit unitFlag
	c := &cobra.Command{
		Use:   "advise FILE…",
		Short: "Say what to change: which piece, to what, within which window",
		Long: `Says which piece of the kit to change, to what length, and within which window:
the least change with which every must passes, and the best fit, which meets the
most shoulds beside them. With several files: one kit for all of these climbers,
or who cannot share one, and why. FILE may be -, once, for standard input.

Lengths come on the marks of a tape: 5 mm, or 1/4 in where people read in
inches. All verdicts are predicted: set, hang, read again.

The exit code is 0 for an answer, also that there is nothing to change, 1 where
no set of lengths can pass, 4 where a file cannot be read or says what cannot
be.`,
		Example: "  hangtape advise try-out/b-short-bridge.toml\n  hangtape advise --json one.toml another.toml",
		Args:    words(1, -1, "FILE (- is standard input)"),
		RunE: func(_ *cobra.Command, names []string) error {
			files, err := readFiles(w, names)
			if err != nil {
				return err
			}
			a := adviceTold{out: w.out, json: asJSON, unit: unit.of(files[0].Session)}
			a.cord = func(f *fit.Fitting) func(fit.Piece, float64) string { return cordOf(w, f, a.unit) }
			if len(files) == 1 {
				return a.single(files[0])
			}
			return a.shared(files)
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "one JSON object, in mm and kN")
	addUnitFlag(c, &unit)
	return c
}

// adviceTold tells advice, in words or as JSON.
type adviceTold struct {
	out  io.Writer
	json bool
	unit string
	cord func(f *fit.Fitting) func(fit.Piece, float64) string // for one file; see cordOf
}

// single tells the advice for one fitting.
func (a *adviceTold) single(f *sessions.File) error {
	s := f.Session
	var ans *advice.Answer
	err := contain(func() error {
		ans = advice.Advise(s.ID, &s.Fit, s.RulesFor(), rules.MarkIn(a.unit))
		return nil
	})
	if err == nil {
		err = a.write(ans, func(p *advicePage) {
			p.cord = a.cord(&s.Fit)
			p.answer(f, ans)
		})
	}
	return conflicting(err, ans != nil && ans.Conflict != nil)
}

// shared tells the advice for one kit that several climbers are to share.
func (a *adviceTold) shared(files []*sessions.File) error {
	list := make([]advice.Sharer, len(files))
	for i, f := range files {
		list[i] = advice.Sharer{File: f.Name, Fitting: &f.Session.Fit, Limits: f.Session.RulesFor()}
	}
	var ans *advice.SharedAnswer
	err := contain(func() error {
		ans = advice.AdviseTogether(list, rules.MarkIn(a.unit))
		return nil
	})
	if err == nil {
		err = a.write(ans, func(p *advicePage) { p.shared(files, ans) })
	}
	return conflicting(err, ans != nil && ans.Conflict != nil)
}

// write writes ans for programs, or what tell puts on a page for people.
func (a *adviceTold) write(ans any, tell func(p *advicePage)) error {
	if a.json {
		return writeJSON(a.out, ans)
	}
	p := &advicePage{page: page{unit: a.unit}}
	tell(p)
	return writePage(a.out, &p.page)
}

// cordOf tells how much cord to cut for a piece of f, by the pieces that were
// tied. A file of them that cannot be read is complained of and teaches nothing:
// what is cut is then cut long.
func cordOf(w *world, f *fit.Fitting, unit string) func(fit.Piece, float64) string {
	m, err := cordModel(w)
	if err != nil {
		complain(w.err, err)
		m = fit.LearnCord(nil)
	}
	return func(p fit.Piece, finished float64) string { return rules.CordToCut(m, f, p, finished, unit) }
}

// conflicting is err, or else the exit of an answer that no set can pass.
func conflicting(err error, conflict bool) error {
	if err == nil && conflict {
		return exit{code: exitFails}
	}
	return err
}
