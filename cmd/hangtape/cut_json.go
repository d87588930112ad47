package main

import (
	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// cutJSON is the answer of cut for programs. Lengths are mm.
type cutJSON struct {
	Format   int          `json:"format"`
	Piece    string       `json:"piece"`
	Finished rules.Num    `json:"finished"`
	Cord     rules.Num    `json:"cord"`
	Rope     rules.Num    `json:"rope"` // null but for a hitch
	Wraps    int          `json:"wraps"`
	Strands  int          `json:"strands"`
	Knot     string       `json:"knot"`
	Hitch    string       `json:"hitch"` // "" for a line with two ends
	Eye      rules.Num    `json:"eye"`   // null where the knots make none
	Tail     rules.Num    `json:"tail"`
	Cut      rules.Num    `json:"cut"`
	Takes    rules.Num    `json:"takes"`
	Interval [2]rules.Num `json:"interval"`
	Parts    []partJSON   `json:"parts"`
	learntJSON
	Spool    *spoolJSON `json:"spool"` // null where none was asked for
	Cautions []string   `json:"cautions"`
}

// learntJSON is what is known of knots, in diameters of the cord.
type learntJSON struct {
	Coefficients []coefficientJSON `json:"coefficients"`
	Scatter      rules.Num         `json:"scatter"`
	Tied         int               `json:"tied"`
}

type partJSON struct {
	Name   string    `json:"name"`
	Count  int       `json:"count"`
	Each   rules.Num `json:"each"`
	Length rules.Num `json:"length"`
}

type coefficientJSON struct {
	Knot   string    `json:"knot"`
	Value  rules.Num `json:"value"`
	U      rules.Num `json:"u"`
	Prior  rules.Num `json:"prior"`
	PriorU rules.Num `json:"prior_u"`
	Origin string    `json:"origin"`
}

type spoolJSON struct {
	Length   rules.Num `json:"length"`
	Pieces   int       `json:"pieces"`
	Leftover rules.Num `json:"leftover"`
}

func (a cutAnswer) json() cutJSON {
	c := a.cord
	out := cutJSON{
		Format: 1, Piece: c.Use.Key(), Finished: tenth(c.Finished), Cord: rules.Num(c.Diameter), Rope: unlessZero(c.Host),
		Wraps: c.Wraps, Strands: c.Strands, Knot: c.Closing.Info().Key, Eye: unlessZero(c.Eye), Tail: tenth(c.Tail),
		Cut: tenth(a.cut.Length), Takes: tenth(a.cut.Takes),
		Interval:   [2]rules.Num{tenth(a.cut.Interval[0]), tenth(a.cut.Interval[1])},
		learntJSON: learnt(a.model, a.knots()),
		Cautions:   rules.CordCautions(),
	}
	if c.Closed() {
		out.Hitch = c.Hitch.Info().Key
	}
	for _, p := range a.cut.Parts {
		out.Parts = append(out.Parts, partJSON{p.Name, p.Count, tenth(p.Each), tenth(p.Length)})
	}
	if a.spool > 0 {
		n, left := a.fromSpool()
		out.Spool = &spoolJSON{tenth(a.spool), n, tenth(left)}
	}
	return out
}

func learnt(m *fit.CordModel, knots []fit.Knot) learntJSON {
	out := learntJSON{Coefficients: []coefficientJSON{}, Scatter: tenth(m.Scatter()), Tied: m.Pieces}
	for _, k := range knots {
		v, u := m.Coefficient(k)
		i := k.Info()
		out.Coefficients = append(out.Coefficients, coefficientJSON{i.Key, tenth(v), tenth(u), rules.Num(i.PerD), rules.Num(i.U), i.Origin})
	}
	return out
}
