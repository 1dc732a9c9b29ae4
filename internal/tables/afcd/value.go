package afcd

import (
	"strings"

	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// What a printed zero means, a column of data/maps/afcd_columns.csv.
const (
	zeroBelow      = "below"      // too little to print
	zeroCalculated = "calculated" // a sum that is zero
	zeroFatty      = "fatty"      // too little to print, if the food's fat has fatty acids at all
)

// The columns that tell whether the fatty acids of a food are known.
const fatColumn = "fat-total"

var fattyTotals = []string{
	"total-saturated-fatty-acids-equated", "total-monounsaturated-fatty-acids-equated", "total-polyunsaturated-fatty-acids-equated",
}

// unknownFat recognises a food that has fat but, as printed, no fatty acid: the
// publisher fills these columns for every food, and a fat without any cannot be.
func unknownFat(printed map[string]float64) bool {
	for _, total := range fattyTotals {
		if x, there := printed[total]; !there || x > 0 {
			return false
		}
	}
	return printed[fatColumn] > 0
}

// largest is more than any unit of the table prints in 100 g.
const largest = 1e9

// value makes a value of a printed figure.
func (c column) value(tableID string, x float64, group string) food.Value {
	v := table.NewValue(c.ID(tableID), work, c.Column)
	switch {
	case x > 0:
		v.State, v.Amount = estimate.Calculated, x*c.Factor
	case c.zero == zeroCalculated:
		v.State, v.Amount = estimate.Calculated, 0
	case !c.belongs(group):
		v.State, v.Amount = estimate.Assumed, 0
	default:
		v.State, v.Limit = estimate.Below, c.half()*c.Factor
	}
	return v
}

// belongs tells whether foods of a group may hold some of the constituent. Where
// they do not, nobody looked, and a printed zero is assumed.
func (c column) belongs(group string) bool {
	if group == "" || len(c.foundIn) == 0 {
		return true
	}
	only := false
	for _, g := range c.foundIn {
		outside, not := strings.CutPrefix(g, "-")
		switch {
		case not && strings.HasPrefix(group, outside):
			return false
		case !not && strings.HasPrefix(group, g):
			return true
		}
		only = only || !not
	}
	return !only
}
