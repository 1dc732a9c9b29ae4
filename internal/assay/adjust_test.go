package assay_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
)

// adjusting writes a drink of one pot with a step.
func adjusting(ingredients, steps string) string {
	return fmt.Sprintf("drink: \"Adjusted\"\nserves: 1\ncomponents:\n  pot:\n    ingredients: [%s]\n    steps:\n      - %s\nbuild: [100 g pot]\n", ingredients, steps)
}

func pot(t *testing.T, a *assay.Assay) assay.Component { return assaytest.Component(t, a, "pot") }

// Whatever the pot and whatever is dosed, the pot reads the target afterwards, at central
// values: pH to 0.01, acidity and °Brix to 0.5 % (the promise of the step).
func TestAnAdjustedPotReadsItsTarget(t *testing.T) {
	lib := assaytest.Core(t)
	pots := map[string]string{
		"syrup":  "200 g core:sugar-white, 200 g core:water-pure",
		"apple":  "300 g core:apple-juice",
		"orange": "300 g core:orange-juice, 20 g core:sugar-white",
		"wine":   "300 g core:wine-white, 30 g core:sugar-white",
		"coffee": "300 g core:filter-coffee, 60 g core:sugar-white",
	}
	for _, c := range []struct{ pots, step string }{
		{"syrup apple orange coffee", "adjust: {ph: 3.1, with: core:citric-acid}"},
		{"syrup apple orange coffee", "adjust: {ph: 2.9, with: core:malic-acid}"},
		{"syrup apple wine", "adjust: {ph: 2.8, with: core:lactic-acid}"},
		{"syrup apple coffee", "adjust: {ph: 3.3, with: core:lemon-juice}"},
		{"apple orange wine", "adjust: {ph: 4.4, with: core:sodium-bicarbonate}"},
		{"syrup apple orange wine coffee", "adjust: {ta: 12 g/l, with: core:citric-acid}"},
		{"syrup apple orange wine coffee", "adjust: {ta: 1.5 %, with: core:tartaric-acid}"},
		{"apple orange wine", "adjust: {ta: 0.3 g/100 ml, with: core:water-pure}"},
		{"apple orange wine coffee", "adjust: {brix: 40, with: core:sugar-white}"},
		{"syrup apple orange", "adjust: {brix: 7, with: core:water-pure}"},
	} {
		for name, ingredients := range pots {
			if !strings.Contains(c.pots, name) {
				continue
			}
			a := assaytest.Assay(t, lib, adjusting(ingredients, c.step), 60)
			require.Len(t, a.Adjusted, 1)
			d, got := a.Adjusted[0], pot(t, a).Chemistry
			at := name + ": " + c.step
			switch {
			case d.Reading == "ph":
				assert.InDelta(t, d.To, got.PHMeter.Mean, 0.01, at)
				assert.Less(t, got.PHMeter.Low, got.PHMeter.High, "%s: a meter may be off", at)
			case d.Reading == "brix":
				assert.InEpsilon(t, d.To, got.Brix.Mean, 0.005, at)
			case d.Unit == "g/l":
				assert.InEpsilon(t, d.To, got.Acidity[0].PerLitre.Mean, 0.005, at)
			case d.Unit == "g/100 ml":
				assert.InEpsilon(t, d.To, got.Acidity[0].PerLitre.Mean/10, 0.005, at)
			default:
				assert.InEpsilon(t, d.To, got.Acidity[0].Per100g.Mean, 0.005, at)
			}
			assert.Positive(t, d.Grams.Mean, at)
			assert.LessOrEqual(t, d.Grams.Low, d.Grams.Mean, at)
			assert.GreaterOrEqual(t, d.Grams.High, d.Grams.Mean, at)
			yield := a.Yields[0]
			assert.InDelta(t, d.Pot+d.Grams.Mean-yield.Steps[0].Lost, yield.Out, 1e-6, "%s: the dose is in the pot, but for its gas", at)
			assert.True(t, strings.Contains(c.step, "bicarbonate") || yield.Steps[0].Lost == 0, at)
			assert.True(t, slices.ContainsFunc(yield.Weighed, func(w assay.Weighed) bool { return math.Abs(w.Grams-d.Grams.Mean) < 1e-9 }), "%s: as it was weighed in", at)
		}
	}
}

