package titration_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/amount"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
	"sipsum/internal/titration"
)

type figures = map[constituent.ID]float64

var (
	plain = assaytest.Exact("plain", "", figures{"WATER": 97})
	sweet = assaytest.Exact("sweet", "syrup", figures{"WATER": 50, "SUCS": 50})
	dry   = assaytest.Exact("dry", "sugar", figures{"WATER": 0, "SUCS": 100})
	spiky = assaytest.Exact("spiky", "wine", figures{"WATER": 80, "ALC": 20})
	// juice has all that its composition needs to tell of its acidity.
	juice = assaytest.Exact("juice", "", figures{"WATER": 98, "K": 100, "NA": 0, "CA": 0, "MG": 0, "CLD": 0, "OA": 1, "CITAC": 1000})
	vague = assaytest.Exact("vague", "other", figures{"WATER": 98, "K": 100})
	thick = assaytest.Exact("thick", "", figures{"WATER": 90, "K": 100, "NA": 0, "CA": 0, "MG": 0, "CLD": 0, "OA": 1, "CITAC": 1000, "PROCNT": 4})
	hard  = assaytest.Exact("hard", "", figures{"WATER": 99, "K": 100, "NA": 0, "CA": 40, "MG": 24.305, "CLD": 0, "OA": 0})
)

// table is a bench with a rig on it.
type table struct {
	*assaytest.Bench
	rig     *titration.Rig
	faults  *fail.List
	journal *estimate.Journal
}

func lay(draws int, more ...*food.Food) table {
	b := assaytest.NewBench(draws, append(more, plain, sweet, dry, spiky, juice, vague, thick, hard)...)
	b.Lab.Ens.Journal = &estimate.Journal{}
	rig := &titration.Rig{Lab: b.Lab, Hand: amount.Hand{Ens: b.Lab.Ens}, Faults: &fail.List{}}
	return table{b, rig, rig.Faults, b.Lab.Ens.Journal}
}

// notes gives what was noted so far.
func (b table) notes() []note.Note { return b.rig.Notes }

// readings reads titrations as a drink file has them.
func readings(t *testing.T, written ...string) (list []*drink.Measured) {
	t.Helper()
	for _, text := range written {
		d, faults := drink.Parse("test", []byte("drink: x\nserves: 1\ncomponents:\n  stuff: {ingredients: [100 g core:water-pure], measured: {"+text+"}}\nbuild: [10 g stuff]\n"), nil)
		require.NoError(t, faults.Err(fail.Wrong))
		list = append(list, d.Components[0].Measured)
	}
	return list
}

// points writes a titration as a reading: ml and pH by turns.
func points(numbers ...float64) string {
	var list []string
	for i := 0; i < len(numbers); i += 2 {
		list = append(list, fmt.Sprintf("[%.4f ml, %.3f]", numbers[i], numbers[i+1]))
	}
	return "titration: [" + strings.Join(list, ", ") + "]"
}

// buffer is the points of Gomori's phosphate buffers as a titration of 100 g with 10 mol/l.
func buffer() string {
	var numbers []float64
	for _, p := range gomori {
		numbers = append(numbers, (p.share-gomori[0].share)/100, p.pH)
	}
	return points(numbers...)
}

// take titrates a pot and gives what it carries then.
func (b table) take(t *testing.T, pot *ledger.Pot, written ...string) *acidity.Titration {
	t.Helper()
	b.rig.Titrate(pot, readings(t, written...))
	require.NoError(t, b.faults.Err(fail.Wrong))
	require.True(t, acidity.Titrated(pot, 0))
	of, is := pot.Traced(0)[0].Tracer.(*acidity.Titration)
	require.True(t, is)
	return of
}

// pH solves what a pot holds in a draw with mol of base in 100 g.
func (b table) pH(t *testing.T, pot *ledger.Pot, draw int, base, water float64) float64 {
	t.Helper()
	s, err := acid.NewSolver(acidity.MeterCelsius)
	require.NoError(t, err)
	sol := b.Held(pot, draw)
	sol.AddIon(1, max(base, 0))
	sol.AddIon(-1, max(-base, 0))
	sol.Solvent += water
	state, err := s.Solve(sol, acid.State{})
	require.NoError(t, err)
	return state.PH
}

