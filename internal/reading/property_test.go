package reading_test

import (
	"fmt"
	"math"
	"math/rand"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/reading"
)

// jar is a pot, all invented, and what a bar reads of it.
type jar struct{ name, ingredients, steps, kinds string }

var jars = []jar{
	{"simple syrup", "200 g core:water-brew, 200 g core:sugar-white", "", "brix density mass"},
	{"lemon syrup", "200 g core:lemon-juice, 180 g core:sugar-white", "", "brix tds density mass ph ta"},
	{"boiled syrup", "200 g ± 6 g core:orange-juice, 120 g ± 4 g core:sugar-white", "reduce: {by: 15 % ± 5 %}", "brix density mass ph ta"},
	{"weak brew", "20 g core:coffee-roasted-arabica, 320 g core:water-brew", "brew: {out: 280 g, strength: 1.35 %}", "brix tds density mass ph"},
	{"free brew", "20 g ± 1 g core:coffee-roasted-arabica, 320 g core:water-brew", "brew: {out: 280 g ± 6 g, yield: 19 % ± 4 %}", "brix tds mass ph"},
	{"whey", "500 g core:milk-whole, 40 g core:lemon-juice", "curdle: {collect: 430 g, by: acid}", "brix density mass ph ta"},
	{"cordial", "300 g core:raspberry, 150 g core:sugar-white, 4 g core:citric-acid", "strain: {collect: 340 g, through: cloth}", "brix density mass ph ta"},
	{"punch", "100 g core:rum-40, 60 g core:lime-juice, 50 g core:sugar-white, 120 g core:water-brew", "", "abv density mass ph ta"},
}

// text writes a jar with readings, one step each, so that their order is that of the
// file.
func (j jar) text(readings ...string) string {
	text := "drink: \"Bench\"\nserves: 1\nbuild: [" + j.ingredients + "]\n"
	if j.steps != "" || len(readings) > 0 {
		text += "finish:\n"
	}
	if j.steps != "" {
		text += "  - " + j.steps + "\n"
	}
	for _, r := range readings {
		text += "  - measured: {" + r + "}\n"
	}
	return text
}

// read runs a jar with readings as far as these go.
func (j jar) read(t *testing.T, lib assaytest.Library, draws int, readings ...string) *assay.Assay {
	t.Helper()
	return read(t, lib, j.text(readings...), draws)
}

// written writes a reading of a kind as the drink file wants it.
func written(kind string, x float64) string {
	unit := map[string]string{"mass": " g ± 1 g", "tds": " %", "density": " g/ml", "abv": " %", "ta": " g/100 g ± 0.02 g/100 g", "brix": " ± 0.2"}[kind]
	return fmt.Sprintf("%s: %.6f%s", kind, x, unit)
}

func readingOf(t *testing.T, a *assay.Assay, kind string) reading.Reading {
	t.Helper()
	i := slices.IndexFunc(a.Readings, func(r reading.Reading) bool { return r.Kind == kind })
	require.GreaterOrEqual(t, i, 0, kind)
	return a.Readings[i]
}

// expectations gives what the recipe of a jar expects of each kind of reading, whatever
// else is read.
func (j jar) expectations(t *testing.T, lib assaytest.Library) map[string]float64 {
	t.Helper()
	any := map[string]float64{"mass": 300, "brix": 20, "tds": 5, "density": 1.05, "abv": 10, "ph": 4, "ta": 1}
	var all []string
	for kind := range strings.FieldsSeq(j.kinds) {
		all = append(all, written(kind, any[kind]))
	}
	found := map[string]float64{}
	for _, r := range j.read(t, lib, 60, all...).Readings {
		found[r.Kind] = r.Expected
	}
	require.Len(t, found, len(all))
	return found
}

