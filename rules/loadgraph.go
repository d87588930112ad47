package rules

// A loadGraph says which part hangs on which, from the saddle to the rope.
// Parts are numbered in the order in which they were named.
type loadGraph struct {
	parts  []string
	on     [][2]int   // the first hangs on the second, which is nearer the rope
	chains [][]string // the ways that were added
}

// saddleEnd and ropeEnd are the ends of every way; being shared by all, they are not
// counted as parts.
const (
	saddleEnd = iota
	ropeEnd
)

func newLoadGraph() *loadGraph {
	return &loadGraph{parts: append(make([]string, 0, 10), "saddle", "rope"), on: make([][2]int, 0, 10)}
}

// way adds a chain of parts from the saddle to the rope. A part of the same
// name in another way is the same part.
func (g *loadGraph) way(parts ...string) {
	g.chains = append(g.chains, parts)
	from := saddleEnd
	for _, name := range parts {
		to := g.part(name)
		g.on = append(g.on, [2]int{from, to})
		from = to
	}
	g.on = append(g.on, [2]int{from, ropeEnd})
}

// part is the number of the part called name, which is added if need be.
func (g *loadGraph) part(name string) int {
	for i, p := range g.parts {
		if p == name {
			return i
		}
	}
	g.parts = append(g.parts, name)
	return len(g.parts) - 1
}

// disjoint is the largest number of ways from saddle to rope that share no
// part: the largest flow where each part carries one way. Each part is split in
// two, its end at the saddle and its end at the rope, with room for one way
// between them (Menger's theorem; Ford and Fulkerson's augmenting paths).
func (g *loadGraph) disjoint() int { return g.disjointWithout(-1) }

// disjointWithout is disjoint with one part failed; -1 for none.
func (g *loadGraph) disjointWithout(failed int) int {
	near := func(p int) int { return 2 * p }  // the part's end at the saddle
	far := func(p int) int { return 2*p + 1 } // the part's end at the rope
	n := 2 * len(g.parts)
	room := make([][]int8, n) // how many more ways fit from one end to another
	all := make([]int8, n*n)
	for i := range room {
		room[i] = all[i*n : (i+1)*n]
	}
	for p := range g.parts {
		if p != failed {
			room[near(p)][far(p)] = 1
		}
	}
	for _, e := range g.on {
		room[far(e[0])][near(e[1])] = 1
	}
	ways := 0
	for augment(room, far(saddleEnd), near(ropeEnd)) {
		ways++
	}
	return ways
}

// augment sends one more way from one end to another through the room that is
// left, and says whether there was any.
func augment(room [][]int8, from, to int) bool {
	seen := make([]bool, len(room))
	var walk func(int) bool
	walk = func(at int) bool {
		if at == to {
			return true
		}
		seen[at] = true
		for next, free := range room[at] {
			if free > 0 && !seen[next] && walk(next) {
				room[at][next]--
				room[next][at]++
				return true
			}
		}
		return false
	}
	return walk(from)
}

// shared names the parts that every way runs through, in the order in which
// they were added; none where there is no way.
func (g *loadGraph) shared() []string {
	if g.disjoint() == 0 {
		return nil
	}
	var names []string
	for p := ropeEnd + 1; p < len(g.parts); p++ {
		if g.disjointWithout(p) == 0 {
			names = append(names, g.parts[p])
		}
	}
	return names
}
