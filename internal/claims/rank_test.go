package claims_test

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// invented is a food of an invented table with so much caffeine in 100 g; NaN: nobody has looked, and a
// food of such a group may hold any.
func invented(code string, mg, sd float64) *food.Food {
	of := map[constituent.ID]float64{"WATER": 90, "CAFFN": mg}
	if math.IsNaN(mg) {
		delete(of, "CAFFN")
	}
	f := assaytest.Exact(code, "", of)
	f.ID.Table = "t"
	f.Names = []food.Name{{Language: "en", Text: strings.ToUpper(code[:1]) + code[1:]}}
	for i := range f.Values {
		if f.Values[i].Constituent == "CAFFN" {
			f.Values[i].SD = sd
		}
	}
	return f
}

func tableOf(foods ...*food.Food) shelf {
	s := shelf{}
	for _, f := range foods {
		s[f.ID] = f
	}
	return s
}

// glassFor is a drink of water, of which foods are ranked.
func glassFor(t testing.TB, s shelf, draws int) *claims.Glass {
	t.Helper()
	return claims.NewGlass(run(t, assaytest.Core(t), "drink: x\nserves: 1\nbuild: [100 g core:water-pure]\n", draws), nil).RankBy(s)
}

func rankOf(t testing.TB, s shelf, name string) claim.Figure {
	t.Helper()
	f, err := glassFor(t, s, 200).Rank(constituent.Must("CAFFN"), name)
	require.NoError(t, err)
	return f
}

// Of foods without a spread the place is a count.
func TestPlacesWithoutSpreadAreCounted(t *testing.T) {
	var foods []*food.Food
	for i := range 20 {
		foods = append(foods, invented(fmt.Sprintf("f%d", i), float64(10*(i+1)), 0))
	}
	foods = append(foods, invented("twin", 50, 0), invented("none", 0, 0))
	pure := invented("pure", 99, 0)
	pure.Chemical = true
	s := tableOf(append(foods, pure)...)
	for name, place := range map[string]float64{"t:f19": 1, "t:f18": 2, "t:f4": 16, "t:twin": 16, "t:f3": 18, "t:none": 22} {
		f := rankOf(t, s, name)
		assert.Equal(t, place, f.Known[0], name)
		assert.True(t, estimate.Certain(f.Known), name)
		assert.Empty(t, f.Gaps, name)
	}
}

// Of two foods with a spread the one comes first as often as its draws are higher: of lognormal draws with
// means 100 and 110 and deviations of 20 by the normal distribution of the logarithms' difference.
func TestPlacesFollowTheDraws(t *testing.T) {
	a, b := invented("a", 100, 20), invented("b", 110, 20)
	s := tableOf(a, b, invented("far", 100000, 100), invented("little", 1, 0.1))
	behind := 0.0
	const draws = 200
	for _, place := range rankOf(t, s, "t:a").Known[1:] {
		require.GreaterOrEqual(t, place, 2.0)
		require.LessOrEqual(t, place, 3.0)
		behind += (place - 2) / draws
	}
	spread := func(mean float64) (mu, variance float64) {
		variance = math.Log1p(400 / mean / mean)
		return math.Log(mean) - variance/2, variance
	}
	muA, vA := spread(100)
	muB, vB := spread(110)
	z := (muB - muA) / math.Sqrt(vA+vB)
	assert.InDelta(t, 0.5*(1+math.Erf(z/math.Sqrt2)), behind, 3*math.Sqrt(0.25/draws))
}

// What nobody knows makes a place worse at the most, and no better: the food's own, and that of others.
func TestTheUnknownMakesPlacesWorse(t *testing.T) {
	s := tableOf(invented("a", 100, 0), invented("b", 50, 0), invented("open", math.NaN(), 0), invented("shut", math.NaN(), 0))
	f := rankOf(t, s, "t:b")
	assert.Equal(t, 2.0, f.Known[0])
	require.Len(t, f.Gaps, 1)
	assert.Equal(t, 2.0, f.Gaps[0].Most[0])
	assert.Equal(t, "caffeine of 2 foods of t that may hold more", f.Gaps[0].What, "only their mass bounds them")
	f = rankOf(t, s, "t:open")
	assert.True(t, f.Unknown)
	assert.Equal(t, 1.0, f.Known[0])
	require.Len(t, f.Gaps, 2)
	assert.Equal(t, []float64{2, 1}, []float64{f.Gaps[0].Most[0], f.Gaps[1].Most[0]}, "behind a and b if it has none, and then behind the other")
}

