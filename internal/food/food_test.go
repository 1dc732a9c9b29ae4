package food_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// sr builds a food from published SR28 figures per 100 g, in hand: what one row's figures
// make of each other is not hidden by what foods of its name may have (anywhere_test.go).
func sr(code, name, group string, values map[constituent.ID]float64) *food.Food {
	f := &food.Food{ID: food.ID{Table: food.Own, Code: code}, Names: []food.Name{{Text: name}}, Group: group, Edible: food.None}
	for _, c := range constituent.All() {
		if amount, ok := values[c.ID]; ok {
			f.Values = append(f.Values, food.Value{
				Constituent: c.ID, Amount: amount, SD: food.None, Low: food.None, High: food.None, Limit: food.None, State: estimate.Measured,
			})
		}
	}
	return f
}

// SR28 09160, lime juice, raw.
func limeJuice() *food.Food {
	return sr("09160", "Lime juice, raw", "citrus juice", map[constituent.ID]float64{
		"WATER": 90.79, "PROCNT": 0.42, "FAT": 0.07, "ASH": 0.31, "CHOCDF": 8.42, "FIBTG": 0.4, "SUGAR": 1.69,
		"SUCS": 0.48, "GLUS": 0.60, "FRUS": 0.61, "LACS": 0, "MALS": 0, "GALS": 0, "CA": 14, "P": 14, "K": 117, "NA": 2,
	})
}

func TestMassClosesAndParentsAreSums(t *testing.T) {
	p := food.Enter(limeJuice(), nil)
	for _, c := range constituent.All() {
		if c.Kind != constituent.Parent {
			continue
		}
		sum := 0.0
		for _, leaf := range constituent.Sums().Leaves(c.ID) {
			sum += p.Cells[leaf.Order].Amount
		}
		assert.InDelta(t, sum, p.Cell(c.ID).Amount, 1e-12, c.ID)
	}
	assert.InDelta(t, 1, p.Cell(constituent.Mass).Amount, 1e-12)
	assert.InDelta(t, 0.9079, p.Cell("WATER").Amount, 1e-3)
}

func TestCarbohydrateByDifferenceLeavesTheAcidsInAvailable(t *testing.T) {
	p := food.Enter(limeJuice(), nil)
	// 8.42 − 1.69 − 0.4 = 6.33 g that SR28 does not name: mostly citric acid.
	assert.InDelta(t, 0.0633, p.Cell("CHOAVL-other").Amount, 2e-4)
	citric := p.Cell("CITAC")
	require.False(t, citric.Known, "nobody has measured it in this row")
	assert.Greater(t, citric.Bound, 0.0633)
	assert.Less(t, citric.Bound, 0.107, "two standard deviations of the total and its parts, not more")
	assert.NotEmpty(t, citric.Why)
}

func TestLiteratureAcidTakesItsShareOfTheRest(t *testing.T) {
	f := limeJuice()
	f.Values = append(f.Values, food.Value{Constituent: "CITAC", Amount: 4590, SD: 690, N: 6, Low: food.None, High: food.None, Limit: food.None, State: estimate.Measured})
	p := food.Enter(f, nil)
	assert.InDelta(t, 0.0633-0.0459, p.Cell("CHOAVL-other").Amount, 2e-4)
	assert.InDelta(t, 0.0459, p.Cell("OA").Amount, 2e-4)
	assert.InDelta(t, 0.0069, p.Cell("CITAC").SD, 1e-4)
}

func TestPhosphateIsBoundedByPhosphorusAndNeverFilled(t *testing.T) {
	p := food.Enter(limeJuice(), nil)
	cell := p.Cell("phosphate")
	require.False(t, cell.Known)
	assert.Greater(t, cell.Bound, 3.066*14e-5)
}

