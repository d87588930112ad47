package tui

import (
	"flag"
	"math/rand/v2"
	"testing"
	"testing/synctest"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

var keysDrawn = flag.Int("keys", 300, "how many random keys are pressed")

// FuzzKeys presses any keys, in windows of any size: every frame stays in its
// window, and the way out is open with all that was taken saved.
func FuzzKeys(f *testing.F) {
	f.Add([]byte("1\rAsh\r\r\r\t2\r?\x1b"))
	f.Add([]byte("\r\x80\xC3\x81\x90\x91\x92\x93v\x93\x93d\x1b\x1b"))
	f.Fuzz(func(t *testing.T, keys []byte) {
		synctest.Test(t, func(t *testing.T) { anyKeys(sit(t, 80, 24), keys) })
	})
}

// The same of keys drawn at random.
func TestRandomKeysKeepFramesAndAnswers(t *testing.T) {
	draw := rand.New(rand.NewPCG(1, 2))
	keys := make([]byte, 300)
	for n, told := 0, 0; n < *keysDrawn; {
		for i := range keys {
			keys[i] = byte(draw.Uint32())
			if b := &keys[i]; *b < 0x20 || draw.IntN(3) > 0 { // digits and what moves
				*b = "0123456789\r\r\r\r\r\r\t\x1b\x90\x91\x92\x93\x94\x95\x98 "[int(*b)%26]
			}
		}
		keys[0] = '1' // a new session: Esc leaves the first screen
		synctest.Test(t, func(t *testing.T) { n += anyKeys(sit(t, 80, 24), keys) })
		if t.Failed() {
			t.Fatalf("with the keys %q", keys)
		}
		if n/50_000 > told {
			told = n / 50_000
			t.Logf("%d keys", n)
		}
	}
}

// controls are the keys that are no signs, from 0x90 on.
var controls = []tea.KeyType{tea.KeyUp, tea.KeyDown, tea.KeyLeft, tea.KeyRight, tea.KeyPgUp, tea.KeyPgDown, tea.KeyShiftTab,
	tea.KeyF1, tea.KeyBackspace, tea.KeyCtrlU, tea.KeyCtrlO, tea.KeyHome, tea.KeyEnd, tea.KeyDelete, tea.KeyCtrlW, tea.KeyCtrlE}

// anyKeys presses a key for each byte, or moves the corner of the window, until
// the wizard ends, and says how many there were.
func anyKeys(d *desk, keys []byte) (pressed int) {
	width, height := 80, 24
	for _, k := range keys {
		pressed++
		switch {
		case k == '\r':
			d.press(tea.KeyEnter)
		case k == '\t':
			d.press(tea.KeyTab)
		case k == 0x1b:
			d.press(tea.KeyEsc)
		case k >= 0x20 && k < 0x80:
			d.typed(string(rune(k)))
		case k >= 0x90 && k < 0xA0:
			d.press(controls[k-0x90])
		case k >= 0xC0 && k < 0xE0:
			width = 1 + 7*int(k-0xC0)
			d.send(tea.WindowSizeMsg{Width: width, Height: height})
		case k >= 0xE0:
			height = 1 + 2*int(k-0xE0)
			d.send(tea.WindowSizeMsg{Width: width, Height: height})
		default:
			d.clock = d.clock.Add(time.Duration(k) * time.Second)
		}
		if d.quit {
			break
		}
		inBox(d.t, d.model.View(), width, height)
	}
	if !d.quit {
		d.send(tea.WindowSizeMsg{Width: 80, Height: 24})
	}
	d.leave()
	filesIn(d.t, d.store) // each can be read
	return pressed
}
