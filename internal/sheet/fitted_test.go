package sheet_test

import (
	"context"
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

// In how many of a hundred: only all are all, and only none are none.
func TestOnlyAllAreAll(t *testing.T) {
	assert.Equal(t, "99 of 100", sheet.Chance(0.999, 0.999))
	assert.Equal(t, "1 of 100", sheet.Chance(0.001, 0.001))
	assert.Equal(t, "100 of 100", sheet.Chance(1, 1))
	assert.Equal(t, "20 to 60 of 100, as the unknown will have it", sheet.Chance(0.2, 0.6))
}
