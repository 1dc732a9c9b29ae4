package data_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/tables/afcd"
	"sipsum/internal/tables/ciqual"
	"sipsum/internal/tables/ifct"
	"sipsum/internal/tables/stfcj"
	"sipsum/internal/tables/swiss"
	"sipsum/internal/tables/table"
)

// outsideTable is a table that the core table is compared with.
type outsideTable struct {
	format table.Format
	folder string
	source string // its ids in core/sources.csv: core values that come from it are left out

	// analysed: available carbohydrate is the sum of the sugars and starch that
	// were analysed, no difference.
	analysed bool
	// marks: the table tells its own analyses from what it calculated or took from
	// elsewhere.
	marks bool
}

var outside = []outsideTable{
	{format: ciqual.Format, folder: "ciqual2020", source: "ciqual2020"},
	{format: swiss.Format, folder: "swiss53"},
	{format: stfcj.Format, folder: "japan2020", source: "stfcj2020", analysed: true, marks: true},
	{format: ifct.Format, folder: "ifct2017", analysed: true},
	{format: afcd.Format, folder: "afcd2", source: "afcd2025 afcd2022"},
}

// classes are the constituents compared, and how wide half of an interval may be
// in the middle of all cells, against the central value: what it takes to hold nine
// figures of ten of foods wherever they are bought (scripts/spread), where four of five
// had been held by half of that.
var classes = []struct {
	name   string
	ids    []constituent.ID
	widest float64
}{
	{"macronutrients", []constituent.ID{"WATER", "PROCNT", "FAT", "CHOAVL", "FIBTG", "ALC"}, 0.45},
	{"sugars", []constituent.ID{"SUGAR", "GLUS", "FRUS", "SUCS", "LACS", "MALS"}, 0.70},
	{"minerals", []constituent.ID{"NA", "K", "CA", "MG", "P", "FE", "ZN", "CU", "MN"}, 0.55},
}

// TestCoreAgreesWithOtherTables compares the core table, cell by cell, with
// national tables that it was not made from: each pair of data/crosswalk.csv that
// is the same food (match A), by the rules of crossrules_test.go. The 90 %
// intervals must hold nearly nine cells of ten, and be narrow enough to say something.
//
// What data/spread.csv takes to lie between sources was chosen with this comparison
// in view, by constituent and class of food (scripts/spread), so it is a
// calibration of them and no independent proof. The inner half of an interval would
// hold half of all values if the intervals were right in the middle.
func TestCoreAgreesWithOtherTables(t *testing.T) {
	cells := crossCells(t, sharedTables(t))
	foods, pairs := map[string]bool{}, map[string]bool{}
	for _, c := range cells {
		foods[c.food], pairs[c.food+" "+c.table] = true, true
	}
	t.Logf("%d foods, %d pairs", len(foods), len(pairs))
	assert.GreaterOrEqual(t, len(foods), 60)
	share := heldOf(cells)
	logHeld(t, "all", cells)
	assert.GreaterOrEqual(t, share, 0.88)
	assert.LessOrEqual(t, share, 0.97, "intervals that hold everything say nothing")
	for _, o := range outside {
		logHeld(t, o.format.Name, only(cells, func(c crossCell) bool { return c.table == o.format.Name }))
	}
	for _, class := range classes {
		of := only(cells, func(c crossCell) bool { return c.class == class.name })
		require.NotEmpty(t, of, class.name)
		logHeld(t, class.name, of)
		assert.LessOrEqual(t, widthOf(of), class.widest, class.name)
	}
	for _, c := range cells {
		if !c.held() {
			t.Logf("not held: %s %s: core %.3g (%.3g to %.3g), %s %.3g", c.food, c.id, c.mean, c.low, c.high, c.table, c.value)
		}
	}
}

func logHeld(t *testing.T, of string, cells []crossCell) {
	t.Helper()
	inner := len(only(cells, crossCell.heldInside))
	t.Logf("%s: %.1f %% of %d held (%.1f %% by the inner half), half-width in the middle %.1f %%",
		of, 100*heldOf(cells), len(cells), 100*float64(inner)/float64(len(cells)), 100*widthOf(cells))
}

// heldOf is the share of cells that their interval holds.
func heldOf(cells []crossCell) float64 {
	held := len(only(cells, crossCell.held))
	return float64(held) / float64(len(cells))
}

// widthOf is the median of half the intervals.
func widthOf(cells []crossCell) float64 {
	widths := make([]float64, len(cells))
	for i, c := range cells {
		widths[i] = c.halfWidth()
	}
	return middle(widths)
}

func only(cells []crossCell, keep func(crossCell) bool) []crossCell {
	var some []crossCell
	for _, c := range cells {
		if keep(c) {
			some = append(some, c)
		}
	}
	return some
}

// sharedTables is the folder of the published tables, which are not part of
// sipsum.
func sharedTables(t *testing.T) string {
	t.Helper()
	shared := os.Getenv("SIPSUM_SHARED")
	if shared == "" {
		t.Skip("set SIPSUM_SHARED to the folder that holds tables/ciqual2020 and others")
	}
	return filepath.Join(shared, "tables")
}
