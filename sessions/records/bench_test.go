package records_test

import (
	"crypto/rand"
	"os"
	"runtime"
	"sync"
	"testing"
	"time"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/records"
	"example.com/hangtape/sessions/sessionstest"
)

const many = 10_000

// BenchmarkFolder is a folder of 10,000 distinct full-size sessions.
func BenchmarkFolder(b *testing.B) {
	dir := b.TempDir()
	if _, err := sessionstest.Write(dir, many); err != nil {
		b.Fatal(err)
	}
	st, err := sessions.OpenStore(dir, noon, rand.Reader)
	if err != nil {
		b.Fatal(err)
	}
	// Reading and decoding every file is what cold is held against, turn by turn,
	// so that whatever else the machine does counts on both sides.
	b.Run("cold", func(b *testing.B) {
		var decoding, listing time.Duration
		for b.Loop() {
			at := time.Now()
			decodeAll(b, st)
			decoding += time.Since(at)
			if err := os.RemoveAll(records.CachePath(st)); err != nil {
				b.Fatal(err)
			}
			at = time.Now()
			list(b, st)
			listing += time.Since(at)
		}
		b.ReportMetric(listing.Seconds()/decoding.Seconds(), "x-decoding")
		b.ReportMetric(listing.Seconds()/float64(b.N), "s/list")
	})
	b.Run("warm", func(b *testing.B) {
		list(b, st)
		for b.Loop() {
			list(b, st)
		}
	})
	b.Run("find", func(b *testing.B) {
		l := scan(b, st)
		for _, typed := range []string{"m", "made-up 7", "fail", "climber:oak kit:12 2026", "nobody of this name"} {
			b.Run(typed, func(b *testing.B) {
				for b.Loop() {
					q, err := records.ParseQuery(typed)
					if err != nil {
						b.Fatal(err)
					}
					l.Find(q)
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

func decodeAll(b *testing.B, st *sessions.Store) {
	files, err := st.Folder()
	if err != nil {
		b.Fatal(err)
	}
	school, err := st.School()
	if err != nil {
		b.Fatal(err)
	}
	parts := runtime.GOMAXPROCS(0)
	var working sync.WaitGroup
	for p := range parts {
		working.Go(func() {
			for i := p; i < len(files); i += parts {
				if _, err := st.LoadFor(files[i].Path, school); err != nil {
					b.Error(err)
				}
			}
		})
	}
	working.Wait()
}
