package store

import (
	"container/heap"
	"errors"
	"io"
)

// sortedRun gives pairs in order; io.EOF after the last.
type sortedRun struct {
	next  func() (pair, error)
	first pair // the one that it has not given yet
}

// advance reads the next pair.
func (r *sortedRun) advance() (err error) {
	r.first, err = r.next()
	return err
}

// merging is a heap of runs, the one whose pair comes first on top.
type merging []*sortedRun

func (m merging) Len() int           { return len(m) }
func (m merging) Less(i, j int) bool { return inRank(m[i].first, m[j].first) < 0 }
func (m merging) Swap(i, j int)      { m[i], m[j] = m[j], m[i] }
func (m *merging) Push(x any)        { *m = append(*m, x.(*sortedRun)) }
func (m *merging) Pop() any {
	last := len(*m) - 1
	x := (*m)[last]
	*m = (*m)[:last]
	return x
}

// each gives the pairs of all runs in order.
func (m *merging) each(use func(pair) error) error {
	var started merging
	for _, r := range *m {
		switch err := r.advance(); {
		case errors.Is(err, io.EOF):
		case err != nil:
			return err
		default:
			started = append(started, r)
		}
	}
	heap.Init(&started)
	for len(started) > 0 {
		top := started[0]
		if err := use(top.first); err != nil {
			return err
		}
		switch err := top.advance(); {
		case errors.Is(err, io.EOF):
			heap.Pop(&started)
		case err != nil:
			return err
		default:
			heap.Fix(&started, 0)
		}
	}
	return nil
}
