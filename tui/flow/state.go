package flow

import (
	"slices"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// Config is what a flow is given from outside and does not change.
type Config struct {
	// Judge runs the rules. Its error says what cannot be.
	Judge func(*sessions.Session) (*rules.Report, error)
	// Earlier is the session that this one follows, or nil. Its lengths stand
	// beside the fields and can be kept.
	Earlier *sessions.Session
	// NeedDrill asks for the drill, or a note, before the sign-off.
	NeedDrill bool
	// Demo marks invented data, which cannot be signed.
	Demo bool
	// Given is the session as it was before anybody answered a question: what a
	// school has settled and what an earlier session told. Nil: an empty one.
	Given *sessions.Session
	// Carried says that the session is of a next student, on a kit that Given has.
	Carried bool
	// Others are sessions that may share this one's kit; they are only read.
	Others []*sessions.Session
	// Cord says how much cord knots take, by the pieces that were tied; nil: nothing
	// is said of cord to cut.
	Cord *fit.CordModel
	// ReadOnly is why nothing may be changed; empty where all may.
	ReadOnly string
}

// A State is where the wizard stands. The zero State is of no use: see Start.
type State struct {
	Draft
	Config
	Steps  []Step
	At     Place
	Texts  map[string]string // unsent text by field
	Edit   int               // which of the taken values the field corrects; their number for a new one
	Said   Said              // what is answered to the last event
	Report *rules.Report     // what the rules say of the draft
	Wrong  error             // what cannot be in the draft, where the rules could not run
	Saves  int               // grows with every change that is to be saved
	Left   bool              // the wizard is to end
	Next   NextStep          // what is to come outside this session
	Tied   *TiedUp           // a piece that is to be kept outside this session; nil for none

	Rounds []Round // what was changed so far, worked out for the review

	trail    []Place
	wentOn   bool   // a reading was taken and led on by itself: an Enter out of habit passes nothing over
	roundsOf int    // Saves when Rounds were worked out, plus 1
	drillOf  int    // the same of what is told of the drill
	doubted  string // the field and text that were asked about last
	insisted bool   // the next Enter takes it
}

// NextStep is what the wizard is to do outside this session.
type NextStep int

// What it is to do.
const (
	NoNext      NextStep = iota
	Students             // show the sessions that are open, to go to one of them
	NextStudent          // start the session of the next student on this kit
)

// A Place is one question, by its step, its place in it and, for a height, the
// hang that it is read in. All count from 0.
type Place struct {
	Step, Ask int
	Hang      int
}

// Said is an answer of the wizard in words.
type Said struct {
	Kind SaidKind
	Text string
	Echo string // of what was taken: the value alone
}

// SaidKind is what an answer means.
type SaidKind int

// The kinds of answer.
const (
	Nothing SaidKind = iota
	Taken            // the answer was understood and taken
	Refused          // it was not: the text stays, and says why
	Noted            // something else to know
	Doubted          // it was understood and does not fit: entered again it is taken as it is
)

// Start is the state at the first question that has not been answered: the
// first of all in a new session, the one after the last answer in a resumed one.
func Start(s sessions.Session, c Config) State {
	st := State{Draft: Draft{Session: s, Followed: c.Earlier}.clone(), Config: c, Steps: Steps(), Texts: map[string]string{}}
	st.Hang = max(0, len(s.Fit.Hangs)-1)
	st.Change = len(s.Fit.Changes)
	if c.Carried {
		st.carried = c.Given
	}
	st.drill.required = c.NeedDrill
	st.unset()
	st.recallTried()
	st.judge()
	st.At = st.firstOpen()
	st.enterField()
	st.lookBack()
	st.lookAtDrill()
	if c.ReadOnly != "" {
		st.Said = Said{Kind: Noted, Text: "For reading only: this session " + c.ReadOnly}
	}
	return st
}

// firstOpen is the question after the last one that somebody answered, the first
// of all where nobody did. One that may only be read opens at its review.
func (s *State) firstOpen() Place {
	if s.ReadOnly != "" {
		return s.placeOf("review")
	}
	given := Draft{}
	if s.Given != nil {
		given.Session = *s.Given
	}
	at, found := s.first(), Place{Step: -1}
	for p, ok := at, true; ok; p, ok = s.after(p) {
		switch a := s.ask(p); {
		case a.Key == "session.notes" && ourOwn(s.Session.Notes):
		case a.answered(&s.Draft, &given), s.newsTold(a):
			found = p
		}
	}
	if found.Step < 0 {
		return at
	}
	p, ok := s.after(found)
	if !ok {
		return found
	}
	if s.Drilling() {
		return s.openDrill()
	}
	if s.Hanging() && s.Steps[p.Step].Phase != Aloft {
		return s.placeOf("seated")
	}
	return p
}

// Ask is the question that is asked now.
func (s *State) Ask() Ask { return s.ask(s.At) }

// Step is the step of the question that is asked now.
func (s *State) Step() Step { return s.Steps[s.At.Step] }

// Text is what is in the field.
func (s *State) Text() string { return s.Texts[s.field()] }

// Options are the answers to the Choice that is asked now.
func (s *State) Options() []Option {
	if a := s.Ask(); a.Options != nil {
		return a.Options(&s.Draft)
	}
	return nil
}

// Marked is the option that Enter would take.
func (s *State) Marked() int {
	a := s.Ask()
	if a.Mark == nil {
		return 0
	}
	return a.Mark(&s.Draft)
}

// ask is the question at p.
func (s *State) ask(p Place) Ask { return s.Steps[p.Step].Asks[p.Ask] }

// judge runs the rules over the draft.
func (s *State) judge() {
	s.Report, s.Wrong = s.Judge(&s.Session)
	s.weigh()
	s.want()
}

// weigh tells the draft how its report came out.
func (s *State) weigh() {
	s.judged = s.Wrong == nil && s.Report != nil && !s.ReChecking() // a re-check has no verdicts
	if s.judged && s.hangRuns() {
		thisHang(s.Report, len(s.Session.Fit.Hangs))
	}
	s.short = s.judged && short(s.Report)
	s.blocked = s.judged && slices.ContainsFunc(s.Report.Checks, func(c rules.Check) bool { return c.Blocks })
}

// EstimateOf is what stands for a reading of a until it is taken, if anything does.
func (s *State) EstimateOf(a Ask) (rules.Value, bool) {
	if s.Report == nil || a.Kind != Reading || a.Told(&s.Draft) > 0 {
		return rules.Value{}, false
	}
	key := s.Slot(a)
	for _, in := range s.Report.Inputs {
		if in.Name == key && in.Value.Known() {
			return in, true
		}
	}
	return rules.Value{}, false
}
