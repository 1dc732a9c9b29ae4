package reading_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/acidity"
	"sipsum/internal/amount"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/ledger"
	"sipsum/internal/reading"
)

type grams = map[constituent.ID]float64

const draws = 400

// syrup is 200 ± 4 g of water and 100 ± 6 g of sucrose, of which a leaf knows all but an acid.
func syrup() (*ledger.Pot, *acidity.Laboratory) {
	return assaytest.Pot(draws,
		assaytest.Poured{Code: "water", Grams: 200, SD: 4, Holds: grams{"WATER": 1}, Group: "water"},
		assaytest.Poured{Code: "sugar", Grams: 100, SD: 6, Holds: grams{"SUCS": 1}, Group: "water", Most: grams{"CITAC": 0.01, "MALAC": math.NaN()}})
}

// readings gives what a drink file says was read, one step for each text.
func readings(t *testing.T, texts ...string) (list []*drink.Measured) {
	t.Helper()
	text := "drink: x\nserves: 1\nbuild: [1 g own:x]\nfinish:\n"
	for _, r := range texts {
		text += "  - measured: {" + r + "}\n"
	}
	d, faults := drink.Parse("test", []byte(text), nil)
	require.NoError(t, faults.Err(fail.Wrong), texts)
	for _, s := range d.Finish {
		list = append(list, s.(*drink.Measured))
	}
	return list
}

// believe lets a bench read a pot as if none of the readings could be wrong: the joint update
// alone, however far they lie from the recipe.
func believe(t *testing.T, pot *ledger.Pot, lab *acidity.Laboratory, state reading.Stated, texts ...string) *reading.Bench {
	t.Helper()
	faults := &fail.List{}
	b := reading.NewBench(lab, amount.Hand{Ens: lab.Ens}, faults)
	b.Believe(pot, readings(t, texts...), state)
	require.Zero(t, faults.Len())
	return b
}

// take lets a bench read a pot.
func take(t *testing.T, pot *ledger.Pot, lab *acidity.Laboratory, state reading.Stated, texts ...string) *reading.Bench {
	t.Helper()
	return takeList(t, pot, lab, state, readings(t, texts...))
}

func takeList(t *testing.T, pot *ledger.Pot, lab *acidity.Laboratory, state reading.Stated, list []*drink.Measured) *reading.Bench {
	t.Helper()
	faults := &fail.List{}
	b := reading.NewBench(lab, amount.Hand{Ens: lab.Ens}, faults)
	b.Take(pot, list, state)
	require.Zero(t, faults.Len())
	return b
}

// noise gives z + ε of a mass in g that was read, as any bench draws it.
func noise(t *testing.T, lab *acidity.Laboratory, text string) []float64 {
	t.Helper()
	m := readings(t, text)[0]
	return amount.Hand{Ens: lab.Ens}.Draw(*m.Mass, m.StepPath()+"/mass")
}

func logs(col []float64) []float64 {
	out := slices.Clone(col)
	estimate.Logs(out)
	return out
}

// In logarithms, draw by draw, one reading z ± r of h gives h′ = h + K·(z + ε − h) with
// K = var h/(var h + r²): the ensemble Kalman filter with perturbed observations (Evensen
// 2003, Ocean Dyn. 53:343). A mass is closed on it to the digit, and what is as uncertain
// moves as much.
func TestAMassIsClosedDrawByDraw(t *testing.T) {
	pot, lab := syrup()
	const text, r = "mass: 306 g ± 2 g sd", 2.0
	before, read := pot.Mass(), noise(t, lab, text)
	h, v := logs(before), stat.Variance(logs(before)[1:], nil)
	gain := v / (v + math.Pow(r/before[0], 2))
	b := take(t, pot, lab, reading.Stated{}, text)
	after := pot.Mass()
	for d := range after {
		noisy := math.Log(306) + read[d]/306 - 1
		// ε is as wide as the instrument is where the recipe expects it
		want := h[d] + gain*((math.Log(306)-h[0])+(noisy-math.Log(306))*(r/before[0])/(r/306)-(h[d]-h[0]))
		assert.InDelta(t, math.Exp(want), after[d], 1e-6, d)
	}
	got := b.Readings[0]
	assert.Equal(t, reading.Reading{Kind: "mass", Unit: "g", Read: 306, Expected: got.Expected, Used: got.Used, Agrees: true}, got)
	assert.InDelta(t, 300, got.Expected, 1e-9)
	assert.InDelta(t, after[0], got.Used, 1e-9)
	assert.Empty(t, b.Notes)
	assert.InDelta(t, 200+6*gain*16/52, pot.Central("WATER"), 0.2, "the least certain moves most")
}

