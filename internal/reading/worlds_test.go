package reading_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acidity"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/reading"
)

// By hand, of a pot that is one quantity: x = 100 ± 6 g of sugar that weigh 300 ± 1 g. What is used
// of it is the nearest that the recipe explains, 2.5758 standard deviations above it. In a third of
// the worlds the recipe is right, and in a sixth x lies evenly between it and what is used, so that
// the lower end of nine in ten solves
//
//	Φ((x − 100)/6)/3 + ∫₀¹ Φ((x − 100 − 2.5758·6·s)/6) ds/6 = 0.05
//
// In a third the scale is right, so that the upper end is its 85 % quantile (0.05 of 1/3), 0.7 of
// its ± above what it shows.
func TestAContradictedQuantityIsTheMixtureOfBoth(t *testing.T) {
	pot, lab := assaytest.Pot(4000, assaytest.Poured{Code: "sugar", Grams: 100, SD: 6, Holds: grams{"SUCS": 1}, Group: "water"})
	b := take(t, pot, lab, reading.Stated{}, "mass: 300 g ± 1 g")
	s := estimate.Summarise(pot.Mass())
	phi := func(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }
	below := func(x float64) float64 {
		sum, steps := phi((x-100)/6)/3, 1000
		for i := range steps {
			sum += phi((x-100)/6-2.5758*(float64(i)+0.5)/float64(steps)) / 6 / float64(steps)
		}
		return sum
	}
	want := 80.0
	for below(want) < 0.05 {
		want += 0.01
	}
	assert.InDelta(t, want, s.Low, 0.8, "three standard deviations of what 4,000 draws tell of it")
	assert.InDelta(t, 300.7, s.High, 0.1)
	assert.InDelta(t, b.Readings[0].Used, pot.Mass()[0], 1e-9, "the central value is what is used")
	assert.True(t, b.Readings[0].Doubted && b.Readings[0].Decide)
}

// figure is what is asked of a pot, draw by draw.
type figure func(*ledger.Pot, *acidity.Laboratory) []float64

func brixOf(pot *ledger.Pot, lab *acidity.Laboratory) []float64 { return lab.Gauge.Brix(pot) }
func massOf(pot *ledger.Pot, _ *acidity.Laboratory) []float64   { return pot.Mass() }
func phOf(pot *ledger.Pot, lab *acidity.Laboratory) []float64 {
	pH, _, _ := lab.Acidity(pot)
	return pH
}
func taOf(pot *ledger.Pot, lab *acidity.Laboratory) []float64 {
	_, ta, _ := lab.Acidity(pot)
	return ta
}

// contradictions are readings that go from agreeing to what no pot could be, all invented.
var contradictions = []struct {
	name     string
	pot      func() (*ledger.Pot, *acidity.Laboratory)
	state    reading.Stated
	text     string
	of       figure
	from, to float64
}{
	{"°Brix, weaker", syrup, reading.Stated{}, "brix: %.4f ± 0.2", brixOf, 33.3, 8},
	{"°Brix, stronger", syrup, reading.Stated{}, "brix: %.4f ± 0.2", brixOf, 33.3, 70},
	{"°Brix of a stated mass", syrup, reading.Stated{Mass: true}, "brix: %.4f ± 0.2", brixOf, 33.3, 8},
	{"°Brix beside a mass", syrup, reading.Stated{}, "mass: 300 g ± 1 g, brix: %.4f ± 0.2", brixOf, 33.3, 8},
	{"a mass, short", syrup, reading.Stated{}, "mass: %.4f g ± 1 g", massOf, 300, 30},
	{"a mass, too much", syrup, reading.Stated{}, "mass: %.4f g ± 1 g", massOf, 300, 900},
	{"a pH", sour, reading.Stated{}, "ph: %.4f ± 0.05", phOf, 3.04, 6},
	{"an acidity, too much", sour, reading.Stated{}, "ta: %.4f %% ± 0.02 %%", taOf, 1.49, 4},
}

// What contradicts its recipe gives an interval that holds both.
func TestAnIntervalHoldsWhatContradicts(t *testing.T) {
	for _, c := range contradictions {
		pot, lab := c.pot()
		expected := estimate.Summarise(c.of(pot.Copy(), lab))
		b := take(t, pot, lab, c.state, fmt.Sprintf(c.text, c.to))
		r := b.Readings[len(b.Readings)-1]
		for _, each := range b.Readings {
			if each.Decide {
				r = each
			}
		}
		now := estimate.Summarise(c.of(pot, lab))
		assert.True(t, r.Doubted && r.Decide, c.name)
		assert.InDelta(t, c.to, r.Read, 1e-3, c.name)
		assert.LessOrEqual(t, now.Low, min(c.to, expected.Mean)+1e-6, c.name)
		assert.GreaterOrEqual(t, now.High, max(c.to, expected.Mean)-1e-6, c.name)
		for row := range pot.Rows {
			for col := range pot.Columns.List {
				for _, x := range pot.Cell(row, col) {
					require.False(t, math.IsNaN(x) || x < 0, c.name)
				}
			}
		}
	}
}

