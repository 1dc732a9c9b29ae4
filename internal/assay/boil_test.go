package assay_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
)

// sourSyrup boils at pH 2.2.
const sourSyrup = "200 g core:water-pure, 100 g core:sugar-white, 3 g core:citric-acid"

// said gives what the steps say.
func said(a *assay.Assay) string { return strings.Join(assaytest.NotesOf(a, "step", ""), "\n") }

// sugars gives the known grams of a sugar in the pot that 100 g of the drink hold.
func sugars(t *testing.T, a *assay.Assay, id constituent.ID) float64 {
	return assaytest.Figure(t, a.PerServing, id).Mean
}

// Heat splits sucrose into equal parts of the two hexoses that weigh 360.31/342.30 of it
// (C12H22O11 + H2O, IUPAC atomic weights), and nothing else is lost or found.
func TestHeatSplitsSucroseAndKeepsTheMass(t *testing.T) {
	lib := assaytest.Core(t)
	cold := assaytest.Assay(t, lib, adjusting(sourSyrup, "heat: {at: 0 °C, for: 1 s}"), 60)
	for _, step := range []string{"heat: {at: 80 °C, for: 10 min}", "heat: {at: 100 °C, for: 2 min}", `heat: {code: "5001", at: 60 °C, for: 1 h}`} {
		hot := assaytest.Assay(t, lib, adjusting(sourSyrup, step), 60)
		gone := sugars(t, cold, "SUCS") - sugars(t, hot, "SUCS")
		assert.Greater(t, gone, 3.0, step)
		assert.InDelta(t, gone*360.31/342.30, sugars(t, hot, "SUGAR")-sugars(t, hot, "SUCS")-(sugars(t, cold, "SUGAR")-sugars(t, cold, "SUCS")), 0.001, step)
		assert.InDelta(t, sugars(t, hot, "GLUS"), sugars(t, hot, "FRUS"), 0.05, step)
		assert.InDelta(t, cold.Mass.Mean, hot.Mass.Mean, 1e-9, step)
		sucrose := assaytest.Figure(t, hot.PerServing, "SUCS")
		assert.Greater(t, sucrose.High-sucrose.Low, 0.05*sucrose.Mean, "%s: as sure as the rate", step)
		assert.Regexp(t, `at pH 2\.1\d, \d+ min at \d+ °C split \d+ to \d+ % of its sucrose`, said(hot), step)
	}
}

// The more sour, the hotter, the longer, the more of it splits; sugar in plain water keeps.
func TestHeatSplitsByAcidTimeAndTemperature(t *testing.T) {
	lib := assaytest.Core(t)
	left := func(ingredients, step string) float64 {
		return sugars(t, assaytest.Assay(t, lib, adjusting(ingredients, step), 24), "SUCS")
	}
	base := left(sourSyrup, "heat: {at: 80 °C, for: 10 min}")
	assert.Less(t, left(sourSyrup, "heat: {at: 90 °C, for: 10 min}"), base)
	assert.Less(t, left(sourSyrup, "heat: {at: 80 °C, for: 20 min}"), base)
	assert.Greater(t, left("200 g core:water-pure, 100 g core:sugar-white, 1 g core:citric-acid", "heat: {at: 80 °C, for: 10 min}"), base)
	assert.Greater(t, left("200 g core:water-pure, 100 g core:sugar-white", "heat: {at: 100 °C, for: 20 min}"), 33.0, "of 33.3 g")
}

