package sessions

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.com/hangtape/rules/nearest"
)

// mostStrange is how many unknown keys of a table are told one by one.
const mostStrange = 20

// strangers are the keys of a table that the schema does not know. A table full
// of them is some other file: then the first few will do.
func (d *decoder[T]) strangers(node map[string]any, path, at string) {
	own := d.keysOf(path)
	var strange []string
	for key := range node {
		if !own[key] {
			strange = append(strange, key)
		}
	}
	slices.SortFunc(strange, func(a, b string) int {
		return cmp.Or(cmp.Compare(d.source.line(join(at, a)), d.source.line(join(at, b))), cmp.Compare(a, b))
	})
	for i, key := range strange {
		if i == mostStrange {
			d.fault(join(at, key), fmt.Sprintf("not a key of the file, nor are %d after it", len(strange)-i-1), "", "")
			break
		}
		d.fault(join(at, key), "not a key of the file", "", d.suggestion(key, path, at))
	}
}

// keysOf is the keys and tables that may stand in the table at path.
func (d *decoder[T]) keysOf(path string) map[string]bool {
	own := map[string]bool{}
	for _, tb := range d.schema {
		if tb.path == path {
			for _, f := range tb.fields {
				own[f.key] = true
			}
		}
		above, last, nested := cutLast(tb.path)
		if !nested {
			above, last = "", tb.path
		}
		if above == path && last != "" {
			own[last] = true
		}
	}
	return own
}

// suggestion is the same key of another table, or else the nearest of the own.
func (d *decoder[T]) suggestion(key, path, at string) string {
	for _, k := range d.schema.keys() {
		if _, last, _ := cutLast(k.Path); last == key {
			return "did you mean " + strings.Replace(k.Path, ".N.", ".1.", 1) + "?"
		}
	}
	own := slices.Sorted(maps.Keys(d.keysOf(path)))
	if n := nearest.Of(key, own); n != "" {
		return "did you mean " + join(at, n) + "?"
	}
	return ""
}

// cutLast splits a dotted key before its last part.
func cutLast(key string) (above, last string, nested bool) {
	i := strings.LastIndexByte(key, '.')
	if i < 0 {
		return "", key, false
	}
	return key[:i], key[i+1:], true
}
