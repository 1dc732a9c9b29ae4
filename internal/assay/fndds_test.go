package assay_test

import (
	"encoding/csv"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// The Food and Nutrient Database for Dietary Studies 2017-2018 (US Department
// of Agriculture, Agricultural Research Service, Food Surveys Research Group)
// prints both its recipes and what its authors calculated from them: an oracle
// for everything that mixes, retains and boils down.

// oracleColumns are the columns of the nutrient file that a recipe is judged by
// or that its ingredients need, and the decimals printed (read off the file).
var oracleColumns = []struct {
	id       constituent.ID
	head     string
	decimals int
	judged   bool
}{
	{constituent.EnergyKcal, "Energy (kcal)", 0, true},
	{constituent.Protein, "Protein (g)", 2, true},
	{constituent.Carbohydrate, "Carbohydrate (g)", 2, true},
	{constituent.Sugar, "Sugars, total\n(g)", 2, true},
	{constituent.Fibre, "Fiber, total dietary (g)", 1, false},
	{constituent.Fat, "Total Fat (g)", 2, true},
	{constituent.Saturates, "Fatty acids, total saturated (g)", 3, true},
	{"FAMS", "Fatty acids, total monounsaturated (g)", 3, false},
	{"FAPU", "Fatty acids, total polyunsaturated (g)", 3, false},
	{"CA", "Calcium (mg)", 0, true},
	{"P", "Phosphorus (mg)", 0, true},
	{"K", "Potassium (mg)", 0, true},
	{constituent.Sodium, "Sodium (mg)", 0, true},
	{constituent.Caffeine, "Caffeine (mg)", 0, true},
	{"THEBRN", "Theobromine (mg)", 0, true},
	{constituent.Alcohol, "Alcohol (g)", 1, true},
	{constituent.Water, "Water\n(g)", 2, true},
}

// dish is a recipe of the oracle.
type dish struct {
	code, name  string
	ingredients []oracleLine
	moisture    float64 // change of the total weight in per cent
}

type oracleLine struct {
	code, description, retention string
	grams                        float64
}

// beverage reports whether the code is of coffee, tea, soft and alcoholic
// drinks (921, 923 to 925, 93) or of flavoured milk drinks (115110 to 115449).
func (d dish) beverage() bool {
	for _, range_ := range [][2]string{{"92100000", "92199999"}, {"92300000", "92599999"}, {"93000000", "93999999"}, {"11511000", "11544999"}} {
		if d.code >= range_[0] && d.code <= range_[1] {
			return true
		}
	}
	return false
}

func (d dish) weight() float64 {
	sum := 0.0
	for _, in := range d.ingredients {
		sum += in.grams
	}
	return sum
}

// readDishes reads a file of ingredients: one row an ingredient. A recipe whose
// moisture change is empty is left out.
func readDishes(t testing.TB, path string) []dish {
	t.Helper()
	file, err := os.Open(path)
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	var dishes []dish
	for _, row := range rows[1:] {
		if row[9] == "" {
			continue
		}
		if len(dishes) == 0 || dishes[len(dishes)-1].code != row[0] {
			dishes = append(dishes, dish{code: row[0], name: row[1], moisture: mustFloat(t, row[9])})
		}
		d := &dishes[len(dishes)-1]
		d.ingredients = append(d.ingredients, oracleLine{row[5], row[6], row[8], mustFloat(t, row[7])})
	}
	return dishes
}

func mustFloat(t testing.TB, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return x
}

// figures are what a food has in 100 g, in the vocabulary's units.
type figures map[constituent.ID]float64

// readFigures reads a file of nutrient values by food code.
func readFigures(t testing.TB, path string) map[string]figures {
	t.Helper()
	file, err := os.Open(path)
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	all := map[string]figures{}
	for _, row := range rows[1:] {
		f := figures{}
		for _, c := range oracleColumns {
			at := slices.Index(rows[0], c.head)
			require.GreaterOrEqual(t, at, 0, c.head)
			if row[at] != "" {
				f[c.id] = mustFloat(t, row[at])
			}
		}
		all[row[0]] = f
	}
	return all
}

// food makes a food of printed figures.
func (f figures) food(id food.ID, name string) *food.Food {
	out := &food.Food{
		ID: id, Names: []food.Name{{Language: "en", Text: name}}, Edible: food.None,
		Density: food.Density{GramsPerMl: food.None, SD: food.None},
	}
	for _, c := range oracleColumns {
		if x, ok := f[c.id]; ok {
			out.Values = append(out.Values, food.Value{
				Constituent: c.id, Amount: x, SD: food.None, Low: food.None, High: food.None, Limit: food.None,
				State: estimate.Calculated, Source: id.Table, Ref: id.Code,
			})
		}
	}
	return out
}

// oracle is recipes, what was published of them, and the foods they are made
// of.
type oracle struct {
	dishes    []dish
	published map[string]figures
	foods     assaytest.Library
	alone     map[string]string // ingredient code → the food that is this ingredient alone
}

// newOracle finds the foods that consist of one ingredient as it is.
func newOracle(dishes []dish, published map[string]figures, foods assaytest.Library) *oracle {
	o := &oracle{dishes: dishes, published: published, foods: foods, alone: map[string]string{}}
	for _, d := range dishes {
		o.foods[food.ID{Table: "fndds", Code: d.code}] = published[d.code].food(food.ID{Table: "fndds", Code: d.code}, d.name)
		if len(d.ingredients) != 1 {
			continue
		}
		in := d.ingredients[0]
		if _, taken := o.alone[in.code]; !taken && in.retention == "0" && d.moisture == 0 {
			o.alone[in.code] = d.code
		}
	}
	return o
}

// food gives the food to take for an ingredient; ok is false if no table has
// it.
func (o *oracle) food(code string) (id food.ID, ok bool) {
	const foodDigits = 8
	switch alone, found := o.alone[code]; {
	case found:
		id = food.ID{Table: "fndds", Code: alone}
	case len(code) == foodDigits:
		id = food.ID{Table: "fndds", Code: code} // a recipe within a recipe
	default:
		id = food.ID{Table: "sr", Code: fmt.Sprintf("%05s", code)}
	}
	_, ok = o.foods[id]
	return id, ok
}

// drinkFile writes a recipe as a drink file: what is heated by a retention code
// is a component, and the whole takes up water or loses it.
func (o *oracle) drinkFile(d dish) (text string, ok bool) {
	var heated, pot strings.Builder
	for i, in := range d.ingredients {
		id, ok := o.food(in.code)
		if !ok {
			return "", false
		}
		if in.retention == "0" {
			fmt.Fprintf(&pot, "      - %s g %s\n", plainNumber(in.grams), id)
			continue
		}
		fmt.Fprintf(&heated, "  heated %d:\n    ingredients: [%s g %s]\n    steps: [heat: {code: %q}]\n", i, plainNumber(in.grams), id, in.retention)
		fmt.Fprintf(&pot, "      - %s g heated %d\n", plainNumber(in.grams), i)
	}
	steps := ""
	switch change := d.weight() * d.moisture / 100; {
	case change > 0:
		steps = fmt.Sprintf("    steps: [add: [%s g own:water]]\n", plainNumber(change))
	case change < 0:
		steps = fmt.Sprintf("    steps: [reduce: {by: %s %%}]\n", plainNumber(-d.moisture))
	}
	return fmt.Sprintf("drink: %q\nserves: 1\nfoods:\n  water: {name: \"Water\", per: 100 g, values: {WATER: 100 g}, source: \"by formula\"}\n"+
		"components:\n%s  dish:\n    ingredients:\n%s%sbuild: [100 g dish]\n", "recipe "+d.code, heated.String(), pot.String(), steps), true
}

func plainNumber(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
