package afcd_test

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/afcd"
	"sipsum/internal/tables/tablestest"
)

const (
	invented = "../../../testdata/tables/afcd"
	file     = "Release 2 - Nutrient file, invented.xlsx"
	solids   = "All solids & liquids per 100g"
	liquids  = "Liquids only per 100mL"
)

var none = math.NaN()

func TestInventedRelease(t *testing.T) {
	tablestest.Run(t, afcd.Format, invented, tablestest.Want{
		Columns: 290, Foods: 8, Values: 186, First: "F900001", Last: "F900008",
		Names: map[string]string{"F900007": "Wine, invented, red"},
		Spots: []tablestest.Spot{
			tablestest.At("F900001", "CITAC", estimate.Calculated, 5100, none, "Citric acid (g) 5.1"),
			tablestest.At("F900001", "QUINAC", estimate.Below, none, none, "Quinic acid (g) 0"),
			tablestest.At("F900001", "ALC", estimate.Assumed, 0, none, "Alcohol (g) 0 in a juice"),
			tablestest.At("F900001", "SUGAD", estimate.Calculated, 0, none, "Added sugars (g) 0"),
			tablestest.At("F900001", "FASAT", estimate.Unknown, none, none, "Total saturated fatty acids (g) 0 beside fat 0.2"),
			tablestest.At("F900001", "afcd:c18-1", estimate.Unknown, none, none, "C18:1 (g) 0 beside fat 0.2"),
			tablestest.At("F900002", "FATRN", estimate.Calculated, 0.11025, none, "Total trans fatty acids (mg) 110.25"),
			tablestest.At("F900002", "afcd:c18-1-share", estimate.Calculated, 22, none, "C18:1 (%T) 22"),
			tablestest.At("F900002", "GLUS", estimate.Below, none, none, "Glucose (g) 0"),
			tablestest.At("F900002", "MALAC", estimate.Assumed, 0, none, "Malic acid (g) 0 in milk"),
			tablestest.At("F900003", "CITAC", estimate.Assumed, 0, none, "Citric acid (g) 0 in water"),
			tablestest.At("F900003", "MG", estimate.Below, none, none, "Magnesium (mg) 0 in water"),
			tablestest.At("F900004", "ALC", estimate.Below, none, none, "Alcohol (g) 0 in vinegar"),
			tablestest.At("F900005", "afcd:alanine-per-n", estimate.Calculated, 270, none, "Alanine (mg/gN) 270"),
			tablestest.At("F900006", "GLYRL", estimate.Calculated, 200, none, "Glycerol (g) 0.2"),
			tablestest.At("F900006", "LACS", estimate.Below, none, none, "Lactose (g) 0 in a food without a group"),
			tablestest.At("F900007", "SORTL", estimate.Below, none, none, "Sorbitol (g) 0"),
		},
	})
	release := tablestest.Open(t, afcd.Format, invented)
	assert.Equal(t, "Release 2", release.Table.Edition)
	for path, ours := range map[string]bool{
		invented: true, filepath.Join(invented, file): true, filepath.Join(invented, "Food details, invented.xlsx"): false, filepath.Dir(invented): false, "nowhere": false,
	} {
		assert.Equal(t, ours, afcd.Format.Sniff(path), path)
	}
}

// A printed 0 of an acid is less than half of the last digit.
func TestLimitOfAZero(t *testing.T) {
	foods := tablestest.Foods(t, afcd.Format, invented)
	assert.InDelta(t, 50, tablestest.Value(t, foods["F900001"], "QUINAC").Limit, 1e-9)
	assert.InDelta(t, 0.5, tablestest.Value(t, foods["F900003"], "MG").Limit, 1e-9)
}

