package rules

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/hangtape/fit"
)

// pieceNames are the pieces in the trade's words.
var pieceNames = [fit.NumPieces]string{
	fit.PieceMainBridge:   "main bridge",
	fit.PieceHitchLeft:    "left hitch loop",
	fit.PieceHitchRight:   "right hitch loop",
	fit.PieceFootLoop:     "foot loop",
	fit.PieceTether:       "backup tether",
	fit.PieceBackupBridge: "backup bridge",
}

// PieceName is a piece in the trade's words: of a hitch the loop, which is what
// changes its length.
func PieceName(p fit.Piece) string { return pieceNames[p] }

// HowWord is a way to change a piece, for people.
func HowWord(h fit.How) string {
	switch h {
	case fit.Slides:
		return "slides"
	case fit.ReTie:
		return "re-tie"
	}
	return "fixed"
}

// toldNames are the inputs that are told or read off a label, by their key in
// the session file.
var toldNames = map[string]string{
	"climber.stature_told_mm":     "told stature",
	"climber.sex":                 "sex",
	"climber.mass_kg":             "climber's mass",
	"climber.mass_u_kg":           "uncertainty of the climber's mass",
	"rope.diameter_mm":            "rope's diameter",
	"rope.elongation_percent":     "rope's elongation",
	"rope.least_above_mm":         "least rope above",
	"rope.drill_above_mm":         "rope above in the drill",
	"kit.garda":                   "Garda hitch",
	"kit.garda.inside_width_mm":   "inside width of the Garda hitch's connectors",
	"kit.backup_bridge.own_rings": "whether the backup bridge has rings of its own",
	"estimate.full_mm":            "full reach",
}

// pieceKeyNames are what is told of a piece, by its key in the piece's table.
var pieceKeyNames = map[string]string{
	"cord_mm":     "cord diameter",
	"strength_kn": "cord strength",
	"wraps":       "wraps",
	"strands":     "strands",
	"change":      "way to change",
	"bounds_mm":   "bounds",
	"tied":        "day of tying",
	"tied_by":     "who tied it",
}

// InputName is an input's key in the trade's words: "hangs.2.hip_mm" is "hip
// point, hang 2". A key that it does not know is given back as it is.
func InputName(key string) string {
	if name, ok := toldNames[key]; ok {
		return name
	}
	table, last := key, ""
	if i := strings.LastIndexByte(key, '.'); i >= 0 {
		table, last = key[:i], key[i+1:]
	}
	if hang, ok := counted(table, "hangs."); ok {
		if r, ok := readingKeyed("hangs", last); ok {
			return fmt.Sprintf("%s, hang %d", r, hang)
		}
	}
	if change, ok := counted(table, "changes."); ok {
		switch last {
		case "to_mm":
			return fmt.Sprintf("length set in change %d", change)
		case "measured_mm":
			return fmt.Sprintf("length after change %d, laid on again", change)
		}
	}
	if r, ok := readingKeyed(table, last); ok {
		return r.String()
	}
	for p := range fit.NumPostures {
		if key == "posture."+p.Info().Key {
			return p.Info().Name
		}
	}
	for p := range fit.NumPieces {
		switch name, ok := pieceKeyNames[last]; {
		case key == "kit."+p.Key():
			return pieceNames[p]
		case ok && table == "kit."+p.Key():
			return PartName(p) + ", " + name
		}
	}
	return key
}

// PartName is a piece as a part of the kit: a hitch with its wraps, not its loop
// alone.
func PartName(p fit.Piece) string {
	switch p {
	case fit.PieceHitchLeft:
		return "left friction hitch"
	case fit.PieceHitchRight:
		return "right friction hitch"
	}
	return pieceNames[p]
}

// isRead says whether an input is read off a tape, and not told.
func isRead(key string) bool {
	if _, told := toldNames[key]; told {
		return false
	}
	return strings.HasPrefix(key, "hangs.") || strings.HasPrefix(key, "changes.") ||
		strings.HasSuffix(key, "_mm") && !strings.HasSuffix(key, "cord_mm") && !strings.HasPrefix(key, "posture.")
}

// counted is the number in a table such as "hangs.2", counted from 1.
func counted(table, prefix string) (int, bool) {
	digits, ok := strings.CutPrefix(table, prefix)
	if !ok {
		return 0, false
	}
	n, err := strconv.Atoi(digits)
	return n, err == nil && n > 0
}

// readingKeyed is the reading with that table and key in the session file.
func readingKeyed(table, key string) (fit.Reading, bool) {
	for r := range fit.NumReadings {
		if info := r.Info(); info.Table == table && info.Key == key {
			return r, true
		}
	}
	return 0, false
}

// list joins words as they are read aloud: "a, b and c"; where there are commas
// in them, "a; b, c; d".
func list(words []string) string {
	n := len(words)
	if n < 2 || strings.Contains(strings.Join(words, ""), ",") {
		return strings.Join(words, "; ")
	}
	return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
}
