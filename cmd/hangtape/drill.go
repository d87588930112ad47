package main

import (
	"github.com/spf13/cobra"

	"example.com/hangtape/rules/drill"
	"example.com/hangtape/tui/number"
)

func drillCommand(w *world) *cobra.Command {
	var f drillFlags
	c := &cobra.Command{
		Use:   "drill FILE",
		Short: "The ground drill: steps, what each should show, what stops it",
		Long: `Plans the ground drill of a fitting: low at the base of the tree the hitches are
eased by hand, the climber hangs on the tether and comes back up. It tells how
high to hang, the steps in their order with what must be seen before the next,
what the model expects and what stops the drill, the ways from saddle to rope,
the force if the tether ever has to catch, and one move with this climber's
numbers. Where the file holds a drill that was done, that is held against the
model. FILE may be - for standard input.

The exit code is 0 where the drill may be done (and one that was done is as it
should be), 1 where it must not be since something fails, or one that was done
failed, 3 where it must not be since something is not known or not sure, or one
that was done disagrees with the model or was not seen whole, 4 where the file
cannot be read or says what cannot be.

--json prints one object: verdict; refused (verdict, text); room (boots above
the ground, seated), hang_at (least of it) and hang_higher; before (what comes
first) and steps (name, title, do, slack, see, stop, then, and expect: name,
what, value, u, unit); paths (chains, ways, shared); force (limits, drops,
points: peak by fall for a length of rope above, stay: least rope above by mass,
left_out); rehearsal (moves, net, height, count, least, most); seen (verdict,
findings, not_seen, stale, modulus in kN) or null; cautions. Lengths are in mm, forces
in kN; what is not known is null.`,
		Example: "  hangtape drill try-out/a-good-kit.toml\n  hangtape drill --height 12m try-out/a-good-kit.toml",
		Args:    words(1, 1, "FILE (- is standard input)"),
		RunE:    func(_ *cobra.Command, names []string) error { return runDrill(w, f, names[0]) },
	}
	c.Flags().StringVar(&f.height, "height", "", "`length` of a climb, such as 12m: how many moves it takes")
	c.Flags().BoolVar(&f.ascii, "ascii", false, "draw with ASCII signs alone")
	c.Flags().BoolVar(&f.json, "json", false, "print JSON")
	addUnitFlag(c, &f.unit)
	return c
}

// drillFlags are the words of a call of drill.
type drillFlags struct {
	height      string
	ascii, json bool
	unit        unitFlag
}

// drillAnswer is what is told of a drill.
type drillAnswer struct {
	plan   *drill.Plan
	review *drill.Review // nil where none was done
	height float64       // mm of a climb; 0 where none was asked for
	ascii  bool
}

// climbs are heights of a climb, in mm: a bare 12 is none, 12m is.
var climbs = number.Range{Least: 1000, Most: 150_000}

func runDrill(w *world, f drillFlags, name string) error {
	files, err := readFiles(w, []string{name})
	if err != nil {
		return err
	}
	s := files[0].Session
	unit := f.unit.of(s)
	a := drillAnswer{ascii: f.ascii || asciiOnly(w.env)}
	if f.height != "" {
		if a.height, err = lengthTyped("--height", f.height, unit, number.Laid, climbs); err != nil {
			return err
		}
	}
	if err := contain(func() error {
		a.plan, a.review = s.DrillPlan(), s.DrillReview()
		return nil
	}); err != nil {
		return err
	}
	if f.json {
		err = writeJSON(w.out, a.json(s.ID))
	} else {
		p := &page{unit: unit}
		p.drill(files[0], a)
		err = writePage(w.out, p)
	}
	if code := a.exit(); err == nil && code != exitDone {
		return exit{code: code}
	}
	return err
}

// exit is the code for the plan, or for the drill that was done where that came
// out worse.
func (a drillAnswer) exit() int {
	code := verdictExit(a.plan.Verdict())
	if a.review != nil {
		code = worse(code, verdictExit(a.review.Verdict))
	}
	return code
}
