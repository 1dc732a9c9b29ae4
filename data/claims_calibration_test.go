package data_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/recipe"
)

// trial is a claim with the verdict that it got, and whether it is true.
type trial struct {
	claim.Verdict
	truth     bool
	decidable bool // at central values the ends of what is unknown agree
	outside   bool // the truth is another table's
	sweet     bool // it is a claim of sweetness
}

// bins are of probability; least and most are what share of the claims given it may be true: of
// 80 to 90 % between 77 and 93, of each other bin seven per cent beyond its middle to both sides.
func binOf(p float64) int { return min(int(p*10), 9) }

func allowed(bin int) (least, most float64) {
	middle := (float64(bin) + 0.5) / 10
	if bin == 8 {
		return 0.77, 0.93
	}
	return middle - 0.07, middle + 0.07
}

// TestClaimsAreAsTrueAsTheyAreSaidToBe judges claims whose truth is known otherwise. Of half of
// them another national table tells it, from which no cell of the core table that is compared was
// taken (crosscheck_test.go): 100 g of a core food, a limit at random in its own distribution, and
// what the other table prints. Of the other half it is a draw of another seed: of drinks of foods
// drawn at random, some of which do not know all. Verdicts come from the command's own path; the
// limits from the draws, so that all probabilities occur, and say nothing of the truth.
func TestClaimsAreAsTrueAsTheyAreSaidToBe(t *testing.T) {
	cells := crossCells(t, sharedTables(t))
	core := assaytest.Core(t)
	rng := rand.New(rand.NewPCG(15, 2026))
	ranks := rankTrials(t, core, rng)
	trials := slices.Concat(outsideTrials(t, core, cells, rng), outsideSweetness(t, core, cells, rng), drawnTrials(t, core, rng), ranks)
	half := 0
	for _, x := range trials {
		if x.outside {
			half++
		}
	}
	t.Logf("%d claims, the truth of %d from other tables", len(trials), half)
	assert.GreaterOrEqual(t, len(trials), 2000)
	assert.InDelta(t, 0.5, float64(half)/float64(len(trials)), 0.05)
	held(t, "all", trials, true)
	held(t, "other tables", those(trials, func(x trial) bool { return x.outside }), false)
	held(t, "other draws", those(trials, func(x trial) bool { return !x.outside }), false)
	held(t, "sweetness", those(trials, func(x trial) bool { return x.sweet }), false)
	held(t, "places among foods", ranks, false)

	decidable, decided := 0, 0
	for _, x := range trials {
		if x.decidable {
			if decidable++; x.Word != claim.Unknown {
				decided++
			}
		}
	}
	t.Logf("of %d decidable claims %.1f %% are decided", decidable, 100*float64(decided)/float64(decidable))
	assert.GreaterOrEqual(t, float64(decided), 0.8*float64(decidable))
}

func those(list []trial, is func(trial) bool) []trial {
	var some []trial
	for _, x := range list {
		if is(x) {
			some = append(some, x)
		}
	}
	return some
}

// held prints how many claims of each bin are true, and the Brier score: the mean square of what
// the probability is off by (Brier 1950, Mon. Weather Rev. 78:1); 1/4 is that of knowing nothing.
func held(t *testing.T, of string, list []trial, binding bool) {
	t.Helper()
	var given, truths [10]int
	brier, n := 0.0, 0
	for _, x := range list {
		if x.Word == claim.Unknown {
			continue
		}
		b := binOf(x.P)
		given[b]++
		truth := 0.0
		if x.truth {
			truths[b]++
			truth = 1
		}
		brier += (x.P - truth) * (x.P - truth)
		n++
	}
	t.Logf("%s: %d claims judged, Brier score %.3f", of, n, brier/float64(n))
	for b := range given {
		share := float64(truths[b]) / float64(given[b])
		t.Logf("  given %2d to %3d %%: %4d claims, %.1f %% true", 10*b, 10*(b+1), given[b], 100*share)
		if least, most := allowed(b); binding {
			assert.True(t, share >= least && share <= most, "%s: of claims given %d to %d %%, %.1f %% are true", of, 10*b, 10*(b+1), 100*share)
		}
	}
}

