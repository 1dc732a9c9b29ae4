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
