package chemistry_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/acidity"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

type grams = map[constituent.ID]float64

const draws = 200

// dissolved pours substances into a water that holds nothing, up to 100 g, each so uncertain.
func dissolved(sd float64, of grams) (*ledger.Pot, *acidity.Laboratory) {
	water := 100.0
	var list []assaytest.Poured
	for _, c := range constituent.All() {
		if g := of[c.ID]; g > 0 {
			water -= g
			list = append(list, assaytest.Poured{Code: string(c.ID), Grams: g, SD: g * sd, Holds: grams{c.ID: 1}, Chemical: true})
		}
	}
	return assaytest.Pot(draws, append(list, assaytest.Poured{Code: "water", Grams: water, Holds: grams{"WATER": 1}, Group: "water"})...)
}

// solved gives the chemistry of such a solution at the temperature of a meter.
func solved(sd float64, of grams) *chemistry.Chemistry {
	pot, lab := dissolved(sd, of)
	return chemistry.Of(lab, chemistry.Liquid{Pot: pot, Celsius: acidity.MeterCelsius, Read: acidity.Surely{}})
}

// salted is so much of an acid, in mol, with so much of its charge taken by potassium. Ions
// weigh nothing in the ledger, since ash holds them.
func salted(id constituent.ID, mol, potassium float64) grams {
	return grams{id: mol * constituent.Must(id).Molar, "K": potassium * constituent.Must("K").Molar}
}

// A gram of citric acid in 100 g takes the base of a gram, whatever else stands in it; more
// acid is more, and an end point further on takes more base. In a litre there is as much as
// the density says.
func TestAcidityIsTheAcid(t *testing.T) {
	last := 0.0
	for _, g := range []float64{0.05, 0.2, 1, 3, 6} {
		c := solved(0.1, grams{"CITAC": g, "SUCS": 10})
		require.Empty(t, c.PHMeter.Why)
		ta := c.Acidity[0].Per100g
		assert.InEpsilon(t, g, ta.Mean, 0.01)
		assert.Greater(t, ta.Mean, last)
		last = ta.Mean
		assert.Equal(t, []float64{8.1, 7, 8.2}, []float64{c.Acidity[0].EndPoint, c.Acidity[1].EndPoint, c.Acidity[2].EndPoint})
		assert.Less(t, c.Acidity[1].Per100g.Mean, ta.Mean)
		assert.Less(t, ta.Mean, c.Acidity[2].Per100g.Mean)
		assert.InEpsilon(t, ta.Mean/100*c.Density.Mean*1000, c.Acidity[0].PerLitre.Mean, 1e-9)
		assert.InEpsilon(t, 0.1, ta.SD/ta.Mean, 0.2, "as uncertain as what was poured")
		assert.InEpsilon(t, c.Brix.Mean/ta.Mean, c.BrixAcid.Mean, 1e-9)
		assert.Greater(t, c.BrixCorrected.Mean, c.Brix.Mean, "acid hides some of the sugar")
		assert.Less(t, c.PHMeter.Low, c.PHMeter.Mean)
		assert.Greater(t, c.PHMeter.High, c.PHMeter.Mean)
	}
}

// The figures of a solution are those of its draws, of which the first 200 are solved.
func TestSolvedAreTheFirstDraws(t *testing.T) {
	pot, lab := dissolved(0.1, grams{"CITAC": 1, "SUCS": 12})
	c := chemistry.Of(lab, chemistry.Liquid{Pot: pot, Celsius: 5, Read: acidity.Surely{}})
	pH, per100g, err := lab.Acidity(pot)
	require.NoError(t, err)
	assert.Equal(t, estimate.Summarise(pH), c.PHMeter.Summary)
	assert.InDelta(t, estimate.Summarise(per100g).SD, c.Acidity[0].Per100g.SD, 1e-12)
	brix := lab.Gauge.Brix(pot)
	assert.Equal(t, estimate.Summarise(brix), c.Brix.Summary)
	assert.InDelta(t, estimate.Summarise(estimate.Ratio(brix, per100g, 1)).High, c.BrixAcid.High, 1e-9)
	assert.Equal(t, estimate.Summarise(lab.Gauge.Density(pot)), c.Density.Summary)
	assert.Equal(t, "°Bx", c.Brix.Unit)

	assert.Equal(t, 5.0, c.Celsius)
	assert.NotEqual(t, c.PH.Mean, c.PHMeter.Mean)
	assert.InDelta(t, c.PHMeter.Mean, c.PH.Mean, 0.1)
	same := chemistry.Of(lab, chemistry.Liquid{Pot: pot, Celsius: acidity.MeterCelsius, Read: acidity.Surely{}})
	assert.Equal(t, same.PHMeter, same.PH)
	hot := chemistry.Of(lab, chemistry.Liquid{Pot: pot, Celsius: 75, Read: acidity.Surely{}})
	assert.Contains(t, hot.PH.Why, "75 °C")
	assert.Equal(t, c.PHMeter, hot.PHMeter)

	few := chemistry.Of(lab, chemistry.Liquid{Pot: pot.First(51), Celsius: 5, Read: acidity.Surely{}})
	assert.Equal(t, estimate.Summarise(pH[:51]), few.PHMeter.Summary)
}

