package sheet

import (
	"fmt"
	"io"
	"time"

	"codeberg.org/go-pdf/fpdf"
)

// PDF writes pages as a document with that title, dated at (or 1970 where that is
// not told), so that the same session makes the same bytes. It goes to fpdf
// directly, and not through vgpdf, which writes only letters of code page 1252 and
// those wrongly (± as two), dates a document by the clock, and passes fonts
// through files.
func PDF(w io.Writer, pages []*Drawing, title string, at time.Time) error {
	doc := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: fpdf.SizeType{Wd: pages[0].W, Ht: pages[0].H}})
	if at.IsZero() { // which would be the clock's time
		at = time.Unix(0, 0)
	}
	doc.SetCatalogSort(true)
	doc.SetCreationDate(at.UTC())
	doc.SetModificationDate(at.UTC())
	doc.SetProducer("hangtape", false)
	doc.SetTitle(title, true)
	doc.SetLang(language)
	doc.SetMargins(0, 0, 0)
	doc.SetAutoPageBreak(false, 0)
	doc.SetLineCapStyle("round")
	doc.SetLineJoinStyle("round")
	faces := newFaces()
	const family = "sheet"
	doc.AddUTF8FontFromBytes(family, "", faces[0].data)
	doc.AddUTF8FontFromBytes(family, "B", faces[1].data)
	for _, d := range pages {
		doc.AddPageFormat("", fpdf.SizeType{Wd: d.W, Ht: d.H})
		for _, p := range d.Paths {
			pdfPath(doc, p)
		}
		for _, t := range d.Texts {
			style, gray := "", gray(t.White)
			if t.Bold {
				style = "B"
			}
			doc.SetFont(family, style, t.Size)
			doc.SetTextColor(gray, gray, gray)
			doc.Text(t.X, t.Y, faces.of(t.Bold).drawable(t.S))
		}
	}
	if err := doc.Output(w); err != nil {
		return fmt.Errorf("cannot make the PDF: %w", err)
	}
	return nil
}

func pdfPath(doc *fpdf.Fpdf, p Path) {
	g := gray(p.White)
	doc.SetDrawColor(g, g, g)
	doc.SetFillColor(g, g, g)
	for i, q := range p.Points {
		if i == 0 {
			doc.MoveTo(q.X, q.Y)
		} else {
			doc.LineTo(q.X, q.Y)
		}
	}
	if n := len(p.Points) - 1; p.Points[0] == p.Points[n] {
		doc.ClosePath()
	}
	if p.Width == 0 {
		doc.DrawPath("F")
		return
	}
	doc.SetLineWidth(p.Width)
	doc.SetDashPattern(p.Dash, 0)
	doc.DrawPath("D")
}

func gray(white bool) int {
	if white {
		return 255
	}
	return 0
}
