package assay_test

import (
	"encoding/csv"
	"fmt"
	"maps"
	"os"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/composition"
	"sipsum/internal/food"
	"sipsum/internal/prep"
)

// printed is a row of testdata/brew/recipes.csv. It has a yield, or a time and a
// temperature.
type printed struct {
	food, name, use                                     string
	dose, water, out, yield, celsius, minutes, caffeine float64
}

func recipes(t *testing.T) []printed {
	t.Helper()
	file, err := os.Open("../../testdata/brew/recipes.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	number := func(text string) float64 {
		if text == "" {
			return 0
		}
		x, err := strconv.ParseFloat(text, 64)
		require.NoError(t, err)
		return x
	}
	var list []printed
	for _, r := range rows[1:] {
		list = append(list, printed{
			food: r[0], name: r[1], use: r[10],
			dose: number(r[2]), water: number(r[3]), out: number(r[4]), yield: number(r[5]),
			celsius: number(r[7]), minutes: number(r[8]), caffeine: number(r[9]),
		})
	}
	return list
}

// brewed gives the caffeine of a printed: by the step brew where the row has a
// yield, else by steep. Doses are weighed: to 0.01 g, not to the last digit printed.
func brewed(t *testing.T, lib assaytest.Library, r printed) composition.Figure {
	t.Helper()
	if r.yield == 0 {
		return assaytest.Figure(t, assaytest.Assay(t, lib, fmt.Sprintf(`
drink: "Infusion"
serves: 1
components:
  cup:
    ingredients: [%.2f g core:water-brew]
    steps:
      - steep: {ingredients: [%.2f g core:%s], at: %g °C, for: %g min}
build: [%.9g g cup]
`, r.water, r.dose, r.food, r.celsius, r.minutes, r.out), 1000).PerServing, "CAFFN")
	}
	return assaytest.Figure(t, assaytest.Assay(t, lib, fmt.Sprintf(`
drink: "Brew"
serves: 1
components:
  cup:
    ingredients: [%.2f g core:%s, %.2f g core:water-brew]
    steps:
      - brew: {out: %.9g g, yield: %.9g %% ± %.9g %%}
build: [%.9g g cup]
`, r.dose, r.food, r.water+2*r.dose, r.out, 100*r.yield, 10*r.yield, r.out), 1000).PerServing, "CAFFN")
}

// The range that Steep states for tea.
const leastCelsius = 95

var leastMinutes = map[string]float64{"tea-leaf-black": 3, "tea-leaf-green": 5, "tea-leaf-gyokuro": 2}

// set names the rows that count together: coffee that was held out, the rows that
// the steps were made with, and of these the tea that is steeped within the range
// that Steep is valid for and the tea that is not.
func (r printed) set() string {
	switch {
	case r.use == "test":
		return "held out, brew"
	case r.yield > 0:
		return "known, brew"
	case r.minutes >= leastMinutes[r.food] && r.celsius >= leastCelsius:
		return "known, steep, in range"
	}
	return "known, steep, out of range"
}