// Where what a food may hold lies among the draws of the one asked for, it comes before in some of them: nobody knows
// the caffeine of one that is water but for 50 mg, and half of the draws of 50 ± 20 mg lie below that.
func TestTheUnknownComesBeforeInSomeDraws(t *testing.T) {
	wet := invented("wet", math.NaN(), 0)
	for i := range wet.Values {
		wet.Values[i].Amount = 99.95 // g of water
	}
	f := rankOf(t, tableOf(invented("a", 50, 20), wet), "t:a")
	require.Len(t, f.Gaps, 1)
	before := 0.0
	for _, x := range f.Gaps[0].Most[1:] {
		before += x / 200
	}
	assert.InDelta(t, 0.58, before, 0.12, "the median of a lognormal distribution is below its mean")
	assert.Equal(t, 1.0, f.Known[0])
}

// Foods that are left out of the draws for being too far away would not have changed a place: those of any
// table, drawn all, are where brute force puts them.
func TestPlacesAreThoseOfAllDraws(t *testing.T) {
	rng := rand.New(rand.NewPCG(16, 1))
	var foods []*food.Food
	for i := range 60 {
		mean := 20 * math.Exp(2*rng.NormFloat64())
		foods = append(foods, invented(fmt.Sprintf("f%02d", i), mean, mean*0.4*rng.Float64()))
	}
	s := tableOf(foods...)
	columns := map[string][]float64{}
	for _, f := range foods { // 100 g of each alone are what it holds
		a := run(t, assaytest.Library(s), "drink: x\nserves: 1\nbuild: [100.0000 g ± 0 g "+f.ID.String()+"]\n", 200)
		got, err := claims.NewGlass(a, nil).Amount(constituent.Must("CAFFN"), claim.Part{})
		require.NoError(t, err)
		columns[f.ID.Code] = got.Known
	}
	for _, name := range []string{"f00", "f13", "f27", "f42", "f59"} {
		f := rankOf(t, s, "t:"+name)
		off := 0
		for d, place := range f.Known {
			want := 1.0
			for code, col := range columns {
				if code != name && col[d] > columns[name][d]*(1+1e-9) {
					want++
				}
			}
			if math.Abs(place-want) > 0 {
				off++
			}
		}
		assert.Zero(t, off, name)
	}
}

// The core table's own first places, as its file has them, and what is told beside the verdict.
func TestRankOfCoreFoods(t *testing.T) {
	core := assaytest.Core(t)
	said := judged(t, core, `drink: "x"
serves: 1
build: [100 g core:water-pure]
claims:
  - {say: x, check: 'food_rank(ALC, "core:spirit-50") <= 5'}
  - {say: x, check: 'food_rank(SUCS, "core:lemon-juice") <= 20'}
  - {say: x, check: 'food_rank(CITAC, "core:lemon-juice") <= 10'}
`)
	assert.True(t, said[0].Holds(), said[0].Line())
	assert.Contains(t, said[0].Line(), " foods of core, pure substances apart")
	assert.EqualValues(t, "refuted", said[1].Word, said[1].Line())
	assert.Equal(t, claim.Unknown, said[2].Word, said[2].Line())
	assert.Contains(t, said[2].Line(), "nobody knows citric acid of ")
	for _, s := range said {
		assert.Nil(t, s.Nearest)
		assert.Nil(t, s.Closes)
	}
	assert.Nil(t, said[2].Weakest, "the unknown decides it")

	_, err := benchOf(run(t, core, "drink: x\nserves: 1\nfoods: "+ownJuice+"\nbuild: [100 g own:j]\nclaims: [{say: x, check: 'food_rank(CITAC, \"own:j\") < 3'}, {say: y, check: 'food_rank(CITAC, \"core:nothing\") < 3'}]\n", 50), core).Judge(context.Background())
	require.Error(t, err)
	for _, part := range []string{"own:j is of this file, and no food of a table", "no food is called core:nothing"} {
		assert.Contains(t, err.Error(), part)
	}
}

// Of foods that may come before, those that may hold the most are named first; one that nothing but its mass bounds is
// counted, and nobody would think of it.
func TestRivalsAreThoseThatMayHoldMost(t *testing.T) {
	bound := func(code string, most float64) *food.Food {
		f := invented(code, math.NaN(), 0)
		f.Values = slices.DeleteFunc(f.Values, func(v food.Value) bool { return v.Constituent == "CAFFN" })
		f.Values = append(f.Values, food.Value{Constituent: "CAFFN", Amount: food.None, SD: food.None, Low: food.None, High: food.None, Limit: most, State: estimate.Unknown})
		return f
	}
	f := rankOf(t, tableOf(invented("asked", 50, 0), bound("a-little", 60), bound("much", 900), bound("nothing-said", food.None)), "t:asked")
	require.Len(t, f.Gaps, 1)
	assert.Contains(t, f.Gaps[0].What, "caffeine of 3 foods of t that may hold more, such as much and a-little")
}
