package cnf_test

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/encoding/charmap"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/cnf"
	"sipsum/internal/tables/table"
	"sipsum/internal/tables/tablestest"
	"sipsum/internal/unit"
)

const invented = "../../../testdata/tables/cnf"

var none = math.NaN()

func TestInventedRelease(t *testing.T) {
	tablestest.Run(t, cnf.Format, invented, tablestest.Want{
		Columns: 152, Foods: 4, Values: 15, First: "900001", Last: "900004",
		Names: map[string]string{"900002": "Invented milk, fluid, “house”"},
		Spots: []tablestest.Spot{
			tablestest.At("900001", "WATER", estimate.Measured, 90.5, 0.5, "900001,255,90.5,0.25,4,3: sd = 0.25·√4"),
			tablestest.At("900001", "SUCS", estimate.Calculated, 0.5, none, "900001,210,0.5,0,0,102"),
			tablestest.At("900001", "LACS", estimate.Below, none, none, "900001,213,0,0,4,3"),
			tablestest.At("900001", "CAFFN", estimate.Assumed, 0, none, "900001,262,0,0,0,12"),
			tablestest.At("900001", "SORTL", estimate.Calculated, 125, none, "900001,261,0.125,0,0,0, printed in g"),
			tablestest.At("900001", "VITD", estimate.Calculated, 0, none, "900001,339,0,0,0,0"),
			tablestest.At("900002", "LACS", estimate.Measured, 5.25, none, "900002,213,5.25,0.5,0,3: an error without observations is no sd"),
			tablestest.At("900002", "ENERC", estimate.Calculated, 262, none, "900002,268,262,0,0,106"),
			tablestest.At("900002", "RETOL", estimate.Below, none, none, "900002,319,0,0,0,7"),
			tablestest.At("900002", "ASPM", estimate.Assumed, 0, none, "900002,550,0,0,0,12"),
			tablestest.At("900003", "CAFFN", estimate.Measured, 41, 1.5, "900003,262,41,0.5,9,7: sd = 0.5·√9"),
			tablestest.At("900003", "NIAEQ", estimate.Calculated, 0.75, none, "900003,409,0.75,,,106"),
			tablestest.At("900003", "cnf:324", estimate.Calculated, 2, none, "900003,324,2,0,0,0"),
		},
		Damage: tablestest.Damage{File: "NUTRIENT AMOUNT.csv", Line: 3, Number: ",0.5,", Replaced: ",%,", Missing: "NUTRIENT SOURCE.csv"},
	})
}

func TestFoodsAsWritten(t *testing.T) {
	foods := tablestest.Foods(t, cnf.Format, invented)
	juice := foods["900001"]
	assert.Equal(t, []food.Name{{Language: "en", Text: "Invented lime juice, raw"}, {Language: "fr", Text: "Jus de lime inventé, cru"}, {Language: "la", Text: "Citrus ficta"}}, juice.Names)
	assert.Equal(t, "Invented fruit", juice.PublisherGroup)
	assert.Equal(t, "citrus juice", juice.Group)
	assert.Equal(t, "milk", foods["900002"].Group)
	assert.Equal(t, "coffee drink", foods["900003"].Group)
	names := map[string]float64{}
	for _, p := range juice.Portions {
		names[p.Name] = p.Grams
	}
	assert.InDeltaMapValues(t, map[string]float64{"100ml": 103.75, "1 cup": 250, "1 cup~2": 243.75}, names, 1e-9)
	assert.Equal(t, 0.005, tablestest.Value(t, juice, "LACS").Limit) // LACS has 2 decimals
	assert.Empty(t, foods["900004"].Values)
}

func TestOptionalFilesMayBeAbsent(t *testing.T) {
	dir := tablestest.Copy(t, invented)
	for _, file := range []string{"FOOD GROUP.csv", "MEASURE NAME.csv", "CONVERSION FACTOR.csv"} {
		require.NoError(t, os.Remove(filepath.Join(dir, file)))
	}
	juice := tablestest.Foods(t, cnf.Format, dir)["900001"]
	assert.Empty(t, juice.Portions)
	assert.Equal(t, "9", juice.PublisherGroup)
	assert.Equal(t, "citrus juice", juice.Group)
}

func TestACopyInUTF8ReadsTheSame(t *testing.T) {
	dir := t.TempDir()
	files, err := os.ReadDir(invented)
	require.NoError(t, err)
	for _, file := range files {
		text, err := charmap.Windows1252.NewDecoder().Bytes(tablestest.Bytes(t, invented, file.Name()))
		require.NoError(t, err)
		tablestest.Write(t, dir, file.Name(), append([]byte("\ufeff"), text...))
	}
	assert.Equal(t, tablestest.Foods(t, cnf.Format, invented)["900002"].Names, tablestest.Foods(t, cnf.Format, dir)["900002"].Names)
}

// TestMapIsWhole takes the columns, units and tagnames from NUTRIENT NAME.
func TestMapIsWhole(t *testing.T) { checkMap(t, invented) }

func TestMapIsWholeForThePublishedFile(t *testing.T) {
	checkMap(t, tablestest.Published(t, "canada", "cnf2015"))
}

