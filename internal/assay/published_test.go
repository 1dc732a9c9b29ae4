package assay_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
)

// SR28 01077 prints 61 kcal, 4.80 g of carbohydrate by difference and
// 5.05 g of lactose in 100 g: each figure comes back as printed, and a card does
// not print less carbohydrate than sugars.
func TestMilkComesBackAsPublished(t *testing.T) {
	a := run(t, srLibrary(t), "drink: \"Plain\"\nserves: 1\nbuild: [100 g sr:01077]\n", 200)
	assert.InDelta(t, 4.80, figure(t, a.PerServing, constituent.Carbohydrate).Mean, 0.005)
	assert.InDelta(t, 5.05, figure(t, a.PerServing, constituent.Sugar).Mean, 0.005)
	assert.Len(t, notesOf(a, "negative rest", constituent.Carbohydrate), 1)

	_, reported := a.PerServing.Find("CHOCDF-other")
	assert.False(t, reported, "a negative rest is nothing that is there")

	card, _, known := a.AmountOf(constituent.Carbohydrate)
	sugar, _, _ := a.AmountOf(constituent.Sugar)
	assert.True(t, known)
	assert.GreaterOrEqual(t, card, sugar)

	// 17, 17 and 37 kJ/g (Regulation (EU) No 1169/2011, Annex XIV) of what is there.
	assert.InEpsilon(t, 17*3.15+17*5.05+37*3.25, figure(t, a.PerServing, constituent.Energy).Mean, 0.005)
	assert.InDelta(t, 61, a.TableEnergy[1].Amount, 0.01)
	assert.Empty(t, a.TableEnergy[1].Missing)
}

// Beside a food that has a rest, milk's negative one takes nothing from it: the
// rest that is printed is that food's, and contributions sum to it.
func TestNegativeRestIsNotTakenFromAnother(t *testing.T) {
	a := run(t, srLibrary(t), `
drink: "Side by Side"
serves: 1
foods:
  pulp: {name: "Pulp", per: 100 g, values: {WATER: 90 g, CHOCDF: 10 g, CHOAVL: 7 g, SUGAR: 7 g, FIBTG: 1 g}, source: "invented"}
build: [100 g sr:01077, 100 g own:pulp]
`, 200)
	rest := figure(t, a.PerServing, "CHOCDF-other")
	assert.InDelta(t, 2, rest.Mean, 0.01)
	assert.Len(t, rest.Contributions, 1)
	assert.InDelta(t, rest.Mean, rest.Contributions[0].Mean, 1e-9)
	assert.InDelta(t, 14.80, figure(t, a.PerServing, constituent.Carbohydrate).Mean, 0.01)
	components := 0.0
	for _, c := range a.Components {
		components += figure(t, c.Constituents, "CHOCDF-other").Mean
	}
	assert.InDelta(t, rest.Mean, components, 1e-9)
}

// Water that boils off takes no energy with it; a food without a figure is
// named.
func TestTableEnergyFollowsTheSteps(t *testing.T) {
	a := run(t, srLibrary(t), `
drink: "Thickened"
serves: 2
foods:
  oat: {name: "Oat drink", group: plant drink, per: 100 g, values: {WATER: 90 g, CHOAVL: 7 g, FAT: 1.5 g, PROCNT: 1 g}, source: "invented"}
components:
  thick milk:
    ingredients: [200 g sr:01077]
    steps:
      - reduce: {to: 120 g}
build: [60 g thick milk, 50 g own:oat]
`, 20)
	assert.InDelta(t, 61.0/2, a.TableEnergy[1].Amount, 0.01)
	assert.Equal(t, []string{"own:oat"}, a.TableEnergy[1].Missing)
}
