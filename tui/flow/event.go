package flow

import "time"

// An Event is what a person did. Times are passed in: the flow has no clock.
type Event interface{ event() }

// The events of every question; those of the advice, of lengths on trial and of
// tied pieces stand in their files.
type (
	// Typed is that the text of the field is now Text. Nothing is taken yet.
	Typed struct{ Text string }
	// Enter takes the text of the field, or goes on where it is empty; on a
	// Choice it takes the marked option.
	Enter struct{ Now time.Time }
	// Pick takes an option of a Choice, counted from 0.
	Pick struct {
		Option int
		Now    time.Time
	}
	// Skip goes on without taking the text, which stays for when one comes back.
	Skip struct{}
	// SkipStep goes on to the next step in the same way.
	SkipStep struct{}
	// Back returns to where one was before, whatever is in the field.
	Back struct{}
	// Older brings the value before the one in the field back for correction.
	Older struct{}
	// Newer brings the one after it, the last of all being a new one.
	Newer struct{}
	// Keep takes over the length of the earlier session, as kept and not as
	// measured.
	Keep struct{}
	// ToWanted goes to the reading that can still turn a verdict, musts first.
	ToWanted struct{}
	// DownNow stops the clock and leads to the order of getting down.
	DownNow struct{ Now time.Time }
	// GoTo jumps to a question.
	GoTo struct{ Place Place }
)

func (Typed) event()    {}
func (Enter) event()    {}
func (Pick) event()     {}
func (Skip) event()     {}
func (SkipStep) event() {}
func (Back) event()     {}
func (Older) event()    {}
func (Newer) event()    {}
func (Keep) event()     {}
func (ToWanted) event() {}
func (DownNow) event()  {}
func (GoTo) event()     {}
