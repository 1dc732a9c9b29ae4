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

// A total that was measured to 5 % stays so, although each of its parts varies by
// 30 %; and the parts still vary.
func TestDrawsOfPartsKeepTheSpreadOfTheirTotal(t *testing.T) {
	f := &food.Food{ID: food.ID{Table: "own", Code: "melon"}, Edible: food.None}
	for _, v := range []struct {
		id         constituent.ID
		amount, sd float64
	}{{"WATER", 90, 0}, {"GLUS", 2, 0.6}, {"FRUS", 4, 1.2}, {"SUCS", 2, 0.6}, {"SUGAR", 8, 0.4}, {"PROCNT", 2, 0}} {
		f.Values = append(f.Values, food.Value{
			Constituent: v.id, Amount: v.amount, SD: v.sd, Low: food.None, High: food.None, Limit: food.None, State: estimate.Measured,
		})
	}
	const draws = 4000
	p := food.Enter(f, nil)
	columns := ledger.NewColumns([]*food.Profile{p})
	cells := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: draws + 1}, columns).PerGram(p)
	sugars := make([]float64, draws+1)
	for _, at := range columns.Below(constituent.Sugar) {
		for i, x := range cells[at] {
			sugars[i] += x
		}
	}
	fructose := cells[columns.At("FRUS")]
	assert.InDelta(t, 0.08, sugars[0], 1e-12)
	assert.InDelta(t, 0.05, stat.StdDev(sugars[1:], nil)/stat.Mean(sugars[1:], nil), 0.005)
	assert.Greater(t, stat.StdDev(fructose[1:], nil)/stat.Mean(fructose[1:], nil), 0.15)
}

// What was looked for and not found stays below its limit, however sweet a draw is.
func TestATotalLiftsNothingOverItsLimit(t *testing.T) {
	f := &food.Food{ID: food.ID{Table: "own", Code: "milk"}, Edible: food.None}
	for id, v := range map[constituent.ID][2]float64{"WATER": {90, 0}, "LACS": {8, 2}, "SUGAR": {8, 2}, "PROCNT": {2, 0}} {
		f.Values = append(f.Values, food.Value{
			Constituent: id, Amount: v[0], SD: v[1], Low: food.None, High: food.None, Limit: food.None, State: estimate.Measured,
		})
	}
	f.Values = append(f.Values, food.Value{
		Constituent: "GALS", Amount: food.None, SD: food.None, Low: food.None, High: food.None, Limit: 0.1, State: estimate.Below,
	})
	p := food.Enter(f, nil)
	p.Totals = []food.Total{{Constituent: constituent.Must(constituent.Sugar), Cell: food.Cell{Known: true, Amount: 0.08, SD: 0.03, Bound: food.None, Row: "own:milk"}}}
	columns := ledger.NewColumns([]*food.Profile{p})
	for _, x := range ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: 2001}, columns).PerGram(p)[columns.At("GALS")] {
		assert.LessOrEqual(t, x, 0.00105, "but for the closing of the mass")
	}
}
