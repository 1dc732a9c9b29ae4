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

// What is copied from one row is one figure, however often it stands there; a figure of a food's
// own is another, though it be the same number.
func TestCopiesAreOneFigure(t *testing.T) {
	of := func(code, source, ref string, amount float64) *food.Food {
		f := sr(code, code, "coffee bean", map[constituent.ID]float64{"K": amount})
		f.ID.Table, f.Values[0].Source, f.Values[0].Ref = "core", source, ref
		return f
	}
	medium, light, dark := of("medium", "paper", "Table 1", 2020), of("light", "borrowed paper", "medium", 2020), of("dark", "borrowed paper", "medium", 2020)
	other, agency, again := of("other", "paper", "Table 1", 2020), of("a", "sr28", "09150", 2020), of("b", "sr28", "09150", 2020)
	silent := sr("silent", "silent", "coffee bean", map[constituent.ID]float64{"CA": 1})
	for _, c := range []struct {
		foods  []*food.Food
		copied bool
		by     []string
	}{
		{[]*food.Food{light, dark}, true, []string{"borrowed", "borrowed"}},
		{[]*food.Food{medium, dark}, true, []string{"", "borrowed"}},
		{[]*food.Food{medium, other}, false, []string{"", ""}},
		{[]*food.Food{light, dark, other}, false, []string{"borrowed", "borrowed", ""}},
		{[]*food.Food{agency, again}, true, []string{"", ""}},
		{[]*food.Food{light, silent}, false, []string{"borrowed", ""}},
	} {
		for _, line := range food.Compare(c.foods) {
			if line.Constituent.ID != "K" {
				continue
			}
			assert.Equal(t, c.copied, line.Copied, "%s", c.foods[0].ID)
			assert.False(t, line.Disagree)
			for i, by := range c.by {
				assert.Equal(t, by, line.Cells[i].By)
			}
		}
	}
	cell := food.Enter(dark, nil).Cell("K")
	assert.Equal(t, food.Borrowed, cell.By)
	assert.Equal(t, food.Enter(medium, nil).Cell("K").Row, cell.Row, "drawn as one")
	assert.Empty(t, food.Enter(medium, nil).Cell("K").By)
	own := sr("own", "own", "coffee bean", map[constituent.ID]float64{"CA": 100})
	assert.Equal(t, food.Borrowed, food.Enter(own, medium).Cell("K").By, "a lender's figure is not the food's own either")
	assert.Empty(t, food.Enter(own, medium).Cell("CA").By)
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
