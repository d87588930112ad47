package main

import (
	"example.com/hangtape/rules"
	"example.com/hangtape/rules/advice"
)

// checkIn tells how the check of a topic stands in a session file, and what a
// longer piece does to the end that decides it.
func checkIn(w *world, topic rules.Topic, file string) (string, error) {
	check, ok := rules.CheckNamed(topic.Name)
	if !ok {
		return "", usage("--file needs the NAME of a check, and %s is none", topic.Name)
	}
	files, err := readFiles(w, []string{file})
	if err != nil {
		return "", err
	}
	s := files[0].Session
	unit := unitFlag("")
	p := &page{unit: unit.of(s)}
	err = contain(func() error {
		a := rules.Assess(&s.Fit, s.RulesFor())
		c := a.Check(check)
		p.title("In " + printable(files[0].Name))
		p.item(c.Verdict.Loud(), rules.Sentence(c, p.unit))
		if c.Verdict == rules.Unknown {
			return nil
		}
		p.slopes(check.UnitAt(c.At), advice.Sensitivities(&s.Fit, s.RulesFor()).Of(a.Deciding(check)))
		return nil
	})
	return p.String(), err
}

// slopes tells what longer pieces do to a margin in unit.
func (p *page) slopes(unit string, slopes []advice.Slope) {
	if len(slopes) == 0 {
		p.item("", "No length of the kit that is known moves it.")
		return
	}
	p.title("What a longer piece does to its margin")
	for _, s := range slopes {
		p.item("", s.Words(unit, p.unit))
	}
}
