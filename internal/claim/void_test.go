package claim_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/claim"
	"sipsum/internal/fail"
)

// What divides by nothing is refused where it is written; what divides by a figure is not.
func TestNothingIsDividedByNothing(t *testing.T) {
	for text, col := range map[string]int{
		`serving(SUGAR) / 0 g > 1`: 18, `serving(SUGAR) / (2 - 2) > 1 g`: 19, `1 < serving(SUGAR) / (3 g * 0)`: 23, `least serving(SUGAR) / 0`: 24,
	} {
		_, err := claim.ParseTarget(text, fail.Place{File: "d", Line: 1, Col: 1})
		require.Error(t, err, text)
		f := err.(*fail.Error).Faults[0]
		assert.Contains(t, f.What, "divided by nothing", text)
		assert.Equal(t, col, f.Place.Col, text)
	}
	for _, text := range []string{`serving(SUGAR) / 2 > 1 g`, `serving(SUGAR) / serving(CAFFN) > 1`, `serving(SUGAR) / (serving(CAFFN) - serving(CAFFN)) > 1`} {
		_, err := claim.ParseTarget(text, fail.Place{})
		assert.NoError(t, err, text)
	}
}
