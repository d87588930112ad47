package tui

import (
	"runtime"
	"testing"
	"testing/synctest"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// TestManyKeysKeepMemoryFlat types, corrects, goes back and forth, opens every
// screen over a question and resizes the window, over and over.
func TestManyKeysKeepMemoryFlat(t *testing.T) {
	presses := 2000
	if *long {
		presses = 100_000
	}
	synctest.Test(t, func(t *testing.T) {
		dir := t.TempDir()
		path := writeSession(t, dir, emptied(t))
		d := sitAt(t, dir, 80, 24)
		d.typed("2")
		d.goTo(d.place("climber.thigh_mm"))
		var early uint64
		pressed := 0
		for n := 0; pressed < presses; n++ {
			d.burst("5x<17<<436\r")  // a reading, with slips
			d.press(tea.KeyUp)       // the value before
			d.burst("<<<<<<<<<<<\r") // taken out again
			d.press(tea.KeyEsc, tea.KeyEnter, tea.KeyTab, tea.KeyDown, tea.KeyTab, tea.KeyF1, tea.KeyEsc, tea.KeyPgDown, tea.KeyEsc)
			d.burst("v")
			d.press(tea.KeyEsc)
			d.send(tea.WindowSizeMsg{Width: 60 + n%60, Height: 20 + n%20})
			_ = d.model.View()
			d.goTo(d.place("climber.thigh_mm"))
			pressed += 40
			if early == 0 && pressed >= presses/4 {
				early = heap()
			}
		}
		late := heap()
		t.Logf("%d keys: %d kB on the heap after a quarter of them, %d kB at the end", pressed, early>>10, late>>10)
		if late > early+early/10+1<<20 {
			t.Errorf("the heap grew from %d to %d bytes", early, late)
		}
		d.leave()
		d.readsBack(path)
	})
}

// heap is what is in use once all that blinks has come to an end.
func heap() uint64 {
	time.Sleep(time.Minute) // fake
	runtime.GC()
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}
