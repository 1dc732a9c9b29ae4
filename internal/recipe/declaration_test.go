package recipe_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// declared gives an own food of a drink under rules, and what is said of how it was read.
func declared(t testing.TB, rules, entry string) (p *food.Profile, said string) {
	t.Helper()
	r, err := find(t, assaytest.Library{}, "drink: x\nserves: 1\n"+rules+"foods:\n  a: {name: A, "+entry+", source: \"pack\"}\nbuild: [\"10 g own:a\"]\n")
	require.NoError(t, err)
	p = r.Lines[r.Drink.Build[0].Path].Profile
	var list []string
	for _, n := range p.Notes {
		if n.Kind == "declared" {
			list = append(list, n.Text)
		}
	}
	return p, strings.Join(list, "\n")
}

// Regulation (EU) No 1169/2011, Annex I, against 21 CFR 101.9(c)(6).
func TestCarbohydrateIsReadByTheRulesOfThePack(t *testing.T) {
	const values = "values: {carbohydrate: 12 g, fibre: 2 g}"
	for _, c := range []struct {
		rules, entry string
		of           constituent.ID
		says         string
	}{
		{"", "per: 100 g, " + values, "CHOAVL", "available carbohydrate, without fibre, as the rules EU have it (since neither the food nor the drink names rules)"},
		{"rules: [us, eu]\n", "per: 100 g, " + values, "CHOCDF", "total carbohydrate by difference, fibre included, as the rules US have it (the drink's first rules)"},
		{"rules: [us]\n", "declared: anz, per: 100 g, " + values, "CHOAVL", "as the rules ANZ have it (as the file says)"},
		{"rules: [eu]\n", "declared: ca, per: 100 g, " + values, "CHOCDF", "as the rules CA have it"},
		{"rules: [codex]\n", "per: 100 g, " + values, "CHOAVL", "as the rules CODEX have it"},
		{"rules: [us]\n", "declared: us, per: 100 g, values: {CHOAVL: 12 g}", "CHOAVL", "available carbohydrate, without fibre, as CHOAVL says"},
	} {
		p, said := declared(t, c.rules, c.entry)
		v, ok := p.Food.Value(c.of)
		require.True(t, ok, c.entry)
		assert.Equal(t, 12.0, v.Amount)
		assert.Contains(t, said, c.says)
		for _, n := range p.Notes {
			if strings.Contains(n.Text, "carbohydrate is read") {
				assert.Equal(t, c.of, n.Constituent)
			}
		}
		if c.of == "CHOCDF" {
			assert.InDelta(t, 0.10, p.Cell("CHOAVL").Amount, 1e-9, "12 g less 2 g of fibre: %s", c.entry)
		} else {
			assert.InDelta(t, 0.12, p.Cell("CHOAVL").Amount, 1e-9)
		}
	}
	p, _ := declared(t, "", "per: 100 g, values: {carbohydrate: 12 g, polyols: 5 g, salt: 1 g}")
	assert.InDelta(t, 0.07, p.Cell("CHOAVL").Amount, 1e-9, "the polyols of an eu carbohydrate")
	assert.InDelta(t, 0.004, p.Cell(constituent.Sodium).Amount, 1e-9, "Annex I: salt is sodium × 2.5")
}