// A pot whose pH nobody knows is asked for it, unless it hardly matters; one that was read
// tells it.
func TestHeatAsksForAPHThatItNeeds(t *testing.T) {
	lib := assaytest.Core(t)
	const sour, sweet = "200 g core:milk-whole, 20 g core:sugar-white, 10 g core:lemon-juice", "200 g core:milk-whole, 20 g core:sugar-white"
	assert.Contains(t, assaytest.Refused(t, lib, adjusting(sour, "heat: {at: 100 °C, for: 30 min}")), "7:9: how much sucrose it splits hangs on the pH of the pot, which is not known: ")
	read := assaytest.Assay(t, lib, adjusting(sour, "measured: {ph: 5.6}\n      - heat: {at: 100 °C, for: 30 min}"), 60)
	assert.InDelta(t, 20.0/230*100, sugars(t, read, "SUCS"), 0.2)
	warm := assaytest.Assay(t, lib, adjusting(sweet, "heat: {at: 72 °C, for: 15 s}"), 60)
	assert.InDelta(t, 20.0/220*100, sugars(t, warm, "SUCS"), 0.02)
	plain := assaytest.Assay(t, lib, adjusting("200 g core:milk-whole", "heat: {at: 100 °C, for: 30 min}"), 60)
	assert.NotContains(t, said(plain), "sucrose", "there is none")
	little := assaytest.Assay(t, lib, adjusting("200 g core:milk-whole, 1 g core:sugar-white, 10 g core:lemon-juice", "heat: {at: 100 °C, for: 30 min}"), 60)
	assert.Contains(t, said(little), "part of its sucrose may split", "hardly any is worth a word, and no refusal")
}

// Of vitamin C at least what the fastest published loss leaves stays, and all of it may.
func TestHeatLeavesVitaminCOpen(t *testing.T) {
	lib := assaytest.Core(t)
	raw := assaytest.Assay(t, lib, adjusting("300 g core:orange-juice", "heat: {at: 0 °C, for: 1 s}"), 60)
	hot := assaytest.Assay(t, lib, adjusting("300 g core:orange-juice", "heat: {at: 90 °C, for: 20 min}"), 60)
	before, after := assaytest.Figure(t, raw.PerServing, "VITC"), assaytest.Figure(t, hot.PerServing, "VITC")
	assert.InEpsilon(t, 0.6, after.Mean/before.Mean, 0.01, "more than 60 % was kept in 20 min (Viberg et al., abstract)")
	assert.GreaterOrEqual(t, after.UpTo, before.High*0.99, "and all of it may be there")
	assert.Contains(t, said(hot), "heat destroys vitamin C: at least 60 % of it is left")
	long := assaytest.Assay(t, lib, adjusting("300 g core:orange-juice", "heat: {at: 80 °C, for: 600 min}"), 60)
	assert.Contains(t, said(long), "heat destroys vitamin C: how much of it is left is not known, perhaps nothing")
	assert.NotContains(t, said(raw), "vitamin C", "nothing that would print")
	for _, id := range []constituent.ID{"K", "CITAC", "WATER", "PROCNT"} {
		assert.InDelta(t, sugars(t, raw, id), sugars(t, hot, id), 1e-6*sugars(t, raw, id)+0.05, id)
	}
}

// A sour pot that is boiled down for nobody knows how long may have split much of its
// sucrose or little; all sugars are as sure as before, but for the water that they take up.
func TestAReductionIsAsSureOfItsSugarsAsItsTime(t *testing.T) {
	lib := assaytest.Core(t)
	const lemonade = "200 g core:water-pure, 100 g core:sugar-white, 20 g core:lemon-juice"
	open := assaytest.Assay(t, lib, adjusting(lemonade, "reduce: {to: 310 g}"), 200)
	timed := assaytest.Assay(t, lib, adjusting(lemonade, "reduce: {to: 310 g, at: 101 °C, for: 2 min}"), 200)
	width := func(a *assay.Assay, id constituent.ID) float64 {
		f := assaytest.Figure(t, a.PerServing, id)
		return f.High - f.Low
	}
	assert.Greater(t, width(open, "SUCS"), 1.5*width(timed, "SUCS"), "who says how long is told more")
	assert.Less(t, width(open, "SUGAR"), 0.06*sugars(t, open, "SUGAR"))
	for _, a := range []*assay.Assay{open, timed} {
		sucrose := sugars(t, a, "SUCS")
		assert.InEpsilon(t, sucrose+(32.4-sucrose)*360.31/342.30, sugars(t, a, "SUGAR"), 0.01, "100 g of sugar and a little of the lemon's in 310 g")
		assert.InDelta(t, 100, a.Mass.Mean, 0.5)
	}
	assert.Regexp(t, `how long it boils is not written: at pH 2\.\d+ it splits \d+ to \d+ % of its sucrose`, said(open))
	assert.Regexp(t, `at pH 2\.\d+, 2 min at 101 °C split \d+ to \d+ % of its sucrose`, said(timed))
	plain := assaytest.Assay(t, lib, adjusting("200 g core:water-pure, 100 g core:sugar-white", "reduce: {to: 240 g}"), 200)
	assert.Empty(t, said(plain), "what is not sour keeps its sucrose")
	assert.InEpsilon(t, 100/2.4, sugars(t, plain, "SUCS"), 0.01)
}

