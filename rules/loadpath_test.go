package rules

import (
	"fmt"
	"math/bits"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/hangtape/fit"
)

// fullKit has every part, the backup bridge on rings of its own.
func fullKit() *fit.Kit {
	k := &fit.Kit{Garda: true, OwnRings: fit.Yes}
	for p := range k.Pieces {
		k.Pieces[p].Present = true
	}
	return k
}

func TestLoadPaths(t *testing.T) {
	without := func(ps ...fit.Piece) func(*fit.Kit) {
		return func(k *fit.Kit) {
			for _, p := range ps {
				k.Pieces[p].Present = false
			}
		}
	}
	main := []string{partMainRings, partMainBridge, partConnector, partHitches}
	backup := []string{partBackupRings, partBackupBridge, partTether, partGarda}
	rings := func(c fit.Choice) func(*fit.Kit) { return func(k *fit.Kit) { k.OwnRings = c } }
	for _, c := range []struct {
		name   string
		change []func(*fit.Kit)
		ways   int
		shared []string
		known  bool
	}{
		{"whole kit", nil, 2, nil, true},
		{"no foot loop", []func(*fit.Kit){without(fit.PieceFootLoop)}, 2, nil, true},
		{"shared rings", []func(*fit.Kit){rings(fit.No)}, 1, []string{partMainRings}, true},
		{"rings unsaid", []func(*fit.Kit){rings(fit.Unanswered)}, 0, nil, false},
		{"no tether", []func(*fit.Kit){without(fit.PieceTether)}, 1, main, true},
		{"no backup bridge, rings unsaid", []func(*fit.Kit){without(fit.PieceBackupBridge), rings(fit.Unanswered)}, 1, main, true},
		{"no Garda hitch", []func(*fit.Kit){func(k *fit.Kit) { k.Garda = false }}, 1, main, true},
		{"only the left hitch", []func(*fit.Kit){without(fit.PieceHitchRight)}, 1, backup, true},
		{"only the right hitch", []func(*fit.Kit){without(fit.PieceHitchLeft)}, 1, backup, true},
		{"no main bridge", []func(*fit.Kit){without(fit.PieceMainBridge)}, 1, backup, true},
		{"no hitches, no tether", []func(*fit.Kit){without(fit.PieceHitchLeft, fit.PieceHitchRight, fit.PieceTether)}, 0, nil, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			k := fullKit()
			for _, change := range c.change {
				change(k)
			}
			ways, shared, known := LoadPaths(k)
			if ways != c.ways || !slices.Equal(shared, c.shared) || known != c.known {
				t.Errorf("got %d %v %v, want %d %v %v", ways, shared, known, c.ways, c.shared, c.known)
			}
		})
	}
}

// Kits that the session file cannot tell, as graphs.
func TestLoadGraph(t *testing.T) {
	for _, c := range []struct {
		name   string
		ways   [][]string
		want   int
		shared []string
	}{
		{"a second main connector, one bridge", [][]string{
			{"main rings", "main bridge", "connector 1", "hitches"},
			{"main rings", "main bridge", "connector 2", "hitches"},
			{"backup rings", "backup bridge", "tether", "Garda hitch"},
		}, 2, nil},
		{"a second main connector and no backup", [][]string{
			{"main rings", "main bridge", "connector 1", "hitches"},
			{"main rings", "main bridge", "connector 2", "hitches"},
		}, 1, []string{"main rings", "main bridge", "hitches"}},
		{"tether on the main bridge", [][]string{
			{"main rings", "main bridge", "connector", "hitches"},
			{"main rings", "main bridge", "tether", "Garda hitch"},
		}, 1, []string{"main rings", "main bridge"}},
		{"tether on the main connector", [][]string{
			{"main rings", "main bridge", "connector", "hitches"},
			{"main rings", "main bridge", "connector", "tether", "Garda hitch"},
		}, 1, []string{"main rings", "main bridge", "connector"}},
		{"three apart", [][]string{{"a"}, {"b"}, {"c"}}, 3, nil},
		{"a first way that must be undone", [][]string{
			{"a", "d"}, {"a", "c"}, {"b", "d"}, {"a", "x", "d"},
		}, 2, nil},
		{"nothing", nil, 0, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := newLoadGraph()
			for _, w := range c.ways {
				g.way(w...)
			}
			if got, shared := g.disjoint(), g.shared(); got != c.want || !slices.Equal(shared, c.shared) {
				t.Errorf("got %d %v, want %d %v", got, shared, c.want, c.shared)
			}
		})
	}
}

// Menger's theorem: as many ways share no part as the fewest parts whose
// failure drops the climber. The fewest are found by trying every set.
func TestLoadGraphAgainstEverySetOfFailures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := newLoadGraph()
		n := rapid.IntRange(0, 7).Draw(t, "parts")
		for i := range n {
			g.part(fmt.Sprint("part ", i))
		}
		for i := range g.parts {
			for j := range g.parts {
				if i == j || i == ropeEnd || j == saddleEnd || i == saddleEnd && j == ropeEnd {
					continue
				}
				if rapid.IntRange(0, 2).Draw(t, "hangs") == 0 {
					g.on = append(g.on, [2]int{i, j})
				}
			}
		}
		fewest := n
		var alone []string
		for failed := range 1 << n {
			size := bits.OnesCount(uint(failed))
			if reaches(g, failed) {
				continue
			}
			fewest = min(fewest, size)
			if size == 1 {
				alone = append(alone, g.parts[ropeEnd+1+bits.TrailingZeros(uint(failed))])
			}
		}
		if fewest == 0 {
			alone = nil
		}
		if got := g.disjoint(); got != fewest {
			t.Fatalf("%d disjoint ways, but %d failures drop the climber", got, fewest)
		}
		if got := g.shared(); !slices.Equal(got, alone) {
			t.Fatalf("shared %v, want %v", got, alone)
		}
	})
}

// reaches says whether some way is left when the parts in the set failed.
func reaches(g *loadGraph, failed int) bool {
	reached := map[int]bool{saddleEnd: true}
	for range g.parts {
		for _, e := range g.on {
			gone := e[1] > ropeEnd && failed>>(e[1]-ropeEnd-1)&1 == 1
			if reached[e[0]] && !gone {
				reached[e[1]] = true
			}
		}
	}
	return reached[ropeEnd]
}
