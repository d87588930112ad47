package sheet

import (
	"bytes"
	"fmt"
	"image/color"
	"io"
	"strings"

	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgsvg"
)

// SVG writes pages as one picture, one under the other. Letters stay text in
// the sheet's font, or in another drawn as wide where that is not there or has
// not the letter.
func SVG(w io.Writer, pages []*Drawing) error {
	return svg(w, tower(pages))
}

// tower is all pages in one drawing.
func tower(pages []*Drawing) *Drawing {
	all := &Drawing{}
	for _, d := range pages {
		paths, texts := d.moved(0, all.H)
		all.Paths, all.Texts = append(all.Paths, paths...), append(all.Texts, texts...)
		all.W, all.H = max(all.W, d.W), all.H+d.H
	}
	return all
}

func svg(w io.Writer, d *Drawing) error {
	c := vgsvg.NewWith(vgsvg.UseWH(vg.Length(d.W), vg.Length(d.H)))
	at := func(p Point) vg.Point { return vg.Point{X: vg.Length(p.X), Y: vg.Length(d.H - p.Y)} }
	ink := func(white bool) {
		if white {
			c.SetColor(color.White)
		} else {
			c.SetColor(color.Black)
		}
	}
	ink(true)
	c.Fill(pathOf((Box{0, 0, d.W, d.H}).corners(), at)) // paper, where the viewer's is dark
	for _, p := range d.Paths {
		ink(p.White)
		path := pathOf(p.Points, at)
		if p.Width == 0 {
			c.Fill(path)
			continue
		}
		c.SetLineWidth(vg.Length(p.Width))
		dash := make([]vg.Length, len(p.Dash))
		for i, l := range p.Dash {
			dash[i] = vg.Length(l)
		}
		c.SetLineDash(dash, 0)
		c.Stroke(path)
	}
	faces := newFaces()
	for _, t := range d.Texts {
		ink(t.White)
		f := faces.of(t.Bold).Face
		f.Font.Size = vg.Length(t.Size)
		c.FillString(f, at(Point{t.X, t.Y}), t.S)
	}
	var b bytes.Buffer
	if _, err := c.WriteTo(&b); err != nil {
		return err
	}
	_, err := io.WriteString(w, keepWidths(b.String(), d.Texts))
	return err
}

// keepWidths makes texts as wide as they were laid out in any viewer: the library
// names the sheet's font alone, and no width. Texts stand in the picture in their
// order, and none holds a bare "<".
func keepWidths(picture string, texts []Text) string {
	const font = "font-family:Liberation Sans"
	parts := strings.Split(strings.ReplaceAll(picture, font+";", font+",Arimo,Arial,Helvetica,sans-serif;"), "<text ")
	for i, t := range texts {
		parts[i+1] = fmt.Sprintf(`<text textLength="%.2f" lengthAdjust="spacingAndGlyphs" `, t.Width) + parts[i+1]
	}
	return strings.Join(parts, "")
}

func pathOf(points []Point, at func(Point) vg.Point) vg.Path {
	var path vg.Path
	for i, p := range points {
		if i == 0 {
			path.Move(at(p))
		} else {
			path.Line(at(p))
		}
	}
	if n := len(points) - 1; points[0] == points[n] {
		path.Close()
	}
	return path
}
