package invent

import (
	"context"
	"maps"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/caution"
	"sipsum/internal/claims"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
)

const malicLed = `
drink: malic morning
serves: 1
glass: 120 ml
build:
  - 36 g core:espresso # the shot
  - 30 g core:water-tap
targets:
  - serving(MALAC) >= 200 mg
  - ratio(MALAC, CITAC) >= 2
  - serving(QUINAC) >= 10 mg
  - serving(SUGAR) <= 8 g
  - ph() between 3.4 and 4.3
`

// thirty draws a pool of foods that may be poured.
func thirty(core assaytest.Library, r *rand.Rand) []*food.Food {
	var list []*food.Food
	foods := all(core)
	r.Shuffle(len(foods), func(i, j int) { foods[i], foods[j] = foods[j], foods[i] })
	for _, f := range foods {
		if len(pouredOf(f)) > 0 && len(list) < 30 {
			list = append(list, f)
		}
	}
	return list
}

// byPlan calculates the drink that a set makes: whether every target is met at central values, and in what
// share of the draws all are.
func byPlan(t *testing.T, core assaytest.Library, s *search, a answer) (central bool, share float64) {
	t.Helper()
	text, _, err := file{s.Bench.Drink, s.Text}.with(s.parts(a))
	require.NoError(t, err)
	d, faults := drink.Parse("test", text, nil)
	found, err := recipe.Find(context.Background(), d, faults, core)
	require.NoError(t, err)
	as, err := assay.Prepare(found, s.ensemble()).Run(context.Background(), nil, assay.Want{Draws: true, Chemistry: true})
	require.NoError(t, err)
	g := claims.NewGlass(as, nil)
	holds := 0
	n := s.ensemble().N
	central = as.Volume.Mean <= d.Glass.Base()
	all := make([]bool, n)
	for i := range all {
		all[i] = i == 0 || as.Volume.Draws[i-1] <= d.Glass.Base()
	}
	for _, aim := range s.aims {
		o, err := aim.Whole().Evaluate(g, nil)
		require.NoError(t, err)
		central = central && o.Central()
		for i := range all {
			all[i] = all[i] && o.Holds[0][min(i, len(o.Holds[0])-1)]
		}
	}
	for _, is := range all[1:] {
		if is {
			holds++
		}
	}
	return central, float64(holds) / float64(n-1)
}

// The chemistry of a drink is no sum, and its pH is nearly one: of a pool of thirty foods each, poured in
// every amount that is tried, the plan says of the drink what the arithmetic says, but for a few draws.
func TestOneFoodByThePlanAndByTheSums(t *testing.T) {
	core := assaytest.Core(t)
	r := rand.New(rand.NewPCG(16, 4))
	s := measuredSearch(t, kitchenOf(t, core, malicLed), thirty(core, r))
	points, apart, answers := 0, 0, 0
	for i := range s.pool.list {
		for _, x := range s.pool.list[i].grams {
			a := answer{of: []int{i}, grams: []float64{x}}
			one := s.pool
			one.list = append([]candidate(nil), s.pool.list[i])
			one.list[0].grams = []float64{x}
			one.enough = 0.01
			one.prepare()
			said, is, err := one.bestOf([]int{0})
			require.NoError(t, err)
			if !one.could(0) {
				is = false
			}
			central, share := byPlan(t, core, s, a)
			if points++; central != is && math.Abs(share-0.5) > 0.45 {
				t.Logf("%s %g g: by the plan %v %.2f, by the sums %v", s.liquids[i].food.ID, x, central, share, is)
				apart++
			}
			if is && central {
				answers++
				assert.InDelta(t, share, float64(said.holds)/float64(said.draws), 0.12, "%s %g g", s.liquids[i].food.ID, x)
			}
		}
	}
	t.Logf("%d drinks, %d of them met, %d told otherwise", points, answers, apart)
	assert.Positive(t, answers)
	assert.LessOrEqual(t, apart, points/50)
}

