package food_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// Rows as published: the branded rows are from FoodData Central (fdcId), the sugar from the
// Standard Tables of Food Composition in Japan 2020; 902 kcal is USDA SR28's lard (04002).
func TestImpossible(t *testing.T) {
	cases := []struct {
		id       constituent.ID
		amount   float64
		rounding float64
		want     string
	}{
		{"FAT", 1900, 0.1, "fat of 1900 g in 100 g"},                        // 1721563
		{"ENERC_KCAL", 26000, 0.1, "energy in kcal of 26000 kcal in 100 g"}, // 1721563
		{"CHOCDF", 105.26, 0.1, ""},                                         // 1999331: a small serving, rounded
		{"CHOCDF", 105.26, 0.001, "carbohydrate, by difference of 105.26 g in 100 g"},
		{"CHOAVLM", 105.9, 0.001, ""}, // 03015: equivalents of another mass
		{"ENERC_KCAL", 902, 0.001, ""},
		{"CAFFN", 99_999, 0.001, ""},
		{"CAFFN", 150_000, 0.001, "caffeine of 150 g in 100 g"},
		{"VITA_IU", 1e6, 0.001, ""}, // no mass
		{"sr:999", 1e6, 0.001, ""},  // a column of the table's own
	}
	for _, c := range cases {
		v := food.Value{Constituent: c.id, Amount: c.amount, Limit: food.None}
		assert.Equal(t, c.want, food.Impossible(v, c.rounding), c.id)
		v.Amount, v.Limit = food.None, c.amount
		assert.Equal(t, c.want, food.Impossible(v, c.rounding), "%s as a limit", c.id)
	}
}

// A table weighs what stays when the gas has gone: champagne has some 11 g of it in a litre
// (Liger-Belair et al. 2010, 11.4 g/l), whatever the balance of the row or of its charges says,
// and no bottle holds more than 13 (data/limits.csv).
func TestABottleBoundsTheGasOfWhatIsSoldWithIt(t *testing.T) {
	sparkling := sr("s", "Mineral water, sparkling", "water", map[constituent.ID]float64{"WATER": 99.97, "NA": 1})
	sparkling.Values = append(sparkling.Values, food.Value{
		Constituent: "CO2", Amount: food.None, SD: food.None, Low: food.None, High: food.None, Limit: 0.015, State: estimate.Unknown, Source: "charges",
	})
	still := *sparkling
	still.Names = []food.Name{{Language: "en", Text: "Mineral water, still"}}
	assert.InDelta(t, 0.00015, food.Enter(&still, nil).Cell("CO2").Bound, 1e-9)
	for _, f := range []*food.Food{sparkling, sr("b", "Lager", "beer", map[constituent.ID]float64{"WATER": 92, "ALC": 4, "CHOCDF": 3.6, "PROCNT": 0.4})} {
		gas := food.Enter(f, nil).Cell("CO2")
		assert.False(t, gas.Known, f.Names[0].Text)
		assert.InDelta(t, 0.013, gas.Bound, 1e-9, f.Names[0].Text)
	}
}

// Water under 1 atm of carbon dioxide dissolves 3.41 g of it in a litre at 0 °C (Weiss 1974,
// 0.0776 mol/(l atm)), whatever the balance of a still liquid leaves. A powder may make gas of a salt.
func TestAnOpenLiquidHoldsLittleGas(t *testing.T) {
	for _, group := range []string{"water", "wine", "soft drink", "other", ""} {
		f := sr("x", "House", group, map[constituent.ID]float64{"WATER": 92})
		assert.InDelta(t, 0.0034, food.Enter(f, nil).Cell("CO2").Bound, 0.0001, group)
	}
	powder := sr("x", "Leavening", "other", map[constituent.ID]float64{"WATER": 5, "NA": 10600})
	assert.Greater(t, food.Enter(powder, nil).Cell("CO2").Bound, 0.2)
}

// Where nothing else bounds a total, its unknown parts may: each sugar of which a label says
// "less than 0.5 g" leaves that much for all of them.
func TestUnknownPartsBoundTheirTotal(t *testing.T) {
	f := &food.Food{ID: food.ID{Table: "own", Code: "x"}, Group: "other", Edible: food.None}
	f.Names = []food.Name{{Language: "en", Text: "Drops with a sweetener"}} // of which allulose is not taken to be missing
	parts := 0.0
	for _, part := range constituent.Sums().Children(constituent.Sugar) {
		if part.Kind != constituent.Rest {
			parts++
			f.Values = append(f.Values, food.Value{
				Constituent: part.ID, Amount: food.None, SD: food.None, Low: food.None, High: food.None, Limit: 0.5, State: estimate.Unknown, Source: "a label",
			})
		}
	}
	cell := food.Enter(f, nil).Cell(constituent.Sugar)
	assert.False(t, cell.Known)
	assert.InDelta(t, parts*0.005, cell.Bound, 1e-9)
	assert.Equal(t, "its unknown parts could be no more", cell.Why)
}
