package drivers_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/drivers"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// glassOf is a serving of pure water, so many grams by draw.
func glassOf(grams []float64) (composition.Figure, *ledger.Pot) {
	water := food.Enter(&food.Food{
		ID: food.ID{Table: "test", Code: "water"}, Edible: food.None, Density: food.Density{GramsPerMl: food.None, SD: food.None}, Chemical: true,
		Values: []food.Value{{Constituent: constituent.Water, Amount: 100, SD: food.None, Low: food.None, High: food.None, Limit: food.None, State: estimate.Calculated}},
	}, nil)
	profiles := []*food.Profile{water}
	drawer := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: len(grams)}, ledger.NewColumns(profiles))
	drawer.Draw(profiles)
	pot := drawer.NewPot()
	pot.Pour(water, drawer.PerGram(water), grams, "build/water")
	return composition.Figure{Constituent: constituent.Must(constituent.Water)}, pot
}

func driversOf(grams []float64, inputs ...estimate.Entry) *drivers.Drivers {
	f, pot := glassOf(grams)
	return drivers.Of(f, pot, inputs)
}

func entry(name string, column []float64) estimate.Entry {
	return estimate.Entry{Cause: estimate.Hand, Name: name, Column: column}
}

// shuffled is the numbers from 1 to n in some order, after a central value: each is its rank.
func shuffled(random *rand.Rand, n int) []float64 {
	col := []float64{1}
	for _, i := range random.Perm(n) {
		col = append(col, float64(i+1))
	}
	return col
}

// An input counts where it explains more than the best of k unrelated ones would seem to:
// r² > 2·ln k / n (Donoho and Johnstone 1994), and r > 3/√n. Inputs that are certain are
// among the k and explain nothing.
func TestAnInputCountsAboveChance(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	const n = 60
	for _, k := range []int{1, 20, 400} {
		least := max(2*math.Log(float64(k)), 9) / n
		above, below := 0, 0
		for range 150 {
			y := shuffled(random, n)
			x := slices.Clone(y)
			for range 25 + random.IntN(15) { // so many that the correlation lies about the least
				i, j := 1+random.IntN(n), 1+random.IntN(n)
				x[i], x[j] = x[j], x[i]
			}
			inputs := []estimate.Entry{entry("x", x)}
			for i := range k - 1 {
				inputs = append(inputs, entry(fmt.Sprint("certain ", i), make([]float64, n+1)))
			}
			r := stat.Correlation(x[1:], y[1:], nil)
			d := driversOf(y, inputs...)
			if r*r > least {
				above++
				require.Len(t, d.Inputs, 1, "k = %d, r² = %g of %g", k, r*r, least)
				assert.InDelta(t, r*r, d.Inputs[0].Share, 1e-12)
				assert.InDelta(t, 1-r*r, d.Rest, 1e-12)
				assert.Equal(t, r > 0, d.Inputs[0].Raises)
			} else {
				below++
				require.Empty(t, d.Inputs, "k = %d, r² = %g of %g", k, r*r, least)
				assert.Equal(t, 1.0, d.Rest)
			}
		}
		assert.Greater(t, above, 10, "k = %d", k)
		assert.Greater(t, below, 10, "k = %d", k)
	}
}

// Of what is uncorrelated the shares are those of the variances, ties share their mean rank,
// and what one input takes away no other explains again.
func TestSharesAddUp(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	const n = 1000
	a, b, y, twin, lows := make([]float64, n+1), make([]float64, n+1), make([]float64, n+1), make([]float64, n+1), make([]float64, n+1)
	for d := range y {
		a[d], b[d] = random.NormFloat64(), random.NormFloat64()
		y[d] = 100 + 2*a[d] - b[d]
		twin[d] = math.Exp(a[d]) // ranks as a does
		if b[d] > 0 {
			lows[d] = 1
		}
	}
	d := driversOf(y, entry("a", a), entry("twin", twin), entry("b", b), estimate.Entry{Cause: estimate.Tables, Name: "table", Column: make([]float64, n+1)})
	require.Len(t, d.Inputs, 2)
	assert.Equal(t, "a", d.Inputs[0].Name, "the first of equals")
	assert.Equal(t, "b", d.Inputs[1].Name)
	assert.True(t, d.Inputs[0].Raises)
	assert.False(t, d.Inputs[1].Raises, "more of it makes the figure smaller")
	assert.InDelta(t, 0.8, d.Inputs[0].Share, 0.04)
	assert.InDelta(t, 0.2, d.Inputs[1].Share, 0.04)
	assert.InDelta(t, d.Inputs[0].Share+d.Inputs[1].Share, d.Shares[estimate.Hand], 1e-12)
	assert.InDelta(t, 1, d.Rest+d.Shares[estimate.Hand], 1e-12)

	tied := driversOf(lows, entry("b", b))
	require.Len(t, tied.Inputs, 1)
	ranks := make([]float64, n)
	for i, x := range b[1:] {
		for _, other := range b[1:] {
			if other < x {
				ranks[i]++
			}
		}
	}
	r := stat.Correlation(ranks, lows[1:], nil)
	assert.InDelta(t, r*r, tied.Inputs[0].Share, 1e-9, "two values rank as two values")
}

// Two inputs that hide one another: the second explains more than the first, and comes first.
func TestTheLargestShareComesFirst(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	const n = 2000
	a, b, y := make([]float64, n+1), make([]float64, n+1), make([]float64, n+1)
	for d := range y {
		common := 3 * random.NormFloat64()
		a[d], b[d] = common+random.NormFloat64(), common+random.NormFloat64()
		y[d] = 100 + a[d] - b[d]
	}
	d := driversOf(y, entry("a", a), entry("b", b))
	require.Len(t, d.Inputs, 2)
	assert.Greater(t, d.Inputs[0].Share, 2*d.Inputs[1].Share)
}

func TestAFigureWithoutASpreadHangsOnNothing(t *testing.T) {
	x := []float64{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13}
	d := driversOf(make([]float64, len(x)), entry("x", x))
	assert.Empty(t, d.Inputs)
	assert.Zero(t, d.Rest)
	assert.NotNil(t, d.Shares)
	assert.Empty(t, driversOf([]float64{1, 2}, entry("x", []float64{1, 2})).Inputs, "one draw has no spread")
	full := driversOf(x, entry("x", x))
	require.Len(t, full.Inputs, 1)
	assert.InDelta(t, 1, full.Inputs[0].Share, 1e-9)
	assert.Equal(t, constituent.ID(constituent.Water), full.Figure.Constituent.ID)
}
