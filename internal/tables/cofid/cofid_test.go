package cofid_test

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/tables/cofid"
	"sipsum/internal/tables/table"
	"sipsum/internal/tables/tablestest"
)

const invented = "../../../testdata/tables/cofid"

var none = math.NaN()

// sheets are the sheets of the invented table in the order of a workbook.
var sheets = []string{"1.2 Factors", "1.3 Proximates", "1.4 Inorganics", "1.5 Vitamins", "1.14 Organic Acids"}

var want = tablestest.Want{
	Columns: 21 + 3 + 3 + 3, Foods: 6, Values: 83 + 12 + 6 + 9, First: "99-001", Last: "99-006",
	Names: map[string]string{"99-003": "Invented wine, red"},
	Spots: []tablestest.Spot{
		tablestest.At("99-001", "WATER", estimate.Calculated, 91.25, none, "91.25 g"),
		tablestest.At("99-001", "FAT", estimate.Trace, none, none, "Tr"),
		tablestest.At("99-001", "FIBTG", estimate.Unknown, none, none, "N"),
		tablestest.At("99-001", "SUCS", estimate.Calculated, 0.19, none, "0.2 g in monosaccharide equivalents, times 0.95"),
		tablestest.At("99-001", "CITAC", estimate.Calculated, 4750, none, "4.75 g"),
		tablestest.At("99-001", "SE", estimate.Calculated, 1, none, "1 µg, with a Greek mu"),
		tablestest.At("99-001", "cofid:invented-acid", estimate.Calculated, 3, none, "3 mg, a column that no map knows"),
		tablestest.At("99-002", "LACSM", estimate.Calculated, 4.7, none, "4.7 g in monosaccharide equivalents"),
		tablestest.At("99-002", "FASAT", estimate.Calculated, 2.25, none, "Satd FA /100g fd 2.25 g"),
		tablestest.At("99-002", "cofid:satd-fa-100g-fa", estimate.Calculated, 63.5, none, "Satd FA /100g FA 63.5 g"),
		tablestest.At("99-003", "ALC", estimate.Calculated, 10, none, "9.98 g per 100 ml, specific gravity 0.998"),
		tablestest.At("99-003", "MALAC", estimate.Calculated, 100/0.998, none, "0.1 g per 100 ml"),
		tablestest.At("99-003", "GLUS", estimate.Below, none, none, "< 0.1 per 100 ml"),
		tablestest.At("99-005", "CHOAVLM", estimate.Calculated, 105, none, "105 g in monosaccharide equivalents"),
		tablestest.At("99-005", "SUCS", estimate.Calculated, 99.75, none, "105 g in monosaccharide equivalents, times 0.95"),
		tablestest.At("99-006", "CITAC", estimate.Unknown, none, none, "N"),
	},
}

func TestInventedSheetsAsCSV(t *testing.T) {
	want := want
	want.Names = map[string]string{"99-003": "Invented wine, red"}
	want.Damage = tablestest.Damage{
		File: "1.3 Proximates.csv", Line: 5, Number: ",87.6,", Replaced: ",%,", Missing: "1.3 Proximates.csv", Blank: true,
	}
	tablestest.Run(t, cofid.Format, invented, want)
}

func TestInventedWorkbook(t *testing.T) {
	book := workbook(t, nil)
	want := want
	want.Names = map[string]string{"99-003": "Invented wine, red"}
	tablestest.Run(t, cofid.Format, book, want)
	tablestest.Run(t, cofid.Format, filepath.Dir(book), tablestest.Want{
		Columns: want.Columns, Foods: want.Foods, Values: want.Values, First: want.First, Last: want.Last,
	})
	assert.Equal(t, "2021", tablestest.Open(t, cofid.Format, book).Table.Edition)
	assert.True(t, cofid.Format.Sniff(book))
	assert.True(t, cofid.Format.Sniff(invented))
	assert.False(t, cofid.Format.Sniff(filepath.Dir(invented)))
}

func TestFoodsAsWritten(t *testing.T) {
	foods := tablestest.Foods(t, cofid.Format, invented)
	juice := foods["99-001"]
	assert.Equal(t, "citrus juice", juice.Group)
	assert.Equal(t, "FC", juice.PublisherGroup)
	assert.Equal(t, 0.36, juice.Edible)
	assert.Equal(t, 1.025, juice.Density.GramsPerMl)
	assert.Equal(t, "Pressed; invented\nMain data references: Invented analyses\nNitrogen conversion factor: 6.25", juice.Note)
	assert.Contains(t, foods["99-004"].Note, "Footnote: a note, with a comma")
	assert.Equal(t, "wine", foods["99-003"].Group)

	assert.Empty(t, foods["99-004"].Values)
	assert.Contains(t, foods["99-004"].Note, "no specific gravity")
	assert.Equal(t, "Invented vinegar", foods["99-006"].Name())

	limit := func(code string, tag constituent.ID) float64 {
		return tablestest.Value(t, foods[code], tag).Limit
	}
	assert.Equal(t, 0.05, limit("99-001", "FAT"))                // one decimal in that column
	assert.InDelta(t, 0.1/0.998, limit("99-003", "GLUS"), 1e-12) // < 0.1 per 100 ml
	assert.InDelta(t, 0.5/0.998, limit("99-003", "SE"), 1e-12)   // whole numbers in that column
	assert.InDelta(t, 0.5/0.998, limit("99-003", "cofid:invented-acid"), 1e-12)
}

