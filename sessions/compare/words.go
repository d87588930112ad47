package compare

import (
	"strings"

	"example.com/hangtape/sessions"
)

// wordsOf lists what people told in words, and what is neither a reading nor a
// label, where it differs; in the order of the file.
func wordsOf(a, b *sessions.Session) []Words {
	values := func(s *sessions.Session) map[string]string {
		m := map[string]string{}
		for _, t := range s.Told() {
			m[t.Key.Path] = t.Value
		}
		return m
	}
	va, vb := values(a), values(b)
	words := []Words{}
	for _, k := range sessions.Keys() {
		if inWords(k) && va[k.Path] != vb[k.Path] {
			words = append(words, Words{k.Path, va[k.Path], vb[k.Path]})
		}
	}
	return words
}

// inWords says whether a key is compared here: who, where, on what tape and with
// what kit, but neither when, nor what the rows compare, nor what was seen and
// signed.
func inWords(k sessions.KeyInfo) bool {
	table, _, _ := strings.Cut(k.Path, ".")
	switch table {
	case "tape":
		return true
	case "session":
		return k.Kind == sessions.TextKind && k.Path != "session.notes" || k.Path == "session.purpose"
	case "climber", "kit":
		return k.Kind != sessions.NumbersKind && k.Kind != sessions.NumberKind && k.Kind != sessions.CountKind
	}
	return false
}
