package fit

import "strings"

// A Knot is one that a piece of cord is closed with, ends in, or hangs by.
type Knot int

// The knots.
const (
	NoKnot Knot = iota // the loop is only clipped in
	DoubleFishermans
	TripleFishermans
	GirthHitch
	ScaffoldKnot
	FigureEightLoop

	NumKnots
)

// A KnotRole is where a knot goes.
type KnotRole int

// The roles.
const (
	NoRole      KnotRole = iota
	ClosesLoop           // joins the two ends of a loop
	OnConnector          // holds a closed loop on its connector
	AtEachEnd            // one at each end of a line
)

// KnotInfo is what the program takes for granted of a knot before any piece was
// tied: how much cord it uses beyond the finished length, in multiples of the
// cord's diameter, as a mean and a standard deviation.
type KnotInfo struct {
	Key    string // in commands and files
	Name   string // in the trade's words
	Role   KnotRole
	PerD   float64 // mean
	U      float64 // standard deviation
	Origin string  // where PerD and U come from
}

// A turn of cord round cord is 2πd long, with its rise 6.4 d.
var knotInfo = [NumKnots]KnotInfo{
	NoKnot: {"clipped", "clipped in", NoRole, 0, 0, "a loop that is only clipped in uses none"},
	DoubleFishermans: {"double-fishermans", "double fisherman's bend", ClosesLoop, 34, 9,
		"between bounds: its four turns take 25 d, and published cut lengths of three-wrap loops of 5 to 8 mm leave at most 57 d; " +
			"what it takes itself is not published, not measured: wide prior"},
	TripleFishermans: {"triple-fishermans", "triple fisherman's bend", ClosesLoop, 47, 12,
		"two more turns than the double one; not published, not measured: wide prior"},
	GirthHitch: {"girth", "girth hitch", OnConnector, 18, 8,
		"two turns round a bar 1.4 d thick and a crossing of 3 d; not published, not measured: wide prior"},
	ScaffoldKnot: {"scaffold", "scaffold knot", AtEachEnd, 27, 9,
		"three turns round the standing part and one round the ring; not published, not measured: wide prior"},
	FigureEightLoop: {"figure-eight", "figure-eight loop", AtEachEnd, 30, 10,
		"twice a single figure eight, from memory; not published, not measured: wide prior"},
}

// Info tells what the program knows of k, which must be one of the knots.
func (k Knot) Info() KnotInfo { return knotInfo[k] }

// String is the knot's name in the trade's words.
func (k Knot) String() string {
	if k < 0 || k >= NumKnots {
		return "no such knot"
	}
	return knotInfo[k].Name
}

// KnotByKey finds the knot that commands and files call key.
func KnotByKey(key string) (k Knot, ok bool) {
	for k := range NumKnots {
		if knotInfo[k].Key == key {
			return k, true
		}
	}
	return 0, false
}

// KnotKeys lists the keys of the knots that can go in a role.
func KnotKeys(r KnotRole) string {
	var keys []string
	for k := range NumKnots {
		if knotInfo[k].Role == r || r == OnConnector && k == NoKnot {
			keys = append(keys, knotInfo[k].Key)
		}
	}
	return strings.Join(keys, ", ")
}

// knots counts how many of each knot c is tied with.
func (c Cord) knots() (n [NumKnots]float64) {
	if c.Closed() {
		n[c.Closing]++
		n[c.Hitch]++
	} else {
		n[c.Closing] += 2
	}
	n[NoKnot] = 0
	return n
}
