package chemistry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acidity"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
)

// leafAnd is 100 g of water with an acid that nobody has measured, of which there may be as
// much as most, and a gram for a gram of citric acid.
func leafAnd(most, citric float64) *chemistry.Chemistry {
	list := []assaytest.Poured{{Code: "leaf", Grams: 100, Group: "water", Holds: grams{"WATER": 0.9, "SUCS": 0.1}, Most: grams{"OA": most / 100}}}
	if citric > 0 {
		list = append(list, assaytest.Poured{Code: "acid", Grams: citric, SD: 0.02 * citric, Holds: grams{"CITAC": 1}, Chemical: true})
	}
	pot, lab := assaytest.Pot(draws, list...)
	return chemistry.Of(lab, chemistry.Liquid{Pot: pot, Celsius: 5, Read: acidity.Surely{}})
}

// An acid that nobody has measured leaves the pH anywhere from that of none to that of the
// most; so open, it is withheld and its ends are told. By the ends: 1 g of citric acid in
// 100 g alone has pH 2.2 to 2.3 (0.05 mol/l, between the 2.08 and 2.62 of published tables),
// and water in air 5.6.
func TestAnUnmeasuredAcidOpensThePH(t *testing.T) {
	c := leafAnd(1, 0)
	assert.True(t, c.PHMeter.Unknown)
	assert.Contains(t, c.PHMeter.Why, "leaves it open")
	assert.Contains(t, c.PHMeter.Why, "own:leaf")
	assert.True(t, math.IsNaN(c.PHMeter.Mean))
	assert.InDelta(t, 2.3, c.PHMeter.Low, 0.15)
	assert.Greater(t, c.PHMeter.High, 5.5)
	for _, e := range []chemistry.Estimate{c.PH, c.Acidity[0].Per100g, c.Acidity[2].PerLitre, c.BrixAcid, c.BrixCorrected, c.Capacity, c.StrongIons} {
		assert.Equal(t, c.PHMeter.Why, e.Why)
		assert.True(t, e.Unknown && math.IsNaN(e.Mean+e.SD))
	}
	assert.Empty(t, c.Curve)
}

// Where it is little beside what is known it widens what is printed, to the ends of none and
// of the most; where it may be as much again the pH stands and the acidity is bounded.
func TestALittleUnmeasuredAcidWidens(t *testing.T) {
	sure, little := leafAnd(0, 1), leafAnd(0.2, 1)
	require.Empty(t, little.PHMeter.Why)
	ta := little.Acidity[0].Per100g
	require.Empty(t, ta.Why)
	assert.InDelta(t, 1.0, ta.Low/(100/101.0), 0.04, "with none, and within its draws")
	assert.InDelta(t, 1.2, ta.High/(100/101.0), 0.04, "with the most")
	assert.InEpsilon(t, ta.High/100*little.Density.Mean*1000, little.Acidity[0].PerLitre.High, 1e-6)
	assert.Less(t, little.Acidity[1].Per100g.High, ta.High)
	assert.Greater(t, little.PHMeter.High-little.PHMeter.Low, 2*(sure.PHMeter.High-sure.PHMeter.Low))
	assert.GreaterOrEqual(t, little.PH.High-little.PH.Mean, little.PHMeter.High-little.PHMeter.Mean-1e-12, "at least as open at 5 °C")
	assert.GreaterOrEqual(t, little.PH.Mean-little.PH.Low, little.PHMeter.Mean-little.PHMeter.Low-1e-12)
	assert.InDelta(t, little.PHMeter.High-little.PHMeter.Low, little.PH.High-little.PH.Low, 0.02)
	require.Empty(t, little.BrixAcid.Why)
	assert.InDelta(t, little.Brix.Mean/ta.High, little.BrixAcid.Low, 1e-9)
	assert.InDelta(t, little.Brix.Mean/ta.Low, little.BrixAcid.High, 1e-9)
	assert.NotEmpty(t, little.Curve)

	much := leafAnd(4, 1)
	require.Empty(t, much.PHMeter.Why, "the pH is in a power of ten of it")
	for i, a := range much.Acidity {
		assert.Contains(t, a.Per100g.Why, "acids unknown of own:leaf: titrate it")
		assert.True(t, math.IsNaN(a.Per100g.Mean))
		assert.InDelta(t, 1, a.Per100g.Low, 0.06, i)
		assert.InDelta(t, 5, a.Per100g.High, 0.2, i)
		assert.InDelta(t, 10*much.Density.Mean, a.PerLitre.Low, 0.6)
		assert.InDelta(t, 50*much.Density.Mean, a.PerLitre.High, 2)
	}
	assert.NotEmpty(t, much.Capacity.Why)
	assert.NotEmpty(t, much.StrongIons.Why)
	assert.NotEmpty(t, much.BrixAcid.Why)
	assert.Empty(t, much.Curve)
}

