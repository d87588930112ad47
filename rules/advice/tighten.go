package advice

// tighten takes from the runs of place i on what no choice of the others can
// make good, until nothing more goes; false where a run comes out empty.
func (q *search) tighten(i int, left *runs) bool {
	for again := true; again; {
		again = false
		for _, d := range q.demands {
			var best choice // the best that the runs still allow for d
			for k, r := range left {
				if best[k] = r.lo; d.signs[k] > 0 {
					best[k] = r.hi
				}
			}
			if !d.met(&best) {
				return false
			}
			for k := i; k < len(left); k++ {
				if d.signs[k] == 0 || left[k].lo == left[k].hi {
					continue
				}
				if r := q.halve(d, best, k, left[k]); r != left[k] {
					left[k], again = r, true
				}
			}
		}
	}
	return true
}

// halve is the part of the run at place k in which d can be met; its better end
// is known to meet it.
func (q *search) halve(d *demand, c choice, k int, r run) run {
	if d.signs[k] > 0 {
		lo, hi := r.lo, r.hi // hi meets it
		for lo < hi {
			c[k] = (lo + hi) / 2
			if d.met(&c) {
				hi = c[k]
			} else {
				lo = c[k] + 1
			}
		}
		return run{hi, r.hi}
	}
	lo, hi := r.lo, r.hi // lo meets it
	for lo < hi {
		c[k] = (lo + hi + 1) / 2
		if d.met(&c) {
			lo = c[k]
		} else {
			hi = c[k] - 1
		}
	}
	return run{r.lo, lo}
}
