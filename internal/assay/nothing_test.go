package assay_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
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
		a := assaytest.Assay(t, assaytest.Core(t), onePot(c.pot, c.step), 50)
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
	a := assaytest.Assay(t, assaytest.Core(t), onePot("150 g core:water-pure", "steep: {ingredients: [5 g core:tea-leaf-black], at: 95 °C, for: 1 s, collect: 140 g}"), 200)
	caffeine := assaytest.Figure(t, a.PerServing, "CAFFN")
	assert.LessOrEqual(t, caffeine.Low, caffeine.Mean)
	assert.GreaterOrEqual(t, caffeine.High, caffeine.Mean)
}

// By the mass balance of the closed bottle: 0.00077 g/l, not half of what water holds open.
func TestAChargeOfNextToNothingDoesNextToNothing(t *testing.T) {
	a := assaytest.Assay(t, assaytest.Core(t), "drink: x\nserves: 1\nbuild: [900 g core:water-pure]\nfinish:\n  - carbonate: {bottle: 1.5 l, charge: 0.001 g, at: 4 °C}\n", 50)
	assert.InDelta(t, 0.00077*0.9, assaytest.Figure(t, a.PerServing, "CO2").Mean, 0.0001)
}

// No bottle is charged beyond what it stands; the pressure is said without an exponent.
func TestAChargeThatBurstsIsRefused(t *testing.T) {
	err := assaytest.Refused(t, assaytest.Core(t), onePot("300 g core:water-pure", "carbonate: {bottle: 0.5 l, charge: 8 kg, at: 4 °C}"))
	assert.Contains(t, err, "test:7:9: 8000 g of gas in 500 ml would be about 6410 bar")
	assert.Contains(t, err, "no bottle stands more than 25 bar")
	assert.Contains(t, assaytest.Refused(t, assaytest.Core(t), onePot("300 g core:water-pure", "carbonate: {bottle: 0.2 l, charge: 4 g, at: 4 °C}")), "overfilled")
}

// What is taken out at once has given nothing, and at the time from which the shares hold
// there is no jump.
func TestASteepOfNoTimeGivesNothing(t *testing.T) {
	for _, food := range []string{"core:tea-leaf-black", "core:tea-leaf-green", "core:coffee-roasted-arabica", "core:cardamom", "core:spearmint"} {
		steep := func(time string) composition.Composition {
			return assaytest.Assay(t, assaytest.Core(t), onePot("150 g core:water-pure", "steep: {ingredients: [5 g "+food+"], at: 95 °C, for: "+time+", collect: 140 g}"), 24).PerServing
		}
		none, tenth, whole := steep("0.001 s"), steep("6 s"), steep("30 min")
		for _, id := range []constituent.ID{"K", "MG", "CAFFN", "CHOCDF", "PROCNT"} {
			last, ok := whole.Find(id)
			if !ok || last.Mean == 0 {
				continue
			}
			assert.Less(t, assaytest.Figure(t, none, id).High, 0.001*last.Mean, "%s of %s", id, food)
			assert.Less(t, assaytest.Figure(t, tenth, id).Mean, 0.2*last.Mean, "%s of %s", id, food)
		}
	}
	for food, minutes := range map[string]float64{"core:tea-leaf-black": 3, "core:tea-leaf-green": 5, "core:coffee-roasted-arabica": 4, "core:cardamom": 3} {
		at := func(m float64) composition.Figure {
			return assaytest.Figure(t, assaytest.Assay(t, assaytest.Core(t), onePot("150 g core:water-pure", fmt.Sprintf("steep: {ingredients: [5 g %s], at: 95 °C, for: %.4f min, collect: 140 g}", food, m)), 24).PerServing, "K")
		}
		assert.InEpsilon(t, at(minutes).Mean, at(minutes-0.001).Mean, 0.001, food)
	}
}

// A ferment takes no alcohol away, but for what becomes acetic acid: 46.07 g of it for 60.05 g.
func TestAFermentTakesNoAlcoholAway(t *testing.T) {
	const wine = "100 g core:wine-white"
	assert.Contains(t, assaytest.Refused(t, assaytest.Core(t), onePot(wine, `ferment: {after: {ALC: 0.5 g}, because: "test"}`)), "test:7:9: 0.5 g of alcohol in 100 g afterwards")
	assert.Contains(t, assaytest.Refused(t, assaytest.Core(t), onePot(wine, `ferment: {after: {ALC: 0.5 g, ACEAC: 1 g}, because: "test"}`)), "a ferment takes none away")
	assaytest.Assay(t, assaytest.Core(t), onePot(wine, `ferment: {after: {ALC: 10.3 g, ACEAC: 0.5 g}, because: "test"}`), 20)
}

// What a ferment is said to leave is of 100 g too.
func TestAFermentLeavesNoMoreThanTheWhole(t *testing.T) {
	for after, says := range map[string]string{
		"ALC: 500 g":             "after it ALC 500 g would make 500 g in 100 g (check the figures",
		"ALC: 60 g, SUGAR: 60 g": "would make 120 g in 100 g",
		"SUGAR: 5 g":             "",
	} {
		text := "drink: x\nserves: 1\ncomponents: {a: {ingredients: [100 g core:orange-juice], steps: [{ferment: {after: {" + after + "}, because: \"invented\"}}]}}\nbuild: [10 g a]\n"
		if says == "" {
			assaytest.Assay(t, assaytest.Core(t), text, 5)
		} else {
			assert.Contains(t, assaytest.Refused(t, assaytest.Core(t), text), says, after)
		}
	}
}

// 20 mol/l is no base that somebody titrates a drink with: it would be thousands of per cent.
func TestATitrationIsOfALiquid(t *testing.T) {
	const says = "nothing has more than 64.3"
	for _, points := range []string{"[[0 ml,2.6],[5 ml,3.5],[1000 ml,9]], base: 20 mol/l, sample: 10 g", "[[0 ml,2.6],[5 ml,3.5],[1000 ml,7]], base: 20 mol/l, sample: 10 g", "[[0 ml,7],[5 ml,3.5],[1000 ml,2]], acid: 20 mol/l, sample: 10 g"} {
		err := assaytest.Refused(t, assaytest.Core(t), onePot("100 g core:lemon-juice", "measured: {titration: "+points+"}"))
		assert.Contains(t, err, "test:7:9: the titration says", points)
		assert.Contains(t, err, says, points)
	}
	assaytest.Assay(t, assaytest.Core(t), onePot("100 g core:lemon-juice", "measured: {titration: [[0 ml,2.4],[3.5 ml,3.5],[8.5 ml,8.2]], base: 1 mol/l, sample: 10 g}"), 20)
}