func TestSmallSamplesKeepTheClassDefaultAsFloor(t *testing.T) {
	f := limeJuice()
	for i := range f.Values {
		if f.Values[i].Constituent == "K" {
			f.Values[i].SD, f.Values[i].N = 0.1, 2
		}
	}
	cell := food.Enter(f, nil).Cell("K")
	assert.True(t, cell.Class)
	assert.Greater(t, cell.SD, 0.1e-5)
}

func TestRangeBecomesSpread(t *testing.T) {
	f := sr("x", "Lime juice", "citrus juice", map[constituent.ID]float64{"WATER": 90, "CITAC": 5000})
	for i := range f.Values {
		if f.Values[i].Constituent == "CITAC" {
			f.Values[i].Low, f.Values[i].High, f.Values[i].N = 4000, 7000, 10
		}
	}
	// d₂(10) = 3.078, tables of control-chart factors after Tippett (1925) Biometrika 17:364.
	assert.InDelta(t, 3000/3.078/1e5, food.Enter(f, nil).Cell("CITAC").SD, 2e-6)
}

func TestTraceIsUniformUpToItsLimit(t *testing.T) {
	f := limeJuice()
	f.Values = append(f.Values, food.Value{Constituent: "ALC", Amount: food.None, SD: food.None, Low: food.None, High: food.None, Limit: 0.05, State: estimate.Below})
	cell := food.Enter(f, nil).Cell("ALC")
	assert.True(t, cell.Known)
	assert.InDelta(t, 0.00025, cell.Amount, 1e-6)
	assert.InDelta(t, 0.0005, cell.Limit, 1e-6)
	assert.Zero(t, cell.SD, "the limit is all of its spread")
	assert.Equal(t, estimate.Below, cell.State)
}

func TestWaterIsWhatTheProximatesLeave(t *testing.T) {
	f := sr("x", "Oat drink", "plant drink", map[constituent.ID]float64{"FAT": 1.5, "CHOAVL": 5.6, "SUGAR": 3.1, "PROCNT": 0.8, "NA": 40})
	p := food.Enter(f, nil)
	assert.InDelta(t, 0.921, p.Cell("WATER").Amount, 1e-9)
	assert.Equal(t, estimate.Calculated, p.Cell("WATER").State)
	assert.InDelta(t, 0.025, p.Cell("CHOAVL-other").Amount, 1e-9)
}

func TestFillBorrowsAndFitsStatedTotals(t *testing.T) {
	own := sr("own", "House", "plant drink", map[constituent.ID]float64{"FAT": 1.5, "CHOAVL": 5.6, "SUGAR": 2, "PROCNT": 0.8})
	lender := sr("lender", "Oat", "plant drink", map[constituent.ID]float64{"MALS": 3, "GLUS": 1, "K": 50, "WATER": 80})
	p := food.Enter(own, lender)
	assert.InDelta(t, 0.015, p.Cell("MALS").Amount, 1e-9, "3 of 4 g borrowed sugars, fitted to 2 g")
	assert.InDelta(t, 0.02, p.Cell("SUGAR").Amount, 1e-9)
	assert.Equal(t, lender.ID, p.Cell("K").From)
	assert.InDelta(t, 0.921, p.Cell("WATER").Amount, 1e-9, "water is never borrowed")
}

func TestPureSubstanceHasNothingElse(t *testing.T) {
	f := &food.Food{ID: food.ID{Table: "core", Code: "citric-acid"}, Chemical: true, Group: "acid", Values: []food.Value{
		{Constituent: "CITAC", Amount: 1e5, SD: food.None, Low: food.None, High: food.None, Limit: food.None, State: estimate.Calculated},
	}}
	p := food.Enter(f, nil)
	assert.Equal(t, 1.0, p.Cell("CITAC").Amount)
	assert.True(t, p.Cell("CITAC").Exact())
	assert.True(t, p.Cell("MALAC").Known)
	assert.Zero(t, p.Cell("MALAC").Amount)
	assert.Zero(t, p.Cell("WATER").Amount)
}

