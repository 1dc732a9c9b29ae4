package data_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/caution"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/food"
	"sipsum/internal/invent"
	"sipsum/internal/recipe"
)

// printed are the figures of core foods as other tables print them, per 100 g in the unit of the vocabulary.
type printed map[string]map[constituent.ID][]float64

// TestDesignsHoldAsOftenAsTheySay asks for what to pour into water, in windows about what some food brings,
// of pools of thirty core foods, and values each design again by tables kept back: national tables from
// which no cell of the core table that is compared was taken (crosscheck_test.go). The windows are drawn
// around central values of the core table and say nothing of the truth. Of designs that are said to hold in
// 80 to 90 of 100 draws, 77 to 93 % do.
func TestDesignsHoldAsOftenAsTheySay(t *testing.T) {
	cells := crossCells(t, sharedTables(t))
	core := assaytest.Core(t)
	back := printed{}
	for _, c := range cells {
		if back[c.food] == nil {
			back[c.food] = map[constituent.ID][]float64{}
		}
		back[c.food][c.id] = append(back[c.food][c.id], c.value)
	}
	rng := rand.New(rand.NewPCG(16, 80))
	const briefs = 140
	var given, held [3]int // below 80, 80 to 90, above
	designs := 0
	for range briefs {
		tags := briefTags(rng)
		foods := back.pool(core, tags, rng)
		if len(foods) < 8 {
			continue
		}
		res, windows := proposed(t, core, foods, tags, rng)
		for _, d := range res.Designs {
			truth, ok := back.meets(d, windows, rng)
			if !ok {
				continue
			}
			designs++
			bin := min(max(int(d.Sure*10)-7, 0), 2)
			given[bin]++
			if truth {
				held[bin]++
			}
		}
	}
	t.Logf("%d designs valued again by tables kept back", designs)
	for bin, of := range []string{"75 to 80", "80 to 90", "90 to 100"} {
		t.Logf("  said to hold in %s of 100: %d designs, %.1f %% do", of, given[bin], 100*float64(held[bin])/float64(given[bin]))
	}
	share := float64(held[1]) / float64(given[1])
	assert.GreaterOrEqual(t, given[1], 60)
	assert.GreaterOrEqual(t, share, 0.77)
	assert.LessOrEqual(t, share, 0.93)
}

// window is what a constituent of a serving is to be between, in the unit of the vocabulary.
type window struct {
	of        *constituent.Constituent
	low, high float64
}

// briefTags are one or two constituents that many tables print.
func briefTags(rng *rand.Rand) []constituent.ID {
	tags := []constituent.ID{"K", "SUGAR", "MG", "CA", "P", "PROCNT", "VITC", "GLUS", "FRUS"}
	rng.Shuffle(len(tags), func(i, j int) { tags[i], tags[j] = tags[j], tags[i] })
	return tags[:1+rng.IntN(2)]
}

// pool draws thirty foods that another table prints all of.
func (p printed) pool(core assaytest.Library, tags []constituent.ID, rng *rand.Rand) []*food.Food {
	var codes []string
	for code, of := range p {
		f := core[food.ID{Table: "core", Code: code}]
		if f.Facts().Liquid && f.Facts().InDrinks && !slices.ContainsFunc(tags, func(id constituent.ID) bool { return len(of[id]) == 0 }) {
			codes = append(codes, code)
		}
	}
	slices.Sort(codes)
	rng.Shuffle(len(codes), func(i, j int) { codes[i], codes[j] = codes[j], codes[i] })
	var list []*food.Food
	for _, code := range codes[:min(30, len(codes))] {
		list = append(list, core[food.ID{Table: "core", Code: code}])
	}
	return list
}

// proposed looks for designs of a brief about what the first of some foods brings.
func proposed(t *testing.T, core assaytest.Library, foods []*food.Food, tags []constituent.ID, rng *rand.Rand) (*invent.Result, []window) {
	t.Helper()
	var windows []window
	text := "drink: x\nserves: 1\nscale: 0.1 g\nbuild: [40 g core:water-pure]\ntargets:\n"
	grams := 20 + 30*rng.Float64()
	for _, id := range tags {
		v, _ := foods[0].Value(id)
		middle, wide := grams*v.Amount/100, 0.15+0.3*rng.Float64()
		w := window{constituent.Must(id), middle * (1 - wide), middle * (1 + wide)}
		windows = append(windows, w)
		text += fmt.Sprintf("  - serving(%s) between %.6f %s and %.6f %s\n", id, w.low, w.of.Unit, w.high, w.of.Unit)
	}
	bench := func(r *recipe.Recipe) fit.Bench {
		return fit.Bench{
			Central: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 1}), Drawn: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 201}),
			Drink: r.Drink, Declared: func(string) (bool, error) { return false, nil },
		}
	}
	r := assaytest.Found(t, core, text)
	res, err := invent.Find(context.Background(), invent.Kitchen{
		Bench: bench(r), Recipe: r, Text: []byte(text), Aims: fit.Read(r.Drink, &fail.List{}), Foods: core, Seed: 1,
		Read: func(ctx context.Context, text []byte) (fit.Bench, error) {
			d, faults := drink.Parse("test", text, nil)
			found, err := recipe.Find(ctx, d, faults, core)
			if err != nil {
				return fit.Bench{}, err
			}
			return bench(found), nil
		},
		Hurts: func(context.Context, *assay.Assay) ([]caution.Caution, error) { return nil, nil },
	}, foods, invent.Filter{Alcohol: true, Sodium: true})
	require.NoError(t, err, text)
	return res, windows
}

// meets values a design by what other tables print of its foods; ok is false where a pot is made of one.
func (p printed) meets(d invent.Design, windows []window, rng *rand.Rand) (truth, ok bool) {
	truth = true
	for _, w := range windows {
		sum := 0.0
		for _, part := range d.Parts {
			values := p[strings.TrimPrefix(part.Food.ID.String(), "core:")][w.of.ID]
			if part.By.Pot() || len(values) == 0 {
				return false, false
			}
			sum += part.Pour.Base() * values[rng.IntN(len(values))] / 100
		}
		truth = truth && sum >= w.low && sum <= w.high
	}
	return truth, true
}
