package composition_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
)

// Water that boils off takes no energy with it; a food without a figure is
// named.
func TestTableEnergyFollowsTheSteps(t *testing.T) {
	a := assaytest.Assay(t, assaytest.SR28(t), `
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

// A pack that states kJ alone counts in both sums, by 4.184 kJ/kcal (Canada's Food and Drug
// Regulations, table to B.01.402): no food is in the one and not in the other.
func TestAnEnergyInOneUnitIsConverted(t *testing.T) {
	const drink = `
drink: "Two packs"
serves: 1
foods:
  joule: {name: "Oat drink", group: plant drink, per: 100 g, values: {WATER: 90 g, CHOAVL: 7 g, FAT: 1.5 g, PROCNT: 1 g, ENERC: 200 kJ}, source: "invented"}
  calorie: {name: "Rye drink", group: plant drink, per: 100 g, values: {WATER: 90 g, CHOAVL: 7 g, FAT: 1.5 g, PROCNT: 1 g, ENERC_KCAL: 50 kcal}, source: "invented"}
build: [100 g own:joule, 100 g own:calorie]
`
	a := assaytest.Assay(t, assaytest.SR28(t), drink, 20)
	assert.InDelta(t, 200+50*4.184, a.TableEnergy[0].Amount, 0.01)
	assert.InDelta(t, 200/4.184+50, a.TableEnergy[1].Amount, 0.01)
	for _, e := range a.TableEnergy {
		assert.Empty(t, e.Missing)
		assert.True(t, e.Converted)
	}
}
