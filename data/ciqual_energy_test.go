package data_test

import (
	"maps"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/tables/ciqual"
	"sipsum/internal/tables/tablestest"
)

// The two proteins of Ciqual.
const (
	byJones         = constituent.ID("PROCNT")
	timesSixQuarter = constituent.ID("ciqual:25003") // N × 6.25, which Annex I calls protein
)

// The energy that Ciqual 2020 itself calculates by the Regulation (columns 327 and 328)
// against the EU card of 100 g of each food. The limits are those of the issue; every food
// beyond the narrower one is a row of testdata/label/ciqual_misses.csv with the reason.
func TestEnergyOfCiqualByTheRegulation(t *testing.T) {
	const (
		least, nearShare, wideShare  = 2000, 0.95, 0.985
		near, nearKJ, wide, wideKJ   = 0.02, 4.0, 0.05, 8.0
		nearKcal, wideKcal, listedTo = 1.0, 2.0, 1.0 // 4 and 8 kJ in kcal; kJ by which a row of the table may be off
	)
	foods := assaytest.Library{}.Read(t, ciqual.Format, tablestest.Published(t, "ciqual2020"))
	listed := listedMisses(t)
	all, within, wider, kcal, kcalWider := 0, 0, 0, 0, 0
	for _, id := range sortedIDs(foods) {
		f := foods[id]
		theirs, theirKcal := figureOf(f, "ENERC"), figureOf(f, "ENERC_KCAL")
		if math.IsNaN(theirs) {
			continue
		}
		_, cards := alone(t, foods, id, "eu", "us")
		for _, c := range cards {
			assert.Empty(t, contradictions(c), "%s, %s", id, c.Rules)
		}
		cell := rowOf(cards[0], "energy").Serving
		require.NotNil(t, cell.Value, "%s", id)
		all++
		off, limit := math.Abs(*cell.Value-theirs), max(near*theirs, nearKJ)
		wider += countIf(off <= max(wide*theirs, wideKJ))
		offKcal := math.Abs(*cell.Kcal - theirKcal)
		kcal += countIf(offKcal <= max(near*theirKcal, nearKcal))
		kcalWider += countIf(offKcal <= max(wide*theirKcal, wideKcal))
		row, has := listed[id.Code]
		if off <= limit {
			within++
			assert.False(t, has, "%s is no miss any more: take it off the table", id)
			continue
		}
		why := missOf(f, theirs, limit)
		if assert.True(t, has, "no row: %s,\"%s\",%.1f,%g,%s", id.Code, strings.ReplaceAll(f.Name(), `"`, `""`), *cell.Value, theirs, why) {
			assert.Equal(t, why, row["class"], "%s", id)
			assert.Equal(t, strconv.FormatFloat(theirs, 'g', -1, 64), row["theirs"], "%s", id)
			assert.InDelta(t, number(t, row, "ours"), *cell.Value, listedTo, "%s", id)
		}
		delete(listed, id.Code)
	}
	share := func(n int) float64 { return float64(n) / float64(all) }
	t.Logf("%d foods: kJ %.2f %% within max(2 %%, 4 kJ), %.2f %% within max(5 %%, 8 kJ); kcal %.2f and %.2f %% within 1 and 2 kcal",
		all, 100*share(within), 100*share(wider), 100*share(kcal), 100*share(kcalWider))
	assert.GreaterOrEqual(t, all, least)
	assert.GreaterOrEqual(t, share(within), nearShare)
	assert.GreaterOrEqual(t, share(wider), wideShare)
	assert.GreaterOrEqual(t, share(kcal), nearShare)
	assert.GreaterOrEqual(t, share(kcalWider), wideShare)
	assert.Empty(t, listed, "codes of the table that are no foods")
}

func listedMisses(t *testing.T) map[string]row {
	t.Helper()
	const name = "../testdata/label/ciqual_misses.csv"
	file, err := os.Open(name)
	require.NoError(t, err)
	defer file.Close()
	return keyed(t, name, "code", rowsOf(t, name, file))
}

// missOf tells why the energy of a card is not the published one, from the published row
// alone: the first of the reasons that holds.
func missOf(f *food.Food, theirs, limit float64) string {
	switch {
	case math.Abs(publishedEnergy(f, timesSixQuarter)-theirs) > limit:
		return "contradiction" // theirs is not the energy of their own figures
	case math.Abs(publishedEnergy(f, byJones)-theirs) > limit:
		return "protein" // theirs takes N × 6.25, the table's protein is by Jones' factors
	case slices.ContainsFunc(food.Enter(f, nil).Notes, func(n food.Note) bool { return n.Kind == "over total" }):
		return "parts" // the published parts of carbohydrate or fat are more than it
	}
	return "mass" // the published parts of 100 g are more than 100 g
}

// publishedEnergy adds up a row as it is printed; of a limit half, of what is not stated
// nothing.
func publishedEnergy(f *food.Food, protein constituent.ID) float64 {
	sum := 0.0
	for _, x := range euFactors {
		of := x.of
		if of == byJones {
			of = protein
		}
		sum += x.kj * printedOf(f, of)
	}
	return sum
}

func printedOf(f *food.Food, id constituent.ID) float64 {
	for _, v := range f.Values {
		switch {
		case v.Constituent != id:
		case food.Stated(v.Amount):
			return v.Amount
		case food.Stated(v.Limit):
			return v.Limit / 2
		}
	}
	return 0
}

// figureOf gives a published figure, NaN if there is none.
func figureOf(f *food.Food, id constituent.ID) float64 {
	for _, v := range f.Values {
		if v.Constituent == id && food.Stated(v.Amount) {
			return v.Amount
		}
	}
	return math.NaN()
}

func sortedIDs(foods assaytest.Library) []food.ID {
	return slices.SortedFunc(maps.Keys(foods), func(a, b food.ID) int { return strings.Compare(a.String(), b.String()) })
}

func countIf(holds bool) int {
	if holds {
		return 1
	}
	return 0
}
