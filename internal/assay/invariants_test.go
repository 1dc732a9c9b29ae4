package assay_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
)

// exact is the difference that rounding of floating point numbers may make.
const exact = 1e-9

// wholeDrink uses nested components, steps, an own food, volumes, a share and
// an eaten garnish.
const wholeDrink = `
drink: "Slow Ferry"
serves: %d
foods:
  house:
    name: "House oat"
    group: plant drink
    per: 100 ml
    density: 1.03 g/ml
    values: {FAT: 1.5 g, CHOAVL: 5.6 g, SUGAR: 3.1 g, PROCNT: 0.8 g, NA: 40 mg}
    source: "invented"
components:
  syrup:
    ingredients: [200 g core:orange-juice, 120 g core:sugar-white, 2.0 g ± 0.1 g core:citric-acid]
    steps:
      - reduce: {by: 12 %%}
      - strain: {collect: 240 g, through: cloth}
  base:
    ingredients: [150 g core:milk-whole, 60 g ± 3 g syrup, 5 %% core:honey]
    steps:
      - heat: {code: 2151}
      - split: {keep: {FAT: 20 %% ± 5 %%}, because: "invented"}
build: [36 g ± 2 g core:espresso, 90 g base, 25 g syrup, 60 ml own:house]
finish:
  - chill: {melt: 20 g ± 5 g}
garnish:
  - {food: "core:honey", amount: 3 g}
`

func TestContributionsSumToTotals(t *testing.T) {
	a := run(t, coreLibrary(t), fmt.Sprintf(wholeDrink, 2), 200)
	for _, f := range a.PerServing {
		sum, shares := 0.0, 0.0
		for _, c := range f.Contributions {
			sum += c.Mean
			shares += c.Share.Mean
		}
		assert.InDelta(t, f.Mean, sum, exact*max(1, f.Mean), "%s", f.Constituent.ID)
		if f.Mean > 0 {
			assert.InDelta(t, 1, shares, exact, "%s", f.Constituent.ID)
		}
	}
	for _, c := range constituent.All() {
		if c.Kind != constituent.Figure {
			rowsSumTo(t, a.Serving, c)
		}
	}
}

func TestComponentsSumToTheServing(t *testing.T) {
	a := run(t, coreLibrary(t), fmt.Sprintf(wholeDrink, 2), 50)
	mass := 0.0
	for _, c := range a.Components {
		mass += c.Mass.Mean
	}
	assert.InDelta(t, a.Mass.Mean, mass, exact*a.Mass.Mean)
	for _, f := range a.PerServing {
		sum := 0.0
		for _, c := range a.Components {
			sum += figure(t, c.Constituents, f.Constituent.ID).Mean
		}
		assert.InDelta(t, f.Mean, sum, exact*max(1, f.Mean), "%s", f.Constituent.ID)
	}
}

// rowsSumTo checks, in each draw, that the rows of a pot are its total and that
// a parent is the sum of its children.
func rowsSumTo(t *testing.T, pot *ledger.Pot, c *constituent.Constituent) {
	t.Helper()
	total := pot.Total(c.ID)
	rows, children := make([]float64, pot.N), make([]float64, pot.N)
	for row := range pot.Rows {
		for d, x := range pot.Of(row, c.ID) {
			rows[d] += x
		}
	}
	for _, child := range constituent.Sums().Children(c.ID) {
		for d, x := range pot.Total(child.ID) {
			children[d] += x
		}
	}
	for d := range total {
		slack := exact * max(1, total[d])
		require.InDelta(t, total[d], rows[d], slack, "rows of %s, draw %d", c.ID, d)
		if c.Kind == constituent.Parent {
			require.InDelta(t, total[d], children[d], slack, "parts of %s, draw %d", c.ID, d)
		}
	}
}

func TestServingTimesServesIsTheBuild(t *testing.T) {
	lib := coreLibrary(t)
	build, each := run(t, lib, fmt.Sprintf(wholeDrink, 1), 100), run(t, lib, fmt.Sprintf(wholeDrink, 4), 100)
	const serves = 4
	// 36 + 90 + 25 g, 60 ml of 1.03 g/ml, 20 g of ice, 3 g of honey.
	assert.InDelta(t, 36+90+25+60*1.03+20+3, build.Mass.Mean, 1e-6)
	assert.InDelta(t, build.Mass.Mean, serves*each.Mass.Mean, exact*build.Mass.Mean)
	assert.InDelta(t, build.Volume.Mean, serves*each.Volume.Mean, exact*build.Volume.Mean)
	for _, f := range build.PerServing {
		one := figure(t, each.PerServing, f.Constituent.ID)
		assert.InDelta(t, f.Mean, serves*one.Mean, exact*max(1, f.Mean), "%s", f.Constituent.ID)
		assert.InDelta(t, f.High, serves*one.High, exact*max(1, f.High), "%s", f.Constituent.ID)
		per := figure(t, each.Per100g, f.Constituent.ID)
		assert.InDelta(t, one.Mean, per.Mean*each.Mass.Mean/100, exact*max(1, one.Mean), "%s per 100 g", f.Constituent.ID)
		per = figure(t, each.Per100ml, f.Constituent.ID)
		assert.InDelta(t, one.Mean, per.Mean*each.Volume.Mean/100, exact*max(1, one.Mean), "%s per 100 ml", f.Constituent.ID)
	}
}

