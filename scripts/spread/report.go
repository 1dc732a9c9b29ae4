package main

import (
	"bytes"
	"fmt"
	"io"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// try is a figure that a table prints beside the interval that the core table has without
// that table.
type try struct {
	kind, class, table, code string
	id                       constituent.ID
	printed, half            float64 // the figure, and half of its last place
	estimate.Summary
}

func (t try) held() bool { return t.printed+t.half >= t.Low && t.printed-t.half <= t.High }

// halfWidth is half of the interval against the central value.
func (t try) halfWidth() float64 { return (t.High - t.Low) / 2 / t.Mean }

// score is the interval score against the central value (Gneiting and Raftery 2007, J. Am.
// Stat. Assoc. 102:359): its width, and what lies outside times 2/α. Less is better.
func (t try) score() float64 {
	const outside = 1 - (estimate.HighShare - estimate.LowShare)
	miss := max(t.Low-t.printed-t.half, t.printed-t.half-t.High, 0)
	return (t.High - t.Low + 2/outside*miss) / t.Mean
}

// fold tries the intervals on one table that they know nothing of.
func (l *library) fold(table *shelf) ([]try, error) {
	content, err := l.anywhere(table.format)
	if err != nil {
		return nil, err
	}
	without := food.AnywhereOf(embedded.Parse("anywhere.csv", bytes.NewReader(content)))
	class := classOf()
	var tries []try
	for _, b := range l.baskets {
		var intervals map[constituent.ID]estimate.Summary
		for _, e := range b.entries[1:] {
			if e.from != table || copied(b.entries[0], e) {
				continue
			}
			if intervals == nil {
				intervals = draw(without.Enter(b.core, nil))
			}
			for _, id := range compared() {
				x, here := b.entries[0].figures[id]
				y, there := e.figures[id]
				if !here || !there || taken(e, x, y) || e.from.doubts(id, x, y) {
					continue
				}
				tries = append(tries, try{kindOf(string(id)).name, class[b.group], table.format, b.code, id, y.amount, x.half + y.half, intervals[id]})
			}
		}
	}
	return tries, nil
}

// draw gives the intervals of a food, per 100 g.
func draw(profile *food.Profile) map[constituent.ID]estimate.Summary {
	const columnLength = 1001 // the central value and a thousand draws
	columns := ledger.NewColumns([]*food.Profile{profile})
	perGram := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: columnLength}, columns).PerGram(profile)
	all := map[constituent.ID]estimate.Summary{}
	for _, id := range compared() {
		c := constituent.Must(id)
		sum := make([]float64, columnLength)
		for _, at := range columns.Below(id) {
			for i, x := range perGram[at] {
				sum[i] += x * 100 * c.PerGram
			}
		}
		all[id] = estimate.Summarise(sum)
	}
	return all
}

// folds tries the intervals on each table in turn; those that are kept back come last.
func (l *library) folds() (inTurn, keptBack []try, err error) {
	for _, s := range l.others {
		tries, err := l.fold(s)
		if err != nil {
			return nil, nil, err
		}
		if s.keptBack {
			keptBack = append(keptBack, tries...)
		} else {
			inTurn = append(inTurn, tries...)
		}
	}
	return inTurn, keptBack, nil
}

// report prints how far the intervals hold what they know nothing of.
func (l *library) report(w io.Writer) error {
	inTurn, keptBack, err := l.folds()
	if err != nil {
		return err
	}
	fmt.Fprintln(w, "each table in turn left out:")
	print(w, inTurn)
	fmt.Fprintln(w, "\nkept back:")
	print(w, keptBack)
	fmt.Fprintln(w, "\nnot held:")
	misses(w, inTurn)
	misses(w, keptBack)
	return nil
}

// misses prints what was not held.
func misses(w io.Writer, tries []try) {
	for _, t := range tries {
		if !t.held() {
			fmt.Fprintf(w, "%s %s %s/%s: %.3g (%.3g to %.3g), %s %.3g\n", t.code, t.id, t.kind, t.class, t.Mean, t.Low, t.High, t.table, t.printed)
		}
	}
}

// print prints tries by table, kind, and constituent and class.
func print(w io.Writer, tries []try) {
	for _, by := range []func(try) string{
		func(t try) string { return t.table },
		func(t try) string { return t.kind },
		func(t try) string { return t.kind + " / " + t.class },
		func(t try) string { return string(t.id) },
		func(t try) string { return string(t.id) + " / " + t.class },
	} {
		fmt.Fprintf(w, "\n%-34s %5s %6s %10s %6s\n", "", "n", "held %", "± middle %", "score")
		groups, names := grouped(tries, by)
		for _, name := range names {
			in := groups[name]
			if len(in) < leastCompared {
				continue
			}
			fmt.Fprintf(w, "%-34s %5d %6.1f %10.0f %6.2f\n", name, len(in), 100*heldOf(in), 100*median(each(in, try.halfWidth)), mean(each(in, try.score)))
		}
	}
}

func grouped(tries []try, by func(try) string) (groups map[string][]try, names []string) {
	groups = map[string][]try{}
	for _, t := range tries {
		name := by(t)
		if groups[name] == nil {
			names = append(names, name)
		}
		groups[name] = append(groups[name], t)
	}
	slices.Sort(names)
	return groups, names
}

func heldOf(tries []try) float64 {
	n := 0.0
	for _, t := range tries {
		if t.held() {
			n++
		}
	}
	return n / float64(len(tries))
}

func each(tries []try, of func(try) float64) []float64 {
	x := make([]float64, len(tries))
	for i, t := range tries {
		x[i] = of(t)
	}
	return x
}

func mean(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v
	}
	return sum / float64(len(x))
}
