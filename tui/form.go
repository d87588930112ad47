package tui

import (
	"reflect"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/huh"
	"github.com/charmbracelet/lipgloss"
)

// A form is the one field of a question: text to type or options to choose
// from. It is built anew for every visit, because a form of the library that
// has ended stays dead and one that was made smaller never grows again. It
// never ends by itself: the parent handles Enter, so that keys typed right
// after it cannot land in the old field.
type form struct {
	huh    *huh.Form
	text   *string
	option *int
	gen    int
	old    bool // it holds a number taken before: what is typed takes its place
}

// formMsg is a message for the form of one generation; a later form drops it.
type formMsg struct {
	gen int
	msg tea.Msg
}

func keymap() *huh.KeyMap {
	km := huh.NewDefaultKeyMap()
	km.Quit.SetEnabled(false)
	km.Select.Filter.SetEnabled(false)
	km.Input.Next.SetEnabled(false)
	km.Input.Prev.SetEnabled(false)
	km.Select.Next.SetEnabled(false)
	km.Select.Prev.SetEnabled(false)
	return km
}

// newInput is a field with text in it.
func newInput(gen int, text string, width int) (form, tea.Cmd) {
	f := form{text: &text, gen: gen}
	return f.start(huh.NewInput().Prompt("> ").Value(f.text), width, 2)
}

// newSelect is a list of options of which the marked one is chosen by Enter.
func newSelect(gen int, options []string, marked, width, height int) (form, tea.Cmd) {
	f := form{option: &marked, gen: gen}
	list := make([]huh.Option[int], len(options))
	for i, o := range options {
		list[i] = huh.NewOption(o, i)
	}
	return f.start(huh.NewSelect[int]().Options(list...).Value(f.option), width, height)
}

func (f form) start(field huh.Field, width, height int) (form, tea.Cmd) {
	theme := huh.ThemeBase()
	theme.Focused.Base = lipgloss.NewStyle() // no border beside the field
	f.huh = huh.NewForm(huh.NewGroup(field)).
		WithTheme(theme).WithKeyMap(keymap()).
		WithShowHelp(false).WithShowErrors(false).
		WithWidth(max(4, width)).WithHeight(max(2, height))
	return f, tag(f.gen, f.huh.Init())
}

// update hands a key or a message to the field.
func (f form) update(msg tea.Msg) tea.Cmd {
	if f.huh == nil {
		return nil
	}
	_, cmd := f.huh.Update(msg)
	return tag(f.gen, cmd)
}

// lines is the field as it is drawn. The library leaves out control characters,
// but not signs that turn the direction of writing.
func (f form) lines() []string {
	if f.huh == nil {
		return nil
	}
	drawn := strings.Map(func(r rune) rune {
		if turns(r) {
			return '?'
		}
		return r
	}, f.huh.View())
	lines := strings.Split(strings.TrimRight(drawn, "\n "), "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return lines
}

// tag marks the messages that a form's commands send to itself with its
// generation, so that they never reach the form of a later question.
func tag(gen int, c tea.Cmd) tea.Cmd {
	if c == nil {
		return nil
	}
	return func() tea.Msg {
		msg, several := eachCmd(c(), func(c tea.Cmd) tea.Cmd { return tag(gen, c) })
		if msg == nil || several {
			return msg
		}
		if p := reflect.TypeOf(msg).PkgPath(); strings.HasSuffix(p, "/huh") || strings.Contains(p, "/bubbles/") {
			return formMsg{gen, msg}
		}
		return msg
	}
}

var cmdList = reflect.TypeFor[[]tea.Cmd]()

// eachCmd puts with(c) in the place of every command of a message that is a
// batch or a sequence of them, and says whether it is one.
func eachCmd(msg tea.Msg, with func(tea.Cmd) tea.Cmd) (tea.Msg, bool) {
	v := reflect.ValueOf(msg)
	if !v.IsValid() || v.Kind() != reflect.Slice || !v.Type().ConvertibleTo(cmdList) {
		return msg, false
	}
	out := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
	for i := range v.Len() {
		out.Index(i).Set(reflect.ValueOf(with(v.Index(i).Interface().(tea.Cmd))))
	}
	return out.Interface(), true
}
