package estimate

import (
	"cmp"
	"runtime"
	"sync"
)

// InBlocks works off 0 to n − 1 side by side, in as many blocks as there are cores, and
// gives the error of the first block that has one. No number may depend on another, so
// that any number of cores gives the same.
func InBlocks(n int, work func(from, to int) error) error {
	blocks := max(min(runtime.GOMAXPROCS(0), n), 1)
	errs := make([]error, blocks)
	var side sync.WaitGroup
	for i := range blocks {
		side.Go(func() { errs[i] = work(n*i/blocks, n*(i+1)/blocks) })
	}
	side.Wait()
	return cmp.Or(errs...)
}
