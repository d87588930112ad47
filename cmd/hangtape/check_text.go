package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// textAnswer tells verdicts to people: one page a file, the cautions once.
type textAnswer struct {
	out   io.Writer
	unit  unitFlag
	pages int
}

func (a *textAnswer) told(j judged) error {
	p := &page{unit: a.unit.of(j.Session)}
	if a.pages++; a.pages > 1 {
		p.line("")
	}
	p.head(j)
	p.checks("Musts", j.report.Checks, rules.Must)
	p.checks("Shoulds", j.report.Checks, rules.Should)
	p.missing(j.report.Checks)
	p.findings(j.report.Findings)
	p.drilled(j.Session.DrillReview())
	p.next(j.report)
	p.limits(j.Session.Limits)
	_, err := io.WriteString(a.out, p.String())
	return err
}

// failed has nothing to add: the complaint says it all.
func (a *textAnswer) failed(string, error) error { return nil }

func (a *textAnswer) end() error {
	if a.pages == 0 {
		return nil
	}
	p := &page{}
	p.cautions()
	_, err := io.WriteString(a.out, p.String())
	return err
}

// page is the text of one file, as it grows.
type page struct {
	strings.Builder
	unit string
}

func (p *page) line(text string)     { p.WriteString(text + "\n") }
func (p *page) section(title string) { p.line("\n" + title) }

// title is a section's title that may be longer than a line.
func (p *page) title(text string) { p.section(indented(0, text)) }

// item is one entry of a section: a word or name, then the text.
func (p *page) item(name, text string) {
	if name != "" {
		text = name + ": " + text
	}
	p.line(indented(2, text))
}

func (p *page) head(j judged) {
	p.line(fmt.Sprintf("%s: %s (%s)", printable(j.Name), strings.ToUpper(string(j.report.Outcome)), rules.Tally(j.report.Checks)))
	p.about(j.Session)
}

// about tells whose session it is, where and when.
func (p *page) about(s *sessions.Session) {
	about := []string{s.Climber, s.Place}
	if !s.Started.IsZero() {
		about = append(about, s.Started.Format("2006-01-02"))
	}
	about = slices.DeleteFunc(about, func(a string) bool { return a == "" })
	if len(about) > 0 {
		p.line(printable(strings.Join(about, ", ")))
	}
}

func (p *page) cautions() {
	p.section("Cautions")
	for _, c := range append([]string{rules.ShortCaution}, rules.VerdictCautions()...) {
		p.item("", c)
	}
}

// checks lists the checks of one kind, the worst verdicts first.
func (p *page) checks(title string, all []rules.Check, kind rules.Kind) {
	p.section(title)
	for _, v := range []rules.Verdict{rules.Fail, rules.Unknown, rules.Tight, rules.Pass} {
		for _, c := range all {
			if c.Kind != kind || c.Verdict != v {
				continue
			}
			p.line(fmt.Sprintf("  %-8s %s", strings.ToUpper(string(v)), c.Name))
			p.line(indented(11, rules.Sentence(c, p.unit)))
		}
	}
}

// missing names once what any check waits for.
func (p *page) missing(checks []rules.Check) {
	var names []string
	for _, c := range checks {
		for _, key := range c.Missing {
			if name := rules.InputName(key); !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	if len(names) > 0 {
		p.section("Missing")
		for _, name := range names {
			p.item("", name)
		}
	}
}

func (p *page) findings(findings []rules.Finding) {
	if len(findings) > 0 {
		p.section("Findings")
		for _, f := range findings {
			p.item(f.Name, f.In(p.unit))
		}
	}
}

// next tells which reading would do most for a check that is not settled; what
// unknown checks wait for stands under Missing already.
func (p *page) next(r *rules.Report) {
	units := map[string]string{}
	for _, c := range r.Checks {
		units[c.Name] = c.Unit
	}
	titled := false
	for _, n := range r.Next {
		if !n.UNow.Known() || !n.UThen.Known() {
			continue
		}
		if !titled {
			p.section("Next reading worth taking three times afresh")
			titled = true
		}
		unit := units[n.Check]
		if rules.IsLength(unit) {
			unit = p.unit
		}
		gain := float64(n.UNow - n.UThen) // its size chooses the decimals
		p.item(n.Check, fmt.Sprintf("%s: ± %s becomes ± %s", rules.InputName(n.Reading),
			rules.FormatValue(float64(n.UNow), gain, unit), rules.FormatValue(float64(n.UThen), gain, unit)))
	}
}

// limits tells what the school moved, wherever it may have decided something.
func (p *page) limits(moved map[rules.Limit]float64) {
	if len(moved) == 0 {
		return
	}
	p.section("Limits moved by the school")
	for l := range rules.NumLimits {
		if v, ok := moved[l]; ok {
			info := l.Info()
			p.item(info.Name, fmt.Sprintf("%s in place of %s", p.limit(v, info.Unit), p.limit(info.Default, info.Unit)))
		}
	}
}

func (p *page) limit(v float64, unit string) string {
	if rules.IsLength(unit) {
		return rules.FormatLength(v, p.unit)
	}
	return strings.TrimSpace(fmt.Sprintf("%g %s", v, unit))
}
