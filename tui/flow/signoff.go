package flow

import (
	"fmt"
	"strings"
	"time"

	"example.com/hangtape/rules"
)

// Against is what stands against the sign-off, in words; none where it can be signed.
func (s *State) Against() []string {
	var out []string
	if s.Demo {
		return []string{"the demo's data are invented; a demo cannot be signed"}
	}
	if s.ReChecking() {
		out = append(out, "a re-check is not signed off as a fitting")
	}
	if since := s.KitSince(); len(since) > 0 && s.SignNote == "" {
		out = append(out, since[0]+" Read it again, or say in the note to the sign-off that it is set back")
	}
	if s.Wrong != nil {
		return append(out, s.Wrong.Error())
	}
	for _, c := range s.Report.Checks {
		if c.Kind != rules.Must {
			continue
		}
		switch {
		case c.Verdict == rules.Fail, c.Verdict == rules.Unknown:
			out = append(out, fmt.Sprintf("%s: %s", c.Name, c.Verdict.Loud()))
		case c.Blocks:
			out = append(out, c.Name+": rests on a predicted length or height: read it again")
		}
	}
	if tight := s.tightMusts(); len(tight) > 0 && s.SignNote == "" {
		out = append(out, "a must is tight: say in the note why it is accepted ("+strings.Join(tight, ", ")+")")
	}
	if against := s.againstDrill(); against != "" {
		out = append(out, against)
	}
	if s.SignBy == "" {
		out = append(out, "nobody has given a name to sign with")
	}
	return out
}

// tightMusts are the names of the musts that are tight.
func (s *State) tightMusts() []string {
	var names []string
	if s.Wrong != nil {
		return nil
	}
	for _, c := range s.Report.Checks {
		if c.Kind == rules.Must && c.Verdict == rules.Tight {
			names = append(names, c.Name)
		}
	}
	return names
}

// noteFor is all that the one note to the sign-off has to answer for, as questions.
func (s *State) noteFor() []string {
	var out []string
	if len(s.KitSince()) > 0 {
		out = append(out, "is the kit set back to what it was here?")
	}
	for _, name := range s.tightMusts() {
		out = append(out, "why is "+name+" accepted, which is tight?")
	}
	switch seen := s.drill.seen; {
	case seen == nil && s.NeedDrill:
		out = append(out, "why is there no drill?")
	case seen == nil || seen.Verdict == rules.Fail:
	case seen.Verdict == rules.Tight:
		out = append(out, "why is it accepted that the drill disagrees with the model?")
	case seen.Stale:
		out = append(out, "why was the drill not done anew on the changed kit?")
	case len(seen.NotSeen) > 0 && s.NeedDrill:
		out = append(out, "why was the drill not seen whole?")
	}
	return out
}

// whyNote says what the note to the sign-off is for.
func (s *State) whyNote() []string {
	of := s.noteFor()
	if len(of) == 0 {
		return []string{"Nothing here needs a note."}
	}
	out := []string{"The note has to answer:"}
	for _, q := range of {
		out = append(out, "- "+q)
	}
	return out
}

// againstDrill is what stands against the sign-off because of the drill. One that
// failed cannot be noted away.
func (s *State) againstDrill() string {
	noted, seen := s.SignNote != "", s.drill.seen
	switch {
	case s.Session.Drill == nil && s.NeedDrill && !noted:
		return "the school requires the drill: do it, or say in the note why not"
	case seen == nil:
	case seen.Verdict == rules.Fail:
		return "the drill FAILED: find out why and do it anew"
	case seen.Verdict == rules.Tight && !noted:
		return "the drill disagrees with the model: read again what it names, or say in the note why it is accepted"
	case seen.Stale && !noted:
		return "the kit was changed since the drill: do it anew, or say in the note why not"
	case len(seen.NotSeen) > 0 && s.NeedDrill && !noted:
		return "the drill was not seen whole: finish it, or say in the note why not"
	}
	return ""
}

// sign signs the fitting off, unless something stands against it.
func (s *State) sign(now time.Time) {
	if against := s.Against(); len(against) > 0 {
		s.Said = Said{Kind: Refused, Text: "not signed: " + against[0]}
		return
	}
	d := s.Draft.clone()
	d.Session.Finished = now
	d.Session.Sign(d.SignBy, d.SignNote, now, s.Report)
	if s.commit(d) {
		s.Said = Said{Kind: Taken, Text: "signed by " + d.SignBy}
		s.Left = true
	}
}
