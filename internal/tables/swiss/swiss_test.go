package swiss_test

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
	"sipsum/internal/tables/swiss"
	"sipsum/internal/tables/tablestest"
)

const some = "../../../testdata/tables/swiss"

var none = math.NaN()

// Figures as printed in generic-foods.csv; those per 100 ml are here divided by
// the specific gravity printed beside them.
func spots() []tablestest.Spot {
	return []tablestest.Spot{
		tablestest.At("1190", "ENERC", estimate.Calculated, 117, none, "energy kJ 117 per 100g, Computed value"),
		tablestest.At("1190", "SUGAR", estimate.Calculated, 0.6, none, "sugars 0.6 per 100g"),
		tablestest.At("568", "WATER", estimate.Calculated, 87.7, none, "water 87.7 per 100ml, gravity 1"),
		tablestest.At("646", "ALC", estimate.Calculated, 31.6/0.9, none, "alcohol 31.6 per 100ml, gravity 0.9"),
		tablestest.At("591", "ENERC", estimate.Calculated, 3330/0.9, none, "energy kJ 3330 per 100ml, gravity 0.9"),
		tablestest.At("472", "CHOAVL", estimate.Calculated, 76, none, "carbohydrates, available 76 per 100g, gravity 1.4"),
		tablestest.At("581", "K", estimate.Calculated, 1920, none, "potassium (K) 1920"),
		tablestest.At("470", "ALC", estimate.Calculated, 0, none, "alcohol 0, source 43"),
		tablestest.At("605", "VITC", estimate.Calculated, 25, none, "vitamin C 25 per 100ml, gravity 1"),
		tablestest.At("819", "swiss:vitamin-a-activity", estimate.Below, none, none, "vitamin A activity less than 0"),
		tablestest.At("821", "CARTB", estimate.Below, none, none, "beta-carotene less than 3"),
		tablestest.At("831", "VITB12", estimate.Trace, none, none, "vitamin B12 trace 0.22"),
		tablestest.At("778", "STARCH", estimate.Trace, none, none, "starch trace 0"),
		tablestest.At("13388", "STARCH", estimate.Calculated, 13.3, none, "starch 13.3, best estimate"),
	}
}

func TestSomeRows(t *testing.T) {
	tablestest.Run(t, swiss.Format, some, tablestest.Want{
		Columns: 37, Foods: 21, Values: 721, First: "10533", Last: "470",
		Names: map[string]string{"605": "Lemon juice", "646": "Spirits, 40 vol% (e.g. brandy, gin)"}, Spots: spots(),
		Damage: tablestest.Damage{File: "generic-foods.csv", Line: 5, Number: ",189,", Replaced: ",%,", Missing: "generic-foods.csv"},
	})
}

// Counts of foods, and of figures: 36,051 weighted, 180 best estimates, 38 of
// unknown type, 33 means, 45 traces, 10 "less than".
func TestWholeRelease(t *testing.T) {
	dir := tablestest.Published(t, "swiss53")
	tablestest.Run(t, swiss.Format, dir, tablestest.Want{
		Columns: 37, Foods: 999, Values: 36_357, First: "10533", Last: "1616", Spots: spots(),
		Names: map[string]string{"605": "Lemon juice", "47": "Drinking water (average Switzerland)"},
	})
	release := tablestest.Open(t, swiss.Format, dir)
	assert.Equal(t, "5.3", release.Table.Edition)
	count := map[estimate.State]int{}
	dense := 0
	for f, err := range release.Foods {
		require.NoError(t, err)
		for _, v := range f.Values {
			count[v.State]++
		}
		if food.Stated(f.Density.GramsPerMl) {
			dense++
		}
	}
	assert.Equal(t, map[estimate.State]int{estimate.Calculated: 36_051 + 180 + 38 + 33, estimate.Trace: 45, estimate.Below: 10}, count)
	assert.Equal(t, 124, dense, "rows with a specific gravity")
}