// A titration that is poured back gives its own points, whoever does it (Gomori 1955). The
// rows carry grams of the liquid by their water, and nothing that they carried before.
func TestPouredBackATitrationGivesItsPoints(t *testing.T) {
	b := lay(60)
	pot := b.Pot(50, plain, sweet, dry)
	for row := range pot.Rows {
		estimate.Fill(pot.Carry(row, acidity.UnmeasuredOf("K")), 1)
	}
	of := b.take(t, pot, buffer()+", base: 10 mol/l, sample: 150.0 g")
	assert.Equal(t, "stuff", of.Of)
	assert.Equal(t, 5.8, of.Lowest)
	assert.Equal(t, 8.0, of.Highest)
	assert.Zero(t, of.PerGram.Solvent)
	assert.Empty(t, b.notes())
	for i, grams := range []float64{150 * 48.5 / 73.5, 150 * 25 / 73.5, 0} {
		require.Len(t, pot.Traced(i), 1)
		assert.InDelta(t, grams, pot.Traced(i)[0].Column[0], 1e-6, "by water")
	}
	for d, grams := range pot.Traced(0)[0].Column {
		assert.InDelta(t, pot.Mass()[d], grams+pot.Traced(1)[0].Column[d], 1e-6)
	}
	for _, p := range gomori {
		assert.InDelta(t, p.pH, b.pH(t, pot, 0, (p.share-gomori[0].share)/1e4, 0), 0.05, "%g %%", p.share)
	}
}

// What a titrant brings of water counts: phosphoric acid of 0.1 mol/kg, titrated with six
// times its water, falls and rises as the pH of its solutions does (package acid).
func TestTheWaterOfATitrantCounts(t *testing.T) {
	b := lay(5)
	s, err := acid.NewSolver(acidity.MeterCelsius)
	require.NoError(t, err)
	var numbers []float64
	for _, mmol := range []float64{0, 0.25, 0.5, 0.75, 0.95, 1.05, 1.25, 1.5, 1.75} {
		sol := acid.New((9.7 + mmol/0.025/1.0018) / 1000)
		sol.Acids[acid.Must("phosphoric")] = 0.00097
		sol.AddIon(1, mmol/1000)
		state, err := s.Solve(sol, acid.State{})
		require.NoError(t, err)
		numbers = append(numbers, mmol/0.025, state.PH)
	}
	pot := b.Pot(10, plain)
	b.take(t, pot, points(numbers...)+", base: 0.025 mol/l, sample: 10.0 g")
	for i := 0; i < len(numbers); i += 2 {
		ml := numbers[i]
		assert.InDelta(t, numbers[i+1], b.pH(t, pot, 0, 0.025*ml/1000, ml/1001.8), 0.03, "%g ml", ml)
	}
}

