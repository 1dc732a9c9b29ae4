package reading_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/acidity"
	"sipsum/internal/amount"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/fail"
	"sipsum/internal/ledger"
	"sipsum/internal/reading"
)

// sour is 200 g of a juice of two acids and some of their potassium, and a sugar beside it.
func sour() (*ledger.Pot, *acidity.Laboratory) {
	return assaytest.Pot(draws,
		assaytest.Poured{Code: "juice", Grams: 200, SD: 2, Holds: grams{"WATER": 0.98, "CITAC": 0.012, "MALAC": 0.008, "K": 0.002}, Spread: grams{"CITAC": 0.05, "MALAC": 0.05, "K": 0.1}, Group: "water"},
		assaytest.Poured{Code: "sugar", Grams: 20, SD: 1, Holds: grams{"SUCS": 1}, Group: "water"})
}

// met reads a pot's acidity, as if it could not be wrong, and gives what a meter and a burette read of it afterwards.
func met(t *testing.T, pot *ledger.Pot, lab *acidity.Laboratory, texts ...string) (b *reading.Bench, pH, per100g []float64) {
	t.Helper()
	b = believe(t, pot, lab, reading.Stated{}, texts...)
	pH, per100g, err := lab.Acidity(pot)
	require.NoError(t, err)
	return b, pH, per100g
}

// shown gives z + ε of a quantity that was read first, as any bench draws it.
func shown(t *testing.T, lab *acidity.Laboratory, text, kind string) []float64 {
	t.Helper()
	m := readings(t, text)[0]
	q := map[string]any{"ph": m.PH, "ta": m.TA}[kind]
	require.NotNil(t, q)
	at := m.PH
	if kind == "ta" {
		at = m.TA
	}
	return amount.Hand{Ens: lab.Ens}.DrawQuantity(*at, 1, m.StepPath()+"/"+kind)
}

// Whatever the recipe, the pot reads in every draw what was read: a pH, an acidity, and both,
// above and below what its acids make, and as far off as any instrument shows.
func TestAcidityIsMetInEveryDraw(t *testing.T) {
	for _, text := range []string{
		"ph: 2.90 ± 0.05", "ph: 4.50 ± 0.05", "ta: 2.00 g/100 g ± 0.05 g/100 g", "ta: 2.60 g/100 g ± 0.05 g/100 g", "ta: 1.20 g/100 g ± 0.05 g/100 g",
		"ph: 2.90 ± 0.05, ta: 2.60 g/100 g ± 0.05 g/100 g", "ph: 4.00 ± 0.05, ta: 1.55 g/100 g ± 0.02 g/100 g",
	} {
		pot, lab := sour()
		b, pH, per100g := met(t, pot, lab, text)
		if strings.Contains(text, "ph") {
			for d, want := range shown(t, lab, text, "ph") {
				require.InDelta(t, want, pH[d], 1e-6, "%s, draw %d", text, d)
			}
		}
		if strings.Contains(text, "ta") {
			for d, want := range shown(t, lab, text, "ta") {
				require.InDelta(t, want, per100g[d], 1e-5, "%s, draw %d", text, d)
			}
		}
		for _, r := range b.Readings {
			assert.InDelta(t, r.Read, r.Used, 1e-5, text)
		}
		for row := range pot.Rows {
			for _, c := range pot.Traced(row) {
				for d, x := range c.Column {
					require.False(t, math.IsNaN(x) || x < -1e-9, "%s, draw %d", text, d)
				}
			}
		}
	}
}

