package store

import (
	"context"
	"iter"

	"sipsum/internal/food"
)

// The foods that a reader may be ahead of the writer: some batches of some foods, so that neither waits
// for the other at every food.
const (
	aheadBatches = 4
	aheadFoods   = 64
)

// readAhead gives foods as they are read by another goroutine, in their order, up to the first error. The
// goroutine has ended when the loop over them has.
func readAhead(ctx context.Context, foods iter.Seq2[*food.Food, error]) iter.Seq2[*food.Food, error] {
	return func(yield func(*food.Food, error) bool) {
		type batch struct {
			foods []*food.Food
			err   error // after them
		}
		ctx, stop := context.WithCancel(ctx)
		batches := make(chan batch, aheadBatches)
		go func() {
			defer close(batches)
			var b batch
			send := func() bool {
				select {
				case batches <- b:
				case <-ctx.Done():
					return false
				}
				b = batch{foods: make([]*food.Food, 0, aheadFoods)}
				return true
			}
			for f, err := range foods {
				if err != nil {
					b.err = err
					break
				}
				if b.foods = append(b.foods, f); len(b.foods) == aheadFoods && !send() {
					return
				}
			}
			send()
		}()
		defer func() {
			stop()
			for range batches { // until it has ended
			}
		}()
		for b := range batches {
			for _, f := range b.foods {
				if !yield(f, nil) {
					return
				}
			}
			if b.err != nil {
				yield(nil, b.err)
				return
			}
		}
	}
}
