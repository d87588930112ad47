package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"example.com/hangtape/rules"
	"example.com/hangtape/tui/sideview"
)

func explainCommand(w *world) *cobra.Command {
	var file string
	c := &cobra.Command{
		Use:   "explain [NAME]",
		Short: "Explain a check, a limit, a reading or a term",
		Long: `Explains a check, a limit, a reading, a key of the session file or a term: what
it is, why it matters, how it is measured or judged, its source, what to do; of
a reading also a drawing of where the tape goes, in the signs of the locale.
Without a NAME: the list of all. With --file also how a check stands there, and
what a longer piece does to its margin.`,
		Example: "  hangtape explain garda-under-connector\n  hangtape explain hip point\n  hangtape explain slip-drop --file try-out/a-good-kit.toml",
		RunE: func(_ *cobra.Command, args []string) error {
			text := topicList()
			if len(args) > 0 {
				topic, err := topicNamed(strings.Join(args, " "))
				if err != nil {
					return err
				}
				text = strings.TrimRight(topic.Text(textWidth), "\n") + "\n" + whereTape(topic, asciiOnly(w.env))
				if file != "" {
					here, err := checkIn(w, topic, file)
					if err != nil {
						return err
					}
					text += here
				}
			} else if file != "" {
				return usage("--file needs the NAME of a check")
			}
			_, err := io.WriteString(w.out, text)
			return err
		},
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) (names []cobra.Completion, _ cobra.ShellCompDirective) {
			if len(args) == 0 {
				for _, t := range rules.Topics() {
					names = append(names, cobra.CompletionWithDesc(t.Name, t.Title))
				}
			}
			return names, cobra.ShellCompDirectiveNoFileComp
		},
	}
	c.Flags().StringVar(&file, "file", "", "a session file, to tell how the check stands in it")
	return c
}

// whereTape is the drawing of where the tape goes for a reading; empty for what
// is none, and for what the side view does not show.
func whereTape(t rules.Topic, ascii bool) string {
	r, ok := t.Reading()
	if !ok {
		return ""
	}
	const blanks, rows = 2, 24
	d, ok := sideview.Where(sideview.Options{Width: textWidth - blanks, Height: rows, ASCII: ascii, Unit: "mm", Reading: r})
	if !ok {
		return ""
	}
	text := "\nWhere the tape goes\n" + indented(blanks, sideview.Tape(r)+" Drawn on a body and a kit that are invented.") + "\n"
	for _, l := range d.Lines {
		text += strings.TrimRight(strings.Repeat(" ", blanks)+l, " ") + "\n"
	}
	return text
}

func topicNamed(name string) (rules.Topic, error) {
	topic, known := rules.Explain(name)
	if known {
		return topic, nil
	}
	hint := "hangtape explain lists all names"
	if near := rules.NearestTopic(name); near != "" {
		hint = "did you mean " + near + "? " + hint
	}
	return topic, usage("nothing is called %q\n%s", name, hint)
}

// topicList is every name with its title, by kind.
func topicList() string {
	var b strings.Builder
	for i, kind := range rules.TopicKinds() {
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(kind.Heading() + "\n")
		for _, t := range rules.Topics() {
			switch {
			case t.Kind != kind:
			case t.Title == "" || t.Title == t.Name:
				fmt.Fprintf(&b, "  %s\n", t.Name)
			default:
				fmt.Fprintf(&b, "  %-26s %s\n", t.Name, t.Title)
			}
		}
	}
	return b.String()
}
