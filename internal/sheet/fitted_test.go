package sheet_test

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/sheet"
)

func fitted(t *testing.T, text string) *sheet.Fitted {
	t.Helper()
	r := assaytest.Found(t, assaytest.Core(t), text)
	b := fit.Bench{
		Central: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 1}), Drawn: assay.Prepare(r, estimate.Ensemble{Seed: 1, N: 51}),
		Drink: r.Drink, Declared: func(string) (bool, error) { return false, nil },
	}
	res, err := b.Fit(context.Background(), fit.Read(r.Drink, &fail.List{}))
	require.NoError(t, err)
	s, err := sheet.Build("test", res.After, nil, uncited, nil)
	require.NoError(t, err)
	return sheet.Fit(s, res, nil)
}

// Amounts are named as a bar would: short where that tells them apart, whose they are, and never cut
// within a name.
func TestMovesAreNamedAsABarWould(t *testing.T) {
	f := fitted(t, `
drink: names
serves: 1
components:
  cordial:
    ingredients: [60 g core:lemon-juice, 60 g core:sugar-white]
    steps: [strain: {collect: 100 g, through: cloth}]
build: [30 g core:espresso, 20 g cordial, 10 g core:sugar-white, 10 g core:sugar-brown]
targets: [serving(SUGAR) <= 100 g]
vary:
  - {of: core:espresso, from: 20 g, to: 40 g}
  - {of: cordial, from: 10 g, to: 40 g}
  - {of: build/core:sugar-white, from: 5 g, to: 40 g}
  - {of: core:sugar-brown, from: 5 g, to: 40 g}
  - {of: cordial/core:lemon-juice, from: 50 g, to: 70 g}
  - {of: cordial/strain/collect, from: 90 g, to: 110 g}
`)
	var names []string
	for _, m := range f.Moves {
		names = append(names, m.Name)
	}
	assert.Equal(t, []string{"espresso", "cordial", "sugar, white", "sugar, brown", "lemon juice of cordial", "cordial (strain: collect)"}, names)
	assert.Contains(t, f.Line, "nothing moves, every target is met as it is written")
}

const glass = `
drink: words
serves: 1
scale: 1 g
build: [60 g core:espresso, 40 g core:apple-juice]
`

// What is missed is said of every target, two numbers are told apart, and nothing "comes up to 0".
func TestWhatIsMissedIsSaidInFigures(t *testing.T) {
	f := fitted(t, glass+"glass: 30 ml\ntargets: [serving(CAFFN) <= 60 mg]\nvary: [{of: core:espresso, from: 50 g, to: 70 g}]\n")
	said := strings.Join(f.Why, "\n")
	assert.Contains(t, said, "caffeine can come down to ")
	assert.Regexp(t, `also missed: the glass \(8\d(\.\d)? ml volume, not 30 ml\)`, said)
	f = fitted(t, glass+"targets: [alcohol_abv() >= 3 %]\n")
	assert.Equal(t, []string{"No amounts within their ranges meet alcohol_abv() >= 3 %", "Nothing that may move brings any alcohol"}, f.Why)
	f = fitted(t, glass+"targets: [mass() between 101.2 g and 101.4 g]\n")
	assert.Contains(t, strings.Join(f.Why, "\n"), "Mass can come down to 102 g, not 101.4 g", "between two steps of the scale")
	f = fitted(t, "drink: x\nserves: 1\nscale: 1 g\nbuild: [4600 g core:apple-juice]\ntargets: [mass() between 4600.2 g and 4600.4 g]\n")
	assert.Contains(t, strings.Join(f.Why, "\n"), "Mass can come down to 4601 g, not 4600.4 g", "and not to 4600, with three digits")
}

func TestFiguresOfAFitAreNamedOnce(t *testing.T) {
	f := fitted(t, glass+"targets: [brix() >= 8]\n")
	assert.NotContains(t, f.Line, "refractometer")
	assert.Contains(t, f.Line, "°Bx")
	f = fitted(t, glass+"targets: [sweetness() >= 5 %]\n")
	assert.Contains(t, f.Line, "% sweetness, as sucrose")
	f = fitted(t, glass+"targets: [ph() <= 2]\n")
	assert.Contains(t, strings.Join(f.Why, "\n"), "pH can come down to")
}

// Who pours twice the espresso for more caffeine is told what that may do to a guest; a caution in which
// only a figure moved is not told again.
func TestAnAnswerTellsTheCautionsThatItRaises(t *testing.T) {
	raised := func(text string) (codes []string) {
		f := fitted(t, text)
		written, err := sheet.Build("test", f.Before, nil, uncited, nil)
		require.NoError(t, err)
		f.Raise(written)
		for _, c := range f.Raised {
			codes = append(codes, c.Code)
		}
		return codes
	}
	assert.Contains(t, raised("drink: words\nserves: 1\nbuild: [20 g core:espresso, 40 g core:apple-juice]\ntargets: [serving(CAFFN) >= 180 mg]\n"), "caffeine-dose")
	assert.Empty(t, raised("drink: words\nserves: 1\nbuild: [5 g core:espresso, 40 g core:apple-juice]\ntargets: [serving(CAFFN) >= 26 mg]\n"))
}

// Where nobody knows, the page does not say that no amounts do it.
func TestWhatNobodyCanTellIsNotDenied(t *testing.T) {
	f := fitted(t, "drink: words\nserves: 1\nbuild: [40 g core:espresso, 100 g core:milk-whole]\ntargets: [ph() between 4.5 and 5]\n")
	said := strings.Join(f.Remarks, "\n")
	assert.Contains(t, said, "nobody can tell, until what is unknown is settled")
	assert.NotContains(t, said, "no amounts meet")
}

// In how many of a hundred: only all are all, and only none are none.
func TestOnlyAllAreAll(t *testing.T) {
	assert.Equal(t, "99 of 100", sheet.Chance(0.999, 0.999))
	assert.Equal(t, "1 of 100", sheet.Chance(0.001, 0.001))
	assert.Equal(t, "100 of 100", sheet.Chance(1, 1))
	assert.Equal(t, "20 to 60 of 100, as the unknown will have it", sheet.Chance(0.2, 0.6))
}
