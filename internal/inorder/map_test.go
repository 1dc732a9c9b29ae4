package inorder_test

import (
	"context"
	"iter"
	"slices"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/inorder"
)

// upTo counts from 0 to n − 1, and keeps how many were asked for.
func upTo(n int, asked *atomic.Int64) iter.Seq[int] {
	return func(yield func(int) bool) {
		for i := range n {
			asked.Add(1)
			if !yield(i) {
				return
			}
		}
	}
}

// Whatever finishes first, the order is that of the list, and each is done once.
func TestResultsComeInTheOrderOfTheList(t *testing.T) {
	for _, jobs := range []int{0, 1, 2, 3, 8, 200} {
		synctest.Test(t, func(t *testing.T) {
			const n = 100
			var asked, done atomic.Int64
			work := func(_ context.Context, i int) int {
				time.Sleep(time.Duration((i*37)%11) * time.Second) // the clock of the test
				done.Add(1)
				return i * i
			}
			got := slices.Collect(inorder.Map(t.Context(), jobs, upTo(n, &asked), work))
			var want []int
			for i := range n {
				want = append(want, i*i)
			}
			assert.Equal(t, want, got)
			assert.EqualValues(t, n, done.Load())
		})
	}
}

// So many work at once as there are jobs, and no more; the time is that of the work over the workers.
func TestAsManyWorkAtOnceAsThereAreJobs(t *testing.T) {
	for _, jobs := range []int{1, 2, 8} {
		synctest.Test(t, func(t *testing.T) {
			var asked, now, most atomic.Int64
			begun := time.Now()
			for range inorder.Map(t.Context(), jobs, upTo(40, &asked), func(_ context.Context, i int) int {
				most.Store(max(most.Load(), now.Add(1)))
				time.Sleep(time.Second)
				now.Add(-1)
				return i
			}) {
			}
			assert.EqualValues(t, jobs, most.Load())
			assert.Equal(t, time.Duration(40/jobs)*time.Second, time.Since(begun))
		})
	}
}

// While the first is at it, the others wait once they are a few ahead: what is kept is bounded.
func TestNobodyRunsFarAhead(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		const jobs = 4
		var asked, done atomic.Int64
		slow := make(chan struct{})
		next, stop := iter.Pull(inorder.Map(t.Context(), jobs, upTo(1000, &asked), func(_ context.Context, i int) int {
			if i == 0 {
				<-slow
			}
			done.Add(1)
			return i
		}))
		defer stop()
		first := make(chan int)
		go func() {
			i, _ := next()
			first <- i
		}()
		synctest.Wait()
		assert.LessOrEqual(t, asked.Load(), int64(4*jobs), "asked for while the first is at it")
		assert.GreaterOrEqual(t, done.Load(), int64(jobs), "the others go on meanwhile")
		close(slow)
		assert.Equal(t, 0, <-first)
	})
}

// Who leaves the loop leaves nothing behind that runs (synctest fails where a goroutine is left), and neither does a
// context that ends.
func TestNothingRunsAfterTheLoop(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var asked, now atomic.Int64
		work := func(_ context.Context, i int) int {
			defer now.Add(-1)
			now.Add(1)
			time.Sleep(time.Second)
			return i
		}
		for i := range inorder.Map(t.Context(), 3, upTo(1000, &asked), work) {
			if i == 5 {
				break
			}
		}
		assert.Zero(t, now.Load())
		assert.Less(t, asked.Load(), int64(1000))

		ctx, stop := context.WithCancel(t.Context())
		defer stop()
		var got []int
		for i := range inorder.Map(ctx, 3, upTo(1000, &asked), work) {
			got = append(got, i)
			if i == 5 {
				stop()
			}
		}
		assert.Zero(t, now.Load())
		assert.Less(t, len(got), 20, "the loop ends with its context")
		assert.Equal(t, []int{0, 1, 2, 3, 4, 5}, got[:6])
	})
}

// Work that waits hears of the end.
func TestWorkHearsOfTheEnd(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var asked atomic.Int64
		ctx, stop := context.WithTimeout(t.Context(), time.Second)
		defer stop()
		for range inorder.Map(ctx, 2, upTo(10, &asked), func(ctx context.Context, i int) int {
			<-ctx.Done()
			return i
		}) {
		}
		assert.ErrorIs(t, ctx.Err(), context.DeadlineExceeded)
	})
}
