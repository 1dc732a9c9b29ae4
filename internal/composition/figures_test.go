package composition_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

type grams = map[constituent.ID]float64

const draws = 200

// cordial holds 30 g of sugar and 2 g of citric acid in 150 g; of the 20 g of
// acids of its leaf up to 10 g may be citric too.
func cordial() *ledger.Pot {
	pot, _ := assaytest.Pot(draws,
		assaytest.Poured{Code: "syrup", Grams: 100, Holds: grams{"WATER": 0.68, "SUCS": 0.30, "CITAC": 0.02}, Spread: grams{"SUCS": 0.05, "CITAC": 0.2}},
		assaytest.Poured{Code: "leaf", Grams: 50, SD: 5, Holds: grams{"WATER": 0.6, "OA-other": 0.4}, Most: grams{"CITAC": 0.2}},
	)
	return pot
}

func vocabulary(ids ...constituent.ID) (list []*constituent.Constituent) {
	for _, id := range ids {
		list = append(list, constituent.Must(id))
	}
	return list
}

func compose(t *testing.T, m *composition.Meter, pot *ledger.Pot, divisor []float64, times float64, ids ...constituent.ID) map[constituent.ID]composition.Figure {
	t.Helper()
	list := vocabulary(ids...)
	found := map[constituent.ID]composition.Figure{}
	for _, f := range m.Composition(pot, list, composition.TotalsOf(pot, list), divisor, times) {
		found[f.Constituent.ID] = f
	}
	require.Len(t, found, len(ids))
	return found
}

// over divides a column, for a summary of its own.
func over(col []float64, factor float64, add float64, by []float64) estimate.Summary {
	out := make([]float64, len(col))
	for d, x := range col {
		out[d] = (x + add) / by[d] * factor
	}
	return estimate.Summarise(out)
}

func same(t *testing.T, want, got estimate.Summary) {
	t.Helper()
	assert.InDeltaSlice(t, []float64{want.Mean, want.SD, want.Low, want.High}, []float64{got.Mean, got.SD, got.Low, got.High}, 1e-9)
}

// Per serving, per 100 g, and in the unit of the vocabulary: the column itself, draw by draw.
func TestAFigureIsItsColumn(t *testing.T) {
	pot := cordial()
	one := estimate.Constant(pot.N, 1)
	m := &composition.Meter{}
	serving := compose(t, m, pot, one, 1, "SUCS", "CITAC", "WATER")
	same(t, over(pot.Total("SUCS"), 1, 0, one), serving["SUCS"].Summary)
	same(t, over(pot.Total("CITAC"), 1000, 0, one), serving["CITAC"].Summary)
	assert.InDelta(t, 30, serving["SUCS"].Mean, 1e-9)
	assert.InDelta(t, 2000, serving["CITAC"].Mean, 1e-9)
	assert.Equal(t, "mg", serving["CITAC"].Unit)
	assert.Equal(t, estimate.Measured, serving["SUCS"].State)
	per100 := compose(t, m, pot, pot.Mass(), 100, "SUCS")["SUCS"]
	same(t, over(pot.Total("SUCS"), 100, 0, pot.Mass()), per100.Summary)
	assert.InDelta(t, 20, per100.Mean, 1e-9)
	assert.Greater(t, per100.SD, 0.1)
}

// What is known wholly could be no more than its interval; of what is known in part the end
// is the draws' with the rest at its most, here 10 g, and below it nothing is.
func TestWhatIsUnknownReachesItsBound(t *testing.T) {
	pot := cordial()
	one := estimate.Constant(pot.N, 1)
	m := &composition.Meter{}
	f := compose(t, m, pot, one, 1, "SUCS", "CITAC", "MALAC")
	known := f["SUCS"]
	assert.False(t, known.Partial || known.Unknown)
	assert.Equal(t, 1.0, known.Coverage)
	assert.Equal(t, known.Mean, known.WithBounds)
	assert.Equal(t, known.High, known.UpTo)

	part := f["CITAC"]
	assert.True(t, part.Partial)
	assert.False(t, part.Unknown)
	assert.InDelta(t, 12000, part.WithBounds, 1e-9)
	assert.InDelta(t, 2000.0/12000, part.Coverage, 1e-12)
	assert.InDelta(t, over(pot.Total("CITAC"), 1000, 10, one).High, part.UpTo, 1e-9)
	assert.Greater(t, part.UpTo, part.WithBounds)

	none := f["MALAC"]
	assert.False(t, none.Partial || none.Unknown, "known to be none")
	assert.Zero(t, none.UpTo)
	assert.Equal(t, 1.0, none.Coverage)

	per100 := compose(t, m, pot, pot.Mass(), 100, "CITAC")["CITAC"]
	assert.InDelta(t, 8000, per100.WithBounds, 1e-9)
	assert.InDelta(t, over(pot.Total("CITAC"), 1e5, 10, pot.Mass()).High, per100.UpTo, 1e-6)

	brief := compose(t, &composition.Meter{Brief: true}, pot, one, 1, "SUCS", "CITAC")
	assert.Equal(t, f["SUCS"].SD, brief["SUCS"].SD)
	assert.Equal(t, brief["SUCS"].Mean, brief["SUCS"].High, "no intervals")
	assert.InDelta(t, 12000, brief["CITAC"].WithBounds, 1e-9)
	assert.True(t, math.IsNaN(brief["CITAC"].UpTo))
}

