package food_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// milk is SR28 01077: its lactose is more than its carbohydrate by difference.
func milk(sugar float64) *food.Food {
	return sr("01077", "Milk, whole", "milk", map[constituent.ID]float64{
		"WATER": 88.13, "PROCNT": 3.15, "FAT": 3.25, "FASAT": 1.865, "CHOCDF": 4.80, "SUGAR": sugar, "LACS": sugar, "ASH": 0.67, "FIBTG": 0,
	})
}

// noteOf gives the text of the only note of a kind.
func noteOf(t *testing.T, p *food.Profile, kind string) string {
	t.Helper()
	var texts []string
	for _, n := range p.Notes {
		if n.Kind == kind {
			texts = append(texts, n.Text)
		}
	}
	require.Len(t, texts, 1, kind)
	return texts[0]
}

// A difference is no measurement: the lactose that somebody analysed makes the
// carbohydrate, and the note says what was published.
func TestTotalByDifferenceGivesWayToItsParts(t *testing.T) {
	p := food.Enter(milk(5.05), nil)
	assert.InDelta(t, p.Cell("SUGAR").Amount, p.Cell("CHOCDF").Amount, 1e-12)
	assert.InEpsilon(t, 0.0505, p.Cell("SUGAR").Amount, 0.003, "100.25 g are scaled to 100 g")
	assert.InEpsilon(t, 0.8813, p.Cell("WATER").Amount, 0.003)
	assert.Zero(t, p.Cell("CHOCDF-other").Amount)
	assert.Zero(t, p.Cell("CHOAVL-other").Amount)
	assert.Contains(t, noteOf(t, p, "over total"), "it holds 5.05 g of lactose in 100 g, more than the 4.8 g published as its carbohydrate")
}

// A total that was measured and its parts meet: 6.0 ± 0.3 and 6.4 ± 0.3 half way.
func TestMeasuredTotalAndItsPartsMeet(t *testing.T) {
	f := sr("x", "Melon", "fruit", map[constituent.ID]float64{"WATER": 91, "SUGAR": 6.0, "GLUS": 3.0, "FRUS": 3.4, "CHOCDF": 8})
	for id, sd := range map[constituent.ID]float64{"SUGAR": 0.3, "GLUS": 0.2, "FRUS": 0.2236068} {
		stated(f, id, sd, 0)
	}
	p := food.Enter(f, nil)
	assert.InDelta(t, 0.062, p.Cell("SUGAR").Amount, 2e-5, "half way: the variances are equal")
	assert.InDelta(t, 3.0/3.4, p.Cell("GLUS").Amount/p.Cell("FRUS").Amount, 1e-9, "the parts keep their proportion")
	assert.Contains(t, noteOf(t, p, "over total"), "of fructose and glucose in 100 g, more than the 6 g published as its sugars: 6.2 g counts")
}

func TestContradictedTotalIsThatOfItsParts(t *testing.T) {
	f := sr("x", "Melon", "fruit", map[constituent.ID]float64{"WATER": 88, "SUGAR": 4.0, "GLUS": 4.0, "FRUS": 5.0, "CHOCDF": 11})
	for id, sd := range map[constituent.ID]float64{"SUGAR": 0.3, "GLUS": 0.2, "FRUS": 0.2} {
		stated(f, id, sd, 0)
	}
	assert.InDelta(t, 0.09, food.Enter(f, nil).Cell("SUGAR").Amount, 1e-6)
}

// Tables whose figures were each measured for itself print rows of up to 103 g (Ciqual 2020):
// what is too much is the unlike water of two samples. The other figures stand as published,
// and the water gives way as far as two of its standard deviations; what that leaves is scaled.
func TestWaterGivesWayBeforeFiguresAreScaled(t *testing.T) {
	stew := func(sdOfWater float64) *food.Profile {
		f := sr("x", "Stew", "other", map[constituent.ID]float64{"WATER": 68, "PROCNT": 11, "FAT": 8, "CHOAVL": 10, "FIBTG": 4, "ASH": 1.5})
		stated(f, "WATER", sdOfWater, 0)
		return food.Enter(f, nil)
	}
	p := stew(1.5) // may give 3.0 of the 2.5 g
	for id, want := range map[constituent.ID]float64{"WATER": 0.655, "PROCNT": 0.11, "FAT": 0.08, "CHOAVL": 0.10, "FIBTG": 0.04, "ASH": 0.015} {
		assert.InDelta(t, want, p.Cell(id).Amount, 1e-9, "%s", id)
	}
	p = stew(0.75) // gives 1.5 g; 101 g are left
	assert.InDelta(t, 0.665/1.01, p.Cell("WATER").Amount, 1e-9)
	assert.InDelta(t, 0.11/1.01, p.Cell("PROCNT").Amount, 1e-9)
	assert.InDelta(t, 0.0075*0.665/0.68/1.01, p.Cell("WATER").SD, 1e-9, "its spread shrinks with it")
}

// limited makes values below a limit in g/100 g.
func limited(f *food.Food, limit float64, ids ...constituent.ID) {
	for i := range f.Values {
		if slices.Contains(ids, f.Values[i].Constituent) {
			f.Values[i].Amount, f.Values[i].Limit, f.Values[i].State = food.None, limit, estimate.Below
		}
	}
}