func TestMarksAndDensity(t *testing.T) {
	foods := tablestest.Foods(t, swiss.Format, some)
	for _, c := range []struct {
		code  string
		tag   constituent.ID
		limit float64
	}{
		{"821", "CARTB", 3},                      // less than 3
		{"819", "swiss:vitamin-a-activity", 0.5}, // less than 0; the column has no decimals
		{"831", "VITB12", 0.22 + 0.05},           // trace 0.22; the column commonly has one decimal
		{"778", "STARCH", 0.05},                  // trace 0; one decimal
		{"868", "VITC", 0.05},                    // trace 0; one decimal
	} {
		v := tablestest.Value(t, foods[c.code], c.tag)
		assert.InDelta(t, c.limit, v.Limit, 1e-12, "%s %s", c.code, c.tag)
		assert.False(t, food.Stated(v.Amount))
	}
	oil := foods["591"]
	assert.Equal(t, 0.9, oil.Density.GramsPerMl)
	assert.InDelta(t, 0.05/math.Sqrt(3), oil.Density.SD, 1e-12)
	assert.Equal(t, "energy kJ, printed per 100 ml: 3330", tablestest.Value(t, oil, "ENERC").Ref)
	assert.Equal(t, "swiss-computed", tablestest.Value(t, oil, "ENERC").Source)
	assert.Equal(t, "alcohol, source 22, printed per 100 ml: 0", tablestest.Value(t, oil, "ALC").Ref)
	assert.Equal(t, "swiss", tablestest.Value(t, oil, "ALC").Source)
	assert.False(t, food.Stated(foods["470"].Density.GramsPerMl))
	for code, want := range map[string]string{
		"568": "fruit juice", "605": "citrus juice", "1190": "other", "472": "honey", "470": "sugar", "581": "cocoa", "47": "water",
		"62": "milk", "509": "wine", "512": "other", "591": "oil", "10536": "syrup", "10533": "gum", "646": "spirit", "572": "fruit juice",
	} {
		assert.Equal(t, want, foods[code].Group, foods[code].Name())
	}
	assert.Equal(t, []food.Name{
		{Language: "en", Text: "Cider, 4 vol%"}, {Language: "de", Text: "Apfelwein, 4 vol%"}, {Language: "de", Text: "Apfelmost"},
		{Language: "de", Text: "Saurer Most"}, {Language: "de", Text: "Cider"}, {Language: "fr", Text: "Cidre de pomme, 4 vol%"}, {Language: "it", Text: "Sidro di mele, 4 vol%"},
	}, foods["512"].Names)
}

// A figure per 100 ml cannot be brought to 100 g without a specific gravity.
func TestNoGravityNoAmount(t *testing.T) {
	foods := tablestest.Foods(t, swiss.Format, tablestest.Change(t, some, "generic-foods.csv", tablestest.Swap(t, ",0.9,3330,kilojoule,per 100ml", ",,3330,kilojoule,per 100ml")))
	oil := foods["591"]
	assert.Equal(t, "figures per 100 ml without a specific gravity: not known per 100 g", oil.Note)
	require.Len(t, oil.Values, 37)
	for _, v := range oil.Values {
		assert.Equal(t, estimate.Unknown, v.State)
		assert.False(t, food.Stated(v.Amount))
	}
}

func TestRefusedFields(t *testing.T) {
	for name, c := range map[string]struct{ old, new, says string }{
		"unit":            {",189,kilojoule,", ",189,kilogram,", `5:`},
		"matrix":          {",189,kilojoule,per 100ml food volume", ",189,kilojoule,per cup", `"per cup" is neither`},
		"type":            {",189,kilojoule,per 100ml food volume,weighted", ",189,kilojoule,per 100ml food volume,guessed", `value type "guessed"`},
		"gravity":         {",1,189,", ",0,189,", "specific gravity of a food"},
		"great gravity":   {",1,189,", ",1e9,189,", "specific gravity of a food"},
		"code":            {"568,", "5x8,", "is not a whole number"},
		"heading":         {"alcohol,unit", "ethanol,unit", "1:"},
		"heading missing": {"alcohol,unit,", "alcohol,units,", "1:"},
		"quote":           {",Apple juice,", `,"Apple juice,`, "generic-foods.csv:"},
		"encoding":        {"Apple juice", "Apple ju\xefce", "5:"},
		"ten million":     {"Apple juice", strings.Repeat("x", 10_000_000), "longer than"},
		"too large":       {",0.9,3330,", ",0.9," + "1.7e308,", "14:"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := tablestest.Read(t, swiss.Format, tablestest.Change(t, some, "generic-foods.csv", tablestest.Swap(t, c.old, c.new)))
			tablestest.Fault(t, err)
			assert.Contains(t, err.Error(), c.says)
			assert.Contains(t, err.Error(), "generic-foods.csv:")
			assert.Less(t, len(err.Error()), 500)
		})
	}
}

// The file may be named itself, and may lie in the folder of a data package.
func TestPlacesOfTheFile(t *testing.T) {
	content := tablestest.Bytes(t, some, "generic-foods.csv")
	root := t.TempDir()
	require.NoError(t, os.Mkdir(filepath.Join(root, "data"), 0o700))
	tablestest.Write(t, root, "data/generic-foods.csv", content)
	tablestest.Write(t, root, "foods.csv", append([]byte("\ufeff"), content...))
	for _, place := range []string{root, filepath.Join(root, "foods.csv")} {
		assert.Len(t, tablestest.Foods(t, swiss.Format, place), 21)
		assert.True(t, swiss.Format.Sniff(place), place)
	}
}
