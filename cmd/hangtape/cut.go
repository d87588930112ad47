package main

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"

	"example.com/hangtape/fit"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/number"
)

// cutFlags are the words of a call of cut, as typed.
type cutFlags struct {
	finished, cord, rope, eye, tail string
	wraps, strands                  int
	knot, hitch                     string
	spool                           string
	tied                            bool
	cut, bothTails                  string
	unit                            unitFlag
	json                            bool
}

func cutCommand(w *world) *cobra.Command {
	var f cutFlags
	c := &cobra.Command{
		Use:   "cut PIECE | COUNTxLENGTH…",
		Short: "How much cord to cut for a piece, and what a spool gives",
		Long: `Tells how much cord to cut for a hitch, a foot-loop, a tether or a bridge, where
the cord goes, and what was taken for granted. Lengths may have a unit: 178mm,
"7 in", 17.8cm; without one they are in --unit. Diameters without one are in mm.

Knots use cord, and how much is hardly published. Keep what your own pieces took
(--tied, with --cut and --both-tails), and the next ones come out closer. --tied
alone lists them.

With lengths in place of a PIECE, --spool tells which to cut from which spool.

--json prints one object: piece, finished, cord, rope, wraps, strands, knot,
hitch, eye and tail as they were taken; cut; takes and interval (without
trimming, and its 95 % bounds); parts; coefficients in multiples of the cord's
diameter, with prior, standard deviation and origin; scatter; tied (own pieces
learnt from); spool; cautions. Lengths are in mm.`,
		Example: `  hangtape cut tether --finished 7in --cord 8 --unit in
  hangtape cut hitch --finished 330 --cord 8 --rope 11.4 --wraps 6
  hangtape cut --tied tether --cut 1130 --finished 182 --both-tails 290 --cord 8
  hangtape cut --spool 50m 4x1530 2x1130 2x2600`,
		RunE: func(c *cobra.Command, args []string) error { return runCut(w, c, f, args) },
	}
	flags := c.Flags()
	flags.SortFlags = false
	flags.StringVar(&f.finished, "finished", "", "`length` when tied, laid on snug; a hitch: from the connector to the wraps")
	flags.StringVar(&f.cord, "cord", "", "`diameter` of the cord")
	flags.StringVar(&f.rope, "rope", "", "`diameter` of the rope that a hitch goes on")
	flags.IntVar(&f.wraps, "wraps", 0, "`turns` of the single cord on the rope: three wraps of a doubled loop are 6 (hitch: 6)")
	flags.IntVar(&f.strands, "strands", 0, "strands side by side, an even `number` for a closed loop (hitch, tether: 2; others: 1)")
	flags.StringVar(&f.knot, "knot", "", "`knot` that closes a loop ("+fit.KnotKeys(fit.ClosesLoop)+") or ends a line ("+fit.KnotKeys(fit.AtEachEnd)+")")
	flags.StringVar(&f.hitch, "hitch", "", "how a loop sits on its connector, a `knot`: "+fit.KnotKeys(fit.OnConnector))
	flags.StringVar(&f.eye, "eye", "", "`length` of the eye at each end of a foot-loop (305mm)")
	flags.StringVar(&f.tail, "tail", "", "least `length` of each tail (100mm)")
	flags.StringVar(&f.spool, "spool", "", "`length` of a spool: how many come out of it")
	flags.BoolVar(&f.tied, "tied", false, "keep a piece that was tied, or list them")
	flags.StringVar(&f.cut, "cut", "", "with --tied: `length` that was cut")
	flags.StringVar(&f.bothTails, "both-tails", "", "with --tied: `length` of both tails together, before they were trimmed")
	addUnitFlag(c, &f.unit)
	flags.Lookup("unit").Usage = "the unit of lengths, typed without one and told; without it mm"
	flags.BoolVar(&f.json, "json", false, "print JSON")
	return c
}