// The best of every single food of a pool, by the plan alone, is the first design.
func TestTheFirstDesignIsTheBestByThePlan(t *testing.T) {
	core := assaytest.Core(t)
	r := rand.New(rand.NewPCG(16, 5))
	foods := append(thirty(core, r), core[food.ID{Table: "core", Code: "sour-cherry-juice"}], core[food.ID{Table: "core", Code: "rhubarb-juice"}])
	k := kitchenOf(t, core, malicLed)
	res, err := Find(context.Background(), k, foods, Filter{})
	require.NoError(t, err)
	s := measuredSearch(t, k, foods)
	var best *answer
	for i := range s.pool.list {
		for _, x := range s.pool.list[i].grams {
			a := answer{of: []int{i}, grams: []float64{x}, total: x, draws: 100}
			central, share := byPlan(t, core, s, a)
			if a.holds = int(math.Round(share * 100)); !central || share < s.pool.enough {
				continue
			}
			if a.ranks = min(a.holds, s.pool.firm()); !s.pool.list[i].plain {
				a.other = 1
			}
			if best == nil || a.before(*best) < 0 {
				best = &a
			}
		}
	}
	require.NotNil(t, best)
	require.NotEmpty(t, res.Designs)
	assert.Equal(t, s.liquids[best.of[0]].food.ID, res.Designs[0].Parts[0].Food.ID)
	assert.InEpsilon(t, best.grams[0], res.Designs[0].Parts[0].Pour.Base(), 0.35, "a step of the amounts that are tried")
}

// A design is written where it was calculated: comments and layout stay, and it reads as its figures say.
func TestADesignIsItsText(t *testing.T) {
	core := assaytest.Core(t)
	k := kitchenOf(t, core, malicLed)
	res, err := Find(context.Background(), k, all(core), Filter{})
	require.NoError(t, err)
	require.Len(t, res.Designs, 5)
	seen := map[string]bool{}
	for _, d := range res.Designs {
		assert.Contains(t, string(d.Text), "  - 36 g core:espresso # the shot\n  - 30 g core:water-tap\n  - ")
		assert.GreaterOrEqual(t, d.Sure, res.Enough)
		b, err := k.Read(context.Background(), d.Text)
		require.NoError(t, err, string(d.Text))
		again, err := b.Judge(context.Background(), k.Aims)
		require.NoError(t, err)
		assert.True(t, again.Met)
		assert.InDelta(t, d.Sure, again.Sure, 1e-12)
		require.NotNil(t, d.Weakest)
		for _, p := range d.Parts {
			assert.False(t, seen[p.Food.ID.String()], "no two designs pour the same: %s", p.Food.ID)
			seen[p.Food.ID.String()] = true
			assert.NotContains(t, []string{"lemon", "salt", "vinegar"}, p.Food.Group)
		}
	}
}

// A food of which nobody knows the citric acid is in no design, whatever it might be, and is told apart with
// what to read. 46 g bring 200 mg of malic acid if 100 g hold 435 mg; the ratio of 2 allows half of that.
func TestAFoodOfUnknownFiguresIsToldApart(t *testing.T) {
	core := assaytest.Core(t)
	id := food.ID{Table: "core", Code: "sour-cherry-juice"}
	bare := assaytest.Without(core, id, "CITAC")
	k := kitchenOf(t, bare, malicLed)
	res, err := Find(context.Background(), k, []*food.Food{bare[id]}, Filter{})
	require.NoError(t, err)
	assert.Empty(t, res.Designs)
	require.Len(t, res.Unread, 1)
	u := res.Unread[0]
	assert.Equal(t, id, u.Food.ID)
	assert.Contains(t, u.Gap.What, "citric acid")
	assert.Equal(t, "ratio(MALAC, CITAC) >= 2", u.Target)
	malic, _ := core[id].Value("MALAC")
	base, _ := core[food.ID{Table: "core", Code: "espresso"}].Value("MALAC")
	citric, _ := core[food.ID{Table: "core", Code: "espresso"}].Value("CITAC")
	most := ((base.Amount*0.36+malic.Amount*u.Grams/100)/2 - citric.Amount*0.36) / u.Grams * 100
	assert.InEpsilon(t, most, u.Most, 0.01)
	known, err := Find(context.Background(), kitchenOf(t, core, malicLed), []*food.Food{core[id]}, Filter{})
	require.NoError(t, err)
	assert.Len(t, known.Designs, 1)
	assert.Empty(t, known.Unread)
}

