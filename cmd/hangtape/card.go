package main

import (
	"bytes"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"example.com/hangtape/cmd/sheet"
	"example.com/hangtape/fit"
)

// cardFlags are the words of a call of card.
type cardFlags struct {
	format, paper, out, class string
	unit                      unitFlag
}

func cardCommand(w *world) *cobra.Command {
	var f cardFlags
	c := &cobra.Command{
		Use:   "card FILE | --class DAY",
		Short: "The sheet to print and keep: of one fitting, or of a day",
		Long: `Makes the sheet to print and keep of a session file: lengths set and their
windows, where to put the marks, a drawing to scale, every check with its margin,
how much rope above it holds with, limits that the school moved, cord to cut, the
ground drill, who signed, and the cautions. FILE may be - for standard input, or
the id of a session in the folder.

--class makes one sheet of a day's students instead, a row each: the sessions in
the folder that began on that day where this computer is. A student with several
stands there with the latest.

A name in letters that the sheet's font does not have is drawn with □ in PDF,
and told on standard error; the other formats have every letter.`,
		Example: "  hangtape card -o card.pdf try-out/a-good-kit.toml\n  hangtape card --paper letter --format svg session.toml\n  hangtape card --class 2026-04-18 -o class.pdf",
		Args:    words(0, 1, "FILE"),
		RunE:    func(_ *cobra.Command, args []string) error { return runCard(w, f, args) },
	}
	flags := c.Flags()
	flags.SortFlags = false
	flags.StringVar(&f.format, "format", "", "`text`, svg, html or pdf; without it by the ending of -o, or else text")
	flags.StringVar(&f.paper, "paper", "", "size of the paper, `a4` or letter (a4)")
	flags.StringVarP(&f.out, "output", "o", "", "write to this `file`, readable by its owner only")
	flags.StringVar(&f.class, "class", "", "all students of a `day`, as 2026-04-18 or today")
	addUnitFlag(c, &f.unit)
	return c
}

// A sheetPage is what is made: of one fitting or of a class.
type sheetPage interface {
	Text() string
	HTML(w io.Writer, p sheet.Paper) error
	Pages(p sheet.Paper) (pages []*sheet.Drawing, missing []rune)
}

func runCard(w *world, f cardFlags, args []string) error {
	format, err := f.formatted()
	if err != nil {
		return err
	}
	paper, err := f.paperNamed()
	if err != nil {
		return err
	}
	switch {
	case len(args) == 0 && f.class == "":
		return usage("card needs a FILE, or --class and a day")
	case len(args) > 0 && f.class != "":
		return usage("--class is of all sessions of a day: it takes no FILE, got %q", args[0])
	case format == "pdf" && f.out == "" && w.terminal:
		return usage("a PDF is not for a terminal; add -o FILE")
	case len(args) > 0 && sameFile(args[0], f.out):
		return usage("-o is the session itself; accepted is any other file")
	case strings.EqualFold(filepath.Ext(f.out), ".toml"):
		return usage("-o %s ends as a session does; accepted is any other file", f.out)
	}
	var made made
	var skipped error
	if f.class != "" {
		made, skipped, err = class(w, f)
	} else {
		made, err = card(w, f, args[0])
	}
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := made.write(w, &b, format, paper); err != nil {
		return err
	}
	if f.out != "" {
		err = writePrivate(f.out, b.Bytes())
	} else {
		_, err = w.out.Write(b.Bytes())
	}
	if err != nil {
		return err
	}
	return skipped
}

// card is the sheet of one session file.
func card(w *world, f cardFlags, file string) (made, error) {
	j, err := judgeNamed(w, file)
	if err != nil {
		return made{}, err
	}
	cord, err := cordModel(w)
	if err != nil {
		return made{}, err
	}
	c := sheet.NewCard(f.subject(w, j, cord))
	return made{c, "Fitting of " + c.Climber, c.At}, nil
}

func (f cardFlags) subject(w *world, j judged, cord *fit.CordModel) sheet.Subject {
	return sheet.Subject{Session: j.Session, Report: j.report, Unit: f.unit.of(j.Session), Zone: w.now().Location(), Cord: cord}
}

// formats are those that a sheet can have, by the words of the call.
var formats = []string{"text", "svg", "html", "pdf"}

// formatted is the format that the call asks for.
func (f cardFlags) formatted() (string, error) {
	if f.format != "" {
		if !slices.Contains(formats, f.format) {
			return "", usage("--format is %q; accepted is text, svg, html or pdf", f.format)
		}
		return f.format, nil
	}
	switch ending := strings.ToLower(filepath.Ext(f.out)); ending {
	case ".svg", ".html", ".pdf":
		return ending[1:], nil
	case ".htm":
		return "html", nil
	case ".png", ".jpg", ".jpeg", ".gif", ".ps", ".eps", ".doc", ".docx", ".odt":
		return "", usage("-o ends in %s, which no sheet can be; accepted are .txt, .svg, .html and .pdf, or say --format", ending)
	}
	return "text", nil
}

func (f cardFlags) paperNamed() (sheet.Paper, error) {
	papers := sheet.Papers()
	if f.paper == "" {
		return papers[0], nil
	}
	var names []string
	for _, p := range papers {
		if strings.EqualFold(p.Name, f.paper) {
			return p, nil
		}
		names = append(names, p.Name)
	}
	return sheet.Paper{}, usage("--paper is %q; accepted is %s", f.paper, strings.Join(names, " or "))
}
