package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"

	"example.com/hangtape/fit"
)

// A person is one row of the survey, in whole millimetres.
type person struct {
	sex             fit.Sex
	stature, inseam int64
	parts           [fit.NumBodyParts]int64
}

// readSurvey reads the survey's table, whose columns are found by name.
func readSurvey(r io.Reader) ([]person, error) {
	rows, err := csv.NewReader(r).ReadAll()
	if err != nil {
		return nil, err
	}
	if len(rows) == 0 {
		return nil, fmt.Errorf("empty table")
	}
	column := map[string]int{}
	for i, name := range rows[0] {
		column[name] = i
	}
	var people []person
	for n, row := range rows[1:] {
		var bad error
		mm := func(name string) int64 {
			i, ok := column[name]
			if !ok {
				bad = fmt.Errorf("no column %s", name)
				return 0
			}
			v, err := strconv.ParseInt(row[i], 10, 32)
			if err != nil {
				bad = fmt.Errorf("row %d, %s: %w", n+2, name, err)
			}
			return v
		}
		sex, ok := map[string]fit.Sex{"M": fit.Male, "F": fit.Female}[row[column["sex"]]]
		if !ok {
			return nil, fmt.Errorf("row %d: sex %q is neither M nor F", n+2, row[column["sex"]])
		}
		p := person{sex: sex, stature: mm("stature"), inseam: mm("crotchheight")}
		hipAboveSeat := mm("sittingheight") - (p.stature - mm("trochanterionheight"))
		p.parts = [fit.NumBodyParts]int64{
			fit.PartThigh: mm("trochanterionheight") - mm("kneeheightmidpatella"),
			fit.PartShin:  mm("kneeheightmidpatella"),
			fit.PartNose:  mm("eyeheightsitting") - 45 - hipAboveSeat,
			fit.PartFull:  mm("overheadfingertipreachsitting") - mm("handlength") - hipAboveSeat,
			fit.PartDown:  mm("wristheight") - mm("trochanterionheight"),
			fit.PartWaist: mm("waistheightomphalion"),
		}
		if bad != nil {
			return nil, bad
		}
		people = append(people, p)
	}
	return people, nil
}
