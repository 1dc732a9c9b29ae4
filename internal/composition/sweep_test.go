package composition_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ledger/ledgertest"
)

// Every food of the core table, 100 g of it alone: no figure may say what cannot be.
// "Up to" is never below the mean nor below the interval, no part is more than its
// total, nothing is more than 100 g, and 100 g are 100 g.
func TestNoBoundOfACoreFoodIsAbsurd(t *testing.T) {
	lib := assaytest.Core(t)
	ids := make([]food.ID, 0, len(lib))
	for id := range lib {
		ids = append(ids, id)
	}
	slices.SortFunc(ids, func(a, b food.ID) int { return strings.Compare(a.Code, b.Code) })
	require.Greater(t, len(ids), 400)
	for _, id := range ids {
		a := assaytest.Assay(t, lib, fmt.Sprintf("drink: \"Alone\"\nserves: 1\nbuild: [100 g %s]\n", id), 60)
		for _, list := range []composition.Composition{a.PerServing, a.Per100g, a.Per100ml, a.Components[0].Constituents} {
			soundEnds(t, id, list)
		}
		soundMass(t, id, a)
		soundRow(t, id, a)
	}
}

// soundEnds checks the ends of a composition against each other.
func soundEnds(t *testing.T, id food.ID, list composition.Composition) {
	t.Helper()
	const rounding = 1 + 1e-9
	grams := func(x float64, c *constituent.Constituent) float64 { return x / c.PerGram }
	for _, f := range list {
		at := fmt.Sprintf("%s: %s", id, f.Constituent.ID)
		if math.IsNaN(f.UpTo) {
			assert.True(t, f.Partial && math.IsNaN(f.WithBounds), "%s: no end although all is known", at)
		} else {
			assert.GreaterOrEqual(t, f.UpTo*rounding, f.High, "%s: up to below the interval", at)
			assert.GreaterOrEqual(t, f.UpTo*rounding, f.WithBounds, "%s: up to below the mean with bounds", at)
			assert.GreaterOrEqual(t, f.WithBounds*rounding, f.Mean, "%s: with bounds below the mean", at)
		}
		if !f.Partial {
			assert.Equal(t, f.Mean, f.WithBounds, "%s: bounds although all is known", at)
			assert.Equal(t, 1.0, f.Coverage, "%s: covered in part although all is known", at)
		}
		total, ok := list.Find(f.Constituent.Parent)
		if !ok {
			continue
		}
		c, up := f.Constituent, total.Constituent
		assert.LessOrEqual(t, grams(f.Mean, c), grams(total.Mean, up)*rounding+1e-12, "%s: a part is more than %s", at, up.ID)
		assert.LessOrEqual(t, grams(f.High, c), grams(total.High, up)*rounding+1e-12, "%s: a part is more than %s", at, up.ID)
		if !math.IsNaN(total.UpTo) && !math.IsNaN(f.UpTo) {
			assert.LessOrEqual(t, grams(f.UpTo, c), grams(total.UpTo, up)*rounding+1e-12, "%s: up to more than %s", at, up.ID)
			assert.LessOrEqual(t, grams(f.WithBounds, c), grams(total.WithBounds, up)*rounding+1e-12, "%s: with bounds more than %s", at, up.ID)
		}
	}
}

// soundMass checks that nothing weighs more than all of it, that all of it is there in
// every draw, and that no rest is below nothing.
func soundMass(t *testing.T, id food.ID, a *assay.Assay) {
	t.Helper()
	const whole = 100.0
	for _, f := range a.Per100g {
		if f.Constituent.PerGram > 0 && f.Constituent.Kind != constituent.Figure && !math.IsNaN(f.UpTo) {
			assert.LessOrEqual(t, f.UpTo/f.Constituent.PerGram, whole*(1+1e-9), "%s: %s", id, f.Constituent.ID)
		}
	}
	sum := make([]float64, a.Serving.N)
	for _, leaf := range constituent.Sums().Leaves(constituent.Mass) {
		for d, x := range a.Serving.Total(leaf.ID) {
			assert.GreaterOrEqual(t, x, 0.0, "%s: %s", id, leaf.ID)
			sum[d] += x
		}
	}
	assert.InDelta(t, whole, sum[0], 1e-9, id)
	assert.InDelta(t, 0, ledgertest.Closed(a.Serving), 1e-9, id)
	// The most that a gram can bring is fat's: Regulation (EU) No 1169/2011, Annex XIV.
	energy := assaytest.Figure(t, a.Per100g, constituent.Energy)
	if !math.IsNaN(energy.UpTo) {
		assert.LessOrEqual(t, energy.UpTo, 37*whole*(1+1e-9), id)
	}
}

