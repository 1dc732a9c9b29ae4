package stfcj_test

import (
	"archive/zip"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/stfcj"
	"sipsum/internal/tables/table"
	"sipsum/internal/tables/tablestest"
	"sipsum/internal/unit"
)

const trimmed = "../../../testdata/tables/stfcj"

var none = math.NaN()

// Cells as printed in the workbooks of the ministry; acids in g become mg.
var spots = []tablestest.Spot{
	tablestest.At("07156", "CITAC", estimate.Measured, 6500, none, "organic acids: 6.5 g"),
	tablestest.At("07156", "MALAC", estimate.Measured, 200, none, "organic acids: 0.2 g"),
	tablestest.At("07156", "SUCAC", estimate.Below, none, none, "organic acids: 0"),
	tablestest.At("07156", "OA", estimate.Calculated, 6.7, none, "main table: 6.7"),
	tablestest.At("07156", "SUCS", estimate.Measured, 0.3, none, "carbohydrates: 0.3"),
	tablestest.At("07156", "FASAT", estimate.Calculated, 0.02, none, "fatty acids: (0.02)"),
	tablestest.At("07156", "VITC", estimate.Measured, 50, none, "main table: 50"),
	tablestest.At("03005", "CHOAVLM", estimate.Calculated, 104.9, none, "main table: (104.9)"),
	tablestest.At("03022", "GLUCAC", estimate.Measured, 300, none, "organic acids: 0.3"),
	tablestest.At("03022", "MALAC", estimate.Trace, none, none, "organic acids: Tr"),
	tablestest.At("03022", "FRUS", estimate.Measured, 39.7, none, "carbohydrates: 39.7"),
	tablestest.At("07091", "SORTL", estimate.Calculated, 2900, none, "carbohydrates: (2.9)"),
	tablestest.At("07091", "POLYL", estimate.Calculated, 2.9, none, "main table: 2.9"),
	tablestest.At("13003", "LACS", estimate.Measured, 4.4, none, "carbohydrates: 4.4"),
	tablestest.At("13003", "FASAT", estimate.Calculated, 2.33, none, "fatty acids: 2.33"),
	tablestest.At("17015", "ACEAC", estimate.Measured, 4200, none, "organic acids: 4.2"),
	tablestest.At("16046", "CAFFN", estimate.Measured, 4000, none, "remarks: カフェイン： 4.0 g"),
	tablestest.At("16045", "CAFFN", estimate.Measured, 60, none, "remarks: カフェイン： 0.06 g"),
	tablestest.At("16045", "TAN", estimate.Measured, 250, none, "remarks: タンニン： 0.25 g"),
	tablestest.At("16048", "THEBRN", estimate.Measured, 1700, none, "remarks: テオブロミン： 1.7 g"),
	tablestest.At("16035", "stfcj:nitrate", estimate.Trace, none, none, "remarks: 硝酸イオン： Tr"),
	tablestest.At("15027", "CHOLE", estimate.Calculated, 98, none, "main table: a cell of -98 in the format 0_);\\(0\\), shown (98)"),
	tablestest.At("15076", "stfcj:CHOAVLDF-", estimate.Unknown, none, none, "main table: -30.5, a misprint"),
	tablestest.At("03032", "FIBTG", estimate.Measured, 14, none, "main table: 14.0†"),
	tablestest.At("16029", "ALC", estimate.Measured, 11.1, none, "main table: 11.1"),
}

func TestTrimmedRelease(t *testing.T) {
	tablestest.Run(t, stfcj.Format, trimmed, tablestest.Want{
		// Values counted apart from this reader.
		Columns: 146, Foods: 28, Values: 2096, First: "01004", Last: "17015",
		Names: map[string]string{"07156": "（かんきつ類） レモン 果汁 生"},
		Spots: spots,
	})
}

// 2,478 foods is the ministry's count. Values were counted with a few lines of a
// script over the four workbooks, apart from this reader.
func TestWholeRelease(t *testing.T) {
	tablestest.Run(t, stfcj.Format, tablestest.Published(t, "japan2020"), tablestest.Want{
		Columns: 146, Foods: 2478, Values: 112878 + 7594 + 1346 + 78329 + 432, First: "01001", Last: "18039",
		Names: map[string]string{"16046": "＜コーヒー・ココア類＞ コーヒー インスタントコーヒー"},
		Spots: spots,
	})
}

