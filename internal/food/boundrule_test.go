package food_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// A table that prints acids to 0.1 g/100 g prints none of quinic acid for pears, and a
// predominant 1.8 g for prunes (Australian Food Composition Database, Release 3): what it
// says of pears bounds every pear, but no prune and no dried pear.
func TestAKindOfFoodBoundsWhatNobodyMeasuredInOneOfIt(t *testing.T) {
	quinic := constituent.Must("QUINAC")
	for _, c := range []struct {
		name string
		less bool
	}{{"Pear, raw", true}, {"Pears, dried, sulphured", false}, {"Prune", false}, {"Peach, raw", false}} {
		f := sr("x", c.name, "fruit", map[constituent.ID]float64{"WATER": 80, "PROCNT": 0.5, "FAT": 0.1, "ASH": 0.4, "CHOCDF": 19, "FIBTG": 3, "SUGAR": 9})
		cell := food.Enter(f, nil).Cell("QUINAC")
		require.False(t, cell.Known, "%s: what is said of a kind is no figure of the food", c.name)
		most, source := food.LessInItsKind(f, quinic)
		assert.Equal(t, c.less, food.Stated(most), c.name)
		assert.Equal(t, c.less, source != "", c.name)
		if c.less {
			assert.InDelta(t, 50e-5, cell.Bound, 1e-12, "half of the last place of 0.1 g/100 g")
			assert.Contains(t, cell.Why, "foods of its kind hold less: Australian")
		} else {
			assert.Greater(t, cell.Bound, 50e-5, c.name)
		}
	}
}
