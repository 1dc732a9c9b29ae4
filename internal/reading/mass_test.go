package reading_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/ledger/ledgertest"
)

// Two foods of one constituent each, so that only the amounts are uncertain.
const weighed = `
drink: "On the Scale"
serves: 1
foods:
  wet: {name: "Water of the test", per: 100 g, values: {WATER: 100 g}, source: "invented"}
  dry: {name: "Sugar of the test", per: 100 g, values: {WATER: 0 g, SUCS: 100 g}, source: "invented"}
build: [200 g ± 4 g sd own:wet, 100 g ± 6 g sd own:dry]
%s
`

func readMass(t *testing.T, reading string, draws int) *assay.Assay {
	t.Helper()
	finish := ""
	if reading != "" {
		finish = "finish:\n  - measured: {mass: " + reading + "}"
	}
	return assaytest.Assay(t, assaytest.Library{}, fmt.Sprintf(weighed, finish), draws)
}

// The case has a solution on paper: x₁ ~ N(200, 4²), x₂ ~ N(100, 6²), and the
// sum read as z ± r. With S = 4² + 6² + r² (Bayes' theorem for normal
// distributions; also the least squares of two masses and their sum):
//
//	xᵢ′ = mᵢ + sᵢ²/S·(z − 300)    sd(xᵢ′)² = sᵢ² − sᵢ⁴/S    cov = −s₁²·s₂²/S
func TestReadingOfTheMassIsTheNormalPosterior(t *testing.T) {
	const m1, s1, m2, s2, z, r = 200, 4, 100, 6, 310, 1
	const sum = s1*s1 + s2*s2 + r*r
	a := readMass(t, "310 g ± 1 g sd", 4000)
	wet, dry := a.Serving.Total("WATER"), a.Serving.Total("SUCS")
	const tolerance = 0.10

	assert.InEpsilon(t, float64(s1*s1)/sum*(z-m1-m2), wet[0]-m1, tolerance, "the central value moves as on paper")
	assert.InEpsilon(t, float64(s2*s2)/sum*(z-m1-m2), dry[0]-m2, tolerance)
	wetMean, wetSD := stat.MeanStdDev(wet[1:], nil)
	dryMean, drySD := stat.MeanStdDev(dry[1:], nil)
	assert.InEpsilon(t, float64(s1*s1)/sum*(z-m1-m2), wetMean-m1, tolerance, "and so do the draws")
	assert.InEpsilon(t, float64(s2*s2)/sum*(z-m1-m2), dryMean-m2, tolerance)
	assert.InEpsilon(t, math.Sqrt(s1*s1-math.Pow(s1, 4)/sum), wetSD, tolerance)
	assert.InEpsilon(t, math.Sqrt(s2*s2-math.Pow(s2, 4)/sum), drySD, tolerance)
	assert.InEpsilon(t, -float64(s1*s1*s2*s2)/sum, stat.Covariance(wet[1:], dry[1:], nil), tolerance)

	// The mass: m + (1 − r²/S)·(z − m), and hardly wider than the instrument.
	assert.InEpsilon(t, (1-float64(r*r)/sum)*(z-m1-m2), a.Mass.Mean-m1-m2, tolerance)
	assert.InEpsilon(t, r*math.Sqrt(1-float64(r*r)/sum), a.Mass.SD, tolerance)
	assert.Empty(t, assaytest.NotesOf(a, "reading disagrees", ""), "1.4 standard deviations are no disagreement")
	t.Logf("wet %.2f ± %.2f g, dry %.2f ± %.2f g, mass %.2f ± %.2f g", wet[0], wetSD, dry[0], drySD, a.Mass.Mean, a.Mass.SD)
}

func TestReadingThatDisagreesIsSaid(t *testing.T) {
	// The recipe's own sd is √(4² + 6²) = 7.2 g: 30 g are four of them, 15 g two.
	assert.Len(t, assaytest.NotesOf(readMass(t, "330 g ± 1 g sd", 1000), "reading disagrees", ""), 1)
	assert.Len(t, assaytest.NotesOf(readMass(t, "270 g ± 1 g sd", 1000), "reading disagrees", ""), 1)
	assert.Empty(t, assaytest.NotesOf(readMass(t, "315 g ± 1 g sd", 1000), "reading disagrees", ""))
	assert.Empty(t, assaytest.NotesOf(readMass(t, "330 g ± 20 g sd", 1000), "reading disagrees", ""), "a coarse reading does not disagree")
}

func TestReadingEqualToTheRecipeMovesNothing(t *testing.T) {
	without, with := readMass(t, "", 2000), readMass(t, "300 g ± 1 g sd", 2000)
	assert.InDelta(t, without.Mass.Mean, with.Mass.Mean, 1e-6)
	for _, f := range without.PerServing {
		assert.InDelta(t, f.Mean, assaytest.Figure(t, with.PerServing, f.Constituent.ID).Mean, 1e-6*max(1, f.Mean), "%s", f.Constituent.ID)
	}
	assert.Less(t, with.Mass.SD, without.Mass.SD/5, "but the spread shrinks to the instrument's")
}

func TestReadingThatSaysLittleChangesLittle(t *testing.T) {
	without, with := readMass(t, "", 2000), readMass(t, "310 g ± 90 g sd", 2000)
	assert.InDelta(t, without.Mass.Mean, with.Mass.Mean, 0.3)
	assert.InEpsilon(t, without.Mass.SD, with.Mass.SD, 0.05)
	for _, x := range with.Serving.Mass() {
		require.False(t, math.IsNaN(x) || math.IsInf(x, 0) || x <= 0)
	}
}

// However wide the recipe, what was weighed weighs what was read.
func TestReadingOfAWideRecipeLeavesTheInstrumentsSpread(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Library{}, `
drink: "Free Hand"
serves: 1
foods:
  wet: {name: "Water of the test", per: 100 g, values: {WATER: 100 g}, source: "invented"}
  dry: {name: "Sugar of the test", per: 100 g, values: {WATER: 0 g, SUCS: 100 g}, source: "invented"}
build: [200 g ± 90 g own:wet, 100 g ± 60 g own:dry]
finish:
  - measured: {mass: 300 g ± 1 g sd}
`, 2000)
	assert.InDelta(t, 300, a.Mass.Mean, 0.05)
	assert.InEpsilon(t, 1, a.Mass.SD, 0.10)
	assert.InEpsilon(t, 1.645, (a.Mass.High-a.Mass.Low)/2, 0.10, "nine tenths of a normal distribution")
}

// Contributions stay: the same rows, summing to the totals in every draw.
func TestReadingKeepsContributions(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), `
drink: "Weighed Syrup"
serves: 1
components:
  syrup:
    ingredients: [200 g ± 10 g core:orange-juice, 120 g ± 5 g core:sugar-white, 2 g core:citric-acid]
    steps:
      - reduce: {by: 12 % ± 6 %}
    measured: {mass: 270 g ± 1 g}
build: [60 g ± 2 g syrup, 100 g core:milk-whole]
`, 500)
	require.Len(t, a.Serving.Rows, 4)
	for _, f := range a.PerServing {
		if len(f.Contributions) == 0 {
			continue
		}
		sum := 0.0
		for _, c := range f.Contributions {
			sum += c.Mean
		}
		assert.InDelta(t, f.Mean, sum, exact*max(1, f.Mean), "%s", f.Constituent.ID)
		assaytest.RowsSumTo(t, a.Serving, f.Constituent)
	}
	assert.InDelta(t, 160, a.Mass.Mean, exact*160, "the build takes what it says")
	assert.Less(t, ledgertest.Closed(a.Serving), exact)
}
