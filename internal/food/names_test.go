package food_test

import (
	"cmp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/embedded"
	"sipsum/internal/food"
)

func TestAFoodWithoutANameIsCalledByItsCode(t *testing.T) {
	assert.Equal(t, "sr:09160", (&food.Food{ID: food.ID{Table: "sr", Code: "09160"}}).Name())
	assert.Equal(t, "Lime juice, raw", limeJuice().Name())
}

// The counterpart in SR28 of tap water is 14411 (its own name: Beverages, water, tap,
// drinking).
func TestCounterpartsAreThoseOfTheCrosswalk(t *testing.T) {
	list := food.Counterparts("water-tap")
	assert.Equal(t, food.ID{Table: "sr", Code: "14411"}, list[0])
	assert.Contains(t, list, food.ID{Table: "ciqual", Code: "18066"})
	assert.Empty(t, food.Counterparts("no such food"))
	grade := map[food.ID]string{}
	for _, row := range embedded.Rows("crosswalk.csv") {
		if row.Text("core") == "lemon-juice" {
			grade[food.ID{Table: row.Text("table"), Code: row.Text("code")}] = cmp.Or(row.Text("match"), "not judged")
		}
	}
	var grades []string
	for _, id := range food.Counterparts("lemon-juice") {
		grades = append(grades, grade[id])
	}
	assert.True(t, slices.IsSorted(grades), "the best match first: %v", grades)
	assert.Greater(t, len(slices.Compact(grades)), 2)
}

// One coffee variety is written in two ways; a word within another is none.
func TestOtherWordsOfTheTrade(t *testing.T) {
	assert.Contains(t, food.OtherWords(" Washed  GEISHA beans"), "washed gesha beans")
	assert.Contains(t, food.OtherWords("gesha"), "geisha")
	assert.Contains(t, food.OtherWords("oat milk"), "oat drink")
	assert.Empty(t, food.OtherWords("geishas"))
	assert.Empty(t, food.OtherWords("espresso"))
}
