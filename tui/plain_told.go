package tui

import (
	"example.com/hangtape/rules"
	"example.com/hangtape/tui/flow"
)

// do hands an event to the flow, says what it answered, and saves.
func (p *plain) do(e flow.Event) {
	p.flow = p.flow.Do(e)
	switch said := p.flow.Said; said.Kind {
	case flow.Taken:
		p.say("Taken. %s", said.Text)
	case flow.Refused:
		p.say("Not taken: %s", said.Text)
	case flow.Noted, flow.Doubted:
		p.say("%s", said.Text)
	case flow.Nothing:
	}
	if t := p.flow.Tied; t != nil {
		p.do(addPiece(p.opts.storeOf(p.flow.Demo), *t, string(p.flow.Session.Unit), p.opts.Now()))
		return
	}
	if p.flow.Saves > p.saved {
		p.unsaved = p.editor.Save(&p.flow.Session)
		if p.unsaved != nil {
			p.say("Not saved: %s", p.unsaved)
			return
		}
		p.saved = p.flow.Saves
		go p.editor.Keep()
		p.tellChanges()
	}
	p.elsewhere()
}

// tellChanges says which verdicts are other than they were.
func (p *plain) tellChanges() {
	if p.flow.Report == nil || p.flow.IsHeld() { // a re-check has no verdicts
		return
	}
	for _, c := range worstFirst(p.flow.Report.Checks) {
		before, known := p.verdicts[c.Name]
		p.verdicts[c.Name] = c.Verdict
		if c.Verdict != before && (known || c.Verdict == rules.Fail) && !p.flow.TooSoon(c.Name) {
			p.say("%s: %s", plainVerdict(c), rules.Sentence(c, string(p.flow.Session.Unit)))
		}
	}
}

func plainVerdict(c rules.Check) string {
	return c.Verdict.Loud() + ", " + c.Name
}

// review says everything that the rules say, verdicts first.
func (p *plain) review() {
	for _, l := range reviewOf(&p.flow) {
		if l.check != nil {
			p.say("%s: %s", plainVerdict(*l.check), l.text)
			continue
		}
		p.say("%s", l.text)
	}
}
