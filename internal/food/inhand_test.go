package food_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
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
