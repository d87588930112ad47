package sessions

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"
)

// What a file may hold at most. Real sessions have a few kilobytes and nest two
// deep; beyond these the decoder of the library takes seconds and gigabytes.
const (
	mostBytes     = 256 << 10
	mostLine      = 16 << 10 // bytes in a line
	mostNested    = 8        // brackets and braces
	mostInline    = 500      // inline tables in a file
	mostKeyParts  = 6        // in a dotted key
	mostStatement = 4000     // keys and headers in a file; 99 hangs have 2500
)

// checkBytes refuses what is no text in UTF-8.
func checkBytes(data []byte) *Fault {
	if len(data) > mostBytes {
		return &Fault{Found: "the file is larger than 256 kB", Accepted: "at most 256 kB; a session has a few kB"}
	}
	if bytes.HasPrefix(data, []byte{0xFF, 0xFE}) || bytes.HasPrefix(data, []byte{0xFE, 0xFF}) {
		return &Fault{Line: 1, Found: "the file is UTF-16 text (byte 0)", Accepted: "UTF-8 text"}
	}
	for i, line := 0, 1; i < len(data); {
		r, n := utf8.DecodeRune(data[i:])
		switch {
		case r == utf8.RuneError && n == 1:
			return &Fault{Line: line, Found: fmt.Sprintf("byte %d is 0x%02X, which is no UTF-8", i, data[i]), Accepted: "UTF-8 text"}
		case r == 0:
			return &Fault{Line: line, Found: fmt.Sprintf("byte %d is NUL", i), Accepted: "UTF-8 text without NUL"}
		case r == '\n':
			line++
		}
		i += n
	}
	return nil
}

// A source knows on which line each key of a file stands first.
type source struct {
	lines map[string]int // by key, entries counted from 1
	again []Fault        // keys that stand there twice
}

// line is where key stands, or else the nearest table around it; 0 where even
// that is not in the file.
func (s source) line(key string) int {
	for key != "" {
		if n := s.lines[key]; n > 0 {
			return n
		}
		key = key[:max(0, strings.LastIndexByte(key, '.'))]
	}
	return 0
}

// scan finds the lines of all keys and refuses what would cost the decoder too
// much. It reads any text, also one that is no TOML, and leaves every other
// judgement to the decoder.
func scan(data []byte) (source, *Fault) {
	s := scanner{data: bytes.TrimPrefix(data, []byte("\xEF\xBB\xBF")), line: 1, entries: map[string]int{}, source: source{lines: map[string]int{}}}
	for line := range bytes.Lines(s.data) {
		if len(line) > mostLine {
			return s.source, &Fault{Line: s.line, Found: fmt.Sprintf("the line has %d bytes", len(line)), Accepted: fmt.Sprintf("at most %d", mostLine)}
		}
		s.line++
	}
	s.line = 1
	for s.fault == nil && s.skipToStatement() {
		s.statement()
	}
	return s.source, s.fault
}