// Steps that count no splitting say what an hour's simmer would do to a sour syrup.
func TestStepsThatCountNoSplittingSaySo(t *testing.T) {
	lib := assaytest.Core(t)
	for _, step := range []string{`heat: {code: "5001"}`, "caramelise: {loss: 5 %}"} {
		assert.Regexp(t, `its sucrose is counted as whole: at pH 2\.1\d, 60 min at 100 °C split all of it`, said(assaytest.Assay(t, lib, adjusting(sourSyrup, step), 24)), step)
		assert.NotContains(t, said(assaytest.Assay(t, lib, adjusting("200 g core:water-pure, 100 g core:sugar-white", step), 24)), "counted as whole", step)
	}
}

// A weighed pot of dry sugar says how much has burnt at least: 100 g that became 92 g have
// lost 8 g of at most 16.7 % (caramelin), so 48 % and more are gone (facts of the step:
// sugars 0 to 54 g of the 92).
func TestAWeighedCaramelHasAFloor(t *testing.T) {
	lib := assaytest.Core(t)
	caramel := func(ingredients, step string) *assay.Assay {
		return assaytest.Assay(t, lib, strings.Replace(adjusting(ingredients, step), "100 g pot", "92 g pot", 1), 400)
	}
	for _, ingredients := range []string{"100.0 g core:sugar-white", "100.0 g core:sugar-white, 30 g core:water-pure"} {
		a := caramel(ingredients, "caramelise: {to: 92.0 g}")
		sugar := assaytest.Figure(t, a.PerServing, "SUGAR")
		assert.InDelta(t, 92, a.Mass.Mean, 0.5)
		assert.Less(t, sugar.High, 54.0, ingredients)
		assert.Less(t, sugar.Low, 5.0, ingredients)
		assert.Zero(t, assaytest.Figure(t, a.PerServing, "WATER").Mean, ingredients)
		assert.Contains(t, said(a), "the weight says that at least 48 % of the sugar has burnt")
	}
	stated := caramel("100.0 g core:sugar-white", "caramelise: {to: 92.0 g, loss: 60 %}")
	assert.InDelta(t, 40, sugars(t, stated, "SUGAR"), 0.5)
	for step, says := range map[string]string{
		"caramelise: {to: 92.0 g, loss: 30 %}": "the weight says that at least 47.9 % of the sugar has burnt, and loss says 30 %",
		"caramelise: {to: 80 g}":               "caramelise to 80 g: caramel cannot leave less than 83.31 g",
		"caramelise: {to: 101 g}":              "caramelise to 101 g: the pot holds only 100 g",
	} {
		assert.Contains(t, assaytest.Refused(t, lib, adjusting("100.0 g core:sugar-white", step)), says)
	}
	assert.Contains(t, assaytest.Refused(t, lib, adjusting("100.0 g core:sugar-white, 40 g core:water-pure", "caramelise: {to: 120 g}")), "so the weight says nothing of the sugar; give loss")
}

// What acid splits is said where it was calculated, and that there is nothing to split.
func TestASplitIsSaid(t *testing.T) {
	lib := assaytest.Core(t)
	assert.Regexp(t, `\d+ to \d+ % of its sucrose split`, said(assaytest.Assay(t, lib, adjusting("100 g core:sugar-white, 100 g core:water-pure", "invert: {ph: 3, at: 90 °C, for: 20 min}"), 60)))
	for _, step := range []string{"invert: {share: 50 %}", "hydrolyse: {lactose: 90 %}"} {
		assert.Contains(t, said(assaytest.Assay(t, lib, adjusting("100 g core:water-pure", step), 60)), "so that nothing splits", step)
	}
	assert.NotContains(t, said(assaytest.Assay(t, lib, adjusting("100 g core:milk-whole", "hydrolyse: {lactose: 90 %}"), 60)), "nothing splits")
}
