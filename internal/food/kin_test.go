package food_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// rhubarb has acids of 2 g/100 g: by its kin three quarters of them are malic, and a fifth
// oxalic (Australian table, F007628: 1.5 of 2.0 g, and 0.4 g).
func rhubarb(values map[constituent.ID]float64) *food.Food {
	values["WATER"], values["CHOCDF"] = 93, 5
	return sr("09307", "Rhubarb, raw", "fruit", values)
}

func TestKinShareWhatIsMissing(t *testing.T) {
	p := food.Enter(rhubarb(map[constituent.ID]float64{"OA": 2}), nil)
	malic := p.Cell("MALAC")
	assert.InEpsilon(t, 0.015, malic.Amount, 0.05)
	assert.InEpsilon(t, 0.004, p.Cell("OXALAC").Amount, 0.05)
	assert.Equal(t, food.ByKin, malic.By)
	assert.Equal(t, estimate.Calculated, malic.State)
	assert.Contains(t, malic.Why, "afcd:F007628")
	assert.Greater(t, malic.SD, 0.1*malic.Amount)
	assert.Empty(t, p.Cell("OA").By)
	canned := rhubarb(map[constituent.ID]float64{"OA": 2}) // no rule of data/bounds.csv speaks of it
	canned.Names[0].Text = "Rhubarb, canned"
	quinic := food.Enter(canned, nil).Cell("QUINAC")
	assert.False(t, quinic.Known, "no row of its kin holds any")
	assert.Contains(t, quinic.Why, "not found in afcd:F007628")
	assert.InDelta(t, 0.0005, quinic.Bound, 0.0002, "half of the last place, 50 mg, of as much acid")
}

func TestWhatIsMeasuredStands(t *testing.T) {
	p := food.Enter(rhubarb(map[constituent.ID]float64{"OA": 2, "MALAC": 1000, "CITAC": 300}), nil)
	assert.InDelta(t, 0.01, p.Cell("MALAC").Amount, 1e-4)
	assert.Empty(t, p.Cell("MALAC").By)
	assert.InEpsilon(t, 0.004, p.Cell("OXALAC").Amount, 0.05, "its share, and not all that is left")
	tight := food.Enter(rhubarb(map[constituent.ID]float64{"OA": 2, "CITAC": 1000}), nil)
	assert.InDelta(t, 0.02, tight.Cell("OA").Amount, 1e-4, "never more than its total")
	assert.Less(t, tight.Cell("MALAC").Amount+tight.Cell("OXALAC").Amount, 0.0101)
	full := food.Enter(rhubarb(map[constituent.ID]float64{"OA": 2, "MALAC": 1900}), nil)
	assert.False(t, full.Cell("OXALAC").Known, "what is left is within the total's own spread")
}

func TestALimitStandsBeforeKin(t *testing.T) {
	f := rhubarb(map[constituent.ID]float64{"OA": 2})
	f.Values = append(f.Values, food.Value{Constituent: "MALAC", Amount: food.None, SD: food.None, Low: food.None, High: food.None, Limit: 500, State: estimate.Unknown})
	p := food.Enter(f, nil)
	assert.False(t, p.Cell("MALAC").Known)
	assert.LessOrEqual(t, p.Cell("MALAC").Bound, 0.005)
	assert.Equal(t, food.ByKin, p.Cell("OXALAC").By)
}

func TestATotalIsThatOfItsOwner(t *testing.T) {
	own := &food.Food{ID: food.ID{Table: food.Own, Code: "mix"}, Names: []food.Name{{Text: "House mix"}}, Group: "fruit", Edible: food.None}
	p := food.Enter(own, rhubarb(map[constituent.ID]float64{"OA": 2}))
	assert.Equal(t, food.ByKin, p.Cell("MALAC").By, "the total is rhubarb's")
	alone := food.Enter(own, nil)
	assert.Empty(t, alone.Cell("MALAC").By)
}

// A titratable acidity stands for a total where acids of weight are missing, and not for
// the trifles beside what was measured. 1.9 g as citric acid take 0.0297 mol of base, which
// is 1.9 g of acids that are malic and oxalic for the most part.
func TestATitrationStandsForATotal(t *testing.T) {
	p := food.Enter(rhubarb(map[constituent.ID]float64{"titratable": 1.9}), nil)
	acids := p.Cell("OA")
	require.Equal(t, food.ByKin, acids.By)
	assert.InEpsilon(t, 0.019, acids.Amount, 0.05)
	assert.Equal(t, food.ByKin, p.Cell("MALAC").By)
	trifles := food.Enter(rhubarb(map[constituent.ID]float64{"titratable": 3, "MALAC": 1000, "OXALAC": 300}), nil)
	assert.Empty(t, trifles.Cell("CITAC").By)
}

func TestATraceIsNotShared(t *testing.T) {
	f := rhubarb(map[constituent.ID]float64{})
	f.Values = append(f.Values, food.Value{Constituent: "OA", Amount: food.None, SD: food.None, Low: food.None, High: food.None, Limit: 0.05, State: estimate.Trace})
	assert.Empty(t, food.Enter(f, nil).Cell("MALAC").By)
}

func TestWithKinMarksWhatAFoodGains(t *testing.T) {
	f := rhubarb(map[constituent.ID]float64{"OA": 2, "CITAC": 100})
	own := food.WithKin(f)
	malic, ok := own.Value("MALAC")
	require.True(t, ok)
	assert.Equal(t, food.ByKin, malic.By)
	assert.InEpsilon(t, 1500, malic.Amount, 0.05)
	citric, _ := own.Value("CITAC")
	assert.Empty(t, citric.By)
	_, stated := f.Value("MALAC")
	assert.False(t, stated, "the table's own food stays as published")
}