// glassOf calculates a drink as far as its claims ask.
func glassOf(t *testing.T, core assaytest.Library, text string, seed uint64, draws int) (*claims.Glass, *assay.Assay) {
	t.Helper()
	d, faults := drink.Parse("test", []byte(text), nil)
	r, err := recipe.Find(context.Background(), d, faults, core)
	require.NoError(t, err, text)
	a, err := assay.Prepare(r, estimate.Ensemble{Seed: seed, N: draws + 1}).Run(context.Background(), nil, assay.Want{Draws: true})
	require.NoError(t, err)
	return claims.NewGlass(a, nil), a
}

func judgedBy(t *testing.T, g *claims.Glass, text string) trial {
	t.Helper()
	c, err := claim.Parse(text, fail.Place{})
	require.NoError(t, err, text)
	v, err := c.Check(g)
	require.NoError(t, err, text)
	sure, may := v.Outcome.AtCentre()
	return trial{Verdict: v, decidable: sure == may}
}

// limitOf is a limit at random in a distribution.
func limitOf(draws []float64, rng *rand.Rand) float64 {
	sorted := slices.Sorted(slices.Values(draws))
	return sorted[rng.IntN(len(sorted))]
}

func order(rng *rand.Rand) string { return []string{">", "<"}[rng.IntN(2)] }

func outsideTrials(t *testing.T, core assaytest.Library, cells []crossCell, rng *rand.Rand) []trial {
	t.Helper()
	const draws = 1000
	glasses := map[string]*claims.Glass{}
	var list []trial
	for i, cell := range cells {
		if i%2 == 1 { // each other one: as many as are drawn
			continue
		}
		g, ok := glasses[cell.food]
		if !ok {
			g, _ = glassOf(t, core, "drink: x\nserves: 1\nbuild: [100.000 g core:"+cell.food+"]\n", 1, draws)
			glasses[cell.food] = g
		}
		c := constituent.Must(cell.id)
		f, err := g.Amount(c, claim.Part{})
		require.NoError(t, err)
		limit, is := limitOf(f.Known[1:], rng)*c.PerGram, order(rng)
		x := judgedBy(t, g, fmt.Sprintf("per100g(%s) %s %.9f %s", c.ID, is, limit, c.Unit))
		if x.outside, x.truth = true, cell.value < limit; is == ">" {
			x.truth = cell.value > limit
		}
		list = append(list, x)
	}
	return list
}

// drawnTrials are of random drinks of three foods in two pots. The truth of what nobody knows is
// as likely anywhere between none and its most.
func drawnTrials(t *testing.T, core assaytest.Library, rng *rand.Rand) []trial {
	t.Helper()
	const drinks, each, draws, truths = 100, 30, 1000, 200
	var foods []string
	for id, f := range core {
		if slices.Contains([]string{"fruit juice", "citrus juice", "plant drink", "coffee drink", "tea drink", "syrup", "milk"}, f.Group) {
			foods = append(foods, id.String())
		}
	}
	slices.Sort(foods)
	tags := []*constituent.Constituent{}
	for _, id := range []constituent.ID{"SUGAR", "GLUS", "FRUS", "SUCS", "CITAC", "MALAC", "K", "CAFFN", "PROCNT", "VITC"} {
		tags = append(tags, constituent.Must(id))
	}
	var list []trial
	for range drinks {
		pick := func() string { return foods[rng.IntN(len(foods))] }
		text := fmt.Sprintf("drink: x\nserves: 1\ncomponents:\n  mix: {ingredients: [%d g ± 3 g %s, %d g %s]}\nbuild: [50 g ± 5 g mix, %d g %s]\n",
			40+rng.IntN(40), pick(), 20+rng.IntN(40), pick(), 20+rng.IntN(60), pick())
		g, _ := glassOf(t, core, text, 1, draws)
		other, _ := glassOf(t, core, text, 2, truths)
		for range each {
			if rng.IntN(8) == 0 {
				list = append(list, sweetTrial(t, g, other, rng)...)
				continue
			}
			c := tags[rng.IntN(len(tags))]
			share := rng.IntN(3) == 0
			known := claimedOf(t, g, c, share, nil)
			if estimate.Certain(known) {
				continue
			}
			unknown := func(claim.Gap) float64 { return rng.Float64() }
			truth := claimedOf(t, other, c, share, unknown)[1+rng.IntN(truths)]
			limit, is := limitOf(known[1:], rng), order(rng)
			what, scale, in := "serving("+string(c.ID)+")", c.PerGram, c.Unit
			if share {
				what, scale, in = "share("+string(c.ID)+`, "mix")`, 100, "%"
			}
			x := judgedBy(t, g, fmt.Sprintf("%s %s %.9f %s", what, is, limit*scale, in))
			if x.truth = truth < limit; is == ">" {
				x.truth = truth > limit
			}
			list = append(list, x)
		}
	}
	return list
}

