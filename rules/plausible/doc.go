// Package plausible asks whether a reading fits the others before it is taken,
// and what was likely meant where it does not: digits swapped, another unit, a
// neighbouring mark, the wrong landmark. It questions and never refuses; what
// the rules say of a reading once it is taken does not change.
package plausible
