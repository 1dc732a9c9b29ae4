package acidity_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// spread gives a value of a food a standard deviation.
func spread(f *food.Food, id constituent.ID, sd float64) *food.Food {
	for i := range f.Values {
		if f.Values[i].Constituent == id {
			f.Values[i].SD = sd
		}
	}
	return f
}

// burette titrates what a pot holds at central values to pH 8.1, with other citric acid in it:
// grams of citric acid in 100 g.
func burette(t *testing.T, held *acid.Solution, grams float64) float64 {
	t.Helper()
	s, err := acid.NewSolver(acidity.MeterCelsius)
	require.NoError(t, err)
	held.Acids[acid.Must("citric")] = grams / citricAcid
	base, err := s.Base(held, 8.1, acid.State{})
	require.NoError(t, err)
	return base * held.Solvent * citricAcid / 3
}

// A titratable acidity is a second measurement of all acids, by its spread: h′ = h + g·(T −
// h), g = var h / (var h + var T). T's own is 16 % at least (row "titratable acidity").
func TestATitratableAcidityCountsByItsSpread(t *testing.T) {
	plain := assaytest.Exact("juice", "fruit juice", juice)
	b := assaytest.NewBench(200, plain)
	found := burette(t, b.Held(b.Pot(100, plain), 0), 1)
	for _, c := range []struct{ published, own, sd float64 }{
		{0.9, 200, 0.01}, {0.9, 60, 0.01}, {0.9, 200, 0.5}, {0.4, 200, 0.02}, {1.1, 200, 0},
	} {
		f := assaytest.Exact("juice", "fruit juice", with(juice, figures{"titratable": c.published}))
		spread(spread(f, "CITAC", c.own), "titratable", c.sd)
		b := assaytest.NewBench(200, f)
		// A gram of citric acid more or less takes its own base to 8.1, but for half a per cent.
		h, T := math.Pow(c.own/1000, 2), math.Pow(max(c.sd, 0.16*c.published), 2)
		want := found + h/(h+T)*(c.published-found)
		pot := b.Pot(100, f)
		got := burette(t, b.Held(pot, 0), mol(b, pot, "citric", 0)*citricAcid)
		assert.InDelta(t, want, got, 0.1*math.Abs(c.published-found)+0.004, "%v", c)
		assert.False(t, b.Lab.IonsOf(pot, 1).Open())
		assert.Zero(t, mol(b, pot, "malic", 0), "more of its own")
	}
}

// Where a table is silent the burette decides: what is printed is titrated again.
func TestATitratableAcidityOfASilentTableComesBack(t *testing.T) {
	for _, figures := range []figures{
		with(lacking(juice, "CITAC"), figures{"titratable": 1.2}),                      // may hold acids
		with(lacking(juice, "CITAC"), figures{"titratable": 1.2, "OA": 0, "CITAC": 0}), // and none by its table
	} {
		f := assaytest.Exact("silent", "other", figures)
		b := assaytest.NewBench(200, f)
		pot := b.Pot(100, f)
		_, acidity, err := b.Lab.Acidity(pot)
		require.NoError(t, err)
		assert.InDelta(t, 1.2, acidity[0], 0.01)
		in := b.Lab.IonsOf(pot, 1)
		assert.Empty(t, in.Unknown)
		assert.False(t, in.Open())
		low, high := limits(acidity[1:])
		assert.InDelta(t, 1.2, (low+high)/2, 0.2)
		assert.Greater(t, high-low, 0.5, "16 % each way, and more")
	}
}

func limits(col []float64) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, x := range col {
		low, high = min(low, x), max(high, x)
	}
	return low, high
}

// More acid is more of the named ones, in their proportion, unless it is more than all of
// them: then it is citric acid. Less is less of them, and never below none.
func TestMoreAcidIsOfTheNamedOnes(t *testing.T) {
	of := func(published float64) (malic, lactic, citric float64) {
		f := assaytest.Exact("apple", "other", with(lacking(juice, "CITAC"), figures{"MALAC": 800, "LACAC": 200, "titratable": published}))
		spread(spread(f, "MALAC", 790), "titratable", 0.001)
		b := assaytest.NewBench(200, f)
		pot := b.Pot(100, f)
		for d := range pot.N {
			held := b.Held(pot, d)
			for i, mol := range held.Acids {
				require.GreaterOrEqual(t, mol, 0.0, "%g: %s", published, acid.All()[i].ID)
			}
		}
		return mol(b, pot, "malic", 0) * malicAcid, mol(b, pot, "lactic", 0) * lacticAcid, mol(b, pot, "citric", 0) * citricAcid
	}
	for _, published := range []float64{0.2, 0.5, 1.1} {
		malic, lactic, citric := of(published)
		assert.InEpsilon(t, 4, malic/lactic, 1e-3, "%g: in their proportion", published)
		assert.InDelta(t, 0, citric, 1e-9, "%g", published)
		assert.Equal(t, published > 1, malic > 0.8, "%g: %g", published, malic)
	}
	malic, lactic, citric := of(4)
	assert.InEpsilon(t, 0.8, malic, sameMass)
	assert.InEpsilon(t, 0.2, lactic, sameMass)
	assert.Greater(t, citric, 1.5)
}

// With a titrated acidity the acid is known: none that is missing may be added beside it for
// a published pH, and potassium that nobody has stated leaves the pH open.
func TestATitratedFoodHoldsNoMoreAcid(t *testing.T) {
	f := assaytest.Exact("juice", "fruit juice", with(juice, figures{"titratable": 0.75, "PH": 3.0}))
	g := assaytest.Exact("juice", "fruit juice", with(juice, figures{"titratable": 0.75}))
	bare := assaytest.Exact("bare", "other", figures{"WATER": 90, "SUCS": 8, "titratable": 1})
	b, c := assaytest.NewBench(20, f, bare), assaytest.NewBench(20, g)
	assert.InEpsilon(t, mol(c, c.Pot(100, g), "citric", 0), mol(b, b.Pot(100, f), "citric", 0), 1e-9)
	in := b.Lab.IonsOf(b.Pot(100, bare), 1)
	assert.Equal(t, []string{"own:bare"}, in.Bare)
	assert.True(t, in.Open())
}
