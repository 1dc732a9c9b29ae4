package curdling_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
	"sipsum/internal/curdling"
	"sipsum/internal/food"
)

func TestMapHoldsTheDrinkAndRunsOneWay(t *testing.T) {
	m := sourMilk(t, 40, 6)
	grid, err := m.Map()
	require.NoError(t, err)
	require.Len(t, grid.Cells, len(grid.Shares))
	assert.Equal(t, []float64{0, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75, 2}, grid.Doses)
	assert.InDelta(t, 100.0/126, grid.Shares[4], 1e-12, "the drink as it stands")
	assert.InDelta(t, 400.0/426, grid.Shares[8], 1e-12)
	stand, err := m.Stand()
	require.NoError(t, err)
	assert.InDelta(t, stand.PH[0], grid.Cells[4][4].PH, 1e-9)
	assert.Equal(t, stand.Smooth, grid.Cells[4][4].Smooth)
	seen := map[curdling.Verdict]bool{}
	for i, row := range grid.Cells {
		require.Len(t, row, len(grid.Doses))
		assert.Equal(t, curdling.Smooth, row[0].Verdict, "milk and water")
		for k, cell := range row {
			seen[cell.Verdict] = true
			if k > 0 {
				assert.Less(t, cell.PH, row[k-1].PH, "more acid")
				assert.LessOrEqual(t, cell.Smooth, row[k-1].Smooth)
			}
			if i > 0 && k > 0 {
				assert.Greater(t, cell.PH, grid.Cells[i-1][k].PH, "more milk")
				assert.GreaterOrEqual(t, cell.Smooth, grid.Cells[i-1][k].Smooth)
			}
		}
	}
	assert.Len(t, seen, 3, "the map has all verdicts: %v", seen)
}

// A cell is the solve of the pooled ions, far from the averaged pH.
func TestCellsPoolIons(t *testing.T) {
	m := sourMilk(t, 40, 6)
	grid, err := m.Map()
	require.NoError(t, err)
	const row, column = 7, 8 // three times the milk, twice the acid
	pooled := acid.New(0)
	pooled.Pour(milk(t), 3*100.0/1000)
	pooled.Pour(lemon(t), 2*6.0/1000)
	pooled.Solvent += 0.020
	s, err := acid.NewSolver(curdling.BenchCelsius)
	require.NoError(t, err)
	want, err := s.Solve(pooled, acid.State{})
	require.NoError(t, err)
	assert.InDelta(t, want.PH, grid.Cells[row][column].PH, 1e-9)
}

// The share of smooth draws counts the draws whose solved pH is above the curdling
// pH: the shortcut of one charge balance finds the same.
func TestSmoothIsTheShareAboveTheCurdlingPH(t *testing.T) {
	for _, grams := range []float64{1, 2, 3, 4, 5, 6, 8} {
		m := sourMilk(t, 40, grams)
		for d := range m.Sour.Solutions { // a spread of the acid
			m.Sour.Solutions[d].Acids[acid.Must("citric")] *= 0.8 + 0.4*m.Place[len(m.Place)-1-d]
		}
		stand, err := m.Stand()
		require.NoError(t, err)
		above := 0
		for d := 1; d <= draws; d++ {
			if stand.PH[d] > stand.Curdling.Low+m.Place[d]*(stand.Curdling.High-stand.Curdling.Low) {
				above++
			}
		}
		assert.InDelta(t, float64(above)/draws, stand.Smooth, 1e-12, "%g g", grams)
	}
}

