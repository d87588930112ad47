package main

import (
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/sessionstest"
)

// BenchmarkCommands runs whole commands on a folder of 10,000 distinct full-size
// sessions. What each is held against, every file read and decoded, goes turn by
// turn with it, so that whatever else the machine does counts on both sides.
func BenchmarkCommands(b *testing.B) {
	dir := b.TempDir()
	paths, err := sessionstest.Write(dir, 10_000)
	if err != nil {
		b.Fatal(err)
	}
	decode := func() {
		together(len(paths), func(i int) {
			if _, err := sessions.ReadFile(paths[i], nil); err != nil {
				b.Error(err)
			}
		})
	}
	command := func(args ...string) {
		if code := run(args, testWorld(io.Discard, os.Stderr, dir)); code == exitUsage || code > exitShort {
			b.Fatalf("exit %d", code)
		}
	}
	against := func(b *testing.B, before func(), args ...string) {
		var decoding, running time.Duration
		for b.Loop() {
			at := time.Now()
			decode()
			decoding += time.Since(at)
			before()
			at = time.Now()
			command(args...)
			running += time.Since(at)
		}
		b.ReportMetric(running.Seconds()/decoding.Seconds(), "x-decoding")
		b.ReportMetric(running.Seconds()/float64(b.N), "s/command")
	}
	nothing := func() {}
	b.Run("list-cold", func(b *testing.B) {
		against(b, func() {
			if err := os.RemoveAll(filepath.Join(dir, ".cache")); err != nil {
				b.Fatal(err)
			}
		}, "list")
	})
	b.Run("list-warm", func(b *testing.B) {
		command("list")
		for b.Loop() {
			command("list")
		}
	})
	b.Run("check-all", func(b *testing.B) { against(b, nothing, append([]string{"check", "--json"}, paths...)...) })
	b.Run("export", func(b *testing.B) { against(b, nothing, "export") })
}
