package rules_test

import "testing"

// Made-up sessions that go further than the examples: hangs without a hip,
// pieces changed up to three times and read again or not, kept lengths, moved
// postures and limits, tables and readings left out. Their answers are those of
// a second implementation, written in another language from the model; where the
// model leaves a choice it makes the one that DEVELOPERS.md lists.
func TestOracle(t *testing.T) { compareAnswers(t, "../testdata/sessions/oracle") }