// cells gives every column of a serving by its line and constituent.
func cells(a *assay.Assay) map[string][]float64 {
	all := map[string][]float64{}
	for row, r := range a.Serving.Rows {
		for col, c := range a.Serving.Columns.List {
			all[fmt.Sprint(r.Path, r.Line, c.ID)] = a.Serving.Cell(row, col)
		}
	}
	return all
}

func TestAddedLineChangesNoDrawOfTheOthers(t *testing.T) {
	lib := coreLibrary(t)
	const before = "drink: \"Two\"\nserves: 1\nbuild: [%s 40 g ± 2 g core:orange-juice, 30 g core:milk-whole %s]\n"
	alone := cells(run(t, lib, fmt.Sprintf(before, "", ""), 300))
	for _, more := range [][2]string{{"5 g core:lemon-juice,", ""}, {"", ", 36 g core:espresso"}, {"10 g core:vodka-40,", ", 20 g core:honey, 9 g core:cream-heavy"}} {
		with := cells(run(t, lib, fmt.Sprintf(before, more[0], more[1]), 300))
		require.Greater(t, len(with), len(alone))
		for key, column := range alone {
			require.Equal(t, column, with[key], key)
		}
	}
}

func TestFewerDrawsAreTheFirstOfMore(t *testing.T) {
	lib := coreLibrary(t)
	few, many := cells(run(t, lib, fmt.Sprintf(wholeDrink, 2), 200)), cells(run(t, lib, fmt.Sprintf(wholeDrink, 2), 1000))
	require.Len(t, many, len(few))
	for key, column := range few {
		require.Equal(t, column, many[key][:201], key)
	}
}

func TestOneSeedGivesOneResult(t *testing.T) {
	lib := coreLibrary(t)
	text := fmt.Sprintf(wholeDrink, 2)
	a, again := run(t, lib, text, 10), run(t, lib, text, 10)
	assert.Equal(t, cells(a), cells(again))
	d, faults := drink.Parse("test", []byte(text), nil)
	other, err := assay.Run(context.Background(), d, faults, lib, assay.Options{Draws: 10, Seed: 2})
	require.NoError(t, err)
	sugar, otherSugar := a.Serving.Total("SUGAR"), other.Serving.Total("SUGAR")
	assert.Equal(t, sugar[0], otherSugar[0], "central values do not hang on the seed")
	assert.NotEqual(t, sugar[1:], otherSugar[1:])
}

// Half of a component's volume is half of its mass.
func TestVolumeOfAComponentIsItsMassOverItsDensity(t *testing.T) {
	lib := coreLibrary(t)
	const text = "drink: \"Poured\"\nserves: 1\ncomponents:\n  syrup:\n    ingredients: [100 g core:orange-juice, 100 g core:sugar-white]\nbuild: [%s syrup]\n"
	whole := run(t, lib, fmt.Sprintf(text, "200 g"), 50)
	assert.InDelta(t, whole.Mass.Mean, whole.Volume.Mean*whole.Density.Mean, exact*whole.Mass.Mean)
	half := run(t, lib, fmt.Sprintf(text, fmt.Sprintf("%.9f ml", whole.Volume.Mean/2)), 50)
	assert.InDelta(t, 100, half.Mass.Mean, 1e-6)
}

// kitchen applies random steps to a pot.
type kitchen struct {
	*rand.Rand
	t        *testing.T
	pot      *ledger.Pot
	drawer   *ledger.Drawer
	profiles []*food.Profile
	water    *food.Profile
	steps    map[string]int // applied, by kind
}

// between is a column that is uniform around a random share of x.
func (k *kitchen) between(x, low, high float64) []float64 {
	middle := x * (low + (high-low)*k.Float64())
	col := make([]float64, k.pot.N)
	estimate.Input{Central: middle, Shape: estimate.Uniform, Low: middle * 0.97, High: middle * 1.03, Stream: estimate.Key(k.Uint64())}.Fill(col)
	return col
}

func (k *kitchen) pour(p *food.Profile, grams []float64) float64 {
	k.pot.Pour(p, k.drawer.PerGram(p), grams, p.Food.ID.String())
	return grams[0]
}

