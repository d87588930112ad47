package fit

import (
	"fmt"
	"math"
	"strconv"
)

// A CordUse is what a piece of cord is cut for.
type CordUse int

// The uses, in the order in which a kit hangs.
const (
	CordHitch    CordUse = iota // a closed loop: from the connector up to the wraps on the rope
	CordFootLoop                // from the Garda hitch down to the foot
	CordTether                  // a closed loop: from the Garda hitch to the backup bridge
	CordBridge                  // a line across the saddle, ring to ring

	NumCordUses
)

var cordUseKeys = [NumCordUses]string{"hitch", "foot-loop", "tether", "bridge"}

// Key is the word for u in commands and files.
func (u CordUse) Key() string { return cordUseKeys[u] }

// A Cord is a piece of cord to be cut and tied. Lengths are millimetres.
type Cord struct {
	Use      CordUse
	Finished float64 // as it is laid on when tied, eyes within it: hitch: inside top of the connector to the wraps
	Diameter float64 // of the cord, from its label
	Host     float64 // rope diameter; of a hitch only
	Wraps    int     // turns of the single cord on the rope: three wraps of a doubled loop are six; of a hitch only
	Strands  int     // side by side; an even number is a closed loop, an odd one has two ends
	Closing  Knot    // the bend that closes a loop, or the knot at each end
	Hitch    Knot    // how a closed loop sits on its connector
	Eye      float64 // length of the eye at each end, only of knots that make one
	Tail     float64 // least length of each of the two tails
}

// LeastTail is the shortest tail that is planned for: pigtails of at least 4 in
// (10 cm) in FM 21-76 as copied at wilderness-survival.net.
const LeastTail = 100

// What a cord, its finished length and the rope lie between, in mm; cord and
// rope as in a session. Judgement: what no kit comes near is a slip.
const (
	LeastFinished, MostFinished = 20.0, 20000.0
	LeastCord, MostCord         = 2.0, 14.0
	LeastHost, MostHost         = 6.0, 20.0
)

// StandardCord is the usual way to tie a piece for u: the finished length, the
// cord and, for a hitch, the rope are yet to be told. A hitch has three wraps
// of a doubled loop (climbing handbooks: usually enough); a foot loop has eyes
// of a foot (a mountaineering handbook's foot slings: about 1 ft).
func StandardCord(u CordUse) Cord {
	c := Cord{Use: u, Tail: LeastTail}
	switch u {
	case CordHitch:
		c.Wraps = 6
		return c.WithStrands(2)
	case CordFootLoop:
		return c.WithStrands(1).WithClosing(FigureEightLoop)
	case CordBridge:
		return c.WithStrands(1)
	}
	return c.WithStrands(2)
}

// WithStrands is c of n strands, with the usual knots for a loop or a line.
func (c Cord) WithStrands(n int) Cord {
	c.Strands, c.Closing, c.Hitch, c.Eye = n, ScaffoldKnot, NoKnot, 0
	if c.Closed() {
		c.Closing, c.Hitch = DoubleFishermans, GirthHitch
	}
	return c
}

// WithClosing is c with another knot that closes it or ends it, and eyes of a
// foot where that knot makes them.
func (c Cord) WithClosing(k Knot) Cord {
	c.Closing, c.Eye = k, 0
	if c.Eyed() {
		c.Eye = 305 // a foot
	}
	return c
}

// Closed says whether c is tied into a loop, with one bend and no ends.
func (c Cord) Closed() bool { return c.Strands%2 == 0 }

// Eyed says whether c has an eye at each end.
func (c Cord) Eyed() bool { return !c.Closed() && c.Closing == FigureEightLoop }

// A CordError says which quantity of a cord cannot be.
type CordError struct {
	Name     string // as commands call it: finished, cord, rope, wraps, strands, knot, hitch, eye, tail, cut, both-tails
	Found    string
	Accepted string
}

func (e *CordError) Error() string {
	return fmt.Sprintf("%s: %s cannot be; accepted: %s", e.Name, e.Found, e.Accepted)
}

// num formats a number for an error, to a tenth.
func num(v float64) string { return strconv.FormatFloat(math.Round(v*10)/10, 'f', -1, 64) }