func TestFoodsAsWritten(t *testing.T) {
	foods := tablestest.Foods(t, afcd.Format, invented)
	juice, milk, wine := foods["F900001"], foods["F900002"], foods["F900007"]
	assert.Equal(t, "fruit juice", juice.Group)
	assert.Equal(t, "29201", wine.PublisherGroup, "a spreadsheet made 29201.00 of it")
	assert.Equal(t, "wine", wine.Group)
	assert.Equal(t, "other", foods["F900006"].Group)

	// The details state the juice's density; for wine and milk the two sheets give it.
	assert.Equal(t, food.Density{GramsPerMl: 1.05, SD: 0.005 / math.Sqrt(3), Source: "afcd: specific gravity 1.05"}, juice.Density)
	assert.InDelta(t, 0.99, wine.Density.GramsPerMl, 1e-12)
	assert.InDelta(t, 1.03, milk.Density.GramsPerMl, 1e-12)
	assert.GreaterOrEqual(t, milk.Density.SD, 0.005/math.Sqrt(3))
	assert.Less(t, milk.Density.SD, 0.004)
	assert.Contains(t, milk.Note, "Calcium (Ca) per 100 mL and per 100 g give another density (1 g/ml) than the other figures")
	assert.False(t, food.Stated(foods["F900004"].Density.GramsPerMl))
	assert.Contains(t, foods["F900004"].Note, "agree about no density")
	assert.False(t, food.Stated(foods["F900005"].Density.GramsPerMl), "every solid food has the specific gravity 0")

	assert.Equal(t, []food.Name{{Language: "en", Text: "Juice, invented, sour"}, {Language: "en", Text: "sour juice"}, {Language: "la", Text: "Malus inventa"}}, juice.Names)
	assert.Contains(t, juice.Note, "derivation: Analysed; nitrogen factor: 6.25; fat factor: 0.8; description: Pressed from fruit that does not exist.")
	assert.NotContains(t, foods["F900003"].Note, "factor", "recipes have the factor 0")
	assert.Equal(t, 0.8, foods["F900005"].Edible)
	require.Len(t, juice.Portions, 2)
	assert.Equal(t, "1 tablespoon", juice.Portions[0].Name)
	assert.Equal(t, 21.0, juice.Portions[0].Grams)
	assert.Equal(t, "recipe: 40 g Nut, invented, raw; 25 g Milk, invented, regular fat", foods["F900008"].Note)
}

// The nutrients are enough; what the other files say is then missing.
func TestNutrientsAlone(t *testing.T) {
	foods := tablestest.Foods(t, afcd.Format, filepath.Join(invented, file))
	assert.Len(t, foods, 8)
	juice := foods["F900001"]
	assert.InDelta(t, 1.05, juice.Density.GramsPerMl, 1e-12)
	assert.Contains(t, juice.Density.Source, "figures per 100 mL and per 100 g")
	assert.Empty(t, juice.Portions)
}

func TestDamagedWorkbook(t *testing.T) {
	for _, d := range []tablestest.BookDamage{
		{File: file, Sheet: solids, Row: 3, Column: 6, Header: 1, MayBeEmpty: true},
		{File: file, Sheet: liquids, Row: 4, Column: 6, Header: 1, MayBeEmpty: true, Compared: true},
	} {
		t.Run(d.Sheet, func(t *testing.T) { tablestest.RunBook(t, afcd.Format, invented, d) })
	}
}

func TestWhatIsRefused(t *testing.T) {
	for name, c := range map[string]struct {
		sheet, cell string
		value       any
		says        string
	}{
		"key":             {solids, "A3", "F12", `cell A3: food key "F12" is not F and six digits`},
		"name":            {solids, "C3", " ", "cell C3: the food has no name"},
		"heading":         {solids, "G1", "Protein", `column "Protein" is not known to sipsum`},
		"no water":        {solids, "F1", "Wetness (g)", "lacks the nutrients per 100 g"},
		"no header":       {solids, "A1", "Key", "has no header that begins with"},
		"unit":            {solids, "G1", "Protein (mg)", `column "Protein (mg)" is not known to sipsum`},
		"twice":           {solids, "G1", "Fat, total (g)", `column "Fat, total (g)" stands twice`},
		"too large":       {solids, "F3", 1e300, "is too large"},
		"stray":           {liquids, "A4", "F999999", "food F999999 is not on the sheet of foods per 100 g"},
		"gravity":         {"Food details", "I2", 50, `"50" is not the specific gravity of a food`},
		"details key":     {"Food details", "A2", "x", `food key "x" is not F and six digits`},
		"measure":         {"Measures", "E2", "much", `"much" is not a number`},
		"no classes":      {solids, "B1", "Class", `column "classification" is missing in this header`},
		"second solids":   {liquids, "", "Solids again", "holds what sheet"},
		"a broken header": {"Recipes", "B1", "Public Food Key", "stands twice"},
	} {
		t.Run(name, func(t *testing.T) {
			dir := changed(t, c.sheet, c.cell, c.value)
			_, err := tablestest.Read(t, afcd.Format, dir)
			tablestest.Fault(t, err)
			assert.ErrorContains(t, err, c.says)
		})
	}
	dir := t.TempDir()
	tablestest.Write(t, dir, "Measures.xlsx", tablestest.Bytes(t, invented, "Measures, invented.xlsx"))
	_, err := afcd.Format.Open(t.Context(), dir, "")
	assert.ErrorContains(t, err, "lacks the nutrients per 100 g")
	require.NoError(t, os.RemoveAll(dir))
}

// A density that water and solids contradict is not taken: the syrup of canned
// fruit weighed like one for baking.
func TestDensityAgainstTheComposition(t *testing.T) {
	foods := tablestest.Foods(t, afcd.Format, changed(t, "Food details", "I2", 1.39))
	juice := foods["F900001"]
	assert.False(t, food.Stated(juice.Density.GramsPerMl))
	assert.Contains(t, juice.Note, "the density 1.39 g/ml is left out: water and solids as printed give 1.0")
	juice = tablestest.Foods(t, afcd.Format, changed(t, "Food details", "I2", 0.95))["F900001"]
	assert.Contains(t, juice.Note, "the density 0.95 g/ml is left out", "nine tenths water, and no air")
}