// step applies one random step and gives the mass that it brought.
func (k *kitchen) step() (kind string, out prep.Outcome, err error) {
	f := prep.Factors{Seed: k.Uint64(), N: k.pot.N, Path: "random"}
	mass := k.pot.Mass()[0]
	switch kind = []string{"reduce", "strain", "split", "heat", "dilute", "chill", "add"}[k.IntN(7)]; kind {
	case "reduce":
		out, err = prep.Reduce(k.pot, k.between(mass, 0.3, 1.1), f)
	case "strain":
		out, err = prep.Strain(k.pot, k.between(mass, 0.3, 1.1), prep.Media[k.IntN(len(prep.Media))], f)
	case "split":
		ids := []constituent.ID{"FAT", "PROCNT", "SUGAR", "CHOCDF", "OA", "NA", "CAFFN", "MASS-other"}
		var keep []prep.Kept
		for range k.IntN(4) {
			keep = append(keep, prep.Kept{ID: ids[k.IntN(len(ids))], Share: k.between(1, 0, 0.9)})
		}
		var collect []float64
		if k.IntN(2) == 0 {
			collect = k.between(mass, 0.3, 1)
		}
		out, err = prep.Split(k.pot, keep, collect)
	case "heat":
		codes := []string{"2151", "5002", "5009", "1", "0801"}
		retention, ok := prep.FindRetention(codes[k.IntN(len(codes))])
		require.True(k.t, ok)
		out = prep.Heat(k.pot, retention, f)
	case "dilute":
		var grams []float64
		if grams, err = prep.UpTo(k.pot, k.between(mass, 0.8, 1.5)); err == nil {
			out = prep.Water(k.pot, k.water, k.drawer.PerGram(k.water), grams, "dilute")
		}
	case "chill":
		out = prep.Water(k.pot, k.water, k.drawer.PerGram(k.water), k.between(50, 0, 1), "chill")
	case "add":
		out.Added = k.pour(k.profiles[k.IntN(len(k.profiles))], k.between(80, 0, 1))
	}
	return kind, out, err
}

// Whatever is done to a pot, mass closes, nothing is below zero, rows add up to
// totals and children to parents.
func TestMassClosesAfterAnySequenceOfSteps(t *testing.T) {
	lib := coreLibrary(t)
	profiles := []*food.Profile{food.Enter(prep.PureWater(), nil)}
	for _, code := range []string{"orange-juice", "milk-whole", "sugar-white", "citric-acid", "espresso", "honey", "cream-heavy", "lemon-juice", "rum-40", "strawberry", "oat-drink"} {
		f, ok := lib[food.ID{Table: "core", Code: code}]
		require.True(t, ok, code)
		profiles = append(profiles, food.Enter(f, nil))
	}
	const sequences, steps, n = 500, 8, 4
	columns := ledger.NewColumns(profiles)
	k := &kitchen{
		Rand: rand.New(rand.NewPCG(3, 4)), t: t, profiles: profiles[1:], water: profiles[0],
		drawer: ledger.NewDrawer(1, n, columns), steps: map[string]int{},
	}
	refused := 0
	for range sequences {
		k.pot = ledger.New(columns, n)
		for range 1 + k.IntN(3) {
			k.pour(k.profiles[k.IntN(len(k.profiles))], k.between(300, 0.1, 1))
		}
		for range steps {
			before := k.pot.Mass()
			kind, out, err := k.step()
			after := k.pot.Mass()
			if err != nil {
				refused++
				require.Equal(t, before, after, "a refused %s changes nothing", kind)
				continue
			}
			k.steps[kind]++
			lost := 0.0
			if out.Lost.Grams != nil {
				lost = out.Lost.Mass()
			}
			require.InDelta(t, before[0]+out.Added, after[0]+lost, exact*max(1, before[0]), "%s", kind)
			for row := range k.pot.Rows {
				for col, c := range columns.List {
					for _, x := range k.pot.Cell(row, col) {
						require.False(t, x < 0 || math.IsNaN(x), "%s leaves %g g of %s", kind, x, c.ID)
					}
				}
			}
		}
		require.Less(t, k.pot.Closed(), exact)
		for _, c := range constituent.All() {
			if c.Kind != constituent.Figure && len(columns.Below(c.ID)) > 0 {
				rowsSumTo(t, k.pot, c)
			}
		}
	}
	t.Logf("%d sequences of %d steps: applied %v, refused %d", sequences, steps, k.steps, refused)
	for _, kind := range []string{"reduce", "strain", "split", "heat", "dilute", "chill", "add"} {
		assert.Greater(t, k.steps[kind], sequences/10, kind)
	}
}
