package fdc_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/estimate"
	"sipsum/internal/tables/fdc"
	"sipsum/internal/tables/table"
	"sipsum/internal/tables/tablestest"
	"sipsum/internal/unit"
)

const trimmed = "../../../testdata/tables/fdc"

var none = math.NaN()

// Values as printed in food_nutrient.csv; those of 9000001 to 9000004 are
// invented, the others are the publisher's.
func TestTrimmedRelease(t *testing.T) {
	tablestest.Run(t, fdc.Format, trimmed, tablestest.Want{
		// 637 rows, less one of a sample, one without an amount and two second
		// rows for a nutrient.
		Columns: 474, Foods: 10, Values: 633, First: "173933", Last: "9000004",
		Names: map[string]string{"168155": "Limes, raw", "9000004": `INVENTED OAT DRINK, "BARISTA"`},
		Spots: []tablestest.Spot{
			tablestest.At("173933", "SUCS", estimate.Measured, 1.26, none, "173933,1010,1.26,4,1.0,1.2,1.31"),
			tablestest.At("173933", "FRUS", estimate.Measured, 5.73, none, "173933,1012,5.73,4,1.0,5.51,5.93"),
			tablestest.At("173933", "MN", estimate.Measured, 0.074, none, "173933,1101,0.07400000000000001,59,1.0,0.02,0.255"),
			tablestest.At("168155", "SUGAR", estimate.Calculated, 1.69, none, "168155,2000,1.69,0,20.0"),
			tablestest.At("168155", "VITC", estimate.Measured, 29.1, none, "168155,1162,29.1,1,"),
			tablestest.At("169098", "VITC", estimate.Calculated, 50, none, "169098,1162,50.0,0,"),
			tablestest.At("169098", "CAFFN", estimate.Assumed, 0, none, "169098,1057,0.0,0,68.0"),
			tablestest.At("167746", "WATER", estimate.Measured, 88.98, none, "167746,1051,88.98,5,"),
			tablestest.At("167746", "CA", estimate.Calculated, 26, none, "167746,1087,26.0,0,"),
			tablestest.At("174832", "LACS", estimate.Below, none, none, "174832,1013,0.0,3,1.0,0.0,0.0"),
			tablestest.At("174832", "VITA_RAE", estimate.Calculated, 0, none, "174832,1106,0.0,0,49.0"),
			tablestest.At("168833", "SUGAR", estimate.Measured, 97.02, none, "168833,2000,97.02,15,1.0,92.42,99.85"),
			tablestest.At("9000001", "CITAC", estimate.Measured, 2400.5, none, "9000001,1032,2400.5,3,1,2300,2500"),
			tablestest.At("9000001", "QUINAC", estimate.Below, none, none, "9000001,1044,0,3,1,,,,40"),
			tablestest.At("9000001", "fdc:1054", estimate.Calculated, 0, none, "9000001,1054,0,4,1: piperine has no decimals in SR28"),
			tablestest.At("9000003", "PROCNT", estimate.Calculated, 2.5, none, "9000003,203,2.5"),
			tablestest.At("9000003", "fdc:1063", estimate.Calculated, 4.1, none, "9000003,269.3,4.1"),
			tablestest.At("9000004", "ENERC_KCAL", estimate.Calculated, 46, none, "9000004,1008,46 and then 23"),
		},
		Damage: tablestest.Damage{File: "food_nutrient.csv", Line: 6, Number: ",1101,", Replaced: ",%,", Missing: "food_nutrient.csv", NoAmount: true},
	})
}

