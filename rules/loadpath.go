package rules

import "example.com/hangtape/fit"

// The parts between saddle and rope that can carry the climber, as JSON names
// them; for people PartWords. A pair is one part: one hitch alone does not hold, as
// the rope then runs over the union.
const (
	partMainRings    = "main rings"
	partMainBridge   = "main bridge"
	partConnector    = "main connector"
	partHitches      = "pair of friction hitches"
	partBackupRings  = "backup rings"
	partBackupBridge = "backup bridge"
	partTether       = "backup tether"
	partGarda        = "Garda hitch"
)

// PartWords are parts between saddle and rope for people.
func PartWords(parts []string) []string {
	words := make([]string, len(parts))
	for i, part := range parts {
		words[i] = partWord(part)
	}
	return words
}

func partWord(part string) string {
	switch part {
	case partMainRings:
		return "main rings"
	case partMainBridge:
		return "main bridge"
	case partConnector:
		return "main connector"
	case partHitches:
		return "pair of friction hitches"
	case partBackupRings:
		return "backup rings"
	case partBackupBridge:
		return "backup bridge"
	case partTether:
		return "backup tether"
	}
	return "Garda hitch"
}

// LoadPaths counts the ways from saddle to rope that share no part, and names
// the parts that every way runs through: each of them holds the climber alone.
// Saddle webbing, rope and union are shared by all and not counted. known is
// false where the count hangs on whether the backup bridge has rings of its
// own and that was not said, and where nothing at all was told of the kit; ways
// and shared are then 0 and nil. A kit of which only some parts were told has
// no others.
func LoadPaths(k *fit.Kit) (ways int, shared []string, known bool) {
	g, ways, known := countWays(k)
	if !known {
		return 0, nil, false
	}
	return ways, g.shared(), true
}

// countWays is LoadPaths with the graph in place of the names.
func countWays(k *fit.Kit) (g *loadGraph, ways int, known bool) {
	if *k == (fit.Kit{}) {
		return nil, 0, false
	}
	if k.OwnRings != fit.Unanswered {
		g = kitGraph(k, k.OwnRings)
		return g, g.disjoint(), true
	}
	own, common := kitGraph(k, fit.Yes), kitGraph(k, fit.No)
	if ways = own.disjoint(); ways != common.disjoint() {
		return nil, 0, false
	}
	return own, ways, true
}

// kitGraph lays out the ways that the parts of k make, with the backup bridge
// on rings of its own or on the main ones.
func kitGraph(k *fit.Kit, ownRings fit.Choice) *loadGraph {
	has := func(ps ...fit.Piece) bool {
		for _, p := range ps {
			if !k.Pieces[p].Present {
				return false
			}
		}
		return true
	}
	g := newLoadGraph()
	if has(fit.PieceMainBridge, fit.PieceHitchLeft, fit.PieceHitchRight) {
		g.way(partMainRings, partMainBridge, partConnector, partHitches)
	}
	if has(fit.PieceBackupBridge, fit.PieceTether) && k.Garda {
		rings := partBackupRings
		if ownRings == fit.No {
			rings = partMainRings
		}
		g.way(rings, partBackupBridge, partTether, partGarda)
	}
	return g
}

// LoadChains are the ways from saddle to rope that the parts of k make, each from
// the saddle up. Where it was not said on which rings the backup bridge hangs they
// are called backup rings.
func LoadChains(k *fit.Kit) [][]string { return kitGraph(k, k.OwnRings).chains }