// A base has no acidity, rather than less than none, and nothing to divide by.
func TestNoAcidityBelowZero(t *testing.T) {
	c := solved(0.1, grams{"K": 0.1, "SUCS": 10})
	require.Empty(t, c.PHMeter.Why)
	assert.Greater(t, c.PHMeter.Mean, 11.0)
	for _, a := range c.Acidity {
		assert.Equal(t, []float64{0, 0, 0}, []float64{a.Per100g.Mean, a.Per100g.High, a.PerLitre.High})
	}
	assert.Contains(t, c.BrixAcid.Why, "hardly any acid")
	assert.Empty(t, c.BrixCorrected.Why)
	assert.Contains(t, solved(0.1, grams{"CITAC": 0.002, "SUCS": 10}).BrixAcid.Why, "hardly any acid", "a burette reads none of it")
	assert.Empty(t, solved(0.01, grams{"CITAC": 0.005, "SUCS": 10}).BrixAcid.Why)
	assert.NotEmpty(t, solved(0.4, grams{"CITAC": 0.0035, "SUCS": 10}).BrixAcid.Why, "it may be none")
}

// An acid of which half has its charge taken buffers by ln 10/4 of its amount (Van Slyke
// 1922, J. Biol. Chem. 52:525), of one proton: lactic acid.
func TestBufferOfAHalfNeutralisedAcid(t *testing.T) {
	for _, mol := range []float64{0.005, 0.01, 0.02} {
		c := solved(0.01, salted("LACAC", mol, mol/2))
		pot, lab := dissolved(0.01, salted("LACAC", mol, mol/2))
		litres := lab.Gauge.Volume(pot)[0] / 1000
		require.Empty(t, c.Capacity.Why)
		assert.InEpsilon(t, math.Ln10/4*mol*1000/litres, c.Capacity.Mean, 0.04, "%g mol, and what is free of it", mol)
		assert.InEpsilon(t, mol/2*1000/litres, c.StrongIons.Mean, 1e-9)
		assert.InEpsilon(t, 0.01, c.StrongIons.SD/c.StrongIons.Mean, 0.2)
		assert.InDelta(t, 3.75, c.PHMeter.Mean, 0.15, "its pK is 3.86, less with salt")
	}
	assert.Zero(t, solved(0.01, grams{"LACAC": 1}).StrongIons.Mean)
	half := constituent.Must("CLD").Molar * 0.005
	both, lab := assaytest.Pot(20, assaytest.Poured{Code: "salt", Grams: 1, Holds: grams{"MASS-other": 1, "K": 0.005 * constituent.Must("K").Molar, "CLD": half}, Chemical: true},
		assaytest.Poured{Code: "acid", Grams: 100, Holds: grams{"WATER": 0.99, "LACAC": 0.01}, Group: "water"})
	assert.Equal(t, 0.0, chemistry.Of(lab, chemistry.Liquid{Pot: both, Celsius: 25, Read: acidity.Surely{}}).StrongIons.Mean, "what cancels is none")
}

// A point of the curve is what pouring that base gives: from its own pH, where it takes
// none, in steps of half a pH to the end point.
func TestTheCurveIsWhatPouringBaseGives(t *testing.T) {
	of := salted("CITAC", 0.008, 0.01)
	pot, lab := assaytest.Pot(0, assaytest.Poured{Code: "salt", Grams: 100, Group: "water",
		Holds: grams{"WATER": 0.98, "CITAC": 0.02, "K": of["K"] / 100}})
	c := chemistry.Of(lab, chemistry.Liquid{Pot: pot, Celsius: 25, Read: acidity.Surely{}})
	require.NotEmpty(t, c.Curve)
	assert.Equal(t, c.PHMeter.Mean, c.Curve[0].PH)
	assert.Zero(t, c.Curve[0].Base)
	last := c.Curve[len(c.Curve)-1]
	assert.Equal(t, 8.1, last.PH)
	assert.InEpsilon(t, c.Acidity[0].Per100g.Mean, last.Base/1000*192.124/3, 1e-4, "the acidity")
	for i, p := range c.Curve {
		base := p.Base / 1000 * constituent.Must("K").Molar
		more, lab := assaytest.Pot(0, assaytest.Poured{Code: "salt", Grams: 100, Group: "water", Holds: grams{"WATER": 0.98, "CITAC": 0.02, "K": (of["K"] + base) / 100}})
		assert.InDelta(t, p.PH, chemistry.Of(lab, chemistry.Liquid{Pot: more, Celsius: 25, Read: acidity.Surely{}}).PHMeter.Mean, 1e-4, "%.2f mmol", p.Base)
		if i > 0 {
			assert.Greater(t, p.Base, c.Curve[i-1].Base)
		}
		if i > 0 && i < len(c.Curve)-1 {
			assert.Zero(t, math.Mod(p.PH, 0.5))
			assert.GreaterOrEqual(t, p.PH-c.Curve[0].PH, 0.25, "no point beside its own")
			assert.GreaterOrEqual(t, last.PH-p.PH, 0.25, "nor beside the last")
		}
	}
	whole := 0
	for at := math.Ceil((c.Curve[0].PH + 0.25) * 2); at/2 < 8.1-0.25; at++ {
		whole++
	}
	assert.Len(t, c.Curve, whole+2)
	assert.Empty(t, solved(0, grams{"LACAC": 0.05, "K": 0.001 * 39.1}).Curve, "nothing is left up to the end point")
}

