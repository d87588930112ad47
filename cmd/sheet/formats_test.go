package sheet_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/mattn/go-runewidth"

	"example.com/hangtape/cmd/sheet"
	"example.com/hangtape/rules"
)

const goodKit = "../../sessions/demo/a-good-kit.toml"

// said is what every format of a card has to say.
func said(c *sheet.Card) []string {
	all := append([]string{c.Climber, c.Sign.Head, c.Rope}, c.Cautions...)
	for _, k := range append(c.Musts, c.Shoulds...) {
		all = append(all, k.Word(), k.Name, k.Margin)
	}
	for _, n := range c.Lengths {
		all = append(all, n.Piece, n.Set, n.Told(), n.Lay)
	}
	all = append(all, c.Limits...)
	all = append(all, c.Drill...)
	return append(all, c.Marks...)
}

// bare is text without blanks, since formats break lines where they like.
func bare(s string) string { return strings.Join(strings.Fields(s), "") }

func missesNothing(t *testing.T, format, text string, c *sheet.Card) {
	t.Helper()
	text = bare(text)
	for _, s := range said(c) {
		if !strings.Contains(text, bare(s)) {
			t.Errorf("%s does not say %q", format, s)
		}
	}
}

func TestTextSaysAllWithin80Cells(t *testing.T) {
	all := []sheet.Subject{crowded(t, "in")}
	for _, f := range files(t) {
		all = append(all, subject(t, f, "mm"))
	}
	for _, s := range all {
		c := sheet.NewCard(s)
		missesNothing(t, "text", c.Text(), c)
		for _, text := range []string{c.Text(), sheet.NewClass("2026-04-18", []sheet.Subject{s}).Text()} {
			for line := range strings.Lines(text) {
				if w := runewidth.StringWidth(strings.TrimRight(line, "\n")); w > 80 {
					t.Errorf("%d cells: %s", w, line)
				}
			}
		}
	}
}

func TestHTMLStandsAlone(t *testing.T) {
	s := crowded(t, "mm")
	s.Session.Climber = `王 <script>alert("x")</script>`
	c := sheet.NewCard(s)
	for name, write := range map[string]func(io.Writer, sheet.Paper) error{"card": c.HTML, "class": sheet.NewClass("2026-04-18", []sheet.Subject{s}).HTML} {
		var b bytes.Buffer
		if err := write(&b, sheet.Papers()[0]); err != nil {
			t.Fatal(err)
		}
		page := b.String()
		for _, bad := range []string{"<script", "src=", "href=\"", "url(", "@import", "□"} {
			if strings.Contains(page, bad) {
				t.Errorf("%s has %s", name, bad)
			}
		}
		texts := texts(t, page, false)
		if !strings.Contains(texts, s.Session.Climber) || !strings.Contains(texts, rules.Cautions()[0]) {
			t.Errorf("%s does not say whose it is, or no cautions", name)
		}
		if name == "card" {
			missesNothing(t, name, texts, c)
		}
	}
}

func TestSVGIsOnePictureWithAllTexts(t *testing.T) {
	c := sheet.NewCard(crowded(t, "mm"))
	c.Climber = "A & B <C>"
	pages, _ := c.Pages(sheet.Papers()[0])
	var b bytes.Buffer
	if err := sheet.SVG(&b, pages); err != nil {
		t.Fatal(err)
	}
	got := texts(t, b.String(), true)
	for _, d := range pages {
		for _, x := range d.Texts {
			if !strings.Contains(got, x.S) {
				t.Errorf("no %q", x.S)
			}
		}
	}
	for _, what := range []string{`<text textLength="`, "font-family:Liberation Sans,Arimo,Arial,"} {
		if n, want := strings.Count(b.String(), what), strings.Count(b.String(), "</text>"); n != want {
			t.Errorf("%d of %d texts have %s", n, want, what)
		}
	}
}

// What a browser prints is what the PDF has: a picture for each page, as large as
// the paper.
func TestHTMLPrintsThePages(t *testing.T) {
	for _, paper := range sheet.Papers() {
		for name, c := range map[string]*sheet.Card{"typical": sheet.NewCard(subject(t, goodKit, "mm")), "crowded": sheet.NewCard(crowded(t, "in"))} {
			var b bytes.Buffer
			if err := c.HTML(&b, paper); err != nil {
				t.Fatal(err)
			}
			pages, _ := c.Pages(paper)
			_, printed, _ := strings.Cut(b.String(), `<div class="paper">`)
			if n := strings.Count(printed, "<svg "); n != len(pages) {
				t.Errorf("%s on %s: %d pictures for %d pages", name, paper.Name, n, len(pages))
			}
			if size := fmt.Sprintf("@page { size: %gpt %gpt; margin: 0 }", paper.W, paper.H); !strings.Contains(b.String(), size) {
				t.Errorf("%s on %s: no %s", name, paper.Name, size)
			}
		}
	}
}

