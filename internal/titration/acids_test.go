package titration_test

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
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
	"sipsum/internal/titration"
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

// A curve that no mixture of the recipe's acids gives: what is used stays within the 99 % range of the
// recipe, the draws span the recipe and the curve, so that no acid is as certain as the end of its
// range, and what was read, expected and used is told.
func TestACurveThatContradictsSpansBoth(t *testing.T) {
	f := tabled(4.9, 0.2)
	b := lay(600, f)
	pot := b.Pot(100, f)
	mass, was := pot.Mass(), pot.Total("CITAC")
	b.take(t, pot, points(0, 6, 1, 6.1, 2, 6.2, 3, 6.3, 4, 7, 5, 8, 6, 8.5, 7, 9, 8, 9.1)+", base: 0.1 mol/l, sample: 10.0 g")
	is := pot.Total("CITAC")
	require.Len(t, b.rig.Told, 1)
	told := b.rig.Told[0]
	require.True(t, told.Contradicts)
	citric := told.Acids[slices.IndexFunc(told.Acids, func(a titration.Acid) bool { return a.ID == "CITAC" })]
	assert.True(t, citric.Held)
	assert.InDelta(t, is[0], citric.Used.Mean, 1e-9)
	draws := slices.Clone(was[1:])
	slices.Sort(draws)
	assert.GreaterOrEqual(t, is[0], draws[len(draws)/200-1], "what is used stays in the 99 %% of the recipe")
	assert.Less(t, citric.Read.Mean, citric.Used.Mean)
	of := estimate.Summarise(is)
	assert.LessOrEqual(t, of.Low, citric.Read.High, "down to what was read")
	assert.GreaterOrEqual(t, of.High, estimate.Summarise(was).Mean, "and up to what was expected")
	assert.Greater(t, of.SD, 0.3*citric.Expected.SD)
	assert.InDeltaSlice(t, mass, pot.Mass(), 1e-9, "water makes room")
	var first []string
	for _, n := range b.notes() {
		if n.Kind == "reading disagrees" {
			first = append(first, n.Text)
		}
	}
	assert.Regexp(t, `citric acid: read [0-9.]+ · expected 4\.\d+ \([^)]+\) · used [0-9.]+ g`, strings.Join(first, "\n"))
}

// A meter that shows 0.4 too little is found by the curve, and taken out of all that is told of the
// liquid afterwards, its pH included; one that is as good as adjusted leaves what was read.
func TestAMeterThatIsOffIsTakenOutOfThePH(t *testing.T) {
	for _, off := range []float64{0, -0.4} {
		f := tabled(1.1, 0.4)
		b := lay(600, f)
		pot := b.Pot(100, f)
		text := sour(t, 1, 0.4)
		b.take(t, pot, shifted(t, text, off))
		is := b.rig.Told[0]
		assert.Equal(t, off == 0, is.Adjusted)
		assert.LessOrEqual(t, is.Zero.Read.Low, off)
		assert.GreaterOrEqual(t, is.Zero.Read.High, off)
		var pH []float64
		for d := range pot.N {
			pH = append(pH, b.pH(t, pot, d, 0, 0))
		}
		of := estimate.Summarise(pH)
		t.Logf("%g off: pH %.3f (%.3f–%.3f), zero %+.3f", off, of.Mean, of.Low, of.High, is.Zero.Read.Mean)
		right := firstPH(t, text)
		assert.InDelta(t, right, of.Mean, 0.06)
		assert.LessOrEqual(t, of.Low, right)
		assert.GreaterOrEqual(t, of.High, right)
	}
}

// shifted is a titration whose meter shows more by off; firstPH is what it shows of the liquid.
func shifted(t *testing.T, text string, off float64) string {
	t.Helper()
	return regexp.MustCompile(`, ([0-9.]+)\]`).ReplaceAllStringFunc(text, func(of string) string {
		pH, err := strconv.ParseFloat(of[2:len(of)-1], 64)
		require.NoError(t, err)
		return fmt.Sprintf(", %.3f]", pH+off)
	})
}

func firstPH(t *testing.T, text string) float64 {
	t.Helper()
	pH, err := strconv.ParseFloat(regexp.MustCompile(`, ([0-9.]+)\]`).FindStringSubmatch(text)[1], 64)
	require.NoError(t, err)
	return pH
}
