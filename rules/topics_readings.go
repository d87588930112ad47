package rules

import (
	"strings"

	"example.com/hangtape/fit"
)

// readingName is the name under which a reading is explained: its key without
// the unit, with its piece where the key alone says too little.
func readingName(r fit.Reading) string {
	info := r.Info()
	name := strings.TrimSuffix(info.Key, "_mm")
	if _, piece, ok := strings.Cut(info.Table, "kit."); ok {
		name = piece + "-" + name
	} else if info.Table == "rope" {
		name = "rope-" + name
	}
	return strings.ReplaceAll(name, "_", "-")
}

// Reading is the reading that t explains, and whether it explains one.
func (t Topic) Reading() (fit.Reading, bool) {
	if t.Kind == ReadingTopic {
		for r := range fit.NumReadings {
			if readingName(r) == t.Name {
				return r, true
			}
		}
	}
	return 0, false
}

// readingTopics explain the readings, in the order of the session file.
func readingTopics() []Topic {
	spreads := map[fit.Spread]string{fit.Body: "8 mm (5/16 in), a mark on the body", fit.Hardware: "3 mm (1/8 in), hardware",
		fit.Garda: "5 mm (3/16 in), the Garda hitch in its poses"}
	var out []Topic
	for r := range fit.NumReadings {
		info := r.Info()
		taken := "Lay the tape on. "
		if r.IsHeight() {
			taken = "Read off the hanging tape. "
		}
		also := []string{info.Table + "." + info.Key}
		if info.Table == "climber" || r.IsHeight() { // no other table has the same key
			also = append(also, info.Key)
		}
		out = append(out, Topic{
			Name: readingName(r), Kind: ReadingTopic, Title: Upper(info.Name), What: info.Mark, Why: info.Why,
			How: taken + info.How + " Spread of landing on it: " + spreads[info.Spread] + ".",
			Do: "Take it again where a verdict is tight on it or a finding names it: three readings, finding the mark afresh each time, are worth far more than one. " +
				"What was not taken is left empty.",
			Source: "common practice", Also: also,
		})
	}
	return out
}