func TestWaysOutAreSmallestAndWork(t *testing.T) {
	m := sourMilk(t, 60, 3)
	stand, err := m.Stand()
	require.NoError(t, err)
	require.NotEqual(t, curdling.Smooth, stand.Verdict)
	ways, err := m.Ways()
	require.NoError(t, err)
	found := map[curdling.Kind]curdling.Way{}
	for i, w := range ways {
		assert.GreaterOrEqual(t, w.Smooth, 0.95)
		if i > 0 {
			assert.GreaterOrEqual(t, w.Change, ways[i-1].Change, "the least change first")
		}
		found[w.Kind] = w
		t.Logf("%s: %.2f g, %.0f °C: pH %.2f, smooth %.2f, change %.4f", w.Kind, w.Grams, w.Celsius, w.PH, w.Smooth, w.Change)
	}
	for _, kind := range []curdling.Kind{curdling.LessSour, curdling.MoreMilk, curdling.Cooler, curdling.Buffer} {
		assert.Contains(t, found, kind)
	}
	// With that change the drink is smooth; with a tenth less of it, it is not.
	for share, want := range map[float64]bool{1: true, 0.9: false} {
		less := sourMilk(t, 60, 3-share*found[curdling.LessSour].Grams)
		got, err := less.Stand()
		require.NoError(t, err)
		assert.Equal(t, want, got.Verdict == curdling.Smooth, "%.1f of the acid taken out", share)

		cooler := sourMilk(t, 60-share*(60-found[curdling.Cooler].Celsius), 3)
		got, err = cooler.Stand()
		require.NoError(t, err)
		assert.Equal(t, want, got.Verdict == curdling.Smooth, "%.1f of the way cooler", share)

		milky := sourMilk(t, 60, 3)
		milky.Milk = same(milk(t), 100+share*found[curdling.MoreMilk].Grams, draws+1)
		got, err = milky.Stand()
		require.NoError(t, err)
		assert.Equal(t, want, got.Verdict == curdling.Smooth, "%.1f of the milk", share)
	}
}

func TestSmoothDrinkNeedsNoWayOut(t *testing.T) {
	ways, err := sourMilk(t, 25, 0.1).Ways()
	require.NoError(t, err)
	assert.Empty(t, ways)
}

// What a titration did not reach is not called smooth.
func TestBelowTheTitrationNothingIsSmooth(t *testing.T) {
	m := sourMilk(t, 10, 3)
	stand, err := m.Stand()
	require.NoError(t, err)
	require.Equal(t, curdling.Smooth, stand.Verdict)
	m.Lowest = stand.PH[0] + 0.1
	stand, err = m.Stand()
	require.NoError(t, err)
	assert.Equal(t, curdling.Curdles, stand.Verdict)
}

func TestPartsThatAreMissing(t *testing.T) {
	m := sourMilk(t, 40, 3)
	m.Sour = curdling.Part{}
	_, err := m.Map()
	assert.ErrorContains(t, err, "sour part")
	_, err = m.Ways()
	assert.Error(t, err)
	_, err = m.Stand()
	assert.Error(t, err)
}

func TestWhichFoodsCurdle(t *testing.T) {
	for _, c := range []struct {
		name, group, allergen, protein string
		curdles                        bool
	}{
		{"Milk, whole, 3.25 % fat", "milk", "", "casein", true},
		{"Cream, light", "cream", "", "casein", true},
		{"Oat drink, plain", "plant drink", "", "oat", true},
		{"Barista drink", "plant drink", "soya", "soya", true},
		{"Coconut milk, canned", "plant drink", "", "coconut", true},
		{"Rice drink, unsweetened", "plant drink", "", "", true},
		{"Acid whey", "whey", "", "", false},
		{"Lemon juice", "fruit juice", "", "", false},
	} {
		f := &food.Food{Names: []food.Name{{Language: "en", Text: c.name}}, Group: c.group}
		if c.allergen != "" {
			f.Marks = []food.Mark{{Kind: "allergen", Value: c.allergen}}
		}
		p, curdles := curdling.Of(f)
		assert.Equal(t, c.curdles, curdles, c.name)
		if c.protein == "" {
			assert.Nil(t, p, c.name)
		} else if assert.NotNil(t, p, c.name) {
			assert.Equal(t, c.protein, p.ID)
		}
	}
}

func BenchmarkMap(b *testing.B) {
	m := sourMilk(b, 40, 3)
	for b.Loop() {
		if _, err := m.Map(); err != nil {
			b.Fatal(err)
		}
	}
}
