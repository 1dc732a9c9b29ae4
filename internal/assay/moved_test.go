package assay_test

import (
	"fmt"
	"testing"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
	"sipsum/internal/constituent"
)

// What tests of this package still share with those that have gone to their own rooms.

func component(t *testing.T, a *assay.Assay, name string) assay.Component {
	t.Helper()
	return assaytest.Component(t, a, name)
}

func notesOf(a *assay.Assay, kind string, id constituent.ID) []string {
	return assaytest.NotesOf(a, kind, id)
}

// glass assays 100 g of a food at a temperature.
func glass(t testing.TB, lib assaytest.Library, food string, celsius int) *chemistry.Chemistry {
	t.Helper()
	text := fmt.Sprintf("drink: x\nserves: 1\nat: %d °C\nbuild: [100 g %s]\n", celsius, food)
	return assaytest.Assay(t, lib, text, 1000).Chemistry
}

// Two foods of one constituent each, so that only the amounts are uncertain.
const weighed = `
drink: "On the Scale"
serves: 1
foods:
  wet: {name: "Water of the test", per: 100 g, values: {WATER: 100 g}, source: "invented"}
  dry: {name: "Sugar of the test", per: 100 g, values: {WATER: 0 g, SUCS: 100 g}, source: "invented"}
build: [200 g ± 4 g sd own:wet, 100 g ± 6 g sd own:dry]
%s
`

// boiled is a syrup whose evaporation nobody has weighed.
const boiled = `
drink: "Boiled Down"
serves: 1
components:
  syrup:
    ingredients: [200 g ± 6 g core:orange-juice, 120 g ± 4 g core:sugar-white, 3 g ± 0.3 g core:citric-acid, 30 g ± 3 g core:lemon-juice]
    steps:
      - reduce: {by: 15 %% ± 8 %%}
    %s
build: [60 g ± 1 g syrup, 100 g core:milk-whole]
`

// squash is a juice whose figures leave the acidity wide.
const squash = `
drink: "Bench Squash"
serves: 1
components:
  squash:
    ingredients: [200 g ± 6 g core:orange-juice, 40 g ± 3 g core:sugar-white, 30 g ± 3 g core:lemon-juice]
    measured: {%s}
build: [100 g squash]
`