// The sample, the titrant and the meter have the spread that is stated, else that of
// data/instruments.csv: a meter is off by up to 0.05, the same at all points.
func TestWhatATitrationIsOffBy(t *testing.T) {
	for _, c := range []struct {
		name, text string
		sd         float64 // of the strength
	}{
		{"a weighed sample", "base: 10 mol/l ± 0.001 mol/l, sample: 100 g ± 10 g", 0.1 / math.Sqrt(3)},
		{"a titrant", "base: 10 mol/l ± 1 mol/l, sample: 100.00 g ± 0.01 g", 0.1 / math.Sqrt(3)},
		{"a titrant whose digits are a name", "base: 10 mol/l, sample: 100.00 g ± 0.01 g", 0.01 / math.Sqrt(3)},
		{"both", "base: 10 mol/l ± 1 mol/l, sample: 100 g ± 10 g", 0.1 * math.Sqrt(2./3)},
	} {
		b := lay(400)
		pot := b.Pot(100, plain)
		of := b.take(t, pot, buffer()+", "+c.text)
		assert.Equal(t, 1.0, of.Strength[0])
		assert.InEpsilon(t, c.sd, stat.StdDev(of.Strength[1:], nil), 0.12, c.name)
		assert.InDelta(t, 1, stat.Mean(of.Strength[1:], nil), 0.02, c.name)
		assert.Zero(t, of.Shift[0])
		assert.NotContains(t, of.Shift[1:], 0.0, "every draw has a meter of its own")
		own := b.pH(t, pot, 0, 0, 0)
		var off []float64
		for d := 1; d < pot.N; d += 4 {
			off = append(off, b.pH(t, pot, d, 0, 0)-own)
		}
		assert.InDelta(t, 0.05/math.Sqrt(3), stat.StdDev(off, nil), 0.005, c.name)
		for _, x := range off {
			assert.InDelta(t, 0, x, 0.051, c.name)
		}
		var names []string
		for _, e := range b.journal.Entries() {
			if e.Cause == estimate.Readings {
				names = append(names, e.Name)
			}
		}
		assert.ElementsMatch(t, []string{"sample of the titration of stuff", "strength of the titrant of stuff", "meter of the titration of stuff"}, names, c.name)
	}
}

// A sample by volume weighs what the liquid does; acid counts as base below zero; two
// titrations of one state are two ends of one curve, each by its own sample.
func TestSamplesAndTitrantsOfEveryKind(t *testing.T) {
	heavy := lay(5)
	pot := heavy.Pot(100, sweet)
	density := heavy.Lab.Gauge.Density(pot)[0]
	require.InDelta(t, 1.23, density, 0.01, "50 °Bx, ICUMSA")
	byVolume := heavy.take(t, pot, buffer()+", base: 10 mol/l, sample: 100.0 ml")
	weighed := lay(5)
	byMass := weighed.take(t, weighed.Pot(100, sweet), buffer()+fmt.Sprintf(", base: 10 mol/l, sample: %.4f g", 100*density))
	assert.InDelta(t, byMass.PerGram.Strong, byVolume.PerGram.Strong, 1e-7)
	assert.InDeltaSlice(t, byMass.PerGram.Acids, byVolume.PerGram.Acids, 1e-7)

	const middle = 6 // pH 7.0
	var up, down []float64
	for _, p := range gomori[middle:] {
		up = append(up, (p.share-gomori[middle].share)/100, p.pH)
	}
	for i := middle; i >= 0; i-- {
		down = append(down, (gomori[middle].share-gomori[i].share)/200, gomori[i].pH)
	}
	b := lay(400)
	pot = b.Pot(100, plain)
	of := b.take(t, pot, points(up...)+", base: 10 mol/l ± 0.001 mol/l, sample: 100 g ± 10 g", points(down...)+", acid: 10 mol/l ± 0.001 mol/l, sample: 50 g ± 5 g")
	assert.Equal(t, 5.8, of.Lowest)
	assert.Equal(t, 8.0, of.Highest)
	for _, p := range gomori {
		assert.InDelta(t, p.pH, b.pH(t, pot, 0, (p.share-gomori[middle].share)/1e4, 0), 0.05, "%g %%", p.share)
	}
	assert.Equal(t, 1.0, of.Strength[0])
	assert.InDelta(t, 1, stat.Mean(of.Strength[1:], nil), 0.01)
	assert.Less(t, stat.StdDev(of.Strength[1:], nil), 0.1/math.Sqrt(3)*1.05)
	assert.Greater(t, stat.StdDev(of.Strength[1:], nil), 0.1/math.Sqrt(6)*0.9, "the mean of two")
}

