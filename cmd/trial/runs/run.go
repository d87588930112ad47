package runs

import (
	"sync"

	"example.com/hangtape/cmd/trial/truth"
)

// A Row is everything that was tried on one body.
type Row struct {
	Body    truth.Body
	Thumb   Thumb
	Tool    bool // the tool was tried on it too; else only the rules of thumb were
	Stature Stature
	Least   Full // following the least change
	Best    Full // following the best fit
	Short   Short
	Blunder Blunder
}

// Run tries every body, the tool only on those that tool picks, on so many workers
// at once. The rows come in the order of the bodies whatever their number. done is
// called after each body, never twice at once.
func (b *Bench) Run(bodies []truth.Body, tool func(truth.Body) bool, workers int, done func()) []Row {
	rows := make([]Row, len(bodies))
	next := make(chan int)
	var wait sync.WaitGroup
	var one sync.Mutex
	for range workers {
		wait.Go(func() {
			for i := range next {
				rows[i] = b.row(bodies[i], tool(bodies[i]))
				one.Lock()
				done()
				one.Unlock()
			}
		})
	}
	for i := range bodies {
		next <- i
	}
	close(next)
	wait.Wait()
	return rows
}

func (b *Bench) row(body truth.Body, tool bool) Row {
	r := Row{Body: body, Tool: tool, Thumb: b.Thumb(body)}
	if tool {
		r.Stature = b.Stature(body)
		r.Least, r.Best = b.Full(body, LeastChange), b.Full(body, BestFit)
		r.Short = b.Short(body)
		r.Blunder = b.Blunder(body)
	}
	return r
}
