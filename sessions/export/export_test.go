package export_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/internal/docpart"
	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/export"
	"example.com/hangtape/sessions/sessionstest"
)

var update = flag.Bool("update", false, "write the table of columns afresh")

const example = "../../testdata/sessions/examples/1-good-kit.toml"

func load(t *testing.T, name string) *sessions.File {
	t.Helper()
	f, err := sessions.ReadFile(name, nil)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// cells are a row's values by column.
func cells(columns []export.Column, row export.Row) map[string]any {
	all := map[string]any{}
	for i, c := range columns {
		all[c.Name] = row[i]
	}
	return all
}

func TestNamesOfColumnsAreTheirOwn(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range export.Columns() {
		if seen[c.Name] || c.About == "" || strings.ContainsAny(c.Name, " ,\"") {
			t.Errorf("column %q: there twice, without a word about it, or with a sign that splits", c.Name)
		}
		seen[c.Name] = true
	}
}

// A row says what check --json says.
func TestRowsSayWhatReportsSay(t *testing.T) {
	files, err := filepath.Glob("../../testdata/sessions/examples/*.toml")
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	for _, name := range files {
		f := load(t, name)
		r, err := f.Judge()
		if err != nil {
			t.Fatal(err)
		}
		row := cells(export.Columns(), export.Of(f))
		if row["outcome"] != string(r.Outcome) || row["session"] != r.ID || row["climber"] != f.Session.Climber {
			t.Errorf("%s: %v, %v, %v", name, row["outcome"], row["session"], row["climber"])
		}
		for _, c := range r.Checks {
			if got := row[c.Name+".verdict"]; got != string(c.Verdict) {
				t.Errorf("%s: %s is %v, want %s", name, c.Name, got, c.Verdict)
			}
			got, known := row[c.Name+".margin"].(float64)
			if known != c.Margin.Known() || known && math.Abs(got-float64(c.Margin)) > 5e-4+1e-9 {
				t.Errorf("%s: margin of %s is %v, want %v", name, c.Name, row[c.Name+".margin"], c.Margin)
			}
		}
		for _, p := range r.Poses {
			unit := map[string]string{"mm": "_mm", "kN": "_kn", "deg": "_deg"}[p.Unit]
			if got, known := row[p.Name+unit].(float64); known != p.Value.Known() || known && math.Abs(got-float64(p.Value)) > 5e-4+1e-9 {
				t.Errorf("%s: %s is %v, want %v", name, p.Name, row[p.Name+unit], p.Value)
			}
		}
	}
}

func TestReadingsAreMeansAboveTheHip(t *testing.T) {
	f := load(t, example)
	f.Session.Fit.Laid[fit.Thigh] = []float64{410, 420}
	h := &f.Session.Fit.Hangs[0].Heights
	h[fit.Hip], h[fit.Nose] = []float64{1000, 1010}, []float64{1700}
	h[fit.WristDown] = nil
	row := cells(export.Columns(), export.Of(f))
	if row["thigh_mm"] != 415.0 || row["nose_above_hip_mm"] != 695.0 || row["wrist_down_above_hip_mm"] != nil || row["inseam_mm"] != nil {
		t.Errorf("thigh %v, nose %v, wrist down %v, inseam %v", row["thigh_mm"], row["nose_above_hip_mm"], row["wrist_down_above_hip_mm"], row["inseam_mm"])
	}
}

func TestReadingsThatCannotBeAreARowWithoutVerdicts(t *testing.T) {
	f := load(t, example)
	f.Session.Fit.Hangs[0].Heights[fit.Nose] = []float64{-9000}
	row := cells(export.Columns(), export.Of(f))
	why, _ := row["cannot_be"].(string)
	if row["outcome"] != nil || row["hitch-wraps.verdict"] != nil || row["main_bridge_set_mm"] != nil || !strings.Contains(why, "nose") || strings.Contains(why, "testdata") {
		t.Errorf("outcome %v, why %q", row["outcome"], why)
	}
}

func TestCSVAndJSONLinesHoldTheSame(t *testing.T) {
	f := load(t, example)
	f.Session.Climber, f.Session.Notes = "=cmd|' /C calc'!A0", "two\nlines, \"quoted\""
	columns, row := export.Columns(), export.Of(f)
	var text, lines bytes.Buffer
	for _, w := range []export.Writer{export.CSV(&text), export.JSONLines(&lines)} {
		if err := w.Begin(columns); err != nil {
			t.Fatal(err)
		}
		if err := w.Row(row); err != nil {
			t.Fatal(err)
		}
		if err := w.End(); err != nil {
			t.Fatal(err)
		}
	}
	table, err := csv.NewReader(&text).ReadAll()
	if err != nil || len(table) != 2 {
		t.Fatalf("%d lines, %v", len(table), err)
	}
	var object map[string]any
	if err := json.Unmarshal(lines.Bytes(), &object); err != nil || len(object) != len(columns) {
		t.Fatalf("%d keys of %d, %v", len(object), len(columns), err)
	}
	for i, name := range table[0] {
		want := object[name]
		if want == nil {
			want = ""
		}
		if name == "climber" {
			want = "'" + f.Session.Climber // no formula
		}
		if got := table[1][i]; got != fmt.Sprint(want) {
			t.Errorf("%s: %q in CSV, %v in JSON", name, got, object[name])
		}
	}
}

// What people typed is a text to a spreadsheet, numbers below 0 are numbers.
func TestNoTextIsAFormula(t *testing.T) {
	f := load(t, example)
	for _, c := range []struct{ typed, want string }{
		{"=1+1", "'=1+1"},
		{"+49 30 1", "'+49 30 1"},
		{"-3", "'-3"},
		{"@SUM(A1)", "'@SUM(A1)"},
		{"\t=1", "'\t=1"},
		{"\r=1", "'\r=1"},
		{"\n=1", "'\n=1"},
		{"＝1", "'＝1"},
		{"beech = old", "beech = old"},
		{"2026-04", "2026-04"},
		{"’s beech", "’s beech"},
	} {
		f.Session.Notes = c.typed
		f.Session.Fit.Hangs[0].Heights[fit.WristDown] = []float64{f.Session.Fit.Hangs[0].Heights[fit.Hip][0] - 55}
		columns := export.Columns()
		var b bytes.Buffer
		w := export.CSV(&b)
		if err := errors.Join(w.Begin(columns), w.Row(export.Of(f)), w.End()); err != nil {
			t.Fatal(err)
		}
		table, err := csv.NewReader(&b).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		row := map[string]string{}
		for i, name := range table[0] {
			row[name] = table[1][i]
		}
		if row["notes"] != c.want {
			t.Errorf("%q becomes %q, want %q", c.typed, row["notes"], c.want)
		}
		if n, err := strconv.ParseFloat(row["wrist_down_above_hip_mm"], 64); err != nil || n >= 0 {
			t.Errorf("a number below 0 becomes %q", row["wrist_down_above_hip_mm"])
		}
	}
}

// The bytes are those that the documentation promises to whoever imports them.
func TestCSVIsPlainText(t *testing.T) {
	f := load(t, example)
	f.Session.Notes, f.Session.Place = "dry, \"calm\"\r\nand cold", "höchste Buche"
	f.Session.Fit.Mass = fit.Some(84.5)
	var b bytes.Buffer
	w := export.CSV(&b)
	if err := errors.Join(w.Begin(export.Columns()), w.Row(export.Of(f)), w.End()); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{",höchste Buche,", ",\"dry, \"\"calm\"\"\r\nand cold\",", ",84.5,"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q", want)
		}
	}
	if !strings.HasPrefix(b.String(), "file,") || strings.Count(b.String(), "\r") != 1 || strings.Count(b.String(), "\n") != 3 {
		t.Errorf("it does not begin with a column, or has other line ends: %q", b.String())
	}
}

