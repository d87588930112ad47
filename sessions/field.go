package sessions

import (
	"fmt"
	"strings"
)

// A schema is all that a file may hold: the one table from which reading,
// writing, error texts and the documentation of the file follow. T is what the
// file is read into.
type schema[T any] []table[T]

// A table is one table of the file, with its keys in the order in which they
// are written.
type table[T any] struct {
	path   string // "" for the keys before the first header
	fields []field[T]

	stands func(*T) bool // written even where no key of it is told; nil: only with a key
	begin  func(*T)      // called where the file has the table; may be nil

	many   func(*T) int  // an array of tables: how many entries there are
	grow   func(*T, int) // makes room for that many entries
	inline bool          // entries are written in braces, one a line
}

// A field is one key of a table. The int is the entry of an array of tables,
// counted from 0; plain tables ignore it.
type field[T any] struct {
	key    string
	about  KeyInfo // Path is filled in by the schema
	needed bool
	take   func(*T, int, any) []wrong // sets it from what the TOML library read
	put    func(*T, int) string       // the value as it is written; "" leaves the key out
}

// wrong is a fault whose key and line are not known yet.
type wrong struct {
	found, hint string
	accepted    string // "" for what the key accepts
}

// KeyInfo is what a key of a file may say.
type KeyInfo struct {
	Path        string // N stands for the number of an entry: "hangs.N.hip_mm"
	Kind        Kind
	Unit        string // of a number: mm, kg, kN, %, deg, min, or "" for a ratio or a count
	Least, Most float64
	Above       bool // Least itself is not accepted
	Words       []string
	Needed      bool // the file must have it

	usual [2]float64 // what most values lie between, for guessing a wrong unit; zero for Least and Most
}

// Kind is what a value looks like.
type Kind string

// The kinds of value.
const (
	NumberKind  Kind = "number"
	CountKind   Kind = "whole number"
	NumbersKind Kind = "list of numbers"
	PairKind    Kind = "two numbers"
	TextKind    Kind = "text"
	TextsKind   Kind = "list of texts"
	WordKind    Kind = "word"
	YesNoKind   Kind = "true or false"
	TimeKind    Kind = "date and time"
	DayKind     Kind = "date"
	IDKind      Kind = "id"
)

// Accepts says in words what the key accepts.
func (k KeyInfo) Accepts() string {
	switch k.Kind {
	case NumberKind:
		return "a number " + k.Range()
	case CountKind:
		return "a whole number " + k.Range()
	case NumbersKind:
		return fmt.Sprintf("a list of at most %d numbers, one for each time it was taken, each %s", mostEntries, k.Range())
	case PairKind:
		return "a list of two numbers, each " + k.Range()
	case TextKind:
		return fmt.Sprintf("a text of at most %d bytes", mostText)
	case TextsKind:
		return fmt.Sprintf("a list of at most %d texts", mostEntries)
	case WordKind:
		return wordList(k.Words)
	case TimeKind:
		return "a date and time with its zone, such as 2026-04-18T09:12:00Z"
	case DayKind:
		return "a date, such as 2026-04-18"
	case YesNoKind:
		return "true or false"
	case IDKind:
		return "an id of 26 capital letters and digits (ULID)"
	}
	return string(k.Kind)
}

// Range says in words between which numbers the key's values lie.
func (k KeyInfo) Range() string {
	unit := ""
	if k.Unit != "" {
		unit = " " + k.Unit
	}
	if k.Above {
		return fmt.Sprintf("above %s, up to %s%s", decimal(k.Least), decimal(k.Most), unit)
	}
	return fmt.Sprintf("from %s to %s%s", decimal(k.Least), decimal(k.Most), unit)
}

// Holds says whether v is a number that the key accepts.
func (k KeyInfo) Holds(v float64) bool {
	return v <= k.Most && (v > k.Least || v == k.Least && !k.Above)
}

// wordList is "a", "b" or "c".
func wordList(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = fmt.Sprintf("%q", w)
	}
	if n := len(quoted); n > 1 {
		return strings.Join(quoted[:n-1], ", ") + " or " + quoted[n-1]
	}
	return strings.Join(quoted, "")
}

// keys lists every key of the schema in its order.
func (s schema[T]) keys() []KeyInfo {
	var all []KeyInfo
	for _, t := range s {
		for _, f := range t.fields {
			all = append(all, f.info(t))
		}
	}
	return all
}

func (f field[T]) info(t table[T]) KeyInfo {
	k := f.about
	k.Needed = f.needed
	k.Path = join(t.path, f.key)
	if t.many != nil {
		k.Path = join(t.path, join("N", f.key))
	}
	return k
}

// must marks a key that the file cannot do without.
func must[T any](f field[T]) field[T] {
	f.needed = true
	return f
}