// The dose is that of the file of whoever weighs: published recipes of a liquid of known pH,
// acidity or strength.
func TestADoseIsThatOfPublishedRecipes(t *testing.T) {
	lib := assaytest.Core(t)
	dose := func(ingredients, step, foods string) float64 {
		a := assaytest.Assay(t, lib, foods+adjusting(ingredients, step), 60)
		return a.Adjusted[0].Grams.Mean
	}
	// A gram of anhydrous citric acid is a gram of titratable acidity: 6 g in a litre (IFU 3).
	assert.InEpsilon(t, 1.204, dose("200 g core:water-pure", "adjust: {ta: 0.5985 g/100 g, with: core:citric-acid}", ""), 0.005, "0.5985 % of 201.204 g")
	// °Brix is grams of sucrose in 100 g of solution (ICUMSA): as much sugar as water reads 50.
	assert.InEpsilon(t, 200, dose("200 g core:water-pure", "adjust: {brix: 50, with: core:sugar-white}", ""), 0.01)
	// and as much again as it is lowered: 400 g of 50 °Bx are 1667 g of 12 °Bx.
	assert.InEpsilon(t, 400*50/12.0-400, dose("200 g core:water-pure, 200 g core:sugar-white", "adjust: {brix: 12, with: core:water-pure}", ""), 0.01)

	// McIlvaine 1921, J Biol Chem 49:183 (CRC Handbook): 20 ml of 0.2 mol/l disodium phosphate
	// and 0.1 mol/l citric acid. The dose is that acid as a powder, to the pH of the table; the
	// model misses the table by up to 0.15 pH, which is up to an eighth of the dose.
	const salts = `foods:
  na2hpo4:
    name: "Disodium hydrogen phosphate, Na2HPO4"
    per: 100 g
    values: {NA: 32.3899 g ± 0.0001 g, phosphate: 66.9001 g ± 0.0001 g, ASH: 100.0000 g ± 0.0001 g, WATER: 0 g ± 0 g, PROCNT: 0 g ± 0 g, FAT: 0 g ± 0 g, K: 0 g ± 0 g, CLD: 0 g ± 0 g, sulphate: 0 g ± 0 g, OA: 0 g ± 0 g, CO2: 0 g ± 0 g}
    allergens: []
    source: "formula, IUPAC atomic weights"
`
	f, err := os.Open("../acid/testdata/mcilvaine.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	// Milk that somebody titrated, which takes 1.8 mmol of strong acid in 25 g on the way to pH
	// 4.6 (between the points): as lactic acid (pK 3.86, CRC Handbook) it takes 1/0.85 of it,
	// 16.9 mmol of 90.08 g/mol in 200 g.
	assert.InEpsilon(t, 1.53, dose("200 g core:milk-whole", "measured: {titration: [[0 ml, 6.7], [5 ml, 6.0], [10 ml, 5.4], [20 ml, 4.4], [28 ml, 3.90]], acid: 0.1 mol/l, sample: 25 g}\n      - adjust: {ph: 4.6, with: core:lactic-acid}", ""), 0.1)

	tried := 0
	for _, row := range rows[1:] {
		var x [3]float64
		for i := range x {
			x[i], err = strconv.ParseFloat(row[i], 64)
			require.NoError(t, err)
		}
		if x[0] < 3.2 || x[0] > 5.6 {
			continue // the table's ends want a drop, or all, of the acid
		}
		const phosphate, citric = 0.2 * 141.96 / 1000, 0.1 * 192.12 / 1000 // g/ml, IUPAC atomic weights
		got := dose(fmt.Sprintf("1000.0 g core:water-pure, %.4f g own:na2hpo4", 50*x[1]*phosphate), fmt.Sprintf("adjust: {ph: %.2f, with: core:citric-acid}", x[0]), salts)
		t.Logf("pH %.1f: %.3f g of citric acid in a litre, the table has %.3f", x[0], got, 50*x[2]*citric)
		assert.InEpsilon(t, 50*x[2]*citric, got, 0.125, "pH %g", x[0])
		tried++
	}
	assert.Greater(t, tried, 10)
}

// What cannot be reached is refused with what can be.
func TestATargetThatCannotBeIsRefused(t *testing.T) {
	lib := assaytest.Core(t)
	for _, c := range []struct{ ingredients, step, says string }{
		{"200 g core:apple-juice", "adjust: {ph: 4.2, with: core:citric-acid}", `it reads pH 3\.\d+, and Citric acid, anhydrous leads it away from pH 4\.2 \(adjust with something that raises a pH, such as core:sodium-bicarbonate, or take the step out`},
		{"200 g core:orange-juice", "adjust: {brix: 5, with: core:sugar-white}", `it reads 1\d(\.\d)? °Bx, and Sugar, white leads it away from 5 °Bx \(adjust with something that dilutes it, such as core:water-pure`},
		{"200 g core:apple-juice", "adjust: {ph: 2.0, with: core:lemon-juice}", `4000 g of Lemon juice, fresh, the most that is tried, do not bring it to pH 2: it reads pH 2\.\d+ then`},
		{"200 g core:water-pure", "adjust: {brix: 80, with: core:sugar-white}", `Sugar, white does not bring it to 80 °Bx: the nearest that it reaches is 67\.\d °Bx, with 407\.8 g`},
		{"200 g core:milk-whole", "adjust: {ph: 5.5, with: core:citric-acid}", `no dose can be calculated, its pH is not known: .* protein .*\(read the pot before this step`},
		{"100 g core:sugar-white", "adjust: {brix: 50, with: core:water-pure}", `no dose can be calculated, its °Brix is not known: it is no liquid`},
		{"200 g core:vodka-40, 50 g core:sugar-white", "adjust: {ph: 3.5, with: core:citric-acid}", `no dose can be calculated, its pH is not known: it hardly buffers`}, // a trace of it
		{"3 g core:citric-acid, 10 g core:sugar-white", "adjust: {ph: 3, with: core:lemon-juice}", `not known`},
	} {
		said := assaytest.Refused(t, lib, adjusting(c.ingredients, c.step))
		assert.Regexp(t, c.says, said, c.step)
		assert.Contains(t, said, ":7:9: ", "where the step stands")
	}
}

// A component may be dosed, and the drink itself adjusted; what was read before counts.
func TestComponentsAndDrinksAreAdjusted(t *testing.T) {
	lib := assaytest.Core(t)
	a := assaytest.Assay(t, lib, `
drink: "House acid"
serves: 2
components:
  house acid:
    ingredients: [5 g core:citric-acid, 95 g core:water-pure]
  tonic:
    ingredients: [300 g core:apple-juice]
    steps: [{adjust: {ph: 3.2, with: house acid}}]
build: [200 g tonic, 100 g core:water-pure]
finish:
  - adjust: {brix: 12, with: core:sugar-white}
`, 60)
	require.Len(t, a.Adjusted, 2)
	assert.Equal(t, "house acid", a.Adjusted[0].Name)
	assert.Equal(t, "tonic/adjust", a.Adjusted[0].Step)
	assert.InDelta(t, 3.2, assaytest.Component(t, a, "tonic").Chemistry.PHMeter.Mean, 0.01)
	assert.InEpsilon(t, 12, a.Chemistry.Brix.Mean, 0.005)

	again := assaytest.Assay(t, lib, adjusting("300 g core:apple-juice", "adjust: {ph: 3.1, with: core:malic-acid}\n      - measured: {ph: 3.12}\n      - adjust: {ph: 3.0, with: core:malic-acid}"), 60)
	require.Len(t, again.Adjusted, 2)
	assert.InDelta(t, 3.0, pot(t, again).Chemistry.PHMeter.Mean, 0.01)
	first, second := again.Adjusted[0].Grams, again.Adjusted[1].Grams
	assert.Less(t, second.High-second.Low, first.High-first.Low, "what was read narrows the dose")
}

// Whoever adjusts adds until the meter reads it: in every draw the pot reads the target as far
// as the meter is right (data/instruments.csv: ± 0.05 pH, ± 2 % of an acidity), and what is
// dosed is as open as the dose. A reading beside it tells the dose, and the pot still reads
// what it was brought to.
func TestThePotReadsWhatItWasBroughtToAndTheDoseIsOpen(t *testing.T) {
	lib := assaytest.Core(t)
	const draws = 200
	of := func(c assay.Component, id constituent.ID) composition.Figure {
		return assaytest.Figure(t, c.Constituents, id)
	}
	syrup := "300.0 g core:sugar-white, 330.0 g core:water-pure, 8 g core:citric-acid, 30 g core:lime-juice"
	for _, c := range []struct {
		step string
		off  float64 // what the instrument may be off by, and the search
	}{{"adjust: {ph: 2.0, with: core:citric-acid}", 0.051}, {"adjust: {ta: 3 %, with: core:citric-acid}", 0.061}, {"adjust: {ph: 2.0 ± 0.02, with: core:citric-acid}", 0.021}} {
		a := assaytest.Assay(t, lib, adjusting(syrup, c.step), draws)
		read, d := pot(t, a).Chemistry.PHMeter.Result, a.Adjusted[0]
		if d.Reading == "ta" {
			read = pot(t, a).Chemistry.Acidity[0].Per100g.Result
		}
		assert.InDelta(t, d.To, read.Low, c.off, c.step)
		assert.InDelta(t, d.To, read.High, c.off, c.step)
		assert.Less(t, read.Low, read.High, c.step)
		poured := 100 / (d.Pot + d.Grams.Mean) // of the pot
		acid := of(pot(t, a), "CITAC")
		if d.Reading == "ta" { // more of the pot's own acid is less of the dose
			assert.Positive(t, acid.High-acid.Low, c.step)
			continue
		}
		assert.Greater(t, acid.High-acid.Low, 0.8*1000*poured*(d.Grams.High-d.Grams.Low), "%s: mg", c.step)
	}

	// 3 g less than 300 g of sugar and its dose are half a °Brix: it can only be the dose.
	open := assaytest.Assay(t, lib, adjusting(syrup, "adjust: {ph: 2.0, with: core:citric-acid}"), draws)
	expected := pot(t, open).Chemistry.Brix.Mean
	read := assaytest.Assay(t, lib, adjusting(syrup, fmt.Sprintf("adjust: {ph: 2.0, with: core:citric-acid}\n      - measured: {brix: %.2f}", expected-0.5)), draws)
	before, after := pot(t, open), pot(t, read)
	assert.InDelta(t, 2.0, after.Chemistry.PHMeter.Mean, 0.01)
	assert.InDelta(t, 2.0, after.Chemistry.PHMeter.Low, 0.055)
	assert.InDelta(t, 2.0, after.Chemistry.PHMeter.High, 0.055)
	assert.Less(t, of(after, "CITAC").Mean, 0.95*of(before, "CITAC").Mean)
	assert.InEpsilon(t, of(before, "SUCS").Mean, of(after, "SUCS").Mean, 0.01)
	width := func(c assay.Component) float64 { return of(c, "CITAC").High - of(c, "CITAC").Low }
	assert.Less(t, width(after), 0.8*width(before))
}

// A target that the instrument cannot tell from what the pot reads wants no dose, on whichever
// side it lies: pure water reads pH 7.00 and no acid (data/instruments.csv: ± 0.05 pH).
func TestWhatThePotReadsAlreadyWantsNoDose(t *testing.T) {
	lib := assaytest.Core(t)
	for _, step := range []string{"adjust: {ph: 7.0, with: core:citric-acid}", "adjust: {ta: 0 g/l, with: core:citric-acid}", "adjust: {brix: 0, with: core:sugar-white}"} {
		a := assaytest.Assay(t, lib, adjusting("200 g core:water-pure", step), 60)
		assert.Zero(t, a.Adjusted[0].Grams.Mean, step)
		assert.Zero(t, a.Adjusted[0].Grams.High, step)
	}
	apple := pot(t, assaytest.Assay(t, lib, adjusting("200 g core:apple-juice", "adjust: {brix: 20, with: core:sugar-white}"), 60)).Chemistry.PHMeter.Mean
	above := assaytest.Assay(t, lib, adjusting("200 g core:apple-juice", fmt.Sprintf("adjust: {ph: %.3f, with: core:citric-acid}", apple+0.02)), 60)
	assert.Zero(t, above.Adjusted[0].Grams.Mean)
}

// Acid drives the gas out of a carbonate, and an open pot keeps of it what water holds under
// carbon dioxide alone: 1.49 g/l at 25 °C (Weiss 1974), and the bicarbonate that the pH lets be, a
// tenth of it at pH 5.3 (pK 6.35, CRC Handbook, in so much salt about 6.1). What goes is missing on
// the scale. Without acid nothing goes, and what a bottle was charged with stays.
func TestAnOpenPotLosesTheGasOfItsCarbonate(t *testing.T) {
	lib := assaytest.Core(t)
	made := func(text string) *assay.Assay { return assaytest.Assay(t, lib, text, 60) }
	sour := made(adjusting("500.0 g core:water-pure, 20.00 g core:citric-acid, 20.00 g core:sodium-bicarbonate", "treat: stirred"))
	held := pot(t, sour).Chemistry.CO2.Mean
	assert.InDelta(t, 1.49*1.12, held, 0.08)
	assert.InDelta(t, 540-(20.0/84.007*44.009-0.53*held), sour.Yields[0].Out, 0.2, "of 10.48 g in the salt")
	assert.Contains(t, said(sour), "g of carbon dioxide out of the carbonate in it: it foams")
	plain := made(adjusting("500.0 g core:water-pure, 2.00 g core:sodium-bicarbonate", "treat: stirred"))
	assert.InDelta(t, 502, plain.Yields[0].Out, 1e-6)
	charged := made("drink: \"S\"\nserves: 1\ncomponents:\n  soda:\n    ingredients: [500 g core:water-pure, 0.5 g core:sodium-bicarbonate]\n    steps: [{carbonate: {left: 4 g/l}}]\nbuild: [100 g soda, 1 g core:citric-acid]\n")
	assert.Greater(t, charged.Chemistry.CO2.Mean, 3.3)
}

// Where the pot reads it already, nothing is added and the drink is the same.
func TestAnAdjustedPotIsNotAdjustedAgain(t *testing.T) {
	lib := assaytest.Core(t)
	step := "adjust: {ph: 3.1, with: core:citric-acid}"
	once := assaytest.Assay(t, lib, adjusting("300 g core:apple-juice", step), 60)
	twice := assaytest.Assay(t, lib, adjusting("300 g core:apple-juice", step+"\n      - "+step), 60)
	assert.Zero(t, twice.Adjusted[1].Grams.Mean)
	assert.InDelta(t, once.Chemistry.PHMeter.Mean, twice.Chemistry.PHMeter.Mean, 1e-9)
	assert.Contains(t, strings.Join(assaytest.NotesOf(twice, "step", ""), "\n"), "it reads pH 3.1 already: no Citric acid, anhydrous is added")
}