// changed copies the release and sets a cell of one of its sheets; without a cell
// the sheet gets the value as its name.
func changed(t *testing.T, sheet, cell string, value any) string {
	t.Helper()
	name := file
	switch sheet {
	case "Food details":
		name = "Food details, invented.xlsx"
	case "Measures", "Recipes":
		name = sheet + ", invented.xlsx"
	}
	return tablestest.ChangeBook(t, invented, name, sheet, cell, value)
}

// published values, typed from the workbook: the cell stands in the spot.
var published = []tablestest.Spot{
	tablestest.At("F004726", "CITAC", estimate.Calculated, 4500, none, "Juice, lemon: AP90 4.5"),
	tablestest.At("F004729", "MALAC", estimate.Calculated, 600, none, "Juice, lime: AS91 0.6"),
	tablestest.At("F009498", "ACEAC", estimate.Calculated, 4300, none, "Vinegar: AO415 4.3"),
	tablestest.At("F009572", "TARAC", estimate.Calculated, 200, none, "Wine, red, cabernet sauvignon: AY42 0.2"),
	tablestest.At("F009572", "ALC", estimate.Calculated, 11, none, "Wine, red, cabernet sauvignon: L42 11"),
	tablestest.At("F003041", "CAFFN", estimate.Calculated, 290, none, "Coffee, espresso: IV76 290"),
	tablestest.At("F005634", "LACS", estimate.Calculated, 5.4, none, "Milk, regular fat: Q450 5.4"),
	tablestest.At("F005634", "CA", estimate.Calculated, 106, none, "Milk, regular fat: BD450 106"),
	tablestest.At("F004380", "FRUS", estimate.Calculated, 40, none, "Honey: M1369 40"),
	tablestest.At("F004380", "WATER", estimate.Calculated, 15.3, none, "Honey: F1369 15.3"),
	tablestest.At("F009498", "SUGAR", estimate.Below, none, none, "Vinegar: T415 0"),
	tablestest.At("F009076", "VITE", estimate.Calculated, 211, none, "Tahini: DI1202 211"),
}

// Counts of the workbook: 1,616 foods, 182,072 filled cells, and of the acids
// the filled cells and those above zero.
func TestWholeRelease(t *testing.T) {
	dir := tablestest.Published(t, "afcd2")
	tablestest.Run(t, afcd.Format, dir, tablestest.Want{
		Columns: 290, Foods: 1616, Values: 182_072, First: "F002258", Last: "F009764", Spots: published,
		Names: map[string]string{"F004726": "Juice, lemon", "F009498": "Vinegar (except balsamic vinegar)"},
	})
	foods := tablestest.Foods(t, afcd.Format, dir)
	type count struct{ filled, above int }
	have := map[constituent.ID]count{}
	dense, refused, disagree := 0, 0, 0
	for _, f := range foods {
		for _, v := range f.Values {
			n := have[v.Constituent]
			n.filled++
			if food.Stated(v.Amount) && v.Amount > 0 {
				n.above++
			}
			have[v.Constituent] = n
		}
		if food.Stated(f.Density.GramsPerMl) {
			dense++
			near := math.Abs(f.Density.GramsPerMl*100 - math.Round(f.Density.GramsPerMl*100))
			assert.Less(t, near, 1e-9, "%s: the publisher prints two decimals, not %g", f.Name(), f.Density.GramsPerMl)
		}
		if strings.Contains(f.Note, "is left out: water and solids") {
			refused++
			t.Log(f.Name(), f.Note)
		}
		if strings.Contains(f.Note, "give another density") {
			disagree++
		}
	}
	for tag, want := range map[constituent.ID]count{
		"ACEAC": {224, 57}, "CITAC": {504, 297}, "FUMAC": {1, 1}, "LACAC": {506, 75}, "MALAC": {500, 318}, "OXALAC": {296, 12},
		"afcd:propionic-acid": {142, 7}, "QUINAC": {486, 24}, "SHIKAC": {3, 0}, "SUCAC": {21, 11}, "TARAC": {41, 24},
		"GLYRL": {1, 1}, "CLD": {600, 535},
	} {
		assert.Equal(t, want, have[tag], tag)
	}
	assert.Equal(t, 189, dense+refused, "foods per 100 mL")
	assert.Equal(t, 2, disagree, "oyster sauce and the juice of canned pears: one figure disagrees about the density")
	assert.Equal(t, 15, refused, "syrups of canned fruit at 1.39 g/ml, simmer sauces at 1.13, kombucha at 0.95, chilli sauce at 0.98")
}
