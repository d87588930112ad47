package sessions

import (
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// RulesFor is the limits that judge s: the defaults with what the school moved.
func (s *Session) RulesFor() rules.Limits { return rules.DefaultLimits().With(s.Limits) }

// fitting is what was read and told in s, as the rules take it.
func (s *Session) fitting() *fit.Fitting {
	f := s.Fit
	f.Started = s.Started
	return &f
}

// Judge judges the session afresh; where it was signed and comes out otherwise
// today, a finding says so. Readings that cannot be true together are a
// *FileError without lines, in the session's unit.
func (s *Session) Judge() (*rules.Report, error) {
	f := s.fitting()
	if err := fileError("", inputFaults(f.Faults(), s.Unit)); err != nil {
		return nil, err
	}
	r, err := rules.Judge(s.ID, f, s.RulesFor())
	if err != nil {
		return nil, err
	}
	if d := JudgedDifferently(s, r); len(d) > 0 {
		r.Findings = append(r.Findings, differently(s, d))
	}
	return r, nil
}

// Bare judges s as Judge does, but tells only the outcome and the checks, without
// their sentences: for lists of many sessions.
func (s *Session) Bare() (*rules.Report, error) {
	f := s.fitting()
	if err := fileError("", inputFaults(f.Faults(), s.Unit)); err != nil {
		return nil, err
	}
	return rules.Assess(f, s.RulesFor()).Bare(s.ID), nil
}

// Judge judges the session that was read; its *FileError names the lines.
func (f *File) Judge() (*rules.Report, error) {
	if err := f.Check(); err != nil {
		return nil, err
	}
	return f.Session.Judge()
}

// Check says, as a *FileError with lines, which readings cannot be true
// together.
func (f *File) Check() error {
	faults := inputFaults(f.Session.Fit.Faults(), MM)
	if len(faults) == 0 {
		return nil
	}
	source, _ := scan(f.Data)
	for i := range faults {
		first, _, _ := strings.Cut(faults[i].Key, ", ")
		faults[i].Line = source.line(first)
	}
	return fileError(f.Name, faults)
}

// inputFaults are the faults of a fitting as those of its file, with lengths in
// unit.
func inputFaults(of []fit.Fault, unit Unit) []Fault {
	tell := func(mm float64) string { return rules.FormatTyped(mm, string(unit)) }
	faults := make([]Fault, len(of))
	for i, f := range of {
		faults[i] = Fault{Key: strings.Join(f.Keys, ", "), Found: f.Told(tell), sentence: true}
	}
	return faults
}