func TestSaltBecomesSodium(t *testing.T) {
	f := sr("x", "Broth", "other", map[constituent.ID]float64{"WATER": 95, "NACL": 1})
	// 22.990 / 58.44 of the salt is sodium (IUPAC atomic weights).
	assert.InDelta(t, 0.3934e-2, food.Enter(f, nil).Cell("NA").Amount, 1e-5)
}

func TestNothingKnownStaysUnknown(t *testing.T) {
	p := food.Enter(&food.Food{ID: food.ID{Table: "own", Code: "x"}, Edible: food.None}, nil)
	assert.False(t, p.Cell("WATER").Known)
	assert.True(t, math.IsNaN(p.Cell("CITAC").Bound))
}

func TestSpreadCannotExceedWhatTheRangeAllows(t *testing.T) {
	f := sr("x", "Lime juice", "citrus juice", map[constituent.ID]float64{"WATER": 90, "CITAC": 5000})
	for i := range f.Values {
		if f.Values[i].Constituent == "CITAC" {
			f.Values[i].Low, f.Values[i].High, f.Values[i].N, f.Values[i].SD = 4000, 7000, 10, 9000
		}
	}
	// 3000/2·√(10/9) by the inequality of Popoviciu (1935) for a sample of ten.
	assert.InDelta(t, 1581.139/1e5, food.Enter(f, nil).Cell("CITAC").SD, 1e-6)
}

func TestFoodsShareARowOnlyWhereTheyShareAMeasurement(t *testing.T) {
	a, b := limeJuice(), limeJuice()
	b.ID.Code = "09161"
	for i := range a.Values { // a table's own note on a value, such as a derivation code, is no row
		a.Values[i].Source, a.Values[i].Ref = "src1", "A"
		b.Values[i].Source, b.Values[i].Ref = "src1", "A"
	}
	assert.NotEqual(t, food.Enter(a, nil).Cell("K").Row, food.Enter(b, nil).Cell("K").Row)

	core := limeJuice()
	core.ID = food.ID{Table: "core", Code: "lime-juice"}
	for i := range core.Values {
		core.Values[i].Source, core.Values[i].Ref = "sr28", "09160"
	}
	a.ID.Table = "sr"
	assert.Equal(t, food.Enter(a, nil).Cell("K").Row, food.Enter(core, nil).Cell("K").Row)
}

// A figure that a core food has from another food of the table is one measurement for
// both, and so is what its total leaves.
func TestABorrowedFigureIsItsLenders(t *testing.T) {
	medium, dark := limeJuice(), limeJuice()
	medium.ID, dark.ID = food.ID{Table: "core", Code: "medium"}, food.ID{Table: "core", Code: "dark"}
	for i := range dark.Values {
		medium.Values[i].Source = "src1"
		dark.Values[i].Source, dark.Values[i].Ref = "borrowed src1", "medium"
	}
	lender, borrower := food.Enter(medium, nil), food.Enter(dark, nil)
	assert.Equal(t, lender.Cell("K").Row, borrower.Cell("K").Row)
	assert.Equal(t, "borrowed from core:medium", borrower.Cell("K").Why)
	assert.Equal(t, estimate.Calculated, borrower.Cell("K").State)
	require.NotEmpty(t, borrower.Notes)
	assert.Equal(t, "borrowed", borrower.Notes[0].Kind)

	dark.ID.Table = "own" // only the core table keeps such works
	assert.Equal(t, "own:dark", food.Enter(dark, nil).Cell("K").Row)
}

// What a step makes stands in no table: it is called in words, and rests on our own works.
func TestWhatAStepMakesIsCalledInWords(t *testing.T) {
	made := food.ID{Code: "acids of burnt sugar"}
	assert.Equal(t, "acids of burnt sugar", made.String())
	assert.Equal(t, "core", made.Works())
	assert.Equal(t, "sr", food.ID{Table: "sr", Code: "01077"}.Works())
}

