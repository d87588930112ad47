package compare

import (
	"math"
	"slices"
	"strings"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// measured is a session with all that is held against another one.
type measured struct {
	file   *sessions.File
	report *rules.Report
	judged *rules.Assessment
	state  fit.State
	lens   *fit.Propagation // of the heights above the hip and the lengths as they are now
	byKey  map[string]int   // base inputs by their key
}

// The outputs of measured.lens: every reading, then every piece.
const numLens = int(fit.NumReadings) + int(fit.NumPieces)

func measure(f *sessions.File) (*measured, error) {
	report, err := f.Judge()
	if err != nil {
		return nil, err
	}
	fitting := f.Session.Fit
	fitting.Started = f.Session.Started
	m := &measured{file: f, report: report, byKey: map[string]int{}}
	m.judged = rules.Assess(&fitting, f.Session.RulesFor())
	model := m.judged.Model()
	model.Current(&m.state)
	for i := range model.Inputs {
		m.byKey[model.Inputs[i].Key] = i
	}
	slots := m.readingSlots()
	m.lens = model.Propagate(numLens, func(x []float64, s *fit.State, out []float64) {
		for r := range fit.NumReadings {
			out[r] = slots[r].at(x, s, r)
		}
		for p := range fit.NumPieces {
			out[int(fit.NumReadings)+int(p)] = model.Length(p, s)
		}
	})
	return m, nil
}

// A slot is where a reading is found in the vector of base inputs, and the hip
// that it counts from; what was not read, or was moved since, stands by the
// model.
type slot struct {
	input, hip int // 0 is an input that is unknown
	standsIn   bool
}

func (t slot) at(x []float64, s *fit.State, r fit.Reading) float64 {
	switch {
	case t.standsIn:
		return s.Standing(r)
	case r.IsHeight():
		return x[t.input] - x[t.hip]
	}
	return x[t.input]
}

func (m *measured) readingSlots() (slots [fit.NumReadings]slot) {
	model := m.judged.Model()
	for i := range model.Inputs {
		in := &model.Inputs[i]
		if in.Hidden || in.Reading < 0 || in.Reading.IsHeight() && in.Hang != model.HangOf(in.Reading) {
			continue
		}
		slots[in.Reading] = slot{input: i, standsIn: in.Origin == fit.Predicted}
	}
	for r := range fit.NumReadings {
		switch {
		case !model.Read(r):
			slots[r].standsIn = true
		case r.IsHeight():
			slots[r].hip = m.byKey[fit.HeightKey(model.HangOf(r), fit.Hip)]
		}
	}
	return slots
}

// A part is a number of one session with what each base input adds to its
// standard uncertainty.
type part struct {
	Side
	unit   string
	effect func(input int) float64
}

var nothing = part{Side: Side{Value: rules.Num(math.NaN()), U: rules.Num(math.NaN())}, effect: func(int) float64 { return 0 }}

// reading is what was read, or told, under a key without the number of a hang.
func (m *measured) reading(name string) part {
	model := m.judged.Model()
	if r, ok := readingOf(name); ok {
		p := m.lenOf(int(r))
		switch {
		case model.Read(r):
			in := &model.Inputs[m.byKey[keyOf(model, r)]]
			p.N, p.Origin = in.N, in.Origin.String()
		case p.Value.Known():
			p.Origin = fit.Estimated.String()
		}
		return p
	}
	i, ok := m.byKey[name]
	if !ok {
		return nothing
	}
	in := &model.Inputs[i]
	return part{Side{rules.Num(in.V), rules.Num(in.U), 0, in.Origin.String()}, in.Unit, func(j int) float64 {
		if i == j {
			return in.U
		}
		return 0
	}}
}

// length is a piece as it is at the end of the session.
func (m *measured) length(name string) part {
	i := slices.Index(pieceNames(), name)
	p := m.lenOf(int(fit.NumReadings) + i)
	if p.Value.Known() {
		p.Origin = "derived"
		if in, ok := m.byKey[m.judged.Model().PieceKey(fit.Piece(i))]; ok {
			p.N, p.Origin = m.judged.Model().Inputs[in].N, m.judged.Model().Inputs[in].Origin.String()
		}
	}
	return p
}

func (m *measured) lenOf(o int) part {
	u, _ := m.lens.U(o)
	v := m.lens.Values[o]
	if math.IsNaN(v) {
		return part{nothing.Side, "mm", nothing.effect}
	}
	return part{Side{Value: rules.Num(v), U: rules.Num(u)}, "mm", func(i int) float64 { return m.lens.Contribution(i, o) }}
}

func (m *measured) pose(name string) part {
	for _, v := range m.report.Poses {
		if v.Name == name {
			return part{Side{v.Value, v.U, 0, v.Origin}, v.Unit, func(i int) float64 { return m.judged.PoseEffect(i, name) }}
		}
	}
	return nothing
}

// keyOf is the key of the reading that counts.
func keyOf(model *fit.Model, r fit.Reading) string {
	if r.IsHeight() {
		return fit.HeightKey(model.HangOf(r), r)
	}
	return fit.LaidKey(r)
}

// readingOf is the reading whose key without the number of a hang is name.
func readingOf(name string) (fit.Reading, bool) {
	for r := range fit.NumReadings {
		if info := r.Info(); info.Table+"."+info.Key == name {
			return r, true
		}
	}
	return 0, false
}

// readingNames are the keys of all that was read or told as a number in one of
// the sessions, in the order of the file. The hip is not among them: it only
// says where the tape's zero hung.
func readingNames(a, b *measured) []string {
	var keys []string
	for _, m := range []*measured{a, b} {
		model := m.judged.Model()
		for r := range fit.NumReadings {
			if r != fit.Hip && model.Read(r) {
				keys = append(keys, firstKey(r))
			}
		}
		for i := range model.Inputs {
			in := &model.Inputs[i]
			p, posture := strings.CutPrefix(in.Key, "posture.")
			if in.Hidden || in.Reading >= 0 || in.Change > 0 || posture && !postureGiven(m.file.Session, p) {
				continue
			}
			keys = append(keys, in.Key)
		}
	}
	keys = fit.SortKeys(keys)
	for i, key := range keys {
		if height, ok := strings.CutPrefix(key, "hangs.1."); ok {
			keys[i] = "hangs." + height
		}
	}
	return keys
}

// firstKey is the key of a reading; that of a height in the first hang.
func firstKey(r fit.Reading) string {
	if r.IsHeight() {
		return fit.HeightKey(0, r)
	}
	return fit.LaidKey(r)
}

func postureGiven(s *sessions.Session, key string) bool {
	for p := range fit.NumPostures {
		if p.Info().Key == key {
			return s.Fit.Posture[p].Given
		}
	}
	return false
}

func pieceNames() []string {
	var names []string
	for p := range fit.NumPieces {
		names = append(names, p.Key())
	}
	return names
}

// poseNames are the poses that either session tells, in the order of the longer
// list.
func poseNames(a, b *measured) []string {
	list := a.report.Poses
	if len(b.report.Poses) > len(list) {
		list = b.report.Poses
	}
	var names []string
	for _, v := range list {
		names = append(names, v.Name)
	}
	return names
}
