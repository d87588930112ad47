// Package nearest finds what a misspelt name was probably meant to be.
package nearest

import "strings"

// Of is the candidate that name was probably meant to be: the one that the
// fewest typing mistakes lead to, the first of several, or "" where none is
// near. Letter case and the choice of -, _ or a space count as no mistake.
func Of(name string, candidates []string) string {
	best, least := "", 1+max(2, len(name)/3)
	for _, c := range candidates {
		if d := mistakes(Plain(name), Plain(c)); d < least {
			best, least = c, d
		}
	}
	return best
}

// Plain is a name without what people mix up: letter case, _ and spaces.
func Plain(name string) string {
	return strings.NewReplacer("_", "-", " ", "-").Replace(strings.ToLower(strings.TrimSpace(name)))
}

// mistakes counts the letters to insert, leave out or replace between a and b
// (the Levenshtein distance).
func mistakes(a, b string) int {
	if len(a) > 100 {
		return len(a)
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		before := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := before
			if a[i] != b[j] {
				cost++
			}
			before = row[j+1]
			row[j+1] = min(cost, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
