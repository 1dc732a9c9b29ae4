package burette

import (
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/estimate"
)

// Together gives the acids of which the curve tells the sum and not the parts, by place of
// Liquid.Acids: those whose draws are correlated below the row of data/burette.csv, in the unit in
// which they are given.
func Together(acids [][]float64) [][]int {
	limit := rowOf("apart").value
	group := make([]int, len(acids))
	for i := range group {
		group[i] = i
	}
	for i := range acids {
		for j := range i {
			if len(acids[i])-1 < estimate.FewestDraws || stat.Correlation(acids[i][1:], acids[j][1:], nil) > limit || group[i] == group[j] {
				continue
			}
			from, to := max(group[i], group[j]), min(group[i], group[j])
			for k, g := range group {
				if g == from {
					group[k] = to
				}
			}
		}
	}
	var list [][]int
	for first := range group {
		var of []int
		for k, g := range group {
			if g == first {
				of = append(of, k)
			}
		}
		if len(of) > 1 {
			list = append(list, of)
		}
	}
	return list
}
