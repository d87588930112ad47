package sessions

import (
	"os"
	"path/filepath"
	"reflect"
	"testing"
)

// The example sessions were written by hand and by another program.
func TestExamplesDecodeAndComeBackTheSame(t *testing.T) {
	files, _ := filepath.Glob("../testdata/sessions/examples/*.toml")
	if len(files) != 8 {
		t.Fatalf("%d examples, want 8", len(files))
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		s, err := Decode(filepath.Base(file), data)
		if err != nil {
			t.Error(err)
			continue
		}
		if len(s.Fit.Hangs) == 0 || !s.Fit.Kit.Garda || s.Started.IsZero() {
			t.Errorf("%s: hangs, kit or start are missing from %+v", file, s)
		}
		again, err := Decode("encoded", Encode(s))
		if err != nil {
			t.Error(err)
			continue
		}
		if !reflect.DeepEqual(s, again) {
			t.Errorf("%s: came back as\n%+v\nwant\n%+v", file, again, s)
		}
	}
}
