package pages

import (
	"fmt"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// Check is what check tells of a session that was judged: its verdicts, what is
// missing, what was found, the drill, which reading would do most, and which
// limits were moved. The cautions are another page.
func Check(f *sessions.File, r *rules.Report, l Look) []string {
	p := newPage(l)
	s := f.Session
	seen := s.DrillReview()
	p.line(fmt.Sprintf("%s: %s (%s)%s", p.typed(f.Name), r.Outcome.Loud(), rules.Tally(r.Checks), seen.But()))
	if about := join(p.typed(s.Climber), p.typed(s.Place), dayTold(s.Started)); about != "" {
		p.para(0, about)
	}
	p.verdicts("Musts", r.Checks, rules.Must)
	p.verdicts("Shoulds", r.Checks, rules.Should)
	p.items("Missing", rules.MissingNames(r.Checks))
	p.findings(r.Findings)
	if seen != nil {
		p.items("What was seen in the drill", seen.Words(p.Unit))
	}
	p.next(r)
	p.moved(s.Limits)
	return p.lines
}

// Cautions are what stands under every verdict.
func Cautions(l Look) []string {
	p := newPage(l)
	p.cautions()
	return p.lines
}

// under is how far the sentence of a check stands in, where there is room.
const under = 11

// verdicts lists the checks of one kind, the worst first.
func (p *page) verdicts(title string, all []rules.Check, kind rules.Kind) {
	blanks := under
	if p.Width < wideFrom {
		blanks = 4
	}
	p.section(title)
	for _, v := range rules.Verdicts() {
		for _, c := range all {
			if c.Kind == kind && c.Verdict == v {
				p.line("  " + pad(v.Loud(), under-3) + " " + c.Name)
				p.para(blanks, rules.Sentence(c, p.Unit))
			}
		}
	}
}

func (p *page) findings(all []rules.Finding) {
	if len(all) == 0 {
		return
	}
	p.section("Findings")
	for _, f := range all {
		p.item(f.Name, p.typed(f.In(p.Unit)))
	}
}

// moved tells the limits that the school had moved.
func (p *page) moved(limits map[rules.Limit]float64) {
	p.items("Limits moved by the school", rules.MovedWords(limits, p.Unit))
}

// next tells which reading would do most for a check that is not settled; what
// unknown checks wait for is told as missing.
func (p *page) next(r *rules.Report) {
	units := map[string]string{}
	for _, c := range r.Checks {
		units[c.Name] = c.Unit
	}
	var lines []string
	for _, n := range r.Next {
		if !n.UNow.Known() || !n.UThen.Known() {
			continue
		}
		unit, gain := p.unitOf(units[n.Check]), float64(n.UNow-n.UThen) // its size chooses the decimals
		lines = append(lines, fmt.Sprintf("%s: %s: ± %s becomes ± %s", n.Check, rules.InputName(n.Reading),
			rules.FormatValue(float64(n.UNow), gain, unit), rules.FormatValue(float64(n.UThen), gain, unit)))
	}
	p.items("Next reading worth taking three times afresh", lines)
}

// items is a section of lines; none where there are no lines.
func (p *page) items(title string, lines []string) {
	if len(lines) == 0 {
		return
	}
	p.section(title)
	for _, l := range lines {
		p.item("", l)
	}
}
