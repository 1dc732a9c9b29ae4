package taste_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/source"
	"sipsum/internal/taste"
)

// readings are the ways in which a row may have been read.
var readings = []string{"seen", "at second hand", "by definition", "our own bound", "nothing found", source.FromMemory}

// No threshold, factor, difference or constant without a source, and none that is out of its own
// range. What is from memory says so in both columns.
func TestEveryFigureOfTasteHasASource(t *testing.T) {
	for _, file := range []string{"taste_sweetness.csv", "taste_thresholds.csv", "taste_differences.csv", "taste_constants.csv"} {
		rows := embedded.Rows(file)
		require.NotEmpty(t, rows)
		for _, row := range rows {
			at := file + " " + strings.Join([]string{row.Text(row.Columns()[0]), row.Text(row.Columns()[1])}, " ")
			read, from := row.Text("read"), row.Text("source")
			assert.NotEmpty(t, from, at)
			assert.Contains(t, readings, read, at)
			assert.Equal(t, source.IsFromMemory(from), read == source.FromMemory, at)
			assert.Equal(t, strings.HasPrefix(from, "our own bound"), read == "our own bound", at)
			assert.NotEmpty(t, row.Text("unit"), at)
			low, bounded := row.Optional("low")
			high, _ := row.Optional("high")
			if slices.Contains(row.Columns(), "value") {
				value, stated := row.Optional("value")
				assert.Equal(t, stated || bounded, read != "nothing found" && row.Text(row.Columns()[2]) != "neutral", "%s: a figure, or that none was found", at)
				if stated && bounded {
					assert.LessOrEqual(t, low, value, at)
					assert.LessOrEqual(t, value, high, at)
				}
			}
			if bounded {
				assert.Positive(t, low, at)
				assert.LessOrEqual(t, low, high, at)
			}
		}
	}
}

// Every sweetener of the vocabulary has a factor, or a row that says that none was found.
func TestEverySugarAndPolyolIsAnswered(t *testing.T) {
	answered := map[constituent.ID]bool{}
	for _, row := range embedded.Rows("taste_sweetness.csv") {
		answered[constituent.ID(row.Text("constituent"))] = true
	}
	for _, c := range constituent.All() {
		if c.Parent == constituent.Sugar || c.Parent == constituent.Polyols {
			assert.True(t, answered[c.ID], "%s has no row in taste_sweetness.csv", c.ID)
		}
	}
}

// The levels of one substance rise, and its rows stand together.
func TestStrengthsRise(t *testing.T) {
	var seen []string
	last := 0.0
	for _, row := range embedded.Rows("taste_sweetness.csv") {
		c := row.Text("constituent")
		at, ok := row.Optional("at")
		if n := len(seen); n > 0 && seen[n-1] == c {
			require.True(t, ok, c)
			assert.Greater(t, at, last, c)
		} else {
			assert.NotContains(t, seen, c)
			seen = append(seen, c)
		}
		last = at
	}
}

// From memory: in the table to be looked up, and out of every figure.
func TestWhatIsFromMemoryIsNotUsed(t *testing.T) {
	for _, id := range []constituent.ID{"CHLRAC", "trigonelline"} {
		low, high := taste.Threshold(taste.Bitter, id)
		assert.Zero(t, low, id)
		assert.Zero(t, high, id)
	}
	low, high := taste.Threshold(taste.Bitter, constituent.Caffeine) // 73.88 (ASTM E679) to 350 mg/l (Robinson et al. 2005)
	assert.Equal(t, 73.88, low)
	assert.Equal(t, 350.0, high)
	low, high = taste.Threshold(taste.Salty, constituent.Sodium)
	assert.InDelta(t, 500*22.990/58.443, low, 0.1) // 0.05 % salt by atomic weights
	assert.InDelta(t, 1000*22.990/58.443, high, 0.1)
}

// International Critical Tables, vol. 5, p. 23 (Bingham and Jackson 1919), as Perry's Chemical
// Engineers' Handbook, 7th ed., table 2-366, prints them: °C, % sucrose, mPa·s. At 20 % and 20 °C
// the CRC Handbook has 1.945.
func TestViscosityOfSucrose(t *testing.T) {
	for _, x := range []struct{ celsius, percent, want float64 }{
		{20, 20, 1.967}, {20, 20, 1.945}, {20, 40, 6.223}, {20, 60, 56.7}, {5, 20, 3.166}, {10, 20, 2.662}, {10, 40, 9.83},
		{40, 20, 1.197}, {40, 40, 3.261}, {40, 60, 21.30}, {60, 20, 0.811}, {60, 40, 1.989}, {60, 60, 9.87}, {20, 0, 1.002},
	} {
		const within = 0.08 // what data/taste_constants.csv says of it
		assert.InEpsilon(t, x.want, taste.SucroseViscosity(x.percent, x.celsius), within, "%g %% at %g °C", x.percent, x.celsius)
	}
	assert.InEpsilon(t, 1.945, taste.SucroseViscosity(20, 20), 0.03)
}

// Water: 1.0016 mPa·s at 20 °C, 0.8900 at 25, 1.7916 at 0, 0.6527 at 40, 0.4660 at 60 (IAPWS, as the CRC
// Handbook prints them).
func TestViscosityOfWater(t *testing.T) {
	for celsius, want := range map[float64]float64{0: 1.7916, 20: 1.0016, 25: 0.8900, 40: 0.6527, 60: 0.4660} {
		assert.InEpsilon(t, want, taste.WaterViscosity(celsius), 0.001, "%g °C", celsius)
		assert.InEpsilon(t, want, taste.SucroseViscosity(0, celsius), 0.001, "%g °C", celsius)
	}
}
