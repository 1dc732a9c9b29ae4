package food_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// compared sets two foods side by side that state one constituent each, with a deviation
// of their own.
func compared(t *testing.T, a, b, sd float64) food.Comparison {
	t.Helper()
	var foods []*food.Food
	for code, amount := range map[string]float64{"a": a, "b": b} {
		f := sr(code, code, "fruit", map[constituent.ID]float64{"SUCS": amount})
		stated(f, "SUCS", sd, 0)
		foods = append(foods, f)
	}
	list := food.Compare(foods)
	require.Len(t, list, 1, "what no food states is left out")
	return list[0]
}

// The difference of 5 ± 0.1 and b ± 0.1 has a deviation of 0.1414; three of them are 0.424.
func TestValuesThreeDeviationsApartDisagree(t *testing.T) {
	assert.False(t, compared(t, 5, 5.41, 0.1).Disagree)
	assert.True(t, compared(t, 5, 5.44, 0.1).Disagree)
	assert.True(t, compared(t, 5, 4.56, 0.1).Disagree)
	assert.Equal(t, 0.1, compared(t, 5, 5, 0.1).Cells[0].SD)
}

// A food that says nothing contradicts nobody, nor does one that says only a limit.
func TestSilenceDoesNotDisagree(t *testing.T) {
	says := sr("a", "a", "fruit", map[constituent.ID]float64{"SUCS": 5, "GLUS": 1})
	stated(says, "SUCS", 0.1, 0)
	silent := sr("b", "b", "fruit", map[constituent.ID]float64{"GLUS": 1})
	below := sr("c", "c", "fruit", map[constituent.ID]float64{"SUCS": 1})
	limited(below, 0.1, "SUCS")
	for _, foods := range [][]*food.Food{{says, silent}, {silent, says}, {says, below}, {below, says}} {
		for _, c := range food.Compare(foods) {
			assert.False(t, c.Disagree, c.Constituent.ID)
		}
	}
}