// A sample that is not written is the usual one, 10 g, and that is said.
func TestTheUsualSampleIsTenGrams(t *testing.T) {
	left, written := lay(5), lay(5)
	a := left.take(t, left.Pot(100, plain), buffer()+", base: 1 mol/l")
	b := written.take(t, written.Pot(100, plain), buffer()+", base: 1 mol/l, sample: 10.0 g")
	assert.InDelta(t, b.PerGram.Strong, a.PerGram.Strong, 1e-12)
	require.Len(t, left.notes(), 1)
	assert.Equal(t, "titration", left.notes()[0].Kind)
	assert.Contains(t, left.notes()[0].Text, "so 10 g are taken: write sample: 10 g if that is so")
	assert.Empty(t, written.notes())
}

// What cannot be used is a fault at the reading, and the pot stays as it was.
func TestTitrationsThatAreRefused(t *testing.T) {
	const base = ", base: 10 mol/l, sample: 10.0 g"
	for _, c := range []struct {
		name string
		of   *food.Food
		text string
		want string
	}{
		{"two that do not meet", plain, points(0, 7, 1, 8, 2, 9) + base + "|" + points(0, 7.5, 1, 7.2, 2, 6) + ", acid: 10 mol/l, sample: 10.0 g", "the titration cannot be used"},
		{"nothing was titrated", dry, buffer() + base, "there is no water in what was titrated"},
		// 64.3 g of citric acid in 100 g (data/limits.csv) are 1.004 mol: 10.04 ml for 10 g.
		{"sourer than anything", plain, points(0, 2, 3, 3, 6, 4, 9, 5.5, 11, 8.1) + base, "nothing has more than 64.3"},
		{"sourer from below its own", plain, points(0, 2, 3, 3, 6, 4, 9, 5.5, 11, 7) + base, "nothing has more than 64.3"},
		{"as sour as can be", plain, points(0, 2, 3, 3, 6, 4, 8, 5.5, 9.5, 8.1) + base, ""},
		{"alkaline beyond the end point", plain, points(0, 7.0, 1, 8.1, 5, 10, 12, 11.5) + base, ""},
	} {
		b := lay(5)
		pot := b.Pot(100, c.of)
		b.rig.Titrate(pot, readings(t, strings.Split(c.text, "|")...))
		err := b.faults.Err(fail.Wrong)
		if c.want == "" {
			assert.NoError(t, err, c.name)
			assert.True(t, acidity.Titrated(pot, 0), c.name)
			continue
		}
		require.ErrorContains(t, err, c.want, c.name)
		assert.ErrorContains(t, err, "test:", c.name)
		assert.Equal(t, 1, b.faults.Len(), c.name)
		assert.False(t, acidity.Titrated(pot, 0), c.name)
	}
}

// Points that no one curve goes through are told; a meter is off by 0.05.
func TestPointsThatLieOnNoCurveAreTold(t *testing.T) {
	b := lay(5)
	b.take(t, b.Pot(100, plain), points(0, 4, 1, 4.05, 1.01, 6, 3, 6.05, 3.01, 8)+", base: 10 mol/l, sample: 100.0 g")
	require.Len(t, b.notes(), 1)
	assert.Equal(t, "titration", b.notes()[0].Kind)
	assert.Regexp(t, `do not lie on one curve \(one is off by \d\.\d\d pH\)`, b.notes()[0].Text)
}

