package export

import (
	"math"
	"path/filepath"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// A Row is one session: a value for each of Columns, which is nil where it is
// not known, or else a string, a bool or a float64.
type Row []any

// Of is the row of a session that was read.
func Of(f *sessions.File) Row {
	row := make(Row, len(columns))
	facts := factsOf(f)
	for i, c := range columns {
		row[i] = plain(c.value(facts))
	}
	return row
}

func factsOf(file *sessions.File) *facts {
	f := &facts{file: filepath.Base(file.Name), s: file.Session}
	fitting := file.Session.Fit
	fitting.Started = f.s.Started
	nowhere := sessions.File{Session: f.s} // its path may be somebody's name
	if err := nowhere.Check(); err != nil {
		f.why = err.Error()
		return f
	}
	a := rules.Assess(&fitting, file.Session.RulesFor())
	f.bare = a.Bare(f.s.ID)
	f.checks, f.model, f.state = f.bare.Checks, a.Model(), a.State()
	f.poses = map[string]float64{}
	for _, p := range a.Poses() {
		f.poses[p.Name] = float64(p.Value)
	}
	return f
}

// plain is v as it is told: what is not known is nil, numbers have no more than
// three decimals, far less than any tape shows.
func plain(v any) any {
	switch v := v.(type) {
	case string:
		if v == "" {
			return nil
		}
	case float64:
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return nil
		}
		return math.Round(v*1000)/1000 + 0
	}
	return v
}
