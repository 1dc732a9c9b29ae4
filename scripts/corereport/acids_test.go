package main

import (
	"bytes"
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// made is a food of a group with its values: the least that a standing hangs on.
func made(group, name string, values ...food.Value) *food.Food {
	for i := range values {
		v := &values[i]
		v.SD, v.Low, v.High, v.Source = food.None, food.None, food.None, "a work"
		if v.State == estimate.Unknown || v.State == estimate.Below {
			v.Amount = food.None
		} else {
			v.Limit = food.None
		}
	}
	return &food.Food{ID: food.ID{Table: "t", Code: name}, Names: []food.Name{{Text: name}}, Group: group, Values: values, Edible: food.None}
}

func TestStandingOfAnAcid(t *testing.T) {
	value := func(id constituent.ID, state estimate.State, amount, limit float64) food.Value {
		return food.Value{Constituent: id, State: state, Amount: amount, Limit: limit}
	}
	for _, c := range []struct {
		of   string
		food *food.Food
		want standing
	}{
		{"its own figure", made("fruit", "Peach", value("QUINAC", estimate.Measured, 250, 0)), known},
		{"its own limit", made("fruit", "Peach", value("QUINAC", estimate.Below, 0, 10)), known},
		{"a published bound", made("fruit", "Peach", value("QUINAC", estimate.Unknown, 0, 40)), bounded},
		{"a published bound that tells little", made("fruit", "Peach", value("QUINAC", estimate.Unknown, 0, 600)), open},
		{"a published bound of all acids", made("tea drink", "Tea", value("OA", estimate.Unknown, 0, 0.014)), bounded},
		{"a rule for its kind", made("fruit", "Pear"), bounded},
		{"a rule that there is none in the group", made("citrus fruit", "Lemon"), bounded},
		{"what the group holds at most is no answer", made("fruit", "Gooseberry"), open},
	} {
		assert.Equal(t, c.want, standingOf(food.Enter(c.food, nil), "QUINAC"), c.of)
	}
}

func TestAFoodStandsAsItsWorstAcid(t *testing.T) {
	value := func(id constituent.ID) food.Value {
		return food.Value{Constituent: id, State: estimate.Measured, Amount: 100}
	}
	foods := []*food.Food{
		made("fruit", "Peach", value("CITAC"), value("MALAC")),
		made("fruit", "Plum", value("MALAC")),                    // citric acid by the rule for plums
		made("fruit", "Gooseberry", value("CITAC")),              // malic acid unknown
		made("wine", "Red wine", value("CITAC"), value("MALAC")), // tartaric acid leads and is unknown
		made("vinegar", "Vinegar", value("ACEAC"), value("CITAC"), value("MALAC")),
		made("milk", "Milk", value("CITAC")), // not asked
	}
	c := acidsLead.measure(foods)
	assert.Equal(t, 5, c.asked)
	assert.Equal(t, map[standing]int{known: 2, bounded: 1, open: 2}, c.all)
	assert.Equal(t, []string{"Gooseberry (malic acid)", "Red wine (tartaric acid)"}, c.left)
	assert.InDelta(t, 0.6, c.share(known, byKin, bounded), 1e-9)
	assert.InDelta(t, 0.4, c.share(known, byKin), 1e-9)
	var out bytes.Buffer
	require.NoError(t, c.write(&out))
	assert.Contains(t, out.String(), "answered by a published work 60 %, measured or by kin 40 %")
}

// What is drunk keeps the answers that it has, nine in ten of them. Most that are open are
// fruits such as elderberry, peels and infusions, of which no figure has been found.
func TestTheAcidsOfWhatIsDrunk(t *testing.T) {
	foods, err := coreFoods(context.Background())
	require.NoError(t, err)
	lead, quinate := acidsLead.measure(foods), quinic.measure(foods)
	assert.Subset(t, lead.groups, []string{"fruit", "citrus fruit", "fruit juice", "citrus juice", "vegetable juice", "vinegar", "wine", "tea drink"})
	assert.GreaterOrEqual(t, lead.asked, 212)
	assert.GreaterOrEqual(t, lead.share(known, byKin, bounded), 0.9)
	assert.GreaterOrEqual(t, lead.share(known, byKin), 0.74)
	assert.GreaterOrEqual(t, lead.all[byKin], 20)
	assert.GreaterOrEqual(t, quinate.share(known, byKin, bounded), 0.7)
}
