package food_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// What is scaled to 100 g keeps its relative spread: figure, deviation and limit shrink
// alike.
func TestScalingKeepsRelativeSpreads(t *testing.T) {
	f := sr("x", "Syrup", "syrup", map[constituent.ID]float64{"WATER": 40, "CHOCDF": 64, "SUGAR": 64})
	stated(f, "WATER", 4, 0)
	stated(f, "SUGAR", 3.2, 0)
	p := food.Enter(f, nil)
	assert.InDelta(t, 0.40/1.04, p.Cell("WATER").Amount, 1e-12)
	assert.InDelta(t, 0.04/1.04, p.Cell("WATER").SD, 1e-12)
	said := ""
	for _, n := range p.Notes {
		said += n.Text + "\n"
	}
	assert.Contains(t, said, "its published parts add up to 104 g in 100 g: all are scaled to 100 g")
	for _, total := range p.Totals {
		if total.Constituent.ID == constituent.Sugar {
			assert.InDelta(t, 0.032/1.04, total.Cell.SD, 1e-12)
		}
	}
}

// A published zero has no spread, whatever stands beside it, and no class default; a one
// is a figure like any other.
func TestZeroHasNoSpread(t *testing.T) {
	f := sr("x", "Juice", "fruit juice", map[constituent.ID]float64{"WATER": 90, "SUGAR": 8, "PROCNT": 1, "FAT": 0})
	stated(f, "FAT", 0.2, 6)
	p := food.Enter(f, nil)
	assert.Zero(t, p.Cell("FAT").SD)
	assert.False(t, p.Cell("FAT").Class)
	assert.True(t, p.Cell("FAT").Exact())
	assert.Positive(t, p.Cell("PROCNT").SD)
	assert.True(t, p.Cell("PROCNT").Class)
}

// The room for an unknown sugar is what the known ones leave, and two standard deviations
// of the total and of the known parts; the rest, which is where the unknown hides, does
// not count again: 4 ± 0.3 g with 1 ± 0.1 g of glucose leave 3 + 2·√(0.3² + 0.1²) g.
func TestRoomForAnUnknownCountsEachSpreadOnce(t *testing.T) {
	f := sr("x", "Juice", "fruit juice", map[constituent.ID]float64{"WATER": 90, "SUGAR": 4, "GLUS": 1})
	stated(f, "SUGAR", 0.3, 0)
	stated(f, "GLUS", 0.1, 0)
	assert.InDelta(t, (3+2*math.Hypot(0.3, 0.1))/100, food.Enter(f, nil).Cell("SUCS").Bound, 1e-9)
}

// Protein by nitrogen: 2 ± 0.1 g × 6.25, and the factor itself lies between 5.30 and 6.38
// (Jones 1941), rectangular: width/√12.
func TestConversionCarriesTheRangeOfItsFactor(t *testing.T) {
	f := sr("x", "Nut", "nut", map[constituent.ID]float64{"WATER": 80, "NT": 2})
	stated(f, "NT", 0.1, 0)
	c := constituent.Must("NT")
	if c.Kind != constituent.Figure {
		t.Fatal("nitrogen is a figure that conversions start from")
	}
	p := food.Enter(f, nil)
	assert.InDelta(t, 0.125, p.Cell("PROCNT").Amount, 1e-9)
	assert.InDelta(t, math.Hypot(0.1*6.25, 2*(6.38-5.30)/math.Sqrt(12))/100, p.Cell("PROCNT").SD, 1e-6)
}

// Where nothing is known, 100 g are 100 g of what nobody has named, and no cell is a
// number that is none.
func TestWhatNobodyKnowsWeighsToo(t *testing.T) {
	p := food.Enter(&food.Food{ID: food.ID{Table: "own", Code: "x"}, Edible: food.None}, nil)
	for _, c := range constituent.All() {
		want := 0.0
		if c.ID == constituent.Mass || c.ID == constituent.MassOther {
			want = 1
		}
		assert.Equal(t, want, p.Cells[c.Order].Amount, c.ID)
	}
}

// One borrowed figure is fitted to what the food states like several; who lends nothing is
// not named.
func TestOneBorrowedFigureIsFittedToo(t *testing.T) {
	own := sr("own", "House", "plant drink", map[constituent.ID]float64{"FAT": 1.5, "SUGAR": 2, "PROCNT": 0.8})
	p := food.Enter(own, sr("lender", "Oat", "plant drink", map[constituent.ID]float64{"GLUS": 4}))
	assert.InDelta(t, 0.02, p.Cell("GLUS").Amount, 1e-9)
	borrowed := func(p *food.Profile) (texts []string) {
		for _, n := range p.Notes {
			if n.Kind == "borrowed" {
				texts = append(texts, n.Text)
			}
		}
		return texts
	}
	assert.Equal(t, []string{"1 value borrowed from own:lender"}, borrowed(p))
	assert.Empty(t, borrowed(food.Enter(own, sr("empty", "Oat", "plant drink", map[constituent.ID]float64{"WATER": 90}))))
}

// A part cannot vary more than its total without making another vary as much: glucose of
// 1 ± 0.6 g in sugars of 4 ± 0.3 g leaves no more for an unknown than the total's own spread.
func TestAMeasuredTotalHoldsTheSpreadOfItsParts(t *testing.T) {
	f := sr("x", "Juice", "fruit juice", map[constituent.ID]float64{"WATER": 90, "SUGAR": 4, "GLUS": 1})
	stated(f, "SUGAR", 0.3, 0)
	stated(f, "GLUS", 0.6, 0)
	bound := 100 * food.Enter(f, nil).Cell("SUCS").Bound
	assert.LessOrEqual(t, bound, 3+2*math.Sqrt(2)*0.3)
	assert.GreaterOrEqual(t, bound, 3+2*0.3)
}

// Protein that somebody published stands, whatever its nitrogen would make of it.
func TestAPublishedValueStandsOverAConversion(t *testing.T) {
	f := sr("x", "Nut", "nut", map[constituent.ID]float64{"WATER": 80, "NT": 2, "PROCNT": 11})
	p := food.Enter(f, nil)
	assert.InDelta(t, 0.11, p.Cell("PROCNT").Amount, 1e-9)
	assert.Equal(t, estimate.Measured, p.Cell("PROCNT").State)
}

// Ciqual 2020 finds no polyols in milk; where somebody has analysed one all the same, the
// rule says nothing of the total.
func TestARuleOfZeroGivesWayToAPartThatIsThere(t *testing.T) {
	milk := map[constituent.ID]float64{"WATER": 88, "PROCNT": 3.2, "FAT": 3.3, "CHOCDF": 4.8, "ASH": 0.7}
	assert.Equal(t, estimate.Assumed, food.Enter(sr("x", "Milk", "milk", milk), nil).Cell("POLYL").State)
	milk["SORTL"] = 500
	p := food.Enter(sr("x", "Milk", "milk", milk), nil)
	assert.InDelta(t, 0.005, p.Cell("POLYL").Amount, 1e-9)
	assert.NotEqual(t, estimate.Assumed, p.Cell("POLYL").State)
	assert.Empty(t, p.Notes, "nothing contradicts the total")
}
