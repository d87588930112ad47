package sessions

import (
	"fmt"
	"os"
	"reflect"
	"strings"
	"testing"
)

// Whoever raises Format needs a migration from the format before, and keeps a
// file of each format as it was.
func TestEveryFormatIsStillRead(t *testing.T) {
	if len(migrations) != Format-1 {
		t.Errorf("format %d needs %d migrations, there are %d", Format, Format-1, len(migrations))
	}
	for n := 1; n <= Format; n++ {
		name := fmt.Sprintf("../testdata/sessions/format-%d.toml", n)
		data, err := os.ReadFile(name)
		if err != nil {
			t.Errorf("no file of format %d was kept: %v", n, err)
			continue
		}
		if !strings.Contains(string(data), fmt.Sprintf("\nformat = %d", n)) {
			t.Errorf("%s does not say format = %d", name, n)
		}
		s, err := Decode(name, data)
		if err != nil {
			t.Errorf("format %d: %v", n, err)
			continue
		}
		if again, err := Decode("again", Encode(s)); err != nil || !reflect.DeepEqual(again, s) {
			t.Errorf("format %d does not come back as it was saved: %v", n, err)
		}
	}
}

func TestMigrateTakesEveryStepFromTheFilesOwn(t *testing.T) {
	step := func(name string) migration {
		return func(root map[string]any) { root["steps"] = fmt.Sprint(root["steps"], name) }
	}
	steps := []migration{step("a"), step("b"), step("c")}
	for _, c := range []struct {
		format any
		want   map[string]any
	}{
		{int64(1), map[string]any{"format": int64(4), "steps": "-abc"}},
		{int64(3), map[string]any{"format": int64(4), "steps": "-c"}},
		{int64(4), map[string]any{"format": int64(4), "steps": "-"}},
		{int64(5), map[string]any{"format": int64(5), "steps": "-"}},
		{int64(0), map[string]any{"format": int64(0), "steps": "-"}},
		{"1", map[string]any{"format": "1", "steps": "-"}},
	} {
		root := map[string]any{"format": c.format, "steps": "-"}
		if migrate(root, steps); !reflect.DeepEqual(root, c.want) {
			t.Errorf("format %v became %v, want %v", c.format, root, c.want)
		}
	}
}
