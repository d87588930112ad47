package export

import (
	"fmt"
	"slices"
	"strings"

	"example.com/hangtape/sessions/records"
)

// An Anonymizer takes who and where out of rows: columns that are Dropped go,
// dates are told to the month, and ids and climbers become numbers that hold for
// one Anonymizer only. The numbers follow the order of the rows: mix them before,
// or both tell when somebody came.
//
// What stays are the measures of bodies and kits: whoever knows a climber's can
// still find the row.
type Anonymizer struct{ numbers numbers }

// NewAnonymizer starts counting.
func NewAnonymizer() *Anonymizer { return &Anonymizer{numbers{}} }

// Columns are those that are left.
func (a *Anonymizer) Columns() []Column {
	return slices.DeleteFunc(Columns(), func(c Column) bool { return c.Anonymous == Dropped })
}

// Row is a row of Columns() without names, for the columns that are left; it uses
// up the row given.
func (a *Anonymizer) Row(row Row) Row {
	kept := row[:0]
	for c, v := range row {
		if columns[c].Anonymous != Dropped {
			kept = append(kept, a.numbers.unnamed(columns[c], v))
		}
	}
	return kept
}

// numbers are what stands for names, by what they name.
type numbers map[string]map[string]string

func (n numbers) unnamed(c Column, v any) any {
	text, _ := v.(string)
	switch {
	case text == "":
		return v
	case c.Anonymous == Month:
		return text[:len("2006-01")]
	case c.Anonymous == Number && c.Name == "climber":
		return n.of("climber", records.Fold(text))
	case c.Anonymous == Number:
		return n.of("session", text)
	}
	return v
}

func (n numbers) of(kind, name string) string {
	if n[kind] == nil {
		n[kind] = map[string]string{}
	}
	number, there := n[kind][name]
	if !there {
		number = fmt.Sprintf("%s %d", kind, len(n[kind])+1)
		n[kind][strings.Clone(name)] = number // of its own, not a part of a whole file
	}
	return number
}
