package instructor

import (
	"strconv"
	"strings"

	"example.com/hangtape/fit"
)

// Retake reads again what a key of the session file names: a laid length, a
// changed piece laid on again, or a height, which is read in the latest hang
// whatever hang the key names. It says whether the key names a reading at all.
func (s *Session) Retake(key string) bool {
	i := max(0, strings.LastIndexByte(key, '.'))
	table, name := key[:i], key[min(i+1, len(key)):]
	switch {
	case strings.HasPrefix(table, "changes."):
		n, err := strconv.Atoi(strings.TrimPrefix(table, "changes."))
		if err != nil || n < 1 || n > len(s.Fit.Changes) {
			return false
		}
		s.layAgain(n - 1)
		return true
	case strings.HasPrefix(table, "hangs."):
		table = "hangs"
	}
	for r := range fit.NumReadings {
		if info := r.Info(); info.Table == table && info.Key == name {
			s.Read(r)
			return true
		}
	}
	return false
}

// Shift moves everything written down of r, in its latest hang, by mm: a whole
// reading taken at the wrong place.
func (s *Session) Shift(r fit.Reading, mm float64) {
	numbers := s.Fit.Laid[r]
	if r.IsHeight() {
		numbers = s.Fit.Hangs[len(s.Fit.Hangs)-1].Heights[r]
	}
	for i := range numbers {
		numbers[i] += mm
	}
}

// Key is the key in the session file under which r was last written down.
func (s *Session) Key(r fit.Reading) string {
	info := r.Info()
	if r.IsHeight() {
		return "hangs." + strconv.Itoa(len(s.Fit.Hangs)) + "." + info.Key
	}
	return info.Table + "." + info.Key
}