// Where there is no water to make up what a draw at the end of its range leaves, all of it
// weighs what was read.
func TestADryMassIsClosedToo(t *testing.T) {
	of := func() (*ledger.Pot, *acidity.Laboratory) {
		return assaytest.Pot(draws, assaytest.Poured{Code: "grape", Grams: 100, Holds: grams{"GLUS": 1}, Group: "water"}, assaytest.Poured{Code: "sugar", Grams: 100, SD: 6, Holds: grams{"SUCS": 1}, Group: "water"})
	}
	pot, lab := of()
	const text, z, r = "mass: 214 g ± 6 g sd", 214.0, 6.0
	read, h := noise(t, lab, text), logs(pot.Mass())
	v := stat.Variance(h[1:], nil)
	take(t, pot, lab, reading.Stated{}, text)
	for d, is := range pot.Mass() {
		want := h[d] + v/(v+r*r/200/200)*(math.Log(z/200)+(read[d]/z-1)*z/200-(h[d]-h[0]))
		require.InDelta(t, math.Exp(want), is, 1e-6, d)
	}
}

// What no water explains, since the mass is stated, counts as the nearest reading that the
// recipe does: 2.5758 standard deviations away (the middle 99 % of a normal distribution).
// Beyond it the sugar stands still, and at twice that the draws do too.
func TestAReadingBeyondTheRecipeCountsAsTheNearest(t *testing.T) {
	stated := reading.Stated{Mass: true}
	used := func(brix string) (float64, float64, []float64) {
		pot, lab := syrup()
		b := believe(t, pot, lab, stated, "brix: "+brix+" ± 0.2 sd")
		col := lab.Gauge.Brix(pot)
		return b.Readings[0].Used, stat.StdDev(logs(col)[1:], nil), pot.Total("SUCS")
	}
	pot, lab := syrup()
	brix := lab.Gauge.Brix(pot)
	h := logs(brix)
	v, r := stat.Variance(h[1:], nil), 0.2/brix[0]
	spread := math.Sqrt(v + r*r)
	limit := brix[0] * math.Exp(v/(v+r*r)*2.5758*spread)
	near, nearSD, _ := used("36.0")
	at, sd, sugar := used("38.5")
	far, farSD, sugarFar := used("60.0")
	assert.InDelta(t, 36, near, 0.1)
	assert.InDelta(t, limit, at, 0.02)
	assert.InDelta(t, at, far, 1e-9)
	assert.InDelta(t, sugar[0], sugarFar[0], 1e-9)
	assert.Less(t, nearSD, sd, "the further the less it narrows")
	assert.Less(t, sd, farSD)
	low, _, _ := used("20.0")
	assert.InDelta(t, brix[0]*math.Exp(-v/(v+r*r)*2.5758*spread), low, 0.3)
}

// Beyond the recipe's range a draw moves by κ + (1 − ρ)·(ε − (h − h₀)), ρ growing from 0 there
// to 1 at twice that: halfway it moves by half of its own distance.
func TestADoubtedReadingMovesTheDrawsLess(t *testing.T) {
	pot, lab := syrup()
	h := logs(lab.Gauge.Brix(pot))
	const sd, half, own = 0.2, 0.5, 2.5758
	v, r := stat.Variance(h[1:], nil), sd/math.Exp(h[0])
	limit := own * math.Sqrt(v+r*r)
	read := math.Exp(h[0] + (1+half)*limit)
	text := "brix: " + formatted(read) + " ± 0.2 sd"
	m := readings(t, text)[0]
	shown := amount.Hand{Ens: lab.Ens}.DrawQuantity(*m.Brix, 1, m.StepPath()+"/brix")
	believe(t, pot, lab, reading.Stated{Mass: true}, text)
	within := 0
	for d, is := range lab.Gauge.Brix(pot) {
		noise := (shown[d]/shown[0] - 1) * read / math.Exp(h[0])
		want := h[d] + v/(v+r*r)*(limit+(1-half)*(noise-(h[d]-h[0])))
		if math.Abs(math.Log(is)-want) < 2e-3 {
			within++
		}
	}
	assert.Greater(t, within, draws/2, "but for those whose sugar would leave its range, to the end of which it has come")
}

