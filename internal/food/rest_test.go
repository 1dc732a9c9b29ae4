package food_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// stated gives a value of a food a standard deviation and a number of samples.
func stated(f *food.Food, id constituent.ID, sd float64, n int) {
	for i := range f.Values {
		if f.Values[i].Constituent == id {
			f.Values[i].SD, f.Values[i].N = sd, n
		}
	}
}

// A designer who writes "1.5 g ± 0.1 g" means it, for a total as for a part.
func TestStatedSpreadWithoutSamplesStands(t *testing.T) {
	f := sr("x", "Oat drink", "plant drink", map[constituent.ID]float64{"FAT": 1.5, "PROCNT": 0.8, "WATER": 92, "CHOAVL": 5.7})
	stated(f, "FAT", 0.1, 0)
	stated(f, "PROCNT", 0.02, 0)
	p := food.Enter(f, nil)
	assert.InDelta(t, 0.0002, p.Cell("PROCNT").SD, 1e-9)
	assert.False(t, p.Cell("PROCNT").Class)
	assert.InDelta(t, 0.001, p.Cell("FAT-other").SD, 1e-9, "the whole of the fat has the spread of the fat")
	assert.False(t, p.Cell("FAT-other").Class)
}

// sd(rest)² = sd(parent)² − Σ sd(part)²: 0.5² = 0.3² + 0.4².
func TestRestTakesWhatTheParentsSpreadLeaves(t *testing.T) {
	f := sr("x", "Cream", "cream", map[constituent.ID]float64{"WATER": 64, "FAT": 30, "FASAT": 19, "PROCNT": 2, "CHOCDF": 4})
	stated(f, "FAT", 0.5, 0)
	stated(f, "FASAT", 0.3, 0)
	p := food.Enter(f, nil)
	assert.InDelta(t, 0.11, p.Cell("FAT-other").Amount, 1e-3)
	assert.InDelta(t, 0.004, p.Cell("FAT-other").SD, 1e-6)
	stated(f, "FASAT", 0.6, 0)
	rest := food.Enter(f, nil).Cell("FAT-other")
	assert.True(t, rest.Class, "the parts leave nothing of the spread")
	assert.InDelta(t, rest.Amount*food.ClassSpread(constituent.Must("FAT"), "cream"), rest.SD, 1e-9)
}

// 100 g are 100 g: what is all sucrose leaves no room for fibre, and a
// carbohydrate by difference is as sure as what it is the difference of.
func TestBoundIsTheLeastThatAnyTotalLeaves(t *testing.T) {
	f := sr("19335", "Sugars, granulated", "sugar", map[constituent.ID]float64{"WATER": 0.02, "CHOCDF": 99.97, "SUGAR": 99.8, "SUCS": 99.8, "ASH": 0.01})
	stated(f, "SUGAR", 0.29, 7)
	stated(f, "SUCS", 0.27, 8)
	cell := food.Enter(f, nil).Cell("FIBTG")
	require.False(t, cell.Known)
	// 0.17 g have no name; two standard deviations of the sucrose are 0.54 g.
	assert.Less(t, cell.Bound, 0.01)
	assert.GreaterOrEqual(t, cell.Bound, 0.0017)
	assert.Contains(t, cell.Why, "balance")
}

func TestAddedSugarsAreNotKnownWhereSugarsAreNot(t *testing.T) {
	p := food.Enter(&food.Food{ID: food.ID{Table: "own", Code: "x"}, Edible: food.None}, nil)
	cell := p.Cell(constituent.AddedSugar)
	assert.False(t, cell.Known)
	assert.True(t, math.IsNaN(cell.Bound), "nothing bounds them, which is not zero")

	p = food.Enter(limeJuice(), nil)
	cell = p.Cell(constituent.AddedSugar)
	assert.False(t, cell.Known)
	assert.InDelta(t, p.Cell(constituent.Sugar).Amount, cell.Bound, 1e-12, "no more than all sugars")
}

// A syrup of a third water has two thirds of sugar, however much sucrose varies from
// food to food; nobody's own ± is touched.
func TestDefaultIsNoWiderThanWhatStandsBesideIt(t *testing.T) {
	f := sr("x", "Syrup", "syrup", map[constituent.ID]float64{"WATER": 32.1, "SUCS": 67.9, "CHOCDF": 67.9})
	stated(f, "WATER", 0.8, 0)
	cell := food.Enter(f, nil).Cell("SUCS")
	require.True(t, cell.Class)
	assert.InDelta(t, 0.008, cell.SD, 1e-6)
	stated(f, "SUCS", 2, 0)
	assert.InDelta(t, 0.02, food.Enter(f, nil).Cell("SUCS").SD, 1e-6)
}