// What no foods bring is told: tartaric acid is in none of three.
func TestWhatNoFoodBringsIsTold(t *testing.T) {
	core := assaytest.Core(t)
	of := func(codes string) []*food.Food {
		var list []*food.Food
		for code := range strings.FieldsSeq(codes) {
			list = append(list, core[food.ID{Table: "core", Code: code}])
		}
		return list
	}
	k := kitchenOf(t, core, "drink: x\nserves: 1\nbuild: [36 g core:espresso]\ntargets: [serving(TARAC) >= 300 mg, serving(SUGAR) >= 2 g]\n")
	res, err := Find(context.Background(), k, of("apple-juice pear-juice sugar-white"), Filter{})
	require.NoError(t, err)
	assert.Empty(t, res.Designs)
	require.Len(t, res.Unmet, 2)
	assert.False(t, res.Unmet[0].Can)
	assert.True(t, res.Unmet[1].Can)
	met, err := Find(context.Background(), kitchenOf(t, core, "drink: x\nserves: 1\nbuild: [36 g core:espresso]\ntargets: [serving(SUGAR) <= 3 g]\n"), of("apple-juice"), Filter{})
	require.NoError(t, err)
	assert.True(t, met.Already)
	assert.Empty(t, met.Designs)
}

// What may kill is proposed to nobody; what else may hurt is told beside it.
func TestWhatMayHurt(t *testing.T) {
	core := assaytest.Core(t)
	k := kitchenOf(t, core, malicLed)
	id := food.ID{Table: "core", Code: "sour-cherry-juice"}
	foods := []*food.Food{core[id], core[food.ID{Table: "core", Code: "rhubarb-juice"}]}
	k.Hurts = func(_ context.Context, a *assay.Assay) ([]caution.Caution, error) {
		list := []caution.Caution{{Code: "always", Rank: 1}}
		for _, it := range a.Items {
			if it.Food.ID == id {
				list = append(list, caution.Caution{Code: "deadly", Rank: 1})
			}
			if it.Food.ID.Code == "rhubarb-juice" {
				list = append(list, caution.Caution{Code: "oxalate", Rank: 3})
			}
		}
		return list, nil
	}
	res, err := Find(context.Background(), k, foods, Filter{})
	require.NoError(t, err)
	require.Len(t, res.Designs, 1)
	assert.Equal(t, "rhubarb-juice", res.Designs[0].Parts[0].Food.ID.Code)
	assert.Equal(t, "oxalate", res.Designs[0].Cautions[0].Code)
	require.Len(t, res.Refused, 1)
	assert.Equal(t, "deadly", res.Refused[0].Why.Code)
}

// What no bar pours is no candidate, by the group, the water and the words of its name; nor is what brings
// alcohol or salt that nobody asked for.
func TestWhatNobodyPours(t *testing.T) {
	made := func(name, group string, water float64, more map[constituent.ID]float64) *food.Food {
		figures := map[constituent.ID]float64{"WATER": water, "ALC": 0, "NA": 2}
		maps.Copy(figures, more)
		f := assaytest.Exact("x", group, figures)
		f.Names = []food.Name{{Language: "en", Text: name}}
		return f
	}
	counted := func(f *food.Food, filter Filter) Passed {
		_, p := candidates([]*food.Food{f}, filter)
		return p
	}
	for _, f := range []*food.Food{
		made("Pokeberry shoots, (poke), raw", "vegetable", 92, nil), made("Apple juice, frozen concentrate, undiluted", "fruit juice", 57, nil),
		made("Milk, human, mature, fluid", "milk", 87, nil), made("Babyfood, juice, apple", "other", 88, nil), made("Orange drink, powder", "soft drink", 1, nil),
		made("Bananas, raw", "fruit", 75, nil), made("Cherries, sour, canned, heavy syrup pack", "fruit", 81, nil), made("Spearmint, dried", "herb", 11, nil),
		made("Juice of nobody knows what", "", 90, nil), made("Fresh cheese, skimmed", "cultured milk", 84, nil),
	} {
		assert.Equal(t, 1, counted(f, Filter{}).Unpoured, f.Name())
	}
	assert.Equal(t, 1, counted(made("Pear juice, pressed", "fruit juice", 86, nil), Filter{}).Tried)
	assert.Equal(t, 1, counted(made("Cherries, sour, red, raw", "fruit", 86, nil), Filter{}).Tried)
	hard := made("Pear juice, fermenting", "fruit juice", 84, map[constituent.ID]float64{"ALC": 3})
	assert.Equal(t, 1, counted(hard, Filter{}).Alcohol)
	assert.Equal(t, 1, counted(hard, Filter{Alcohol: true}).Tried)
	salty := made("Tomato juice, canned, with salt", "vegetable juice", 93, map[constituent.ID]float64{"NA": 253})
	assert.Equal(t, 1, counted(salty, Filter{}).Salty)
	assert.Equal(t, 1, counted(salty, Filter{Sodium: true}).Tried)
	assert.Equal(t, 1, counted(made("Lime juice, raw", "citrus juice", 90, nil), Filter{Groups: []string{"citrus juice"}}).Unwanted)
	assert.Equal(t, 1, counted(made("Almond drink, plain", "plant drink", 95, nil), Filter{Leaves: []string{"almond"}}).Unwanted)
	assert.Equal(t, 1, counted(made("House drink", "plant drink", 95, nil), Filter{Leaves: []string{"almond"}}).NotAssessed)

	core := assaytest.Core(t)
	list, _ := candidates(all(core), Filter{Alcohol: true, Sodium: true})
	for _, l := range list {
		if l.food.Chemical {
			assert.Equal(t, "acid", l.food.Group, l.food.ID)
			assert.Contains(t, []string{"citric-acid", "citric-acid-monohydrate", "malic-acid", "tartaric-acid", "lactic-acid"}, l.food.ID.Code)
			assert.Less(t, l.to, 1.0, "no spoons of acid")
		}
		assert.NotContains(t, []string{"salt", "gum", "oil", "egg", "spice"}, l.food.Group)
		if l.food.Group == "coffee drink" || l.food.Group == "cream" {
			assert.NotRegexp(t, "(?i)powder|butter", l.food.Name())
		}
		if l.food.Group == "vinegar" {
			assert.LessOrEqual(t, l.to, 10.0, "no glasses of vinegar")
		}
	}
}

