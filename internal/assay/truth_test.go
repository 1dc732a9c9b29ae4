package assay_test

import (
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
)

// The foods and the drink are invented; every figure is only an input.
const uncertainDrink = `
drink: "Fog Bank"
serves: 3
foods:
  fruit:
    name: "Fruit of the test"
    declared: anz # whose rules have no tolerance: what is stated without ± has the spread of its class
    per: 100 g
    values: {WATER: 86 g ± 1 g sd, SUCS: 6 g ± 0.5 g sd, FRUS: 4 g, CITAC: 1200 mg ± 200 mg sd, FIBTG: 2 g ± 0.4 g sd, PROCNT: 0.5 g, ASH: 0.3 g ± 0.05 g sd, K: 180 mg, VITC: 40 mg ± 10 mg sd}
    source: "invented"
  sharp:
    name: "Sharp juice of the test"
    per: 100 g
    values: {WATER: 90 g ± 0.8 g sd, CITAC: 5000 mg, MALAC: 300 mg ± 90 mg sd, SUCS: 2 g, GLUS: 1.4 g, FRUS: 1.3 g, K: 120 mg, VITC: 30 mg}
    source: "invented"
  sweet:
    name: "Sugar of the test"
    per: 100 g
    values: {WATER: 0.1 g, SUCS: 99.9 g ± 0.2 g sd}
    source: "invented"
  rich:
    name: "Cream of the test"
    per: 100 g
    values: {WATER: 70 g ± 2 g sd, FAT: 22 g ± 1 g sd, LACS: 5 g, PROCNT: 3 g ± 0.2 g sd, NA: 45 mg ± 5 mg sd, CAFFN: "< 2 mg"}
    source: "invented"
  dark:
    name: "Coffee of the test"
    per: 100 g
    values: {WATER: 98 g ± 0.2 g sd, CAFFN: 60 mg ± 15 mg sd, K: 110 mg ± 12 mg sd}
    source: "invented"
components:
  cordial:
    ingredients: [300 g ± 10 g own:fruit, 120 g own:sharp, 80 g ± 2 g sd own:sweet]
    steps:
      - heat: {code: "2151"}
      - reduce: {to: 330 g ± 10 g, at: 0 °C, for: 1 s} # so that no sucrose splits: the worlds do not either
      - strain: {collect: 250 g ± 5 g, through: cloth}
  washed:
    ingredients: [200 g own:rich, 60 g own:sharp]
    steps:
      - split: {keep: {FAT: 10 % ± 4 %, PROCNT: 50 % ± 10 % sd}, collect: 150 g ± 3 g, because: "invented"}
build: [40 g ± 4 g cordial, 60 g ± 3 g washed, 36 g ± 2 g own:dark, 20 g own:fruit]
finish:
  - chill: {melt: 30 g ± 8 g}
`

// covered is what the coverage is judged on: leaves, parents, riders, mass.
var covered = []constituent.ID{
	"MASS", "WATER", "SUCS", "FRUS", "GLUS", "LACS", "SUGAR", "CITAC", "MALAC", "OA", "CHOCDF", "FIBTG", "PROCNT", "FAT", "ASH", "MASS-other",
	"K", "NA", "VITC", "CAFFN",
}

// question is a figure that the assay prints with an interval: of a serving, or
// of 100 g, where the amounts matter less and the foods more.
type question struct {
	id      constituent.ID
	per100g bool
}

func (q question) String() string {
	if q.per100g {
		return string(q.id) + " in 100 g"
	}
	return string(q.id)
}

func questions() []question {
	var all []question
	for _, id := range covered {
		all = append(all, question{id, false})
		if id != constituent.Mass {
			all = append(all, question{id, true})
		}
	}
	return all
}

func (q question) answer(v vessel) float64 {
	if q.per100g {
		return v.of(q.id) / v.mass() * 100
	}
	return v.of(q.id)
}

// coverage gives the share of worlds whose truth lies in the interval that the
// assay printed once.
func coverage(t *testing.T, draws, worlds int) map[question]float64 {
	t.Helper()
	a := assaytest.Assay(t, assaytest.Library{}, uncertainDrink, draws)
	type interval struct{ low, high float64 }
	intervals := map[question]interval{}
	for _, q := range questions() {
		list := a.PerServing
		if q.per100g {
			list = a.Per100g
		}
		if q.id == constituent.Mass {
			intervals[q] = interval{a.Mass.Low, a.Mass.High}
			continue
		}
		f, perGram := assaytest.Figure(t, list, q.id), constituent.Must(q.id).PerGram
		intervals[q] = interval{f.Low / perGram, f.High / perGram}
	}
	inside := map[question]float64{}
	random := rand.New(rand.NewSource(20260301))
	for range worlds {
		truth := world{random, map[constituent.ID]float64{}}.serving()
		for q, between := range intervals {
			if x := q.answer(truth); between.low <= x && x <= between.high {
				inside[q] += 1 / float64(worlds)
			}
		}
	}
	return inside
}

// An interval is honest if it holds nine of ten truths.
func TestIntervalsCoverSimulatedTruths(t *testing.T) {
	// With 8,000 draws and 8,000 worlds the figure itself wanders by about
	// 0.5 % (both ends of the interval and the count of worlds).
	const draws, worlds = 8000, 8000
	shares := coverage(t, draws, worlds)
	for _, q := range questions() {
		t.Logf("%-20s %.1f %%", q, 100*shares[q])
		assert.InDelta(t, 0.90, shares[q], 0.02, "%s", q)
	}
}

// With the default of 1,000 draws single intervals wander by about 1 %; on
// average they cover what they should.
func TestIntervalsOfTheDefaultDrawsCoverOnAverage(t *testing.T) {
	const draws, worlds = 1000, 2000
	mean, least, most := 0.0, 1.0, 0.0
	for _, share := range coverage(t, draws, worlds) {
		mean += share / float64(len(questions()))
		least, most = min(least, share), max(most, share)
	}
	t.Logf("mean %.1f %%, from %.1f %% to %.1f %%", 100*mean, 100*least, 100*most)
	assert.InDelta(t, 0.90, mean, 0.02)
}