// What is there is there: where more acid is read than the recipe has, its named acids stay
// within their range and an acid without a name is added; where less, and the pH was read
// too, they give way as far as they may; potassium where no pH was read. Each row takes its
// part by its water, so the sugar takes none.
func TestWhatMeetsAnAcidity(t *testing.T) {
	bare, lab := sour()
	_, was, err := lab.Acidity(bare)
	require.NoError(t, err)
	named := func(pot *ledger.Pot) float64 { return pot.Central("CITAC") + pot.Central("MALAC") }
	carried := func(pot *ledger.Pot, row int, id constituent.ID) float64 {
		return pot.Carry(row, acidity.UnmeasuredOf(id))[0]
	}

	more, lab := sour()
	b, _, _ := met(t, more, lab, "ta: 3.00 g/100 g ± 0.02 g/100 g")
	low, high := rangeOfDraws(bare.Total("OA"))
	assert.LessOrEqual(t, named(more), high+1e-9)
	// By equivalents: what is missing of 3 g in 100 g once the named acids have moved.
	missing := 3.0/100*more.Mass()[0] - more.Central("CITAC") - more.Central("MALAC")*(192.12/3)/(134.09/2) + carried(more, 0, "K")/39.098*192.12/3
	base := was[0]/100*bare.Mass()[0] - bare.Central("CITAC") - bare.Central("MALAC")*(192.12/3)/(134.09/2)
	assert.InEpsilon(t, missing-base, carried(more, 0, "CITAC"), 0.03)
	assert.Zero(t, carried(more, 1, "CITAC"))
	assert.Equal(t, "g/100 g", b.Readings[0].Unit)
	assert.False(t, b.Readings[0].Agrees)
	assert.Contains(t, b.Readings[0].Advice, "met by acid or base that no food names")

	less, lab := sour()
	_, pH, _ := met(t, less, lab, "ta: 1.00 g/100 g ± 0.02 g/100 g")
	assert.GreaterOrEqual(t, named(less), low-1e-9)
	assert.Positive(t, carried(less, 0, "K"))
	assert.InDelta(t, 0, carried(less, 0, "CITAC"), 1e-9)
	assert.Greater(t, pH[0], 3.2, "a base makes it less sour")

	// The pH was read as well: then it is fewer of the named acids that are less acid.
	fewer, lab := sour()
	b, _, per100g := met(t, fewer, lab, "ph: 3.40 ± 0.02, ta: 0.90 g/100 g ± 0.01 g/100 g")
	assert.GreaterOrEqual(t, named(fewer), low-1e-6)
	assert.Greater(t, per100g[0], 1.2, "no further than their range")
	for _, r := range b.Readings {
		if r.Kind == "ta" {
			assert.Contains(t, r.Advice, "used as far as the acids may reach")
			assert.Less(t, r.Read, r.Used)
		} else {
			assert.InDelta(t, 3.4, r.Used, 1e-6)
		}
	}

	// A missing base is potassium, a missing acid chloride.
	lean, lab := sour()
	met(t, lean, lab, "ph: 5.00 ± 0.05")
	assert.Positive(t, carried(lean, 0, "K"))
	assert.Zero(t, carried(lean, 0, "CLD"))
	assert.Zero(t, carried(lean, 1, "K"))
	strong, lab := sour()
	met(t, strong, lab, "ph: 2.00 ± 0.05")
	assert.Positive(t, carried(strong, 0, "CLD"))
	assert.InDelta(t, 0, carried(strong, 0, "K"), 1e-9)
}

// The same acidity in any unit that a bench writes.
func TestUnitsOfAnAcidity(t *testing.T) {
	pot, lab := sour()
	density := lab.Gauge.Density(pot)[0]
	citric, potassium := []float64{}, []float64{}
	for unit, number := range map[string]float64{"%": 2.2, "g/100 g": 2.2, "g/100 ml": 2.2 * density, "g/l": 22 * density} {
		pot, lab := sour()
		text := "ta: " + formatted(number) + " " + unit
		b, _, per100g := met(t, pot, lab, text)
		r := b.Readings[0]
		citric, potassium = append(citric, pot.Central("CITAC")), append(potassium, pot.Central("K"))
		assert.InDelta(t, 2.2, per100g[0], 1e-4, text)
		assert.Equal(t, unit, r.Unit)
		assert.InDelta(t, number, r.Read, 1e-6)
		assert.InEpsilon(t, r.Read, r.Used, 1e-5, text)
		_, was, err := lab.Acidity(mustSour())
		require.NoError(t, err)
		assert.InEpsilon(t, was[0]*number/2.2, r.Expected, 1e-3, text)
		// Without ± a burette is within 2 % (data/instruments.csv), rectangular; the density of
		// a litre has no spread to speak of.
		assert.InEpsilon(t, 0.02*2.2/math.Sqrt(3), stat.StdDev(per100g[1:], nil), 0.1, text)
	}
	for i := range citric {
		assert.InEpsilon(t, citric[0], citric[i], 1e-4, "and moves as much")
		assert.InEpsilon(t, potassium[0], potassium[i], 1e-4)
	}
}

func mustSour() *ledger.Pot {
	pot, _ := sour()
	return pot
}

// A reading of what a pot does not have is a fault, and nothing of it is used; so is a mass
// in anything but g.
func TestReadingsThatCannotBe(t *testing.T) {
	for text, says := range map[string]string{
		"abv: 4.0 %": "abv was read, but the reading is zero or the recipe gives none of it", "brix: 0": "brix was read, but the reading is zero", "mass: 300 g, abv: 4.0 %": "abv was read",
	} {
		pot, lab := syrup()
		was := pot.Copy()
		faults := &fail.List{}
		b := reading.NewBench(lab, amount.Hand{Ens: lab.Ens}, faults)
		b.Take(pot, readings(t, text), reading.Stated{})
		assert.ErrorContains(t, faults.Err(fail.Wrong), says, text)
		assert.Empty(t, b.Readings, text)
		assert.Equal(t, was.Total("SUCS"), pot.Total("SUCS"), text)
	}
	dry, lab := assaytest.Pot(draws, assaytest.Poured{Code: "sugar", Grams: 100, Holds: grams{"SUCS": 1}, Group: "water"})
	faults := &fail.List{}
	reading.NewBench(lab, amount.Hand{Ens: lab.Ens}, faults).Take(dry, readings(t, "ph: 4.0"), reading.Stated{})
	assert.ErrorContains(t, faults.Err(fail.Wrong), "its acidity was read, but the recipe has none: there is no water in it")
}

