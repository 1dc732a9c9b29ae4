package assay_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// "0 %" without ± is none, as "100 %" is all: nobody rounds to either.
func TestAWrittenNothingIsNothing(t *testing.T) {
	for _, c := range []struct{ pot, step, id string }{
		{"100 g core:milk-whole", `split: {keep: {FAT: 0 %}, because: "test"}`, "FAT"},
		{"100 g core:sugar-white, 60 g core:water-pure", "invert: {share: 0 %}", "GLUS"},
		{"100 g core:sugar-white, 60 g core:water-pure", "invert: {ph: 3, at: 90 °C, for: 0 s}", "GLUS"},
		{"100 g core:water-pure", "carbonate: {left: 0 g/l}", "CO2"},
		{"100 g core:milk-whole", "hydrolyse: {lactose: 0 %}", "GALS"},
	} {
		a := run(t, coreLibrary(t), onePot(c.pot, c.step), 50)
		for _, f := range a.PerServing {
			assert.LessOrEqual(t, f.Low, f.Mean+1e-12, "%s: %s", c.step, f.Constituent.ID)
			assert.GreaterOrEqual(t, f.High, f.Mean-1e-12, "%s: %s", c.step, f.Constituent.ID)
			if string(f.Constituent.ID) == c.id {
				assert.Less(t, f.High, 0.001, "but what its foods bring: %s: %s", c.step, c.id)
			}
		}
	}
}

// A time in seconds is as sure as a clock that shows them.
func TestSecondsAreReadAsSeconds(t *testing.T) {
	a := run(t, coreLibrary(t), onePot("150 g core:water-pure", "steep: {ingredients: [5 g core:tea-leaf-black], at: 95 °C, for: 1 s, collect: 140 g}"), 200)
	caffeine := figure(t, a.PerServing, "CAFFN")
	assert.LessOrEqual(t, caffeine.Low, caffeine.Mean)
	assert.GreaterOrEqual(t, caffeine.High, caffeine.Mean)
}

// By the mass balance of the closed bottle: 0.00077 g/l, not half of what water holds open.
func TestAChargeOfNextToNothingDoesNextToNothing(t *testing.T) {
	a := run(t, coreLibrary(t), "drink: x\nserves: 1\nbuild: [900 g core:water-pure]\nfinish:\n  - carbonate: {bottle: 1.5 l, charge: 0.001 g, at: 4 °C}\n", 50)
	assert.InDelta(t, 0.00077*0.9, figure(t, a.PerServing, "CO2").Mean, 0.0001)
}
