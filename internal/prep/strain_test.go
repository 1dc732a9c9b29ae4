package prep_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/prep"
)

// cloudy holds something of every phase.
func cloudy(group string) *food.Profile {
	return entered("cloudy", group, map[constituent.ID]float64{
		"WATER": 80, "SUCS": 8, "CITAC": 1000, "FIBTG": 4, "STARCH": 1, "PROCNT": 3, "FAT": 2, "ASH": 1, "K": 200, "CAFFN": 50, "TAN": 30,
	})
}

// passed gives the share of a constituent that passes, draw by draw, of the water's.
func passed(before, after *ledger.Pot, id constituent.ID) []float64 {
	share := make([]float64, before.N)
	had, has := before.Total(id), after.Total(id)
	waterHad, waterHas := before.Total("WATER"), after.Total("WATER")
	for d := range share {
		share[d] = has[d] / had[d] / (waterHas[d] / waterHad[d])
	}
	return share
}

// leaves are the groups of solids that stay in a filter whole.
var leaves = []string{"coffee bean", "tea leaf", "spice", "herb"}

// Leaves that stand in a pot stay in the filter: they give what a steep draws out of them,
// and their fibre least of all. Strained again, what they gave passes.
func TestFiltersKeepLeaves(t *testing.T) {
	for _, group := range leaves {
		pot, before := potOf(water(), cloudy(group)), potOf(water(), cloudy(group))
		_, err := prep.Strain(pot, grams(120), "cloth", factors)
		require.NoError(t, err)
		assert.Less(t, pot.Of(1, "FIBTG")[0], 0.45*before.Of(1, "FIBTG")[0], "%s", group)
		assert.Less(t, pot.Of(1, "FAT")[0], 0.2*before.Of(1, "FAT")[0], "%s", group)
		solids := pot.Of(1, "MASS")[0] - pot.Of(1, "WATER")[0]
		_, err = prep.Strain(pot, grams(110), "cloth", factors)
		require.NoError(t, err)
		assert.Greater(t, pot.Of(1, "MASS")[0]-pot.Of(1, "WATER")[0], 0.85*solids, "%s", group)
	}
}

// What is dissolved goes with the water, of whatever food and through whatever filter.
func TestNoFilterHoldsBackWhatIsDissolved(t *testing.T) {
	for _, row := range embedded.Rows("groups.csv") {
		for _, through := range media {
			group := row.Text("group")
			if slices.Contains(leaves, group) {
				continue
			}
			pot, before := potOf(cloudy(group)), potOf(cloudy(group))
			_, err := prep.Strain(pot, grams(40), through, factors)
			require.NoError(t, err, "%s through %s", group, through)
			for _, id := range []constituent.ID{"SUCS", "CITAC", "ASH", "K", "CAFFN", "TAN"} {
				for _, share := range passed(before, pot, id) {
					require.InDelta(t, 1, share, close, "%s of %s through %s", id, group, through)
				}
			}
		}
	}
}

// Brewed coffee and tea and drinks that are sold clear hold their fibre and protein in
// solution: a filter takes no more than the fines.
func TestFiltersPassTheFibreAndProteinOfClearDrinks(t *testing.T) {
	const fines = 0.1
	for _, group := range []string{"coffee drink", "tea drink", "wine", "beer", "spirit", "vinegar", "soft drink", "honey", "syrup", "sugar"} {
		for _, through := range media {
			pot, before := potOf(cloudy(group)), potOf(cloudy(group))
			_, err := prep.Strain(pot, grams(40), through, factors)
			require.NoError(t, err, "%s through %s", group, through)
			for _, id := range []constituent.ID{"FIBTG", "STARCH", "PROCNT"} {
				for _, share := range passed(before, pot, id) {
					require.GreaterOrEqual(t, share, 1-fines, "%s of %s through %s", id, group, through)
				}
			}
		}
	}
}

// What a brew or a steep has drawn out of the grounds is in the liquid: paper takes its
// oil, and it is no dose for a second brew. The grounds themselves would stay.
func TestPaperPassesWhatWasExtracted(t *testing.T) {
	espresso, before := brewing(), brewing()
	for _, pot := range []*ledger.Pot{espresso, before} {
		_, err := prep.Brew(pot, prep.Recipe{Out: grams(38), Strength: grams(0.095)}, factors)
		require.NoError(t, err)
	}
	_, err := prep.Strain(espresso, grams(30), "paper", factors)
	require.NoError(t, err)
	for _, id := range []constituent.ID{"FIBTG", "PROCNT"} {
		assert.Greater(t, passed(before, espresso, id)[0], 0.9, "%s", id)
	}
	assert.Less(t, passed(before, espresso, "FAT")[0], 0.25)
	_, err = prep.Brew(espresso, prep.Recipe{Out: grams(20), Strength: grams(0.05)}, factors)
	require.ErrorContains(t, err, "nothing here is brewed")
}

func TestPaperStillHoldsPulpBack(t *testing.T) {
	pot, before := potOf(cloudy("fruit")), potOf(cloudy("fruit"))
	_, err := prep.Strain(pot, grams(40), "paper", factors)
	require.NoError(t, err)
	assert.Less(t, passed(before, pot, "FIBTG")[0], 0.1)
	juice, whole := potOf(cloudy("citrus juice")), potOf(cloudy("citrus juice"))
	_, err = prep.Strain(juice, grams(40), "paper", factors)
	require.NoError(t, err)
	assert.InDelta(t, 0.2, passed(whole, juice, "FIBTG")[0], 0.05, "the pectin passes")
}

// Sugar laid into a pot dissolves, and a juice runs into it: neither is taken out again, as
// leaf is. Butter is.
func TestSteepKeepsWhatDissolves(t *testing.T) {
	for _, p := range []*food.Profile{sugar(), juice(), spirit()} {
		in := potOf(p)
		pot := ledger.New(in.Columns, n)
		before := in.Mass()
		_, err := prep.Steep(pot, in, prep.Steeping{}, factors)
		require.NoError(t, err)
		assert.Equal(t, before, pot.Mass(), "%s", p.Food.ID)
	}
	butter := entered("butter", "cream", map[constituent.ID]float64{"WATER": 16, "FAT": 82, "PROCNT": 1})
	in := potOf(butter)
	pot := ledger.New(in.Columns, n)
	_, err := prep.Steep(pot, in, prep.Steeping{}, factors)
	require.NoError(t, err)
	assert.Less(t, central(pot, "FAT"), 40.0)
}

// Added sugars are part of the sugars: a step that takes sugars takes them too.
func TestAddedSugarsGoAsTheSugars(t *testing.T) {
	added := entered("sugar", "sugar", map[constituent.ID]float64{"SUCS": 100})
	added.Food.Marks = []food.Mark{{Kind: "added sugar", Share: 1}}
	added = food.Enter(added.Food, nil)
	pot := sugary(juice(), added)
	_, err := prep.Split(pot, []prep.Kept{{ID: "SUGAR", Share: grams(0.2)}}, nil)
	require.NoError(t, err)
	for d, x := range pot.Of(1, "SUGAR") {
		require.InDelta(t, x, pot.Of(1, "SUGAD")[d], close)
	}
	assert.InDelta(t, 20, pot.Of(1, "SUGAD")[0], 1e-6)
}
