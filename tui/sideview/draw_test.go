package sideview

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"example.com/hangtape/fit"
	"example.com/hangtape/rules"
)

// readBack finds the letters in the picture and the scale under it, from the
// drawn text alone but for the picture's width.
func readBack(t testing.TB, d Drawing) (letters map[rune]Cell, scale Scale) {
	t.Helper()
	letters = map[rune]Cell{}
	for row, line := range d.Lines {
		if strings.HasPrefix(line, sayColumn) {
			var column, height float64
			if _, err := fmt.Sscanf(line, sayColumn+"%f mm"+sayRow+"%f mm", &column, &height); err != nil {
				t.Fatalf("scale %q: %v", line, err)
			}
			return letters, Scale{column, height}
		}
		for col, r := range []rune(line) {
			if col < d.Columns && (r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z') {
				if at, twice := letters[r]; twice {
					t.Fatalf("%c stands at %v and at %v:\n%s", r, at, Cell{col, row}, strings.Join(d.Lines, "\n"))
				}
				letters[r] = Cell{col, row}
			}
		}
	}
	t.Fatalf("no scale:\n%s", strings.Join(d.Lines, "\n"))
	return nil, Scale{}
}

// off is how far a letter is from where the model says, in cells, told from the
// hip's letter by the printed scale.
func off(sh *fit.Shape, letters map[rune]Cell, scale Scale, m fit.Landmark) (cols, rows float64) {
	hip, at := letters['H'], letters[letterOf(m)]
	h, p := sh.At[fit.MarkHip], sh.At[m]
	cols = float64(at.Col-hip.Col) - (p.X-h.X)/scale.Column
	rows = float64(hip.Row-at.Row) - (p.Y-h.Y)/scale.Row
	return cols, rows
}

// The drawing is true: each landmark's letter, read back from the text, is within
// one cell of the model times the printed scale.
func TestLandmarksStandWhereTheModelSays(t *testing.T) {
	const cell = 1 + 1e-9
	sizes := [][2]int{{30, 20}, {44, 20}, {60, 34}, {120, 40}}
	drawn := 0
	for i, f := range bodies(t, 200) {
		s := stateOf(t, f)
		for _, p := range poses {
			sh := s.Shape(p)
			for n, size := range sizes {
				d, err := Draw(&sh, Options{Width: size[0], Height: size[1], ASCII: (i+n)%2 == 0, Unit: "mm"})
				if err != nil {
					t.Fatal(err)
				}
				letters, scale := readBack(t, d)
				for _, m := range marksOf(&sh, nil) {
					if _, ok := letters[letterOf(m)]; !ok {
						t.Errorf("body %d, pose %d, %v: no %c:\n%s", i, p, size, letterOf(m), strings.Join(d.Lines, "\n"))
						continue
					}
					reach := cell
					if p == fit.Standing {
						reach = 1.5 // the hip itself lies between cells
					}
					if cols, rows := off(&sh, letters, scale, m); math.Abs(cols) > reach || math.Abs(rows) > reach {
						t.Errorf("body %d, pose %d, %v: %c is off by %.2f columns and %.2f rows:\n%s", i, p, size, letterOf(m), cols, rows, strings.Join(d.Lines, "\n"))
					}
					if d.Cells[m] != letters[letterOf(m)] {
						t.Errorf("%c is told at %v and stands at %v", letterOf(m), d.Cells[m], letters[letterOf(m)])
					}
					drawn++
				}
			}
		}
		if t.Failed() {
			break
		}
	}
	if drawn < 200*len(poses)*len(sizes)*10 {
		t.Errorf("only %d letters were drawn", drawn)
	}
}

// The two sets of characters draw the same letters in the same cells.
func TestCharacterSetsAgree(t *testing.T) {
	for _, f := range bodies(t, 40) {
		s := stateOf(t, f)
		for _, p := range poses {
			sh := s.Shape(p)
			o := Options{Width: 44, Height: 20, Unit: "mm"}
			boxes, err1 := Draw(&sh, o)
			o.ASCII = true
			plain, err2 := Draw(&sh, o)
			if err := errors.Join(err1, err2); err != nil {
				t.Fatal(err)
			}
			a, _ := readBack(t, boxes)
			b, _ := readBack(t, plain)
			if fmt.Sprint(a) != fmt.Sprint(b) {
				t.Fatalf("pose %d: letters at %v and at %v", p, a, b)
			}
		}
	}
}

