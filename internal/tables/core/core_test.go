package core_test

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/estimate"
	"sipsum/internal/tables/core"
	"sipsum/internal/tables/tablestest"
)

const folder = "../../../data/core"

// TestConformance counts the rows of the files itself; the spot values are rows
// of SR28 as printed in NUT_DATA.txt.
func TestConformance(t *testing.T) {
	foods, values := rows(t, "foods.csv"), rows(t, "values.csv")
	tablestest.Run(t, core.Format, folder, tablestest.Want{
		Foods: len(foods), Values: len(values), First: foods[0][0], Last: foods[len(foods)-1][0],
		Spots: []tablestest.Spot{
			tablestest.At("sugar-white", "SUCS", estimate.Measured, 99.8, 0.2715, "sd 0.096 · √8 to four decimals: ~19335~^~210~^99.8^8^0.096^~1~^~A~^"),
			tablestest.At("milk-whole", "VITD", estimate.Measured, 1.3, math.NaN(), "~01077~^~328~^1.3^24^^~1~^~AS~^"),
		},
	})
}

// TestEmbedded compares the table in the program with the files.
func TestEmbedded(t *testing.T) {
	embedded, files := tablestest.Open(t, core.Format, ""), tablestest.Open(t, core.Format, folder)
	assert.Equal(t, files.Table, embedded.Table)
	assert.Equal(t, files.Columns, embedded.Columns)
}

// small is a table of invented foods for the damage part of the suite.
var small = map[string]string{
	"sources.csv":  "id,citation,url,licence,grade,provenance,note\nw1,An invented paper,,none,B,typed,\nw2,Another,,none,C,typed,\n",
	"foods.csv":    "code,name,group,sr,use,density,density_sd,density_source,edible,edible_source,note\ninvented-juice,Invented juice,fruit juice,,literature,1.04,0.01,w1,1,w1,made up\ninvented-acid,Invented acid,acid,,chemical,,,,,,\n",
	"names.csv":    "code,language,name\ninvented-juice,fr,jus inventé\n",
	"portions.csv": "code,portion,grams,sd,source\ninvented-juice,cup,240,,w1\n",
	"marks.csv":    "code,kind,value,share,source\ninvented-juice,allergen,,,by definition\n",
	"values.csv": "code,constituent,amount,sd,n,low,high,state,source,ref\n" +
		"invented-juice,WATER,88,,,,,measured,w1,table 1\n" +
		"invented-juice,CITAC,1200.5,60,5,1000,1400,measured,w1 w2,table 2\n" +
		"invented-juice,MALAC,,,3,,7,below,w2,table 3\n" +
		"invented-acid,CITAC,100000,,,,,calculated,w1,\n",
}

func TestInventedTable(t *testing.T) {
	dir := t.TempDir()
	for name, text := range small {
		tablestest.Write(t, dir, name, []byte(text))
	}
	tablestest.Run(t, core.Format, dir, tablestest.Want{
		Columns: 3, Foods: 2, Values: 4, First: "invented-juice", Last: "invented-acid",
		Names: map[string]string{"invented-juice": "Invented juice"},
		Spots: []tablestest.Spot{
			tablestest.At("invented-juice", "CITAC", estimate.Measured, 1200.5, 60, "row 2"),
			tablestest.At("invented-juice", "MALAC", estimate.Below, math.NaN(), math.NaN(), "row 3"),
		},
		Damage: tablestest.Damage{File: "values.csv", Line: 3, Number: ",1200.5,", Replaced: ",%,", Missing: "values.csv"},
	})
}

func TestFaultsOfRows(t *testing.T) {
	cases := []struct{ file, add, says string }{
		{"values.csv", "invented-tea,CITAC,1,,,,,measured,w1,\n", "values.csv:6:1: food \"invented-tea\" is not in foods.csv"},
		{"values.csv", "invented-acid,NOTHING,1,,,,,measured,w1,\n", "values.csv:6:15: constituent"},
		{"values.csv", "invented-acid,WATER,1,,,,,guessed,w1,\n", "unknown state"},
		{"values.csv", "invented-acid,WATER,1,,,,,below,w1,\n", "a value that is below has no amount"},
		{"values.csv", "invented-acid,WATER,1,,,,,measured,w9,\n", "source \"w9\" is not in sources.csv"},
		{"values.csv", "invented-acid,WATER,1,,,,,measured,,\n", "without a source"},
		{"values.csv", "invented-acid,WATER,1,,1.5,,,measured,w1,\n", "not a whole number"},
		{"values.csv", "invented-acid,WATER,1,,2,3,1,measured,w1,\n", "low is above high"},
		{"foods.csv", "invented-acid,Twice,acid,,,,,,,,\n", "foods.csv:4:1: code \"invented-acid\""},
		{"sources.csv", "w1,Twice,,,,,\n", "sources.csv:4:1: id \"w1\""},
		{"portions.csv", "invented-juice,glass,,,w1\n", "portions.csv:3:22: the mass is empty"},
		{"names.csv", "nobody,en,x\n", "names.csv:3:1"},
		{"marks.csv", "nobody,allergen,,,x\n", "marks.csv:3:1"},
	}
	for _, c := range cases {
		dir := t.TempDir()
		for name, text := range small {
			if name == c.file {
				text += c.add
			}
			tablestest.Write(t, dir, name, []byte(text))
		}
		_, err := core.Format.Open(t.Context(), dir, "")
		assert.ErrorContains(t, err, c.says)
	}
}

func rows(t *testing.T, name string) [][]string {
	t.Helper()
	file, err := os.Open(filepath.Join(folder, name))
	require.NoError(t, err)
	defer file.Close()
	all, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	return all[1:]
}
