package food_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// inHand is a food that a drink file describes, with a standard deviation for each figure: 0 is
// what ± 0 states, and None what states no ±.
func inHand(figures map[constituent.ID][2]float64) *food.Food {
	f := &food.Food{ID: food.ID{Table: food.Own, Code: "x"}, Edible: food.None}
	for _, c := range constituent.All() {
		if x, ok := figures[c.ID]; ok {
			f.Values = append(f.Values, food.Value{Constituent: c.ID, Amount: x[0], SD: x[1], Low: food.None, High: food.None, Limit: food.None, Source: food.Own})
		}
	}
	return f
}

// What a designer states of a food in hand gives way as it varies, and ± 0 not at all; what
// nobody stated is the rest.
func TestAFoodInHandSaysWhatGivesWay(t *testing.T) {
	p := food.Enter(inHand(map[constituent.ID][2]float64{"WATER": {70, 1}, "SUGAR": {20, 0}, "SUCS": {15, food.None}, "CITAC": {2000, 0}, "FAT": {3, 0.5}, "FASAT": {1, food.None}}), nil)
	y, ok := p.Yield()
	assert.True(t, ok)
	at := func(id constituent.ID) int { return constituent.Must(id).Order }
	assert.InDelta(t, 1e-4, y.Said[at("WATER")], 1e-12)
	assert.InDelta(t, 0.25e-4, y.Said[at("FASAT")]+y.Said[at("FAT-other")], 1e-12, "fat's own, shared out to its parts")
	for _, exact := range []constituent.ID{"SUCS", "SUGAR-other", "CITAC"} {
		assert.Zero(t, y.Said[at(exact)], exact)
		assert.False(t, y.Unsaid[at(exact)], exact)
	}
	assert.True(t, y.Other, "what is of no known kind is the rest of 100 g")
	lemon := inHand(map[constituent.ID][2]float64{"WATER": {90, 1}})
	lemon.ID.Table = "sr"
	_, ok = food.Enter(lemon, nil).Yield()
	assert.False(t, ok, "the figures of one table give way alike")
}

// A trace is not zero: nobody's rule makes an assumed zero of it, and no lender fills it with a
// figure of another food.
func TestATraceIsNotZero(t *testing.T) {
	f := inHand(map[constituent.ID][2]float64{"WATER": {88, 1}, "SUGAR": {9, 1}})
	f.Group = "fruit juice"
	without := food.Enter(f, nil).Cell("CAFFN")
	assert.True(t, without.Known, "no fruit juice has any")
	f.Values = append(f.Values, food.Value{Constituent: "CAFFN", Amount: food.None, Low: food.None, High: food.None, SD: food.None, Limit: food.None, State: estimate.Trace, Source: food.Own})
	lender := sr("lender", "Cola", "fruit juice", map[constituent.ID]float64{"WATER": 90, "CAFFN": 10})
	for _, from := range []*food.Food{nil, lender} {
		assert.False(t, food.Enter(f, from).Cell("CAFFN").Known)
	}
	f.Values[len(f.Values)-1].Limit = 2
	cell := food.Enter(f, lender).Cell("CAFFN")
	assert.True(t, cell.Known)
	assert.InDelta(t, 2e-5, cell.Limit, 1e-15)
}