// What is read twice, or by two instruments that have nothing to do with each other, counts
// the same in any order, and one says nothing of what the other reads.
func TestReadingsThatHaveNothingToDoWithEachOther(t *testing.T) {
	juice := func() (*ledger.Pot, *acidity.Laboratory) {
		return assaytest.Pot(draws, assaytest.Poured{Code: "juice", Grams: 300, SD: 9, Holds: grams{"WATER": 0.9, "SUCS": 0.1}, Spread: grams{"SUCS": 0.05}, Group: "water"})
	}
	alone, lab := juice()
	take(t, alone, lab, reading.Stated{}, "mass: 303 g ± 0.1 g sd")
	both, lab := juice()
	take(t, both, lab, reading.Stated{}, "mass: 303 g ± 0.1 g sd", "brix: 10.20 ± 0.05 sd")
	turned, lab2 := juice()
	take(t, turned, lab2, reading.Stated{}, "brix: 10.20 ± 0.05 sd", "mass: 303 g ± 0.1 g sd")
	assert.InDelta(t, 10.2, lab.Gauge.Brix(both)[0], 0.02)
	for d, x := range alone.Mass() {
		assert.InDelta(t, x, both.Mass()[d], 1e-9)
	}
	assert.InDelta(t, both.Central("SUCS"), turned.Central("SUCS"), 1e-3)
	brix, lab3 := juice()
	takeList(t, brix, lab3, reading.Stated{}, readings(t, "mass: 303 g ± 0.1 g sd", "brix: 10.20 ± 0.05 sd")[1:])
	for d, x := range lab3.Gauge.Brix(brix) {
		assert.InDelta(t, x, lab.Gauge.Brix(both)[d], 0.01, "a scale says nothing of how sweet it is")
	}
}

// Nothing but water leaves its range: that of its draws before, without half a hundredth on
// either side, whatever was read; what was beyond it may stay where it was.
func TestNothingLeavesItsRange(t *testing.T) {
	for _, texts := range [][]string{{"brix: 60.0"}, {"brix: 12.0"}, {"density: 1.30 g/ml", "tds: 20.0 %"}, {"mass: 260 g ± 1 g", "brix: 50.0"}, {"mass: 420 g ± 1 g"}} {
		pot, lab := syrup()
		was := pot.Copy()
		believe(t, pot, lab, reading.Stated{}, texts...)
		before, after := was.Total("SUCS"), pot.Total("SUCS")
		low, high := rangeOfDraws(before)
		if len(texts) > 1 && texts[0][:4] == "mass" {
			low = 0 // of which some may have stayed behind
		}
		for d, x := range after {
			require.True(t, x >= min(low, before[d])-1e-9 && x <= max(high, before[d])+1e-9, "%s, draw %d: %g of %g to %g", texts, d, x, low, high)
			require.Positive(t, pot.Total("WATER")[d])
		}
	}
}

// Two sugars, each even within its own range: both at their ends are more than the two ever
// are together, and the sum keeps to its range too. So it is whatever stands beside it, and
// as far down as up.
func TestASumKeepsToItsOwnRange(t *testing.T) {
	for _, brix := range []string{"brix: 75.0", "brix: 12.0"} {
		pot, lab := assaytest.Pot(draws, assaytest.Poured{Code: "water", Grams: 200, Holds: grams{"WATER": 1}, Group: "water"},
			assaytest.Poured{Code: "grape", Grams: 50, Holds: grams{"GLUS": 1}, Group: "water"}, assaytest.Poured{Code: "fruit", Grams: 50, Holds: grams{"FRUS": 1}, Group: "water"})
		for row, of := range map[int]struct {
			id   constituent.ID
			turn float64
		}{1: {"GLUS", math.Phi}, 2: {"FRUS", math.Sqrt2}} {
			for d, col := 1, pot.Write(row, pot.Columns.At(of.id)); d < pot.N; d++ {
				_, part := math.Modf(float64(d) * of.turn) // even, and either has nothing to do with the other
				col[d] = 50 + 20*(2*part-1)
			}
		}
		before := pot.Copy()
		believe(t, pot, lab, reading.Stated{Mass: true}, brix)
		for _, id := range []constituent.ID{"GLUS", "FRUS", "SUGAR", "CHOCDF"} {
			was, is := before.Total(id), pot.Total(id)
			low, high := rangeOfDraws(was)
			for d, x := range is {
				require.True(t, x >= min(low, was[d])-1e-9 && x <= max(high, was[d])+1e-9, "%s after %s, draw %d: %g of %g to %g", id, brix, d, x, low, high)
			}
			assert.Greater(t, math.Abs(is[0]-was[0]), 15.0, "%s after %s", id, brix)
		}
	}
}

