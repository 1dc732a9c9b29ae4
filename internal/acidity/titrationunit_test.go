package acidity_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// titrated is an invented titration over n columns: a gram holds 0.1 mmol of acetic acid and
// 0.02 mmol of a strong ion, and draws differ by strength and meter.
func titrated(n int, lowest, highest float64) *acidity.Titration {
	t := &acidity.Titration{Of: "the liquid", Lowest: lowest, Highest: highest, PerGram: acid.New(0), Strength: estimate.Constant(n, 1), Shift: make([]float64, n)}
	t.PerGram.Acids[acid.Must("acetic")] = 1e-4
	t.PerGram.AddIon(1, 2e-5)
	t.Strength[1], t.Shift[2], t.Shift[3] = 1.1, 1e-6, -1e-6
	return t
}

// carry makes all rows of a pot carry a titrated liquid, a gram for each gram of grams.
func carry(pot *ledger.Pot, t *acidity.Titration, grams float64) {
	for row := range pot.Rows {
		pot.Drop(row)
		estimate.Fill(pot.Carry(row, t), grams)
	}
}

// A titrated liquid holds what its titration says and nothing of its composition, in as many
// rows as it may be.
func TestATitrationStandsForAllAcidsAndIons(t *testing.T) {
	f, g := assaytest.Exact("juice", "fruit juice", juice), assaytest.Exact("other", "fruit juice", juice)
	b := assaytest.NewBench(3, f, g)
	pot := b.Pot(50, f, g)
	assert.False(t, acidity.Titrated(pot, 0))
	of := titrated(4, 3, 7)
	carry(pot, of, 50)
	assert.True(t, acidity.Titrated(pot, 0) && acidity.Titrated(pot, 1))
	in := b.Lab.IonsOf(pot, pot.N)
	require.Len(t, in.Titrated, 1, "two rows of one liquid are one")
	all := heldAll(b, pot)
	for d, strong := range []float64{2e-3, 2.2e-3, 2.1e-3, 1.9e-3} {
		assert.InDelta(t, strong, all[d].Strong, 1e-12, "draw %d", d)
		assert.InDelta(t, []float64{1e-3, 1.1e-3, 1.05e-3, 1.05e-3}[d], all[d].Background, 1e-12, "a shift is an ion of either sign")
		assert.InDelta(t, []float64{0.01, 0.011, 0.01, 0.01}[d], all[d].Acids[acid.Must("acetic")], 1e-12)
		assert.Zero(t, all[d].Acids[acid.Must("citric")])
		assert.InDelta(t, pot.Total("WATER")[d]/1000, all[d].Solvent, 1e-12)
	}
	half := pot.Copy()
	half.Scale(b.Lab.Ens.Of(0.5))
	for d, held := range heldAll(b, half) {
		alike(t, sum(all[d], 0.5, all[d], 0), held)
	}
	mixed := half.Copy()
	mixed.Join(b.Pot(50, f))
	assert.False(t, acidity.Titrated(mixed, 2))
	fresh := heldAll(b, b.Pot(50, f))
	for d, held := range heldAll(b, mixed) {
		alike(t, sum(all[d], 0.5, fresh[d], 1), held)
	}
	other := b.Pot(50, g)
	carry(other, titrated(4, 4, 6), 50)
	other.Join(half)
	assert.Len(t, b.Lab.IonsOf(other, 2).Titrated, 2, "another titration is another liquid")
}

// A curve goes from a liquid's own pH to the end point, 8.1, and as far as titrations tell:
// 0.3 beyond themselves (row "beyond titration").
func TestHowFarATitrationTells(t *testing.T) {
	f := assaytest.Exact("juice", "fruit juice", juice)
	b := assaytest.NewBench(3, f)
	of := func(ranges ...[2]float64) acidity.Ions {
		pot := b.Drawer.NewPot()
		for _, r := range ranges {
			one := b.Pot(10, f)
			carry(one, titrated(4, r[0], r[1]), 10)
			pot.Join(one)
		}
		return b.Lab.IonsOf(pot, 1)
	}
	for _, c := range []struct {
		name        string
		in          acidity.Ions
		own         float64
		first, last float64
	}{
		{"no titration", b.Lab.IonsOf(b.Pot(10, f), 1), 3.6, 3.6, 8.1},
		{"own is above the end point", b.Lab.IonsOf(b.Pot(10, f), 1), 8.4, 8.4, 8.4},
		{"with base only", of([2]float64{3.6, 8.2}), 3.6, 3.6, 8.1},
		{"ends early", of([2]float64{3.6, 6.0}), 3.6, 3.6, 6.3},
		{"with acid too", of([2]float64{2.5, 8.2}), 3.6, 2.5, 8.1},
		{"hardly below its own", of([2]float64{3.4, 8.2}), 3.6, 3.6, 8.1},
		{"two: as far as each", of([2]float64{2.0, 7.0}, [2]float64{3.0, 9.0}), 3.6, 3.0, 7.3},
	} {
		first, last := c.in.Span(c.own)
		assert.InDelta(t, c.first, first, 1e-9, c.name)
		assert.InDelta(t, c.last, last, 1e-9, c.name)
	}
	both := of([2]float64{2.0, 7.0}, [2]float64{3.0, 9.0})
	for pH, told := range map[float64]bool{2.6: false, 2.8: true, 5: true, 7.2: true, 7.4: false} {
		if got := both.Within(pH); told {
			assert.Equal(t, pH, got)
		} else {
			assert.True(t, math.IsNaN(got), "%g", pH)
		}
	}
	assert.Equal(t, 1.0, b.Lab.IonsOf(b.Pot(10, f), 1).Within(1), "a composition speaks of any")
}
