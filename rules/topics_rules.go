package rules

import (
	"fmt"
	"math"
)

// checkTopics explain the checks, from their table.
func checkTopics() []Topic {
	var out []Topic
	for c := range NumChecks {
		info := c.Info()
		how := info.Measured
		for _, l := range info.Limits {
			how += "\n- limit " + l.String() + ": " + l.span()
		}
		for i, r := range info.Readings {
			if i == 0 {
				how += "\n- may rest on: "
			} else {
				how += ", "
			}
			how += readingName(r)
		}
		kind := "A must: while it fails or is unknown nobody signs."
		if info.Kind == Should {
			kind = "A should: advice, it does not hold up the sign-off."
		}
		out = append(out, Topic{
			Name: info.Name, Kind: CheckTopic, Title: info.Title, What: info.What + " " + kind, Why: info.Why,
			How: how, Do: info.Do, Source: info.Source,
		})
	}
	return out
}

// limitTopics explain the limits, from limits.toml.
func limitTopics() []Topic {
	var out []Topic
	for l := range NumLimits {
		info := l.Info()
		var used []string
		for c := range NumChecks {
			for _, x := range c.Info().Limits {
				if x == l {
					used = append(used, c.String())
				}
			}
		}
		what := "The limit of " + list(used) + ": "
		if len(used) == 0 { // saddle-force: told beside peak-force
			what = "A limit without a check: "
		}
		out = append(out, Topic{
			Name: info.Name, Kind: LimitTopic, Title: info.Title, What: what + l.span() + ".", Why: info.Why,
			How:    "A school moves it in school.toml, or one session in its own file, under [limits]. Wherever a moved limit was used, that is shown.",
			Do:     "Leave it where it is unless your school has a reason that it can put in writing; outside its bounds it is refused.",
			Source: info.Source, Also: []string{"limits." + info.Name},
		})
	}
	return out
}

// span tells a limit's default and bounds, lengths in inches too and forces in
// pounds: "25 mm (1 in) by default; a school may set 10 to 100 mm (3/8 to 3 15/16 in)".
func (l Limit) span() string {
	info := l.Info()
	least, most := info.Bounds[0], info.Bounds[1]
	said := withUnit(info.Default, info.Unit)
	if other, unit := otherUnit(info.Default, info.Unit); unit != "" && info.Default != 0 {
		said += " (" + other + " " + unit + ")"
	}
	said += fmt.Sprintf(" by default; a school may set %g to %s", least, withUnit(most, info.Unit))
	from, _ := otherUnit(least, info.Unit)
	if to, unit := otherUnit(most, info.Unit); unit != "" {
		said += " (" + from + " to " + to + " " + unit + ")"
	}
	return said
}

// lbfPerKN is from the pound of 0.45359237 kg (1959) and the standard gravity of
// 9.80665 m/s².
const lbfPerKN = 224.809

// otherUnit is a length in mm in inches, and a force in kN in pounds to the
// nearest ten; "" and "" for other units.
func otherUnit(v float64, unit string) (number, other string) {
	switch unit {
	case "mm":
		return sixteenths(v), "in"
	case "kN":
		return fmt.Sprintf("%.0f", 10*math.Round(v*lbfPerKN/10)), "lbf"
	}
	return "", ""
}
