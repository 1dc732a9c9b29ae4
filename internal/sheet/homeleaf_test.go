package sheet_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/batch"
	"sipsum/internal/composition"
	"sipsum/internal/estimate"
	"sipsum/internal/sheet"
)

// What is printed the same did not move, nor did what stays in its interval because less of it is known.
func TestWhatPrintsTheSameDidNotMove(t *testing.T) {
	was := composition.Result{Summary: estimate.Summary{Mean: 133.7, Low: 133.4, High: 134.0}, Unit: "ml"}
	for mean, moved := range map[float64]bool{134.04: false, 136: true, 133: true} {
		now := composition.Result{Summary: estimate.Summary{Mean: mean, Low: mean - 1, High: mean + 1}, Unit: "ml"}
		assert.Equal(t, moved, sheet.ShiftMoved(batch.Shift{Before: was, Home: now, Moved: true}), mean)
	}
	known := composition.Result{Summary: estimate.Summary{Mean: 10.5, Low: 4.7, High: 18}, Unit: "mg"}
	least := composition.Result{Summary: estimate.Summary{Mean: 9.4, Low: 4.4, High: 17}, Unit: "mg", Partial: true}
	assert.False(t, sheet.ShiftMoved(batch.Shift{Before: known, Home: least, Moved: true}))
	assert.True(t, sheet.ShiftMoved(batch.Shift{Before: known, Home: composition.Result{Unknown: true}, Moved: true}))
}