// Nothing that names somebody or a place is left, ids and days neither.
func TestAnonymousRowsNameNobody(t *testing.T) {
	paths, err := sessionstest.Write(t.TempDir(), 30)
	if err != nil {
		t.Fatal(err)
	}
	var rows []export.Row
	var secret []string
	climbers := map[string]bool{}
	for i, path := range paths {
		f := load(t, path)
		s := f.Session
		if i > 0 {
			s.Follows = secret[0]
		}
		secret = append(secret, s.ID, s.Climber, s.Place, s.Instructor, s.KitLabel, s.Notes, s.Started.Format("2006-01-02"), filepath.Base(path))
		climbers[s.Climber] = true
		rows = append(rows, export.Of(f))
	}
	anonymous := export.NewAnonymizer()
	columns := anonymous.Columns()
	var b bytes.Buffer
	w := export.JSONLines(&b)
	if err := w.Begin(columns); err != nil {
		t.Fatal(err)
	}
	told, months := map[any]bool{}, 0
	for _, row := range rows {
		row = anonymous.Row(row)
		if err := w.Row(row); err != nil {
			t.Fatal(err)
		}
		c := cells(columns, row)
		told[c["climber"]] = true
		if c["started"] != nil && len(c["started"].(string)) == len("2026-04") {
			months++
		}
		if c["thigh_mm"] == nil {
			t.Error("the measures are gone")
		}
	}
	for _, s := range secret {
		if strings.Contains(b.String(), s) {
			t.Errorf("%q is still there", s)
		}
	}
	if len(rows) != len(paths) || len(told) != len(climbers) || months != len(rows) {
		t.Errorf("%d rows, %d climbers of %d, %d months", len(rows), len(told), len(climbers), months)
	}
}

// columnsTable is the table of cmd/hangtape/data.md, a line for each family of columns.
func columnsTable() string {
	var b strings.Builder
	b.WriteString("| column | what it holds | with `--anonymous` |\n| --- | --- | --- |\n")
	var told []string
	for _, c := range export.Columns() {
		if !slices.Contains(told, c.Family) {
			told = append(told, c.Family)
			fmt.Fprintf(&b, "| `%s` | %s | %s |\n", c.Family, c.About, c.Anonymous)
		}
	}
	return b.String()
}

func TestDataPageTellsTheColumns(t *testing.T) {
	docpart.Hold(t, "../../cmd/hangtape/data.md", "from code, go test ./sessions/export -update", map[string]string{"columns": columnsTable()}, *update)
}