// texts is the text of a page; strict holds it to XML.
func texts(t *testing.T, page string, strict bool) string {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(page))
	if d.Strict = strict; !strict {
		d.AutoClose, d.Entity = append(xml.HTMLAutoClose, "meta"), xml.HTMLEntity
	}
	var b strings.Builder
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return b.String()
		}
		if err != nil {
			t.Fatal(err)
		}
		if s, ok := token.(xml.CharData); ok {
			b.Write(s)
			b.WriteByte('\n')
		}
	}
}

func pdf(t *testing.T, c *sheet.Card, paper sheet.Paper) []byte {
	t.Helper()
	pages, _ := c.Pages(paper)
	var b bytes.Buffer
	if err := sheet.PDF(&b, pages, "Fitting of "+c.Climber, c.At); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// The same session makes the same bytes, dated as it is and not as the clock.
func TestPDFIsTheSameTwice(t *testing.T) {
	first := pdf(t, sheet.NewCard(subject(t, goodKit, "mm")), sheet.Papers()[0])
	for range 5 {
		if again := pdf(t, sheet.NewCard(subject(t, goodKit, "mm")), sheet.Papers()[0]); !bytes.Equal(first, again) {
			t.Fatal("two runs differ")
		}
	}
	if !bytes.Contains(first, []byte("/CreationDate (D:20260418091200")) || bytes.Count(first, []byte("/Type /Page\n")) != 1 {
		t.Error("it is not dated as the session, or has not one page")
	}
}

func TestPDFWithoutADateHasNoClock(t *testing.T) {
	c := sheet.NewCard(subject(t, goodKit, "mm"))
	c.At = time.Time{}
	if !bytes.Contains(pdf(t, c, sheet.Papers()[0]), []byte("/CreationDate (D:19700101000000")) {
		t.Error("it is dated otherwise")
	}
}

// poppler makes of a PDF what somebody will see of it.
func poppler(t *testing.T, tool string, args ...string) []byte {
	t.Helper()
	if _, err := exec.LookPath(tool); err != nil {
		t.Skipf("%s is not there: install poppler-utils", tool)
	}
	out, err := exec.Command(tool, args...).Output()
	if err != nil {
		t.Fatalf("%s: %v", tool, err)
	}
	return out
}

func TestPDFAsItIsPrinted(t *testing.T) {
	for _, file := range []string{goodKit, "../../sessions/demo/b-short-bridge.toml", "../../testdata/sessions/full.toml"} {
		for _, paper := range sheet.Papers() {
			t.Run(filepath.Base(file)+" "+paper.Name, func(t *testing.T) {
				c := sheet.NewCard(subject(t, file, "mm"))
				name := filepath.Join(t.TempDir(), "card.pdf")
				if err := os.WriteFile(name, pdf(t, c, paper), 0o600); err != nil {
					t.Fatal(err)
				}
				missesNothing(t, "PDF", string(poppler(t, "pdftotext", "-raw", name, "-")), &sheet.Card{
					Climber: c.Climber, Sign: c.Sign, Rope: c.Rope, Musts: c.Musts, Shoulds: c.Shoulds,
				})
				checkInk(t, poppler(t, "pdftoppm", "-r", "36", "-gray", name), paper)
			})
		}
	}
}

// checkInk looks at a picture of one page, a portable graymap of a pixel to two
// points: the edges stay white, and a good part of the rest is not.
func checkInk(t *testing.T, picture []byte, paper sheet.Paper) {
	t.Helper()
	var w, h, most int
	if n, err := fmt.Sscan(string(picture[2:min(len(picture), 40)]), &w, &h, &most); n != 3 || err != nil {
		t.Fatalf("no picture: %v", err)
	}
	pixels := picture[len(picture)-w*h:]
	if head := len(picture) - w*h; head > 20 {
		t.Errorf("%d bytes before the only page", head)
	}
	if w != int(paper.W/2+0.99) || h != int(paper.H/2+0.99) {
		t.Errorf("the page is %d by %d pixels", w, h)
	}
	inked := 0
	for i, p := range pixels {
		x, y := i%w, i/w
		if p < 250 {
			inked++
			if x < 10 || y < 10 || x > w-10 || y > h-10 {
				t.Fatalf("ink at %d, %d of %d by %d", x, y, w, h)
			}
		}
	}
	if share := float64(inked) / float64(w*h); share < 0.05 || share > 0.6 {
		t.Errorf("%.0f %% of the page has ink", 100*share)
	}
}
