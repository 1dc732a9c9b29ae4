package composition_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/floats"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// Contributions are the rows: with their amounts, which sum to the figure, and their shares,
// which sum to one; rows with nothing are left out, and one that may hold some is listed
// with the most of it. Who asks for no shares gets none.
func TestContributionsAreTheRows(t *testing.T) {
	pot := cordial()
	pot.Rows[1].Path = []string{"base", "tea"}
	list := vocabulary("SUCS", "CITAC", "OA", "MALAC", "ENERC", "ENERC_KCAL")
	of := composition.TotalsOf(pot, list)
	m := &composition.Meter{}
	figures := m.Composition(pot, list, of, estimate.Constant(pot.N, 1), 1)
	m.Contribute(figures, pot, of, vocabulary("CITAC", "OA", "ENERC"))
	find := func(id constituent.ID) composition.Figure {
		f, ok := figures.Find(id)
		require.True(t, ok, id)
		return f
	}
	_, ok := figures.Find("WATER")
	assert.False(t, ok)

	sugar := find("SUCS").Contributions
	require.Len(t, sugar, 1, "the leaf has none, and is known to have none")
	assert.Equal(t, "own:syrup", sugar[0].Food)
	assert.InDelta(t, 30, sugar[0].Mean, 1e-9)
	assert.False(t, sugar[0].Unknown)
	assert.True(t, math.IsNaN(sugar[0].Share.Mean) && math.IsNaN(sugar[0].Share.Low) && math.IsNaN(sugar[0].Share.High), "nobody asked")
	assert.Empty(t, find("MALAC").Contributions)

	citric := find("CITAC").Contributions
	require.Len(t, citric, 2)
	assert.InDelta(t, 2000, citric[0].Mean, 1e-9)
	assert.Zero(t, citric[0].Bound)
	assert.Equal(t, estimate.Measured, citric[0].State)
	assert.Equal(t, "own", citric[0].Table)
	assert.Equal(t, "test:CITAC", citric[0].Source)
	assert.True(t, citric[1].Unknown)
	assert.Equal(t, []string{"base", "tea"}, citric[1].Path)
	assert.Equal(t, estimate.Unknown, citric[1].State)
	assert.InDelta(t, 10000, citric[1].Bound, 1e-9)
	assert.Equal(t, composition.Share{Mean: 1, Low: 1, High: 1}, citric[0].Share)
	assert.Zero(t, citric[1].Share.Mean)

	acids := find("OA").Contributions
	require.Len(t, acids, 2)
	assert.InDelta(t, find("OA").Mean, acids[0].Mean+acids[1].Mean, 1e-9)
	assert.InDelta(t, 2.0/22, acids[0].Share.Mean, 1e-9)
	share := make([]float64, pot.N)
	floats.DivTo(share, pot.Of(0, "OA"), pot.Total("OA"))
	want := estimate.Summarise(share)
	assert.InDeltaSlice(t, []float64{want.Mean, want.Low, want.High}, []float64{acids[0].Share.Mean, acids[0].Share.Low, acids[0].Share.High}, 1e-12)
	assert.InDelta(t, 1, acids[0].Share.Mean+acids[1].Share.Mean, 1e-12)

	energy := find("ENERC").Contributions
	require.Len(t, energy, 2)
	assert.InDelta(t, find("ENERC").Mean, energy[0].Mean+energy[1].Mean, 1e-9)
	assert.InDelta(t, 17*30+13*2, energy[0].Mean, 1e-9)
	assert.InDelta(t, 536.0/(536+13*20), energy[0].Share.Mean, 1e-9)
	assert.Greater(t, energy[0].Share.High, energy[0].Share.Mean)
	kcal := find("ENERC_KCAL").Contributions
	assert.InDelta(t, 4*30+3*2, kcal[0].Mean, 1e-9)
	assert.True(t, math.IsNaN(kcal[0].Share.Mean))
}

// A total without a figure of its own stands on the works of those of its parts that are
// there, each named once; one that is printed stands on its own.
func TestATotalStandsOnTheWorksOfItsParts(t *testing.T) {
	sweet := assaytest.Poured{Code: "sweet", Grams: 100, Holds: grams{"WATER": 0.7, "GLUS": 0.1, "FRUS": 0.1, "SUCS": 0.1}}
	other := assaytest.Poured{Code: "milk", Grams: 100, Holds: grams{"WATER": 0.95, "LACS": 0.05}}
	pot, _ := assaytest.Pot(0, sweet, other)
	cells := pot.Rows[0].Profile.Cells
	cells[constituent.Must("SUGAR").Order].Source = ""
	cells[constituent.Must("GLUS").Order].Source = "a b"
	cells[constituent.Must("FRUS").Order].Source = "b c"
	cells[constituent.Must("LACS").Order].Source = "never"
	list := vocabulary("SUGAR", "GLUS")
	of := composition.TotalsOf(pot, list)
	m := &composition.Meter{}
	figures := m.Composition(pot, list, of, estimate.Constant(pot.N, 1), 1)
	m.Contribute(figures, pot, of, nil)
	assert.Equal(t, "a b c test:SUCS", figures[0].Contributions[0].Source)
	assert.Equal(t, "test:SUGAR", figures[0].Contributions[1].Source)
	require.Len(t, figures[1].Contributions, 1)
	cells[constituent.Must("GLUS").Order].Source = ""
	m.Contribute(figures, pot, of, nil)
	assert.Empty(t, figures[1].Contributions[0].Source, "a part that nobody has published has no works")
}

// A share is of what is there: of nothing there is none.
func TestAShareOfNothingIsNone(t *testing.T) {
	m := &composition.Meter{}
	none := m.Share([]float64{0, 0, 0}, []float64{0, 1, 1})
	assert.True(t, math.IsNaN(none.Mean) && math.IsNaN(none.Low) && math.IsNaN(none.High))
	some := m.Share([]float64{0.25, 0.1, 0.4}, []float64{0.5, 0.5, 0.5})
	assert.Equal(t, composition.Share{Mean: 0.5, Low: 0.23, High: 0.77}, composition.Share{Mean: some.Mean, Low: math.Round(1e9*some.Low) / 1e9, High: math.Round(1e9*some.High) / 1e9})
}

// What a step made of another row weighs nothing there: its bound is what the step says.
func TestABoundOfWhatWeighsNothingIsItsOwn(t *testing.T) {
	pot, _ := assaytest.Pot(0, assaytest.Poured{Code: "made", Grams: 0, Holds: grams{"WATER": 1}}, assaytest.Poured{Code: "sugar", Grams: 10, Holds: grams{"SUCS": 1}})
	pot.Bounds(0)[constituent.Must("GLUS").Order] = 3
	bound, rows := composition.MostOf(pot, "GLUS")
	assert.Equal(t, []int{0}, rows)
	assert.Equal(t, 3.0, bound)
}
