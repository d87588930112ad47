package rules_test

import (
	"path/filepath"
	"strings"
	"testing"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
)

// BenchmarkJudge is a check with its next readings, by example.
func BenchmarkJudge(b *testing.B) {
	files, _ := filepath.Glob(filepath.Join(examples, "*.toml"))
	for _, file := range files {
		f, err := sessions.ReadFile(file, nil)
		if err != nil {
			b.Fatal(err)
		}
		fitting, limits := &f.Session.Fit, f.Session.RulesFor()
		b.Run(strings.TrimSuffix(filepath.Base(file), ".toml"), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := rules.Judge("", fitting, limits); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
