package unit_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/unit"
)

// An amount gets another number; what a hand wrote round it stays, unless it said the number too.
func TestAnAmountIsRestatedInPlace(t *testing.T) {
	for was, want := range map[string]string{
		"40 g pear":                 "46.5 g pear",
		"40 g ± 3 g pear  # ours":   "46.5 g ± 3 g pear  # ours",
		"40±3 g pear":               "46.5±3 g pear",
		"1/2 tsp of bitters":        "46.5 tsp of bitters",
		"36-40 g espresso":          "46.5 g ± 2 g espresso",
		"40 g ± 5 % pear":           "46.5 g ± 2 g pear",
		"25 % syrup":                "46.5 % syrup",
		" 40\u00a0g ± 1 g sd own:x": " 46.5 g ± 1 g sd own:x",
	} {
		a, _, err := unit.ParseAmount(unit.PlainSpaces(was))
		require.NoError(t, err, was)
		a.Number, a.Decimals = 46.5, 1
		got, err := unit.Restate(was, a)
		require.NoError(t, err, was)
		assert.Equal(t, want, got, was)
	}
	_, err := unit.Restate("a slice of pear", unit.Amount{})
	assert.Error(t, err)
}
