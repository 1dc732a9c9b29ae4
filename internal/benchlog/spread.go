package benchlog

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"sipsum/internal/estimate"
)

// Latest sorts lines by when they were read, those of one moment as they stand in the file.
func Latest(lines []Line) []Line {
	sorted := slices.Clone(lines)
	slices.SortStableFunc(sorted, func(a, b Line) int {
		switch {
		case a.When < b.When:
			return -1
		case a.When > b.When:
			return 1
		}
		return 0
	})
	return sorted
}

// Spread is how much the lots of a bar differ.
type Spread struct {
	Lots     int
	Readings int     // of all lots
	Mean     float64 // of the latest reading of each lot
	SD       float64 // between lots
	Next     float64 // standard deviation of the next lot around Mean, widened for few
}

// SpreadOf gives the spread of lots by the latest reading of each; ok is false with fewer than two lots.
func SpreadOf(latest map[string]float64, readings int) (s Spread, ok bool) {
	var list []float64
	for _, x := range latest {
		list = append(list, x)
	}
	slices.Sort(list) // a sum in whatever order a map has it would differ by rounding
	s = Spread{Lots: len(list), Readings: readings}
	if s.Lots < 2 {
		return s, false
	}
	s.Mean, s.SD = stat.MeanStdDev(list, nil)
	n := float64(s.Lots)
	s.Next = s.SD * math.Sqrt(1+1/n) * estimate.Student(n-1)
	return s, true
}
