package main

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/tui/number"
)

// cutSpools tells which of the wanted pieces to cut from which spool.
func cutSpools(w *world, f cutFlags, args []string) error {
	if f.spool == "" {
		return usage("lengths to cut need --spool, the length of a spool, such as --spool 50m")
	}
	if f.tied {
		return usage("--tied needs a PIECE: %s", strings.Join(pieceWords(), ", "))
	}
	spool, err := lengthTyped("--spool", f.spool, string(f.unit), number.Laid, number.Range{})
	if err != nil {
		return err
	}
	var wants []fit.Want
	for _, a := range args {
		want, err := f.want(a)
		if err != nil {
			return err
		}
		wants = append(wants, want)
	}
	plan, err := fit.PlanSpools(spool, wants)
	if err != nil {
		for _, want := range wants {
			if unit := string(f.unit); want.Length > spool {
				return usage("a piece of %s does not come out of a spool of %s; take a longer spool", rules.FormatLength(want.Length, unit), rules.FormatLength(spool, unit))
			}
		}
		return usage("%w", err)
	}
	if f.json {
		return writeJSON(w.out, plansJSON(spool, plan))
	}
	return writePage(w.out, spoolText(spool, plan, string(f.unit)))
}

// want reads COUNTxLENGTH, or a LENGTH alone.
func (f cutFlags) want(typed string) (fit.Want, error) {
	n, length := 1, typed
	if before, after, ok := strings.Cut(typed, "x"); ok {
		var err error
		if n, err = strconv.Atoi(before); err != nil || n < 1 || after == "" {
			return fit.Want{}, usage("%q cannot be; accepted is COUNTxLENGTH, such as 4x1530 or 2x45in", typed)
		}
		length = after
	}
	mm, err := lengthTyped(strconv.Quote(typed), length, string(f.unit), number.Laid, number.Range{})
	return fit.Want{Count: n, Length: mm}, err
}

func spoolText(spool float64, plan fit.SpoolPlan, unit string) *page {
	p := &page{unit: unit}
	show := func(mm float64) string { return rules.FormatLength(mm, unit) }
	said := "no plan does with fewer spools, or leaves a longer piece"
	if !plan.Exact {
		said = fmt.Sprintf("the best plan found; fewer than %d cannot do", plan.Least)
	}
	p.line(fmt.Sprintf("%s of %s: %s.", rules.Count(len(plan.Spools), "spool", "spools"), spoolLength(spool, unit), said))
	for i, pieces := range plan.Spools {
		var groups []string
		for _, w := range alike(pieces) {
			groups = append(groups, fmt.Sprintf("%d x %s", w.Count, show(w.Length)))
		}
		p.item("", fmt.Sprintf("%d. %s; %s left", i+1, strings.Join(groups, ", "), show(plan.Leftover[i])))
	}
	return p
}

// spoolLength is the length of a spool as it is sold.
func spoolLength(mm float64, unit string) string {
	if mm >= 1000 && unit != "in" {
		return shortest(mm/1000) + " m"
	}
	return rules.FormatLength(mm, unit)
}

// alike counts pieces of one length that follow each other.
func alike(pieces []float64) (groups []fit.Want) {
	for _, l := range pieces {
		if n := len(groups); n > 0 && groups[n-1].Length == l {
			groups[n-1].Count++
		} else {
			groups = append(groups, fit.Want{Count: 1, Length: l})
		}
	}
	return groups
}

// spoolsJSON is which pieces to cut from which spool, for programs; in mm.
type spoolsJSON struct {
	Format int        `json:"format"`
	Spool  rules.Num  `json:"spool"`
	Exact  bool       `json:"exact"` // no plan is better
	Least  int        `json:"least"` // no plan has fewer spools
	Spools []planJSON `json:"spools"`
}

type planJSON struct {
	Pieces   []rules.Num `json:"pieces"`
	Leftover rules.Num   `json:"leftover"`
}

func plansJSON(spool float64, plan fit.SpoolPlan) spoolsJSON {
	out := spoolsJSON{Format: 1, Spool: tenth(spool), Exact: plan.Exact, Least: plan.Least}
	for i, pieces := range plan.Spools {
		p := planJSON{Leftover: tenth(plan.Leftover[i])}
		for _, l := range pieces {
			p.Pieces = append(p.Pieces, tenth(l))
		}
		out.Spools = append(out.Spools, p)
	}
	return out
}
