//go:build unix

package main

import (
	"io"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"example.com/hangtape/sessions"
	"example.com/hangtape/sessions/sessionstest"
)

// BenchmarkCommands runs whole commands on a folder of 10,000 distinct full-size
// sessions. What each is held against, every file read and decoded, goes turn by
// turn with it and in processor time, so that whatever else the machine does does
// not count.
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
			at := processorTime(b)
			decode()
			decoding += processorTime(b) - at
			before()
			at = processorTime(b)
			command(args...)
			running += processorTime(b) - at
		}
		b.ReportMetric(running.Seconds()/decoding.Seconds(), "x-decoding")
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
		command("list") // the youngest files are read twice
		least := time.Hour
		defer func() { b.ReportMetric(float64(least.Milliseconds()), "ms-at-best") }()
		for b.Loop() {
			at := time.Now()
			command("list")
			least = min(least, time.Since(at))
		}
	})
	b.Run("check-all", func(b *testing.B) { against(b, nothing, append([]string{"check", "--json"}, paths...)...) })
	b.Run("export", func(b *testing.B) { against(b, nothing, "export") })
}

// processorTime is what the process has used of all processors.
func processorTime(b *testing.B) time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		b.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
