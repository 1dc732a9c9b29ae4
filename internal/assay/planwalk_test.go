package assay_test

import (
	"context"
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/unit"
)

// walked are drinks that use, all together, every kind of line, step and reading that a plan
// may keep something of. The names with / and ~ are those that a path has to escape.
var walked = map[string]string{
	"brewed and fermented": `
drink: "Slate Pier"
serves: 2
glass: 200 ml
at: 8 °C
scale: 0.1 g
compare-with: coffee
foods:
  oat:
    name: "House oat"
    group: plant drink
    per: 100 ml
    density: 1.03 g/ml ± 0.01 g/ml
    values: {ENERC: 180 kJ, FAT: 1.5 g, CHOAVL: 5.6 g, SUGAR: 3.1 g, PROCNT: 0.8 g, NA: 40 mg}
    source: "invented"
components:
  coffee:
    ingredients: [18 g core:coffee-roasted-arabica, 60 g core:water-brew]
    steps:
      - brew: {out: 38 g, strength: 9.5 %}
  tea:
    ingredients: [200 g core:water-brew]
    steps:
      - steep: {ingredients: [4 g core:tea-leaf-black], at: 95 °C, for: 3 min, collect: 180 g}
      - concentrate: {by: freezing, to: 120 g}
  half/half~:
    ingredients: [60 g tea, 20 g coffee, 4 % core:honey, {food: "core:butter-unsalted", portion: "stick", count: 1/20}]
    keeps: 5 days at 4 °C
  culture:
    ingredients: [200 g core:orange-juice, 15 ml tea]
    steps:
      - ferment: {after: {ALC: 0.4 g, LACAC: 200 mg, ACEAC: < 20 mg}, for: 2 days, because: "invented"}
build: [30 g ± 2 g coffee, 40 g half/half~, 40 g culture, 50 ml own:oat, 2 barspoon core:honey]
finish:
  - carbonate: {bottle: 0.5 l, charge: 8 g, at: 4 °C, left: 2.0 g/l}
  - chill: {melt: 20 g ± 5 g}
garnish:
  - {food: "core:honey", amount: 3 g, eaten: true}
  - 1 g core:spearmint
`,
	"parted milk": `
drink: "Chalk Weir"
serves: 3
at: 6 °C
compare-with: whey
components:
  sour:
    ingredients: [60 g core:lemon-juice, 40 g core:sugar-white]
    measured: {ph: 2.4 ± 0.1}
  whey:
    ingredients: [200 g core:milk-whole, 20 g sour]
    steps:
      - curdle: {collect: 150 g, by: acid, at: 63 °C}
      - hydrolyse: {lactose: 90 %}
    measured: {mass: 150 g ± 2 g}
  washed:
    ingredients: [100 g core:vodka-40]
    steps:
      - wash: {fat: [20 g core:butter-unsalted], collect: 95 g}
  punch:
    ingredients: [100 g whey, 30 g washed, 10 g sour]
    steps: [strain: {collect: 130 g, through: paper}]
build: [90 g punch, 12 g sour, 20 g core:espresso]
finish:
  - dilute: {to: 140 g}
`,
	"read and titrated": `
drink: "Amber Lock"
serves: 1
at: 20 °C
components:
  syrup:
    ingredients: [200 g ± 6 g core:orange-juice, 120 g core:sugar-white, 3 g core:citric-acid]
    steps:
      - reduce: {to: 290 g}
      - measured: {mass: 285 g ± 5 g}
      - add: [10 g core:lemon-juice]
    measured: {brix: 50 ± 1, ph: 2.8 ± 0.1}
  steamed milk:
    ingredients: [140 g core:milk-whole]
    measured:
      titration: [[0 ml, 6.65], [1 ml, 6.20], [2 ml, 5.75], [3 ml, 5.35], [4 ml, 5.00], [5 ml, 4.65], [6 ml, 4.30]]
      acid: 0.1 mol/l
      sample: 10 g
  shrub:
    ingredients: [40 g syrup, 60 g core:water-pure, 3 % core:vinegar-cider]
    steps: [split: {keep: {SUGAR: 90 % ± 2 %}, collect: 95 g, because: "invented"}]
build: [6 g syrup, 20 g shrub, 140 g steamed milk]
`,
}

// wants are what a run may be asked for; what was asked before must not show. Chemistry is
// what costs, so it is asked for now and then.
var wants = []assay.Want{
	{Whole: true, Intervals: true, Chemistry: true, Draws: true},
	{Figures: []constituent.ID{"SUGAR", "CITAC", "CAFFN", "FAT"}, Intervals: true, Chemistry: true, Degassed: true},
	{Figures: []constituent.ID{"SUGAR"}},
	{Whole: true, Intervals: true},
	{Figures: []constituent.ID{"CAFFN", "FAT"}},
}

