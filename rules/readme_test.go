package rules

import (
	"fmt"
	"os"
	"strings"
	"testing"
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
	const path = "../README.md"
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	readme := strings.ReplaceAll(string(data), "\r\n", "\n")
	for part, want := range map[string]string{"checks": readmeChecks(), "cautions": readmeCautions()} {
		begin, end := "<!-- "+part+": from code, go test ./rules -update -->\n", "<!-- "+part+": end -->\n"
		before, rest, ok := strings.Cut(readme, begin)
		got, after, ok2 := strings.Cut(rest, end)
		if !ok || !ok2 {
			t.Fatalf("README.md has no part for %s", part)
		}
		if got != want && !*update {
			t.Errorf("README.md: the %s are not what the code says: go test ./rules -update", part)
		}
		readme = before + begin + want + end + after
	}
	if *update {
		if err := os.WriteFile(path, []byte(readme), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
