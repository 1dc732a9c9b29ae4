package ledger_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// What a class default says of two foods is half the same guess (design: class defaults of
// one constituent correlate 0.5 across foods); what somebody measured of each is not.
func TestClassDefaultsAreGuessedTogether(t *testing.T) {
	sour := func(code string, sd float64) *food.Profile {
		f := &food.Food{ID: food.ID{Table: "own", Code: code}, Edible: food.None}
		for id, v := range map[constituent.ID][2]float64{"WATER": {99, 0}, "CITAC": {1, sd}} {
			f.Values = append(f.Values, food.Value{
				Constituent: id, Amount: v[0], SD: v[1], Low: food.None, High: food.None, Limit: food.None, State: estimate.Measured,
			})
		}
		return food.Enter(f, nil)
	}
	const draws = 4000
	correlation := func(a, b *food.Profile) float64 {
		columns := ledger.NewColumns([]*food.Profile{a, b})
		drawer := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: draws + 1}, columns)
		at := columns.At("CITAC")
		return stat.Correlation(drawer.PerGram(a)[at][1:], drawer.PerGram(b)[at][1:], nil)
	}
	assert.InDelta(t, 0.5, correlation(sour("one", food.None), sour("other", food.None)), 0.06)
	assert.InDelta(t, 0, correlation(sour("one", 0.2), sour("other", 0.2)), 0.06)
}