// A plan that is kept through a walk of changes gives, at every step of it, what a plan
// gives that has never run: bit for bit, and the same fault where the drink cannot be made.
func TestAKeptPlanIsAlwaysAFreshOne(t *testing.T) {
	lib := assaytest.Core(t)
	const draws, changes = 20, 30
	for name, text := range walked {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			found := assaytest.Found(t, lib, text)
			kept, ctx := prepared(found, draws), context.Background()
			_, err := kept.Run(ctx, nil, wants[0])
			require.NoError(t, err)
			written := kept.Written()
			paths := slices.Sorted(maps.Keys(written))
			random := rand.New(rand.NewPCG(7, uint64(len(text))))
			other, changed, faults := amount.Amounts{}, map[string]bool{}, 0
			for change := range changes {
				path := paths[random.IntN(len(paths))]
				switch a := written[path]; random.IntN(8) {
				case 0:
					delete(other, path) // as it is written again
				case 1:
					a.Number *= 1000 // more than there is, in most places
					other[path] = a
				default:
					other[path] = changedBy(random, a)
				}
				changed[path] = true
				want := wants[random.IntN(len(wants))]
				again, err := kept.Run(ctx, other, want)
				fresh, freshErr := prepared(found, draws).Run(ctx, other, want)
				if freshErr != nil {
					require.EqualError(t, err, freshErr.Error())
					faults++
					delete(other, path)
					continue
				}
				require.NoError(t, err)
				same(t, fresh, again, fmt.Sprintf("change %d: %s = %s", change, path, other[path]))
			}
			t.Logf("%d of %d amounts changed, %d runs refused", len(changed), len(paths), faults)
			assert.Positive(t, faults, "some of what was tried cannot be made")
			assert.Equal(t, written, kept.Written(), "what is written stays so")
		})
	}
}

// changedBy gives an amount between a half and one and a half times as much, as sure as it
// was or with a ± of its own.
func changedBy(random *rand.Rand, a unit.Amount) unit.Amount {
	a.Number *= 0.5 + random.Float64()
	switch random.IntN(3) {
	case 0:
		a.Half, a.Sigma = 0, false
	case 1:
		a.Half, a.Sigma = a.Number*0.05, random.IntN(2) == 0
	default:
		a.Half = min(a.Half, a.Number)
	}
	return a
}

// What a plan is asked for wrongly, or cannot make, is said, and the next run is right.
func TestAPlanThatWasAskedWronglyIsStillAPlan(t *testing.T) {
	lib := assaytest.Core(t)
	found := assaytest.Found(t, lib, walked["brewed and fermented"])
	const draws = 20
	ctx, want := context.Background(), wants[0]
	kept := prepared(found, draws)
	right := amount.Amounts{"half~shalf~t/tea": amountOf(t, "50 g")}
	fresh, err := prepared(found, draws).Run(ctx, right, want)
	require.NoError(t, err)
	for _, c := range []struct{ path, amount, says, do string }{
		{"build/rhubarb", "10 g", `the drink has no amount at "build/rhubarb"`, "there are: build/coffee, build/core:honey, "},
		{"coffee/", "10 g", `the drink has no amount at "coffee/"`, "there are: "},
		{"", "10 g", `the drink has no amount at ""`, "there are: "},
		{"build/coffee", "10 ml", `the amount at "build/coffee" is 30 g ± 2 g, which 10 ml cannot replace`, "give it in g"},
		{"build/own:oat", "10 g", `which 10 g cannot replace`, "give it in ml"},
		{"half~shalf~t/core:honey", "4 g", `is 4 %, which 4 g cannot replace`, "give it in %"},
		{"tea/concentrate/to", "500 g", "", ""},
	} {
		_, err := kept.Run(ctx, amount.Amounts{c.path: amountOf(t, c.amount)}, want)
		require.Error(t, err, c.path)
		assert.ErrorContains(t, err, c.says)
		assert.ErrorContains(t, err, c.do)
		again, err := kept.Run(ctx, right, want)
		require.NoError(t, err, c.path)
		same(t, fresh, again, "after "+c.path)
	}
	stopped, stop := context.WithCancel(ctx)
	stop()
	_, err = kept.Run(stopped, nil, want)
	require.ErrorIs(t, err, context.Canceled)
	again, err := kept.Run(ctx, right, want)
	require.NoError(t, err)
	same(t, fresh, again, "after an interruption")
}

// What is asked of a plan is its own: nobody who changes what he was given changes it.
func TestWhatAPlanGivesIsNotThePlan(t *testing.T) {
	kept := planOf(t, assaytest.Core(t), walked["parted milk"], 10)
	assert.Empty(t, kept.Written(), "nothing has been asked for before a run")
	_, err := kept.Run(context.Background(), nil, assay.Want{})
	require.NoError(t, err)
	given := kept.Written()
	for path := range given {
		assert.True(t, strings.Contains(path, "/"), path)
	}
	delete(given, "build/punch")
	assert.Contains(t, kept.Written(), "build/punch")
}
