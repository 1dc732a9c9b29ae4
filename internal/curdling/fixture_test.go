package curdling_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
	"sipsum/internal/curdling"
)

// milk is 1 kg of a milk as its titration tells it: 10 g with acid of 0.1 mol/l from
// pH 6.65 down to 4.4. The buffer capacity is a straight 0.0225 mol/kg and pH: the
// greatest of cow's whole milk is 0.0277, about pH 5, and it is less towards the
// milk's own pH (Indian Council of Agricultural Research, e-course, lesson 24,
// Buffering capacity and buffering index).
func milk(t testing.TB) *acid.Solution {
	t.Helper()
	const grams, capacity, water, own, last = 0.010, 0.0225, 0.88, 6.65, 4.4
	bench := acid.Titration{Celsius: 25, Solvent: grams * water}
	for pH := last; pH <= own+1e-9; pH += 0.25 {
		added := grams * capacity * (own - pH)
		bench.Points = append(bench.Points, acid.Reading{Base: -added, Solvent: added / 0.1, PH: pH})
	}
	fit, err := acid.Fit(bench)
	require.NoError(t, err)
	require.LessOrEqual(t, fit.Worst, 0.05)
	return fit.Solution(water)
}

// lemon is 1 kg of lemon juice: citric acid 48 g/l (Penniston et al. 2008) and
// potassium 1264 mg/l (Lorente et al. 2014).
func lemon(t testing.TB) *acid.Solution {
	t.Helper()
	sol := acid.New(0.91)
	sol.Acids[acid.Must("citric")] = 48 / 192.12
	sol.AddIon(1, 1.264/39.10)
	return sol
}

// same is a part without a spread: grams of a liquid of which perKg is 1 kg.
func same(perKg *acid.Solution, grams float64, columns int) curdling.Part {
	p := curdling.Part{}
	for range columns {
		sol := acid.New(0)
		sol.Pour(perKg, grams/1000)
		p.Grams, p.Solutions = append(p.Grams, grams), append(p.Solutions, sol)
	}
	return p
}

// places are evenly spread draws, the middle first.
func places(draws int) []float64 {
	list := []float64{0.5}
	for i := range draws {
		list = append(list, (float64(i)+0.5)/float64(draws))
	}
	return list
}

const draws = 40

// sourMilk is 100 g of milk with grams of lemon juice and 20 g of water.
func sourMilk(t testing.TB, celsius, grams float64) *curdling.Mixture {
	t.Helper()
	return &curdling.Mixture{
		Protein: protein(t, "casein"), Celsius: celsius, Place: places(draws),
		Milk: same(milk(t), 100, draws+1), Sour: same(lemon(t), grams, draws+1), Rest: same(acid.New(1), 20, draws+1),
	}
}

func protein(t testing.TB, id string) *curdling.Protein {
	t.Helper()
	p, ok := curdling.Find(id)
	require.True(t, ok, id)
	return p
}

type observation struct {
	protein      string
	celsius, pH  float64
	seen, source string
}

func observed(t *testing.T) []observation {
	t.Helper()
	file, err := os.Open("testdata/observed.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	var list []observation
	for _, r := range rows[1:] {
		celsius, err := strconv.ParseFloat(r[1], 64)
		require.NoError(t, err)
		pH, err := strconv.ParseFloat(r[2], 64)
		require.NoError(t, err)
		list = append(list, observation{r[0], celsius, pH, r[3], r[4]})
	}
	return list
}