// Above 1.5 g of protein in 100 g (data/acid_unmeasured.csv) no composition tells a pH. A
// meter does, and nothing but what it read: not the pH when served, nor the acidity unless
// that was read too.
func TestProteinWithholds(t *testing.T) {
	of := func(protein float64, sure acidity.Surely) *chemistry.Chemistry {
		pot, lab := assaytest.Pot(draws, assaytest.Poured{Code: "soup", Grams: 100, Group: "water", Holds: grams{"WATER": 0.98 - protein/100, "CITAC": 0.02, "PROCNT": protein / 100}, Spread: grams{"CITAC": 0.05}})
		return chemistry.Of(lab, chemistry.Liquid{Pot: pot, Celsius: 5, Read: sure})
	}
	assert.Empty(t, of(1.4, acidity.Surely{}).PHMeter.Why)
	none := of(1.6, acidity.Surely{})
	assert.Contains(t, none.PHMeter.Why, "1.6 g of protein in 100 g")
	assert.Contains(t, none.Acidity[0].Per100g.Why, "protein")
	require.Len(t, none.Acidity, 3)
	assert.Equal(t, 7.0, none.Acidity[1].EndPoint)
	assert.False(t, none.Density.Unknown || none.Brix.Unknown, "its body does not care")

	read := of(1.6, acidity.Surely{PH: true})
	assert.Empty(t, read.PHMeter.Why)
	assert.Contains(t, read.PH.Why, "protein")
	assert.Contains(t, read.Acidity[0].Per100g.Why, "protein")
	assert.Contains(t, read.Capacity.Why, "protein")
	assert.Contains(t, read.StrongIons.Why, "protein")
	assert.Empty(t, read.Curve)
	both := of(1.6, acidity.Surely{PH: true, Acidity: true})
	assert.Empty(t, both.Acidity[0].Per100g.Why)
	assert.Contains(t, both.PH.Why, "protein")
	assert.NotEmpty(t, of(1.6, acidity.Surely{Acidity: true}).PHMeter.Why, "a burette reads no pH")
}

// What is no liquid has neither °Brix nor density, and no pH until its juice was read; what
// holds no water has none whatever was read.
func TestWhatIsNoLiquid(t *testing.T) {
	dry := assaytest.Poured{Code: "paste", Grams: 100, Group: "water", Holds: grams{"WATER": 0.04, "SUCS": 0.93, "CITAC": 0.03}}
	pot, lab := assaytest.Pot(draws, dry)
	c := chemistry.Of(lab, chemistry.Liquid{Pot: pot, Celsius: 25, Read: acidity.Surely{}})
	assert.Contains(t, c.TooDry, "no liquid")
	for _, r := range []float64{c.Brix.Mean, c.Brix.High, c.Brix.UpTo, c.Density.Mean, c.Density.SD, c.Density.WithBounds} {
		assert.True(t, math.IsNaN(r))
	}
	assert.True(t, c.Brix.Unknown && c.Density.Unknown)
	assert.Contains(t, c.PHMeter.Why, "measure the pH of its juice")
	assert.Equal(t, c.TooDry, c.BrixCorrected.Why)
	read := chemistry.Of(lab, chemistry.Liquid{Pot: pot, Celsius: 25, Read: acidity.Surely{PH: true}})
	assert.Empty(t, read.PHMeter.Why)
	assert.True(t, read.Brix.Unknown)

	sugar, lab := assaytest.Pot(draws, assaytest.Poured{Code: "sugar", Grams: 100, Holds: grams{"SUCS": 1}, Chemical: true})
	for _, sure := range []acidity.Surely{{}, {PH: true, Acidity: true}} {
		c = chemistry.Of(lab, chemistry.Liquid{Pot: sugar, Celsius: 25, Read: sure})
		assert.Contains(t, c.PHMeter.Why, "no water")
		assert.Contains(t, c.Acidity[0].PerLitre.Why, "no water")
	}

	// The scale of refractometers ends at 95 °Brix (data/limits.csv).
	thick, lab := assaytest.Pot(draws, assaytest.Poured{Code: "water", Grams: 9, SD: 3, Group: "water", Holds: grams{"WATER": 1}}, assaytest.Poured{Code: "sugar", Grams: 91, Group: "water", Holds: grams{"SUCS": 1}})
	c = chemistry.Of(lab, chemistry.Liquid{Pot: thick, Celsius: 25, Read: acidity.Surely{}})
	if c.TooDry == "" {
		assert.LessOrEqual(t, c.Brix.High, 95.0)
	} else {
		assert.True(t, c.Brix.Unknown)
	}
}