// What is true of a group is read from its row, and nothing is true of a food without one.
func TestFactsOfGroups(t *testing.T) {
	is := func(fact func(food.Group) bool) []string { return food.GroupsThat(fact) }
	assert.Equal(t, []string{"water"}, is(func(g food.Group) bool { return g.Water }))
	assert.Equal(t, []string{"milk", "cream", "cultured milk", "whey", "egg"}, is(func(g food.Group) bool { return g.OfAnimals }), "FDA Food Code 1-201.10")
	assert.Equal(t, []string{"milk", "cream", "cultured milk"}, is(func(g food.Group) bool { return g.Curdles }), "the casein of whey has curdled already")
	assert.Equal(t, []string{"coffee bean", "coffee drink"}, is(func(g food.Group) bool { return g.Coffee }))
	assert.Equal(t, []string{"tea leaf", "tea drink"}, is(func(g food.Group) bool { return g.Tea }))
	assert.Equal(t, []string{"coffee bean", "tea leaf"}, is(func(g food.Group) bool { return g.Dose }))
	assert.Equal(t, []string{"coffee drink", "tea drink"}, is(func(g food.Group) bool { return g.Infused }))
	assert.Equal(t, []string{"other"}, is(func(g food.Group) bool { return !g.Solid && !g.Liquid }), "some of them pour")
	assert.True(t, limeJuice().Facts().Liquid)
	assert.Zero(t, sr("x", "Nobody's", "", nil).Facts())
	assert.Zero(t, sr("x", "Nobody's", "no such group", nil).Facts())
}

// A trace is treated as a value below a limit; a limit beside a measured amount is not its
// spread.
func TestOnlyATraceOrLessIsDrawnUpToItsLimit(t *testing.T) {
	for state, trace := range map[estimate.State]bool{estimate.Trace: true, estimate.Below: true, estimate.Measured: false} {
		f := limeJuice()
		f.Values = append(f.Values, food.Value{Constituent: "ALC", Amount: 0.04, SD: 0.001, Low: food.None, High: food.None, Limit: 0.05, State: state})
		cell := food.Enter(f, nil).Cell("ALC")
		assert.Equal(t, trace, cell.Limit > 0, "%v", state)
		if trace {
			assert.InDelta(t, 0.00025, cell.Amount, 1e-6)
		} else {
			assert.InDelta(t, 0.0004, cell.Amount, 1e-6)
			assert.Positive(t, cell.SD)
		}
	}
}

// Whatever stands beside an unknown is no amount of it; its limit is its bound.
func TestAnUnknownHasNoAmount(t *testing.T) {
	f := limeJuice()
	f.Group = "other" // no rule of a group knows better
	f.Values = append(f.Values, food.Value{Constituent: "ALC", Amount: 0.3, SD: 0.1, Limit: 0.5, Low: food.None, High: food.None, State: estimate.Unknown, Source: "a label"})
	cell := food.Enter(f, nil).Cell("ALC")
	assert.False(t, cell.Known)
	assert.Zero(t, cell.Amount)
	assert.Zero(t, cell.SD)
	assert.InDelta(t, 0.005, cell.Bound, 1e-12)
	assert.Equal(t, "limit stated by a label", cell.Why)
}

// A range without a number of samples is what a designer writes: rectangular, its width/√12
// (JCGM 100:2008, 4.3.7).
func TestARangeWithoutSamplesIsRectangular(t *testing.T) {
	f := sr("x", "Lime juice", "citrus juice", map[constituent.ID]float64{"WATER": 90, "CITAC": 5000})
	for i := range f.Values {
		if f.Values[i].Constituent == "CITAC" {
			f.Values[i].Low, f.Values[i].High = 4000, 7000
		}
	}
	assert.InDelta(t, 3000/math.Sqrt(12)/1e5, food.Enter(f, nil).Cell("CITAC").SD, 1e-9)
}