// SR28 14185, oolong tea: six sugars and all sugars are each below 0.005 g. Six halves of
// the limit are more than the limit of the total, and nobody has found any of them.
func TestPartsOfWhichNothingWasFoundAreWithinTheLimitOfTheirTotal(t *testing.T) {
	sugars := []constituent.ID{"SUGAR", "GLUS", "FRUS", "GALS", "SUCS", "LACS", "MALS"}
	values := map[constituent.ID]float64{"WATER": 99.84, "CHOCDF": 0.15}
	for _, id := range sugars {
		values[id] = 1
	}
	f := sr("14185", "Oolong tea", "tea drink", values)
	limited(f, 0.005, sugars...)
	p := food.Enter(f, nil)
	assert.InEpsilon(t, 0.005/2/100, p.Cell("SUGAR").Amount, 0.01)
	assert.InEpsilon(t, 0.005/2/6/100, p.Cell("MALS").Amount, 0.01)
	assert.LessOrEqual(t, p.Cell("MALS").Limit, 2.01*p.Cell("MALS").Amount)
}

// A part that somebody measured above its total's limit makes the total, which is then no
// longer drawn below that limit.
func TestAMeasuredPartLiftsATotalBelowALimit(t *testing.T) {
	for _, glucose := range []float64{0.004, 0.5} {
		f := sr("x", "Beer", "beer", map[constituent.ID]float64{"WATER": 93, "CHOCDF": 3, "SUGAR": 1, "GLUS": glucose})
		limited(f, 0.005, "SUGAR")
		p := food.Enter(f, nil)
		for _, total := range p.Totals {
			assert.Zero(t, total.Cell.Limit, "%s of glucose %g", total.Constituent.ID, glucose)
			assert.InDelta(t, p.Cell("SUGAR").Amount, total.Cell.Amount, 1e-9)
		}
		assert.GreaterOrEqual(t, p.Cell("SUGAR").Amount, 0.0025/100)
	}
}

// What arithmetic leaves of 100 g is no mass without a name.
func TestDustIsNoMass(t *testing.T) {
	p := food.Enter(sr("x", "Water and sugar", "syrup", map[constituent.ID]float64{"WATER": 33.3, "CHOCDF": 66.7 - 1e-13, "PROCNT": 0, "FAT": 0, "ASH": 0, "ALC": 0}), nil)
	assert.Zero(t, p.Cell("MASS-other").Amount)
}

// Sugars of 12.1 g and acids of 2.4 g do not go into the 12.9 g that 87.1 g of water
// leave: the water, which is what tables measure best, stands.
func TestRowThatContradictsItselfKeepsItsWater(t *testing.T) {
	values := map[constituent.ID]float64{"WATER": 87.1, "PROCNT": 0.4, "FAT": 0.1, "ASH": 0.2, "CHOCDF": 12.2, "SUGAR": 12.1, "OA": 3.2}
	f := sr("x", "Juice", "fruit juice", values)
	for id := range values {
		stated(f, id, values[id]*0.005, 0)
	}
	p := food.Enter(f, nil)
	assert.InDelta(t, 0.871, p.Cell("WATER").Amount, 1e-9)
	assert.InDelta(t, 12.1*12.9/16, 100*p.Cell("SUGAR").Amount, 1e-9)
	assert.Contains(t, noteOf(t, p, "contradiction"), "103.1 g")
}

func TestExcessMakesNoRoomForAnUnknown(t *testing.T) {
	with, without := food.Enter(milk(5.05), nil).Cell("CITAC"), food.Enter(milk(4.80), nil).Cell("CITAC")
	require.False(t, with.Known)
	assert.Positive(t, with.Bound)
	assert.InEpsilon(t, without.Bound, with.Bound, 0.1)
}

func TestRoundingOfPublishedPartsIsNotWorthANote(t *testing.T) {
	f := sr("x", "Syrup", "syrup", map[constituent.ID]float64{"WATER": 30, "CHOCDF": 70, "SUGAR": 70.2, "SUCS": 70.2})
	assert.Empty(t, food.Enter(f, nil).Notes)
}

// Milk of a table that prints 0 for less than 0.05 g: 5.4 g of sugars, all of them lactose.
// The halves of five limits are no parts that the table has printed, and the note says so.
func TestLimitsOfPartsAreToldAsSuch(t *testing.T) {
	values := map[constituent.ID]float64{"WATER": 88, "SUGAR": 5.4, "LACS": 5.4, "GLUS": 1, "FRUS": 1, "SUCS": 1, "MALS": 1}
	f := sr("x", "Milk", "milk", values)
	limited(f, 0.05, "GLUS", "FRUS", "SUCS", "MALS")
	assert.Contains(t, noteOf(t, food.Enter(f, nil), "over total"), "it holds 5.5 g of lactose, glucose, fructose and others in 100 g, half of what could be there unseen among them, more than")
	f = sr("x", "Milk", "milk", map[constituent.ID]float64{"WATER": 88, "SUGAR": 5.4, "LACS": 5.8})
	assert.NotContains(t, noteOf(t, food.Enter(f, nil), "over total"), "limits")
}
