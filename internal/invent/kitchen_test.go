package invent

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/caution"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
)

const drawn = 200

// kitchenOf makes the kitchen of a drink of core foods, in which nothing hurts.
func kitchenOf(t testing.TB, core assaytest.Library, text string) Kitchen {
	t.Helper()
	bench := func(r *recipe.Recipe) fit.Bench {
		return fit.Bench{
			Central: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 1}), Drawn: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: drawn + 1}),
			Drink: r.Drink, Declared: func(string) (bool, error) { return false, nil },
		}
	}
	r := assaytest.Found(t, core, text)
	faults := &fail.List{}
	aims := fit.Read(r.Drink, faults)
	require.NoError(t, faults.Err(fail.Wrong))
	return Kitchen{
		Bench: bench(r), Recipe: r, Text: []byte(text), Aims: aims, Foods: core, Seed: 1,
		Read: func(ctx context.Context, text []byte) (fit.Bench, error) {
			d, faults := drink.Parse("test", text, nil)
			found, err := recipe.Find(ctx, d, faults, core)
			if err != nil {
				return fit.Bench{}, err
			}
			return bench(found), nil
		},
		Hurts: func(context.Context, *assay.Assay) ([]caution.Caution, error) { return nil, nil },
	}
}

// all gives the foods of a library in one order.
func all(core assaytest.Library) []*food.Food {
	var list []*food.Food
	for _, f := range core {
		list = append(list, f)
	}
	slices.SortFunc(list, func(a, b *food.Food) int { return strings.Compare(a.ID.String(), b.ID.String()) })
	return list
}

// measuredSearch is a search as far as its arithmetic goes.
func measuredSearch(t testing.TB, k Kitchen, foods []*food.Food) *search {
	t.Helper()
	s := &search{Kitchen: k, pantry: newPantry(foods), res: &Result{Whole: true, Enough: enough()}, hurts: map[string]bool{}}
	f := Filter{}
	s.read(&f)
	s.liquids, s.res.Passed = candidates(foods, f)
	require.NoError(t, s.shelve(context.Background()))
	require.NoError(t, s.measure(context.Background()))
	return s
}

const orchard = `
drink: orchard
serves: 2
scale: 0.1 g
build: [72 g core:espresso, 20 g core:water-tap]
targets:
  - serving(MALAC) >= 150 mg
  - per100ml(SUGAR) <= 7 g
  - ratio(MALAC, CITAC) >= 2
  - share(K, "coffee") >= 40 %
  - per100g(FRUS) >= 0.1 g
  - volume() <= 90 ml
`

// What is found by adding up is what the drink gives: the sums of a condition are those of the drink with
// what is put in, in every draw, for random sets of foods and amounts. The scale's spread of the new lines
// is not in the sums.
func TestWhatIsPouredAddsUp(t *testing.T) {
	core := assaytest.Core(t)
	k := kitchenOf(t, core, orchard)
	s := measuredSearch(t, k, all(core))
	r := rand.New(rand.NewPCG(16, 2))
	for range 12 {
		a := answer{of: []int{r.IntN(len(s.liquids)), r.IntN(len(s.liquids))}}
		if a.of[0] == a.of[1] {
			continue
		}
		for _, i := range a.of {
			a.grams = append(a.grams, s.pool.list[i].grams[r.IntN(len(s.pool.list[i].grams))])
		}
		text, _, err := file{k.Bench.Drink, k.Text}.with(s.parts(a))
		require.NoError(t, err)
		d, faults := drink.Parse("test", text, nil)
		require.NoError(t, faults.Err(fail.Wrong), string(text))
		for i := range d.Build {
			if l := &d.Build[i]; i < len(a.of) {
				l.Amount.Exact = true
			}
		}
		found, err := recipe.Find(context.Background(), d, faults, core)
		require.NoError(t, err)
		as, err := assay.Prepare(found, s.ensemble()).Run(context.Background(), nil, s.want)
		require.NoError(t, err)
		whole := newAddends(as, s.ensemble().N).columns(s.conditions, nil, 1)
		for c, cond := range s.conditions {
			for _, d := range []int{0, 1, 50, 100} {
				sum, size := s.base.hurt[c][d], 1e-6
				for n, i := range a.of {
					col, err := s.pool.list[i].drawn()
					require.NoError(t, err)
					sum += a.grams[n] * col.hurt[c][d]
					size += math.Abs(a.grams[n] * col.hurt[c][d])
				}
				if math.IsInf(sum, 0) {
					continue
				}
				assert.InDelta(t, whole.hurt[c][d]+cond.Const, sum, 0.02*size, "%s, draw %d, %s", s.textOf(cond), d, text)
			}
		}
	}
}

