package tui

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
	"testing/synctest"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// No frame is larger than its window, whatever its size and however it got
// there, and what is in the field stays; also with a name in wide characters.
func TestFramesStayInTheirWindow(t *testing.T) {
	windows := [][2]int{{1, 1}, {20, 5}, {43, 60}, {44, 19}, {44, 20}, {45, 61}, {60, 39}, {79, 40}, {99, 20}, {100, 20}, {101, 43}, {150, 21}, {200, 60}, {300, 100}, {80, 24}}
	for _, scene := range scenes {
		t.Run(scene.name, func(t *testing.T) {
			t.Parallel()
			synctest.Test(t, func(t *testing.T) {
				d := sit(t, 80, 24)
				scene.to(d)
				m := d.m()
				if m.inSession() {
					m.flow.Session.Climber = "山田太郎 ÅSA ＷＩＤＥ 山田太郎"
					d.model = *m
				}
				text := d.m().flow.Texts
				for _, w := range windows {
					d.send(tea.WindowSizeMsg{Width: w[0], Height: w[1]})
					inBox(t, d.model.View(), w[0], w[1])
				}
				if got := d.m().flow.Texts; fmt.Sprint(got) != fmt.Sprint(text) {
					t.Errorf("typed %v, after resizing %v", text, got)
				}
				d.leave()
			})
		})
	}
}

// How screens are coloured: in the terminal's own sixteen, which are the same
// in true colour and which its owner has set for light or dark; and without any
// in the sun.
func TestColours(t *testing.T) {
	defer lipgloss.SetColorProfile(termenv.Ascii)
	for _, scene := range scenes {
		switch scene.name {
		case "review", "nose", "side", "refused", "break":
		default:
			continue
		}
		for _, size := range sizes[:3] {
			for _, contrast := range []bool{false, true} {
				coloured(t, scene.name, scene.to, size, contrast)
			}
		}
	}
}

func coloured(t *testing.T, name string, to func(*desk), size [2]int, contrast bool) {
	t.Helper()
	var seen []string
	for _, profile := range []termenv.Profile{termenv.ANSI, termenv.TrueColor} {
		lipgloss.SetColorProfile(profile)
		synctest.Test(t, func(t *testing.T) {
			d := sitAt(t, evenFolder(t), size[0], size[1])
			m := d.m()
			m.opts.Contrast = contrast
			m.theme = newTheme(m.opts)
			d.model = *m
			to(d)
			seen = append(seen, d.model.View())
			inBox(t, d.model.View(), size[0], size[1])
			d.leave()
		})
	}
	if seen[0] != seen[1] {
		t.Errorf("%s: sixteen colours and true colour differ", name)
	}
	look := "colour"
	if contrast {
		look = "contrast"
		if strings.Contains(seen[0], "\x1b[3") || strings.Contains(seen[0], ";3") {
			t.Errorf("%s: a colour in high contrast", name)
		}
	}
	golden(t, fmt.Sprintf("%s_%dx%d_%s", name, size[0], size[1], look), strings.ReplaceAll(seen[0], "\x1b", "ESC"))
}

// With several students whose screen it is matters: a short name is never given up,
// a long one keeps its beginning where six letters of it fit.
func TestHeaderSaysWhose(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		d := sit(t, 44, 20)
		d.typed("1")
		d.goTo(d.place("hang"))
		d.typed("1")
		place := regexp.MustCompile(` [0-9]+/[0-9]+ Seated on the main bridge$`)
		for _, name := range []string{"Mir", "Ash Longname", "Ash with a very long name"} {
			m := d.m()
			m.flow.Session.Climber = name
			m.layout()
			if line, _, _ := strings.Cut(m.View(), "\n"); !strings.HasPrefix(strings.TrimPrefix(line, "hangtape "), name[:min(6, len(name))]) || !place.MatchString(line) {
				t.Errorf("%q: %q", name, line)
			}
		}
		d.leave()
	})
}
