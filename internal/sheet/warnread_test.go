package sheet_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/sheet"
)

// A pH that was read of a ferment speaks for it through what does not make it less sour: a cloth, the
// cold, a gas, a reading of something else, and none of these for a pot that was let down afterwards.
func TestAPHThatWasReadSpeaksForAFerment(t *testing.T) {
	const pot = `components:
  mead:
    ingredients: [60 g core:honey, 240 g core:water-pure, 5 g core:lemon-juice]
    steps:
      - steep: {ingredients: [10 g core:cascara-dried], for: 10 min, collect: 270 g}
      - ferment: {before: {brix: 16}, after: {brix: 8}}
      - measured: {ph: 3.7}
%
  fizz: {ingredients: [100 g mead, 20 g core:water-pure]}
build: [60 g core:espresso, 100 g fizz]
`
	for after, asks := range map[string]bool{
		"": false, "      - measured: {brix: 8.1}": false, "      - strain: {through: cloth, collect: 250 g}": false, "      - cool: {to: 4 °C}": false,
		"      - carbonate: {left: 4 g/l}": false, "      - dilute: {to: 400 g}": true,
	} {
		s := spoken(t, strings.Replace(pot, "%", after, 1))
		has := slices.ContainsFunc(s.Cautions(), func(c sheet.Cautioned) bool { return c.Code == "kombucha-ph" })
		assert.Equal(t, asks, has, after)
	}
}
