package food_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// Where there is no sugar none was added; where somebody published the added sugars, that
// stands.
func TestAddedSugarsOfNoSugarAreNone(t *testing.T) {
	none := food.Enter(sr("x", "Water", "other", map[constituent.ID]float64{"WATER": 100, "SUGAR": 0, "CHOCDF": 0}), nil).Cell(constituent.AddedSugar)
	assert.True(t, none.Known)
	assert.Zero(t, none.Amount)
	assert.Equal(t, estimate.Calculated, none.State)

	published := food.Enter(sr("x", "Soda", "soft drink", map[constituent.ID]float64{"WATER": 90, "SUGAR": 9, "SUGAD": 8}), nil).Cell(constituent.AddedSugar)
	assert.InDelta(t, 0.08, published.Amount, 1e-3)
	assert.False(t, food.Stated(published.Bound), "what is known has no bound")
	assert.Empty(t, published.Why)
}

// Whey: as much lactose as all its sugars (PMC5434364, Table 1; SR28 01112 has 5.14 g of
// sugars and 93.42 g of water). It is all in one place, none of it in the nameless rest.
func TestTheRestOfWheysSugarsIsLactose(t *testing.T) {
	p := food.Enter(sr("01112", "Whey, acid, fluid", "whey", map[constituent.ID]float64{
		"WATER": 93.42, "PROCNT": 0.76, "FAT": 0.09, "ASH": 0.61, "CHOCDF": 5.12, "SUGAR": 5.12,
	}), nil)
	assert.InDelta(t, 0.0512, p.Cell("LACS").Amount, 1e-4)
	assert.InDelta(t, p.Cell("SUGAR").Amount, p.Cell("LACS").Amount, 1e-12)
	assert.Zero(t, p.Cell(constituent.RestOf("SUGAR")).Amount)
	assert.Equal(t, estimate.Calculated, p.Cell("LACS").State)
}

// A name for a row of the file that is not there is a mistake of ours.
func TestAMissingRowOfUnmeasuredPanics(t *testing.T) {
	assert.PanicsWithValue(t, "food: acid_unmeasured.csv lacks nothing of the kind", func() { food.Unmeasured("nothing of the kind") })
}

// A share that the food's label says is known, and needs no bound.
func TestAStatedShareOfAddedSugarIsKnown(t *testing.T) {
	f := sr("x", "Oat drink", "plant drink", map[constituent.ID]float64{"WATER": 90, "SUGAR": 4, "CHOCDF": 7})
	f.Marks = []food.Mark{{Kind: "caution", Value: "gluten"}, {Kind: "added sugar", Share: 0.25, Source: "invented"}}
	p := food.Enter(f, nil)
	cell := p.Cell(constituent.AddedSugar)
	assert.Equal(t, 0.25, p.AddedShare)
	assert.InDelta(t, 0.25*p.Cell(constituent.Sugar).Amount, cell.Amount, 1e-12)
	assert.False(t, food.Stated(cell.Bound))
	assert.Equal(t, "added share of the sugars: invented", cell.Why)
}

// A share of sugars that nobody knows is not 0 g: a soft drink of 11.2 g of carbohydrate
// (SR28 14142), all of whose sugars are added, may hold as much.
func TestAShareOfUnknownSugarsIsNotKnown(t *testing.T) {
	soda := map[constituent.ID]float64{"WATER": 88.8, "PROCNT": 0, "FAT": 0, "ASH": 0, "FIBTG": 0, "CHOCDF": 11.2}
	f := sr("14142", "Carbonated beverage, grape soda", "soft drink", soda)
	f.Marks = []food.Mark{{Kind: "added sugar", Share: 1, Source: "invented"}}
	p := food.Enter(f, nil)
	cell := p.Cell(constituent.AddedSugar)
	assert.False(t, cell.Known)
	assert.InDelta(t, 0.112, cell.Bound, 1e-9, "no more than all its carbohydrate")
	f.Marks[0].Share = 0
	none := food.Enter(f, nil).Cell(constituent.AddedSugar)
	assert.True(t, none.Known, "no share of anything is nothing")
	assert.False(t, food.Stated(none.Bound))
}
