package demo

import (
	"strings"

	"example.com/hangtape/sessions"
)

// Invented says whether s is a demo session, also one that was gone on with, or
// is marked as one by its climber's name.
func Invented(s *sessions.Session) bool {
	for _, f := range Files() {
		if demo, err := sessions.Decode(f.Name, f.Data); err == nil && demo.ID == s.ID {
			return true
		}
	}
	first, _, _ := strings.Cut(strings.ToLower(strings.TrimSpace(s.Climber)), " ")
	return first == "demo"
}
