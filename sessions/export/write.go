package export

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"
)

// A Writer writes rows in one format: Begin once, then Row for each, then End.
type Writer interface {
	Begin(columns []Column) error
	Row(row Row) error
	End() error
}

// CSV writes comma-separated values under a header, as RFC 4180 but for its line
// ends: UTF-8 without a byte order mark, decimal points, lines that end in LF, text
// in quotes where it has a comma, a quote or a line break. What is not known is
// empty. A text that a spreadsheet would take for a formula gets an apostrophe
// before it; numbers are left alone.
func CSV(w io.Writer) Writer { return &csvWriter{csv.NewWriter(w)} }

type csvWriter struct{ w *csv.Writer }

func (c *csvWriter) Begin(columns []Column) error {
	names := make([]string, len(columns))
	for i := range columns {
		names[i] = columns[i].Name
	}
	return wrap(c.w.Write(names))
}

func (c *csvWriter) Row(row Row) error {
	cells := make([]string, len(row))
	for i, v := range row {
		cells[i] = cell(v)
	}
	return wrap(c.w.Write(cells))
}

func (c *csvWriter) End() error {
	c.w.Flush()
	return wrap(c.w.Error())
}

// formulaSigns are what some spreadsheet takes for the start of a formula, or skips
// before one; the last four are those of wide letters.
const formulaSigns = "=+-@\t\r\n＝＋－＠"

func cell(v any) string {
	switch v := v.(type) {
	case string:
		if first, _ := utf8.DecodeRuneInString(v); strings.ContainsRune(formulaSigns, first) {
			return "'" + v
		}
		return v
	case float64:
		return strconv.FormatFloat(v, 'f', -1, 64)
	case bool:
		return strconv.FormatBool(v)
	}
	return ""
}

// JSONLines writes one object a line, its keys in the order of the columns. What
// is not known is null.
func JSONLines(w io.Writer) Writer { return &jsonWriter{w: w} }

type jsonWriter struct {
	w    io.Writer
	keys []string // as JSON
	line bytes.Buffer
}

func (j *jsonWriter) Begin(columns []Column) error {
	for _, c := range columns {
		j.keys = append(j.keys, strconv.Quote(c.Name)) // plain ASCII
	}
	return nil
}

func (j *jsonWriter) Row(row Row) error {
	j.line.Reset()
	j.line.WriteByte('{')
	for i, v := range row {
		value, err := json.Marshal(v)
		if err != nil {
			return wrap(err)
		}
		if i > 0 {
			j.line.WriteByte(',')
		}
		j.line.WriteString(j.keys[i] + ":")
		j.line.Write(value)
	}
	j.line.WriteString("}\n")
	_, err := j.w.Write(j.line.Bytes())
	return wrap(err)
}

func (j *jsonWriter) End() error { return nil }

func wrap(err error) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("cannot write the rows: %w", err)
}
