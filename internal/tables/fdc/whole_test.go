package fdc_test

import (
	"archive/zip"
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/tables/fdc"
	"sipsum/internal/tables/tablestest"
)

// published copies some of the publisher's files, which are not part of sipsum,
// into a folder of their own, under the names that they have there.
func published(t testing.TB, names ...string) string {
	t.Helper()
	from, dir := tablestest.Published(t, "fdc"), t.TempDir()
	for _, name := range names {
		tablestest.Write(t, dir, name, tablestest.Bytes(t, from, name))
	}
	return dir
}

// TestLegacyFoods: 48 foods and 4,942 values, with the older header and other
// names of files; three of the 50 rows of foods are one.
func TestLegacyFoods(t *testing.T) {
	dir := published(t, "food_used.csv", "food_nutrient_used.csv", "nutrient.csv")
	assert.True(t, fdc.Format.Sniff(dir))
	tablestest.Run(t, fdc.Format, dir, tablestest.Want{
		Columns: 474, Foods: 48, Values: 4942, First: "170032", Last: "170187",
		Names: map[string]string{"169118": "Pears, raw", "170187": "Nuts, walnuts, english"},
		Spots: []tablestest.Spot{
			tablestest.At("169118", "SUGAR", estimate.Measured, 9.75, none, "169118,2000,9.75,24,1.0,8.47,11.79"),
			tablestest.At("171942", "SUGAR", estimate.Calculated, 5.28, none, "171942,2000,5.28,3,44.0,4.17,6.25"),
			tablestest.At("170162", "PROCNT", estimate.Measured, 18.22, none, "170162,1003,18.22,2,1.0,17.46,18.97"),
			tablestest.At("169251", "FOL", estimate.Calculated, 17, none, "169251,1177,17.0,36,43.0,10.0,28.0"),
			tablestest.At("170108", "FOL", estimate.Measured, 46, none, "170108,1177,46.0,2,1.0,42.0,51.0"),
			tablestest.At("174290", "MG", estimate.Measured, 35, none, "174290,1090,35.0,2,1.0,34.0,37.0"),
			tablestest.At("173933", "SUCS", estimate.Measured, 1.26, none, "173933,1010,1.26,4,1.0,1.2,1.31"),
			tablestest.At("167746", "WATER", estimate.Measured, 88.98, none, "167746,1051,88.98,5,,,"),
			tablestest.At("167746", "FOLAC", estimate.Assumed, 0, none, "167746,1186,0.0,0,68.0"),
			tablestest.At("174832", "LACS", estimate.Below, none, none, "174832,1013,0.0,3,1.0,0.0,0.0"),
		},
	})
}

// TestLabelsWithoutFoods: a slice with the newer header and no food.csv. 9,541
// labels; 5,086 foods with 69,228 values, of which five are a second row for a
// nutrient; 23 foods are in both.
func TestLabelsWithoutFoods(t *testing.T) {
	dir := published(t, "course_branded_food.csv", "course_food_nutrient.csv", "nutrient.csv")
	tablestest.Run(t, fdc.Format, dir, tablestest.Want{
		Columns: 476, Foods: 9541 + 5086 - 23, Values: 69228 - 5, First: "1106032", Last: "2646151",
		Names: map[string]string{"2005862": "FDC food 2005862"},
		Spots: []tablestest.Spot{
			tablestest.At("2005862", "QUINAC", estimate.Below, none, none, "2005862,1044,0.0,1.0,1.0,,,,40.0"),
			tablestest.At("2260824", "MALS", estimate.Below, none, none, "2260824,1014,0.0,1.0,1.0,,,,0.25"),
			tablestest.At("1104732", "NA", estimate.Measured, 3, none, "1104732,1093,3.0,1.0,1.0,,,,2.45"),
			tablestest.At("2457394", "ENERC_KCAL", estimate.Calculated, 234, none, "2457394,1008,234.0,,71.0, then 117.0"),
			tablestest.At("2624097", "FOL", estimate.Calculated, 61, none, "2624097,1177,61.0,,70.0, then 59.0"),
			tablestest.At("1106320", "NA", estimate.Calculated, 714, none, "1106320,1093,714.0,,70.0"),
		},
	})
	foods := tablestest.Foods(t, fdc.Format, dir)
	label := foods["1117254"]
	assert.Contains(t, label.Note, "GTIN: 00014800582048", "gtin_upc 14800582048")
	assert.Contains(t, label.Note, "Ingredients: ")
	assert.Contains(t, label.Note, "the amounts may be per 100 ml", "serving_size 5.0 ml")
	assert.Equal(t, 85.0, foods["1106032"].Portions[0].Grams, "serving_size 85.0 g")
	assert.NotContains(t, foods["1106032"].Note, "Ingredients: INGREDIENTS")
	assert.Contains(t, foods["2457394"].Note, "On 1008: published twice, as 234 and as 117")
}