func TestFoodsAsPublished(t *testing.T) {
	release, foods := tablestest.Open(t, fdc.Format, trimmed), tablestest.Foods(t, fdc.Format, trimmed)
	assert.Equal(t, "2030-05-02", release.Table.Edition)

	cordial := foods["9000001"]
	_, given := cordial.Value("MALAC")
	assert.False(t, given, "a blank amount is no value")
	quinic, _ := cordial.Value("QUINAC")
	assert.Equal(t, 40.0, quinic.Limit, "loq 40 mg")
	lactose, _ := cordial.Value("LACS")
	assert.Equal(t, 0.005, lactose.Limit, "no loq; two decimals")
	citric, _ := cordial.Value("CITAC")
	assert.Equal(t, []float64{2300, 2500, 3}, []float64{citric.Low, citric.High, float64(citric.N)})
	assert.Equal(t, "src1 derivA", citric.Source+" "+citric.Ref)
	assert.Contains(t, cordial.Note, `On 2000: Mean of two presses, "cold" and warm`)
	assert.Equal(t, "Beverages", cordial.PublisherGroup)
	var portions []string
	for _, p := range cordial.Portions {
		portions = append(portions, fmt.Sprint(p.Name, " ", p.Grams))
	}
	assert.Equal(t, []string{"cup shaken 251.5", "2 tablespoon 31", "glass 180", "glass~2 220"}, portions, "the crate has no weight")

	assert.Nil(t, foods["9000002"], "a sample is not a food")

	latte := foods["9000003"]
	assert.Equal(t, "Coffee", latte.PublisherGroup)
	assert.Contains(t, latte.Note, "FNDDS food code: 92100000")
	assert.Equal(t, "1 fl oz (no ice)", latte.Portions[0].Name)

	drink := foods["9000004"]
	assert.Equal(t, "Plant Based Milk", drink.PublisherGroup)
	assert.Equal(t, "plant drink", drink.Group)
	for _, line := range []string{
		"Data type: branded_food 2030-05-02", "Brand: NOBODY, AT ALL", "Brand owner: Nobody at All Ltd.", "GTIN: 00012345678905", "Serving: 240 ml (1 cup)",
		"Ingredients: WATER, OATS (10 %),\nRAPESEED OIL, SALT.", "the amounts may be per 100 ml", "On 1008: published twice, as 46 and as 23; the first is used.",
	} {
		assert.Contains(t, drink.Note, line)
	}
	assert.NotContains(t, drink.Note, "On 1003", "two rows that agree")
	assert.Empty(t, drink.Portions, "millilitres are no mass")

	assert.Contains(t, foods["168155"].Note, "NDB number: 09159")
	assert.Equal(t, "Fruits and Fruit Juices", foods["168155"].PublisherGroup)
	assert.Equal(t, "citrus fruit", foods["168155"].Group)
	assert.Equal(t, "plant drink", foods["174832"].Group)
}

// TestMapIsWhole takes the nutrients and units from nutrient.csv.
func TestMapIsWhole(t *testing.T) {
	release := tablestest.Open(t, fdc.Format, trimmed)
	m := table.ReadMap("fdc")
	plain := map[string]string{"G": "g", "MG": "mg", "UG": "µg", "KCAL": "kcal", "PH": "pH", "MG_ATE": "mg", "MCG_RE": "µg"}
	assert.Len(t, m.Rows, len(release.Columns)+2, "two more stand in copies only")
	for _, c := range release.Columns {
		row, ok := m.Find(c.Number)
		if !assert.True(t, ok, c.Number) || row.Fate != table.Mapped {
			continue
		}
		printed := c.Unit
		if p, ok := plain[printed]; ok {
			printed = p
		}
		want, ok := unit.Convert(printed, row.Constituent.Unit)
		assert.True(t, ok, "%s: %s", c.Number, c.Unit)
		assert.Equal(t, want, row.Factor, c.Number)
	}
}

// TestRecognisedByHeader gives the files other names.
func TestRecognisedByHeader(t *testing.T) {
	dir := tablestest.Copy(t, trimmed)
	for from, to := range map[string]string{"food.csv": "a.csv", "food_nutrient.csv": "b.csv", "nutrient.csv": "c.csv", "branded_food.csv": "d.csv", "food_portion.csv": "e.csv"} {
		require.NoError(t, os.Rename(filepath.Join(dir, from), filepath.Join(dir, to)))
	}
	assert.True(t, fdc.Format.Sniff(dir))
	foods := tablestest.Foods(t, fdc.Format, dir)
	assert.Len(t, foods, 10)
	assert.Len(t, foods["9000001"].Portions, 4)

	tablestest.Write(t, dir, "bb.csv", tablestest.Bytes(t, dir, "b.csv"))
	_, err := fdc.Format.Open(t.Context(), dir, "")
	assert.ErrorContains(t, err, "both b.csv and bb.csv have the columns of food_nutrient.csv")
	assert.False(t, fdc.Format.Sniff(dir))
}

