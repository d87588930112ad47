package sheet

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"github.com/mattn/go-runewidth"
	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/norm"
	plotfont "gonum.org/v1/plot/font"
)

// A face is one weight of the sheet's font, with what was measured of it.
type face struct {
	plotfont.Face
	data     []byte            // TrueType
	advances map[rune]float64  // em
	missing  map[rune]struct{} // asked for and not in the font
}

// faces are regular and bold.
type faces [2]*face

// newFaces reads the embedded fonts.
func newFaces() *faces {
	load := func(data []byte, w font.Weight) *face {
		parsed, err := opentype.Parse(data)
		if err != nil {
			panic(fmt.Sprintf("sheet: the embedded font cannot be read: %v", err))
		}
		f := plotfont.Face{Font: plotfont.Font{Typeface: "Liberation", Variant: "Sans", Weight: w}, Face: parsed}
		return &face{f, data, map[rune]float64{}, map[rune]struct{}{}}
	}
	return &faces{load(liberationsansregular.TTF, font.WeightNormal), load(liberationsansbold.TTF, font.WeightBold)}
}

func (f *faces) of(bold bool) *face {
	if bold {
		return f[1]
	}
	return f[0]
}

// Instead stands for a letter that the sheet's font does not have.
const Instead = '□'

// legible is s on one line, composed, and with Instead for what is no letter, such
// as a sign that turns text around.
func legible(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case !unicode.IsPrint(r):
			return Instead
		}
		return r
	}, norm.NFC.String(s))
}

// drawable is s with Instead for every letter that is not in the font.
func (f *face) drawable(s string) string {
	return strings.Map(func(r rune) rune {
		if f.has(r) {
			return r
		}
		return Instead
	}, s)
}

// has says whether r is in the font and can be laid out from left to right, one
// letter after the other.
func (f *face) has(r rune) bool {
	if unicode.In(r, unicode.Hebrew, unicode.Arabic) {
		return false
	}
	i, err := f.Face.Face.GlyphIndex(nil, r)
	return err == nil && i != 0
}

// width is how wide s is at size, without kerning, which one of the formats does
// not do. A letter that is not in the font has its width in a terminal, and is
// kept among the missing.
func (f *face) width(s string, size float64) float64 {
	em := 0.0
	for _, r := range s {
		a, ok := f.advances[r]
		if !ok {
			if a = f.advance(r); !f.has(r) {
				f.missing[r] = struct{}{}
				a = max(f.advance(Instead), float64(runewidth.RuneWidth(r))/2)
			}
			f.advances[r] = a
		}
		em += a
	}
	return em * size
}

func (f *face) advance(r rune) float64 {
	perEm := fixed.Int26_6(f.Face.Face.UnitsPerEm())
	i, err := f.Face.Face.GlyphIndex(nil, r)
	if err != nil {
		panic(fmt.Sprintf("sheet: the embedded font has no index of %q: %v", r, err))
	}
	a, err := f.Face.Face.GlyphAdvance(nil, i, perEm, font.HintingNone)
	if err != nil {
		panic(fmt.Sprintf("sheet: the embedded font has no width of %q: %v", r, err))
	}
	return float64(a) / float64(perEm)
}

// missing are the letters that were asked for and are not in the font, in order.
func (f *faces) missing() []rune {
	all := map[rune]struct{}{}
	for _, face := range f {
		maps.Copy(all, face.missing)
	}
	return slices.Sorted(maps.Keys(all))
}
