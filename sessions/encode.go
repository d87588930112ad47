package sessions

import (
	"fmt"
	"strings"
)

// header opens every session file.
const header = `# Lengths in mm, masses in kg, forces in kN, angles in deg: the unit ends the key.
# A reading is a list, one entry for each time it was taken; what was not taken has no entry, never 0.
`

// Encode writes a session as a file: the same session always as the same bytes,
// its keys in the order of Keys. What a file cannot hold comes out as it is and
// is refused by Decode; Save looks before it writes.
func Encode(s *Session) []byte {
	whole := *s
	complete(&whole)
	return encode(header, sessionSchema, &whole)
}

// EncodeSchool writes a school's defaults as a file.
func EncodeSchool(s *School) []byte { return encode("", schoolSchema, s) }

func encode[T any](header string, s schema[T], t *T) []byte {
	var b strings.Builder
	b.WriteString(header)
	for _, tb := range s {
		switch {
		case tb.inline:
			writeInline(&b, tb, t)
		case tb.many != nil:
			for i := range tb.many(t) {
				fmt.Fprintf(&b, "\n[[%s]]\n%s", tb.path, lines(tb, t, i))
			}
		case tb.path == "":
			b.WriteString(lines(tb, t, 0))
		default:
			keys := lines(tb, t, 0)
			if keys != "" || tb.stands != nil && tb.stands(t) {
				fmt.Fprintf(&b, "\n[%s]\n%s", tb.path, keys)
			}
		}
	}
	return []byte(b.String())
}

// lines is the told keys of one table or entry, one a line.
func lines[T any](tb table[T], t *T, entry int) string {
	var b strings.Builder
	for _, f := range tb.fields {
		if v := f.put(t, entry); v != "" {
			fmt.Fprintf(&b, "%s = %s\n", f.key, v)
		}
	}
	return b.String()
}

// writeInline writes an array of tables as the last key of the table above it.
func writeInline[T any](b *strings.Builder, tb table[T], t *T) {
	n := tb.many(t)
	if n == 0 {
		return
	}
	_, key, _ := cutLast(tb.path)
	fmt.Fprintf(b, "%s = [\n", key)
	for i := range n {
		told := strings.Split(strings.TrimSuffix(lines(tb, t, i), "\n"), "\n")
		fmt.Fprintf(b, "  { %s },\n", strings.Join(told, ", "))
	}
	b.WriteString("]\n")
}
