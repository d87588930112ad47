package truth

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
)

// A Sex is what the survey recorded: "M" or "F".
type Sex string

// A Body is one person of the survey, barefoot and erect: mm and kg. Heights are
// above the hip point (trochanterion) unless said otherwise.
type Body struct {
	Row int // counted from 0
	Sex Sex

	Stature, Inseam, Navel float64 // above the floor
	Mass                   float64 // undressed

	Thigh    float64 // hip point down to the middle of the kneecap
	Shin     float64 // middle of the kneecap down to the floor
	Neck     float64 // lowest neck vertebra
	Eye      float64 // from the neck vertebra up to the corner of the eye
	Shoulder float64 // acromion
	UpperArm float64
	Forearm  float64 // to the wrist
	Lift     float64 // what a full stretch raises the wrist beyond shoulder and arm
	ArmDown  float64 // acromion down to the wrist of a hanging arm
}

// ReadBodies reads the survey: a CSV file with a header and the columns of the
// public ANSUR II files, mm, masses in tenths of a kilogram. The error names the
// column, or the row and what was found there.
func ReadBodies(r io.Reader) ([]Body, error) {
	rows, err := csv.NewReader(r).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("survey: %w", err)
	}
	if len(rows) < 2 {
		return nil, fmt.Errorf("survey: no rows under the header")
	}
	columns := make(map[string]int, len(rows[0]))
	for i, name := range rows[0] {
		columns[name] = i
	}
	bodies := make([]Body, 0, len(rows)-1)
	for n, row := range rows[1:] {
		cells := cells{columns: columns, row: row}
		b := cells.body()
		if cells.err != nil {
			return nil, fmt.Errorf("survey: row %d: %w", n+2, cells.err)
		}
		b.Row = n
		bodies = append(bodies, b)
	}
	return bodies, nil
}

// cells reads the cells of one row by the column's name, and keeps the first
// error.
type cells struct {
	columns map[string]int
	row     []string
	err     error
}

func (c *cells) text(column string) string {
	i, ok := c.columns[column]
	if !ok {
		if c.err == nil {
			c.err = fmt.Errorf("no column %q", column)
		}
		return ""
	}
	return c.row[i]
}

func (c *cells) number(column string) float64 {
	s := c.text(column)
	v, err := strconv.ParseFloat(s, 64)
	if err != nil && c.err == nil {
		c.err = fmt.Errorf("column %s: found %q, want a number", column, s)
	}
	return v
}

func (c *cells) body() Body {
	stature, hip, knee := c.number("stature"), c.number("trochanterionheight"), c.number("kneeheightmidpatella")
	seatToHip := c.number("sittingheight") - (stature - hip)
	b := Body{
		Sex:      Sex(c.text("sex")),
		Stature:  stature,
		Inseam:   c.number("crotchheight"),
		Navel:    c.number("waistheightomphalion"),
		Mass:     c.number("weightkg") / 10,
		Thigh:    hip - knee,
		Shin:     knee,
		Neck:     c.number("cervicaleheight") - hip,
		Shoulder: c.number("acromialheight") - hip,
		UpperArm: c.number("acromionradialelength"),
		Forearm:  c.number("radialestylionlength"),
		ArmDown:  c.number("acromialheight") - c.number("wristheight"),
	}
	b.Eye = c.number("eyeheightsitting") - seatToHip - b.Neck
	stretched := c.number("overheadfingertipreachsitting") - c.number("handlength") - seatToHip
	b.Lift = stretched - b.Shoulder - b.UpperArm - b.Forearm
	return b
}
