package sideview

import "example.com/hangtape/fit"

// A charset is what lines are drawn with. Letters belong to landmarks alone.
type charset struct {
	lines                      [4]rune // by slope
	rope, body, connector      rune
	wraps, garda, ground       rune
	tape, tapeMark, laid       rune
	gapTop, gapEnd, gap, clash rune
}

var (
	ascii = charset{
		lines: [4]rune{'-', '|', '/', '\\'},
		rope:  '|', body: '.', connector: '"', wraps: '#', garda: '=', ground: '_',
		tape: ':', tapeMark: '+', laid: '*',
		gapTop: '^', gapEnd: '^', gap: '!', clash: '%',
	}
	// boxes are box drawing and block elements alone (U+2500 to U+259F), which
	// fonts of phones have.
	boxes = charset{
		lines: [4]rune{'─', '│', '╱', '╲'},
		rope:  '║', body: '░', connector: '┃', wraps: '▓', garda: '█', ground: '▁',
		tape: '╎', tapeMark: '╪', laid: '▒',
		gapTop: '┬', gapEnd: '┴', gap: '┊', clash: '╳',
	}
)

func charsetFor(plain bool) charset {
	if plain {
		return ascii
	}
	return boxes
}

func (s charset) of(stroke fit.Stroke, to slope) rune {
	switch stroke {
	case fit.StrokeRope:
		return s.rope
	case fit.StrokeBody:
		return s.body
	case fit.StrokeConnector:
		return s.connector
	case fit.StrokeWraps:
		return s.wraps
	case fit.StrokeGarda:
		return s.garda
	}
	return s.lines[to]
}
