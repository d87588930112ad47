package sideview

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// An entry is one line of the key.
type entry struct {
	marks []fit.Landmark
	name  string
	row   int // where its letter is
}

// keyWidth is how wide the key is: its letters and names, and with a space the
// heights.
func keyWidth(sh *fit.Shape, marks []fit.Landmark, o Options) (names, values int) {
	for _, m := range marks {
		names = max(names, len(asking)+2+len(nameOf(m, o.Width)))
		values = max(values, 1+len(rules.FormatLength(sh.At[m].Y, o.Unit)))
	}
	return names, values
}

// keyOf lists the letters beside the picture, each as near to its row as there
// is room. Where there are more letters than rows, couples share a line.
func keyOf(sh *fit.Shape, cells map[fit.Landmark]Cell, asked []fit.Landmark, l layout, o Options) []string {
	var entries []entry
	for _, k := range marks {
		if at, ok := cells[k.at]; ok {
			entries = append(entries, entry{[]fit.Landmark{k.at}, nameOf(k.at, o.Width), at.Row})
		}
	}
	coupled := len(entries) > l.rows
	if coupled {
		entries = couple(entries)
	}
	if len(entries) > l.rows {
		entries = entries[:l.rows]
	}
	sort.SliceStable(entries, func(i, j int) bool { return entries[i].row < entries[j].row })
	spread(entries, l.rows)

	nameWidth, valueWidth := 0, 0
	for _, e := range entries {
		nameWidth = max(nameWidth, len(e.letters())+1+len(e.name))
		valueWidth = max(valueWidth, len(rules.FormatLength(sh.At[e.marks[0]].Y, o.Unit)))
	}
	lines := make([]string, l.rows)
	for _, e := range entries {
		lead := " "
		if slices.ContainsFunc(asked, func(m fit.Landmark) bool { return slices.Contains(e.marks, m) }) {
			lead = asking
		}
		is := " "
		if slices.ContainsFunc(e.marks, func(m fit.Landmark) bool { return sh.Estimated[m] }) {
			is = estimate
		}
		line := lead + fmt.Sprintf("%-*s", nameWidth, e.letters()+is+e.name)
		if l.values && !coupled {
			line += fmt.Sprintf(" %*s", valueWidth, rules.FormatLength(sh.At[e.marks[0]].Y, o.Unit))
		}
		lines[e.row] = line
	}
	return lines
}

func (e entry) letters() string {
	var s strings.Builder
	for _, m := range e.marks {
		s.WriteRune(letterOf(m))
	}
	return s.String()
}

// couple joins the entries that can share a line.
func couple(entries []entry) []entry {
	var out []entry
	find := func(m fit.Landmark) int {
		return slices.IndexFunc(entries, func(e entry) bool { return e.marks[0] == m })
	}
	taken := map[fit.Landmark]bool{}
	for _, e := range entries {
		m := e.marks[0]
		if taken[m] {
			continue
		}
		for _, c := range couples {
			if i, j := find(c.a), find(c.b); i >= 0 && j >= 0 && (m == c.a || m == c.b) {
				e = entry{[]fit.Landmark{c.a, c.b}, c.name, min(entries[i].row, entries[j].row)}
				taken[c.a], taken[c.b] = true, true
			}
		}
		out = append(out, e)
	}
	return out
}

// spread moves entries, which are sorted by row, apart so that each has a row of
// its own and all lie within rows.
func spread(entries []entry, rows int) {
	for i := 1; i < len(entries); i++ {
		entries[i].row = max(entries[i].row, entries[i-1].row+1)
	}
	for i, last := len(entries)-1, rows; i >= 0; i-- {
		last = min(entries[i].row, last-1)
		entries[i].row = last
	}
}
