package sheet_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/label"
	"sipsum/internal/sheet"
)

// USDA retention factors, release 6 (2007): vegetables and fruits keep as little as a fifth of
// their vitamin C when they are cooked, so a boiled juice bears no claim by what it had raw. Its
// potassium stays where its water goes as steam.
func TestABoiledJuiceClaimsNoRawVitamin(t *testing.T) {
	claim := func(steps, name string) label.Claim {
		text := "drink: Pot\nserves: 1\nrules: [eu]\ncomponents:\n  juice:\n    ingredients: [1000 g own:juice]\n    steps: [" + steps + "]\nbuild: [100 g juice]\nfoods:\n  juice: {name: Juice, per: 100 g, density: 1.04 g/ml, values: {WATER: 88 g, SUGAR: 8 g, CHOAVL: 8 g, FAT: 0 g, PROCNT: 1 g, ASH: 0.5 g, VITC: 50 mg, K: 500 mg}, source: invented, allergens: []}\n"
		s, err := sheet.Build("test", calculated(t, text, assaytest.Options{}), nil, uncited, nil)
		require.NoError(t, err)
		all := s.Cards()[0].Claims
		i := slices.IndexFunc(all, func(c label.Claim) bool { return c.Claim == name })
		require.GreaterOrEqual(t, i, 0, name)
		return all[i]
	}
	assert.True(t, claim("", "high vitamin C").Allowed, "raw: 50 mg in 100 g, 12 are wanted: %s", claim("", "high vitamin C").Why)
	assert.False(t, claim("reduce: {to: 900 g}", "high vitamin C").Allowed)
	assert.True(t, claim("reduce: {to: 900 g}", "source of potassium").Allowed)
}
