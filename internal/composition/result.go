package composition

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// Result is one figure with its interval.
type Result struct {
	estimate.Summary
	Unit       string
	State      estimate.State
	By         string  // food.ByKin where nobody measured a part of at least 5 %; else empty
	Coverage   float64 // known / (known + bounds); NaN where an unknown part has no bound
	WithBounds float64 // mean plus the most that the unknown parts could be; NaN where one has no bound
	UpTo       float64 // the 95 % end with the unknown parts at their most; NaN where one has no bound, or without intervals
	Unknown    bool    // nothing at all is known: Mean, SD, Low and High mean nothing
	Partial    bool    // something is unknown: the mean is of the known part

	Draws []float64 // behind Summary, of the known part; nil unless they are asked for
}

// Known makes a result without unknown parts.
func Known(s estimate.Summary, unit string) Result {
	return Result{Summary: s, Unit: unit, State: estimate.Calculated, Coverage: 1, WithBounds: s.Mean, UpTo: max(s.High, s.Mean)}
}

// Figure is a constituent and its result.
type Figure struct {
	Constituent *constituent.Constituent
	Result
	Contributions []Contribution // of servings only
	Share         Share          // of components only: of the serving's total
}

// Share is a part of a known total. All are NaN where the total is 0.
type Share struct {
	Mean, Low, High float64
	Least           float64 // the low end with all that others do not know at its most; NaN where nothing bounds that; 0: nobody asked
}

// Composition is a list of figures in vocabulary order.
type Composition []Figure

// Find gives the figure of a constituent.
func (c Composition) Find(id constituent.ID) (Figure, bool) {
	for _, f := range c {
		if f.Constituent.ID == id {
			return f, true
		}
	}
	return Figure{}, false
}

// Contribution is what one row brings to a constituent.
type Contribution struct {
	Path       []string // components it came through; empty if poured directly
	Food       string
	Mean       float64
	Share      Share
	State      estimate.State
	Unknown    bool    // this row's amount is unknown
	Bound      float64 // unknown: the most it could be; NaN if nothing is known
	SourceNote string  // how the food's figure was derived, assumed or bounded
	By         string  // whose figure it is where nobody measured this food's own (food.Cell.By)
	Table      string  // of the row behind the figure: the lender's where it was borrowed
	Source     string  // ids of that table's works, separated by spaces
}

// ByKin gives the contributions of foods that have the constituent by their kin.
func (f Figure) ByKin() []Contribution {
	var list []Contribution
	for _, c := range f.Contributions {
		if c.By == food.ByKin && c.Mean > 0 {
			list = append(list, c)
		}
	}
	return list
}

// coverage gives known / (known + bound).
func coverage(known, bound float64) float64 {
	switch {
	case math.IsNaN(bound):
		return math.NaN()
	case bound == 0:
		return 1
	}
	return known / (known + bound)
}