// A row holds if the published figure lies in the interval and the half-width is
// at most 40 %. Only coffee is held out: all of its four rows hold, and no espresso,
// moka pot or filter coffee is among them. Steeped tea has no row that is held out:
// its second untouched set, of which 8 of 14 held, served to revise the step, and no
// third was found (testdata/brew/README.md).
func TestCaffeineOfPublishedRecipes(t *testing.T) {
	const (
		widest = 0.40
		aim    = 0.80
	)
	lib := assaytest.Core(t)
	held, inside, all := make(map[string]int), make(map[string]int), make(map[string]int)
	table := fmt.Sprintf("%-26s %-50s %9s %18s %5s %s\n", "set", "printed", "published", "interval, mg", "±, %", "holds")
	for _, r := range recipes(t) {
		if r.use == "void" {
			continue
		}
		f := brewed(t, lib, r)
		half := (f.High - f.Low) / 2 / f.Mean
		lies := f.Low <= r.caffeine && r.caffeine <= f.High
		holds, set := lies && half <= widest, r.set()
		table += fmt.Sprintf("%-26s %-50s %9.1f %8.1f to %6.1f %5.0f %v\n", set, r.name, r.caffeine, f.Low, f.High, 100*half, holds)
		all[set]++
		if lies {
			inside[set]++
		}
		if holds {
			held[set]++
		}
	}
	for _, set := range slices.Sorted(maps.Keys(all)) {
		table += fmt.Sprintf("%-26s %d of %d hold, %d lie in the interval\n", set, held[set], all[set], inside[set])
	}
	t.Log("\n" + table)
	assert.Equal(t, 4, all["held out, brew"])
	assert.GreaterOrEqual(t, float64(held["held out, brew"]), aim*float64(all["held out, brew"]))
}

// From the least time and temperature on, the interval of a tea is no wider than
// the note of Steep promises; short of them it is.
func TestTeaInRangeIsKnownToFortyPercent(t *testing.T) {
	// The note speaks in whole per cent. Black tea has 39.9 at 20,000 draws, and from 38 to
	// 41 at 1,000, by the seed.
	const forty = 0.405
	lib := assaytest.Core(t)
	width := func(leaf string, minutes, celsius float64) float64 {
		f := brewed(t, lib, printed{food: leaf, dose: 2, water: 100, out: 100, celsius: celsius, minutes: minutes})
		return (f.High - f.Low) / 2 / f.Mean
	}
	for leaf, minutes := range leastMinutes {
		assert.LessOrEqual(t, width(leaf, minutes, leastCelsius), forty, leaf)
		assert.LessOrEqual(t, width(leaf, 2*minutes, 100), forty, leaf)
		assert.Greater(t, width(leaf, minutes/2, 80), forty, leaf)
	}
}

// STFCJ 2020, 16035: 3.2 g of caffeine in 100 g of matcha, which is drunk whole.
func TestPowderGivesAllItsCaffeineAtOnce(t *testing.T) {
	matcha := brewed(t, assaytest.Core(t), printed{food: "matcha", dose: 2, water: 100, out: 100, celsius: 80, minutes: 0.5})
	assert.InEpsilon(t, 64, matcha.Mean, 0.02)
}

// Schmieder et al. 2023: 129.0, 183.8 and 207.1 mg are in shots of one, two and
// three times the same dose; what the bean holds cancels.
func TestWashoutIsFittedOnTheRowsMarkedFit(t *testing.T) {
	const washout, immersion = 0.856, 0.21 // data/brewing.csv
	var content []float64
	for _, r := range recipes(t) {
		if r.use == "fit" && r.food == "coffee-roasted-arabica" {
			content = append(content, r.caffeine/prep.WashedShare(r.out/r.dose, r.yield, washout, immersion))
		}
	}
	require.Len(t, content, 3)
	for _, mg := range content {
		assert.InEpsilon(t, content[0], mg, 0.01)
	}
}

// The mean share of caffeine of the black teas marked fit is that of their yields.
func TestExponentIsFittedOnTheRowsMarkedFit(t *testing.T) {
	const soluble, exponent = 0.38, 1.78 // data/brewing.csv
	lib := assaytest.Core(t)
	var published, modelled, n float64
	for _, r := range recipes(t) {
		if r.use != "fit" || r.food != "tea-leaf-black" {
			continue
		}
		leaf, ok := lib[food.ID{Table: "core", Code: r.food}].Value("CAFFN")
		require.True(t, ok, r.food)
		published += r.caffeine / (r.dose * leaf.Amount / 100)
		modelled += prep.SoluteShare(r.yield, soluble, exponent)
		n++
	}
	require.Equal(t, 7.0, n)
	assert.InDelta(t, published/n, modelled/n, 0.005)
}