// A condition is the sum that stands for it: of drinks at random both say the same.
func TestASumSaysWhatItsConditionSays(t *testing.T) {
	core := assaytest.Core(t)
	r := rand.New(rand.NewPCG(16, 3))
	texts := []string{
		"serving(MALAC) >= 200 mg", "per100g(SUGAR) < 8 g", "per100ml(CITAC) >= 0.2 g", "ratio(MALAC, CITAC) >= 1.5", `share(CITAC, "fruit juice") <= 55 %`,
		"mass() <= 90 g", "volume() > 80 ml", "ta() >= 5 g/l", "ph() <= 3.5", "ph() > 3.6", "sweetness() >= 6 %", "brix() < 10",
		"serving(GLUS) + serving(FRUS) >= 4 g", "2 * serving(GLUS) <= serving(SUGAR)", "serving(MALAC) / mass() >= 0.3 %", "component(\"fruit juice\", SUGAR) >= 3 g",
		"3.4 >= ph()", "serving(ALC) <= 1 g", "alcohol_abv() <= 1 %",
	}
	yes := map[string]int{}
	for range 25 {
		text := "drink: x\nserves: 1\nbuild: [" + []string{"30 g core:apple-juice", "40 g core:sour-cherry-juice", "25 g core:pineapple-juice", "30 g core:espresso"}[r.IntN(4)] + ", " +
			[]string{"10 g core:lemon-juice", "20 g core:orange-juice", "30 g core:grape-juice", "20 g core:wine-white"}[r.IntN(4)] + ", " + []string{"20", "40"}[r.IntN(2)] + " g core:water-tap]\n"
		a := assaytest.Asked(t, core, text, assaytest.Options{Draws: 20, Want: assay.Want{Draws: true, Chemistry: true}})
		g := claims.NewGlass(a, nil)
		x := newAddends(a, 21)
		for _, text := range texts {
			c, err := claim.Parse(text, fail.Place{})
			require.NoError(t, err)
			form, ok := c.Form()
			require.True(t, ok, text)
			o, err := c.Evaluate(g, nil)
			if err != nil || math.IsNaN(o.Margin[0]) {
				continue
			}
			col := x.columns([]condition{{Form: form}}, nil, 1)
			p := pool{strict: []bool{form.Strict}}
			is := p.reaches(0, col.hurt[0][0]+form.Const, math.Abs(form.Const))
			assert.Equal(t, o.Central(), is, "%s of %s", text, a.Drink.Build)
			if is {
				yes[text]++
			}
		}
	}
	t.Log(yes)
}

// What is no sum says so.
func TestWhatIsNoSum(t *testing.T) {
	for _, text := range []string{`contains("milk")`, "ph() < 3 or ph() > 5", "serving(MALAC) * serving(CITAC) >= 0", "brix_acid() >= 20", "ph() < 2 * ph()", "not serving(SUGAR) > 3 g"} {
		c, err := claim.Parse(text, fail.Place{})
		if err != nil {
			continue
		}
		_, ok := c.Form()
		assert.False(t, ok, text)
	}
	c, err := claim.Parse(`not contains("milk")`, fail.Place{})
	require.NoError(t, err)
	word, ok := c.Forbids()
	assert.True(t, ok)
	assert.Equal(t, "milk", word)
}
