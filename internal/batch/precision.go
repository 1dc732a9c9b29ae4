package batch

import (
	"context"
	"math"
	"sort"

	"sipsum/internal/amount"
	"sipsum/internal/fail"
	"sipsum/internal/taste"
	"sipsum/internal/unit"
)

// Step is how finely an amount has to be weighed.
type Step struct {
	Base   float64 // the coarsest step that keeps every band, g or ml; 0: none of data/batch.csv does, or nobody weighs it
	Bound  string  // the band that the next coarser one leaves; "": what no amount is off by
	Finer  bool    // none of data/batch.csv is fine enough
	Coarse bool    // the bar's scale is not fine enough
}

// Precision is how far a serving stays what it is.
type Precision struct {
	Bands  []Band
	Share  float64 // by which no amount is off
	Inside float64 // the share of servings that stay in every band; NaN: there is none
	First  string  // the band that is left most often; "": none is
	Draws  int
}

// steps finds how finely each amount has to be weighed.
func (m *maker) steps(ctx context.Context, s *bands) error {
	a, err := m.Central.Run(ctx, nil, s.want)
	if err != nil {
		return err
	}
	now := s.read(a)
	s.hold(now, taste.Of(a.Glass()))
	m.out.Precision = Precision{Bands: s.list, Share: limits().share, Inside: math.NaN()}
	if len(s.list) == 0 {
		return nil
	}
	for _, w := range m.out.all() {
		if w.Top || w.pulled || !w.weighable(m.Central.Written()) {
			continue
		}
		if w.Step, err = m.finest(ctx, s, now, *w); err != nil {
			return err
		}
		w.Step.Finer = w.Step.Base == 0 && (w.House || w.Food != "")
		w.Step.Coarse = m.scaled(w.Amount) && w.Step.Base < m.step(w.Amount)*(1-unit.Closeness)
	}
	return nil
}

// weighable reports whether a scale or a measuring glass shows an amount that a run can change.
func (w Weighed) weighable(written amount.Amounts) bool {
	_, ok := written[w.Path]
	return ok && w.measured() && w.Amount.Measure.Spread == 0 && w.Amount.Number > 0
}

// finest finds the coarsest step by which an amount may be weighed, both ways by half of it.
func (m *maker) finest(ctx context.Context, s *bands, now reading, w Weighed) (Step, error) {
	steps := limits().steps
	var failed error
	var bound string
	off := func(i int) bool { // whether a step is too coarse
		half := steps[i] / 2
		if half > limits().share*w.Amount.Base() {
			bound = ""
			return true
		}
		for _, sign := range []float64{-1, 1} {
			name, out, err := m.leaves(ctx, s, now, w, sign*half)
			if err != nil {
				failed = err
			}
			if out {
				bound = name
				return true
			}
		}
		return false
	}
	coarse := sort.Search(len(steps), func(i int) bool { return failed != nil || off(i) })
	if failed != nil || coarse == 0 {
		return Step{Bound: bound}, failed
	}
	return Step{Base: steps[coarse-1], Bound: bound}, nil
}

// leaves tells which band a serving leaves if an amount is off by so much.
func (m *maker) leaves(ctx context.Context, s *bands, now reading, w Weighed, off float64) (string, bool, error) {
	changed := w.Amount
	changed.Number += off / changed.Measure.Factor
	a, err := m.Central.Run(ctx, amount.Amounts{w.Path: times(changed, w.file)}, s.want)
	if fail.ExitCode(err) == fail.Wrong {
		return "", true, nil // a step cannot be done with it
	}
	if err != nil {
		return "", false, err
	}
	name, out := s.leaves(s.read(a), now, 0)
	return name, out, nil
}

// inside finds the share of servings that stay in every band if only hands vary: what is written with
// a ±, the shot and the melt, and what the scale does not show.
func (m *maker) inside(ctx context.Context, s *bands) error {
	if len(s.list) == 0 {
		return nil
	}
	written, err := m.Hands.Run(ctx, nil, s.want)
	if err != nil {
		return err
	}
	a, err := m.Hands.Run(ctx, m.hands(), s.want)
	if err != nil {
		return err
	}
	r, was, out := s.read(a), s.read(written), &m.out.Precision
	left := map[string]int{}
	n, stay := s.drawn(r), 0
	for d := 1; d < n; d++ {
		name, leaves := s.leaves(r, was, d)
		if !leaves {
			stay++
			continue
		}
		if left[name]++; left[name] > left[out.First] {
			out.First = name
		}
	}
	if out.Draws = n - 1; out.Draws > 0 {
		out.Inside = float64(stay) / float64(out.Draws)
	}
	return nil
}

// hands gives the amounts as the card writes them, each with the spread that it has in the batch: a
// pot that is made at once is weighed once, a glass by itself. What the scale does not show may be
// anything down to nothing.
func (m *maker) hands() amount.Amounts {
	other, written := amount.Amounts{}, m.Central.Written()
	for _, w := range m.out.all() {
		a, ok := written[w.Path]
		if !ok || !w.measured() || a.Half > 0 || a.Measure.Spread > 0 {
			continue
		}
		a.Number = w.Rounded.Number * w.file
		a.Half = min(m.step(w.Amount)/2/a.Measure.Factor*w.file, a.Number)
		if a.Half > 0 {
			other[w.Path] = a
		}
	}
	return other
}
