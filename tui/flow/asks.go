package flow

import (
	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/number"
)

// readings are the questions for the laid lengths of one table of the file.
func readings(table string) []Ask {
	var out []Ask
	for r := range fit.NumReadings {
		if r.Info().Table == table {
			out = append(out, reading(r))
		}
	}
	return out
}

func reading(r fit.Reading) Ask {
	info := r.Info()
	a := Ask{Key: info.Table + "." + info.Key, Kind: Reading, Reading: r, Title: rules.Upper(info.Name), How: r.Info().Mark, Topic: info.Table + "." + info.Key}
	a.Quantity = number.ForReading(r, "").Kind
	a.cell = func(d *Draft) any { return &d.Session.Fit.Laid[r] }
	if r.IsHeight() {
		a.cell = func(d *Draft) any { return &d.Session.Fit.Hangs[d.Hang].Heights[r] }
	}
	return a.bounded()
}

func text(key, title, how string, at func(*Draft) *string) Ask {
	return Ask{Key: key, Kind: Text, Title: title, How: how, cell: func(d *Draft) any { return at(d) }}
}

func day(key, title string, at func(*Draft) any) Ask {
	return Ask{Key: key, Kind: Day, Title: title, How: "As 2026-04-18; 0 means today.", cell: at}
}

func amount(key, title, how string, q number.Kind, at func(*Draft) any) Ask {
	return Ask{Key: key, Kind: Amount, Title: title, How: how, Quantity: q, cell: at, Topic: key}.bounded()
}

// anyLength is the most that a length may be, mm: a range up to it tells nobody anything.
const anyLength = 100_000

// bounded takes over what the session file accepts under the key.
func (a Ask) bounded() Ask {
	if info, ok := sessions.Key(a.Key); ok && info.Most < anyLength {
		a.Accepted = number.Range{Least: info.Least, Most: info.Most}
	}
	return a
}

// A word is one value of a choice with the word for it.
type word[T comparable] struct {
	says string
	v    T
}

// choice asks for one of a few values; Enter takes the one that stands, or the
// first where none does.
func choice[T comparable](key, title, how string, at func(*Draft) *T, words ...word[T]) Ask {
	return Ask{Key: key, Kind: Choice, Title: title, How: how, Topic: key, cell: func(d *Draft) any { return at(d) },
		Options: func(*Draft) []Option {
			out := make([]Option, len(words))
			for i, w := range words {
				out[i] = Option{Word: w.says, set: func(d *Draft) { *at(d) = w.v }}
			}
			return out
		},
		Mark: func(d *Draft) int {
			for i, w := range words {
				if w.v == *at(d) {
					return i
				}
			}
			return 0
		}}
}