// Where named acids give way to what was read of an acidity and a mass, the pot weighs what
// was read all the same.
func TestAcidsThatGiveWayLeaveTheMass(t *testing.T) {
	pot, lab := sour()
	const text = "ph: 3.40 ± 0.02, ta: 0.90 g/100 g ± 0.01 g/100 g, mass: 222 g ± 0.5 g sd"
	before, _ := sour()
	take(t, pot, lab, reading.Stated{}, text)
	m := readings(t, text)[0]
	read := amount.Hand{Ens: lab.Ens}.Draw(*m.Mass, m.StepPath()+"/mass")
	h, v := logs(before.Mass()), stat.Variance(logs(before.Mass())[1:], nil)
	gain := v / (v + math.Pow(0.5/220, 2))
	for d, is := range pot.Mass() {
		noisy := math.Log(222) + (read[d]/222-1)*222/220
		require.InDelta(t, math.Exp(h[d]+gain*(noisy-h[d])), is, 2e-3, d)
	}
}

// A burette tells how much acid there is, and not how sour a coffee is, which stays as it has
// been published; a meter takes the place of what was published.
func TestWhatAReadingLeavesAsPublished(t *testing.T) {
	lib := assaytest.Core(t)
	const text = "drink: x\nserves: 1\nbuild: [100 g core:filter-coffee-light]\n%s"
	finish := func(m string) string { return strings.Replace(text, "%s", "finish:\n  - measured: {"+m+"}\n", 1) }
	bare := assaytest.Assay(t, lib, strings.Replace(text, "%s", "", 1), 200).Chemistry
	require.Empty(t, bare.PHMeter.Why)
	burette := assaytest.Assay(t, lib, finish("ta: 0.14 %"), 200).Chemistry
	require.Empty(t, burette.PHMeter.Why)
	assert.InDelta(t, 0.14, burette.Acidity[0].Per100g.Mean, 1e-4)
	assert.InDelta(t, bare.PHMeter.Mean, burette.PHMeter.Mean, 0.03)
	assert.NotEmpty(t, bare.RestsOn)
	meter := assaytest.Assay(t, lib, finish("ph: 5.60 ± 0.02"), 200).Chemistry
	assert.InDelta(t, 5.6, meter.PHMeter.Mean, 1e-6)
	assert.Empty(t, meter.RestsOn)
	both := assaytest.Assay(t, lib, finish("ph: 5.60 ± 0.02, ta: 0.14 %"), 200).Chemistry
	assert.InDelta(t, 5.6, both.PHMeter.Mean, 1e-6)
	assert.InDelta(t, 0.14, both.Acidity[0].Per100g.Mean, 1e-4)
}

// A titration takes the place of what else was read of the acidity of the same pot; what was
// read of its sugar counts beside it.
func TestATitrationTellsTheAcidity(t *testing.T) {
	const bench = "titration: [[0 ml, 3.0], [10 ml, 4.0], [20 ml, 5.0], [30 ml, 8.1]], base: 0.1 mol/l, sample: 10 g"
	for _, more := range []string{"", ", ta: 3.00 %", ", brix: 9.00"} {
		pot, lab := sour()
		b, pH, per100g := met(t, pot, lab, bench+more)
		assert.InDelta(t, 3.0, pH[0], 0.05, more)
		// 30 ml of 0.1 mol/l for 10 g, by 192.12/3 g of citric acid a mol.
		assert.InEpsilon(t, 0.030*0.1/10*100*192.12/3, per100g[0], 0.02, more)
		if strings.Contains(more, "brix") {
			require.Len(t, b.Readings, 1)
			assert.InDelta(t, 9, lab.Gauge.Brix(pot)[0], 0.3)
		}
	}
}

// Two readings of one thing are one by an instrument √2 as sure: at central values the pot is
// the same.
func TestToReadTwiceIsToReadSurer(t *testing.T) {
	for once, twice := range map[string]string{
		"mass: 222 g ± 1 g sd": "mass: 222 g ± 1.41421356 g sd", "brix: 11.00 ± 0.1 sd": "brix: 11.00 ± 0.141421356 sd",
		"ph: 3.06 ± 0.03 sd": "ph: 3.06 ± 0.0424264069 sd", "ta: 1.52 % ± 0.03 % sd": "ta: 1.52 % ± 0.0424264069 % sd",
	} {
		one, lab := sour()
		take(t, one, lab, reading.Stated{}, once)
		two, lab := sour()
		take(t, two, lab, reading.Stated{}, twice, twice)
		bare, _ := sour()
		moved := 0.0
		for _, id := range []constituent.ID{"WATER", "SUCS", "CITAC", "MALAC", "K"} {
			assert.InEpsilon(t, one.Central(id), two.Central(id), 1e-5, "%s after %s", id, once)
			moved = max(moved, math.Abs(one.Central(id)/bare.Central(id)-1))
		}
		assert.Greater(t, moved, 1e-3, once)
	}
}
