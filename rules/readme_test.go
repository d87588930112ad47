package rules

import (
	"fmt"
	"strings"
	"testing"

	"example.com/hangtape/internal/docpart"
)

// readmeChecks is the README's table of checks, from the table in code.
func readmeChecks() string {
	var b strings.Builder
	b.WriteString("| check | kind | what has to be so | held against | source |\n| --- | --- | --- | --- | --- |\n")
	group := ""
	for c := range NumChecks {
		info := c.Info()
		if info.Group != group {
			group = info.Group
			fmt.Fprintf(&b, "| **%s** | | | | |\n", strings.ReplaceAll(group, "-", " "))
		}
		var held []string
		for _, l := range info.Limits {
			held = append(held, l.String()+" "+withUnit(l.Info().Default, l.Info().Unit))
		}
		fmt.Fprintf(&b, "| `%s` | %s | %s | %s | %s |\n", info.Name, info.Kind, info.What, strings.Join(held, "<br>"), info.Source)
	}
	return b.String()
}

// readmeCautions is the README's list of cautions, from the one in code.
func readmeCautions() string {
	return bullets(Cautions()) + "\n"
}

// The parts of the README that come from code are what the code says now; with
// -update they are written afresh.
func TestReadmeIsCurrent(t *testing.T) {
	docpart.Hold(t, "../README.md", "from code, go test ./rules -update",
		map[string]string{"checks": readmeChecks(), "cautions": readmeCautions()}, *update)
}