func runCut(w *world, c *cobra.Command, f cutFlags, args []string) error {
	if f.unit == "" {
		f.unit = unitFlag(sessions.MM)
	}
	switch {
	case len(args) == 0 && f.tied:
		return listTied(w, f)
	case len(args) == 0 && f.spool != "":
		return callError(c, "--spool needs the lengths to cut from it, such as 4x1530 2x1130, or a PIECE: %s", strings.Join(pieceWords(), ", "))
	case len(args) == 0:
		return callError(c, "cut needs a PIECE: %s; or lengths and --spool", strings.Join(pieceWords(), ", "))
	case startsWithDigit(args[0]):
		return cutSpools(w, f, args)
	case len(args) > 1:
		return usage("cut takes one PIECE, got %q and %q", args[0], args[1])
	}
	cord, err := f.cordFor(c, args[0])
	if err != nil {
		return err
	}
	if f.tied {
		return keepTied(w, f, cord)
	}
	if f.cut != "" || f.bothTails != "" {
		return usage("--cut and --both-tails are of a piece that was tied: add --tied")
	}
	return cutPiece(w, f, cord)
}

// cordFor is the piece that the call asks for, in the usual way where it does
// not say.
func (f cutFlags) cordFor(c *cobra.Command, piece string) (cord fit.Cord, err error) {
	use, err := useByWord(piece)
	if err != nil {
		return cord, err
	}
	cord = fit.StandardCord(use)
	said := c.Flags().Changed
	if said("strands") {
		cord = cord.WithStrands(f.strands)
	}
	if said("knot") {
		k, ok := fit.KnotByKey(f.knot)
		if !ok {
			return cord, usage("--knot is %q; accepted is %s, %s", f.knot, fit.KnotKeys(fit.ClosesLoop), fit.KnotKeys(fit.AtEachEnd))
		}
		cord = cord.WithClosing(k)
	}
	if said("hitch") {
		k, ok := fit.KnotByKey(f.hitch)
		if !ok {
			return cord, usage("--hitch is %q; accepted is %s", f.hitch, fit.KnotKeys(fit.OnConnector))
		}
		cord.Hitch = k
	}
	if said("wraps") {
		cord.Wraps = f.wraps
	}
	lengths := []struct {
		flag, typed string
		kind        number.Kind
		accepted    number.Range
		needed      bool
		into        *float64
	}{
		{"finished", f.finished, number.Laid, number.Range{Least: fit.LeastFinished, Most: fit.MostFinished}, true, &cord.Finished},
		{"cord", f.cord, number.Diameter, number.Range{Least: fit.LeastCord, Most: fit.MostCord}, true, &cord.Diameter},
		{"rope", f.rope, number.Diameter, number.Range{Least: fit.LeastHost, Most: fit.MostHost}, use == fit.CordHitch, &cord.Host},
		{"eye", f.eye, number.Laid, number.Range{}, false, &cord.Eye},
		{"tail", f.tail, number.Laid, number.Range{}, false, &cord.Tail},
	}
	var missing []string
	for _, l := range lengths {
		if l.needed && !said(l.flag) {
			missing = append(missing, "--"+l.flag)
		}
		if said(l.flag) {
			if *l.into, err = lengthTyped("--"+l.flag, l.typed, string(f.unit), l.kind, l.accepted); err != nil {
				return cord, err
			}
		}
	}
	if len(missing) > 0 {
		return cord, usage("cut %s needs %s", piece, strings.Join(missing, ", "))
	}
	if said("rope") && use != fit.CordHitch {
		return cord, usage("--rope is of a hitch: a %s has no turns on the rope", piece)
	}
	return cord, flagError(cord.Check())
}

// flagError puts what cannot be of a piece in the words of the call.
func flagError(err error) error {
	if wrong := (*fit.CordError)(nil); errors.As(err, &wrong) {
		return usage("--%s is %s; accepted is %s", wrong.Name, wrong.Found, wrong.Accepted)
	}
	return err
}

func useByWord(word string) (fit.CordUse, error) {
	for u := range fit.NumCordUses {
		if u.Key() == word {
			return u, nil
		}
	}
	return 0, usage("cut knows no piece %q; accepted is %s", word, strings.Join(pieceWords(), ", "))
}

func pieceWords() []string {
	var words []string
	for u := range fit.NumCordUses {
		words = append(words, u.Key())
	}
	return words
}

func startsWithDigit(word string) bool { return word != "" && word[0] >= '0' && word[0] <= '9' }
