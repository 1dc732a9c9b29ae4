package dosing_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/dosing"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// water is the only thing poured here: a pot reads what a function makes of its grams.
func search(of func(grams float64) (float64, error), grams ...float64) dosing.Search {
	f := &food.Food{ID: food.ID{Table: "own", Code: "water"}, Edible: food.None, Values: []food.Value{{
		Constituent: constituent.Water, Amount: 100, SD: 0, Low: food.None, High: food.None, Limit: food.None, State: estimate.Measured,
	}}}
	p := food.Enter(f, nil)
	columns := ledger.NewColumns([]*food.Profile{p})
	drawer := ledger.NewDrawer(estimate.Ensemble{Seed: 1, N: len(grams)}, columns)
	pour := func(pot *ledger.Pot, grams []float64) { pot.Pour(p, drawer.PerGram(p), grams, "water") }
	pot := ledger.New(columns, len(grams))
	pour(pot, grams)
	return dosing.Search{Pot: pot, Pour: pour, Most: 1000, Near: 1e-3, Read: func(pot *ledger.Pot) ([]float64, error) {
		col := pot.Mass()
		for d, x := range col {
			got, err := of(x)
			if err != nil {
				return nil, err
			}
			col[d] = got
		}
		return col, nil
	}}
}

func well(of func(float64) float64) func(float64) (float64, error) {
	return func(x float64) (float64, error) { return of(x), nil }
}

// Whatever the curve, the dose is found where algebra puts it, a thousandth of a gram or a
// kilogram.
func TestTheDoseIsFound(t *testing.T) {
	for _, c := range []struct {
		name       string
		of         func(float64) float64
		want, dose float64
	}{
		{"straight", func(x float64) float64 { return x }, 107, 7},
		{"diluted", func(x float64) float64 { return 5000 / x }, 12, 5000.0/12 - 100},
		{"as a pH falls", func(x float64) float64 { return 7 - math.Log10(1+1e4*(x-100)) }, 3, (1e4 - 1) / 1e4},
		{"little", func(x float64) float64 { return 1e3 * (x - 100) }, 2, 0.002},
		{"much", func(x float64) float64 { return math.Sqrt(x) }, math.Sqrt(1000), 900},
	} {
		s := search(well(c.of), 100)
		dose, err := s.Central(c.want)
		require.NoError(t, err, c.name)
		assert.InEpsilon(t, c.dose, dose, 1e-5, c.name)
	}
}

func TestAPotThatReadsItAlreadyWantsNothing(t *testing.T) {
	dose, err := search(well(func(x float64) float64 { return x }), 100).Central(100.0005)
	require.NoError(t, err)
	assert.Zero(t, dose)
}

// A reading that cannot be had is refused, each for its own reason.
func TestWhatNoDoseMakesIsRefused(t *testing.T) {
	var passed dosing.Passed
	_, err := search(well(func(x float64) float64 { return x }), 100).Central(90)
	require.ErrorAs(t, err, &passed)
	assert.InDelta(t, 100, passed.Now, 1e-9)
	assert.InDelta(t, 1100, passed.Led, 1e-9)

	_, err = search(well(func(float64) float64 { return 4 }), 100).Central(3)
	require.ErrorAs(t, err, &passed, "nothing moves it")
	assert.InDelta(t, 4, passed.Led, 1e-9)

	var short dosing.OutOfReach
	_, err = search(well(func(x float64) float64 { return 2 + 100/x }), 100).Central(2)
	require.ErrorAs(t, err, &short)
	assert.InDelta(t, 2+100.0/1100, short.Nearest, 1e-9)
	assert.InDelta(t, 1000, short.Dose, 1e-9)

	valley := func(x float64) float64 { return (x - 150) * (x - 150) / 100 } // 25 at first, 0 at 50 g
	var twice dosing.Twice
	_, err = search(well(valley), 100).Central(9)
	require.ErrorAs(t, err, &twice)
	assert.InDelta(t, 20, twice.First, 1e-3)
	assert.InDelta(t, 80, twice.Second, 1e-3)
	_, err = search(well(valley), 100).Central(-1)
	require.ErrorAs(t, err, &short, "it turns before it gets there")

	broken := errors.New("dry")
	_, err = search(func(float64) (float64, error) { return 0, broken }, 100).Central(1)
	require.ErrorIs(t, err, broken)
	ends := func(x float64) (float64, error) {
		if x > 200 {
			return 0, broken
		}
		return x, nil
	}
	_, err = search(ends, 100).Central(250)
	require.ErrorAs(t, err, &short, "it goes as far as an instrument reads")
	assert.LessOrEqual(t, short.Nearest, 200.0)
}

// Each draw has its own pot and its own target; one that has passed it wants nothing.
func TestDrawsWantTheirOwnDose(t *testing.T) {
	s := search(well(func(x float64) float64 { return 5000 / x }), 100, 90, 110, 400)
	central, err := s.Central(20)
	require.NoError(t, err)
	require.InDelta(t, 150, central, 1e-3)
	doses, err := s.Draws([]float64{20, 20, 25, 20}, central)
	require.NoError(t, err)
	for d, want := range []float64{150, 160, 90, 0} {
		assert.InDelta(t, want, doses[d], 0.1, "draw %d", d)
	}
}
