package display

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// strip is how many lines are laid at a time.
const strip = 16

// inParallel hands out the lines 0 to n, strip by strip, to all processors.
func inParallel(n int, work func(from, to int)) {
	inParallelBy(n, func() func(from, to int) { return work })
}

// inParallelBy is inParallel for work that needs something of its own on each
// processor.
func inParallelBy(n int, worker func() func(from, to int)) {
	var next atomic.Int64
	run := func() {
		work := worker()
		for {
			to := int(next.Add(strip))
			if to-strip >= n {
				return
			}
			work(to-strip, min(to, n))
		}
	}
	var others sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), (n+strip-1)/strip) - 1 {
		others.Go(run)
	}
	run()
	others.Wait()
}
