package assay_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
)

// pots are ingredients of 300 g with no spread to speak of, for a step that does next to
// nothing.
var pots = map[string]string{
	"fruit and sugar": "120 g ± 0.000001 g core:sugar-white, 150 g ± 0.000001 g core:plum-juice, 30 g ± 0.000001 g core:lemon-juice",
	"sour milk punch": "150 g ± 0.000001 g core:milk-whole, 30 g ± 0.000001 g core:lemon-juice, 120 g ± 0.000001 g core:wine-white",
	"coffee and rum":  "200 g ± 0.000001 g core:filter-coffee, 60 g ± 0.000001 g core:vodka-40, 40 g ± 0.000001 g core:honey",
	"cordial":         "200 g ± 0.000001 g core:water-pure, 98 g ± 0.000001 g core:sugar-white, 2 g ± 0.000001 g core:citric-acid",
	"own food":        "250 g ± 0.000001 g own:house, 50 g ± 0.000001 g core:lemon-juice",
}

// next are steps whose parameter is next to no effect. A step that no pot of this kind
// can take is left out of it.
var next = map[string]struct {
	step string
	only []string // pots; all if empty
}{
	"reduce":             {step: "reduce: {by: 0.00001 % ± 0.000001 %}"}, // sucrose splits as fast as a pot boils slowly: thirty times as much of it as boils away
	"heat":               {step: "heat: {at: 80 °C, for: 0.0001 s}"},
	"invert":             {step: "invert: {share: 0.0001 % ± 0.00001 %}"},
	"invert by time":     {step: "invert: {ph: 7, at: 0 °C, for: 0.001 min}"},
	"hydrolyse":          {step: "hydrolyse: {lactose: 0.0001 % ± 0.00001 %}"},
	"caramelise":         {step: "caramelise: {loss: 0.0001 % ± 0.00001 %}"},
	"ferment":            {step: `ferment: {after: {GLYRL: 0.00001 g ± 0.000001 g}, because: "test"}`, only: []string{"fruit and sugar", "cordial"}},
	"concentrate":        {step: "concentrate: {by: freezing, to: 299.9997 g ± 0.00001 g}"},
	"split":              {step: `split: {keep: {SUGAR: 99.9999 % ± 0.00001 %, FAT: 99.9999 % ± 0.00001 %}, because: "test"}`},
	"chill":              {step: "chill: {melt: 0.0001 g ± 0.00001 g}"},
	"dilute":             {step: "dilute: {to: 300.0003 g ± 0.00001 g}"},
	"strain":             {step: "strain: {collect: 299.9997 g ± 0.00001 g, through: paper}", only: []string{"cordial"}},
	"press":              {step: "press: {collect: 299.9997 g ± 0.00001 g, through: cloth}", only: []string{"cordial"}},
	"add sugar":          {step: "add: [0.0001 g ± 0.00001 g core:sugar-white]"},
	"add an acid":        {step: "add: [0.0001 g ± 0.00001 g core:malic-acid]"},
	"add coffee":         {step: "add: [0.0001 g ± 0.00001 g core:espresso]"},
	"add milk":           {step: "add: [0.0001 g ± 0.00001 g core:milk-whole]"},
	"steep a tea":        {step: "steep: {ingredients: [0.0001 g ± 0.00001 g core:tea-leaf-black], for: 5 min, at: 95 °C}"},
	"steep a spice":      {step: "steep: {ingredients: [0.0001 g ± 0.00001 g core:cardamom], for: 5 min}"},
	"wash":               {step: "wash: {fat: [0.0001 g ± 0.00001 g core:butter-unsalted], collect: 299.9997 g ± 0.00001 g}"},
	"carbonate a little": {step: "carbonate: {left: 0.0001 g/l}"},
}

// poured assays a pot after a step, or without one.
func poured(t *testing.T, pot, step string) *assay.Assay {
	t.Helper()
	if step != "" {
		step = "    steps:\n      - " + step + "\n"
	}
	return assaytest.Assay(t, assaytest.Core(t), fmt.Sprintf(`
drink: "Next to nothing"
serves: 1
foods:
  house:
    name: "House cordial"
    per: 100 g
    values: {WATER: 70 g, SUGAR: 25 g, K: 90 mg}
    source: "invented"
components:
  pot:
    ingredients: [%s]
%sbuild: [100 g ± 0.000001 g pot]
`, pot, step), 24)
}

// Every figure is continuous in a step's parameter down to no effect: a step that does
// next to nothing changes next to nothing, nor what is known, nor whether there is a pH.
func TestStepsThatDoNextToNothingChangeNextToNothing(t *testing.T) {
	for kind, pot := range pots {
		without := poured(t, pot, "")
		for name, n := range next {
			if len(n.only) > 0 && !contains(n.only, kind) {
				continue
			}
			t.Run(kind+"/"+name, func(t *testing.T) { sameFigures(t, without, poured(t, pot, n.step)) })
		}
	}
}

func contains(list []string, x string) bool {
	for _, y := range list {
		if x == y {
			return true
		}
	}
	return false
}

// sameFigures compares two assays within what a millionth of a pot may make.
func sameFigures(t *testing.T, a, b *assay.Assay) {
	t.Helper()
	const part, grams, small = 1e-3, 1e-4, 0.05 // of a figure; of 100 g; in any unit
	near := func(x, y, scale float64, format string, args ...any) {
		if math.IsNaN(x) && math.IsNaN(y) {
			return
		}
		assert.InDeltaf(t, x, y, part*math.Abs(x)+scale, format, args...)
	}
	for _, f := range a.Per100g {
		g, ok := b.Per100g.Find(f.Constituent.ID)
		if !ok { // not listed is not known: of what there is surely none, a trace of another food may hold some
			assert.Zero(t, f.High, "%s", f.Constituent.ID)
			continue
		}
		scale := min(grams*f.Constituent.PerGram, small)
		if f.Constituent.PerGram == 0 { // energy
			scale = small
		}
		near(f.Mean, g.Mean, scale, "mean of %s", f.Constituent.ID)
		near(f.Low, g.Low, scale, "low end of %s", f.Constituent.ID)
		near(f.High, g.High, scale, "high end of %s", f.Constituent.ID)
		if !math.IsNaN(g.WithBounds) { // a trace of a food in which nothing bounds a constituent is unbounded too
			near(f.WithBounds, g.WithBounds, scale, "%s with bounds", f.Constituent.ID)
		}
	}
	ca, cb := a.Chemistry, b.Chemistry
	require.NotNil(t, ca)
	require.NotNil(t, cb)
	for i, e := range []chemistry.Estimate{ca.PHMeter, ca.Acidity[0].Per100g} {
		other := []chemistry.Estimate{cb.PHMeter, cb.Acidity[0].Per100g}[i]
		what := []string{"pH", "acidity"}[i]
		assert.Equal(t, e.Why == "", other.Why == "", "%s: %q against %q", what, e.Why, other.Why)
		scale := []float64{0.01, 0.001}[i]
		near(e.Mean, other.Mean, scale, "%s", what)
		near(e.Low, other.Low, scale, "low end of %s", what)
		near(e.High, other.High, scale, "high end of %s", what)
	}
}