// The spread is that of the tolerance, and not that of such foods; one-sided rules leave the other
// side to the class, and rules that say nothing leave both.
func TestADeclaredFigureIsAsUnsureAsItsRulesAllow(t *testing.T) {
	const z = 1.382
	for _, c := range []struct {
		declared string
		want     float64 // of 20 g of sugars, rounded to a gram
	}{
		{"eu", (0.5 + 0.2*19.5 + 0.5 + 0.2*20.5) / 2 / z},
		{"us", (0.5 + 0.2*20.5 + z*20*food.ClassSpread(constituent.Must("SUGAR"), "syrup")) / 2 / z},
		{"anz", 20 * food.ClassSpread(constituent.Must("SUGAR"), "syrup")},
	} {
		p, said := declared(t, "", "group: syrup, declared: "+c.declared+", per: 100 g, values: {SUGAR: 20 g, NA: 10 mg}")
		sum := 0.0
		for _, total := range p.Totals {
			if total.Constituent.ID == "SUGAR" {
				sum = total.Cell.SD
			}
		}
		if sum == 0 {
			sum = p.Cell("SUGAR").SD
		}
		assert.InEpsilon(t, c.want/100, sum, 1e-3, c.declared)
		switch c.declared {
		case "eu":
			assert.Contains(t, said, "EU accepts around what the pack says, in 100 g: sugars 15.6 to 24.6 g (European Commission guidance")
			assert.Contains(t, said, "of salt nothing is said there")
		case "us":
			assert.Contains(t, said, "sugars at most 24.6 g, sodium at most 15 mg")
		default:
			assert.NotContains(t, said, "accepts")
		}
	}
	p, _ := declared(t, "", "group: syrup, per: 100 g, values: {SUGAR: 20 g ± 1 g}")
	assert.InDelta(t, 0.01/1.7320508, p.Totals[0].Cell.SD, 1e-6, "a stated ± stands")
	p, _ = declared(t, "", "group: other, per: 100 g, values: {FAT: 0.4 g}")
	assert.InEpsilon(t, (0.4+0.05+1.5)/2/z/100, p.Totals[0].Cell.SD, 1e-3, "less than nothing is not accepted")
	p, _ = declared(t, "", "group: other, per: 100 g, values: {SUGAR: 99 g}")
	assert.LessOrEqual(t, p.Cell("SUGAR").SD, (8.9+1)/2/z/100+1e-9, "nor more than the whole")
}

// A pack's 0 is below the limit of its rules (data/card_rounding.csv), on the basis of the figure: a
// serving of 15 ml with 0 g of fat by the us may hold 3.3 g in 100 ml. What no rules round is what the
// source says: none. A laboratory's 0 is below half of its last digit.
func TestADeclaredZeroIsBelowItsLimit(t *testing.T) {
	for _, c := range []struct {
		entry string
		of    constituent.ID
		below float64 // in 100 g, in the vocabulary's unit; 0 of what stays none
	}{
		{"declared: eu, per: 100 g, values: {fat: 0 g}", "FAT", 0.5},
		{"per: 100 g, values: {FAT: 0.0 g}", "FAT", 0.5},
		{"declared: eu, per: 50 ml, density: 1 g/ml, values: {sugars: 0 g}", "SUGAR", 1},
		{"declared: eu, per: 100 ml, density: 1.25 g/ml, values: {sugars: 0 g}", "SUGAR", 0.4},
		{"declared: eu, per: 100 g, values: {saturates: 0 g}", "FASAT", 0.1},
		{"declared: eu, per: 100 g, values: {salt: 0 g}", "NA", 5},
		{"declared: eu, per: 100 g, values: {salt: 0 mg}", "NA", 5},
		{"declared: eu, per: 100 g, values: {NA: 0 mg}", "NA", 5},
		{"declared: us, per: 15 g, values: {fat: 0 g}", "FAT", 0.5 / 15 * 100},
		{"declared: us, per: 240 g, values: {sodium: 0 mg}", "NA", 5.0 / 2.4},
		{"declared: us, per: 50 g, values: {calories: 0 kcal}", "ENERC_KCAL", 10},
		{"declared: anz, per: 100 g, values: {fat: 0 g}", "FAT", 0.5},
		{"declared: anz, per: 100 g, values: {fat: 0.0 g}", "FAT", 0.05},
		{"declared: eu, per: 100 g, values: {carbohydrate: 5 g, polyols: 5 g}", "CHOAVL", 0.5},
		{"declared: eu, per: 100 g, values: {fat: 0 g ± 0 g}", "FAT", 0},
		{"declared: eu, per: 100 g, values: {ALC: 0 g}", "ALC", 0},
		{"declared: eu, per: 100 g, values: {CAFFN: 0 mg}", "CAFFN", 0},
		{"group: coffee bean, per: 50 g, coffee: {lab: {values: {CAFFN: 0 mg}, source: r}}", "CAFFN", 1},
	} {
		p, said := declared(t, "", c.entry)
		v, ok := p.Food.Value(c.of)
		require.True(t, ok, c.entry)
		if c.below == 0 {
			assert.Equal(t, 0.0, v.Amount, c.entry)
			assert.Equal(t, estimate.Calculated, v.State, c.entry)
			continue
		}
		assert.Equal(t, estimate.Below, v.State, c.entry)
		assert.False(t, food.Stated(v.Amount), c.entry)
		assert.InEpsilon(t, c.below, v.Limit, 1e-9, c.entry)
		assert.Equal(t, !strings.Contains(c.entry, "lab:"), strings.Contains(said, "a 0 on the pack is not none"), c.entry)
	}
	_, said := declared(t, "", "declared: us, per: 15 g, values: {fat: 0 g, sodium: 0 mg, protein: 1 g}")
	assert.Contains(t, said, "less than what the rules US let be printed as 0, or than half of its last digit. In 15 g it counts as fat < 0.5 g, sodium < 5 mg")
}

