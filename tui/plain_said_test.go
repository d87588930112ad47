package tui

import (
	"bytes"
	"regexp"
	"strings"
	"testing"
	"time"
)

// said is what the wizard says line by line to these lines, from a new session on.
func said(t *testing.T, in string) string {
	t.Helper()
	now := func() time.Time { return time.Date(2026, 5, 7, 9, 0, 0, 0, time.UTC) }
	var out bytes.Buffer
	if err := RunPlain(Options{Store: openAt(t, t.TempDir(), now), Now: now, In: strings.NewReader("new\n" + in), Out: &out}); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// stepNumber is the number of the step with that title, in what was said to "steps".
func stepNumber(t *testing.T, said, title string) string {
	t.Helper()
	found := regexp.MustCompile(`(?m)^([0-9]+): ` + title + `(,|$)`).FindStringSubmatch(said)
	if found == nil {
		t.Fatalf("no step %q in\n%s", title, said)
	}
	return found[1]
}

// What is heard and not seen: an option is said back, a question is not said again
// after each take, and no verdict on load paths comes before the kit was told.
func TestPlainIsHeard(t *testing.T) {
	bridge := "1\ngo " + stepNumber(t, said(t, "1\nsteps\n"), "Main bridge") + "\n1\n"
	for _, c := range []struct {
		in         string
		want, once string
		not        string
	}{
		{"1\n", "\nChosen: first fitting.\nClimber\n", "", ""},
		{"\n", "\nChosen: first fitting.\n", "", ""},
		{"9\n", "\nNot taken: answer with a number from 1 to 5\n", "", "Chosen"},
		{bridge, "\nChosen: yes.\nMain bridge\n", "", "FAIL"},
		{bridge + "1090\n1092\n", "\nTaken. Main bridge: 1092 mm = 43 in\nTake it again, or an empty line to go on.\n", "It sets how high the main connector hangs.", ""},
		{bridge + "1090\n?\n", "\nback: to the question before.\n", "", "Words: back"},
	} {
		out := said(t, c.in)
		if !strings.Contains(out, c.want) || c.once != "" && strings.Count(out, c.once) != 1 || c.not != "" && strings.Contains(out, c.not) {
			t.Errorf("%q:\n%s", c.in, out)
		}
	}
}