// Moving one length moves its letter, by as much as the scale says, and leaves
// alone what hangs on other lengths.
func TestMovingALengthMovesItsMark(t *testing.T) {
	const by = 150.0
	for _, c := range []struct {
		r     fit.Reading
		pose  fit.Pose
		moves string
		stays string
	}{
		{fit.Nose, fit.Seated, "N", "HKSWwMmCclrLRGtF"},
		{fit.WristUp, fit.Seated, "W", "HKSNwMmCclrLRGtTF"},
		{fit.WristDown, fit.Seated, "w", "HKSNWMmCclrLRGtTF"},
		{fit.ConnectorTop, fit.Seated, "C", "HKSNWwMmclrLRGtTF"},
		{fit.ConnectorBottom, fit.ThighLevel, "c", "HKSNMmClrLRGtT"},
		{fit.LeftHitchTop, fit.ThighLevel, "L", "HKSNMmCclrRGtT"},
		{fit.RightHitchTop, fit.ThighLevel, "R", "HKSNMmCclrLGtT"},
		{fit.LeftLoopTop, fit.ThighLevel, "l", "HKSNMmCcrLRGtT"},
		{fit.RightLoopTop, fit.OnTether, "r", "HKSNMmCclLRGtT"},
		{fit.MainRings, fit.OnTether, "M", "HKSNmCclrLRGtT"},
		{fit.Tether, fit.TetherTaut, "Gt", "HNMmCclrLRVT"},
		{fit.FootLoop, fit.ThighLevel, "Gt", "HKSNMmCclrLR"},
		{fit.GardaToTether, fit.OnTether, "G", "HNMmCclrLRtT"},
		{fit.Thigh, fit.ThighLevel, "KS", "HNMmCclrLR"},
		{fit.Shin, fit.ThighLevel, "S", "HKNMmCclrLR"},
	} {
		f := bodies(t, 3)[1]
		before := stateOf(t, f).Shape(c.pose)
		if c.r.IsHeight() {
			up := -by
			switch c.r {
			case fit.ConnectorTop, fit.LeftHitchTop, fit.RightHitchTop:
				up = by // or it could not be
			}
			f.Hangs[0].Heights[c.r][0] += up
		} else {
			f.Laid[c.r] = []float64{f.Laid[c.r][0] + by}
		}
		after := stateOf(t, f).Shape(c.pose)
		place := func(sh *fit.Shape) map[rune][2]float64 {
			d, err := Draw(sh, Options{Width: 200, Height: 100, Unit: "mm"})
			if err != nil {
				t.Fatal(err)
			}
			letters, scale := readBack(t, d)
			out := map[rune][2]float64{}
			for r, at := range letters {
				out[r] = [2]float64{float64(at.Col-letters['H'].Col) * scale.Column, float64(letters['H'].Row-at.Row) * scale.Row}
			}
			return out
		}
		a, b := place(&before), place(&after)
		for r := range a {
			went := math.Hypot(a[r][0]-b[r][0], a[r][1]-b[r][1])
			switch {
			case strings.ContainsRune(c.moves, r) && went < by-60:
				t.Errorf("%s by %v mm moves %c by %.0f mm only", c.r, by, r, went)
			case strings.ContainsRune(c.stays, r) && went > 60: // two cells
				t.Errorf("%s by %v mm moves %c, by %.0f mm", c.r, by, r, went)
			}
		}
	}
}

// No drawing leaves its box or its characters, whatever is known.
func TestDrawingsStayInTheirBox(t *testing.T) {
	check := &rules.Check{Name: "garda-under-connector", Has: 40, Needs: 25, Unit: "mm"}
	for i, f := range bodies(t, 60) {
		if r := fit.Reading(i) % fit.NumReadings; r.IsHeight() {
			f.Hangs[0].Heights[r] = nil
		} else {
			f.Laid[r] = nil
		}
		s := stateOf(t, f)
		for _, p := range poses {
			sh := s.Shape(p)
			o := Options{Width: 30 + 3*(i%31), Height: 12 + i%37, ASCII: i%2 == 0, Unit: []string{"mm", "cm", "in"}[i%3], Reading: fit.Reading(i) % fit.NumReadings, Check: check}
			d, err := Draw(&sh, o)
			if err != nil {
				t.Fatalf("%+v: %v", o, err)
			}
			if len(d.Lines) > o.Height {
				t.Errorf("%d lines in a height of %d", len(d.Lines), o.Height)
			}
			for _, line := range d.Lines {
				if n := len([]rune(line)); n > o.Width {
					t.Errorf("%d columns in a width of %d: %q", n, o.Width, line)
				}
				for _, r := range line {
					if r > '~' && (o.ASCII || r < 0x2500 || r > 0x259f) || r < ' ' {
						t.Errorf("%q in %q", r, line)
					}
				}
			}
			for _, line := range Describe(&sh, o) {
				if strings.Contains(line, "NaN") || strings.Contains(line, " - ") || strings.Contains(line, "%!") {
					t.Errorf("said %q", line)
				}
			}
		}
	}
}