// What rests on nothing that is given rests on nothing; what is given says what it rests on.
func TestAWithheldPHRestsOnNothing(t *testing.T) {
	lib := assaytest.Core(t)
	milk := assaytest.Glass(t, lib, "core:milk-whole", 25)
	if milk.PHMeter.Why != "" {
		assert.Empty(t, milk.RestsOn)
	}
	coffee := assaytest.Glass(t, lib, "core:filter-coffee-light", 25)
	require.Empty(t, coffee.PHMeter.Why)
	assert.NotEmpty(t, coffee.RestsOn)
}

// A spirit or a syrup of pure sugar hardly buffers: a trace decides its pH, which is withheld
// whether its composition tells one or leaves it open, until a meter has read it.
func TestWhatHardlyBuffersHasNoPH(t *testing.T) {
	lib := assaytest.Core(t)
	vodka := assaytest.Glass(t, lib, "core:vodka-40", 25)
	assert.Contains(t, vodka.PHMeter.Why, "hardly buffers")
	assert.Empty(t, vodka.Curve)
	syrup := assaytest.Assay(t, lib, "drink: x\nserves: 1\nbuild: [100 g core:sugar-white, 100 g core:water-pure]\n", 200).Chemistry
	assert.Contains(t, syrup.PHMeter.Why, "hardly buffers")
	assert.Contains(t, syrup.PH.Why, "hardly buffers")
	read := assaytest.Assay(t, lib, "drink: x\nserves: 1\nbuild: [100 g core:sugar-white, 100 g core:water-pure]\nfinish:\n  - measured: {ph: 6.0}\n", 200).Chemistry
	assert.Empty(t, read.PHMeter.Why)
	assert.Empty(t, assaytest.Glass(t, lib, "core:water-pure", 25).PHMeter.Why, "water has the pH that its ions make")
	assert.Empty(t, assaytest.Glass(t, lib, "core:lemon-juice", 25).PHMeter.Why)
}

// Where a composition tells the pH of a liquid that hardly buffers, less than 1 mmol/l per pH
// (data/acid_unmeasured.csv), it is withheld and what it rests on stays; not of a water, whose
// ions make it.
func TestATracePHIsWithheld(t *testing.T) {
	of := func(group string, citric float64, sure acidity.Surely) *chemistry.Chemistry {
		pot, lab := assaytest.Pot(20, assaytest.Poured{Code: "x", Grams: 100, Group: group, Holds: grams{"WATER": 0.9 - citric, "SUCS": 0.1, "CITAC": citric, "K": citric / 5}})
		return chemistry.Of(lab, chemistry.Liquid{Pot: pot, Celsius: 25, Read: sure})
	}
	for _, citric := range []float64{0.00001, 0.0001, 0.001} {
		c := of("spirit", citric, acidity.Surely{})
		trace := c.Capacity.Mean < 1
		assert.Equal(t, citric < 0.0005, trace)
		assert.Equal(t, trace, c.PHMeter.Why != "")
		assert.Equal(t, trace, c.PH.Unknown)
		assert.Equal(t, trace, c.Curve == nil)
		assert.Empty(t, c.Capacity.Why)
		assert.Empty(t, c.StrongIons.Why)
		assert.Positive(t, c.StrongIons.Mean)
		if trace {
			assert.Contains(t, c.PHMeter.Why, "hardly buffers")
		}
		assert.Empty(t, of("spirit", citric, acidity.Surely{PH: true}).PHMeter.Why)
		assert.Empty(t, of("water", citric, acidity.Surely{}).PHMeter.Why)
	}
}
