package invent

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/fit"
	"sipsum/internal/food"
)

// What keeps one target from being met is told: 4 g of protein of whole milk (3.15 g in 100 g, SR 28 01077) are no
// 127 ml into a glass that is nearly full.
func TestTheGlassThatStopsASearchIsTold(t *testing.T) {
	core := assaytest.Core(t)
	milk := []*food.Food{core[food.ID{Table: "core", Code: "milk-whole"}]}
	found := func(glass string) *Result {
		k := kitchenOf(t, core, "drink: x\nserves: 1\nglass: "+glass+"\nbuild: [100 g core:water-tap]\ntargets: [serving(PROCNT) >= 2 g]\n")
		res, err := Find(context.Background(), k, milk, Filter{})
		require.NoError(t, err)
		return res
	}
	full := found("120 ml")
	assert.Empty(t, full.Designs)
	assert.Equal(t, []string{fit.TheGlass}, full.Stops)
	wide := found("200 ml")
	assert.NotEmpty(t, wide.Designs)
	assert.Empty(t, wide.Stops)
}

// A target of a most that the drink as it is written holds too seldom is out of reach of whatever is added.
func TestATargetThatIsHeldTooSeldomAsWrittenIsTold(t *testing.T) {
	core := assaytest.Core(t)
	k := kitchenOf(t, core, "drink: x\nserves: 1\nbuild: [36 g core:espresso]\ntargets: [serving(SUGAR) >= 5 g, serving(CAFFN) <= 160 mg]\n")
	s := measuredSearch(t, k, all(core))
	s.pool.base[1][0] = 1 // it is met at central values, and in half of the draws
	for d := range s.pool.base[1][1:] {
		s.pool.base[1][d+1] = float64(d%2) - 0.5
	}
	s.unmet()
	var told []Unmet
	for _, u := range s.res.Unmet {
		if u.Target == "serving(CAFFN) <= 160 mg" {
			told = append(told, u)
		}
	}
	require.Len(t, told, 1)
	assert.InDelta(t, 0.5, told[0].Holds, 0.01)
	assert.Nil(t, told[0].By)
	assert.False(t, told[0].Can)
}

// What is in the drink as it is written is told where nobody wants such a food put in.
func TestWhatIsStillThereIsTold(t *testing.T) {
	core := assaytest.Core(t)
	k := kitchenOf(t, core, "drink: x\nserves: 1\nbuild: [36 g core:espresso, 60 g core:milk-whole]\ntargets: [serving(SUGAR) >= 5 g]\n")
	res, err := Find(context.Background(), k, []*food.Food{core[food.ID{Table: "core", Code: "sugar-white"}]}, Filter{Groups: []string{"milk"}})
	require.NoError(t, err)
	assert.Equal(t, []string{core[food.ID{Table: "core", Code: "milk-whole"}].Name()}, res.Still)
	res, err = Find(context.Background(), k, nil, Filter{Groups: []string{"wine"}})
	require.NoError(t, err)
	assert.Empty(t, res.Still)
}
