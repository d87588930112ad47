package fit

import (
	"slices"
	"strconv"
	"strings"
)

// HeightKey is the key of a height in the session file; h counts from 0.
func HeightKey(h int, r Reading) string {
	if h < len(heightKeys) {
		return heightKeys[h][r]
	}
	return heightKey(h, r)
}

// LaidKey is the key of a laid length in the session file.
func LaidKey(r Reading) string { return laidKeys[r] }

func heightKey(h int, r Reading) string {
	return "hangs." + strconv.Itoa(h+1) + "." + readingInfo[r].Key
}

// Keys are told so often that they are put together once: those of the heights
// of the first hangs, of the laid lengths, of the postures and of the labels.
var (
	heightKeys = func() (keys [4][NumReadings]string) {
		for h := range keys {
			for r := range NumReadings {
				keys[h][r] = heightKey(h, r)
			}
		}
		return keys
	}()
	laidKeys = func() (keys [NumReadings]string) {
		for r, info := range readingInfo {
			keys[r] = info.Table + "." + info.Key
		}
		return keys
	}()
	postureKeys = func() (keys [NumPostures]string) {
		for p, info := range postureInfo {
			keys[p] = "posture." + info.Key
		}
		return keys
	}()
	labelKeys = func() (keys [NumPieces]pieceLabelKeys) {
		for p := range keys {
			table := "kit." + pieceKeys[p] + "."
			keys[p] = pieceLabelKeys{table + "cord_mm", table + "strands", table + "wraps", table + "strength_kn"}
		}
		return keys
	}()
)

type pieceLabelKeys struct{ cord, strands, wraps, strength string }

// toldAfter are the keys of what is told or read off a label, each run of them
// after the reading that it follows in the session file.
var toldAfter = map[Reading][]string{
	Stature:    {"climber.stature_told_mm"},
	Inseam:     {"climber.mass_kg"},
	lastHeight: {"rope.diameter_mm", "rope.elongation_percent", "rope.least_above_mm", "rope.drill_above_mm"},
	Ahead:      postureKeys[:],
	MainBridgeRings: {
		"kit.hitch_left.cord_mm", "kit.hitch_left.wraps", "kit.hitch_left.strength_kn",
		"kit.hitch_right.cord_mm", "kit.hitch_right.wraps", "kit.hitch_right.strength_kn",
	},
	GardaToTether:     {"kit.garda.inside_width_mm"},
	Tether:            {"kit.tether.cord_mm", "kit.tether.strands", "kit.tether.strength_kn"},
	BackupBridgeRings: {"kit.backup_bridge.own_rings", "changes.to_mm", "changes.measured_mm"},
}

// keyOrder is the order of the keys in the session file, hangs and changes
// without their number.
var keyOrder = func() map[string]int {
	order := map[string]int{}
	for r := range NumReadings {
		order[laidKeys[r]] = len(order)
		for _, key := range toldAfter[r] {
			order[key] = len(order)
		}
	}
	return order
}()

// rank is a key's place in the session file; number is that of its hang or
// change, 0 elsewhere.
func rank(key string) (group int, number string, place int) {
	if table, rest, _ := strings.Cut(key, "."); table == "hangs" || table == "changes" {
		n, k, _ := strings.Cut(rest, ".")
		first := keyOrder["hangs."+readingInfo[Hip].Key]
		if table == "changes" {
			first = keyOrder["changes.to_mm"]
		}
		return first, n, keyOrder[table+"."+k]
	}
	return keyOrder[key], "", 0
}

// CompareKeys orders keys as the session file does.
func CompareKeys(a, b string) int {
	ga, na, pa := rank(a)
	gb, nb, pb := rank(b)
	if ga != gb {
		return ga - gb
	}
	if na != nb {
		if len(na) != len(nb) {
			return len(na) - len(nb)
		}
		return strings.Compare(na, nb)
	}
	return pa - pb
}

// SortKeys puts keys in the order of the session file, each once.
func SortKeys(keys []string) []string {
	slices.SortFunc(keys, CompareKeys)
	return slices.Compact(keys)
}
