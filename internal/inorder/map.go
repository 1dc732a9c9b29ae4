package inorder

import (
	"context"
	"iter"
	"sync"
)

// aheadOfEach is how many results for each worker may wait for one that is slower: our own bound. One lets
// every worker go on while the first of them is at it; more evens out what differs more.
const aheadOfEach = 2

// Map gives the result of work for each thing of a list, in the order of the list, worked off by as many
// workers as there are jobs (at least one).
func Map[A, B any](ctx context.Context, jobs int, list iter.Seq[A], work func(context.Context, A) B) iter.Seq[B] {
	return func(yield func(B) bool) {
		ctx, stop := context.WithCancel(ctx)
		var all sync.WaitGroup
		defer all.Wait()
		defer stop()

		type task struct {
			of  A
			out chan B // of one
		}
		jobs := max(jobs, 1)
		tasks, places := make(chan task), make(chan chan B, jobs*aheadOfEach)
		all.Go(func() {
			defer close(tasks)
			defer close(places)
			for of := range list {
				t := task{of, make(chan B, 1)}
				if !send(ctx, places, t.out) || !send(ctx, tasks, t) {
					return
				}
			}
		})
		for range jobs {
			all.Go(func() {
				for t := range tasks {
					t.out <- work(ctx, t.of)
				}
			})
		}
		for place := range places {
			select {
			case result := <-place:
				if !yield(result) {
					return
				}
			case <-ctx.Done():
				return
			}
		}
	}
}

// send waits until a queue takes something, and reports whether it did before the context ended.
func send[T any](ctx context.Context, queue chan<- T, what T) bool {
	select {
	case queue <- what:
		return true
	case <-ctx.Done():
		return false
	}
}
