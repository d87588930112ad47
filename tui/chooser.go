package tui

import (
	"slices"

	"example.com/hangtape/sessions/records"
)

// A chooser narrows sessions down to those that match what is typed.
type chooser struct {
	in    *records.List
	all   []found
	shown []found
}

func newChooser(in *records.List, all []found) chooser { return chooser{in, all, all} }

// find leaves what matches typed, or says why nothing can.
func (c *chooser) find(typed string) error {
	q, err := records.ParseQuery(typed)
	if err != nil {
		return err
	}
	hits := map[*records.Entry]bool{}
	for _, e := range c.in.Find(q) {
		hits[e] = true
	}
	c.shown = slices.DeleteFunc(slices.Clone(c.all), func(f found) bool { return !hits[f.Entry] && f.Good == nil })
	return nil
}