// soundRow checks what the acids of a food could be against what its published acidity
// and its metals allow, worked out here by hand.
func soundRow(t *testing.T, id food.ID, a *assay.Assay) {
	t.Helper()
	profile := a.Serving.Rows[0].Profile
	ta, ok := profile.Food.Value("titratable")
	bounds := a.Serving.Bounds(0)
	most := bounds[constituent.Must("OA").Order]
	if !ok || most == 0 || math.IsNaN(most) {
		return
	}
	// Molar masses in g/mol: citric acid 192.12 takes three, quinic and gluconic 196.2
	// for one proton are the heaviest for their charge; protein is 5.3 g a gram of N.
	mmol := ta.Amount / 192.12 * 3 * 1000
	for _, m := range []struct {
		id    constituent.ID
		molar float64
	}{{"NA", 22.99}, {"K", 39.10}, {"CA", 40.08 / 2}, {"MG", 24.31 / 2}, {"PROCNT", 5.3 * 14.007}} {
		cell := profile.Cell(m.id)
		if !cell.Known {
			return
		}
		mmol += 100 * (cell.Amount + 2*cell.SD) / m.molar * 1000
	}
	const spread = 1.32 // a titratable acidity within two of its 16 % (data/acid_unmeasured.csv)
	mmol += (spread - 1) * ta.Amount / 192.12 * 3 * 1000
	assert.LessOrEqual(t, most, mmol/1000*196.2*1.01, "%s: more acid than its acidity and its metals hold", id)
}

// The same of drinks: what steps keep, lose and turn may bring no end out of order.
func TestNoBoundOfADrinkIsAbsurd(t *testing.T) {
	lib := assaytest.Core(t)
	drinks := map[string]string{"whole": fmt.Sprintf(assaytest.WholeDrink, 2)}
	for _, path := range []string{"data/demo/garden-tide.yaml", "data/demo/harbour-veil.yaml", "data/demo/slow-lantern.yaml"} {
		drinks[path] = string(assaytest.FileOf(t, path))
	}
	for _, step := range []string{
		"reduce: {to: 150 g}", "strain: {collect: 150 g, through: cloth}", "invert: {share: 40 %}", "caramelise: {loss: 10 %}", "hydrolyse: {lactose: 90 %}",
		"concentrate: {by: freezing, to: 150 g}", "split: {keep: {SUGAR: 30 %}, because: \"invented\"}", "dilute: {to: 400 g}",
	} {
		drinks[step] = `
drink: "Steps"
serves: 1
components:
  made:
    ingredients: [60 g core:milk-whole, 40 g core:honey, 40 g core:cranberry-juice, 60 g core:maple-syrup, 30 g core:instant-tea]
    steps:
      - ` + step + `
build: [100 g made, 20 g core:apple-juice]
`
	}
	for name, text := range drinks {
		t.Run(name, func(t *testing.T) {
			a := assaytest.Assay(t, lib, text, 60)
			for _, list := range []composition.Composition{a.PerServing, a.Per100g, a.Per100ml} {
				soundEnds(t, food.ID{Table: "drink"}, list)
			}
			for _, c := range a.Components {
				soundEnds(t, food.ID{Table: c.Name}, c.Constituents)
			}
			for _, f := range a.PerServing {
				for _, c := range f.Contributions {
					if c.Unknown && !math.IsNaN(f.UpTo) {
						assert.LessOrEqual(t, c.Bound, f.UpTo*(1+1e-9), "%s: a part could be more than all", f.Constituent.ID)
					}
				}
			}
		})
	}
}
