package sessions

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
)

// A scanner goes through a file statement by statement, as far as is needed to
// know which key stands on which line, whatever else is wrong with it.
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