// claimedOf adds up what a serving, or its pot's share, is, with each unknown at a share of its most;
// with unknown nil they are none.
func claimedOf(t *testing.T, g *claims.Glass, c *constituent.Constituent, share bool, unknown func(claim.Gap) float64) []float64 {
	t.Helper()
	at := map[string]float64{}
	column := func(of claim.Part) []float64 {
		f, err := g.Amount(c, of)
		require.NoError(t, err)
		sum := slices.Clone(f.Known)
		for _, gap := range f.Gaps {
			if unknown == nil || math.IsInf(gap.Most[0], 1) {
				continue
			}
			if gap.Loose { // what nature allows is no distribution
				continue
			}
			if _, ok := at[gap.Key]; !ok {
				at[gap.Key] = unknown(gap)
			}
			for d := range sum {
				sum[d] += at[gap.Key] * gap.Most[min(d, len(gap.Most)-1)]
			}
		}
		return sum
	}
	if !share {
		return column(claim.Part{})
	}
	pot := claim.Part{Sort: claim.OfComponent, Name: "mix"}
	own := column(pot)
	pot.Rest = true
	rest := column(pot)
	return estimate.Ratio(own, sumOf(own, rest), 1)
}

func sumOf(a, b []float64) []float64 {
	out := slices.Clone(a)
	for d := range b {
		out[d] += b[d]
	}
	return out
}

// drawOf is a figure in one of its draws.
func drawOf(f claim.Figure, rng *rand.Rand) float64 {
	d := 1 + rng.IntN(len(f.Known)-1)
	x := f.Known[d]
	for _, gap := range f.Gaps {
		if !math.IsInf(gap.Most[0], 1) {
			x += rng.Float64() * gap.Most[min(d, len(gap.Most)-1)]
		}
	}
	return x
}

// sweetTrial claims that a drink is sweeter, or less sweet, than a limit within its draws, with the truth in
// another glass; none of a drink that has no sweetness, or one without a spread.
func sweetTrial(t *testing.T, g, other *claims.Glass, rng *rand.Rand) []trial {
	t.Helper()
	f, err := g.Property(claim.Sweetness)
	require.NoError(t, err)
	truths, err := other.Property(claim.Sweetness)
	require.NoError(t, err)
	if estimate.Certain(f.Known) || len(truths.Known) == 1 {
		return nil
	}
	truth, limit, is := drawOf(truths, rng), limitOf(f.Known[1:], rng), order(rng)
	x := judgedBy(t, g, fmt.Sprintf("sweetness() %s %.9f g/l", is, 1000*limit))
	x.sweet = true
	if x.truth = truth < limit; is == ">" {
		x.truth = truth > limit
	}
	return []trial{x}
}

