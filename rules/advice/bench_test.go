package advice_test

import (
	"path/filepath"
	"strings"
	"testing"

	"example.com/hangtape/rules/advice"
	"example.com/hangtape/sessions"
)

// BenchmarkAdvise is a whole answer, by example: both answers with windows and
// what would do sooner, or the conflict.
func BenchmarkAdvise(b *testing.B) {
	files, _ := filepath.Glob(filepath.Join(examples, "*.toml"))
	for _, file := range files {
		f, err := sessions.ReadFile(file, nil)
		if err != nil {
			b.Fatal(err)
		}
		fitting, limits := &f.Session.Fit, f.Session.RulesFor()
		b.Run(strings.TrimSuffix(filepath.Base(file), ".toml"), func(b *testing.B) {
			for b.Loop() {
				advice.Advise("", fitting, limits, advice.MarkMetric)
			}
		})
	}
}