// TestTwoReleasesInAFolder cannot be told apart.
func TestTwoReleasesInAFolder(t *testing.T) {
	dir := published(t, "food_used.csv", "food_nutrient_used.csv", "nutrient.csv", "course_food_nutrient.csv")
	_, err := fdc.Format.Open(t.Context(), dir, "")
	assert.ErrorContains(t, err, "both course_food_nutrient.csv and food_nutrient_used.csv have the columns of food_nutrient.csv")
}

// TestFoundationJSON: 9 foods with 553 values.
func TestFoundationJSON(t *testing.T) {
	dir := published(t, "foundation_excerpt.json")
	assert.True(t, fdc.Format.Sniff(dir))
	for _, path := range []string{dir, filepath.Join(dir, "foundation_excerpt.json")} {
		tablestest.Run(t, fdc.Format, path, tablestest.Want{
			Columns: 137, Foods: 9, Values: 553, First: "321358", Last: "323793",
			Names: map[string]string{"321358": "Hummus, commercial"},
			Spots: []tablestest.Spot{
				tablestest.At("321358", "PROCNT", estimate.Calculated, 7.35, none, `1003, NC, min 6.2, max 8.05, "amount": 7.35`),
				tablestest.At("321358", "NA", estimate.Measured, 438, none, `1093, A, "dataPoints": 11, "amount": 438`),
				tablestest.At("321358", "LYCPN", estimate.Below, none, none, `1122, A, "dataPoints": 1, "amount": 0.0`),
				tablestest.At("321358", "fdc:1063", estimate.Calculated, 0.34, none, `1063, AS, "amount": 0.34`),
				tablestest.At("321360", "WATER", estimate.Measured, 92.5, none, `1051, A, "dataPoints": 18, "amount": 92.5`),
				tablestest.At("323294", "MN", estimate.Measured, 2.02, none, `1101, A, "dataPoints": 13, "amount": 2.02`),
				tablestest.At("323505", "VITC", estimate.Measured, 93.4, none, `1162, A, "dataPoints": 5, "amount": 93.4`),
				tablestest.At("323604", "ID", estimate.Measured, 61.6, none, `1100, A, "dataPoints": 14, "amount": 61.6`),
				tablestest.At("323793", "PROCNT", estimate.Calculated, 79.9, none, `1003, NC, "amount": 79.9`),
			},
		})
	}
}

func TestTrimmedJSON(t *testing.T) {
	path := filepath.Join(trimmed, "foundation.json")
	tablestest.Run(t, fdc.Format, path, tablestest.Want{
		Columns: 25, Foods: 2, Values: 32, First: "321360", Last: "323505",
		Spots: []tablestest.Spot{
			tablestest.At("321360", "WATER", estimate.Measured, 92.5, none, `1051, A, "dataPoints": 18, "amount": 92.5`),
			tablestest.At("323505", "VITC", estimate.Measured, 93.4, none, `1162, A, "dataPoints": 5, "amount": 93.4`),
		},
	})
	release, foods := tablestest.Open(t, fdc.Format, path), tablestest.Foods(t, fdc.Format, path)
	assert.Equal(t, "2019-04-01", release.Table.Edition, `"publicationDate": "4/1/2019"`)
	assert.Equal(t, "Brassica oleracea (Acephala Group)", foods["323505"].Names[1].Text)
	assert.Contains(t, foods["323505"].Note, "NDB number: 11233")
	assert.Equal(t, `cup pieces of ~1"`, foods["323505"].Portions[0].Name)
}

