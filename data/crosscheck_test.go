package data_test

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/tables/ciqual"
	"sipsum/internal/tables/ifct"
	"sipsum/internal/tables/stfcj"
	"sipsum/internal/tables/swiss"
	"sipsum/internal/tables/table"
)

// outside are the tables that the core table is compared with: their folder, and
// their id in core/sources.csv, since cells that come from them are left out.
var outside = []struct {
	format         table.Format
	folder, source string
}{
	{ciqual.Format, "ciqual2020", "ciqual2020"},
	{swiss.Format, "swiss53", ""},
	{stfcj.Format, "japan2020", "stfcj2020"},
	{ifct.Format, "ifct2017", ""},
}

// crossChecked are the constituents compared, by class.
var crossChecked = map[string][]constituent.ID{
	"macronutrients": {"WATER", "PROCNT", "FAT", "CHOAVL", "FIBTG", "ALC"},
	"sugars":         {"SUGAR", "GLUS", "FRUS", "SUCS", "LACS", "MALS"},
	"minerals":       {"NA", "K", "CA", "MG", "P", "FE", "ZN", "CU", "MN"},
}

// crossCell is a constituent of a core food beside what other tables print.
type crossCell struct {
	class           string
	food            string
	id              constituent.ID
	mean, low, high float64 // core: central value and 90 % interval, unit of the vocabulary
	others          map[string]printedValue
}

// printedValue is another table's value, at the core food's water.
type printedValue struct{ value, place float64 }

func (v printedValue) within(c crossCell) bool {
	return v.value+v.place/2 >= c.low && v.value-v.place/2 <= c.high
}

// halfWidth is half of the interval against the central value.
func (c crossCell) halfWidth() float64 { return (c.high - c.low) / 2 / c.mean }

// consensus is the median of the other tables.
func (c crossCell) consensus() float64 {
	values := make([]float64, 0, len(c.others))
	for _, v := range c.others {
		values = append(values, v.value)
	}
	return middle(values)
}

func (c crossCell) held() bool { return c.consensus() >= c.low && c.consensus() <= c.high }

// TestCoreAgreesWithOtherTables compares the core table with national tables that
// it was not made from. Where two or more of them state a cell, their median
// stands for them; what each table says by itself is logged, and is held less
// often. Before the comparison
//
//   - their values are brought to the core food's water (EuroFIR, Recipe
//     calculation, adjustment of moisture content: values of different origin are
//     compared at the same moisture);
//   - values below ten times the last place of either table are left out: they
//     are mostly rounding (as in scripts/spread).
//
// Sugars apart are wider than the quarter that was aimed at: the other tables lie
// 15 % from SR28 in the middle and more than a third in one cell of five, and at
// the narrower default more than a quarter fell outside. Their limit here only keeps
// them from growing.
//
// The defaults of scripts/spread were widened for macronutrients and sugars with
// this comparison in view, so it is a calibration of them and no independent
// proof.
func TestCoreAgreesWithOtherTables(t *testing.T) {
	shared := os.Getenv("SIPSUM_SHARED")
	if shared == "" {
		t.Skip("set SIPSUM_SHARED to the folder that holds tables/ciqual2020 and others")
	}
	all := crossCells(t, filepath.Join(shared, "tables"))
	logEachTable(t, all)
	cells := slices.DeleteFunc(slices.Clone(all), func(c crossCell) bool { return len(c.others) < 2 })

	foods := map[string]bool{}
	held := 0
	widths := map[string][]float64{}
	for _, c := range cells {
		foods[c.food] = true
		widths[c.class] = append(widths[c.class], c.halfWidth())
		if c.held() {
			held++
		}
	}
	logClasses(t, cells)
	share := float64(held) / float64(len(cells))
	t.Logf("%d foods, %d of %d cells held (%.1f %%)", len(foods), held, len(cells), 100*share)
	assert.GreaterOrEqual(t, len(foods), 60)
	assert.GreaterOrEqual(t, share, 0.80)
	assert.LessOrEqual(t, share, 0.97, "intervals that hold everything say nothing")
	assert.LessOrEqual(t, middle(widths["macronutrients"]), 0.25)
	assert.LessOrEqual(t, middle(widths["sugars"]), 0.40)
	assert.LessOrEqual(t, middle(widths["minerals"]), 0.40)
	for _, c := range cells {
		if !c.held() {
			t.Logf("not held: %s %s: core %.3g (%.3g to %.3g), the others %.3g", c.food, c.id, c.mean, c.low, c.high, c.consensus())
		}
	}
}

func logClasses(t *testing.T, cells []crossCell) {
	t.Helper()
	for class := range crossChecked {
		var widths []float64
		held := 0
		for _, c := range cells {
			if c.class != class {
				continue
			}
			widths = append(widths, c.halfWidth())
			if c.held() {
				held++
			}
		}
		require.NotEmpty(t, widths, class)
		t.Logf("%s: %d of %d held (%.1f %%), median half-width %.1f %%", class, held, len(widths), 100*float64(held)/float64(len(widths)), 100*middle(widths))
	}
}

func logEachTable(t *testing.T, cells []crossCell) {
	t.Helper()
	allHeld, all := 0, 0
	for _, o := range outside {
		held, n := 0, 0
		for _, c := range cells {
			if v, ok := c.others[o.format.Name]; ok {
				n++
				if v.within(c) {
					held++
				}
			}
		}
		t.Logf("%s by itself: %d of %d held (%.1f %%)", o.format.Name, held, n, 100*float64(held)/float64(n))
		allHeld, all = allHeld+held, all+n
	}
	t.Logf("each table by itself: %d of %d held (%.1f %%)", allHeld, all, 100*float64(allHeld)/float64(all))
}