// TestDerivationsOfTheRelease: the release's own list wins over sipsum's.
func TestDerivationsOfTheRelease(t *testing.T) {
	dir := tablestest.Copy(t, trimmed)
	tablestest.Write(t, dir, "food_nutrient_derivation.csv", []byte("id,code,description,source_id\n"))
	_, err := tablestest.Read(t, fdc.Format, dir)
	assert.ErrorContains(t, err, `derivation "68.0" is not in food_nutrient_derivation.csv`)

	lines := "id,code,description,source_id\n"
	for _, id := range []string{"1", "2", "10", "14", "16", "20", "22", "37", "40", "42", "43", "44", "46", "49", "51", "52", "67", "68", "70", "71", "75"} {
		lines += id + ",X" + id + ",Invented " + id + ",7\n"
	}
	tablestest.Write(t, dir, "food_nutrient_derivation.csv", []byte(lines))
	tablestest.Write(t, dir, "food_nutrient_source.csv", []byte("id,code,description\n7,4,Calculated or imputed\n"))
	release, foods := tablestest.Open(t, fdc.Format, dir), tablestest.Foods(t, fdc.Format, dir)
	v, _ := foods["9000001"].Value("CITAC")
	assert.Equal(t, estimate.Calculated, v.State, "source 4 is not an analysis")
	assert.Equal(t, "src4", v.Source)
	assert.Equal(t, "derivX1", v.Ref)
	cited := map[string]string{}
	for _, w := range release.Works {
		cited[w.ID] = w.Citation
	}
	assert.Contains(t, cited["derivX1"], "Invented 1")
	assert.Contains(t, cited["src4"], "Calculated or imputed")
}

// TestDerivationZIsAnAssumedZero, whatever its source code says: the agency carried the
// derivations of SR28 over, where Z is "Assumed zero" (DERIV_CD.txt).
func TestDerivationZIsAnAssumedZero(t *testing.T) {
	for code, want := range map[string]estimate.State{"Z": estimate.Assumed, "A": estimate.Calculated} {
		dir := tablestest.Copy(t, trimmed)
		lines := "id,code,description,source_id\n"
		for _, id := range []string{"1", "2", "10", "14", "16", "20", "22", "37", "40", "42", "43", "44", "46", "49", "51", "52", "67", "70", "71", "75"} {
			lines += id + ",X" + id + ",Invented " + id + ",1\n"
		}
		tablestest.Write(t, dir, "food_nutrient_derivation.csv", []byte(lines+"68,"+code+",Of this test,1\n"))
		tablestest.Write(t, dir, "food_nutrient_source.csv", []byte("id,code,description\n1,1,Analytical\n"))
		assert.Equal(t, want, tablestest.Value(t, tablestest.Foods(t, fdc.Format, dir)["169098"], "CAFFN").State, code)
	}
}

