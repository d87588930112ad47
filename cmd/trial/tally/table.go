package tally

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"
)

// A Table is one table of the report. The first column names the row.
type Table struct {
	Title string
	Note  string // what is counted, and of what; may be empty
	Head  []string
	Rows  [][]string
}

// Add appends a row, each cell printed.
func (t *Table) Add(name string, cells ...any) {
	row := []string{name}
	for _, c := range cells {
		row = append(row, fmt.Sprint(c))
	}
	t.Rows = append(t.Rows, row)
}

// Text writes the table with aligned columns.
func (t *Table) Text(w io.Writer) error {
	fmt.Fprintf(w, "%s\n", t.Title)
	if t.Note != "" {
		fmt.Fprintf(w, "%s\n", t.Note)
	}
	tw := tabwriter.NewWriter(w, 0, 0, 2, ' ', 0)
	for _, row := range append([][]string{t.Head}, t.Rows...) {
		fmt.Fprintln(tw, "  "+strings.Join(row, "\t"))
	}
	if err := tw.Flush(); err != nil {
		return err
	}
	_, err := fmt.Fprintln(w)
	return err
}

// Markdown writes the table as Markdown.
func (t *Table) Markdown(w io.Writer) error {
	fmt.Fprintf(w, "### %s\n\n", t.Title)
	if t.Note != "" {
		fmt.Fprintf(w, "%s\n\n", t.Note)
	}
	line := func(cells []string) { fmt.Fprintf(w, "| %s |\n", strings.Join(cells, " | ")) }
	line(t.Head)
	rule := make([]string, len(t.Head))
	for i := range rule {
		rule[i] = "---"
	}
	line(rule)
	for _, row := range t.Rows {
		line(row)
	}
	_, err := fmt.Fprintln(w)
	return err
}