// A dose is what pouring it gives: the stock, 10 g of the acid in 100 g, brings the liquid to
// the acidity and the pH that the table says. The targets are round, and above what is there.
func TestDosesLandOnTheirTargets(t *testing.T) {
	for _, c := range []struct {
		citric  float64
		targets []float64
	}{
		{0.82, []float64{0.9, 1.0, 1.1}}, {0.47, []float64{0.5, 0.55, 0.6}}, {0.05, []float64{0.06, 0.07, 0.08}}, {1.9, []float64{2.0, 2.2, 2.4}},
	} {
		liquid := assaytest.Poured{Code: "liquid", Grams: 100, Group: "water", Holds: grams{"WATER": 1 - c.citric/100, "CITAC": c.citric / 100}}
		pot, lab := assaytest.Pot(20, liquid)
		was := chemistry.Of(lab, chemistry.Liquid{Pot: pot, Celsius: 25, Read: acidity.Surely{PH: true}})
		require.Len(t, was.Doses, 12, "four acids, three targets")
		half, lab := assaytest.Pot(20, assaytest.Poured{Code: "liquid", Grams: 50, Group: "water", Holds: liquid.Holds})
		assert.InDelta(t, was.Doses[0].Ml, chemistry.Of(lab, chemistry.Liquid{Pot: half, Celsius: 25, Read: acidity.Surely{PH: true}}).Doses[0].Ml, 1e-6, "of 100 g, whatever there is")
		for i, d := range was.Doses {
			id := map[string]constituent.ID{"citric acid": "CITAC", "malic acid": "MALAC", "tartaric acid": "TARAC", "lactic acid": "LACAC"}[d.Acid]
			require.NotEmpty(t, id, d.Acid)
			at := fmt.Sprintf("%s to %g", d.Acid, d.Acidity)
			assert.Equal(t, 10.0, d.Percent)
			assert.InDelta(t, c.targets[i%3], d.Acidity, 1e-9, at)
			stock := assaytest.Poured{Code: "stock", Grams: 100, Group: "water", Holds: grams{"WATER": 0.9, id: 0.1}}
			alone, lab := assaytest.Pot(0, stock)
			stock.Grams = d.Ml * lab.Gauge.Density(alone)[0]
			mixed, lab := assaytest.Pot(0, liquid, stock)
			is := chemistry.Of(lab, chemistry.Liquid{Pot: mixed, Celsius: 25, Read: acidity.Surely{}})
			assert.InEpsilon(t, d.Acidity, is.Acidity[0].Per100g.Mean, 0.002, at)
			assert.InDelta(t, d.PH, is.PHMeter.Mean, 0.002, at)
		}
	}
}

// Nobody doses a liquid whose acidity is vague or whose pH nobody has read, nor makes one
// sourer with a stock that is less sour than it.
func TestWhereNoDosesAreGiven(t *testing.T) {
	doses := func(sd, citric float64, sure acidity.Surely) []chemistry.Dose {
		pot, lab := dissolved(sd, grams{"CITAC": citric})
		return chemistry.Of(lab, chemistry.Liquid{Pot: pot, Celsius: 25, Read: sure}).Doses
	}
	read := acidity.Surely{PH: true}
	assert.Len(t, doses(0.25, 1, read), 12)
	assert.Empty(t, doses(0.4, 1, read))
	assert.Empty(t, doses(0.25, 1, acidity.Surely{Acidity: true}))
	assert.Empty(t, doses(0.01, 12, read))
	some := doses(0.01, 5.2, read)
	assert.NotEmpty(t, some)
	for _, d := range some {
		assert.Less(t, d.Ml, 100.0, "no more of a stock than of the liquid")
	}
	none, lab := dissolved(0.01, grams{"K": 0.0001})
	for i, d := range chemistry.Of(lab, chemistry.Liquid{Pot: none, Celsius: 25, Read: read}).Doses {
		assert.InDelta(t, 0.01*float64(i%3+1), d.Acidity, 1e-9)
	}
}