func TestDamagedJSON(t *testing.T) {
	text := string(tablestest.Bytes(t, trimmed, "foundation.json"))
	begin := strings.Index(text, "\n{") // of the first food
	for _, c := range []struct{ name, text, says string }{
		{"cut off", text[:len(text)-5], "cut off"},
		{"cut off in a food", text[:begin+500], "f.json:2:1: the file ends in the middle"},
		{"empty", "", "the file ends in the middle"},
		{"no foods", `{"FoundationFoods": []}`, "holds no food"},
		{"another release", `{"BrandedFoods": []}`, "only that of the Foundation foods is read"},
		{"a list", `[]`, "stands where"},
		{"more after the end", text + "{}", "something follows the end"},
		{"more than the whole", strings.Replace(text, `"amount": 92.5`, `"amount": 925`, 1), "f.json:2:1: food 321360, nutrient 1051 makes water of 925 g in 100 g, and that cannot be"},
		{"negative", strings.Replace(text, `"amount": 92.5`, `"amount": -92.5`, 1), "f.json:2:1: food 321360: nutrient 1051 is negative"},
		{"too large", strings.Replace(text, `"amount": 92.5`, `"amount": 1e400`, 1), "amount holds number 1e400, which it cannot"},
		{"text for a number", strings.Replace(text, `"amount": 92.5`, `"amount": "92.5"`, 1), "amount holds string, which it cannot"},
		{"NaN", strings.Replace(text, `"amount": 92.5`, `"amount": NaN`, 1), "invalid character 'N'"},
		{"zero byte", strings.Replace(text, "Kale, raw", "Kale\x00", 1), "invalid character"},
		{"zero byte escaped", strings.Replace(text, "Kale, raw", `Kale\u0000`, 1), "zero byte"},
		{"wrong encoding", strings.Replace(text, "Kale, raw", "Kal\xe9", 1), "not UTF-8"},
		{"food twice", strings.Replace(text, `"fdcId": 323505`, `"fdcId": 321360`, 1), ": food 321360 stands twice"},
		{"no number", strings.Replace(text, `"fdcId": 323505`, `"fdcId": 0`, 1), "no fdcId"},
		{"huge", strings.Replace(text, "Kale, raw", strings.Repeat("x", 20<<20), 1), "longer than 16777216 bytes"},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			tablestest.Write(t, dir, "f.json", []byte(c.text))
			_, err := tablestest.Read(t, fdc.Format, dir)
			require.ErrorContains(t, err, c.says)
			assert.Equal(t, fail.Wrong, fail.ExitCode(err))
		})
	}
}

// TestZip reads the release from an archive with a folder in it, as the agency
// packs it.
func TestZip(t *testing.T) {
	var packed bytes.Buffer
	w := zip.NewWriter(&packed)
	for _, name := range []string{"food.csv", "food_nutrient.csv", "nutrient.csv", "branded_food.csv", "food_portion.csv", "measure_unit.csv"} {
		out, err := w.Create("FoodData_invented/" + name)
		require.NoError(t, err)
		_, err = out.Write(tablestest.Bytes(t, trimmed, name))
		require.NoError(t, err)
	}
	require.NoError(t, w.Close())
	path := filepath.Join(t.TempDir(), "release.zip")
	require.NoError(t, os.WriteFile(path, packed.Bytes(), 0o600))
	assert.True(t, fdc.Format.Sniff(path))
	release, foods := tablestest.Open(t, fdc.Format, path), tablestest.Foods(t, fdc.Format, path)
	assert.Len(t, foods, 10)
	assert.Len(t, release.Columns, 474)

	require.NoError(t, os.WriteFile(path, packed.Bytes()[:packed.Len()/2], 0o600))
	assert.False(t, fdc.Format.Sniff(path))
	_, err := fdc.Format.Open(t.Context(), path, "")
	assert.Equal(t, fail.Wrong, fail.ExitCode(err))
}

func TestSniff(t *testing.T) {
	assert.True(t, fdc.Format.Sniff(trimmed))
	assert.True(t, fdc.Format.Sniff(filepath.Join(trimmed, "foundation.json")))
	for _, path := range []string{"../../../testdata/tables/sr", "../../../testdata/tables/ifct", "../../../data/core", ".", "nowhere"} {
		assert.False(t, fdc.Format.Sniff(path), path)
	}
}
