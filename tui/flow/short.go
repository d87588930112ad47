package flow

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// shortSaid is the sentence in the notes that makes a fitting a short one, so
// that it goes on as one when it is resumed, and its reader knows why readings
// are missing.
const shortSaid = "Short fitting: what is read was chosen by what it settles"

// shortFitting is the answer to why the climber hangs that starts one.
func shortFitting() Option {
	return Option{Word: "short fitting: the tool picks readings", set: func(d *Draft) {
		d.Session.Purpose = sessions.FirstFitting
		d.Session.Notes = remarked(d.Session.Notes, shortSaid, shortSaid)
	}}
}

// atLength takes back that the fitting is a short one where o is chosen.
func atLength(o Option) Option {
	set := o.set
	o.set = func(d *Draft) {
		set(d)
		d.Session.Notes = remarked(d.Session.Notes, shortSaid, "")
	}
	return o
}

// Short says whether the tool chooses what is read: what can still turn a
// verdict, in the order of the steps, so that a hang stays short.
func (d *Draft) Short() bool {
	return d.Session.Purpose == sessions.FirstFitting && remark(d.Session.Notes, shortSaid) != ""
}

// Enough readings of one mark: it is not asked for again.
const (
	enoughTried = 2
	enoughTaken = 3
)

// want works out what a short fitting still asks for.
func (s *State) want() {
	s.wants = nil
	if !s.Short() || s.Report == nil {
		return
	}
	enough := s.takenEnough()
	s.wants = s.wantedBut(func(key string) bool { return s.tried[key] >= enoughTried || enough(key) })
}

// recallTried counts what the file of a resumed fitting tells: what was taken was
// asked for. What was passed over then is asked for again.
func (s *State) recallTried() {
	s.tried = map[string]int{}
	s.Session.Fit.EachList(func(key string, values []float64) {
		if s.tried[key] = count(len(values) > 0); len(values) > 1 {
			s.tried[key] = enoughTried
		}
	})
}

// TakenEnough says whether another take of the reading with this key is worth
// little, however doubted it is: it was taken three times.
func (s *State) TakenEnough(key string) bool { return s.takenEnough()(key) }

// takenEnough says of a key whether it was read often enough.
func (s *State) takenEnough() func(key string) bool {
	taken := map[string]int{}
	s.Session.Fit.EachList(func(key string, values []float64) { taken[key] = len(values) })
	return func(key string) bool { return taken[key] >= enoughTaken }
}

// wantedBut are the readings that can still turn a verdict but for those that
// are spent: by their keys, the first check that each may settle, musts first.
func (s *State) wantedBut(spent func(key string) bool) map[string]string {
	wants := map[string]string{}
	for _, kind := range []rules.Kind{rules.Must, rules.Should} {
		for _, w := range s.Report.Wanted(kind, spent) {
			if _, known := wants[w.Reading]; !known {
				wants[w.Reading] = w.Check
			}
		}
	}
	return wants
}

// triedHere counts that the question was asked, and works out anew what is wanted.
func (s *State) triedHere() {
	if a := s.Ask(); s.Short() && a.ofTheFitting() && a.Kind != Choice {
		s.tried = maps.Clone(s.tried)
		if s.tried == nil {
			s.tried = map[string]int{}
		}
		if s.tried[s.Slot(a)]++; a.Told(&s.Draft) > 1 {
			s.tried[s.Slot(a)] = enoughTried
		}
		s.want()
	}
}

// picks says whether a short fitting asks the question on its way.
func (d *Draft) picks(a Ask) bool {
	table, rest, _ := strings.Cut(a.Key, ".")
	switch {
	case table == "session", table == "tape", a.Key == "kit.inspected_by", a.Key == "kit.inspected":
		return true
	case table == "kit" && a.Kind == Choice && !strings.Contains(rest, "."): // whether a piece is there
		return true
	case a.Key == "climber.stature_mm", a.Key == "climber.stature_told_mm": // what the estimates start from
		return a.Told(d) == 0
	case a.Kind == Reading && a.Told(d) == 0 && slices.Contains(neverEstimated, a.Reading):
		return true
	}
	return d.wants[d.Slot(a)] != ""
}

// neverEstimated are the body's readings that musts rest on: none passes on an
// estimate of them.
var neverEstimated = []fit.Reading{fit.Thigh, fit.Shin, fit.WristUp}

// firstWanted is the first question in the order of the steps that a short
// fitting wants in the phase.
func (s *State) firstWanted(phase Phase) (Place, bool) {
	for p, ok := s.after(Place{Ask: -1, Hang: s.Hang}); ok; p, ok = s.after(p) {
		if s.Steps[p.Step].Phase == phase && s.wants[s.Slot(s.ask(p))] != "" {
			return p, true
		}
	}
	return Place{}, false
}

// WhyPicked is why a short fitting asks the question; empty in any other.
func (s *State) WhyPicked(a Ask) string {
	if !s.Short() {
		return ""
	}
	if check := s.wants[s.Slot(a)]; check != "" {
		again := ""
		if a.Kind == Reading && a.Told(&s.Draft) > 0 {
			again = " Take it afresh, three times."
		}
		return fmt.Sprintf("Asked for because it may settle %s.%s", check, again)
	}
	switch a.Key {
	case "hang", "down", "review":
		return s.StillWanted()
	}
	return ""
}

// StillWanted says what a short fitting would read next, or that it is done.
func (s *State) StillWanted() string {
	if s.Report == nil {
		return ""
	}
	keys := slices.SortedFunc(maps.Keys(s.wantedBut(s.takenEnough())), fit.CompareKeys)
	if len(keys) == 0 {
		return NoneWanted
	}
	return fmt.Sprintf("May still change a verdict: %s.", names(keys))
}

// NoneWanted says that a fitting is as good as readings make it.
const NoneWanted = "No further reading can change a verdict."

// toWanted goes to the reading that can still turn a verdict, musts first; to one
// that was taken often enough only where there is no other.
func (s *State) toWanted() {
	if s.Report == nil {
		s.Said = Said{Kind: Noted, Text: "the rules cannot run, so that no reading is better than another"}
		return
	}
	if s.toWantedBut(s.takenEnough(), "") || s.toWantedBut(func(string) bool { return false }, TakenOften) {
		return
	}
	s.Said = Said{Kind: Noted, Text: NoneWanted}
}

// TakenOften says that one more take of a reading is worth little.
const TakenOften = "; it was taken three times and more, so look for what else may be wrong: the mark, the pose, the kit"

// toWantedBut is toWanted without the readings that are spent; false where that
// leaves none. but is added to what is said of the others.
func (s *State) toWantedBut(spent func(key string) bool, but string) bool {
	here := s.Slot(s.Ask())
	for _, kind := range []rules.Kind{rules.Must, rules.Should} {
		for _, w := range s.Report.Wanted(kind, spent) {
			p, found := s.Find(w.Reading)
			says := ""
			switch {
			case w.Reading == here:
				says = "this one, for " + w.Check
			case found:
				s.move(p)
				says = "it may settle " + w.Check
			case strings.HasPrefix(w.Reading, "hangs.") && !s.Hanging():
				s.move(s.placeOf("up"))
				says = fmt.Sprintf("%s may settle %s", rules.InputName(w.Reading), w.Check)
			default:
				continue
			}
			s.Said = Said{Kind: Noted, Text: says + but}
			return true
		}
	}
	return false
}
