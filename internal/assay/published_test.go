package assay_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
)

// SR28 01077 prints 61 kcal, 4.80 g of carbohydrate by difference and 5.05 g of
// lactose in 100 g. No part is more than its whole: the lactose was analysed, the
// difference was not, so the lactose makes the carbohydrate and the note says what was
// published. The 100.25 g that the row then makes are scaled to 100 g.
func TestMilkComesBackAsAnalysed(t *testing.T) {
	a := assaytest.Assay(t, assaytest.SR28(t), "drink: \"Plain\"\nserves: 1\nbuild: [100 g sr:01077]\n", 200)
	sugar := assaytest.Figure(t, a.PerServing, constituent.Sugar)
	assert.InEpsilon(t, 5.05, sugar.Mean, 0.003)
	assert.InDelta(t, sugar.Mean, assaytest.Figure(t, a.PerServing, constituent.Carbohydrate).Mean, 1e-9)
	notes := assaytest.NotesOf(a, "over total", constituent.Carbohydrate)
	assert.Len(t, notes, 1)
	assert.Contains(t, notes[0], "more than the 4.8 g published as its carbohydrate")

	card, _, known := a.AmountOf(constituent.Carbohydrate)
	onCard, _, _ := a.AmountOf(constituent.Sugar)
	assert.True(t, known)
	assert.GreaterOrEqual(t, card, onCard)

	// 17, 17 and 37 kJ/g (Regulation (EU) No 1169/2011, Annex XIV) of what is there.
	assert.InEpsilon(t, 17*3.15+17*5.05+37*3.25, assaytest.Figure(t, a.PerServing, constituent.Energy).Mean, 0.005)
	assert.InDelta(t, 61, a.TableEnergy[1].Amount, 0.01)
	assert.Empty(t, a.TableEnergy[1].Missing)
}

// Beside a food that has a rest, milk has none: the rest that is printed is that
// food's, and contributions sum to it.
func TestRestIsOfTheFoodThatHasIt(t *testing.T) {
	a := assaytest.Assay(t, assaytest.SR28(t), `
drink: "Side by Side"
serves: 1
foods:
  pulp: {name: "Pulp", per: 100 g, values: {WATER: 90 g, CHOCDF: 10 g, CHOAVL: 7 g, SUGAR: 7 g, FIBTG: 1 g}, source: "invented"}
build: [100 g sr:01077, 100 g own:pulp]
`, 200)
	rest := assaytest.Figure(t, a.PerServing, "CHOCDF-other")
	assert.InDelta(t, 2, rest.Mean, 0.01)
	assert.Len(t, rest.Contributions, 1)
	assert.InDelta(t, rest.Mean, rest.Contributions[0].Mean, 1e-9)
	assert.InEpsilon(t, 10+5.05, assaytest.Figure(t, a.PerServing, constituent.Carbohydrate).Mean, 0.001)
	components := 0.0
	for _, c := range a.Components {
		components += assaytest.Figure(t, c.Constituents, "CHOCDF-other").Mean
	}
	assert.InDelta(t, rest.Mean, components, 1e-9)
}
