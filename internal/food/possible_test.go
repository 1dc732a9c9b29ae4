package food_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
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
