package titration_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/amount"
	"sipsum/internal/burette"
	"sipsum/internal/estimate"
	"sipsum/internal/titration"
)

// 10 g of a juice with 0.9 % of citric and 0.5 % of malic acid hold 1.41 + 0.75 mmol of protons, of
// which its potassium has taken 0.26: 19 ml of 0.1 mol/l. Every kit tells more of them than the
// table does, a syringe the least.
func TestWhatAKitTellsOfAPot(t *testing.T) {
	f := tabled(0.9, 0.5)
	b := lay(600, f)
	o := titration.Foresee(b.Lab, amount.Hand{Ens: b.Lab.Ens}, "sour", b.Pot(100, f))
	require.NotNil(t, o)
	assert.Equal(t, "sour", o.Of)
	assert.InDelta(t, 19, o.Ml, 0.6)
	assert.Equal(t, 0.1, o.Plan.Molarity)
	require.Len(t, o.Kits, 3)
	require.NotNil(t, o.Proof, "a syringe is off by a twentieth")
	half := map[string]float64{}
	for i, a := range o.Acids {
		if a.ID != "CITAC" {
			continue
		}
		for _, k := range o.Kits {
			half[k.Name] = k.Half[i]
			assert.Less(t, k.Half[i], 0.8*(a.Recipe.High-a.Recipe.Low)/2, k.Name)
		}
	}
	assert.Less(t, half[burette.ByBurette], half[burette.BySyringe])
}

// Of what protein buffers, of what holds no water and of what is certain nothing is foreseen.
func TestNothingIsForeseenOfWhatNoTitrationTells(t *testing.T) {
	b := lay(600)
	hand := amount.Hand{Ens: b.Lab.Ens}
	assert.Nil(t, titration.Foresee(b.Lab, hand, "thick", b.Pot(100, thick)), "protein")
	assert.Nil(t, titration.Foresee(b.Lab, hand, "dry", b.Pot(100, dry)), "no water")
	assert.Nil(t, titration.Foresee(b.Lab, hand, "plain", b.Pot(100, plain)), "no acid")
}

// What was titrated before has a spectrum for its ions: a second curve is asked nothing, and counts no
// acid twice.
func TestASecondTitrationAsksNothing(t *testing.T) {
	f := tabled(0.9, 0.5)
	b := lay(600, f)
	pot := b.Pot(100, f)
	b.take(t, pot, sour(t, 1, 0.4))
	require.Len(t, b.rig.Told, 1)
	was := estimate.Summarise(pot.Total("CITAC"))
	b.take(t, pot, sour(t, 1, 0.4))
	assert.Len(t, b.rig.Told, 1)
	assert.Equal(t, was, estimate.Summarise(pot.Total("CITAC")))
}

// A curve that was begun proposes its next points above the last one, and what they make of the acids;
// with enough points it counts.
func TestABegunCurveProposesItsNextPoints(t *testing.T) {
	f := tabled(0.9, 0.5)
	b := lay(600, f)
	b.take(t, b.Pot(100, f), "titration: [[0 ml, 2.85], [1.4 ml, 3.02], [2.8 ml, 3.2], [4.2 ml, 3.39]], base: 0.1 mol/l, sample: 10.0 g")
	require.Len(t, b.rig.Told, 1)
	require.True(t, b.rig.Told[0].TooFew)
	o := b.rig.Told[0].Outlook()
	require.NotNil(t, o.Next)
	assert.Equal(t, 8, o.Few)
	assert.GreaterOrEqual(t, len(o.Next.Then), 3, "as many as are missing")
	assert.InDelta(t, o.Next.Total-4.2, o.Next.Ml, 1e-9)
	assert.Greater(t, o.Next.Ml, 0.0)
	assert.Greater(t, o.Next.PH, 3.39)
	assert.Less(t, o.Next.PH, 9.0)
	assert.Greater(t, o.Next.Narrows, 0.1)
}
