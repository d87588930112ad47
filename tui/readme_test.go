package tui

import (
	"crypto/rand"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"example.com/hangtape/internal/docpart"
	"example.com/hangtape/sessions"
)

// The README's parts that come from here are what the program shows now; with
// -update they are written afresh.
func TestReadmeIsCurrent(t *testing.T) {
	docpart.Hold(t, "../README.md", "from code, go test ./tui -update",
		map[string]string{"keys": readmeKeys(), "review": demoReview(t), "advice": readmeView(t, "advice")}, *update)
}

// readmeView is the golden view of a scene at 80x24.
func readmeView(t *testing.T, scene string) string {
	t.Helper()
	data, err := os.ReadFile("../testdata/views/" + scene + "_80x24.txt")
	if err != nil {
		t.Fatal(err)
	}
	return "```\n" + strings.TrimRight(string(data), "\n") + "\n```\n"
}

// readmeKeys is the table of keys.
func readmeKeys() string {
	var b strings.Builder
	b.WriteString("| key | what it does |\n| --- | --- |\n")
	for _, k := range bindings() {
		fmt.Fprintf(&b, "| %s | %s |\n", k.label, k.does)
	}
	return b.String()
}

// demoReview is the screen that Enter leads to on the first one, at 80x24.
func demoReview(t *testing.T) string {
	t.Helper()
	now := func() time.Time { return time.Date(2026, 4, 18, 10, 0, 0, 0, time.UTC) }
	store := func() *sessions.Store {
		st, err := sessions.OpenStore(t.TempDir(), now, rand.Reader)
		if err != nil {
			t.Fatal(err)
		}
		return st
	}
	var m tea.Model = New(Options{Store: store(), Demo: store(), Now: now})
	m, cmd := m.Update(tea.KeyMsg{Type: tea.KeyEnter})
	opened, ok := cmd().(openedMsg)
	if !ok || opened.err != nil {
		t.Fatalf("Enter did not open the demo: %v", opened.err)
	}
	defer opened.editor.Close()
	m, _ = m.Update(opened)
	m, _ = m.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	var b strings.Builder
	for line := range strings.Lines(m.View()) {
		b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
	return "```\n" + strings.TrimRight(b.String(), "\n") + "\n```\n"
}