// Unknown is not zero, and what nothing bounds has no end; a known zero is one.
func TestNothingKnownIsUnknown(t *testing.T) {
	pot, _ := assaytest.Pot(draws, assaytest.Poured{Code: "leaf", Grams: 50, Holds: grams{"WATER": 0.8, "OA-other": 0.2}, Most: grams{"MALAC": 0.1, "CAFFN": math.NaN(), "CITAC": 0.02}},
		assaytest.Poured{Code: "drop", Grams: 1, Holds: grams{"WATER": 0.5, "CITAC": 0.5}})
	f := compose(t, &composition.Meter{}, pot, estimate.Constant(pot.N, 1), 1, "MALAC", "CITAC", "CAFFN", "TARAC")
	assert.True(t, f["MALAC"].Unknown && f["MALAC"].Partial)
	assert.Equal(t, estimate.Unknown, f["MALAC"].State)
	assert.Zero(t, f["MALAC"].Coverage)
	assert.InDelta(t, 5000, f["MALAC"].WithBounds, 1e-9)
	assert.InDelta(t, 5000, f["MALAC"].UpTo, 1e-9)
	assert.True(t, f["CAFFN"].Unknown)
	for _, x := range []float64{f["CAFFN"].Coverage, f["CAFFN"].WithBounds, f["CAFFN"].UpTo} {
		assert.True(t, math.IsNaN(x))
	}
	assert.False(t, f["CITAC"].Unknown, "half a gram is known: a little is not nothing")
	assert.True(t, f["CITAC"].Partial)
	assert.False(t, f["TARAC"].Unknown)
	assert.Equal(t, estimate.Measured, f["TARAC"].State)
}

// No end is above that of any total above it: of the nearest, of the next, of the mass.
// Nor of a row: where each of two could hold more than its own sugars, both hold no more
// than these.
func TestEndsKeepUnderEveryTotal(t *testing.T) {
	pot, _ := assaytest.Pot(draws,
		assaytest.Poured{Code: "juice", Grams: 100, Holds: grams{"WATER": 0.9, "GLUS": 0.04, "SUGAR-other": 0.06}, Spread: grams{"GLUS": 0.1}, Most: grams{"SUCS": 0.5, "CITAC": 2, "TARAC": 0.001}},
		assaytest.Poured{Code: "sugar", Grams: 10, Holds: grams{"SUCS": 1}})
	one := estimate.Constant(pot.N, 1)
	f := compose(t, &composition.Meter{}, pot, one, 1, "CHOCDF", "SUGAR", "SUCS", "OA", "CITAC", "TARAC")
	assert.InDelta(t, 20, f["SUGAR"].Mean, 1e-9)
	assert.InDelta(t, 20, f["SUCS"].WithBounds, 1e-9, "10 g, and up to 10 g in the juice")
	assert.LessOrEqual(t, f["SUCS"].UpTo, f["SUGAR"].UpTo)
	assert.InDelta(t, 0.5, f["SUCS"].Coverage, 1e-9)
	// The acids are known to be none, so that an acid up to two grams is none.
	assert.Zero(t, f["CITAC"].UpTo)
	assert.Zero(t, f["CITAC"].WithBounds)
	assert.Equal(t, 1.0, f["CITAC"].Coverage, "no room is left for more")

	bound, rows := composition.MostOf(pot, "SUCS")
	assert.Equal(t, []int{0}, rows)
	assert.InDelta(t, 10, bound, 1e-9)
	bound, _ = composition.MostOf(pot, "CITAC")
	assert.Zero(t, bound)

	// Where the totals are as unknown as the parts, the mass is what nothing exceeds.
	sealed, _ := assaytest.Pot(draws, assaytest.Poured{Code: "tin", Grams: 10, Holds: grams{"WATER": 0.4, "MASS-other": 0.6},
		Most: grams{"CHOCDF": 3, "CHOAVL": 3, "SUGAR": 0.5, "SUCS": 2, "FAT": math.NaN()}})
	f = compose(t, &composition.Meter{}, sealed, one, 1, "FAT", "CHOCDF", "CHOAVL", "SUGAR", "SUCS")
	assert.InDelta(t, 10, f["CHOCDF"].WithBounds, 1e-9)
	assert.InDelta(t, 10, f["CHOCDF"].UpTo, 1e-9)
	assert.InDelta(t, 5, f["SUGAR"].UpTo, 1e-9)
	assert.InDelta(t, 5, f["SUCS"].UpTo, 1e-9)
	assert.InDelta(t, 5, f["SUCS"].WithBounds, 1e-9)
	assert.True(t, math.IsNaN(f["FAT"].UpTo), "what has no end of its own gets none")
	bound, rows = composition.MostOf(sealed, "FAT")
	assert.Len(t, rows, 1)
	assert.True(t, math.IsNaN(bound))
}