// A titration that has little to do with what its composition takes is told, with how many
// times the base it took; where the composition tells little it cannot disagree.
func TestATitrationIsHeldAgainstItsRecipe(t *testing.T) {
	// juice holds 1 g of citric acid and 2.56 mmol of potassium in 100 g: package acid tells
	// what 10 g of it take.
	curve := func(b table, times float64) string {
		s, err := acid.NewSolver(acidity.MeterCelsius)
		require.NoError(t, err)
		sol := acid.New(0.0098)
		sol.Acids[acid.Must("citric")] = 0.1 / 192.123
		sol.AddIon(1, 0.01/39.0983)
		own, err := s.Solve(sol, acid.State{})
		require.NoError(t, err)
		var numbers []float64
		for _, pH := range []float64{own.PH, 4, 5, 6, 7, 8} {
			base, err := s.Base(sol, pH, acid.State{})
			require.NoError(t, err)
			numbers = append(numbers, times*math.Max(base, 0)*sol.Solvent*10000, pH)
		}
		return points(numbers...) + ", base: 0.1 mol/l, sample: 10.0 g"
	}
	for _, c := range []struct {
		name  string
		of    *food.Food
		draws int
		times float64
		told  string
	}{
		{"as written", juice, 100, 1, ""},
		{"a little more", juice, 100, 1.01, ""},
		{"more than twice", juice, 100, 2.5, "took 2.5 times the base"},
		{"half", juice, 100, 0.5, "took 0.5 times the base"},
		{"of a composition that tells nothing", vague, 100, 2.5, ""},
		{"of what protein buffers", thick, 100, 2.5, ""},
		{"with too few draws", juice, 1, 2.5, ""},
	} {
		b := lay(c.draws)
		b.take(t, b.Pot(100, c.of), curve(b, c.times))
		if c.told == "" {
			assert.Empty(t, b.notes(), c.name)
			continue
		}
		require.Len(t, b.notes(), 1, c.name)
		assert.Equal(t, "reading disagrees", b.notes()[0].Kind)
		assert.Contains(t, b.notes()[0].Text, c.told, c.name)
		assert.Contains(t, b.notes()[0].Text, "more than 3 standard deviations off")
	}
}

// What a titration is off by itself counts when it is held against its recipe.
func TestAnUnsureTitrationDisagreesLess(t *testing.T) {
	told := func(sample string) int {
		b := lay(200)
		// 1.2 times the 1.30 mmol that 10 g take from pH 3 to 8.
		b.take(t, b.Pot(100, juice), points(0, 3.3, 4.5, 4, 9.0, 5, 13.0, 6, 15.5, 8)+", base: 0.1 mol/l, sample: "+sample)
		return len(b.notes())
	}
	assert.Equal(t, 1, told("10.0 g"))
	assert.Equal(t, 0, told("10 g ± 4 g"))
}

// Of the solvent alcohol is a part, and divalent metals count for the ionic strength twice
// and once more: ½·2².
func TestWhatATitratedLiquidStandsIn(t *testing.T) {
	b, c := lay(5), lay(5)
	spirit := b.take(t, b.Pot(100, spiky), buffer()+", base: 10 mol/l, sample: 100.0 g")
	water := c.take(t, c.Pot(100, plain), buffer()+", base: 10 mol/l, sample: 100.0 g")
	assert.InEpsilon(t, water.PerGram.Strong, spirit.PerGram.Strong, 0.2)
	hardOne := lay(5)
	pot := hardOne.Pot(100, hard)
	metals := hardOne.take(t, pot, buffer()+", base: 10 mol/l, sample: 100.0 g")
	// 25.6 mmol/kg of potassium, 10 of calcium and 10 of magnesium.
	assert.InDelta(t, (0.0256/2+2*0.020)*0.99/1000, metals.PerGram.Background, 3e-6)
}

// A titration that took 2.5 times the base of its recipe: the acidity of the pot is between the
// two, and where it agrees it is as sure as its instruments.
func TestATitrationThatContradictsSpansBoth(t *testing.T) {
	span := func(times float64) estimate.Summary {
		b := lay(400)
		pot := b.Pot(100, juice)
		// As above, of which 1.2 times as much is told.
		times /= 1.2
		b.take(t, pot, points(0, 3.3, times*4.5, 4, times*9.0, 5, times*13.0, 6, times*15.5, 8)+", base: 0.1 mol/l, sample: 10.0 g")
		_, per100g, err := b.Lab.Acidity(pot)
		require.NoError(t, err)
		return estimate.Summarise(per100g)
	}
	agrees, wrong := span(1), span(2.5)
	assert.Less(t, agrees.High-agrees.Low, 0.15*agrees.Mean)
	assert.InEpsilon(t, 2.5*agrees.Mean, wrong.Mean, 0.02, "the central value is what was titrated")
	assert.Less(t, wrong.Low, 1.05*agrees.Mean)
	assert.GreaterOrEqual(t, wrong.High, 2.5*agrees.Mean)
}