func TestALeadingSheetMustBeThere(t *testing.T) {
	dir := tablestest.Copy(t, invented)
	require.NoError(t, os.Remove(filepath.Join(dir, "1.3 Proximates.csv")))
	_, err := cofid.Format.Open(t.Context(), dir, "")
	assert.ErrorContains(t, err, "lacks the sheet of proximates (1.3 Proximates.csv)")
	_, err = cofid.Format.Open(t.Context(), t.TempDir(), "")
	assert.ErrorContains(t, err, "lacks a .xlsx workbook")
}

func TestFaultsHaveTheirPlace(t *testing.T) {
	cases := []struct{ name, old, new, says string }{
		{"mark", ",87.6,", ",n/a,", `1.3 Proximates.csv:5:61: "n/a" is neither`},
		{"twice", "99-002,", "99-001,", `1.3 Proximates.csv:5:1: food "99-001" stands twice on this sheet`},
		{"no code", "99-002,", ",", `1.3 Proximates.csv:5:1: the row has figures but no food code`},
		{"unit", "Water (g)", "Water (kJ)", `Water is printed in kJ, which cannot become g`},
		{"column twice", "Fat (g)", "Protein (g)", `column "Protein (g)" stands twice`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			dir := tablestest.Change(t, invented, "1.3 Proximates.csv", tablestest.Swap(t, c.old, c.new))
			_, err := cofid.Format.Open(t.Context(), dir, "")
			assert.ErrorContains(t, err, c.says)
		})
	}
	book := workbook(t, func(sheet string, rows [][]string) {
		if sheet == "1.5 Vitamins" {
			rows[3][9] = "36 mg"
		}
	})
	_, err := cofid.Format.Open(t.Context(), book, "")
	assert.ErrorContains(t, err, `sheet "1.5 Vitamins", cell J4: "36 mg" is neither`)
}

// TestMapHasTheColumnsOfTheExcerpts: no column of the invented header, which
// has the names of published excerpts, is kept because the map does not know it.
func TestMapHasTheColumnsOfTheExcerpts(t *testing.T) {
	m := table.ReadMap("cofid")
	for _, c := range tablestest.Open(t, cofid.Format, invented).Columns {
		_, ok := m.Find(c.Number)
		assert.Equal(t, c.Number != "invented-acid", ok, c.Number)
	}
	for _, row := range m.Rows {
		assert.NotEmpty(t, row.Why, row.Column)
		switch {
		case row.Fate != table.Mapped:
			assert.Equal(t, 1.0, row.Factor, row.Column)
		case row.Factor != 1:
			// half of the molar mass: C12H22O11 over two of C6H12O6
			hexose := constituent.Must("GLUS").Molar
			assert.InDelta(t, row.Constituent.Molar/(2*hexose), row.Factor, 2e-4, row.Column)
		}
	}
}

// workbook writes the sheets as a workbook, after change.
func workbook(t *testing.T, change func(sheet string, rows [][]string)) string {
	t.Helper()
	book := excelize.NewFile()
	defer book.Close()
	require.NoError(t, book.SetSheetName("Sheet1", "1.1 Introduction"))
	require.NoError(t, book.SetCellStr("1.1 Introduction", "B2", "An invented table"))
	for _, name := range sheets {
		file, err := os.Open(filepath.Join(invented, name+".csv"))
		require.NoError(t, err)
		rows, err := csv.NewReader(file).ReadAll()
		file.Close()
		require.NoError(t, err)
		if change != nil {
			change(name, rows)
		}
		_, err = book.NewSheet(name)
		require.NoError(t, err)
		for i, row := range rows {
			for j, text := range row {
				cell, err := excelize.CoordinatesToCellName(j+1, i+1)
				require.NoError(t, err)
				if x, ok := table.ParsePrinted(text); ok && !slices.Contains([]int{0, 4}, j) {
					require.NoError(t, book.SetCellFloat(name, cell, x, -1, 64))
				} else if text != "" {
					require.NoError(t, book.SetCellStr(name, cell, text))
				}
			}
		}
	}
	path := filepath.Join(t.TempDir(), "Invented_Dataset_2021..xlsx")
	require.NoError(t, book.SaveAs(path))
	return path
}
