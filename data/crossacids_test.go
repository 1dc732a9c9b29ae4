package data_test

import (
	"encoding/csv"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// acidColumns are the single acids that an outside table prints (afcd).
var acidColumns = []constituent.ID{"ACEAC", "CITAC", "FUMAC", "LACAC", "MALAC", "OXALAC", "QUINAC", "SHIKAC", "SUCAC", "TARAC"}

// acidCell is a single acid of a core food beside what the outside table prints,
// both as ranges in mg/100 g: core's 90 % interval, and all that rounds to the
// other's figure, at the core food's water.
type acidCell struct {
	food, code  string
	id          constituent.ID
	mean        float64
	low, high   float64
	printed     float64 // as the other table has it; 0 is below its last digit
	half        float64 // of that digit
	least, most float64
	kind        string // figure, limit, zero (by a rule) or estimate (by kin)
}

func (c acidCell) held() bool { return c.most >= c.low && c.least <= c.high }

// telling cells have something to say: one of the two is clearly there.
func (c acidCell) telling() bool { return c.printed > 0 || c.low > c.most }

// acidCells compares the pairs of match A.
func acidCells(t *testing.T, pairs []crossPair) []acidCell {
	t.Helper()
	own := map[string]*food.Food{}
	for _, p := range pairs {
		own[p.ours.ID.Code] = p.ours
	}
	var cells []acidCell
	left := 0
	for _, p := range pairs {
		if p.match != "A" || p.table.format.Name != "afcd" {
			continue
		}
		for _, id := range acidColumns {
			theirs, ok := p.theirs.Value(id)
			if !ok || theirs.State == estimate.Assumed {
				continue
			}
			ours := p.own.Cell(id)
			if !ours.Known {
				continue
			}
			c := acidCell{food: p.ours.ID.Code, code: p.theirs.ID.Code, id: id}
			v, published := p.ours.Value(id)
			switch {
			case published && from(v, own, p.table):
				left++
				continue
			case published && (v.State == estimate.Below || v.State == estimate.Trace):
				c.kind = "limit"
			case published && food.Stated(v.Amount) && v.State != estimate.Assumed:
				c.kind = "figure"
			case ours.Amount == 0:
				c.kind = "zero"
			default:
				c.kind = "estimate"
			}
			if s, drawn := p.acidIntervals[id]; drawn {
				c.mean, c.low, c.high = s.Mean, s.Low, s.High
			}
			half, scale := p.places[id]*constituent.Must(id).PerGram/2, p.sameWater()
			c.half = half
			if food.Stated(theirs.Amount) {
				c.printed = theirs.Amount
			}
			c.least, c.most = max(c.printed-half, 0)*scale, (c.printed+half)*scale
			cells = append(cells, c)
		}
	}
	t.Logf("%d cells came from the table itself and are left out", left)
	return cells
}

// from tells whether a value comes from a table, or from a food that it was
// borrowed from.
func from(v food.Value, foods map[string]*food.Food, source outsideTable) bool {
	for range 5 { // a lender may have borrowed itself
		if source.isSourceOf(v) {
			return true
		}
		lender := foods[v.Ref]
		if lender == nil || !slices.Contains(strings.Fields(v.Source), "borrowed") {
			return false
		}
		v, _ = lender.Value(v.Constituent)
	}
	return false
}

// TestAcidsOfAnOutsideTable compares core's single acids with the first table of
// them that it was not made from, cell by cell: foods of match A, both brought to the
// core food's water. Each cell that the 90 % interval does not hold is judged in
// testdata/acids/afcd_misses.csv. Estimates by kin are told and not judged.
func TestAcidsOfAnOutsideTable(t *testing.T) {
	const (
		fewest       = 90   // telling cells
		leastTelling = 0.80 // of them held: 73 % when first compared, 85 % with data/spread.csv by class
		leastAll     = 0.90 // of all, cells that both print as nearly nothing included
	)
	cells := acidCells(t, crossPairs(t, sharedTables(t)))
	estimates := func(c acidCell) bool { return c.kind == "estimate" }
	t.Logf("estimates by kin: %s", heldAcids(cells, estimates))
	known := slices.DeleteFunc(slices.Clone(cells), estimates)
	for _, id := range acidColumns {
		t.Logf("%s: %s", id, heldAcids(known, func(c acidCell) bool { return c.id == id && c.telling() }))
	}
	told := slices.DeleteFunc(slices.Clone(known), func(c acidCell) bool { return !c.telling() })
	t.Logf("telling cells: %s; all: %s", heldAcids(told, acidCell.telling), heldAcids(known, nil))
	assert.GreaterOrEqual(t, len(told), fewest)
	assert.GreaterOrEqual(t, shareOfAcids(told), leastTelling)
	assert.GreaterOrEqual(t, shareOfAcids(known), leastAll)
	judged(t, known)
}

// shareOfAcids is the share of cells that is held.
func shareOfAcids(cells []acidCell) float64 {
	held := 0
	for _, c := range cells {
		held += countIf(c.held())
	}
	return float64(held) / float64(len(cells))
}

// heldAcids tells how many of the cells that keep wants are held.
func heldAcids(cells []acidCell, keep func(acidCell) bool) string {
	var some []acidCell
	for _, c := range cells {
		if keep == nil || keep(c) {
			some = append(some, c)
		}
	}
	if len(some) == 0 {
		return "none"
	}
	return fmt.Sprintf("%.0f %% of %d held", 100*shareOfAcids(some), len(some))
}

// missClasses say why an interval misses the outside figure (testdata/acids/README.md).
var missClasses = []string{"water", "kind", "rule", "doubt"}

// judged holds the misses to the table of judgements: none without a row, and no
// row that is no miss.
func judged(t *testing.T, cells []acidCell) {
	t.Helper()
	file, err := os.Open("../testdata/acids/afcd_misses.csv")
	require.NoError(t, err)
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	rows := map[string][]string{}
	for _, r := range records[1:] {
		assert.Contains(t, missClasses, r[3], r)
		assert.NotEmpty(t, r[4], r)
		rows[r[0]+" "+r[1]] = r
	}
	for _, c := range cells {
		key := fmt.Sprintf("%s %s", c.food, c.id)
		row, listed := rows[key]
		delete(rows, key)
		switch said := fmt.Sprintf("core %.0f (%.0f to %.0f), %s prints %g, %.0f to %.0f at our water", c.mean, c.low, c.high, c.code, c.printed, c.least, c.most); {
		case c.held():
			assert.False(t, listed, "%s is no miss any more: take it off the table", key)
		case !listed:
			t.Errorf("no row: %s,%s,%g,%s,…   %s", c.food, c.id, c.printed, c.class(), said)
		default:
			assert.Equal(t, strconv.FormatFloat(c.printed, 'g', -1, 64), row[2], key)
			assert.Equal(t, c.class() == "water", row[3] == "water", "%s: %s", key, said)
			t.Logf("%s: %s: %s", key, said, row[4])
		}
	}
	assert.Empty(t, rows, "rows of the table that are no cells")
}

// class is what can be told of a miss without a judgement: the interval holds the
// figure as printed, and not at our water.
func (c acidCell) class() string {
	if c.printed+c.half >= c.low && c.printed-c.half <= c.high {
		return "water"
	}
	if c.kind == "zero" {
		return "rule"
	}
	return "kind"
}