// TestFilesThatDoNotBelongTogether: each file is whole by itself.
func TestFilesThatDoNotBelongTogether(t *testing.T) {
	cases := []struct{ name, file, from, to, says string }{
		{"negative", "food_nutrient.csv", ",1010,1.26,", ",1010,-1.26,", `food_nutrient.csv:10:21: "-1.26" is negative`},
		{"too large", "food_nutrient.csv", ",1010,1.26,", ",1010,1e400,", `"1e400" is not a number`},
		{"decimal comma", "food_nutrient.csv", ",1010,1.26,", `,1010,"1,26",`, `"1,26" is not a number`},
		{"zero byte in a footnote", "food_nutrient.csv", "Mean of two", "Mean\x00of two", "a zero byte"},
		{"wrong encoding", "food_nutrient.csv", "Mean of two", "Mean \xe9 two", "not UTF-8"},
		{"quotation mark never closed", "food_nutrient.csv", `""cold"" and warm"`, `""cold"" and warm`, "food_nutrient.csv:"},
		{"observations", "food_nutrient.csv", ",1010,1.26,4,", ",1010,1.26,4.5,", `"4.5" is not a whole number`},
		{"unknown derivation", "food_nutrient.csv", ",1010,1.26,4,1.0", ",1010,1.26,4,one", `derivation "one" is not in`},
		{"nutrient missing", "nutrient.csv", `"1010","Sucrose","G","210","1600.0"` + "\n", "", `food_nutrient.csv:10:16: nutrient "1010" is not in nutrient.csv`},
		{"unit", "nutrient.csv", `"1010","Sucrose","G"`, `"1010","Sucrose","IU"`, `nutrient 1010 is in "IU", which cannot become g`},
		{"nutrient twice", "nutrient.csv", `"1010","Sucrose"`, `"1011","Sucrose"`, "nutrient 1011 stands twice"},
		{"food missing", "food.csv", "169098,sr_legacy_food", "169099,sr_legacy_food", "food 169098 is not in food.csv"},
		{"food twice", "food.csv", "169098,sr_legacy_food", "168155,sr_legacy_food", "food.csv:4:1: food 168155 stands twice, with different cells"},
		{"no description", "food.csv", "\"Limes, raw\"", "", "the food has no description"},
		{"food number", "food.csv", "\n169098,", "\n16909x,", `"16909x" is not a whole number`},
		{"portion of no food", "food_portion.csv", "\n2,9000001,", "\n2,9000009,", "food_portion.csv:3:3: food 9000009 is not in food.csv"},
		{"portion's weight", "food_portion.csv", ",251.5,", ",heavy,", `food_portion.csv:2:30: "heavy" is not a number`},
		{"label of no food", "branded_food.csv", "\n9000004,", "\n9000009,", "branded_food.csv:2:1: food 9000009"},
		{"label's serving", "branded_food.csv", ",240.0,", ",-240.0,", "is negative"},
		{"measure twice", "measure_unit.csv", "\n1001,", "\n1000,", `measure_unit.csv:3:1: "1000" is empty or stands twice`},
		{"column missing", "food_nutrient.csv", "nutrient_id,amount", "nutrient_id,quantity", `column "amount" is missing`},
		{"column twice", "food_nutrient.csv", "median,loq", "median,median", `column "median" stands twice`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			dir := tablestest.Change(t, trimmed, c.file, func(content []byte) []byte {
				require.Contains(t, string(content), c.from)
				return bytes.ReplaceAll(content, []byte(c.from), []byte(c.to))
			})
			_, err := tablestest.Read(t, fdc.Format, dir)
			assert.ErrorContains(t, err, c.says)
		})
	}
}

func TestLongCells(t *testing.T) {
	for name, cell := range map[string]string{"plain": strings.Repeat("x", 10<<20), "open quotation": `"` + strings.Repeat("a,b\n", 5<<19)} {
		dir := tablestest.Change(t, trimmed, "food.csv", tablestest.Swap(t, `"Limes, raw"`, cell))
		_, err := tablestest.Read(t, fdc.Format, dir)
		assert.ErrorContains(t, err, "food.csv:3: the row that begins here is longer than", name)
	}
}

// Labels print what a serving of a gram rounds to in 100 g, up to many times the whole (the
// branded foods of the public release do): such a release is loaded, one without them is not.
func TestMoreThanTheWholeStandsOnLabelsAlone(t *testing.T) {
	dir := tablestest.Change(t, trimmed, "food_nutrient.csv", tablestest.Swap(t, ",1010,1.26,", ",1010,126,"))
	_, err := tablestest.Read(t, fdc.Format, dir)
	require.NoError(t, err)
	require.NoError(t, os.Remove(filepath.Join(dir, "branded_food.csv")))
	_, err = tablestest.Read(t, fdc.Format, dir)
	assert.ErrorContains(t, err, `food_nutrient.csv:10:21: "126" makes sucrose of 126 g in 100 g, and that cannot be`)
}
