package taste_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/chemistry"
	"sipsum/internal/constituent"
	"sipsum/internal/taste"
)

type grams = map[constituent.ID]float64

// glass is 100 ml of a liquid that holds so many grams of each, in water.
func glass(holds, most grams) taste.Glass {
	const draws, ml = 200, 100.0
	water := ml
	per := grams{}
	for id, g := range holds {
		per[id] = g / ml
		if constituent.Must(id).Parent != "" {
			water -= g
		}
	}
	per[constituent.Water] = water / ml
	unknown := grams{}
	for id, g := range most {
		unknown[id] = g / ml
	}
	pot, lab := assaytest.Pot(draws, assaytest.Poured{Code: "drink", Grams: ml, Holds: per, Most: unknown})
	volume := make([]float64, pot.N)
	for d := range volume {
		volume[d] = ml
	}
	const room = 20
	return taste.Glass{Pot: pot, Volume: volume, Seed: 1, Celsius: room, Chemistry: chemistry.Of(lab, chemistry.Liquid{Pot: pot, Celsius: room})}
}

// Equally sweet solutions, % beside % of sucrose, read in Fox and McSweeney 1998, Dairy Chemistry
// and Biochemistry, table 2.7 (Nickerson): the interval holds the sucrose that each is like.
func TestEquallySweetSolutions(t *testing.T) {
	for _, x := range []struct {
		sugar            constituent.ID
		percent, sucrose float64
	}{
		{"SUCS", 10, 10},
		{"GLUS", 1.8, 1}, {"GLUS", 3.6, 2}, {"GLUS", 8.3, 5}, {"GLUS", 7.2, 5}, {"GLUS", 13.9, 10}, {"GLUS", 12.7, 10}, {"GLUS", 21.8, 20},
		{"FRUS", 0.8, 1}, {"FRUS", 1.7, 2}, {"FRUS", 4.2, 5}, {"FRUS", 8.7, 10}, {"FRUS", 13, 15}, {"FRUS", 16.7, 20},
		{"LACS", 3.5, 1}, {"LACS", 6.5, 2}, {"LACS", 15.7, 5}, {"LACS", 25.9, 10}, {"LACS", 27.8, 15},
	} {
		s := taste.Sweetness(glass(grams{x.sugar: x.percent}, nil))
		const margin = 0.03 // the interval leaves a tenth of the range out
		assert.LessOrEqual(t, s.Low, x.sucrose*(1+margin), "%g %% %s", x.percent, x.sugar)
		assert.GreaterOrEqual(t, s.High, x.sucrose*(1-margin), "%g %% %s", x.percent, x.sugar)
		assert.LessOrEqual(t, s.High, 1.5*s.Mean, "the range is no excuse")
		assert.False(t, s.Partial)
	}
}

// Invert sugar is published at 0.85 (Sale and Skinner) to 1.3 (Gaman and Sherrington) of sucrose.
func TestInvertSugarIsTheSumOfItsParts(t *testing.T) {
	s := taste.Sweetness(glass(grams{"GLUS": 5, "FRUS": 5}, nil))
	assert.GreaterOrEqual(t, s.Mean, 8.5)
	assert.LessOrEqual(t, s.Mean, 13.0)
	require.Len(t, s.Parts, 2)
	assert.InDelta(t, s.Mean, s.Parts[0].Equivalent+s.Parts[1].Equivalent, 1e-9)
}

// unknownSugar is so much at most, in all of the totals that it is part of.
func unknownSugar(most float64) grams {
	return grams{constituent.Sugar: most, constituent.Available: most, constituent.Carbohydrate: most}
}

// What is unknown is not zero: it is at most so much, or nothing bounds it.
func TestUnknownSugarIsNotZero(t *testing.T) {
	known := taste.Sweetness(glass(grams{"SUCS": 5}, nil))
	bounded := taste.Sweetness(glass(grams{"SUCS": 5}, unknownSugar(2)))
	assert.Equal(t, known.Mean, bounded.Mean)
	assert.True(t, bounded.Partial)
	assert.InDelta(t, 5+2*1.7, bounded.UpTo, 0.01, "as sweet as the sweetest sugar (Russell et al. 2022: 1.7)")
	open := taste.Sweetness(glass(grams{"SUCS": 5}, unknownSugar(math.NaN())))
	assert.True(t, open.Partial)
	assert.True(t, math.IsNaN(open.UpTo))
	without := taste.Sweetness(glass(grams{"SUCS": 5, "GLYRL": 1}, nil))
	require.Len(t, without.Without, 1, "no factor for glycerol was found")
	assert.True(t, without.Partial)
}

// A charge balance on paper: of 100 mmol/l of lactic acid with 50 of sodium, 50 less what H⁺
// balances have their proton.
func TestMoleculesByChargeBalance(t *testing.T) {
	lactic, sodium := constituent.Must("LACAC"), constituent.Must(constituent.Sodium)
	g := glass(grams{lactic.ID: 0.010 * lactic.Molar, sodium.ID: 0.005 * sodium.Molar}, nil)
	sour := taste.Of(g).Sour
	require.Empty(t, sour.Molecules.Why)
	assert.InDelta(t, 50, sour.Molecules.Mean, 1, "protonated and H⁺ together are acid less sodium")
	assert.InDelta(t, 50, sour.Titratable.Mean, 1, "base takes the rest off")
}

