package reading_test

import (
	"fmt"
	"math"
	"math/rand"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// metered calculates the text of a drink file beside a shelf of meters, whole.
func metered(t testing.TB, lib assaytest.Library, shelf, text string, draws int) *assay.Assay {
	t.Helper()
	a, err := assaytest.Run(t.Context(), beside(t, shelf, text), &fail.List{}, lib, assaytest.Options{Draws: draws, Seed: 1, Want: assay.Want{Whole: true}})
	require.NoError(t, err)
	return a
}

// beside reads a drink beside a shelf of meters.
func beside(t testing.TB, shelf, text string) *drink.Drink {
	t.Helper()
	d, faults := drink.ParseBeside("test", []byte(text), nil, func(name string) ([]byte, error) {
		if name == drink.MetersFile {
			return []byte(shelf), nil
		}
		return nil, os.ErrNotExist
	})
	require.Zero(t, faults.Len(), "%v", faults.Err(1))
	return d
}

// certified are standard buffers with their certified pH at 25 °C (NBS/Bates scale; Staples and Bates 1969:
// testdata/buffers/certified.csv), as three pots of one drink.
var certified = []struct {
	name string
	pH   float64
}{{"tartrate", 3.557}, {"citrate", 3.776}, {"acetate", 4.65}}

// buffersRead are the certified buffers, each read by a meter.
func buffersRead(t testing.TB, read []float64, by func(i int) string) string {
	t.Helper()
	foods, pots, build := "", "", ""
	for i, b := range certified {
		text, err := os.ReadFile("../../testdata/buffers/" + b.name + ".drink.yaml")
		require.NoError(t, err)
		_, rest, ok := strings.Cut(string(text), "foods:\n")
		require.True(t, ok)
		own, lines, ok := strings.Cut(rest, "build:\n")
		require.True(t, ok)
		foods += own
		pots += fmt.Sprintf("  %s:\n    ingredients:\n%s    measured: {ph: %.3f, meter: %s, day: 2027-03-31}\n", b.name, strings.ReplaceAll(lines, "  - ", "      - "), read[i], by(i))
		build += fmt.Sprintf("  - 10 g %s\n", b.name)
	}
	return "drink: \"Three Buffers\"\nserves: 1\nscale: 0.0001 g\nfoods:\n" + foods + "components:\n" + pots + "build:\n" + build
}

// aYearAgo are meters that were right a year before the reading, and may be off by anything since.
const aYearAgo = `meters:
  one: {kind: pH meter, resolution: 0.001, checked: 2026-03-31, standards: {ph 4.01 at 25 °C: [4.01, 4.01], ph 7.01 at 25 °C: [7.01, 7.01]}}
  two: {kind: pH meter, resolution: 0.001, checked: 2026-03-31, standards: {ph 4.01 at 25 °C: [4.01, 4.01], ph 7.01 at 25 °C: [7.01, 7.01]}}
  three: {kind: pH meter, resolution: 0.001, checked: 2026-03-31, standards: {ph 4.01 at 25 °C: [4.01, 4.01], ph 7.01 at 25 °C: [7.01, 7.01]}}
`

// A meter shows 0.12 too much of three liquids whose pH is certified by others: what it is off by is found, and the
// liquids are right within their intervals. The same figures from three meters leave each liquid wider.
func TestAMeterIsFoundByWhatItReads(t *testing.T) {
	const off = 0.12
	var read []float64
	for _, b := range certified {
		read = append(read, b.pH+off)
	}
	lib := assaytest.Core(t)
	one := metered(t, lib, aYearAgo, buffersRead(t, read, func(int) string { return "one" }), 1000)
	require.Len(t, one.Meters, 1)
	f := one.Meters[0]
	assert.Equal(t, 3, f.Readings)
	assert.True(t, f.Low <= off && off <= f.High, "%.3f to %.3f", f.Low, f.High)
	assert.InDelta(t, off, f.Is, 0.06)
	assert.Less(t, f.IsU, f.U/2, "they tell it better than its check")
	three := metered(t, lib, aYearAgo, buffersRead(t, read, func(i int) string { return []string{"one", "two", "three"}[i] }), 1000)
	assert.Empty(t, three.Meters, "one reading tells a liquid and its meter apart by nothing")
	for _, b := range certified {
		together, apart := assaytest.Component(t, one, b.name).Chemistry.PHMeter, assaytest.Component(t, three, b.name).Chemistry.PHMeter
		t.Logf("%s: %.3f is %.3f (%.3f to %.3f), by three meters %.3f (%.3f to %.3f)", b.name, b.pH, together.Mean, together.Low, together.High, apart.Mean, apart.Low, apart.High)
		assert.True(t, together.Low <= b.pH && b.pH <= together.High, "%s: %.3f to %.3f", b.name, together.Low, together.High)
		assert.Greater(t, apart.High-apart.Low, 1.3*(together.High-together.Low), b.name)
	}
}

// Three syrups are weighed out, each within a gram and a half, and read with one refractometer that is off by its own, the
// same for all. What the world is comes from arithmetic alone. Nine of ten truths lie in the intervals: of what the
// refractometer is off by, and of each syrup.
func TestTruthsOfSharedMetersLieInTheirIntervals(t *testing.T) {
	const worlds, draws = 200, 600
	random := rand.New(rand.NewSource(11))
	// a kind's zero of ± 0.2 °Bx, and its walk up to the day on which it is checked again, each rectangular
	const shelf = "meters:\n  glass: {kind: refractometer}\n"
	zero, slope := 0.2/math.Sqrt(3)*math.Sqrt2, 0.005/math.Sqrt(3)
	inside, seen := map[string]int{}, map[string]int{}
	for range worlds {
		off, grows := zero*random.NormFloat64(), slope*random.NormFloat64()
		pots, truths := "", map[string]float64{}
		for i, sugar := range []float64{20, 30, 40} {
			water, sugar := 100-sugar+0.15*random.NormFloat64(), sugar+0.15*random.NormFloat64()
			truth := 100 * sugar / (water + sugar)
			shows := truth + 0.1*random.NormFloat64()
			shows += off + grows*shows
			name := string(rune('a' + i))
			truths[name] = truth
			pots += fmt.Sprintf("  %s:\n    ingredients: [%g g ± 0.15 g sd core:water-pure, %g g ± 0.15 g sd core:sucrose]\n    measured: {brix: %.2f}\n", name, 100-float64(20+10*i), float64(20+10*i), shows)
		}
		a := metered(t, assaytest.Core(t), shelf, "drink: x\nserves: 1\ncomponents:\n"+pots+"build: [10 g ± 0 g a, 10 g ± 0 g b, 10 g ± 0 g c]\n", draws)
		require.Len(t, a.Meters, 1)
		f := a.Meters[0]
		seen["meter"]++
		if is := off + grows*f.At; f.Low <= is && is <= f.High {
			inside["meter"]++
		}
		for name, truth := range truths {
			seen["syrup"]++
			c := assaytest.Component(t, a, name)
			sugar := assaytest.Figure(t, c.Constituents, "SUCS")
			if 10*sugar.Low <= truth && truth <= 10*sugar.High {
				inside["syrup"]++
			}
		}
	}
	for what, n := range seen {
		share := float64(inside[what]) / float64(n)
		t.Logf("%s: %.1f %% of %d", what, 100*share, n)
		assert.InDelta(t, 0.90, share, 0.06, what)
	}
}
