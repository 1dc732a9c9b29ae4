package claim_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/claim"
	"sipsum/internal/fail"
)

// The examples of the drink file's grammar, and what it says beside them, are read.
func TestReads(t *testing.T) {
	for _, text := range []string{
		`share(MALAC, "cherry syrup") >= 50 %`, `serving(SUGAR) < 12 g`, `serving(CITAC) >= 0.2 g`, `ph() between 3.6 and 4.2`,
		`1 g <= serving(SUGAR) < 5 g`, `not (ph() < 3 or ph() > 5) and brix() > 10`, `serving(malic acid) > 100 mg`, `serving("malic acid") > 100 mg`,
		`component("syrup", GLUS) + component("syrup", FRUS) <= 2 * serving(SUCS)`, `ratio(MALAC, CITAC) > 1/2`, `per100g(SUGAR) <= 5 g`, `per100ml(energy) < 20 kcal`,
		`ta() > 6 g/l`, `ta() between 400 mg/100 ml and 700 mg/100ml`, `alcohol_abv() < 0.5 % vol`, `alcohol_abv() ≤ 1.2 %`, `brix_acid() > 20`, `brix() >= 12 °Bx`,
		`contains("milk")`, `share(CITAC, ingredient "core:lemon-juice") > 0.5`, `share(CITAC, kind "fruit") > 1 - 20 %`, `-serving(SUGAR) > -5 g`, `((serving(SUGAR))) < (3 g + 2 g)`,
		`share(caffeine, “espresso”) > 50 %`, `NOT serving(SUGAR) < 1 g`,
		`sweetness() < 9 %`, `sweetness() between 80 g/l and 9.5 g/100 ml`, `food_rank(citric acid, "core:lemon-juice") <= 10`, `food_rank(MALAC, "Pear juice") between 1 and 10`,
	} {
		_, err := claim.Parse(text, fail.Place{})
		assert.NoError(t, err, text)
	}
}

// Whatever is wrong is told at its character, with what to write.
func TestRefuses(t *testing.T) {
	for _, c := range []struct {
		text string
		col  int // of the file; the expression begins at 10
		what string
		do   string
	}{
		{`serving(SUGAR)`, 10, "a figure alone checks nothing", "serving(SUGAR) < 12 g"},
		{`serving(SUGAR) < 12`, 25, "a mass (12 g) and a number without a unit", "12 g"},
		{`serving(SUGAR) < 12 kJ`, 25, "a mass (12 g) and an energy", "12 g"},
		{`serving(SUGAR) + ph() < 12 g`, 25, "unlike", ""},
		{`serving(SUGAR) * serving(SUGAR) < 12 g`, 42, "a product of several measures", ""},
		{`serving(SUGAR) < 12,5 g`, 27, "comma", "12.5"},
		{`serving(SUGAR) < 12 oz`, 27, `no unit "oz"`, "use g"},
		{`serving(SUGAR) = 12 g`, 25, "no figure is known so exactly", "between"},
		{`serving(QQQQ) < 12 g`, 18, "unknown constituent", ""},
		{`serving(nonsense acid) < 12 g`, 18, "unknown constituent", ""},
		{`portion(SUGAR) < 12 g`, 10, `no figure "portion"`, ""},
		{`SUGAR < 12 g`, 10, `no figure "SUGAR"`, "serving(SUGAR)"},
		{`sweetness() > 3`, 22, "a sweetness, as sucrose", "9 %, or 90 g/l"},
		{`sweetness() + ta() > 3 %`, 22, "unlike", ""},
		{`ta() > 3.3 %`, 15, "unlike", "33 g/l"},
		{`component(sugars, "x") > 1 g`, 20, "takes the name of a part first", `component("cherry syrup", SUGAR)`},
		{`sweetness() < serving(SUGAR)`, 22, "unlike", ""},
		{`food_rank(MALAC, "core:pear-juice") < 3 %`, 46, "a place among foods (10) and a number without a unit", "compared with 10"},
		{`food_rank(MALAC, pear) < 3`, 27, "a food stands in quotation marks", "food_rank(CITAC"},
		{`food_rank("core:pear-juice", MALAC) < 3`, 20, "unknown constituent", ""},
		{`share(MALAC, syrup) > 50 %`, 23, "quotation marks", "share(MALAC"},
		{`share("syrup", MALAC) > 50 %`, 16, "unknown constituent", ""},
		{`share(MALAC, "syrup > 50 %`, 23, "not closed", "close it"},
		{`serving(SUGAR < 12 g`, 24, "not closed", "serving(SUGAR)"},
		{`ph() between 4.2 and 3.6`, 23, "larger and a smaller", "smaller one first"},
		{`ph() between 3.6`, 26, "one end", "both"},
		{`ph() < 4 ph() > 3`, 19, "goes on", "and, or"},
		{`not serving(SUGAR)`, 14, "not stands before a figure", ""},
		{`serving(SUGAR) and ph() < 4`, 10, `a figure alone stands beside "and"`, ""},
		{`(ph() < 4) < 3`, 11, "a condition is compared", "and"},
		{`(ph() < 4) + 3 < 3`, 21, "a condition cannot be calculated with", ""},
		{`contains(milk, oats)`, 19, "one allergen", `contains("milk")`},
		{`share(SUGAR, "x", "y") > 0.5`, 26, "not closed after", ""},
		{`ph() > 3 & ph() < 4`, 19, `"&" means nothing`, ""},
		{`"cherry syrup" > 3`, 10, "a name stands alone", "share(MALAC"},
		{`serving(MASS) > 3 g`, 18, "no figure of a drink", ""},
		{`ratio(ENERC, CITAC) > 3`, 23, "two masses", ""},
		{`ph() > 3 and`, 22, "the end stands where", ""},
		{``, 10, "the end stands where", ""},
		{strings.Repeat("(", 100) + `ph()`, 70, "more than 60 terms", "split"},
		{`ph() > 3` + strings.Repeat(" + 0.1", 70), -1, "more than 60 terms", "split"},
	} {
		_, err := claim.Parse(c.text, fail.Place{File: "d.yaml", Line: 3, Col: 10})
		require.Error(t, err, c.text)
		f := err.(*fail.Error).Faults[0]
		assert.Contains(t, f.What, c.what, c.text)
		assert.Contains(t, f.Do, c.do, c.text)
		assert.NotEmpty(t, f.What)
		if c.col > 0 {
			assert.Equal(t, fail.Place{File: "d.yaml", Line: 3, Col: c.col}, f.Place, "%s: %s", c.text, f)
		}
	}
}

// No text brings the parser down, and each is read or refused with a place in it.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{`share(MALAC, "a") >= 50 %`, `not (ph() < 3 or ph() > 5)`, `1 g <= serving(SUGAR) < 5 g`, `"`, `((`, `% vol`, `ph() between`} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c, err := claim.Parse(text, fail.Place{File: "d", Line: 1, Col: 1})
		if err == nil {
			_ = c.Constituents()
			return
		}
		at := err.(*fail.Error).Faults[0].Place
		assert.GreaterOrEqual(t, at.Col, 1)
		assert.LessOrEqual(t, at.Col, len([]rune(text))+1)
	})
}
