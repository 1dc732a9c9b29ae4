package prep_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
	"sipsum/internal/estimate"
	"sipsum/internal/prep"
)

// boiled is a row of testdata/inversion.csv: sucrose split in a boiling pot, no figure of
// which is behind data/kinetics.csv.
type boiled struct {
	acid             string
	gramsPerKg       float64
	minutes          float64
	coolest, hottest float64
	share, atLeast   float64
	source           string
}

func readBoiled(t *testing.T) []boiled {
	t.Helper()
	f, err := os.Open("testdata/inversion.csv")
	require.NoError(t, err)
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	number := func(text string) float64 {
		if text == "" {
			return 0
		}
		x, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		return x
	}
	var rows []boiled
	for _, l := range lines[1:] {
		rows = append(rows, boiled{l[0], number(l[1]), number(l[2]), number(l[3]), number(l[4]), number(l[5]), number(l[6]), l[7]})
	}
	return rows
}

// pH is that of the dose in water, by package acid at 25 °C.
func (b boiled) pH(t *testing.T) float64 {
	t.Helper()
	sol := acid.New(1)
	if b.acid == "HCl" {
		const molar = 36.46 // g/mol, IUPAC atomic weights
		sol.AddIon(-1, b.gramsPerKg/molar)
	} else {
		sol.AddGrams(func(at int) float64 {
			if string(acid.Constituents()[at]) == b.acid {
				return b.gramsPerKg
			}
			return 0
		})
		sol.Solvent = 1
	}
	s, err := acid.NewSolver(25)
	require.NoError(t, err)
	state, err := s.Solve(sol, acid.State{})
	require.NoError(t, err)
	return state.PH
}

// A published share lies in the interval of the kinetics, between the temperatures at
// which the pot may have boiled, and within a tenth of its central values.
func TestInversionOfBoilingSyrups(t *testing.T) {
	const near = 0.1
	for _, b := range readBoiled(t) {
		pH := b.pH(t)
		cool := new(estimate.Summariser).Of(prep.Inverted(grams(pH), grams(b.coolest), grams(b.minutes), factors))
		hot := new(estimate.Summariser).Of(prep.Inverted(grams(pH), grams(b.hottest), grams(b.minutes), factors))
		t.Logf("%s, %g min, pH %.2f: %.2f (%.2f–%.2f) at %g °C, %.2f (%.2f–%.2f) at %g °C", b.acid, b.minutes, pH, cool.Mean, cool.Low, cool.High, b.coolest, hot.Mean, hot.Low, hot.High, b.hottest)
		if b.atLeast > 0 {
			assert.GreaterOrEqual(t, hot.High, b.atLeast, "%s: %s", b.acid, b.source)
			assert.GreaterOrEqual(t, hot.Mean, b.atLeast-near, "%s: %s", b.acid, b.source)
			continue
		}
		assert.LessOrEqual(t, cool.Low, b.share, "%s: %s", b.acid, b.source)
		assert.GreaterOrEqual(t, hot.High, b.share, "%s: %s", b.acid, b.source)
		assert.LessOrEqual(t, cool.Mean-near, b.share, "%s: %s", b.acid, b.source)
		assert.GreaterOrEqual(t, hot.Mean+near, b.share, "%s: %s", b.acid, b.source)
	}
}