// outsideSweetness claims how sweet a core food is. The truth has the sugars that another table prints of it,
// all of those that the core food is known to hold, and factors of another seed.
func outsideSweetness(t *testing.T, core assaytest.Library, cells []crossCell, rng *rand.Rand) []trial {
	t.Helper()
	const little = 0.3 // g in 100 g: the sugar that the other table leaves out
	sugars := []constituent.ID{"GLUS", "FRUS", "SUCS", "LACS", "MALS"}
	type pair struct{ food, table string }
	printed := map[pair]map[constituent.ID]float64{}
	var pairs []pair
	for _, c := range cells {
		if !slices.Contains(sugars, c.id) {
			continue
		}
		of := pair{c.food, c.table}
		if printed[of] == nil {
			printed[of] = map[constituent.ID]float64{}
			pairs = append(pairs, of)
		}
		printed[of][c.id] = c.value
	}
	var list []trial
	for _, of := range pairs {
		f := core[food.ID{Table: "core", Code: of.food}]
		all, values, water := true, "", 100.0
		for _, id := range sugars {
			own, known := f.Value(id)
			x, ok := printed[of][id]
			if ok {
				values += fmt.Sprintf(", %s: %.6f g ± 0 g", id, x)
				water -= x
			}
			all = all && (ok || !known || own.Amount < little)
		}
		if !all || values == "" {
			continue
		}
		g, _ := glassOf(t, core, "drink: x\nserves: 1\nbuild: [100.000 g core:"+of.food+"]\n", 1, 1000)
		other, _ := glassOf(t, core, fmt.Sprintf("drink: x\nserves: 1\nfoods: {a: {name: x, per: 100 g, values: {WATER: %.6f g ± 0 g%s, POLYL: 0 g ± 0 g}, source: x}}\nbuild: [100.000 g own:a]\n", water, values), 2, 200)
		const each = 4
		for range each {
			for _, x := range sweetTrial(t, g, other, rng) {
				x.outside = true
				list = append(list, x)
			}
		}
	}
	return list
}

// rankTrials claim where a core food stands. The truth is a draw of another seed, with what nobody knows
// anywhere up to its most.
func rankTrials(t *testing.T, core assaytest.Library, rng *rand.Rand) []trial {
	t.Helper()
	const each = 8
	var list []trial
	var codes []string
	for id, f := range core {
		if !f.Chemical {
			codes = append(codes, id.String())
		}
	}
	slices.Sort(codes)
	const water = "drink: x\nserves: 1\nbuild: [100 g core:water-pure]\n"
	g, _ := glassOf(t, core, water, 1, 200)
	other, _ := glassOf(t, core, water, 2, 200)
	g.RankBy(library(core))
	other.RankBy(library(core))
	for _, id := range []constituent.ID{"SUGAR", "K", "CAFFN", "PROCNT", "FAT", "CITAC"} {
		c := constituent.Must(id)
		for range 5 {
			name := codes[rng.IntN(len(codes))]
			f, err := g.Rank(c, name)
			require.NoError(t, err)
			if estimate.Certain(f.Known) {
				continue
			}
			truths, err := other.Rank(c, name)
			require.NoError(t, err)
			for range each {
				truth, limit, is := drawOf(truths, rng), limitOf(f.Known[1:], rng), order(rng)
				limit += []float64{-0.5, 0.5}[rng.IntN(2)] // places are whole numbers
				x := judgedBy(t, g, fmt.Sprintf("food_rank(%s, %q) %s %.1f", id, name, is, limit))
				if x.truth = truth < limit; is == ">" {
					x.truth = truth > limit
				}
				list = append(list, x)
			}
		}
	}
	return list
}

// library is a table of which claims rank foods.
type library assaytest.Library

func (l library) Called(name string) (*food.Food, error) {
	id, _ := food.ParseID(name)
	return l[id], nil
}

func (l library) Table(string) ([]*food.Food, error) {
	var all []*food.Food
	for _, f := range l {
		all = append(all, f)
	}
	return all, nil
}