// No more than half of the water has gone and no more than as much again has come: 100 g of
// sugar in 200 g of water read 33.3 °Bx, in 100 g 50, in 400 g 20, by the definition of the
// scale.
func TestWaterGoesAndComesWithinLimits(t *testing.T) {
	for read, want := range map[string]struct{ water, brix float64 }{"48.0": {108.3, 48}, "70.0": {100, 50}, "22.0": {354.5, 22}, "12.0": {400, 20}} {
		pot, lab := syrup()
		b := believe(t, pot, lab, reading.Stated{}, "brix: "+read+" ± 0.1 sd")
		sugar := pot.Central("SUCS")
		assert.InDelta(t, 100, sugar, 12.5, "within its 95 %")
		if want.brix != 50 && want.brix != 20 {
			assert.InDelta(t, want.brix, lab.Gauge.Brix(pot)[0], 1e-6, read)
			assert.InEpsilon(t, 0.1, stat.StdDev(lab.Gauge.Brix(pot)[1:], nil), 0.1, "as sure as the instrument")
			assert.InDelta(t, sugar*(100-want.brix)/want.brix, pot.Central("WATER"), 0.3)
			assert.Contains(t, b.Readings[0].Advice, "weigh the pot and give its mass")
		} else {
			assert.InEpsilon(t, 100*sugar/(sugar+want.water), b.Readings[0].Used, 0.025, read)
			assert.InEpsilon(t, want.water, pot.Central("WATER"), 0.025, read)
			assert.Contains(t, b.Readings[0].Advice, "does not meet it: read again")
		}
		assert.Contains(t, b.Readings[0].Advice, map[bool]string{true: "g of water count as gone", false: "that the recipe does not name"}[want.brix > 33])
		assert.Len(t, b.Notes, 1)
		assert.Equal(t, b.Readings[0].Note(), b.Notes[0].Text)
		assert.Contains(t, b.Notes[0].Text, "the drink: brix: read "+read[:2])
	}
}

// A mass that was read says how much there is: water makes it up. Where another reading
// tells that none went, something of all is lost.
func TestAMassSaysHowMuchThereIs(t *testing.T) {
	pot, lab := syrup()
	b := take(t, pot, lab, reading.Stated{}, "mass: 240 g ± 0.5 g sd")
	assert.InDelta(t, 240, pot.Mass()[0], 1e-6)
	assert.Contains(t, b.Readings[0].Advice, "g of water count as gone; weigh again")
	before, _ := syrup()
	least, _ := rangeOfDraws(before.Total("SUCS"))
	assert.GreaterOrEqual(t, pot.Central("SUCS"), least)
	assert.InEpsilon(t, 0.5, stat.StdDev(pot.Mass()[1:], nil), 0.15)

	lost, lab := syrup()
	b = take(t, lost, lab, reading.Stated{}, "mass: 240 g ± 0.5 g sd", "brix: 33.3 ± 0.1 sd")
	assert.InDelta(t, 33.3, lab.Gauge.Brix(lost)[0], 0.2)
	assert.InDelta(t, 240, lost.Mass()[0], 0.5)
	for _, r := range b.Readings {
		if r.Kind == "mass" {
			assert.Contains(t, r.Advice, "% of all count as lost")
			assert.False(t, r.Agrees)
		} else {
			assert.True(t, r.Agrees)
		}
	}
	more, lab := syrup()
	b = take(t, more, lab, reading.Stated{}, "mass: 400 g ± 0.5 g sd")
	assert.InDelta(t, 400, more.Mass()[0], 1e-6)
	assert.Contains(t, b.Readings[0].Advice, "of water count as in it that the recipe does not name; weigh again")
}

// What is unknown of a food grows with it, and does not shrink: a reading of what is known
// says nothing of the rest.
func TestBoundsGrowAndDoNotShrink(t *testing.T) {
	citric, malic := constituent.Must("CITAC").Order, constituent.Must("MALAC").Order
	grown, lab := syrup()
	take(t, grown, lab, reading.Stated{}, "mass: 312 g ± 1 g sd")
	assert.Greater(t, grown.Of(1, "MASS")[0], 104.0)
	assert.InDelta(t, 0.01*grown.Of(1, "MASS")[0], grown.Bounds(1)[citric], 1e-9)
	assert.True(t, math.IsNaN(grown.Bounds(1)[malic]))
	assert.Zero(t, grown.Bounds(0)[citric])
	less, lab := syrup()
	take(t, less, lab, reading.Stated{}, "mass: 290 g ± 1 g sd")
	assert.Less(t, less.Of(1, "MASS")[0], 98.0)
	assert.InDelta(t, 1, less.Bounds(1)[citric], 1e-9)
}