// TestStates holds the states against counts of the printed signs.
func TestStates(t *testing.T) {
	release := tablestest.Open(t, stfcj.Format, tablestest.Published(t, "japan2020"))
	states, inAcids := map[estimate.State]int{}, 0
	var acids []constituent.ID
	for _, number := range []string{"FORAC", "ACEAC", "GLYCLAC", "LACAC", "GLUCAC", "OXALAC", "MOLAC", "SUCAC", "FUMAC", "MALAC", "TARAC", "GLUAKAC", "CITAC", "SALAC", "PCHOUAC", "CAFFAC", "FERAC", "CHLRAC", "QUINAC", "OROTAC", "PYROGAC", "PROPAC"} {
		acids = append(acids, constituent.ID(number), constituent.ID("stfcj:"+number))
	}
	for f, err := range release.Foods {
		require.NoError(t, err)
		found := false
		for _, v := range f.Values {
			if len(v.Ref) < 8 || v.Ref[:8] != "remarks:" {
				states[v.State]++
			}
			for _, a := range acids {
				found = found || a == v.Constituent && v.Ref == string(trimTable(a))
			}
		}
		if found {
			inAcids++
		}
	}
	assert.Equal(t, 409, inAcids, "foods in the annex of organic acids")
	assert.Equal(t, 8260, states[estimate.Trace], "Tr and (Tr)")
	assert.Equal(t, 23024+20, states[estimate.Assumed], "(0), and 0 in the format \\(0\\)")
	assert.Equal(t, 32525-20, states[estimate.Below], "0")
	assert.Equal(t, 1, states[estimate.Unknown], "the misprint")
}

func trimTable(id constituent.ID) constituent.ID {
	if len(id) > 6 && id[:6] == "stfcj:" {
		return id[6:]
	}
	return id
}

func TestLimits(t *testing.T) {
	// The least amount printed: 0.1 g of malic acid, 1 µg of iodine, 0.1 g of tannins.
	foods := tablestest.Foods(t, stfcj.Format, trimmed)
	for _, c := range []struct {
		code  string
		tag   constituent.ID
		limit float64
	}{{"03022", "MALAC", 50}, {"07156", "SUCAC", 10}, {"07156", "ID", 0.3}, {"16035", "stfcj:nitrate", 0.05}} {
		assert.InDelta(t, c.limit, tablestest.Value(t, foods[c.code], c.tag).Limit, 1e-9, "%s %s", c.code, c.tag)
	}
}

func TestFoodAsPublished(t *testing.T) {
	foods := tablestest.Foods(t, stfcj.Format, trimmed)
	f := foods["07042"] // (100 g：97mL、100 mL：103g)
	assert.Equal(t, 1.03, f.Density.GramsPerMl)
	assert.Equal(t, "果実類", f.PublisherGroup)
	assert.Equal(t, "citrus juice", f.Group)
	assert.Equal(t, "ja", f.Names[0].Language)
	assert.Equal(t, 1.0, f.Edible)
	assert.Equal(t, "別名： バレンシアオレンジ\n(100 g：97mL、100 mL：103g)", f.Note)

	f = foods["14001"] // (100 g：200mL、100 mL：91g): the halves contradict each other
	assert.False(t, food.Stated(f.Density.GramsPerMl))
	f = foods["13003"] // (100 g： 96.9 mL、100 mL： 103.2 g)
	assert.Equal(t, 1.032, f.Density.GramsPerMl)
	f = foods["07091"] // refuse 15
	assert.Equal(t, 0.85, f.Edible)

	f = foods["16045"]
	assert.Equal(t, "remarks: カフェイン: 0.06 g", tablestest.Value(t, f, "CAFFN").Ref)
	f = foods["06371"] // iodine: *
	_, ok := f.Value("ID")
	assert.False(t, ok)
	f = foods["16001"] // アルコール： 15.4 容量 % is no mass
	assert.Equal(t, "ALC", tablestest.Value(t, f, "ALC").Ref)
}

// TestMapIsWhole takes columns and units from the headers of the workbooks,
// which the trimmed release has whole: open refuses a column that the map lacks.
func TestMapIsWhole(t *testing.T) {
	release := tablestest.Open(t, stfcj.Format, trimmed)
	m := table.ReadMap("stfcj")
	assert.Len(t, m.Rows, len(release.Columns)+1, "all but the refuse")
	for _, c := range release.Columns {
		row, ok := m.Find(c.Number)
		require.True(t, ok, c.Number)
		if row.Fate == table.Mapped {
			want, ok := unit.Convert(c.Unit, row.Constituent.Unit)
			assert.True(t, ok, c.Number)
			assert.Equal(t, want, row.Factor, c.Number)
		}
	}
}