func checkMap(t *testing.T, dir string) {
	text, err := charmap.Windows1252.NewDecoder().String(string(tablestest.Bytes(t, dir, "NUTRIENT NAME.csv")))
	require.NoError(t, err)
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	require.NoError(t, err)
	m := table.ReadMap("cnf")
	require.Len(t, rows[1:], 152)
	require.Len(t, m.Rows, 152)
	for _, row := range rows[1:] {
		number, printed, tag := row[0], row[3], strings.TrimSpace(row[6])
		mapped, ok := m.Find(number)
		require.True(t, ok, number)
		assert.NotEqual(t, table.Refused, mapped.Fate, number)
		known, tagged := constituent.Find(tag)
		if mapped.Fate == table.Kept {
			assert.False(t, tagged, "%s is %s", number, tag)
			continue
		}
		if tagged {
			assert.Equal(t, known, mapped.Constituent, number)
		}
		switch printed { // the file writes kCal; a niacin equivalent is a mg
		case "kCal":
			printed = "kcal"
		case "NE":
			printed = "mg"
		}
		factor, ok := unit.Convert(printed, mapped.Constituent.Unit)
		assert.True(t, ok, "%s: %s cannot become %s", number, printed, mapped.Constituent.Unit)
		assert.Equal(t, factor, mapped.Factor, number)
	}
}

// TestPublishedFoods reads the published FOOD NAME, NUTRIENT NAME and NUTRIENT
// SOURCE with one amount of our own for each food that is named.
func TestPublishedFoods(t *testing.T) {
	dir := t.TempDir()
	published := tablestest.Published(t, "canada", "cnf2015")
	for _, file := range []string{"FOOD NAME.csv", "NUTRIENT NAME.csv", "NUTRIENT SOURCE.csv"} {
		tablestest.Write(t, dir, file, tablestest.Bytes(t, published, file))
	}
	// The row that publications about the file quote.
	amounts := "FoodID,NutrientID,NutrientValue,StandardError,NumberofObservations,NutrientSourceID,NutrientDateOfEntry\r\n2,203,9.54,0,0,102,2010-04-16\r\n"
	tablestest.Write(t, dir, "NUTRIENT AMOUNT.csv", []byte(amounts))
	assert.Equal(t, "2015", tablestest.Open(t, cnf.Format, dir).Table.Edition)
	foods := tablestest.Foods(t, cnf.Format, dir)
	assert.Len(t, foods, 5690)
	v := tablestest.Value(t, foods["2"], "PROCNT")
	assert.Equal(t, 9.54, v.Amount)
	assert.Equal(t, estimate.Calculated, v.State)
	for code, want := range map[string]string{ // FOOD NAME.csv
		"2873": "coffee drink", // Coffee, brewed, prepared with tap water
		"4779": "coffee drink", // Coffee, brewed, espresso, restaurant prepared
		"113":  "milk",         // Milk, fluid, whole, pasteurized, homogenized, 3.25% M.F.
		"1594": "citrus juice", // Lime juice, raw
		"1495": "fruit juice",  // Apple juice, canned or bottled, without added vitamin C
		"13":   "vinegar",      // Vinegar, cider
		"4318": "sugar",        // Sweets, sugars, granulated
		"75":   "other",        // Milk shake, chocolate, thick
		"4":    "other",        // Chop suey, with meat, canned
	} {
		assert.Equal(t, want, foods[code].Group, "%s %s", code, foods[code].Name())
	}
}

func TestFilesThatDoNotBelongTogether(t *testing.T) {
	cases := []struct{ name, file, old, new, says string }{
		{"food", "NUTRIENT AMOUNT.csv", "900003,262", "900009,262", `NUTRIENT AMOUNT.csv:9:1: food "900009" is not in FOOD NAME.csv`},
		{"column", "NUTRIENT AMOUNT.csv", ",262,41", ",9262,41", `NUTRIENT AMOUNT.csv:9:8: column "9262" is not in NUTRIENT NAME.csv`},
		{"source", "NUTRIENT AMOUNT.csv", "9,7,", "9,77,", `NUTRIENT AMOUNT.csv:9:21: source "77" is not in NUTRIENT SOURCE.csv`},
		{"column of another kind", "NUTRIENT NAME.csv", "262,262,CAFF", "9262,262,CAFF", `column "9262" is not known to sipsum`},
		{"columns exchanged", "NUTRIENT NAME.csv", "CAFFN", "THEBRN", `column 262 is tagged "THEBRN" where CAFFN was expected`},
		{"group", "FOOD NAME.csv", "900001,1,9,", "900001,1,8,", `FOOD NAME.csv:2:10: group "8" is not in FOOD GROUP.csv`},
		{"measure", "CONVERSION FACTOR.csv", ",342,", ",349,", `CONVERSION FACTOR.csv:3:8: measure "349" is not in MEASURE NAME.csv`},
		{"food twice", "FOOD NAME.csv", "900002,", "900001,", `FOOD NAME.csv:3:1: "900001" is empty or stands twice`},
		{"header", "NUTRIENT AMOUNT.csv", "NutrientValue", "Value", `NUTRIENT AMOUNT.csv:1: column "NutrientValue" is missing`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, err := tablestest.Read(t, cnf.Format, tablestest.Change(t, invented, c.file, tablestest.Swap(t, c.old, c.new)))
			assert.ErrorContains(t, err, c.says)
		})
	}
}
