package food_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// The juice of a sour cherry with 18 mg of citric and 1,850 mg of malic acid in 100 g (the means in J Food Qual (2020) 7236534, and
// the sources beside it in data/core/literature.csv) is not sour by the first of them.
func TestForemost(t *testing.T) {
	value := func(id constituent.ID, amount float64) food.Value {
		return food.Value{Constituent: id, Amount: amount, Limit: food.None}
	}
	trace := food.Value{Constituent: "CITAC", Amount: food.None, Limit: food.None, State: estimate.Trace}
	zero := value("TARAC", 0)
	for _, c := range []struct {
		why    string
		values []food.Value
		of     constituent.ID
		parts  int
		want   []constituent.ID
	}{
		{"the part with the most first", []food.Value{value("CITAC", 18), value("MALAC", 1850), value("QUINAC", 9)}, "OA", 2, []constituent.ID{"MALAC", "CITAC"}},
		{"a total before its parts", []food.Value{value("CITAC", 18), value("MALAC", 1850), value("OA", 1.9)}, "OA", 1, []constituent.ID{"OA", "MALAC"}},
		{"what was titrated where there is no total", []food.Value{value("titratable", 1.4), value("QUINAC", 9)}, "OA", 2, []constituent.ID{"titratable", "QUINAC"}},
		{"what was titrated is no sugar", []food.Value{value("titratable", 1.4), value("GLUS", 3), value("FRUS", 4)}, "SUGAR", 1, []constituent.ID{"FRUS"}},
		{"milligrams beside grams", []food.Value{value("SORTL", 900), value("CITAC", 1)}, "CHOCDF", 2, []constituent.ID{"SORTL", "CITAC"}},
		{"a trace and a zero are something", []food.Value{trace, zero}, "OA", 2, []constituent.ID{"CITAC"}},
		{"nothing", []food.Value{value("WATER", 90)}, "OA", 2, nil},
		{"a leaf is its own total", []food.Value{value("CAFFN", 40)}, "CAFFN", 0, []constituent.ID{"CAFFN"}},
	} {
		f := food.Food{Values: c.values}
		var got []constituent.ID
		for _, v := range f.Foremost(c.of, c.parts) {
			got = append(got, v.Constituent)
		}
		assert.Equal(t, c.want, got, c.why)
	}
}
