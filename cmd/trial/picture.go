package main

import (
	"io"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/plotutil"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgsvg"

	"example.com/hangtape/cmd/trial/runs"
	"example.com/hangtape/cmd/trial/tally"
	"example.com/hangtape/cmd/trial/truth"
)

// picture draws the report: who is fitted, how honest the uncertainties are, and
// how blunders are noticed.
func picture(w io.Writer, scales []*tally.Scale) error {
	fitted, err := fittedPlot(scales)
	if err != nil {
		return err
	}
	reliable, err := linePlot("Reliability, musts that lengths move", "claimed", "truly within", scales, reliability)
	if err != nil {
		return err
	}
	reliable.Add(plotter.NewFunction(func(x float64) float64 { return x }))
	blunders, err := linePlot("Single blunders noticed", "size, standard deviations", "share", scales, noticed)
	if err != nil {
		return err
	}
	canvas := vgsvg.New(30*vg.Centimeter, 10*vg.Centimeter)
	plots := [][]*plot.Plot{{fitted, reliable, blunders}}
	tiles := draw.Tiles{Rows: 1, Cols: 3, PadX: vg.Millimeter * 5, PadTop: vg.Millimeter * 2, PadBottom: vg.Millimeter * 2, PadLeft: vg.Millimeter * 2, PadRight: vg.Millimeter * 2}
	for i, c := range plot.Align(plots, tiles, draw.New(canvas))[0] {
		plots[0][i].Draw(c)
	}
	_, err = canvas.WriteTo(w)
	return err
}

// fittedPlot has a group of bars a way to set the kit, a bar a scale.
func fittedPlot(scales []*tally.Scale) (*plot.Plot, error) {
	p := plot.New()
	p.Title.Text, p.Y.Label.Text = "Every must truly holds", "share of bodies"
	p.Y.Min, p.Y.Max = 0, 1
	const width = 9 * vg.Millimeter / 4
	for i, s := range scales {
		var shares plotter.Values
		for _, x := range []tally.Share{s.Copied.All, s.ByEye.All, s.Stature.All, s.Least.After[1], s.Best.After[1]} {
			shares = append(shares, x.Value())
		}
		bars, err := plotter.NewBarChart(shares, width)
		if err != nil {
			return nil, err
		}
		bars.Color, bars.Offset = plotutil.Color(i), width*vg.Length(float64(i)-float64(len(scales)-1)/2)
		p.Add(bars)
		p.Legend.Add(s.Name(), bars)
	}
	p.Legend.Top, p.Legend.Left = true, true
	p.NominalX("copied", "by eye", "stature", "least", "best")
	return p, nil
}

// linePlot has a line a scale.
func linePlot(title, x, y string, scales []*tally.Scale, of func(*tally.Scale) plotter.XYs) (*plot.Plot, error) {
	p := plot.New()
	p.Title.Text, p.X.Label.Text, p.Y.Label.Text = title, x, y
	p.Y.Min, p.Y.Max = 0, 1
	for i, s := range scales {
		line, err := plotter.NewLine(of(s))
		if err != nil {
			return nil, err
		}
		line.Color, line.Dashes, line.Width = plotutil.Color(i), plotutil.Dashes(i), 1.5*vg.Millimeter/2
		p.Add(line)
		p.Legend.Add(s.Name(), line)
	}
	p.Legend.Left, p.Legend.Top = true, true
	return p, nil
}

// reliability is, for every claimed probability, how often the truth lay within.
func reliability(s *tally.Scale) plotter.XYs {
	var off []float64
	for e, end := range truth.Ends {
		if end.Must && end.Movable {
			for _, z := range s.Off[e] {
				off = append(off, math.Abs(z))
			}
		}
	}
	slices.Sort(off)
	var line plotter.XYs
	for claimed := 0.0; claimed < 0.995; claimed += 0.01 {
		k := distuv.UnitNormal.Quantile((1 + claimed) / 2)
		within, _ := slices.BinarySearch(off, k)
		line = append(line, plotter.XY{X: claimed, Y: float64(within) / float64(len(off))})
	}
	return line
}

// noticed is, for every size of blunder, how often it was noticed.
func noticed(s *tally.Scale) plotter.XYs {
	var line plotter.XYs
	for i, size := range runs.BlunderSizes {
		line = append(line, plotter.XY{X: size, Y: s.Blunders.Noticed[i].Value()})
	}
	return line
}
