package records_test

import (
	"crypto/rand"
	"testing"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/records"
	"example.com/hangtape/sessions/sessionstest"
)

const many = 10_000

// BenchmarkFolder is a folder of 10,000 distinct full-size sessions; whole
// commands on one are timed in cmd/hangtape.
func BenchmarkFolder(b *testing.B) {
	dir := b.TempDir()
	if _, err := sessionstest.Write(dir, many); err != nil {
		b.Fatal(err)
	}
	st, err := sessions.OpenStore(dir, noon, rand.Reader)
	if err != nil {
		b.Fatal(err)
	}
	b.Run("warm", func(b *testing.B) {
		list(b, st)
		list(b, st) // the youngest files are read twice
		for b.Loop() {
			list(b, st)
		}
	})
	b.Run("find", func(b *testing.B) {
		l := scan(b, st)
		l.Find(query(b, "x")) // the first one folds the list
		for _, typed := range []string{"m", "made-up 7", "fail", "climber:oak kit:12 2026", "nobody of this name"} {
			b.Run(typed, func(b *testing.B) {
				for b.Loop() {
					l.Find(query(b, typed))
				}
			})
		}
	})
}

func list(b *testing.B, st *sessions.Store) {
	if l := scan(b, st); len(l.Sessions()) != many {
		b.Fatalf("%d sessions", len(l.Sessions()))
	}
}

func query(b *testing.B, typed string) records.Query {
	q, err := records.ParseQuery(typed)
	if err != nil {
		b.Fatal(err)
	}
	return q
}
