package main

import (
	"bufio"
	crand "crypto/rand"
	"errors"
	"io"
	"math/rand/v2"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/export"
	"example.com/hangtape/sessions/records"
)

func exportCommand(w *world) *cobra.Command {
	var format, dir string
	var anonymous, columns bool
	c := &cobra.Command{
		Use:   "export [WORDS…]",
		Short: "Write all sessions as rows, one a session, for spreadsheets and notebooks",
		Long: `Writes the sessions of the folder to standard output, a row each, the newest
first: who and when, means of the readings with heights above the hip, lengths
set, poses, and every check with margin and guard, judged by the rules of today.
--columns tells every column. With WORDS only what list WORDS tells. CSV is UTF-8
with commas and decimal points; a text that a spreadsheet would take for a formula
has an apostrophe before it.

--anonymous leaves out names, places, kits, notes and files, tells dates to the
month, puts numbers that hold within one export in place of ids and climbers,
and mixes the rows. Measures of bodies and kits stay: whoever knows a climber's
can still find the row.`,
		Example: "  hangtape export > sessions.csv\n  hangtape export --format json climber:demo\n  hangtape export --anonymous > open.csv",
		Args:    cobra.ArbitraryArgs,
		RunE: func(_ *cobra.Command, args []string) error {
			if columns {
				return writeLines(w.out, columnLines())
			}
			to, ok := map[string]func(io.Writer) export.Writer{"csv": export.CSV, "json": export.JSONLines}[format]
			if !ok {
				return usage("--format is %q; accepted is csv or json", format)
			}
			l, found, err := findRecords(w, dir, args)
			if err != nil {
				return err
			}
			store, err := openFolder(w, dir)
			if err != nil {
				return err
			}
			out := bufio.NewWriter(w.out)
			gone, err := exportRows(store, l, found, anonymous, to(out))
			if err = errors.Join(err, out.Flush()); err != nil {
				return err
			}
			for _, err := range gone {
				complain(w.err, err)
			}
			l.Bad += len(gone)
			return badFiles(l)
		},
	}
	c.Flags().BoolVar(&columns, "columns", false, "tell every column and what it holds, and write no rows")
	c.Flags().StringVar(&format, "format", "csv", "csv or json (one object a line)")
	c.Flags().BoolVar(&anonymous, "anonymous", false, "without names, places and days")
	c.Flags().StringVar(&dir, "dir", "", "a folder of sessions in place of one's own")
	return c
}

// columnLines tells every column, and what becomes of it in an export without
// names.
func columnLines() []string {
	var lines []string
	for _, c := range export.Columns() {
		about := c.About
		if c.Anonymous != export.Stays {
			about += " (anonymous: " + c.Anonymous.String() + ")"
		}
		lines = append(lines, c.Name)
		for line := range strings.Lines(rules.Wrap(about, textWidth-4)) {
			lines = append(lines, "    "+strings.TrimSuffix(line, "\n"))
		}
	}
	return lines
}

// exportRows writes the row of every session among found. What can no longer be
// read, though it could when it was listed, is told and stops nothing.
func exportRows(st *sessions.Store, l *records.List, found []*records.Entry, anonymous bool, to export.Writer) (gone []error, err error) {
	found = slices.DeleteFunc(slices.Clone(found), func(e *records.Entry) bool { return e.Err != nil })
	columns, told := export.Columns(), func(row export.Row) export.Row { return row }
	if anonymous {
		dice().Shuffle(len(found), func(i, j int) { found[i], found[j] = found[j], found[i] })
		a := export.NewAnonymizer()
		columns, told = a.Columns(), a.Row
	}
	if err := to.Begin(columns); err != nil {
		return nil, err
	}
	for part := range slices.Chunk(found, batch) {
		rows, errs := rowsOf(st, l.School, part)
		for i, row := range rows {
			if errs[i] != nil {
				gone = append(gone, errs[i])
			} else if err := to.Row(told(row)); err != nil {
				return gone, err
			}
		}
	}
	return gone, to.End()
}

// rowsOf reads the sessions of entries; either a row or an error for each.
func rowsOf(st *sessions.Store, school *sessions.School, entries []*records.Entry) ([]export.Row, []error) {
	rows, errs := make([]export.Row, len(entries)), make([]error, len(entries))
	together(len(entries), func(i int) {
		errs[i] = contain(func() error {
			f, err := st.LoadFor(entries[i].Path, school)
			if err == nil {
				rows[i] = export.Of(f)
			}
			return err
		})
	})
	return rows, errs
}

// dice mix the rows of an export without names; nobody can foretell how.
func dice() *rand.Rand {
	var seed [32]byte
	_, _ = crand.Read(seed[:])             // never fails
	return rand.New(rand.NewChaCha8(seed)) //nolint:gosec // a cryptographic generator, seeded by the system's
}
