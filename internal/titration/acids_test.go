package titration_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/note"
)

// sour is what titrates 1 g of citric and 0.4 g of malic acid in 100 g, beside 100 mg of
// potassium, as package acid has it: points to two digits of a pH.
func sour(t *testing.T, citric, malic float64) string {
	t.Helper()
	s, err := acid.NewSolver(acidity.MeterCelsius)
	require.NoError(t, err)
	var numbers []float64
	for ml := 0.0; ml <= 20.0*(citric+malic)/1.4; ml += 1.4 * (citric + malic) / 1.4 {
		sol := acid.New((9.8 + ml/1.0018) / 1000)
		sol.Acids[acid.Must("citric")] = citric / 10 / 192.12
		sol.Acids[acid.Must("malic")] = malic / 10 / 134.09
		sol.AddIon(1, 0.01/39.0983+ml*1e-4)
		state, err := s.Solve(sol, acid.State{})
		require.NoError(t, err)
		numbers = append(numbers, ml, state.PH)
	}
	return points(numbers...) + ", base: 0.1 mol/l, sample: 10.0 g"
}

// tabled is a juice whose table knows its acids to a third and its potassium to a tenth.
func tabled(citric, malic float64) *food.Food {
	f := assaytest.Exact("tabled", "", figures{"WATER": 98, "K": 100, "NA": 0, "CA": 0, "MG": 0, "CLD": 0, "CITAC": 1000 * citric, "MALAC": 1000 * malic})
	for i, v := range f.Values {
		switch v.Constituent {
		case "CITAC", "MALAC":
			f.Values[i].SD = v.Amount / 3
		case "K":
			f.Values[i].SD = v.Amount / 10
		}
	}
	return f
}

// The acids of a pot follow its curve: nearer to the truth than its table, and surer; the mass
// stays, and so does what protein buffers.
func TestACurveMovesTheAcidsOfItsPot(t *testing.T) {
	f := tabled(0.9, 0.5)
	b := lay(600, f)
	pot := b.Pot(100, f)
	mass, was := pot.Mass(), pot.Total("CITAC")
	malic := pot.Total("MALAC")
	b.take(t, pot, sour(t, 1, 0.4))
	is := pot.Total("CITAC")
	assert.InDelta(t, 1, is[0], 0.09)
	assert.Less(t, stat.StdDev(is[1:], nil), stat.StdDev(was[1:], nil))
	low := estimate.Summarise(pot.Total("MALAC"))
	assert.LessOrEqual(t, low.Low, 0.4)
	assert.GreaterOrEqual(t, low.High, 0.4)
	assert.NotEqual(t, malic, pot.Total("MALAC"))
	assert.InDeltaSlice(t, mass, pot.Mass(), 1e-9, "water makes room")
	var told string
	for _, n := range b.notes() {
		if n.Kind == "titration acids" {
			told = n.Text
		}
	}
	assert.True(t, strings.Contains(told, "citric acid"), told)
}

// A curve of few points leaves the acids as the recipe has them.
func TestFewPointsLeaveTheAcids(t *testing.T) {
	f := tabled(0.9, 0.5)
	b := lay(200, f)
	pot := b.Pot(100, f)
	was := pot.Total("CITAC")
	b.take(t, pot, points(0, 3, 5, 4, 10, 5, 15, 6.5)+", base: 0.1 mol/l, sample: 10.0 g")
	assert.Equal(t, was, pot.Total("CITAC"))
}

// A curve that no mixture of the recipe's acids gives is told, and moves none of them: no acid
// becomes as certain as the end of its range.
func TestACurveThatContradictsMovesNoAcid(t *testing.T) {
	f := tabled(4.9, 0.2)
	b := lay(200, f)
	pot := b.Pot(100, f)
	was := pot.Total("CITAC")
	b.take(t, pot, points(0, 6, 1, 6.1, 2, 6.2, 3, 6.3, 4, 7, 5, 8, 6, 8.5, 7, 9, 8, 9.1)+", base: 0.1 mol/l, sample: 10.0 g")
	assert.Equal(t, was, pot.Total("CITAC"))
	assert.True(t, slices.ContainsFunc(b.notes(), func(n note.Note) bool { return n.Kind == "reading disagrees" }))
}
