package pages

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// poseName is a pose's title in words.
func poseName(name string) string {
	if t, ok := rules.Explain(name); ok {
		return t.Title
	}
	return name
}

var toldNames = map[string]string{
	"session.purpose": "purpose", "session.place": "place", "session.climber": "climber", "session.instructor": "instructor",
	"tape.class": "class of the tape", "tape.division_mm": "division of the tape", "tape.hook": "laid from the tape's end",
	"kit.label": "kit", "kit.inspected": "day of the inspection", "kit.inspected_by": "who inspected the kit",
}

func toldName(key string) string {
	if name, ok := toldNames[key]; ok {
		return name
	}
	return rules.InputName(key)
}

// told is the value of a key of the file for people: without quotes, bounds in
// the unit that they read in.
func (p *page) told(key, value string) string {
	if value == "" {
		return "not told"
	}
	if s, err := strconv.Unquote(value); err == nil {
		if key == "session.purpose" {
			s = sessions.Purpose(s).Word()
		}
		return p.typed(s)
	}
	var least, most float64
	if n, _ := fmt.Sscanf(value, "[%g, %g]", &least, &most); n == 2 && strings.HasSuffix(key, "_mm") {
		return p.length(least) + " to " + p.length(most)
	}
	switch value {
	case "true":
		return "yes"
	case "false":
		return "no"
	}
	return value
}