// A borrowed figure is counted by its lender: those that are there, in the note.
func TestBorrowedFiguresAreCounted(t *testing.T) {
	f := limeJuice()
	f.ID = food.ID{Table: "core", Code: "dark"}
	for i := range f.Values {
		if id := f.Values[i].Constituent; id == "K" || id == "CA" || id == "LACS" {
			f.Values[i].Source, f.Values[i].Ref = "borrowed src1", "medium"
		}
	}
	notes := food.Enter(f, nil).Notes
	require.NotEmpty(t, notes)
	assert.Equal(t, "2 values borrowed from core:medium", notes[0].Text, "a zero is nothing to speak of")
}

// A total is borrowed where the food says nothing of its parts, and not over them.
func TestNoTotalIsBorrowedOverOwnParts(t *testing.T) {
	lender := sr("lender", "Oat", "plant drink", map[constituent.ID]float64{"SUGAR": 5, "K": 50})
	own := map[constituent.ID]float64{"FAT": 1.5, "PROCNT": 0.8}
	assert.InDelta(t, 0.05, food.Enter(sr("own", "House", "plant drink", own), lender).Cell("SUGAR").Amount, 1e-9)
	own["GLUS"] = 3
	p := food.Enter(sr("own", "House", "plant drink", own), lender)
	assert.InDelta(t, 0.03, p.Cell("SUGAR").Amount, 1e-9)
	assert.Equal(t, lender.ID, p.Cell("K").From)
}

// Own carbohydrate of 4 g holds borrowed sugars that nobody has stated a total of, two floors
// down: 3 + 3 g shrink to 2 + 2.
func TestBorrowedPartsFarBelowAreFittedToo(t *testing.T) {
	own := sr("own", "House", "plant drink", map[constituent.ID]float64{"CHOAVL": 4, "FAT": 1, "PROCNT": 1})
	p := food.Enter(own, sr("lender", "Oat", "plant drink", map[constituent.ID]float64{"GLUS": 3, "MALS": 3}))
	assert.InDelta(t, 0.02, p.Cell("GLUS").Amount, 1e-9)
	assert.InDelta(t, 0.02, p.Cell("MALS").Amount, 1e-9)
	assert.Contains(t, p.Cell("MALS").Why, "scaled to the stated total")
}

// No polyol is more than a third of a fruit's carbohydrate, since all of them are not
// (data/bounds.csv).
func TestAPartIsNoMoreThanItsTotalCouldBe(t *testing.T) {
	values := map[constituent.ID]float64{"WATER": 76, "CHOCDF": 22, "SUGAR": 2, "PROCNT": 1, "ASH": 1}
	f := sr("x", "Plum", "fruit", values)
	for id := range values {
		stated(f, id, 0, 0)
	}
	p := food.Enter(f, nil)
	require.InDelta(t, 0.33*0.22, p.Cell("POLYL").Bound, 1e-6)
	assert.LessOrEqual(t, p.Cell("SORTL").Bound, p.Cell("POLYL").Bound)
	assert.Equal(t, "no more than all that POLYL could be", p.Cell("SORTL").Why)
}

// Two values lie at most half their range · √2 from their mean (Popoviciu 1935, n = 2).
func TestTheRangeOfTwoBoundsTheirSpread(t *testing.T) {
	f := sr("x", "Lime juice", "citrus juice", map[constituent.ID]float64{"WATER": 90, "CITAC": 5000})
	for i := range f.Values {
		if f.Values[i].Constituent == "CITAC" {
			f.Values[i].Low, f.Values[i].High, f.Values[i].N, f.Values[i].SD = 2000, 8000, 2, 9000
		}
	}
	assert.InDelta(t, 3000*math.Sqrt2/1e5, food.Enter(f, nil).Cell("CITAC").SD, 1e-6)
}
