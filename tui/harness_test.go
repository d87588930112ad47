package tui

import (
	"crypto/rand"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/records"
)

// wizardEnv names the folder of the wizard that this test binary is to be in
// place of running tests.
const wizardEnv = "HANGTAPE_TEST_WIZARD"

// runWizard runs the full screen on a folder and leaves the process.
func runWizard(dir string) {
	store, err := sessions.OpenStore(dir, time.Now, rand.Reader)
	if err == nil {
		var demo *sessions.Store
		if demo, err = sessions.OpenStore(filepath.Join(dir, "demo"), time.Now, rand.Reader); err == nil {
			o := Options{Store: store, Demo: demo, Now: time.Now, In: os.Stdin, Out: os.Stdout}
			err = run(breaking{New(o), dir}, o)
		}
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(4)
	}
	os.Exit(0)
}

// A breaking wizard breaks down in update, view or a command, once its folder
// holds a file of the name that breaks gives it.
type breaking struct {
	Model
	dir string
}

func breaks(dir, in string) string { return filepath.Join(dir, "fault-in-"+in) }

func (b breaking) fault(in string) {
	if _, err := os.Stat(breaks(b.dir, in)); err == nil {
		panic("Ash weighs 84 kg")
	}
}

func (b breaking) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	b.fault("update")
	m, cmd := b.Model.Update(msg)
	b.Model = m.(Model)
	return b, tea.Batch(cmd, func() tea.Msg { b.fault("command"); return nil })
}

func (b breaking) View() string {
	b.fault("view")
	return b.Model.View()
}

func TestMain(m *testing.M) {
	if dir := os.Getenv(wizardEnv); dir != "" { // we are the program in a terminal
		runWizard(dir)
	}
	lipgloss.SetColorProfile(termenv.Ascii) // whatever the environment says
	os.Exit(m.Run())
}

// A desk is a wizard in front of which a test sits. It must be used in a
// synctest bubble: a command that takes longer than a tenth of a second of fake
// time, such as a blinking cursor, is dropped.
type desk struct {
	t     testing.TB
	model tea.Model
	store *sessions.Store
	clock time.Time
	quit  bool
}

// sit opens the wizard on an empty folder in a window of that size.
func sit(t testing.TB, width, height int) *desk {
	t.Helper()
	return sitAt(t, t.TempDir(), width, height)
}

func sitAt(t testing.TB, dir string, width, height int) *desk {
	t.Helper()
	d := &desk{t: t, clock: time.Date(2026, 5, 7, 9, 0, 0, 0, time.UTC)}
	d.store = openAt(t, dir, d.now)
	d.model = New(Options{Store: d.store, Demo: openAt(t, filepath.Join(dir, "demo"), d.now), Now: d.now})
	d.run(d.model.Init())
	d.send(tea.WindowSizeMsg{Width: width, Height: height})
	return d
}

func openAt(t testing.TB, dir string, now func() time.Time) *sessions.Store {
	t.Helper()
	st, err := sessions.OpenStore(dir, now, rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	return st
}

func (d *desk) now() time.Time { return d.clock }

func (d *desk) m() *Model {
	m := d.model.(Model)
	return &m
}

// send hands over messages, then all that their commands answer with, in order.
func (d *desk) send(msgs ...tea.Msg) {
	for n := 0; len(msgs) > 0; n++ {
		if n > 10000 {
			d.t.Fatal("messages without end")
		}
		if _, ok := msgs[0].(tea.QuitMsg); ok {
			d.quit = true
			return
		}
		if reflect.TypeOf(msgs[0]) == askedSize {
			msgs[0] = tea.WindowSizeMsg{Width: d.m().width, Height: d.m().height}
		}
		var c tea.Cmd
		d.model, c = d.model.Update(msgs[0])
		msgs = append(msgs[1:len(msgs):len(msgs)], d.answers(c)...)
	}
}

// askedSize is the library's question for the size of the window, which a
// terminal answers.
var askedSize = reflect.TypeOf(tea.WindowSize()())

func (d *desk) run(c tea.Cmd) { d.send(d.answers(c)...) }

var testCmdList = reflect.TypeFor[[]tea.Cmd]()

func (d *desk) answers(c tea.Cmd) (out []tea.Msg) {
	if c == nil {
		return nil
	}
	ch := make(chan tea.Msg, 1)
	go func() { ch <- c() }()
	select {
	case msg := <-ch:
		v := reflect.ValueOf(msg)
		if v.IsValid() && v.Kind() == reflect.Slice && v.Type().ConvertibleTo(testCmdList) {
			for _, c := range v.Convert(testCmdList).Interface().([]tea.Cmd) {
				out = append(out, d.answers(c)...)
			}
		} else if msg != nil {
			out = []tea.Msg{msg}
		}
	case <-time.After(100 * time.Millisecond):
	}
	return out
}

// typed types text, a key for each sign.
func (d *desk) typed(text string) {
	for _, r := range text {
		if r == ' ' {
			d.send(tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{r}})
			continue
		}
		d.send(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
	}
}

func (d *desk) press(keys ...tea.KeyType) {
	for _, k := range keys {
		d.send(tea.KeyMsg{Type: k})
	}
}

// leave ends the wizard, if it runs, and lets what still blinks come to an end.
func (d *desk) leave() {
	if !d.quit {
		d.press(tea.KeyCtrlC)
	}
	if !d.quit {
		d.t.Error("Ctrl-C did not leave")
	}
	if err := d.m().finish(); err != nil {
		d.t.Error(err)
	}
	time.Sleep(time.Minute) // fake
}

// only is the one session of the folder, read back from its file.
func (d *desk) only() *sessions.Session {
	d.t.Helper()
	return theOnly(d.t, d.store).Session
}

// filesIn are the sessions of a folder, read back from their files, the newest
// first.
func filesIn(t testing.TB, store *sessions.Store) []*sessions.File {
	t.Helper()
	list, err := records.Scan(store)
	if err != nil {
		t.Fatal(err)
	}
	var files []*sessions.File
	for _, e := range list.Entries {
		f, err := store.Load(e.Path)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, f)
	}
	return files
}

// theOnly is the one session of a folder.
func theOnly(t testing.TB, store *sessions.Store) *sessions.File {
	t.Helper()
	files := filesIn(t, store)
	if len(files) != 1 {
		t.Fatalf("%d sessions, want one", len(files))
	}
	return files[0]
}