// Check says what of c cannot be, the first if there are several, as a *CordError;
// nil where c can be tied.
func (c Cord) Check() error {
	between := func(name string, v, least, most float64, unit string) error {
		if v >= least && v <= most {
			return nil
		}
		return &CordError{name, num(v) + unit, num(least) + " to " + num(most) + unit}
	}
	knot := func(name string, k Knot, want KnotRole) error {
		if k >= 0 && k < NumKnots && (k.Info().Role == want || k == NoKnot && want == OnConnector) {
			return nil
		}
		return &CordError{name, k.String(), KnotKeys(want)}
	}
	var first error
	add := func(err error) {
		if first == nil {
			first = err
		}
	}
	add(between("finished", c.Finished, LeastFinished, MostFinished, " mm"))
	add(between("cord", c.Diameter, LeastCord, MostCord, " mm"))
	add(between("strands", float64(c.Strands), 1, 4, ""))
	add(between("tail", c.Tail, 0, 5000, " mm"))
	if c.Use == CordHitch {
		add(between("rope", c.Host, LeastHost, MostHost, " mm"))
		add(between("wraps", float64(c.Wraps), 1, 12, ""))
	} else if c.Wraps != 0 {
		add(&CordError{"wraps", fmt.Sprint(c.Wraps), "none: only a hitch has wraps"})
	}
	if c.Use == CordHitch && !c.Closed() {
		add(&CordError{"strands", fmt.Sprint(c.Strands), "2 or 4: a hitch is tied of a closed loop"})
	}
	if c.Closed() {
		add(knot("knot", c.Closing, ClosesLoop))
		add(knot("hitch", c.Hitch, OnConnector))
	} else {
		add(knot("knot", c.Closing, AtEachEnd))
		if c.Hitch != NoKnot {
			add(&CordError{"hitch", c.Hitch.String(), "none: a line with two ends sits in its end knots"})
		}
	}
	if c.Eyed() {
		add(between("eye", c.Eye, 20, c.Finished/2, " mm"))
	} else if c.Eye != 0 {
		add(&CordError{"eye", num(c.Eye) + " mm", "none: only a " + FigureEightLoop.String() + " makes an eye"})
	}
	return first
}

// WrapLength is the cord in n turns round a host, in mm: each turn is a helix
// whose axis lies (host + cord)/2 off the middle of the host and that climbs
// one diameter of the cord.
func WrapLength(n int, cord, host float64) float64 {
	return float64(n) * math.Hypot(math.Pi*(host+cord), cord)
}

// laid is what lies between the knots: strands, the second half of the eyes,
// and wraps, in mm.
func (c Cord) laid() float64 {
	return float64(c.Strands)*c.Finished + 2*c.Eye + WrapLength(c.Wraps, c.Diameter, c.Host)
}

// cordUses are what each piece of a kit is cut as.
var cordUses = [NumPieces]CordUse{CordBridge, CordHitch, CordHitch, CordFootLoop, CordTether, CordBridge}

// UsualCords are the diameters, in mm, that the cord of piece p is likely to have:
// common practice.
func UsualCords(p Piece) []float64 {
	switch cordUses[p] {
	case CordBridge:
		return []float64{8, 10, 12}
	case CordFootLoop:
		return []float64{6, 8, 10}
	}
	return []float64{8, 10}
}

// CordFor is the cord to cut for piece p of f's kit, to be finished at a length
// in mm: as the session tells cord, wraps, strands and rope, and in the usual
// way where it does not. A cord or rope that is not told is 0, which Check
// refuses.
func CordFor(f *Fitting, p Piece, finished float64) Cord {
	c, piece := StandardCord(cordUses[p]), f.Kit.Pieces[p]
	if piece.Strands.Known {
		c = c.WithStrands(int(piece.Strands.V))
	}
	c.Finished, c.Diameter = finished, piece.Cord.V
	if c.Use == CordHitch {
		c.Host = f.Rope.Diameter.V
		if piece.Wraps.Known {
			c.Wraps = int(piece.Wraps.V)
		}
	}
	return c
}
