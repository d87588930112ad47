package plausible_test

import (
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules/plausible"
)

// BenchmarkOf asks about a reading that fits, as each Enter does.
func BenchmarkOf(b *testing.B) {
	f := fitting()
	put(f, fit.Nose)
	for b.Loop() {
		if _, asked := plausible.Of(f, plausible.Try{Reading: fit.Nose, Value: 2218, Unit: "mm"}); asked {
			b.Fatal("asked")
		}
	}
}