// As a reading goes on from agreeing to contradicting its recipe the ends of the interval go with
// it and jump nowhere: in steps a third as long they make steps that are much shorter.
func TestAnIntervalGrowsGradually(t *testing.T) {
	for _, c := range contradictions {
		longest := func(steps int) (jump, span float64) {
			low, high := math.NaN(), math.NaN()
			for i := range steps + 1 {
				pot, lab := c.pot()
				take(t, pot, lab, c.state, fmt.Sprintf(c.text, c.from+(c.to-c.from)*float64(i)/float64(steps)))
				now := estimate.Summarise(c.of(pot, lab))
				if i > 0 {
					jump = max(jump, math.Abs(now.Low-low), math.Abs(now.High-high))
				}
				low, high = now.Low, now.High
			}
			return jump, high - low
		}
		coarse, span := longest(30)
		fine, _ := longest(90)
		t.Logf("%s: %.3g, %.3g of %.3g", c.name, coarse, fine, span)
		assert.Less(t, fine, span/10, c.name)
		assert.Less(t, fine, 0.7*coarse, c.name)
	}
}

// What agrees stays as the joint update has it, to the last digit.
func TestWhatAgreesIsNotDoubted(t *testing.T) {
	for _, c := range contradictions {
		for _, z := range []float64{c.from, c.from + 0.01*(c.to-c.from)} {
			text := fmt.Sprintf(c.text, z)
			pot, lab := c.pot()
			same, _ := c.pot()
			b := take(t, pot, lab, c.state, text)
			believe(t, same, lab, c.state, text)
			for _, r := range b.Readings {
				require.True(t, r.Agrees && !r.Doubted, "%s: %s", c.name, text)
			}
			for _, id := range []constituent.ID{"WATER", "SUCS", "CITAC"} {
				assert.Equal(t, same.Total(id), pot.Total(id), c.name)
			}
		}
	}
}

// One of several readings contradicts: what the others say stays, and what it says is one of the
// worlds; it does not matter in which order they stand.
func TestOneOfSeveralReadingsContradicts(t *testing.T) {
	pot, lab := syrup()
	b := take(t, pot, lab, reading.Stated{}, "mass: 300 g ± 1 g", "density: 1.142 g/ml", "brix: 12.0 ± 0.2")
	turned, _ := syrup()
	take(t, turned, lab, reading.Stated{}, "brix: 12.0 ± 0.2", "density: 1.142 g/ml", "mass: 300 g ± 1 g")
	assert.InDelta(t, pot.Central("SUCS"), turned.Central("SUCS"), 1e-9)
	for _, r := range b.Readings {
		assert.Equal(t, r.Kind == "mass", r.Agrees, r.Kind)
	}
	mass, sugar := estimate.Summarise(pot.Mass()), estimate.Summarise(pot.Total("SUCS"))
	assert.InDelta(t, 300, mass.Low, 6)
	assert.InDelta(t, 300, mass.High, 6)
	assert.LessOrEqual(t, sugar.Low, 37.0, "12 % of 300 g")
	assert.GreaterOrEqual(t, sugar.High, 100.0)
}

// Two instruments that tell the same of the water are believed: it went.
func TestWaterThatTwoInstrumentsTellIsNotDoubted(t *testing.T) {
	pot, lab := syrup()
	b := take(t, pot, lab, reading.Stated{}, "mass: 205 g ± 1 g", "brix: 48.8 ± 0.2")
	for _, r := range b.Readings {
		assert.False(t, r.Agrees || r.Doubted || r.Decide, r.Kind)
	}
	alone, lab := syrup()
	assert.True(t, take(t, alone, lab, reading.Stated{}, "brix: 48.8 ± 0.2").Readings[0].Doubted, "one may be wrong")
	same, _ := syrup()
	believe(t, same, lab, reading.Stated{}, "mass: 205 g ± 1 g", "brix: 48.8 ± 0.2")
	assert.Equal(t, same.Total("WATER"), pot.Total("WATER"))
}

// A sharp of citric acid: what a meter reads two of pH too high is between the two, and the pH
// of a drink that holds it too.
func TestAContradictedPHGoesOnIntoTheDrink(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), "drink: x\nserves: 1\ncomponents:\n  sharp:\n    ingredients: [1.00 g core:citric-acid, 0.50 g core:tripotassium-citrate, 98.50 g core:water-pure]\n    measured: {ph: 5.60}\nbuild: [100 g sharp]\n", 400)
	require.True(t, a.Readings[0].Decide)
	assert.LessOrEqual(t, a.Chemistry.PHMeter.Low, a.Readings[0].Expected)
	assert.GreaterOrEqual(t, a.Chemistry.PHMeter.High, 5.6)
}

// A titration and a °Brix of one pot, of which the °Brix contradicts: the acidity stays as titrated.
func TestAContradictedBrixLeavesATitrationAsItIs(t *testing.T) {
	const text = "titration: [[0 ml, 2.9], [40 ml, 3.3], [80 ml, 3.8], [120 ml, 4.4], [160 ml, 5.4], [190 ml, 8.0]], base: 0.1 mol/l, sample: 100 g"
	ta := func(texts ...string) estimate.Summary {
		pot, lab := sour()
		take(t, pot, lab, reading.Stated{}, texts...)
		_, per100g, err := lab.Acidity(pot)
		require.NoError(t, err)
		return estimate.Summarise(per100g)
	}
	alone, beside := ta(text), ta(text, "brix: 50.0")
	assert.InEpsilon(t, alone.Low, beside.Low, 0.03)
	assert.InEpsilon(t, alone.High, beside.High, 0.03)
}