func TestTooSmall(t *testing.T) {
	sh := stateOf(t, bodies(t, 1)[0]).Shape(fit.Seated)
	for _, size := range [][2]int{{29, 20}, {30, 11}, {0, 0}, {-1, 5}} {
		if _, err := Draw(&sh, Options{Width: size[0], Height: size[1]}); !errors.Is(err, ErrTooSmall) {
			t.Errorf("%v: %v", size, err)
		}
	}
}

// Nothing known at all still gives a drawing: the hip and no invention.
func TestNothingKnown(t *testing.T) {
	sh := stateOf(t, &fit.Fitting{Tape: fit.Tape{Class: fit.ClassII, Division: 1}}).Shape(fit.ThighLevel)
	d, err := Draw(&sh, Options{Width: 44, Height: 20, Unit: "mm"})
	if err != nil {
		t.Fatal(err)
	}
	if letters, _ := readBack(t, d); len(letters) != 1 {
		t.Errorf("drawn from nothing: %v\n%s", letters, strings.Join(d.Lines, "\n"))
	}
	if said := Describe(&sh, Options{Unit: "mm"}); len(said) != 1 {
		t.Errorf("told from nothing: %q", said)
	}
}

// A reading that is asked for is marked in the picture and in the key.
func TestAskedReadingIsMarked(t *testing.T) {
	s := stateOf(t, bodies(t, 3)[1])
	for r := range fit.NumReadings {
		from, to, ok := r.Landmarks()
		if !ok {
			continue
		}
		p := r.Info().Pose
		if p == fit.NoPose {
			p = fit.ThighLevel
		}
		if r == fit.KneeLevel || r == fit.GardaLevel {
			p = fit.ThighLevel
		}
		sh := s.Shape(p)
		d, err := Draw(&sh, Options{Width: 60, Height: 34, ASCII: true, Unit: "mm", Reading: r})
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Join(d.Lines, "\n")
		for _, m := range []fit.Landmark{from, to} {
			letter, drawn := Letter(m)
			if drawn && sh.At[m] != sh.At[fit.MarkSole] && !strings.Contains(text, asking+string(letter)+" ") {
				t.Errorf("%s: the key does not ask for %c:\n%s", r, letter, text)
			}
		}
		if sign := map[bool]string{true: "+", false: "*"}[from == to]; from == to && !strings.Contains(text, sign) {
			t.Errorf("%s: no %s in\n%s", r, sign, text)
		}
	}
}

// What is estimated is marked in the key, under the picture and in words.
func TestEstimatesAreMarked(t *testing.T) {
	f := bodies(t, 3)[1]
	f.Hangs[0].Heights[fit.Nose] = nil
	m := fit.NewModel(f, fit.Options{})
	sh := m.Shape(fit.Seated)
	o := Options{Width: 60, Height: 34, ASCII: true, Unit: "mm"}
	d, err := Draw(&sh, o)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Join(d.Lines, "\n")
	if !strings.Contains(text, "N~nose") || strings.Contains(text, "C~") || !strings.Contains(text, sayEstimate) {
		t.Errorf("an estimated nose:\n%s", text)
	}
	said := strings.Join(Describe(&sh, o), "\n")
	if strings.Count(said, "by estimate") != 1 || !strings.Contains(said, "the nose, by estimate.") {
		t.Errorf("an estimated nose: %s", said)
	}
}

// The gap is drawn between the two letters, and told with what it leaves.
func TestGapAndClash(t *testing.T) {
	for name, look := range looks(t) {
		sh, o := look(true)
		if o.Check == nil {
			continue
		}
		d, err := Draw(sh, o)
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Join(d.Lines, "\n")
		gap := sh.At[fit.MarkConnectorBottom].Y - sh.At[fit.MarkGardaTop].Y
		if want := o.Check.Name + ": G to c " + strconv.Itoa(int(math.Round(gap))) + " mm, "; !strings.Contains(text, want) && o.Width >= 60 {
			t.Errorf("%s: no %q in\n%s", name, want, text)
		}
		if left := strconv.Itoa(int(math.Abs(float64(o.Check.Margin)))) + " mm " + map[bool]string{true: "short", false: "to spare"}[o.Check.Margin < 0]; !strings.Contains(text, left) {
			t.Errorf("%s: no %q in\n%s", name, left, text)
		}
		if strings.Count(text, "^") != 2 {
			t.Errorf("%s: the gap is not drawn:\n%s", name, text)
		}
		clash := strings.Contains(text, "%") && strings.Contains(text, "G into c by ")
		if clash != (gap < 0) {
			t.Errorf("%s: clash drawn: %v with a gap of %v:\n%s", name, clash, gap, text)
		}
	}
}

func BenchmarkDraw(b *testing.B) {
	s := stateOf(b, bodies(b, 3)[1])
	for b.Loop() {
		sh := s.Shape(fit.Seated)
		if _, err := Draw(&sh, Options{Width: 60, Height: 40, Unit: "mm", Reading: fit.Nose}); err != nil {
			b.Fatal(err)
		}
	}
}
