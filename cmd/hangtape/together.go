package main

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// batch is how many sessions are worked on before their answers are written, and
// so how many are held in memory.
const batch = 128

// together calls do for every i below n, as many at a time as there are
// processors, and returns when all are done.
func together(n int, do func(i int)) {
	var next atomic.Int64
	var working sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		working.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				do(i)
			}
		})
	}
	working.Wait()
}