// A trace on a pack is no more than what the rules let be printed as 0; of what they do not round
// nobody knows how little it is.
func TestATraceOnAPackIsWithinItsZero(t *testing.T) {
	for _, c := range []struct {
		entry string
		of    constituent.ID
		most  float64 // in 100 g, in the vocabulary's unit; 0 of what has no limit
	}{
		{"declared: eu, per: 100 g, values: {fat: trace}", "FAT", 0.5},
		{"declared: eu, per: 100 g, values: {salt: trace}", "NA", 5},
		{"declared: us, per: 15 g, values: {fat: trace}", "FAT", 0.5 / 15 * 100},
		{"group: fruit juice, declared: eu, per: 100 g, values: {alcohol: trace}", "ALC", 0},
	} {
		p, _ := declared(t, "", c.entry)
		v, ok := p.Food.Value(c.of)
		require.True(t, ok, c.entry)
		assert.Equal(t, estimate.Trace, v.State, c.entry)
		cell := p.Cell(c.of)
		if c.most == 0 {
			assert.False(t, cell.Known, "unknown, and no assumed zero: %s", c.entry)
			continue
		}
		assert.InEpsilon(t, c.most, v.Limit, 1e-9, c.entry)
		assert.True(t, cell.Known && cell.Limit > 0, c.entry)
	}
}

// Standard 1.2.8, published panel: 3.6 g protein, 1.7 g fat, 31.0 g carbohydrate, 6.1 g fibre are 700 kJ.
// FDA sample label of 2014: 8 g fat, 37 g carbohydrate with 4 g fibre, 3 g protein are 230 Calories.
func TestAnEnergyThatDoesNotFitIsSaid(t *testing.T) {
	for _, c := range []struct{ entry, says string }{
		{"declared: anz, per: 100 g, values: {energy: 700 kJ, protein: 3.6 g, fat: 1.7 g, carbohydrate: 31.0 g, fibre: 6.1 g}", ""},
		{"declared: us, per: 55 g, values: {calories: 230 kcal, protein: 3 g, fat: 8 g, carbohydrate: 37 g, fiber: 4 g}", ""},
		{"declared: eu, per: 100 g, values: {energy: 225 kcal, protein: 3 g, fat: 8 g, carbohydrate: 37 g}", ""},
		// 40 g of carbohydrate and 3 g of acid are 719 kJ (Regulation (EU) No 1169/2011, Annex XIV: 17 and 13 a gram).
		{"declared: eu, per: 100 g, values: {energy: 719 kJ, fat: 0 g ± 0 g, protein: 0 g ± 0 g, carbohydrate: 40 g, CITAC: 3 g}", ""},
		{"declared: eu, per: 100 g, values: {energy: 640 kJ, fat: 0 g ± 0 g, protein: 0 g ± 0 g, carbohydrate: 40 g, CITAC: 3 g}", "its energy is declared as 640 kJ and its other figures make 704 to 734: check the figures and per:"},
		{"declared: eu, per: 100 g, values: {energy: 800 kJ, fat: 0 g ± 0 g, protein: 0 g ± 0 g, carbohydrate: 40 g, CITAC: 3 g}", "what it does not state (alcohol, other organic acids, dietary fibre) makes the rest"},
		{"declared: eu, per: 100 g, values: {ENERC: 180 kJ, FAT: 1.5 g, CHOAVL: 5.6 g, PROCNT: 0.8 g}", "its energy is declared as 180 kJ and its other figures make 161 to 168: what it does not state (polyols, alcohol, organic acids, dietary fibre) makes the rest, or a figure is wrong"},
		{"declared: eu, per: 100 g, values: {energy: 180 kJ, fat: 1.5 g, carbohydrate: 5.6 g, protein: 0.8 g, fibre: 0.2 g}", "what it does not state (alcohol, organic acids) makes the rest"}, // polyols are in an eu carbohydrate
		{"declared: us, per: 100 g, values: {calories: 90 kcal, fat: 1.5 g, carbohydrate: 5.6 g, protein: 0.8 g}", "what it does not state (alcohol) makes the rest"},                           // and fibre is in a us one
		{"declared: eu, per: 100 g, values: {energy: 200 kJ, fat: 1.5 g, carbohydrate: 5.6 g, protein: 0.8 g, fibre: 0.2 g, ALC: 0 g, OA: 0 g}", "make 162 to 170: check the figures and per:"},
		{"declared: eu, per: 100 g, values: {energy: 40 kJ, FAT: 1.5 g, CHOAVL: 5.6 g, PROCNT: 0.8 g}", "declared as 40 kJ and its other figures make 161 to 168: the number fits as 40 kcal, so that its unit looks like a slip: write energy: 40 kcal"},
		{"declared: eu, per: 100 g, values: {energy: 165 kcal, FAT: 1.5 g, CHOAVL: 5.6 g, PROCNT: 0.8 g}", "make 38.2 to 40: the number fits as 165 kJ"},
		{"declared: eu, per: 100 g, values: {energy: 0 kJ, FAT: 1.5 g, CHOAVL: 5.6 g, PROCNT: 0.8 g}", "declared as less than 0.5 kJ and its other figures make 161 to 168: check"},
		{"declared: eu, per: 100 g, values: {ENERC_KCAL: 400 kcal, FAT: 1.5 g, CHOAVL: 5.6 g, PROCNT: 0.8 g}", "declared as 400 kcal and its other figures make 38"},
		{"declared: eu, per: 100 g, values: {energy: 100 kJ, FAT: 1.5 g, CHOAVL: 5.6 g, PROCNT: 0.8 g}", "declared as 100 kJ and its other figures make 161 to 168: check the figures"},
		{"declared: eu, per: 100 g, values: {energy: 100 kJ, FAT: 1.5 g, PROCNT: 0.8 g}", ""}, // nothing is known of the rest
		// 50 g of fat are 1850 kJ by Annex XIV, whatever else is in it.
		{"declared: eu, per: 100 g, values: {ENERC: 0 kJ, FAT: 50 g}", "its energy is declared as less than 0.5 kJ and the figures beside it already make 18"},
		{"declared: eu, per: 100 g, values: {ENERC: 1850 kJ, FAT: 50 g}", ""},
	} {
		_, said := declared(t, "", c.entry)
		if c.says == "" {
			assert.NotContains(t, said, "its energy", c.entry)
		} else {
			assert.Contains(t, said, c.says, c.entry)
		}
	}
}

