package claims_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/composition"
	"sipsum/internal/estimate"
)

// What claims ask of a liquid is what the assay prints of it: with the unknown at its least it begins
// where the printed interval begins, at its most it ends where that ends, and what has no gap is as sure
// as its draws.
func TestSolutionsAreThoseOfTheAssay(t *testing.T) {
	core := assaytest.Core(t)
	open := 0
	for _, build := range []string{"50 g core:lemon-juice, 50 g core:water-pure", "60 g core:pear-juice, 20 g core:apple-juice", "80 g core:orange-juice", "60 g own:j, 40 g core:lemon-juice"} {
		a := run(t, core, "drink: x\nserves: 1\nfoods: "+ownJuice+"\nbuild: ["+build+"]\n", 500)
		g := claims.NewGlass(a, nil)
		c := a.Chemistry
		for _, x := range []struct {
			of     claim.Property
			result composition.Result
			why    string
			scale  float64
		}{
			{claim.PH, c.PH.Result, c.PH.Why, 1}, {claim.Acidity, c.Acidity[0].PerLitre.Result, c.Acidity[0].PerLitre.Why, 1000},
			{claim.Brix, c.Brix, c.TooDry, 1}, {claim.BrixAcid, c.BrixAcid.Result, c.BrixAcid.Why, 1},
			{claim.Mass, a.Mass, "", 1}, {claim.Volume, a.Volume, "", 1}, {claim.Strength, a.Strength, "", 100},
		} {
			f, err := g.Property(x.of)
			require.NoError(t, err)
			if x.why != "" {
				require.Len(t, f.Gaps, 1, "%s of %s", x.of, build)
				continue
			}
			low, high := estimate.Summarise(f.Known), estimate.Summarise(f.Known)
			for _, gap := range f.Gaps {
				high.High += gap.Most[0]
				open++
				assert.NotEmpty(t, gap.Settle)
			}
			assert.InDelta(t, x.result.Low, low.Low*x.scale, 1e-6*math.Abs(x.result.Low)+1e-9, "%s of %s", x.of, build)
			assert.InDelta(t, x.result.High, high.High*x.scale, 1e-6*math.Abs(x.result.High)+1e-9, "%s of %s", x.of, build)
		}
	}
	assert.Positive(t, open, "figures that are open beyond their draws")
}

// The strength of a drink is its alcohol: 40 % vol, half and half with water, by OIML tables 20.2 (the two
// contract), whatever the rules of a pack round it to.
func TestStrengthOfADilutedSpirit(t *testing.T) {
	core := assaytest.Core(t)
	text := "drink: x\nserves: 1\nbuild: [50 ml core:spirit-40, 50 ml core:water-pure]\nclaims: [{say: x, check: alcohol_abv() between 19 % and 22 % vol}, {say: y, check: alcohol_abv() < 0.5 % vol}]\n"
	said := judged(t, core, text)
	assert.True(t, said[0].Holds(), said[0].Line())
	assert.EqualValues(t, "refuted", said[1].Word)
}

// What is withheld, or of which nobody knows anything, has no figure, whatever the least of it is.
func TestTheUnknownHasNoFigure(t *testing.T) {
	core := assaytest.Core(t)
	text := "drink: x\nserves: 1\nfoods: " + ownJuice + "\nbuild: [100 g own:j]\nclaims: [{say: x, check: ph() < 4}, {say: x, check: ta() > 3 g/l}, {say: x, check: serving(MALAC) < 100 mg}, {say: x, check: serving(SUGAR) < 11 g}]\n"
	for i, s := range judged(t, core, text) {
		if i == 3 {
			assert.InDelta(t, 10, s.Figure.Mean, 0.1)
			continue
		}
		assert.EqualValues(t, claim.Unknown, s.Word, s.Check)
		assert.True(t, math.IsNaN(s.Figure.Mean), "%s: %v", s.Check, s.Figure)
	}
}

// ownJuice is a juice of which nobody knows the acids.
const ownJuice = `{j: {name: Juice, group: fruit juice, per: 100 g, values: {WATER: 88 g, SUGAR: 10 g, K: 150 mg}, source: x}}`

// Nobody knows the strength of what has no stated alcohol, nor of what has no stated volume: 20 g of
// vodka of 40 % vol hold 6.66 g or 8.44 ml of alcohol (OIML R 22: 33.30 % by mass, 0.78924 g/ml). Beside
// 27.6 g of a cordial that nobody has told apart and 2.4 g of its sugar it is 16.6 % if that is water
// (27.6 ml) and 21 % if it is sugar (17 ml).
func TestAStrengthThatNobodyKnows(t *testing.T) {
	const cordial = "drink: x\nserves: 1\nfoods:\n  c: {name: Cordial, group: syrup, per: 100 g, values: {SUGAR: 8 g}, source: invented}\nbuild: [30 g own:c, 20 g core:vodka-40]\nclaims:\n"
	const bitters = "drink: x\nserves: 1\nfoods:\n  c: {name: Bitters, group: spirit, per: 100 g, values: {WATER: 60 g, SUGAR: 2 g}, source: invented}\nbuild: [30 g own:c, 20 g core:water-pure]\nclaims:\n"
	core := assaytest.Core(t)
	for _, x := range []struct {
		drink, check string
		want         string
	}{
		{cordial, "alcohol_abv() > 15 %", "holds"}, {cordial, "alcohol_abv() > 18.5 %", "unknown"}, {cordial, "alcohol_abv() > 24 %", "fails"},
		{bitters, "alcohol_abv() < 1 %", "unknown"}, {bitters, "alcohol_abv() > 20 %", "unknown"}, {bitters, "alcohol_abv() > 60 %", "fails"},
	} {
		said := judged(t, core, x.drink+"  - {say: \"strong\", check: '"+x.check+"'}\n")
		require.Len(t, said, 1)
		got := map[bool]string{true: "holds", false: "fails"}[said[0].Holds()]
		if said[0].Word == claim.Unknown {
			got = "unknown"
		}
		assert.Equal(t, x.want, got, x.check)
	}
}