// A drink with rum may have wine; of an allergen that it declares nothing rids it, and no food that holds it
// is tried.
func TestWhatTheDrinkHasIsNoSurprise(t *testing.T) {
	core := assaytest.Core(t)
	of := func(code string) *food.Food { return core[food.ID{Table: "core", Code: code}] }
	text := func(build string) string {
		return "drink: x\nserves: 1\nbuild: [" + build + "]\ntargets: [serving(TARAC) >= 60 mg, not contains(\"almond\")]\n"
	}
	foods := []*food.Food{of("wine-white"), of("almond-drink")}
	res, err := Find(context.Background(), kitchenOf(t, core, text("36 g core:espresso")), foods, Filter{})
	require.NoError(t, err)
	assert.Equal(t, 1, res.Alcohol)
	assert.Equal(t, 1, res.Unwanted)
	assert.Empty(t, res.Declared)
	k := kitchenOf(t, core, text("36 g core:espresso, 30 g core:rum-40"))
	k.Bench.Declared = func(word string) (bool, error) { return word == "almond", nil }
	res, err = Find(context.Background(), k, foods, Filter{})
	require.NoError(t, err)
	assert.Zero(t, res.Alcohol)
	assert.Equal(t, []string{"almond"}, res.Declared)
	require.Len(t, res.Designs, 1)
	assert.Equal(t, "wine-white", res.Designs[0].Parts[0].Food.ID.Code)
}

// Foods are alike by the words of their names, whatever sort of food each is.
func TestFoodsThatAreAlike(t *testing.T) {
	named := func(name, group, publisher string) *food.Food {
		return &food.Food{Names: []food.Name{{Text: name}}, Group: group, PublisherGroup: publisher}
	}
	for _, c := range []struct {
		name, group, publisher, short string
		words                         []string
	}{
		{"Sour cherry juice", "fruit juice", "fruit juice", "sour cherry juice", []string{"cherry", "sour"}},
		{"Cherries, sour, red, raw", "fruit", "Fruits and Fruit Juices", "cherries", []string{"cherry"}},
		{"Verjuice (juice of unripe grapes)", "fruit juice", "fruit juice", "verjuice", []string{"verjuice"}},
		{"Bitter orange (daidai) juice, fresh", "citrus juice", "citrus juice", "bitter orange juice", []string{"bitter", "orange"}},
		{"Beverages, almond milk, unsweetened", "plant drink", "Beverages", "almond milk", []string{"almond"}},
		{"Milk, lactose-free, whole", "milk", "milk", "milk, lactose-free", []string{"milk"}},
		{"Water, tap", "water", "water", "water, tap", []string{"water"}},
	} {
		f := named(c.name, c.group, c.publisher)
		assert.Equal(t, c.short, Short(f))
		assert.Equal(t, c.words, wordsOf(f), c.name)
	}
	assert.True(t, alikeFoods(named("Cherries, sour, red, raw", "fruit", ""), named("Sour cherry juice", "fruit juice", "")))
	assert.False(t, alikeFoods(named("Pear juice", "fruit juice", ""), named("Apple juice", "fruit juice", "")))
}
