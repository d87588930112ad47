package rules

import (
	"fmt"
	"strings"
	"testing"

	"example.com/hangtape/internal/golden"
)

// How the checks are judged is what sign-offs are held against; another language
// changes nothing of it.
func TestJudgedAsTheTablesSay(t *testing.T) {
	var b strings.Builder
	for c := range NumChecks {
		info := c.Info()
		fmt.Fprintf(&b, "%s, %s: %s\n", info.Name, string(info.Kind), info.Measured)
	}
	golden.Hold(t, "judged.txt", b.String(), *update)
}
