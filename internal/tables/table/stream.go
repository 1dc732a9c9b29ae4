package table

import (
	"context"
	"io"

	"sipsum/internal/food"
)

// Stream gives the foods that next reads, until it gives io.EOF or an error, the
// reader of the stream stops, or ctx ends.
func Stream(ctx context.Context, yield func(*food.Food, error) bool, next func() (*food.Food, error)) {
	for {
		err := ctx.Err()
		var f *food.Food
		if err == nil {
			f, err = next()
		}
		switch {
		case err == io.EOF:
			return
		case err != nil:
			yield(nil, err)
			return
		}
		if !yield(f, nil) {
			return
		}
	}
}
