package recipe_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/food"
	"sipsum/internal/unit"
)

// pantry has foods as tables describe them: portions of SR28's WEIGHT (02047 table salt, 02065
// spearmint, 09150 lemon, 09160 lime), and none of them a density.
func pantry() assaytest.Library {
	lib := assaytest.Library{}
	for code, portions := range map[string][]food.Portion{
		"salt":  {{Name: "dash", Grams: 0.4, SD: food.None}, {Name: "tsp", Grams: 6, SD: food.None}, {Name: "cup", Grams: 292, SD: food.None}},
		"mint":  {{Name: "leaves", Grams: 0.15, SD: 0.01}, {Name: "tbsp", Grams: 5.7, SD: food.None}},
		"lemon": {{Name: `fruit (2-1/8" dia)`, Grams: 58, SD: food.None}, {Name: `fruit (2-3/8" dia)`, Grams: 84, SD: food.None}, {Name: "wedge or slice", Grams: 7, SD: food.None}},
		"lime":  {{Name: `fruit (2" dia)`, Grams: 67, SD: food.None}},
		"grit":  nil,
	} {
		id := food.ID{Table: "t", Code: code}
		lib[id] = &food.Food{ID: id, Names: []food.Name{{Text: code}}, Edible: food.None, Density: food.Density{GramsPerMl: food.None, SD: food.None}, Portions: portions}
	}
	return lib
}

func TestAFoodIsCountedByTheWordOfItsTable(t *testing.T) {
	for line, want := range map[string][3]float64{ // how many, what one weighs, and its sd
		"2 leaves T:mint":    {2, 0.15, 0.01},
		"1 leaf of t:mint":   {1, 0.15, 0.01},
		"1/2 t:lime":         {0.5, 67, food.None},
		"½ t:lime":           {0.5, 67, food.None},
		"3 pieces t:lime":    {3, 67, food.None},
		"1 fruit t:lime":     {1, 67, food.None},
		"2 wedges t:lemon":   {2, 7, food.None},
		"1 1/2 fruit t:lime": {1.5, 67, food.None},
	} {
		r, err := find(t, pantry(), "drink: x\nserves: 1\nbuild: [\""+line+"\"]\n")
		require.NoError(t, err, line)
		in := r.Lines[r.Drink.Build[0].Path]
		assert.InDelta(t, want[0], in.Line.Count, 1e-12, line)
		assert.InDelta(t, want[1], in.Grams, 1e-12, line)
		assert.Equal(t, food.Stated(want[2]), food.Stated(in.GramsSD), line)
	}
}

// A spoon or a cup of what has no density weighs what the table says of it.
func TestASpoonOfWhatHasNoDensity(t *testing.T) {
	for line, grams := range map[string]float64{
		"1 tsp t:salt":   6,
		"1 dash t:salt":  0.4,
		"1 cup t:salt":   292,
		"2 tbsp t:salt":  2 * 14.7868 / 236.588 * 292, // the largest is weighed best; measures of NIST Handbook 44
		"1 pinch t:salt": 0.308 / 236.588 * 292,
		"1 tbsp t:mint":  5.7,
	} {
		r, err := find(t, pantry(), "drink: x\nserves: 1\nbuild: ["+line+"]\n")
		require.NoError(t, err, line)
		in := r.Lines[r.Drink.Build[0].Path]
		assert.InDelta(t, grams, in.Line.Amount.Base()*in.Grams, 1e-9, line)
		assert.InDelta(t, unit.Packing(), in.GramsSD/in.Grams, 1e-9, line)
	}
}

func TestWhatCannotBeCountedShowsTheLine(t *testing.T) {
	for line, want := range map[string]string{
		"1/2 t:lemon":     `t:lemon has more than one piece (write grams, or: - {food: "t:lemon", portion: "fruit (2-1/8\" dia)", count: 0.5}, or: - {food: "t:lemon", portion: "fruit (2-3/8\" dia)", count: 0.5})`,
		"2 leaves t:grit": "no table says what one leaf of t:grit weighs (write grams)",
		"2 leaves t:salt": `no table says what one leaf of t:salt weighs (write grams, or: - {food: "t:salt", portion: "dash", count: 2}, or:`,
		"1 cup t:lime":    `cup is a volume, but t:lime has no density (write grams, or: - {food: "t:lime", portion: "fruit (2\" dia)", count: 1}`,
	} {
		_, err := find(t, pantry(), "drink: x\nserves: 1\nbuild: ["+line+"]\n")
		assert.ErrorContains(t, err, want, line)
	}
}

// A density that is not there is told once.
func TestAMissingDensityIsToldOnce(t *testing.T) {
	const own = "drink: x\nserves: 1\nfoods:\n  oat: {name: oat, per: 100 %s, values: {FAT: 1 g}, source: pack}\nbuild: [20 ml own:oat]\n"
	_, err := find(t, pantry(), fmt.Sprintf(own, "ml"))
	assert.EqualError(t, err, `test:4:3: own food "oat" states its values per volume, but no density (add density: 1.03 g/ml)`)
	_, err = find(t, pantry(), fmt.Sprintf(own, "g"))
	assert.EqualError(t, err, "test:5:9: ml is a volume, but own:oat has no density (add density: 1.03 g/ml to it under foods:, or write grams)")
}

// 1 kcal is 4.184 kJ (CFIA Guide 6.4.1.1): whichever the pack prints, by word or by tagname.
func TestEnergyInKilocalories(t *testing.T) {
	for _, figure := range []string{"energy: 47 kcal", "ENERC: 47 kcal", "ENERC: 47 KCAL"} {
		r, err := find(t, pantry(), "drink: x\nserves: 1\nfoods:\n  oat: {name: oat, per: 100 g, values: {"+figure+"}, source: pack}\nbuild: [20 g own:oat]\n")
		require.NoError(t, err, figure)
		v, ok := r.Lines["build/own:oat"].Profile.Food.Value("ENERC_KCAL")
		require.True(t, ok, figure)
		assert.InDelta(t, 47, v.Amount, 1e-9, figure)
	}
}