// By the rule of Da Conceicao Neta et al. 2007 acids are as sour as one another by the mole; a
// burette counts their protons. The two may not agree, and never add in grams.
func TestAcidsAddByTheMole(t *testing.T) {
	of := func(id constituent.ID, mol float64) taste.SourIndex {
		return taste.Of(glass(grams{id: mol * constituent.Must(id).Molar}, nil)).Sour
	}
	citric, malic := of("CITAC", 0.001), of("MALAC", 0.001) // 10 mmol/l
	assert.InEpsilon(t, 10+malic.Hydrogen.Mean, malic.Molecules.Mean, 0.01)
	assert.InEpsilon(t, 10+citric.Hydrogen.Mean, citric.Molecules.Mean, 0.01)
	assert.InEpsilon(t, 30, citric.Titratable.Mean, 0.02, "three protons")
	assert.InEpsilon(t, 20, malic.Titratable.Mean, 0.02, "two protons")
}

// Water has no acid that a burette reads (a drop of 0.05 ml of 0.1 mol/l on 10 g), and nothing sweet.
func TestWaterHasNoTasteByNumbers(t *testing.T) {
	p := taste.Of(glass(nil, nil))
	assert.True(t, p.Sour.Hardly)
	assert.Zero(t, p.Sweet.High)
	assert.False(t, p.Sweet.Partial)
	assert.Empty(t, p.Doses)
	assert.False(t, taste.Of(glass(grams{"CITAC": 0.1}, nil)).Sour.Hardly)
}

// Doses of caffeine over 73.88 (ASTM E679) and 350 mg/l (Robinson et al. 2005).
func TestDosesAreSetBesideTheirOwnThresholds(t *testing.T) {
	dose := func(holds, most grams, id constituent.ID) taste.Dose {
		for _, d := range taste.Of(glass(holds, most)).Doses {
			if d.Constituent.ID == id {
				return d
			}
		}
		t.Fatalf("no dose of %s", id)
		return taste.Dose{}
	}
	strong := dose(grams{constituent.Caffeine: 0.060}, nil, constituent.Caffeine) // 600 mg/l
	assert.InDelta(t, 600, strong.Amount.Mean, 1e-6)
	assert.InEpsilon(t, 600/350.0, strong.Times.Low, 1e-6)
	assert.InEpsilon(t, 600/73.88, strong.Times.High, 1e-6)
	assert.Equal(t, taste.Above, strong.Place())
	assert.Equal(t, taste.Among, dose(grams{constituent.Caffeine: 0.010}, nil, constituent.Caffeine).Place())
	assert.Equal(t, taste.Below, dose(grams{constituent.Caffeine: 0.005}, nil, constituent.Caffeine).Place())
	maybe := dose(nil, grams{constituent.Caffeine: 0.050}, constituent.Caffeine)
	assert.NotEqual(t, taste.Below, maybe.Place(), "what is unknown is not zero")
	trace := dose(nil, grams{constituent.Caffeine: 0.004}, constituent.Caffeine)
	assert.Equal(t, taste.Below, trace.Place(), "not known, and at most 40 mg/l")
	cga := dose(grams{"CHLRAC": 0.1}, nil, "CHLRAC")
	assert.Equal(t, taste.Unplaced, cga.Place())
	assert.Equal(t, "no threshold was seen in print", cga.Why)
}

// Fat, protein and fibre thicken by no rule here, so that the viscosity is at least that of the
// sugars: 20 % sucrose at 20 °C is 1.945 mPa·s (CRC Handbook).
func TestBodyIsAtLeastThatOfItsSugars(t *testing.T) {
	sugar := taste.Of(glass(grams{"SUCS": 20}, nil)).Body
	assert.InEpsilon(t, 1.945, sugar.Viscosity.Mean, 0.03)
	assert.False(t, sugar.Viscosity.Partial)
	milky := taste.Of(glass(grams{"SUCS": 20, constituent.Protein: 3}, nil)).Body
	assert.True(t, milky.Viscosity.Partial)
	assert.InDelta(t, 3, milky.Protein.Mean, 1e-9)
}

// Acids thicken water: 1, 5 and 10 % of citric acid have 1.024, 1.125 and 1.283 mPa·s at 20 °C, of acetic
// acid 1.022, 1.105 and 1.210, of lactic acid 1.027, 1.138 and 1.296 (CRC Handbook). Nothing is thinner
// than its water.
func TestAcidsThickenWater(t *testing.T) {
	for acid, want := range map[constituent.ID][]float64{"CITAC": {1.024, 1.125, 1.283}, "ACEAC": {1.022, 1.105, 1.210}, "LACAC": {1.027, 1.138, 1.296}} {
		for i, percent := range []float64{1, 5, 10} {
			got := taste.Of(glass(grams{acid: percent}, nil)).Body.Viscosity
			assert.InEpsilon(t, want[i], got.Mean, 0.06, "%g %% %s", percent, acid)
			assert.Greater(t, got.Low, 1.0016)
			assert.False(t, got.Partial)
		}
	}
	for _, draw := range taste.Of(glass(grams{"CITAC": 0.01}, nil)).Body.Viscosity.Draws {
		assert.GreaterOrEqual(t, draw, 1.0016)
	}
}

// What is no liquid has no profile.
func TestSugarByItselfIsNoDrink(t *testing.T) {
	pot, _ := assaytest.Pot(1, assaytest.Poured{Code: "sugar", Grams: 100, Holds: grams{"SUCS": 1}})
	assert.NotEmpty(t, taste.Of(taste.Glass{Pot: pot, Volume: []float64{60, 60}}).Why)
}