// A gas that is stated in g/l stays so in every draw, also where there is none of it, and
// what it weighs more or less is water's: the pot weighs what was read.
func TestStatedGasStaysInEveryDraw(t *testing.T) {
	pot, lab := assaytest.Pot(draws, assaytest.Poured{Code: "water", Grams: 200, SD: 4, Holds: grams{"WATER": 0.995, "CO2": 0.005}, Spread: grams{"CO2": 0.2}, Group: "water"},
		assaytest.Poured{Code: "sugar", Grams: 20, SD: 4, Holds: grams{"SUCS": 1}, Group: "water"})
	gas := pot.Write(0, pot.Columns.At("CO2"))
	gas[3], gas[9] = 0, 0
	perLitre := func() []float64 { return estimate.Ratio(pot.Total("CO2"), lab.Gauge.Volume(pot), 1000) }
	was := perLitre()
	take(t, pot, lab, reading.Stated{Gas: true}, "brix: 13.0 ± 0.1 sd", "mass: 230 g ± 0.5 g sd")
	for d, x := range perLitre() {
		require.InDelta(t, was[d], x, 2e-3*was[0], d)
	}
	assert.Zero(t, pot.Total("CO2")[3])
	assert.InDelta(t, 13, lab.Gauge.Brix(pot)[0], 0.1)
	assert.InEpsilon(t, 230, pot.Mass()[0], 0.003)
	free, lab := assaytest.Pot(draws, assaytest.Poured{Code: "water", Grams: 200, SD: 4, Holds: grams{"WATER": 0.995, "CO2": 0.005}, Spread: grams{"CO2": 0.2}, Group: "water"})
	before := free.Copy().Total("CO2")[0]
	take(t, free, lab, reading.Stated{}, "mass: 206 g ± 0.5 g sd")
	assert.Greater(t, free.Total("CO2")[0], before, "else it grows with the pot")
	kept, lab := assaytest.Pot(draws, assaytest.Poured{Code: "water", Grams: 200, SD: 4, Holds: grams{"WATER": 0.995, "CO2": 0.005}, Spread: grams{"CO2": 0.2}, Group: "water"})
	take(t, kept, lab, reading.Stated{Gas: true}, "mass: 206 g ± 0.5 g sd")
	assert.Greater(t, free.Total("CO2")[0], kept.Total("CO2")[0]+1e-3)
	for d, x := range free.Mass() {
		require.InDelta(t, x, kept.Mass()[d], 1e-9, "what gas weighs less is water")
	}
}

// A pot of a thousandth is read as the whole one: nothing hangs on grams.
func TestASmallPotIsReadAsALargeOne(t *testing.T) {
	for _, texts := range [][2]string{
		{"brix: 13.0 ± 0.1 sd, mass: 230 g ± 1 g sd", "brix: 13.0 ± 0.1 sd, mass: 0.230 g ± 0.001 g sd"},
		{"brix: 20.0 ± 0.1 sd", "brix: 20.0 ± 0.1 sd"}, {"mass: 150 g ± 1 g sd", "mass: 0.150 g ± 0.001 g sd"},
		{"ph: 3.00, ta: 1.20 %", "ph: 3.00, ta: 1.20 %"}, {"ta: 0.30 %", "ta: 0.30 %"},
	} {
		of := func(size float64) (*ledger.Pot, *acidity.Laboratory) {
			return assaytest.Pot(draws, assaytest.Poured{Code: "water", Grams: 200 * size, SD: 4 * size, Holds: grams{"WATER": 0.985, "CO2": 0.005, "CITAC": 0.01}, Spread: grams{"CO2": 0.2, "CITAC": 0.2}, Group: "water"},
				assaytest.Poured{Code: "sugar", Grams: 20 * size, SD: 4 * size, Holds: grams{"SUCS": 1}, Group: "water"})
		}
		const thousandth = 1e-3
		for _, gas := range []bool{true, false} {
			large, lab := of(1)
			take(t, large, lab, reading.Stated{Gas: gas}, texts[0])
			small, lab := of(thousandth)
			take(t, small, lab, reading.Stated{Gas: gas}, texts[1])
			for _, id := range []constituent.ID{"WATER", "SUCS", "CO2", "CITAC"} {
				is := small.Total(id)
				for d, x := range large.Total(id) {
					require.InEpsilon(t, thousandth*x, is[d], 1e-5, "%s after %s, draw %d", id, texts[0], d)
				}
			}
		}
	}
}
