package invent

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/food"
)

// Milk of which nobody knows the acids is no hope of a drink of pH 3.3: published milks are of pH 5.7 and above
// (data/groups.csv), and two liquids above pH 3.3 make none below.
func TestWhatIsLessSourThanTheTargetIsNoHope(t *testing.T) {
	core := assaytest.Core(t)
	k := kitchenOf(t, core, "drink: heron\nserves: 1\nbuild: [36 g core:espresso, 90 g core:coconut-water]\ntargets: [ph() <= 3.3, serving(SUGAR) between 3 g and 11 g]\n")
	milks := 0
	for _, f := range all(core) {
		if f.Group != "milk" || len(pouredOf(f)) == 0 {
			continue
		}
		s := measuredSearch(t, k, []*food.Food{f})
		for _, c := range s.pool.list {
			milks++
			assert.LessOrEqual(t, c.helped[0], 0.0, f.ID)
			for _, x := range c.grams {
				_, met := s.needs(c, x)
				assert.False(t, met, "%s %g g", f.ID, x)
			}
		}
	}
	assert.Greater(t, milks, 3)
}

// What would have to be more than any food of the group is known to hold is no hope. Of juices of soft fruit that
// are known the most is in the table; 60 g of one have no 6 g of malic acid.
func TestWhatNoKnownFoodOfTheGroupHoldsIsNoHope(t *testing.T) {
	core := assaytest.Core(t)
	id := food.ID{Table: "core", Code: "sour-cherry-juice"}
	bare := assaytest.Without(core, id, "MALAC")
	found := func(target string) []Unread {
		k := kitchenOf(t, bare, "drink: x\nserves: 1\nbuild: [36 g core:espresso]\ntargets: ["+target+"]\n")
		foods := []*food.Food{bare[id]}
		for _, f := range all(bare) {
			if v, told := f.Value("MALAC"); f.ID != id && f.Group == "fruit juice" && told && v.Amount < 900 {
				foods = append(foods, f)
			}
		}
		s := measuredSearch(t, k, foods)
		var list []Unread
		for i, l := range s.liquids {
			if l.food.ID != id || l.by.Pot() {
				continue
			}
			u, ok, err := s.told(context.Background(), i, 60)
			require.NoError(t, err)
			if ok {
				list = append(list, u)
			}
		}
		return list
	}
	assert.NotEmpty(t, found("serving(MALAC) >= 300 mg"))
	assert.Empty(t, found("serving(MALAC) >= 700 mg"), "1.1 g of 100 g, where the others have up to 0.9 g")
}

// Cream and coffee that is brewed are poured by bars; powder and butter are not.
func TestBarsPourCreamAndCoffee(t *testing.T) {
	core := assaytest.Core(t)
	for code, is := range map[string]bool{
		"espresso": true, "filter-coffee": true, "cold-brew-concentrate": true, "instant-coffee": false,
		"cream-heavy": true, "cream-half": true, "butter-salted": false, "ghee": false, "cream-pressurised": false,
	} {
		assert.Equal(t, is, len(pouredOf(core[food.ID{Table: "core", Code: code}])) > 0, code)
	}
	k := kitchenOf(t, core, "drink: heron\nserves: 1\nglass: 160 ml\nbuild: [36 g core:espresso, 40 g core:coconut-water]\ntargets: [serving(FAT) >= 5 g, volume() <= 110 ml]\n")
	res, err := Find(context.Background(), k, all(core), Filter{})
	require.NoError(t, err)
	require.NotEmpty(t, res.Designs)
	assert.Equal(t, "cream", res.Designs[0].Parts[0].Food.Group)
}
