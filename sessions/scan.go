package sessions

import (
	"bytes"
	"fmt"
	"strconv"
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

type scanner struct {
	data       []byte
	pos, line  int
	table      string         // the table whose keys are being read, with its entry
	entries    map[string]int // how many entries an array of tables has so far
	braces     int
	statements int
	fault      *Fault
	source
}

func (s *scanner) refuse(found, accepted string) {
	if s.fault == nil {
		s.fault = &Fault{Line: s.line, Found: found, Accepted: accepted}
	}
}

func (s *scanner) peek() byte {
	if s.pos < len(s.data) {
		return s.data[s.pos]
	}
	return 0
}

// skipToStatement passes blank lines and comments; false at the end.
func (s *scanner) skipToStatement() bool {
	for s.pos < len(s.data) {
		switch s.peek() {
		case ' ', '\t', '\r':
			s.pos++
		case '\n':
			s.pos++
			s.line++
		case '#':
			s.skipLine()
		default:
			return true
		}
	}
	return false
}

func (s *scanner) skipLine() {
	for s.pos < len(s.data) && s.peek() != '\n' {
		s.pos++
	}
}

// statement reads a header, or a key and its value.
func (s *scanner) statement() {
	if s.statements++; s.statements > mostStatement {
		s.refuse("the file has more keys than any session", fmt.Sprintf("at most %d", mostStatement))
		return
	}
	line := s.line
	if s.peek() == '[' {
		s.pos++
		many := s.peek() == '['
		if many {
			s.pos++
		}
		s.header(s.key("]\n"), many, line)
		s.skipLine()
		return
	}
	parts := s.key("=\n")
	at := s.table
	for _, p := range parts {
		at = join(at, p)
	}
	s.found(at, line, false)
	if s.peek() == '=' {
		s.pos++
		s.value()
	}
}

func (s *scanner) header(parts []string, many bool, line int) {
	at := ""
	for i, p := range parts {
		at = join(at, p)
		if last := i == len(parts)-1; last && many {
			s.entries[at]++
			s.found(at, line, true)
			at = join(at, strconv.Itoa(s.entries[at]))
			s.found(at, line, false)
		} else if last {
			s.found(at, line, false)
		} else if n := s.entries[at]; n > 0 {
			at = join(at, strconv.Itoa(n))
		}
	}
	s.table = at
}

// found notes that key stands on that line.
func (s *scanner) found(key string, line int, may bool) {
	first, twice := s.lines[key]
	if !twice {
		s.lines[key] = line
	} else if !may {
		s.again = append(s.again, Fault{Line: line, Key: key, Found: fmt.Sprintf("there twice, on line %d and on line %d", first, line), Accepted: "once"})
	}
}

// key reads the parts of a dotted key up to one of the ends.
func (s *scanner) key(ends string) []string {
	var parts []string
	var part []byte
	for s.pos < len(s.data) && !strings.ContainsRune(ends, rune(s.peek())) {
		switch c := s.peek(); c {
		case '.':
			parts, part = append(parts, string(part)), nil
			if len(parts) >= mostKeyParts {
				s.refuse("the key has too many parts", fmt.Sprintf("at most %d", mostKeyParts))
				return parts
			}
			s.pos++
		case ' ', '\t', '\r':
			s.pos++
		case '"', '\'':
			part = append(part, s.text()...)
		default:
			part = append(part, c)
			s.pos++
		}
	}
	return append(parts, string(part))
}

// text passes a quoted text, of one line or of several, and gives what is
// between the quotes as it stands.
func (s *scanner) text() []byte {
	quote := s.peek()
	if long := bytes.Repeat([]byte{quote}, 3); bytes.HasPrefix(s.data[s.pos:], long) {
		s.pos += 3
		return s.until(long, quote == '"', true)
	}
	s.pos++
	return s.until([]byte{quote}, quote == '"', false)
}

func (s *scanner) until(end []byte, escapes, lines bool) []byte {
	from := s.pos
	for s.pos < len(s.data) {
		switch {
		case bytes.HasPrefix(s.data[s.pos:], end):
			s.pos += len(end)
			return s.data[from : s.pos-len(end)]
		case s.peek() == '\\' && escapes && s.pos+1 < len(s.data) && s.data[s.pos+1] != '\n':
			s.pos += 2
		case s.peek() == '\n' && !lines:
			return s.data[from:s.pos]
		default:
			if s.peek() == '\n' {
				s.line++
			}
			s.pos++
		}
	}
	return s.data[from:]
}

// value passes a value and counts how deep it nests.
func (s *scanner) value() {
	depth, dots := 0, 0
	for s.pos < len(s.data) && s.fault == nil {
		c := s.peek()
		switch c {
		case '"', '\'':
			s.text()
			continue
		case '#':
			s.skipLine()
			continue
		case '\n':
			if depth == 0 {
				return
			}
			s.line++
		case '[', '{':
			if depth++; depth > mostNested {
				s.refuse(fmt.Sprintf("the value nests more than %d deep", mostNested), "a list at most")
			}
			if c == '{' {
				if s.braces++; s.braces > mostInline {
					s.refuse("the file has too many tables in braces", fmt.Sprintf("at most %d", mostInline))
				}
			}
		case ']', '}':
			depth = max(0, depth-1)
		case '.':
			if dots++; dots >= mostKeyParts {
				s.refuse("the key has too many parts", fmt.Sprintf("at most %d", mostKeyParts))
			}
		}
		if strings.IndexByte(",={[", c) >= 0 {
			dots = 0
		}
		s.pos++
	}
}

// join is key in table.
func join(table, key string) string {
	if table == "" {
		return key
	}
	return table + "." + key
}
