package words

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// placeholders are where values go in a text: the verbs of package fmt, {1} for a
// value of a sum, and {has} or {has above|under} in the sentences of checks.
var placeholders = regexp.MustCompile(`%[-+#0]*(?:\[\d+\])?(?:\*|\d+)?(?:\.(?:\*|\d+))?(?:\[\d+\])?[a-zA-Z%]|\{\d+\}|\{[a-z]+`)

var word = regexp.MustCompile(`\pL{2}|\ba\b`)

// hasWords says whether there is a word of two letters in a text beside its
// values, or an "a".
func hasWords(text string) bool { return word.MatchString(placeholders.ReplaceAllString(text, " ")) }

var index = regexp.MustCompile(`\[(\d+)\]`)

// values are the values of a text, in the order of those who give them: the
// third is "%[3]d" where it is the first in the text.
func values(text string) []string {
	var all []string
	next := 1
	for _, p := range placeholders.FindAllString(text, -1) {
		if p == "%%" || p[0] == '{' {
			all = append(all, p)
			continue
		}
		if i := index.FindStringSubmatch(p); i != nil {
			next, _ = strconv.Atoi(i[1])
		}
		for range strings.Count(p, "*") {
			all = append(all, fmt.Sprintf("%%[%d]*", next))
			next++
		}
		all = append(all, fmt.Sprintf("%%[%d]%c", next, p[len(p)-1]))
		next++
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// told are values as they are written where they stand in their own order.
func told(values []string) string {
	if len(values) == 0 {
		return "no values"
	}
	return strings.Join(values, " ")
}