func TestAnnexesMayBeAbsent(t *testing.T) {
	dir := tablestest.Copy(t, trimmed)
	for _, file := range []string{"organic_acids.xlsx", "carbohydrates.xlsx", "fatty_acids.xlsx"} {
		require.NoError(t, os.Remove(filepath.Join(dir, file)))
	}
	for _, path := range []string{dir, filepath.Join(dir, "main.xlsx")} {
		assert.True(t, stfcj.Format.Sniff(path))
		assert.Len(t, tablestest.Open(t, stfcj.Format, path).Columns, 53+6)
		foods := tablestest.Foods(t, stfcj.Format, path)
		assert.Len(t, foods, 28)
		for _, f := range foods {
			_, ok := f.Value("CITAC")
			assert.False(t, ok)
		}
	}
	require.NoError(t, os.Remove(filepath.Join(dir, "main.xlsx")))
	assert.False(t, stfcj.Format.Sniff(dir))
	_, err := stfcj.Format.Open(t.Context(), dir, "")
	assert.ErrorContains(t, err, "lacks the workbook of the main table")
}

func TestArchive(t *testing.T) {
	path := filepath.Join(t.TempDir(), "release.zip")
	out, err := os.Create(path)
	require.NoError(t, err)
	z := zip.NewWriter(out)
	require.NoError(t, z.AddFS(os.DirFS(trimmed)))
	require.NoError(t, z.Close())
	require.NoError(t, out.Close())
	assert.Equal(t, tablestest.Open(t, stfcj.Format, trimmed).Table, tablestest.Open(t, stfcj.Format, path).Table)
	assert.Len(t, tablestest.Foods(t, stfcj.Format, path), 28)
}

func TestDamagedWorkbooks(t *testing.T) {
	t.Run("main", func(t *testing.T) {
		tablestest.RunBook(t, stfcj.Format, trimmed, tablestest.BookDamage{File: "main.xlsx", Sheet: "7 果実類", Row: 15, Column: 8, Header: 11})
	})
	t.Run("annex", func(t *testing.T) {
		tablestest.RunBook(t, stfcj.Format, trimmed, tablestest.BookDamage{File: "carbohydrates.xlsx", Sheet: "表全体", Row: 10, Column: 8, Header: 5})
	})
}

// TestWorkbooksThatDoNotBelongTogether: each workbook is whole by itself.
func TestWorkbooksThatDoNotBelongTogether(t *testing.T) {
	for _, c := range []struct {
		name, file, sheet, cell string
		value                   any
		says                    string
	}{
		{"stray food", "organic_acids.xlsx", "表全体", "B8", "99999", "organic_acids.xlsx:8:2: food 99999 is not in the main table"},
		{"unknown column", "main.xlsx", "7 果実類", "H11", "SURPRISE", `sheet "7 果実類", cell H11: column "SURPRISE" is not known`},
		{"column twice", "main.xlsx", "7 果実類", "I11", "WATER", `column "WATER" stands twice`},
		{"column missing", "main.xlsx", "7 果実類", "H11", nil, "column WATER is missing"},
		{"other unit", "main.xlsx", "7 果実類", "H10", "mg", "column WATER is in"},
		{"refuse of more than all", "main.xlsx", "7 果実類", "E13", 101, "is more than all"},
		{"no name", "main.xlsx", "7 果実類", "D13", nil, "the food has no name"},
		{"code without its zero", "main.xlsx", "7 果実類", "B13", 7042, `food number "7042" has not five digits`},
		{"open parenthesis", "main.xlsx", "7 果実類", "H13", "(8.4", "has no closing parenthesis"},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := tablestest.Copy(t, trimmed)
			book, err := excelize.OpenFile(filepath.Join(dir, c.file))
			require.NoError(t, err)
			require.NoError(t, book.SetCellValue(c.sheet, c.cell, c.value))
			require.NoError(t, book.Save())
			_, err = tablestest.Read(t, stfcj.Format, dir)
			assert.ErrorContains(t, err, c.says)
		})
	}
	dir := tablestest.Copy(t, trimmed)
	tablestest.Write(t, dir, "main (copy).xlsx", tablestest.Bytes(t, dir, "main.xlsx"))
	_, err := stfcj.Format.Open(t.Context(), dir, "")
	assert.ErrorContains(t, err, "is the same part of the table as")
}
