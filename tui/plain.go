package tui

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"example.com/hangtape/rules"
	"example.com/hangtape/sessions"
	"example.com/hangtape/tui/flow"
)

// RunPlain is the wizard line by line: for screen readers, pipes and terminals
// that cannot draw. It asks the same questions as the full screen and takes the
// same answers. Nothing is drawn over: what was said stays, one idea a line.
// The end of the input leaves with all saved; the error says what is not.
func RunPlain(o Options) error {
	p := newPlain(o)
	if !p.start() {
		return nil
	}
	p.walk()
	err := errors.Join(p.unsaved, giveBack(p.seats))
	if p.editor == nil {
		return err
	}
	return errors.Join(err, p.editor.Close())
}

// plain is a wizard in lines. One reader serves all prompts, so that answers
// that were typed ahead are not lost.
type plain struct {
	opts     Options
	in       *bufio.Reader
	editor   *sessions.Editor
	flow     flow.State
	saved    int
	unsaved  error
	verdicts map[string]rules.Verdict // as they were said last
	step     int                      // that was said last, counted from 1
	seats    []seat                   // sessions that are open beside this one
	folder   []*sessions.Session      // as they were when a session was opened last
}

func newPlain(o Options) *plain {
	return &plain{opts: o, in: bufio.NewReader(o.In), verdicts: map[string]rules.Verdict{}}
}

func (p *plain) say(format string, args ...any) {
	line := clean(fmt.Sprintf(format, args...))
	if p.opts.ASCII {
		line = plainSigns.Replace(line)
	}
	fmt.Fprintln(p.opts.Out, line)
}

// read is the next line without its end; false at the end of the input.
func (p *plain) read() (string, bool) {
	line, err := p.in.ReadString('\n')
	if err != nil && (line == "" || !errors.Is(err, io.EOF)) {
		return "", false
	}
	return strings.TrimSpace(line), true
}

// firstWords tell what each word does at the first question.
var firstWords = []string{
	"new: fit a climber, from the tape to the sign-off.",
	"resume: go on with a fitting that was not finished, at the question that was open.",
	"earlier: start from a fitting that was done, for a re-tune or a re-check.",
	"past: find fittings that were done, show one, compare two, follow a climber.",
	"demo: look around with a climber who is invented.",
	"quit: leave. What was answered is always saved.",
}

// start asks what to do and opens the session; false is to leave.
func (p *plain) start() bool {
	p.say("hangtape fits a climber's two-leg ascent kit by tape, at the base of the tree.")
	p.say("%s", rules.ShortCaution)
	p.say("Files: %s", p.opts.Store.Dir())
	for {
		p.say("Type new, resume, earlier, past, demo or quit. Earlier is for a re-tune or a re-check; past finds, shows and compares past fittings.")
		line, ok := p.read()
		if !ok {
			return false
		}
		var opened openedMsg
		m := Model{opts: p.opts}
		switch strings.ToLower(line) {
		case "quit", "q":
			return false
		case "new", "1":
			opened = m.startNew(nil)().(openedMsg)
		case "demo":
			opened = m.openDemo()().(openedMsg)
		case "resume", "2":
			if e := p.chooseFrom(p.lookFor(forResume)); e != nil {
				opened = p.resume(e.Path)
			}
		case "earlier", "3":
			if e := p.chooseFrom(p.lookFor(forFollow)); e != nil {
				opened = m.startFrom(e.Path)().(openedMsg)
			}
		case "past", "4":
			p.past()
		case "?", "help":
			for _, l := range firstWords {
				p.say("%s", l)
			}
		case "":
		default:
			p.say("%q is none of them; a ? tells what each does.", line)
		}
		switch {
		case opened.err != nil:
			p.say("Not opened: %s", opened.err)
		case opened.session != nil:
			p.open(opened)
			return true
		}
	}
}

// open starts the flow on a session.
func (p *plain) open(o openedMsg) {
	if o.err != nil {
		p.say("Not opened: %s", o.err)
		return
	}
	p.setAside()
	before := p.flow.Steps != nil
	p.editor, p.saved = o.editor, 0
	p.flow = flow.Start(*o.session, p.opts.config(o))
	if before {
		p.come(o.folder)
	} else {
		p.folder = o.folder
		kitOf(&p.flow, p.seats, p.folder)
		p.tellKit()
	}
	if said := p.flow.Said.Text; said != "" {
		p.say("%s", said)
	}
	if !before {
		p.say("A ? tells about the question, and which words may stand in place of an answer: back, down, steps, quit and others.")
	}
}

// lookFor is the sessions of the folder for why; what cannot be read is counted.
func (p *plain) lookFor(why purpose) foundMsg {
	msg := lookFor(why, p.opts.Store)
	if msg.err != nil {
		p.say("%s", msg.err)
	}
	if unread := msg.unread(); unread != "" {
		p.say("%s.", unread)
	}
	return msg
}

// chooseFrom has one chosen by its number, once words have left few; nil where
// none is.
func (p *plain) chooseFrom(msg foundMsg) *found {
	if len(msg.list) == 0 {
		p.say("There is none yet.")
		return nil
	}
	c := newChooser(msg.in, msg.list)
	for {
		for i, e := range c.shown[:min(len(c.shown), mostTold)] {
			p.say("%d: %s, %s, %s", i+1, minuteOf(e.begun()), e.who("no name"), e.why())
		}
		if more := len(c.shown) - mostTold; more > 0 {
			p.say("And %d more.", more)
		} else if len(c.shown) == 0 {
			p.say("None of %d.", len(c.all))
		}
		p.say("Type a number, words to find (climber, place, date, kit), or back.")
		line, ok := p.read()
		if !ok || line == "" || line == "back" {
			return nil
		}
		if n, err := strconv.Atoi(line); err == nil && n >= 1 && n <= min(len(c.shown), mostTold) {
			return &c.shown[n-1]
		}
		if err := c.find(line); err != nil {
			p.say("Not searched: %s", err)
		}
	}
}
