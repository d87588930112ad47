package sheet

import (
	"fmt"
	"strings"

	"example.com/hangtape/rules"
)

// middle has the drawing on the left, with the drill and what the school moved
// under it, and the checks on the right.
func (l *layout) middle(y float64) float64 {
	x, w := l.sides()
	bottom := l.allChecks(x, y, l.free.Right-x)
	shown := leastShown
	switch {
	case l.card.Figure.Instead != "":
		shown = leastInstead
	case l.detail <= marginsOnly:
		shown = leastShownAtAll
	}
	high := max(bottom-y-l.under(l.free.Left, 0, w, false), shown)
	l.figure(l.card.Figure, Box{l.free.Left, y, l.free.Left + w, y + high})
	return max(bottom, l.under(l.free.Left, y+high, w, true))
}

// sides are where the checks start, and how wide the figure beside them is.
func (l *layout) sides() (x, w float64) {
	const share, between = 0.47, 12.0
	return l.free.Left + share*l.wide(), share*l.wide() - between
}

// allChecks are both kinds, musts first.
func (l *layout) allChecks(x, y, w float64) float64 {
	y = l.checks(x, y, w, "Musts", l.card.Musts, true)
	return l.checks(x, y+4, w, "Shoulds", l.card.Shoulds, false)
}

// checks are those of one kind, the worst first.
func (l *layout) checks(x, y, w float64, title string, checks []Check, must bool) float64 {
	const words, name, indent = 70.0, 106.0, 3.0
	y = l.heading(x, y, w, title)
	var passes []string
	for _, c := range checks {
		if l.detail == passesRunOn && c.Verdict == rules.Pass {
			passes = append(passes, c.Name+" "+c.Told())
			continue
		}
		base := y + ascent*verdict + l.loose/2
		if c.Verdict == rules.Pass {
			l.text(x+0.3*verdict, base, verdict, true, c.Word())
		} else {
			y++
			base++
			l.pen.verdict(x, base, verdict, c.Verdict)
		}
		l.text(x+words, base, small, false, c.Name)
		lines := l.lines(c.Told(), w-words-name, small, true)
		for i, s := range lines {
			l.text(x+words+name, base+float64(i)*leading*small, small, true, s)
		}
		y += l.loose + 1.1*verdict + float64(max(len(lines)-1, 0))*leading*small
		if l.told(c, must) {
			y = l.para(x+indent, y+1.5, w-indent, small, false, c.Text) + 1
		}
	}
	if len(passes) > 0 {
		y = l.para(x+indent, y+1.5, w-indent, small, false, rules.Pass.Loud()+": "+strings.Join(passes, "; "))
	}
	return y
}

// told says whether a check is told with its sentence.
func (l *layout) told(c Check, must bool) bool {
	switch l.detail {
	case allButPasses:
		return c.Verdict != rules.Pass
	case musts:
		return must && c.Verdict != rules.Pass
	case failsInWords:
		return must && c.Verdict == rules.Fail
	}
	return false
}

// under is what stands under the figure, from the top y down; it returns where
// it ends.
func (l *layout) under(x, y, w float64, draw bool) float64 {
	p := l.pen
	if !draw {
		p.Drawing = &Drawing{}
	}
	findings := l.card.Findings
	if l.detail <= inShort {
		findings = counted(findings)
	}
	y = p.heading(x, y+4, w, "Ground drill")
	y = p.para(x, y, w, small, true, l.card.Drill[0])
	for _, s := range l.run(l.card.Drill[1:], w) {
		y = p.para(x, y, w, small, false, s)
	}
	for _, part := range []struct {
		title string
		lines []string
	}{{"Limits moved by the school", l.run(l.card.Limits, w)}, {"Findings", findings}, {"Missing", l.run(l.card.Missing, w)}} {
		if len(part.lines) == 0 {
			continue
		}
		y = p.heading(x, y+4, w, part.title)
		for _, s := range part.lines {
			y = p.para(x, y, w, small, false, s)
		}
	}
	return y
}

// counted names findings once, with how many there are of each.
func counted(findings []string) []string {
	var names []string
	of := map[string]int{}
	for _, f := range findings {
		name, _, _ := strings.Cut(f, ":")
		if of[name]++; of[name] == 1 {
			names = append(names, name)
		}
	}
	for i, name := range names {
		if of[name] > 1 {
			names[i] = fmt.Sprintf("%d %s", of[name], name)
		}
	}
	if len(names) == 0 {
		return nil
	}
	return []string{strings.Join(names, ", ") + ": hangtape check tells each"}
}

// run is lines run on, to save room: as many of them as may be told within width
// w, and how many more there are.
func (l *layout) run(lines []string, w float64) []string {
	told := runOn(lines)
	for n := len(lines) - 1; n >= 0 && len(l.lines(told[0], w, small, false)) > l.most; n-- {
		left := fmt.Sprintf("and %d more, which hangtape show tells", len(lines)-n)
		if n == 0 {
			left = rules.Count(len(lines), "thing", "things") + " that hangtape show tells"
		}
		told = runOn(append(lines[:n:n], left))
	}
	return told
}

// runOn puts lines into one; none where there are none.
func runOn(lines []string) []string {
	if len(lines) == 0 {
		return nil
	}
	return []string{strings.Join(lines, "; ")}
}
