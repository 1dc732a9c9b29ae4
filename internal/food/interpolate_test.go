package food_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// twoRoasts are a coffee as it is roasted medium and dark: citric acid was measured of both,
// potassium of the medium one alone and copied, succinic acid of one.
func twoRoasts() (medium, dark *food.Food) {
	medium = sr("medium", "Medium", "coffee bean", map[constituent.ID]float64{"CITAC": 720, "K": 2020, "FUMAC": 12})
	dark = sr("dark", "Dark", "coffee bean", map[constituent.ID]float64{"CITAC": 633, "K": 2020, "SUCAC": 25})
	for _, f := range []*food.Food{medium, dark} {
		f.ID.Table = "core"
		for i := range f.Values {
			f.Values[i].Source, f.Values[i].Ref, f.Values[i].State = "weers1995 "+f.ID.Code, "a row", estimate.Measured
		}
		stated(f, "CITAC", 70, 0)
	}
	for i := range dark.Values {
		if dark.Values[i].Constituent == "K" {
			dark.Values[i].Source, dark.Values[i].Ref = "borrowed weers1995", "medium"
		}
	}
	return medium, dark
}

func TestWhatLiesBetweenTwoRows(t *testing.T) {
	medium, dark := twoRoasts()
	for _, c := range []struct{ w, sd, amount, spread float64 }{
		{0, 0, 720, 70}, {1, 0, 633, 70}, {0.25, 0, 720 - 87.0/4, 70}, {0.75, 0.2, 720 - 3*87.0/4, math.Hypot(70, 87*0.2)},
	} {
		f := food.Between(medium, dark, c.w, c.sd)
		v, _ := f.Value("CITAC")
		assert.InDelta(t, c.amount, v.Amount, 1e-9, "%v", c)
		assert.InDelta(t, c.spread, food.Enter(f, nil).Cell("CITAC").SD*1e5, 1e-6, "%v", c)
		k, _ := f.Value("K")
		assert.Equal(t, 2020.0, k.Amount)
		assert.Equal(t, food.Enter(medium, nil).Cell("K").Row, food.Enter(f, nil).Cell("K").Row, "a copy stays one figure")
		_, has := f.Value("FUMAC")
		assert.Equal(t, c.w <= 0.5, has, "what the nearer one has")
		_, has = f.Value("SUCAC")
		assert.Equal(t, c.w > 0.5, has)
	}
	v, _ := food.Between(medium, dark, 0.25, 0).Value("CITAC")
	assert.Equal(t, "weers1995 medium dark", v.Source, "the works of both")
	assert.Equal(t, estimate.Calculated, v.State)
	v, _ = food.Between(medium, dark, 0, 0).Value("CITAC")
	assert.Equal(t, estimate.Measured, v.State)
	assert.Equal(t, 720.0, medium.Values[valueAt(medium, "CITAC")].Amount, "neither is changed")
}

func valueAt(f *food.Food, id constituent.ID) int {
	for i, v := range f.Values {
		if v.Constituent == id {
			return i
		}
	}
	return -1
}

func TestByHowMuchTwoRowsDiffer(t *testing.T) {
	medium, dark := twoRoasts()
	changes := food.Changes(medium, dark)
	assert.Len(t, changes, 1, "neither a copy nor what one of them does not say")
	assert.Equal(t, constituent.ID("CITAC"), changes[0].Constituent.ID)
	assert.InDelta(t, 633.0/720, changes[0].Times, 1e-12)
	kept := food.Kept(medium, "CITAC", 1.1, 0.05)
	v, _ := kept.Value("CITAC")
	assert.InDelta(t, 792, v.Amount, 1e-9)
	assert.InDelta(t, math.Hypot(77, 36), v.SD, 1e-9)
	v, _ = medium.Value("CITAC")
	assert.Equal(t, 720.0, v.Amount)
}
