package assaytest

import (
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// Component gives a component that must be there.
func Component(t testing.TB, a *assay.Assay, name string) assay.Component {
	t.Helper()
	for _, c := range a.Components {
		if c.Name == name {
			return c
		}
	}
	require.Fail(t, "no component "+name)
	return assay.Component{}
}

// NotesOf gives the texts of the notes of a kind about a constituent.
func NotesOf(a *assay.Assay, kind string, id constituent.ID) (texts []string) {
	for _, n := range a.Notes {
		if n.Kind == kind && n.Constituent == id {
			texts = append(texts, n.Text)
		}
	}
	return texts
}

// Printed gives a figure as SR28 prints it; a value below its limit is
// printed 0.
func Printed(f *food.Food, id constituent.ID) (float64, bool) {
	v, ok := f.Value(id)
	if ok && v.State == estimate.Below {
		return 0, true
	}
	return v.Amount, ok
}

// RowsSumTo checks that a constituent is what its rows hold of it and, if it has parts,
// what these are together, in every draw.
func RowsSumTo(t testing.TB, pot *ledger.Pot, c *constituent.Constituent) {
	t.Helper()
	const rounding = 1e-9
	total := pot.Total(c.ID)
	rows, children := make([]float64, pot.N), make([]float64, pot.N)
	for row := range pot.Rows {
		for d, x := range pot.Of(row, c.ID) {
			rows[d] += x
		}
	}
	for _, child := range constituent.Sums().Children(c.ID) {
		for d, x := range pot.Total(child.ID) {
			children[d] += x
		}
	}
	for d := range total {
		slack := rounding * max(1, total[d])
		require.InDelta(t, total[d], rows[d], slack, "rows of %s, draw %d", c.ID, d)
		if c.Kind == constituent.Parent {
			require.InDelta(t, total[d], children[d], slack, "parts of %s, draw %d", c.ID, d)
		}
	}
}

// WholeDrink is a drink for some servings (%d) with nested components, steps, an own food,
// volumes, a share and an eaten garnish.
const WholeDrink = `
drink: "Slow Ferry"
serves: %d
foods:
  house:
    name: "House oat"
    group: plant drink
    per: 100 ml
    density: 1.03 g/ml
    values: {FAT: 1.5 g, CHOAVL: 5.6 g, SUGAR: 3.1 g, PROCNT: 0.8 g, NA: 40 mg}
    source: "invented"
components:
  syrup:
    ingredients: [200 g core:orange-juice, 120 g core:sugar-white, 2.0 g ± 0.1 g core:citric-acid]
    steps:
      - reduce: {by: 12 %%}
      - strain: {collect: 240 g, through: cloth}
  base:
    ingredients: [150 g core:milk-whole, 60 g ± 3 g syrup, 5 %% core:honey]
    steps:
      - heat: {code: 2151}
      - split: {keep: {FAT: 20 %% ± 5 %%}, because: "invented"}
build: [36 g ± 2 g core:espresso, 90 g base, 25 g syrup, 60 ml own:house]
finish:
  - chill: {melt: 20 g ± 5 g}
garnish:
  - {food: "core:honey", amount: 3 g, eaten: true}
`
