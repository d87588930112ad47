package rules_test

import (
	"regexp"
	"testing"

	"example.com/hangtape/rules"
)

var (
	inMillimetres = regexp.MustCompile(`\d mm\b`)
	inInches      = regexp.MustCompile(`\d in\b`)
	inKilonewtons = regexp.MustCompile(`\d kN\b`)
	inPounds      = regexp.MustCompile(`\d lbf\b`)
)

// Whoever reads a tape in inches is told every length and limit in them too.
func TestExplanationsTellInchesToo(t *testing.T) {
	fine := map[string]bool{"sensitivity": true} // a slope, the same in any unit
	for _, topic := range rules.Topics() {
		told := topic.What + " " + topic.Why + " " + topic.How + " " + topic.Do
		if inMillimetres.MatchString(told) && !inInches.MatchString(told) && !fine[topic.Name] {
			t.Errorf("%s tells millimetres and no inches", topic.Name)
		}
		if inKilonewtons.MatchString(told) && !inPounds.MatchString(told) {
			t.Errorf("%s tells kilonewtons and no pounds", topic.Name)
		}
	}
}
