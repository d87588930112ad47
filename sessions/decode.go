package sessions

import (
	"bytes"
	"errors"
	"fmt"
	"strings"

	"github.com/BurntSushi/toml"
)

// Decode reads a session file. The name is for its errors only. Either the
// whole file is right, or the error is a *FileError with everything that is
// wrong. What the readings say of each other is not looked at: that is Judge's.
func Decode(name string, data []byte) (*Session, error) {
	s := &Session{}
	s.Fit.Tape.Hook = true // untold: the larger uncertainty
	complete(s)
	if err := decode(name, data, sessionSchema, s, checkSession); err != nil {
		return nil, err
	}
	complete(s)
	return s, nil
}

// DecodeSchool reads a school file in the same way.
func DecodeSchool(name string, data []byte) (*School, error) {
	s := DefaultSchool()
	if err := decode(name, data, schoolSchema, s, checkSchool); err != nil {
		return nil, err
	}
	return s, nil
}

// decode fills t with what the file says. check adds what is wrong between
// several keys.
func decode[T any](name string, data []byte, s schema[T], t *T, check func(*T) []Fault) error {
	if f := checkBytes(data); f != nil {
		return fileError(name, []Fault{*f})
	}
	source, fault := scan(data)
	if fault != nil {
		return fileError(name, []Fault{*fault})
	}
	var root map[string]any
	if _, err := toml.Decode(string(data), &root); err != nil {
		return fileError(name, []Fault{syntaxFault(err, source, data)})
	}
	d := decoder[T]{schema: s, into: t, source: source}
	if f := d.newer(root); f != nil {
		return &FileError{File: name, Faults: []Fault{*f}, Newer: true}
	}
	migrate(root, migrations)
	for _, tb := range s {
		d.table(tb, root)
	}
	d.strangers(root, "", "")
	if len(d.faults) == 0 {
		for _, f := range check(t) {
			f.Line = source.line(f.Key)
			d.faults = append(d.faults, f)
		}
	}
	return fileError(name, d.faults)
}

// syntaxFault says where the text stops being TOML.
func syntaxFault(err error, s source, data []byte) Fault {
	var parse toml.ParseError
	if !errors.As(err, &parse) {
		return Fault{Found: err.Error()}
	}
	for _, f := range s.again {
		if f.Line == parse.Position.Line {
			return f
		}
	}
	f := Fault{Line: parse.Position.Line, Found: "this is no TOML: " + strings.TrimSuffix(parse.Message, ".")}
	switch text := bytes.TrimSpace(data); {
	case bytes.Contains(data, []byte("<<<<<<< ")):
		f.Hint = "two versions were merged and both are in it: keep one of each"
	case bytes.HasPrefix(text, []byte("<")):
		f.Hint = "it looks like a web page"
	case strings.Contains(parse.Message, "unexpected EOF") || strings.Contains(parse.Message, `'\x00'`): // the library's end of a file
		f.Hint = "was it cut off?"
	}
	return f
}

type decoder[T any] struct {
	schema schema[T]
	into   *T
	source source
	faults []Fault
}

func (d *decoder[T]) fault(key, found, accepted, hint string) {
	d.faults = append(d.faults, Fault{Line: d.source.line(key), Key: key, Found: found, Accepted: accepted, Hint: hint})
}

// newer is the fault of a file that a later program wrote: its other keys are
// not for this one to judge.
func (d *decoder[T]) newer(root map[string]any) *Fault {
	if n, ok := root["format"].(int64); !ok || n <= Format {
		return nil
	}
	w := format[T]().take(d.into, 0, root["format"])[0]
	return &Fault{Line: d.source.line("format"), Key: "format", Found: w.found, Accepted: w.accepted, Hint: w.hint}
}

// table reads one table of the schema from where it stands in the file.
func (d *decoder[T]) table(tb table[T], root map[string]any) {
	parent, name := root, tb.path
	if above, last, nested := cutLast(tb.path); nested {
		parent, _ = root[above].(map[string]any)
		name = last
	}
	var value any = root
	if tb.path != "" {
		var there bool
		if value, there = parent[name]; !there {
			if tb.many == nil {
				d.missing(tb, map[string]any{}, tb.path)
			}
			return
		}
	}
	if tb.many == nil {
		node, ok := value.(map[string]any)
		if !ok {
			d.fault(tb.path, inWords(value), "a table ["+tb.path+"]", manyHint(value, tb.path))
			return
		}
		if tb.begin != nil {
			tb.begin(d.into)
		}
		d.fields(tb, node, tb.path, 0)
		return
	}
	entries, ok := tablesOf(value)
	switch {
	case !ok:
		d.fault(tb.path, inWords(value), "tables [["+tb.path+"]], one for each", "")
	case len(entries) > mostEntries:
		d.fault(tb.path, fmt.Sprintf("there %d times", len(entries)), fmt.Sprintf("at most %d", mostEntries), "")
	default:
		tb.grow(d.into, len(entries))
		for i, node := range entries {
			d.fields(tb, node, fmt.Sprintf("%s.%d", tb.path, i+1), i)
		}
	}
}

// fields reads the keys of one table or entry and says which are strange to it.
func (d *decoder[T]) fields(tb table[T], node map[string]any, at string, entry int) {
	for _, f := range tb.fields {
		v, there := node[f.key]
		if !there {
			continue
		}
		key := join(at, f.key)
		for _, w := range f.take(d.into, entry, v) {
			if w.accepted == "" {
				w.accepted = f.about.Accepts()
			}
			d.fault(key, w.found, w.accepted, w.hint)
		}
	}
	d.missing(tb, node, at)
	if tb.path != "" {
		d.strangers(node, tb.path, at)
	}
}

func (d *decoder[T]) missing(tb table[T], node map[string]any, at string) {
	for _, f := range tb.fields {
		if _, there := node[f.key]; !there && f.needed {
			accepts := f.about.Accepts()
			if f.key == "format" {
				accepts = fmt.Sprintf("format = %d", Format)
			}
			d.fault(join(at, f.key), "missing", accepts, "")
		}
	}
}

// tablesOf is the entries of an array of tables, however it was written.
func tablesOf(v any) ([]map[string]any, bool) {
	switch v := v.(type) {
	case []map[string]any:
		return v, true
	case []any:
		all := make([]map[string]any, len(v))
		for i, e := range v {
			node, ok := e.(map[string]any)
			if !ok {
				return nil, false
			}
			all[i] = node
		}
		return all, true
	}
	return nil, false
}

func manyHint(v any, path string) string {
	if _, many := tablesOf(v); many {
		return "one pair of brackets: there is only one " + path
	}
	return ""
}
