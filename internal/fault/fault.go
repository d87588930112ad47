// Package fault tells where in the program a fault of its own is, and nothing of
// what was being worked on, which may be somebody's body.
package fault

import (
	"fmt"
	"path"
	"runtime"
	"strings"
)

// In runs f. Where that panics it returns the innermost function of ours that was
// running, as in "rules.Judge (judge.go:12)"; else "".
func In(f func()) (place string) {
	defer func() {
		if recover() != nil {
			place = panicPlace()
		}
	}()
	f()
	return ""
}

func panicPlace() string {
	pcs := make([]uintptr, 64)
	frames := runtime.CallersFrames(pcs[:runtime.Callers(0, pcs)])
	for panicked := false; ; {
		f, more := frames.Next()
		if panicked && !strings.HasPrefix(f.Function, "runtime.") {
			return fmt.Sprintf("%s (%s:%d)", path.Base(f.Function), path.Base(f.File), f.Line)
		}
		panicked = panicked || f.Function == "runtime.gopanic"
		if !more {
			return "an unknown place"
		}
	}
}
