package fndds_test

import (
	"math"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/estimate"
	"sipsum/internal/tables/fndds"
	"sipsum/internal/tables/table"
	"sipsum/internal/tables/tablestest"
	"sipsum/internal/unit"
)

const (
	trimmed = "../../../testdata/tables/fndds"
	copied  = "../../../testdata/tables/fndds-csv"
	csvName = "fndds1718_nutrient_values.csv"
)

var none = math.NaN()

// Cells as printed in the workbook of nutrient values, 2017-2018.
var spots = []tablestest.Spot{
	tablestest.At("11000000", "ENERC_KCAL", estimate.Calculated, 70, none, "Energy (kcal) 70"),
	tablestest.At("11000000", "FASAT", estimate.Calculated, 2.009, none, "Fatty acids, total saturated (g) 2.009"),
	tablestest.At("11000000", "fndds:617", estimate.Calculated, 1.475, none, "18:1 (g) 1.475"),
	tablestest.At("11000000", "WATER", estimate.Calculated, 87.5, none, "Water (g) 87.5"),
	tablestest.At("11000000", "VITB12", estimate.Calculated, 0.05, none, "Vitamin B-12 (mcg) 0.05"),
	tablestest.At("92101000", "CAFFN", estimate.Calculated, 40, none, "Caffeine (mg) 40"),
	tablestest.At("92101600", "SUGAR", estimate.Calculated, 6.48, none, "Sugars, total (g) 6.48"),
	tablestest.At("92101900", "ENERC_KCAL", estimate.Calculated, 43, none, "Energy (kcal) 43"),
	tablestest.At("92101900", "SUGAR", estimate.Calculated, 4.06, none, "Sugars, total (g) 4.06"),
	tablestest.At("92101900", "CAFFN", estimate.Calculated, 36, none, "Caffeine (mg) 36"),
	tablestest.At("11514110", "SUGAR", estimate.Calculated, 12.87, none, "Sugars, total (g) 12.87"),
	tablestest.At("92307500", "SUGAR", estimate.Calculated, 7.2, none, "Sugars, total (g) 7.2"),
	tablestest.At("61201010", "CAFFN", estimate.Calculated, 0, none, "Caffeine (mg) 0"),
	tablestest.At("99998210", "ENERC_KCAL", estimate.Calculated, 892, none, "Energy (kcal) 892"),
}

var names = map[string]string{"92101900": "Coffee, Latte", "61201010": "Grapefruit juice, 100%, freshly squeezed"}

func want(foods int) tablestest.Want {
	w := tablestest.Want{Columns: 65, Foods: foods, Values: foods * 65, First: "11000000", Last: "99998210", Spots: spots, Names: map[string]string{}}
	for code, name := range names {
		w.Names[code] = name
	}
	return w
}

func TestTrimmedRelease(t *testing.T) {
	tablestest.Run(t, fndds.Format, trimmed, want(11))
	assert.Equal(t, "2017-2018", tablestest.Open(t, fndds.Format, trimmed).Table.Edition)
	f := tablestest.Foods(t, fndds.Format, trimmed)["92101000"]
	assert.Equal(t, "Coffee", f.PublisherGroup)
	assert.Equal(t, "coffee drink", f.Group)
	assert.Equal(t, "WWEIA category 7302", f.Note)
}

func TestTrimmedCopy(t *testing.T) {
	w := want(11)
	w.Damage = tablestest.Damage{File: csvName, Line: 35, Number: ",Coffee,43,", Replaced: ",Coffee,%,"}
	tablestest.Run(t, fndds.Format, copied, w)
}

// Counts of the workbook: 7,083 foods with 65 values each.
func TestWholeRelease(t *testing.T) {
	tablestest.Run(t, fndds.Format, tablestest.Published(t, "fndds1718"), want(7083))
	copied := tablestest.Published(t, "fndds1718", csvName)
	assert.Equal(t, "2017-2018", tablestest.Open(t, fndds.Format, copied).Table.Edition)
	assert.Len(t, tablestest.Foods(t, fndds.Format, copied), 7083)
}

func TestDamagedWorkbook(t *testing.T) {
	tablestest.RunBook(t, fndds.Format, trimmed, tablestest.BookDamage{
		File: "2017-2018 FNDDS At A Glance - FNDDS Nutrient Values.xlsx", Sheet: "FNDDS Nutrient Values", Row: 6, Column: 8, Header: 2,
	})
}

func TestMapIsWhole(t *testing.T) {
	release := tablestest.Open(t, fndds.Format, trimmed)
	m := table.ReadMap("fndds")
	assert.Len(t, m.Rows, 65)
	for _, c := range release.Columns {
		row, ok := m.Find(c.Number)
		require.True(t, ok, c.Number)
		if row.Fate == table.Mapped {
			printed := map[string]string{"mcg": "µg", "mcg_RAE": "µg", "mcg_DFE": "µg"}[c.Unit]
			if printed == "" {
				printed = c.Unit
			}
			factor, ok := unit.Convert(printed, row.Constituent.Unit)
			assert.True(t, ok, c.Number)
			assert.Equal(t, factor, row.Factor, c.Number)
		}
	}
}

func TestWhatIsNotTheNutrientValues(t *testing.T) {
	dir := t.TempDir()
	for name, text := range map[string]string{"ingredients.csv": "Food code,Seq num\n1,2\n", "other.csv": "a\n1\n"} {
		tablestest.Write(t, dir, name, []byte(text))
	}
	assert.False(t, fndds.Format.Sniff(dir))
	_, err := fndds.Format.Open(t.Context(), dir, "")
	assert.ErrorContains(t, err, "lacks the nutrient values")
	for path, ours := range map[string]bool{trimmed: true, copied: true, filepath.Join(copied, csvName): true, filepath.Join(trimmed, "2017-2018 FNDDS At A Glance - FNDDS Ingredients.xlsx"): false, "nowhere": false} {
		assert.Equal(t, ours, fndds.Format.Sniff(path), path)
	}

	header := "Food code,Main food description,WWEIA Category number,WWEIA Category description,Energy (kcal)"
	for name, c := range map[string]struct{ text, says string }{
		"unknown column": {header + ",Surprise (g)\n", `/t.csv:1:96: column "Surprise (g)" is not known to sipsum`},
		"column missing": {header + "\n", `column "Protein (g)" is missing`},
	} {
		dir := t.TempDir()
		tablestest.Write(t, dir, "t.csv", []byte(c.text))
		_, err := fndds.Format.Open(t.Context(), filepath.Join(dir, "t.csv"), "")
		assert.ErrorContains(t, err, c.says, name)
	}
}
