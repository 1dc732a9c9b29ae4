package claim

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/fail"
)

// By hand: what no number can be, what every number is, and what hangs on the drink.
func TestAClaimMayBeDecidedByItsWords(t *testing.T) {
	for text, want := range map[string]Logic{
		"serving(SUCS) > 10 g and serving(SUCS) < 10 g":                                 Never,
		"serving(SUCS) >= 10 g and serving(SUCS) < 10 g":                                Never,
		"serving(SUCS) > 10 g and serving(SUCS) < 9 g":                                  Never,
		"serving(CAFFN) > 0.1 g and 100 mg > serving(CAFFN)":                            Never,
		"10 g < serving(SUCS) < 10 g":                                                   Never,
		"serving(SUCS) > serving(SUCS)":                                                 Never,
		"not (serving(SUCS) > 10 g or serving(SUCS) <= 10 g)":                           Never,
		"serving(SUCS) > serving(FRUS) and serving(FRUS) > serving(SUCS)":               Never,
		"(ph() > 4 and ph() < 3) or (ta() > 5 g/l and ta() < 5 g/l)":                    Never,
		"serving(SUCS) + serving(FRUS) > 10 g and serving(SUCS) + serving(FRUS) < 10 g": Never,
		"2 g < 1 g": Never,
		"serving(SUCS) >= 10 g or serving(SUCS) < 10 g":                                          Always,
		"serving(SUCS) < 10 g or serving(SUCS) > 8 g":                                            Always,
		"serving(SUCS) <= serving(SUCS)":                                                         Always,
		"not (ph() > 4 and ph() < 4)":                                                            Always,
		"contains(\"milk\") or not contains(\"milk\")":                                           Always,
		"ph() > 4 or ph() < 4":                                                                   Open, // at 4 it is not
		"serving(SUCS) >= 10 g and serving(SUCS) <= 10 g":                                        Open, // at 10 it is
		"serving(SUCS) > 10 g and serving(FRUS) < 10 g":                                          Open,
		"component(\"a\", SUCS) > 10 g and component(\"b\", SUCS) < 10 g":                        Open,
		"component(\"a\", SUCS) > 10 g and component(\"a\", SUCS) < 10 g":                        Never,
		"serving(SUCS) > 10 g and per100ml(SUCS) < 10 g":                                         Open,
		"serving(SUCS) > 8 g and serving(SUCS) < 10 g and ph() between 3 and 4 or ta() > 10 g/l": Open,
	} {
		c, err := Parse(text, fail.Place{})
		require.NoError(t, err, text)
		assert.Equal(t, want, c.logic, text)
	}
}

// A condition of a target is judged by its own words: each half of what excludes itself may hold.
func TestThePartsOfATargetAreJudgedByThemselves(t *testing.T) {
	target, err := ParseTarget("serving(SUCS) > 10 g and serving(SUCS) < 10 g", fail.Place{})
	require.NoError(t, err)
	assert.Equal(t, Never, target.Whole().logic)
	for _, part := range target.Conditions {
		assert.Equal(t, Open, part.logic)
	}
}