// What the pack does not state stays unknown, and what is borrowed is scaled to what it states:
// 3 g of sugars in a milk that has 4.8 g of lactose.
func TestADeclaredTotalStands(t *testing.T) {
	p, _ := declared(t, "", "group: soft drink, per: 100 g, values: {carbohydrate: 10 g, fat: 0 g, protein: 0 g}")
	assert.False(t, p.Cell("CAFFN").Known)
	r, err := find(t, assaytest.Core(t), "drink: x\nserves: 1\nfoods:\n  a: {name: A, group: milk, fill: \"core:milk-whole\", declared: eu, per: 100 g, values: {sugars: 3.0 g, carbohydrate: 3.0 g}, source: s}\nbuild: [\"10 g own:a\"]\n")
	require.NoError(t, err)
	p = r.Lines[r.Drink.Build[0].Path].Profile
	assert.InDelta(t, 0.03, p.Cell("LACS").Amount, 1e-4)
	assert.Contains(t, p.Cell("LACS").Why, "scaled to the stated total")
}

// What a pack cannot say.
func TestWordsOfAPack(t *testing.T) {
	for entry, says := range map[string]string{
		"per: 100 g, values: {carbohydrate: 5 g, CHOAVL: 4 g}":               `test:4:`,
		"per: 100 g, values: {crabs: 5 g}":                                   `unknown constituent "crabs" (did you mean available carbohydrate (CHOAVL) or carbohydrate by difference (CHOCDF)?)`,
		"per: 100 g, values: {carbohydrate: 5 g, polyols: 9 g}":              "is less than what eu counts to it",
		"per: 100 g, values: {carbohydrate: 5 g, sugars: 10 g}":              "carbohydrate 5 g is less than its parts: sugars 10 g",
		"declared: us, per: 100 g, values: {carbohydrate: 5 g, CHOCDF: 4 g}": "is stated twice",
	} {
		_, err := find(t, assaytest.Library{}, "drink: x\nserves: 1\nfoods:\n  a: {name: A, "+entry+", source: \"pack\"}\nbuild: [\"10 g own:a\"]\n")
		assert.ErrorContains(t, err, says, entry)
	}
}