// A higher reading never gives less of what it reads, and nothing of what is dissolved
// leaves the pot as it rises.
func TestHigherReadingNeverGivesLess(t *testing.T) {
	lib := assaytest.Core(t)
	for _, j := range jars {
		for kind, expected := range j.expectations(t, lib) {
			if math.IsNaN(expected) {
				expected = 5 // a pH that the recipe does not tell
			}
			last := math.Inf(-1)
			for i := range 11 {
				z := expected * (0.75 + 0.05*float64(i))
				switch kind {
				case "density":
					z = 1 + (expected-1)*(0.4+0.1*float64(i))
				case "ph":
					z = min(max(expected+0.3*float64(i-6), 1), 11) // what a pH reading can be
				}
				r := readingOf(t, j.read(t, lib, 100, written(kind, z)), kind)
				// Beyond what the recipe can be nothing moves any more, and the update's steps end
				// within some millionths of one place: a hundredth of what a density meter tells.
				assert.GreaterOrEqual(t, r.Used, last-1e-5*math.Abs(last), "%s, %s %.4f of %.4f", j.name, kind, z, expected)
				between := min(z, expected) - 1e-3*expected
				assert.True(t, math.IsNaN(r.Expected) || r.Used >= between && r.Used <= max(z, expected)+1e-3*expected,
					"%s: %s read %.4f, expected %.4f, used %.4f", j.name, kind, z, r.Expected, r.Used)
				last = r.Used
			}
		}
	}
}

// wildly draws readings that have nothing to do with a pot.
func wildly(random *rand.Rand, expected map[string]float64, kinds []string) []string {
	var list []string
	for _, kind := range kinds {
		if random.Intn(3) == 0 {
			continue
		}
		z := max(expected[kind], 0.1) * math.Exp(0.6*random.NormFloat64())
		switch kind {
		case "density":
			z = 1 + 0.3*random.Float64()
		case "ph":
			z = 2 + 6*random.Float64()
		case "brix", "tds":
			z = min(z, 80)
		}
		list = append(list, written(kind, z))
	}
	return list
}

// However absurd the readings, and in whatever order, nothing dissolved leaves the 99 %
// range of its own draws: grams in the pot. Where a mass was read, a share of all may be
// lost, the same of everything.
func TestContradictingReadingsKeepWithinTheRange(t *testing.T) {
	lib, random := assaytest.Core(t), rand.New(rand.NewSource(9))
	const draws, tries = 300, 6
	for _, j := range jars {
		expected, bare := j.expectations(t, lib), j.read(t, lib, draws).Serving
		for range tries {
			list := wildly(random, expected, strings.Fields(j.kinds))
			now := j.read(t, lib, draws, list...).Serving
			slices.Reverse(list)
			turned := j.read(t, lib, draws, list...).Serving
			least, most, tightest := 0.0, math.Inf(1), [2]constituent.ID{}
			for _, c := range constituent.All() {
				if c.Kind == constituent.Figure || c.ID == constituent.Water || c.ID == constituent.Mass {
					continue
				}
				x, low, high := now.Central(c.ID), 0.0, 0.0
				assert.InEpsilon(t, 1+x, 1+turned.Central(c.ID), 1e-9, "the order says nothing: %s of %s: %s", c.ID, j.name, list)
				if low, high = rangeOfDraws(bare.Total(c.ID)); high > 0 {
					if x/high > least {
						least, tightest[0] = x/high, c.ID
					}
					if low > 0 && x/low < most {
						most, tightest[1] = x/low, c.ID
					}
				}
			}
			if !strings.Contains(strings.Join(list, " "), "mass") {
				assert.LessOrEqual(t, least, 1+1e-6, "%s of %s: %s", tightest[0], j.name, list)
				assert.GreaterOrEqual(t, most, 1-1e-6, "%s of %s: %s", tightest[1], j.name, list)
			}
			assert.LessOrEqual(t, least, most+1e-6, "%s, %s of %s: %s", tightest[0], tightest[1], j.name, list)
			assert.LessOrEqual(t, least, 1+1e-6, "%s of %s: %s", tightest[0], j.name, list)
		}
	}
}

// rangeOfDraws gives the range of a column without half a hundredth of its draws on
// either side, its central value within.
func rangeOfDraws(column []float64) (low, high float64) {
	draws := slices.Clone(column[1:])
	slices.Sort(draws)
	const beyond = 0.005
	return min(stat.Quantile(beyond, stat.Empirical, draws, nil), column[0]), max(stat.Quantile(1-beyond, stat.Empirical, draws, nil), column[0])
}
