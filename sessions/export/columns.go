package export

import (
	"math"
	"slices"
	"strings"
	"time"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// A Column is one column of the export.
type Column struct {
	Name      string // the unit ends the name of a quantity
	Family    string // as the documentation tells it: the name, with a word in capitals for what varies
	About     string // what it holds, the same for a family
	Anonymous Anonymity

	value func(*facts) any // nil, a string, a bool or a float64
}

// Anonymity is what becomes of a column in an export without names.
type Anonymity int

// What may become of a column.
const (
	Stays   Anonymity = iota
	Month             // a date, told to the month
	Number            // in place of a name, a number that holds within one export
	Dropped           // left out
)

// String says it as the documentation does.
func (a Anonymity) String() string { return [...]string{"stays", "month", "number", "left out"}[a] }

// facts is a session with all that columns are made from. Where the readings
// cannot be true together there is no assessment.
type facts struct {
	file   string // without its folder
	s      *sessions.Session
	why    string        // the readings cannot be true together; then all below is nil
	bare   *rules.Report // without sentences
	checks []rules.Check // by CheckID
	model  *fit.Model
	state  *fit.State
	poses  map[string]float64 // by name
}

// Columns are all columns, in their order.
func Columns() []Column { return slices.Clone(columns) }

var columns = slices.Concat(told, readings(), lengths(), poses(), checks())

// told is what was told in words and off labels, and what came of it.
var told = []Column{
	one("file", "the file's name", Dropped, func(f *facts) any { return f.file }),
	one("session", "the session's id", Number, func(f *facts) any { return f.s.ID }),
	one("follows", "id of the session that it re-tunes or re-checks", Number, func(f *facts) any { return f.s.Follows }),
	one("climber", "who climbs", Number, func(f *facts) any { return f.s.Climber }),
	one("started", "when it started, UTC", Month, func(f *facts) any { return stamp(f.s.Started) }),
	one("finished", "when it was finished, UTC; empty while it is not", Month, func(f *facts) any { return stamp(f.s.Finished) }),
	one("purpose", "first-fitting, re-tune, re-check or review", Stays, func(f *facts) any { return string(f.s.Purpose) }),
	one("place", "where", Dropped, func(f *facts) any { return f.s.Place }),
	one("instructor", "who fits", Dropped, func(f *facts) any { return f.s.Instructor }),
	one("kit", "the label of the kit", Dropped, func(f *facts) any { return f.s.KitLabel }),
	one("notes", "notes of the session", Dropped, func(f *facts) any { return f.s.Notes }),
	one("unit", "what people read and typed in; numbers here are in mm, kg, kN and deg all the same", Stays, func(f *facts) any { return string(f.s.Unit) }),
	one("outcome", "the worst verdict of the musts under the rules of today and the session's own limits", Stays, func(f *facts) any {
		if f.bare == nil {
			return nil
		}
		return string(f.bare.Outcome)
	}),
	one("cannot_be", "why the readings cannot be true together; then nothing is judged", Stays, func(f *facts) any { return f.why }),
	one("signed", "the outcome as it was signed", Stays, func(f *facts) any { return signed(f, func(o *sessions.SignOff) any { return string(o.Outcome) }) }),
	one("signed_at", "when it was signed, UTC", Month, func(f *facts) any { return signed(f, func(o *sessions.SignOff) any { return stamp(o.At) }) }),
	one("signed_by", "who signed", Dropped, func(f *facts) any { return signed(f, func(o *sessions.SignOff) any { return o.By }) }),
	one("judged_differently", "whether a check comes out otherwise today than it was signed", Stays, func(f *facts) any {
		if f.bare == nil || f.s.SignOff == nil {
			return nil
		}
		return len(sessions.JudgedDifferently(f.s, f.bare)) > 0
	}),
	one("drill_done", "whether the ground drill was done", Stays, func(f *facts) any { return f.s.Drill != nil }),
	one("hangs", "how many times the climber hung", Stays, func(f *facts) any { return float64(len(f.s.Fit.Hangs)) }),
	one("changes", "how many pieces were set or tied to another length between hangs", Stays, func(f *facts) any { return float64(len(f.s.Fit.Changes)) }),
	one("limits_moved", "how many limits the school moved", Stays, func(f *facts) any { return float64(len(f.s.Limits)) }),
	one("sex", "m, f or unsaid, for the body survey", Stays, func(f *facts) any { return [...]string{"unsaid", "m", "f"}[f.s.Fit.Sex] }),
	one("mass_kg", "with clothes and kit", Stays, func(f *facts) any { return number(f.s.Fit.Mass) }),
	one("stature_told_mm", "told and not measured", Stays, func(f *facts) any { return number(f.s.Fit.StatureTold) }),
	one("rope_diameter_mm", "from the rope's label", Stays, func(f *facts) any { return number(f.s.Fit.Rope.Diameter) }),
	one("rope_elongation_percent", "from the rope's label, between 50 and 150 kg", Stays, func(f *facts) any { return number(f.s.Fit.Rope.Elongation) }),
	one("least_above_mm", "the shortest rope above the climber that will be used", Stays, func(f *facts) any { return number(f.s.Fit.Rope.LeastAbove) }),
	one("drill_above_mm", "rope above during the drill", Stays, func(f *facts) any { return number(f.s.Fit.Rope.DrillAbove) }),
}

// one is a column of no family.
func one(name, about string, anonymous Anonymity, value func(*facts) any) Column {
	return Column{Name: name, Family: name, About: about, Anonymous: anonymous, value: value}
}

// readings are the means of what was read; heights count from the hip.
func readings() []Column {
	var all []Column
	for r := range fit.NumReadings {
		key := strings.TrimSuffix(r.Info().Key, "_mm")
		switch {
		case r == fit.Hip: // the others count from it
		case r.IsHeight():
			all = append(all, Column{Name: key + "_above_hip_mm", Family: "MARK_above_hip_mm", About: "height of a mark above the hip point, mean of the latest hang that read it",
				value: func(f *facts) any { return f.height(r) }})
		default:
			table := r.Info().Table
			name := strings.ReplaceAll(strings.TrimPrefix(table, "kit."), ".", "_") + "_" + key + "_mm"
			if table == "climber" || table == "rope" {
				name = key + "_mm"
			}
			all = append(all, Column{Name: name, Family: "READING_mm", About: "a laid length, mean of the times it was read; those of pieces as they came to the session",
				value: func(f *facts) any { return mean(f.s.Fit.Laid[r]) }})
		}
	}
	return all
}

// lengths are the pieces as they are at the end of the session.
func lengths() []Column {
	var all []Column
	for p := range fit.NumPieces {
		all = append(all,
			Column{Name: p.Key() + "_set_mm", Family: "PIECE_set_mm", About: "length of a piece at the end of the session; of a hitch its loop",
				value: func(f *facts) any {
					if f.model == nil {
						return nil
					}
					return f.model.Length(p, f.state)
				}},
			Column{Name: p.Key() + "_tied", Family: "PIECE_tied", About: "the day on which the cord was tied", Anonymous: Month,
				value: func(f *facts) any { return day(f.s.Tied[p].On) }})
	}
	return all
}

// poses are what the model says of how the climber hangs, stands and slips.
func poses() []Column {
	var all []Column
	for _, v := range rules.PoseKinds() {
		unit := map[string]string{"mm": "_mm", "kN": "_kn", "deg": "_deg"}[v.Unit]
		all = append(all, Column{Name: v.Name + unit, Family: "POSE_UNIT", About: "a pose, as under poses of check --json",
			value: func(f *facts) any {
				if v, there := f.poses[v.Name]; there {
					return v
				}
				return nil
			}})
	}
	return all
}

// checks are the verdicts of today with their numbers.
func checks() []Column {
	var all []Column
	for c := range rules.NumChecks {
		for _, part := range []struct {
			name, about string
			of          func(rules.Check) any
		}{
			{"verdict", "pass, tight, fail or unknown", func(k rules.Check) any { return string(k.Verdict) }},
			{"margin", "how much is to spare, in the check's unit; below 0 it fails", func(k rules.Check) any { return float64(k.Margin) }},
			{"guard", "how much margin a pass needs", func(k rules.Check) any { return float64(k.Guard) }},
		} {
			all = append(all, Column{Name: c.String() + "." + part.name, Family: "CHECK." + part.name, About: part.about,
				value: func(f *facts) any {
					if f.checks == nil {
						return nil
					}
					return part.of(f.checks[c])
				}})
		}
	}
	return all
}

func stamp(t time.Time) any {
	if t.IsZero() {
		return nil
	}
	return t.Format(time.RFC3339)
}

func day(t time.Time) any {
	if t.IsZero() {
		return nil
	}
	return t.Format(time.DateOnly)
}

func number(n fit.Number) any {
	if !n.Known {
		return nil
	}
	return n.V
}

// signed is something of the sign-off, nil where there is none.
func signed(f *facts, of func(*sessions.SignOff) any) any {
	if f.s.SignOff == nil {
		return nil
	}
	return of(f.s.SignOff)
}

// mean is NaN where nothing was read.
func mean(list []float64) float64 {
	sum := 0.0
	for _, v := range list {
		sum += v
	}
	return sum / float64(len(list))
}

// height is a mark above the hip of the hang that counts; NaN where either was
// not read.
func (f *facts) height(r fit.Reading) float64 {
	for i := len(f.s.Fit.Hangs) - 1; i >= 0; i-- {
		if h := f.s.Fit.Hangs[i].Heights; len(h[r]) > 0 {
			return mean(h[r]) - mean(h[fit.Hip])
		}
	}
	return math.NaN()
}
