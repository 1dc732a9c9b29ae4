package sheet_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

const sourWater = `
drink: sour
serves: 1
scale: 0.01 g
build: [200 g core:water-pure, 20 g core:sugar-white, 2 g core:citric-acid]
`

// How near a figure comes is told with as many digits as tell it from what it is held to; pH begins a
// sentence as it is; a target that stands twice is told once.
func TestHowNearATargetComesIsTold(t *testing.T) {
	f := fitted(t, sourWater+"targets: [ph() > 2.5, ph() <= 2.4999]\n")
	assert.False(t, f.Met)
	said := strings.Join(f.Why, "\n")
	assert.Contains(t, said, "pH can come")
	assert.NotContains(t, said, "PH")
	assert.NotContains(t, said, "2.50, not 2.50")
	assert.Regexp(t, `pH can come up to 2\.49\d+, not 2\.5`, said)
	f = fitted(t, sourWater+"targets: [serving(SUGAR) > 30 g, serving(SUGAR) > 30 g, serving(SUGAR) < 25 g]\n")
	seen := map[string]bool{}
	for _, why := range f.Why {
		assert.False(t, seen[why], why)
		seen[why] = true
	}
	assert.NotContains(t, f.Why[0], "30 g, serving", "named once")
}

// At what an answer is the best is said.
func TestAtWhatAnAnswerIsTheBestIsSaid(t *testing.T) {
	last := func(text string) string {
		r := fitted(t, sourWater+text).Remarks
		return r[len(r)-1]
	}
	assert.Contains(t, last("targets: [serving(SUGAR) >= 22 g, \"mass() <= 260 g\"]\n"), "move")
	assert.Contains(t, last("targets: [most serving(SUGAR), serving(SUGAR) <= 22 g]\n"), "bring the goal farther. A goal goes on until a target stops it")
	assert.Contains(t, last("targets: [serving(SUGAR) >= 90 g]\n"), "No amounts on the steps of the scale meet every target.")
}

// A step that blocks is told with the amount that it blocks.
func TestAStepThatBlocksIsTold(t *testing.T) {
	f := fitted(t, `
drink: x
serves: 2
scale: 0.1 g
components:
  syrup:
    ingredients: [200 g core:water-pure, 100 g core:sugar-white]
    steps: [strain: {collect: 290 g, through: cloth}]
build: [60 g syrup, 200 g core:water-pure]
targets: [serving(SUGAR) <= 7 g]
vary: [{of: "core:sugar-white", from: 10 g, to: 200 g}]
`)
	assert.Contains(t, strings.Join(f.Why, "\n"), "Less sugar of syrup cannot be: collect 290 g")
}
