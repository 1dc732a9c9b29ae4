package composition_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// acids gives the acids of the vocabulary.
func acids() []constituent.ID {
	var ids []constituent.ID
	for _, c := range constituent.Sums().Children(constituent.OrganicAcids) {
		if c.Kind == constituent.Leaf {
			ids = append(ids, c.ID)
		}
	}
	return ids
}

// SR28 prints no acids at all. What does not occur in a food group is a sourced
// zero; what may occur stays unknown.
func TestDrinkOfSR28AloneDoesNotMakeEveryAcidUnknown(t *testing.T) {
	lib := assaytest.SR28(t)
	for _, f := range []string{"01077", "19335", "14411"} {
		for _, id := range acids() {
			_, printed := srFood(lib, f).Value(id)
			require.False(t, printed, "%s %s", f, id)
		}
	}
	a := assaytest.Assay(t, lib, `
drink: "Plain"
serves: 1
build: [150 g sr:01077, 12 g sr:19335, 60 g sr:14411]
`, 50, acids()...)
	for _, id := range acids() {
		acid := assaytest.Figure(t, a.PerServing, id)
		if id == "CITAC" || id == "LACAC" { // milk has the one and may have the other
			assert.True(t, acid.Unknown, id)
			assert.Equal(t, estimate.Unknown, acid.State, id)
			assert.Greater(t, acid.WithBounds, 0.0, id)
			continue
		}
		assert.False(t, acid.Unknown || acid.Partial, "%s: a sourced zero", id)
		assert.Equal(t, estimate.Assumed, acid.State, id)
		assert.Equal(t, 1.0, acid.Coverage, id)
		assert.Empty(t, assaytest.NotesOf(a, "unknown", id))
	}
}

func TestLemonJuiceWithoutCitricAcidIsUnknownUpToABound(t *testing.T) {
	lib := assaytest.SR28(t)
	a := assaytest.Assay(t, lib, "drink: \"Sharp\"\nserves: 1\nbuild: [20 g sr:09152, 12 g sr:19335, 60 g sr:14411]\n", 50, acids()...)
	citric := assaytest.Figure(t, a.PerServing, "CITAC")
	assert.True(t, citric.Unknown)
	assert.Zero(t, citric.Coverage, "nothing of it is known")
	// What SR28 09152 does not explain: 6.9 − 2.52 − 0.3 = 4.08 g in 100 g. All of
	// the carbohydrate is the most it could be.
	assert.Greater(t, citric.WithBounds, 20*0.0408*1000)
	assert.Less(t, citric.WithBounds, 20*0.069*1000)
	notes := assaytest.NotesOf(a, "unknown", "CITAC")
	require.Len(t, notes, 1)
	assert.Contains(t, notes[0], "up to")
	con := citric.Contributions
	require.NotEmpty(t, con)
	assert.Equal(t, "sr:09152", con[0].Food)
	assert.True(t, con[0].Unknown)
	assert.InDelta(t, citric.WithBounds, con[0].Bound, 1e-9)
	assert.Equal(t, estimate.Assumed, assaytest.Figure(t, a.PerServing, "TARAC").State, "no tartaric acid in lemons: sourced")
}

// A food of which nobody says anything is mass, and nothing else is known.
func TestFoodWithoutValuesLeavesEverythingUnknown(t *testing.T) {
	wanted := []constituent.ID{constituent.Water, constituent.Caffeine, constituent.Sodium, "VITC"}
	for _, c := range constituent.All() {
		if c.InLedger() && c.Kind != constituent.Rest {
			wanted = append(wanted, c.ID)
		}
	}
	a := assaytest.Assay(t, assaytest.Library{}, `
drink: "Sealed"
serves: 1
foods:
  nobody: {name: "Tin without a label", per: 100 g, values: {CITAC: unknown, CAFFN: trace}, source: "invented"}
build: [20 g own:nobody]
`, 20, wanted...)
	assert.InDelta(t, 20, a.Mass.Mean, exact, "it weighs what it weighs")
	require.Greater(t, len(a.PerServing), 80)
	for _, f := range a.PerServing {
		if f.Constituent.ID == constituent.MassOther {
			assert.InDelta(t, 20, f.Mean, exact)
			continue
		}
		assert.True(t, f.Unknown, "%s: unknown is not zero", f.Constituent.ID)
		assert.Equal(t, estimate.Unknown, f.State, f.Constituent.ID)
		if f.Constituent.ID == constituent.Water {
			assert.InDelta(t, 20, f.WithBounds, exact, "it may be nothing but water")
			continue
		}
		assert.True(t, math.IsNaN(f.Coverage), "%s: nothing bounds it", f.Constituent.ID)
	}
}

// A known part and an unknown part: at least the one, up to both.
func TestKnownPartIsALowerLimit(t *testing.T) {
	lib := assaytest.Core(t)
	for id, f := range assaytest.SR28(t) {
		lib[id] = f
	}
	a := assaytest.Assay(t, lib, "drink: \"Both\"\nserves: 1\nbuild: [2 g core:citric-acid, 20 g sr:09152]\n", 50)
	citric := assaytest.Figure(t, a.PerServing, "CITAC")
	assert.False(t, citric.Unknown)
	assert.True(t, citric.Partial)
	assert.InDelta(t, 2000, citric.Mean, exact*2000)
	assert.Greater(t, citric.WithBounds, citric.Mean)
	assert.InDelta(t, citric.Mean/citric.WithBounds, citric.Coverage, exact)
	assert.Equal(t, estimate.Calculated, citric.State)
}

// Trace and below-limit are neither nothing nor unknown.
func TestTraceAndBelowAreNotZero(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Library{}, `
drink: "Faint"
serves: 1
foods:
  faint: {name: "Weak tea of the test", per: 100 g, values: {WATER: 100 g, CAFFN: "< 4 mg", NA: trace}, source: "invented"}
build: [100 g own:faint]
`, 2000, constituent.Sodium)
	caffeine := assaytest.Figure(t, a.PerServing, constituent.Caffeine)
	assert.Equal(t, estimate.Below, caffeine.State)
	assert.InDelta(t, 2, caffeine.Mean, exact)
	assert.InDelta(t, 0.2, caffeine.Low, 0.1)
	assert.InDelta(t, 3.8, caffeine.High, 0.1)
	// A pack may print salt below 0.0125 g in 100 g as 0 (guidance on Regulation (EU) No 1169/2011): 5 mg of sodium.
	sodium := assaytest.Figure(t, a.PerServing, constituent.Sodium)
	assert.Equal(t, estimate.Trace, sodium.State)
	assert.InDelta(t, 0.25, sodium.Low, 0.1)
	assert.InDelta(t, 4.75, sodium.High, 0.1)
}
