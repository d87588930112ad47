package tui

import (
	"bytes"
	"strings"
	"testing"
	"time"
)

func TestFirstQuestionLineByLineTellsItsWords(t *testing.T) {
	var out bytes.Buffer
	if err := RunPlain(Options{Store: openAt(t, t.TempDir(), time.Now), Now: time.Now, In: strings.NewReader("?\nnonsense\nquit\n"), Out: &out}); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"\nresume: go on with", "\npast: find", "\"nonsense\" is none of them; a ? tells"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("%q is not said:\n%s", want, &out)
		}
	}
}
