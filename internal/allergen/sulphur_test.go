package allergen_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/allergen"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// exactly is an amount that is all known.
func exactly(x float64) allergen.Amounts {
	a := estimate.Amount{Mean: x, WithBounds: x, High: x, UpTo: x, Known: true}
	return allergen.Amounts{PerKg: a, PerLitre: a}
}

// Annex II, item 12: more than 10 mg/kg or 10 mg/l; 21 CFR 101.100(a)(4), B.01.010.2, S9-3 and
// CXS 1-1985: 10 and more.
func TestSulphurDioxideAtItsLimit(t *testing.T) {
	for rules, atLimit := range map[string]allergen.Verdict{
		"eu": allergen.VerdictBelow, "uk": allergen.VerdictBelow,
		"us": allergen.VerdictDeclare, "ca": allergen.VerdictDeclare, "anz": allergen.VerdictDeclare, "codex": allergen.VerdictDeclare,
	} {
		for mg, want := range map[float64]allergen.Verdict{0: allergen.VerdictBelow, 9.9: allergen.VerdictBelow, 10: atLimit, 10.1: allergen.VerdictDeclare} {
			have, because := allergen.Judge(rules, exactly(mg))
			assert.Equal(t, want, have, "%g mg/kg under %s", mg, rules)
			assert.Contains(t, because, "10 mg/")
		}
	}
}

// 30 g of vermouth with 90 mg of sulphur dioxide a kilogram in a drink of 150 g: 18 mg/kg, to be
// declared (30 × 90 / 150 by hand).
func TestSulphurDioxideOfVermouthInADrink(t *testing.T) {
	serving := estimate.Amount{Mean: 0.030 * 90, WithBounds: 0.030 * 90, Known: true}
	amounts := allergen.Amounts{PerKg: serving.Times(1000. / 150), PerLitre: serving.Times(1000. / 150)}
	assert.InDelta(t, 18, amounts.PerKg.Mean, 1e-9)
	verdict, because := allergen.Judge("eu", amounts)
	assert.Equal(t, allergen.VerdictDeclare, verdict)
	assert.Contains(t, because, "18 mg/kg")
}

func TestSulphurDioxideThatNobodyKnows(t *testing.T) {
	some := func(a estimate.Amount) allergen.Verdict {
		v, _ := allergen.Judge("eu", allergen.Amounts{PerKg: a, PerLitre: a})
		return v
	}
	nan := math.NaN()
	assert.Equal(t, allergen.VerdictOpen, some(estimate.Amount{}), "nothing is known")
	assert.Equal(t, allergen.VerdictOpen, some(estimate.Amount{Mean: 2, WithBounds: nan, High: 3, UpTo: nan, Known: true}), "a part has no bound")
	assert.Equal(t, allergen.VerdictOpen, some(estimate.Amount{Mean: 2, WithBounds: 12, High: 3, UpTo: 13, Known: true}), "its bound is above")
	assert.Equal(t, allergen.VerdictDeclare, some(estimate.Amount{Mean: 9, WithBounds: nan, High: 11, UpTo: nan, Known: true}), "the known part may be above")
	assert.Equal(t, allergen.VerdictBelow, some(estimate.Amount{Mean: 2, WithBounds: 4, High: 3, UpTo: 5, Known: true}))
	v, because := allergen.Judge("eu", allergen.Amounts{PerKg: exactly(9.9).PerKg, PerLitre: exactly(10.1).PerLitre})
	assert.Equal(t, allergen.VerdictDeclare, v, "per litre it is above: either counts")
	assert.Contains(t, because, "mg/l")
	v, _ = allergen.Judge("eu", allergen.Amounts{PerKg: exactly(9.9).PerKg})
	assert.Equal(t, allergen.VerdictOpen, v, "per litre nobody knows")
}

// What the amount makes of the declaration: enough is declared without any word, little is
// taken out with its figure, and the unknown leaves everything as it was.
func TestDeclarationByTheAmount(t *testing.T) {
	wine := allergen.Item{Food: food.ID{Table: "core", Code: "wine-white"}, Name: "White wine", Group: "wine", Eaten: true,
		Marks: []food.Mark{{Kind: "allergen", Value: "sulphites"}}}
	d := declare(t, "eu", wine)
	assert.Equal(t, d, d.Judged(allergen.Amounts{}))

	little := d.Judged(exactly(3))
	assert.Empty(t, little.Contains)
	require.Len(t, little.Excepted, 1)
	assert.Contains(t, little.Excepted[0].Note, "at most 3 mg/")
	assert.Equal(t, allergen.StateNoneFound, little.State("sulphites"))

	much := declare(t, "eu", ownItem("Fruit base"), stated("m", "Milk", "cow milk"), stated("l", "Lupin", "lupin")).Judged(exactly(40))
	assert.Equal(t, []string{"Milk", "Sulphur dioxide and sulphites", "Lupin"}, names(much.Contains), "in the order of the rules")
	assert.Contains(t, much.Contains[1].Note, "40 mg/")

	own := declare(t, "eu", ownItem("White wine"))
	asks := func(d allergen.Declaration) bool {
		return slices.ContainsFunc(d.Check, func(c allergen.Check) bool { return slices.Contains(c.Leaves, "sulphites") })
	}
	require.True(t, asks(own))
	assert.False(t, asks(own.Judged(exactly(3))), "the figure answers")
	assert.False(t, asks(own.Judged(exactly(40))))
	assert.NotEmpty(t, own.Judged(exactly(3)).Check, "of the fining nothing is known still")
}

func TestLimitsAreWellFormed(t *testing.T) {
	for _, row := range rows(t, "allergen_limits.csv") {
		assert.NotEmpty(t, row["source"])
		assert.Equal(t, "SO2", allergen.Measured(row["rules"]))
		assert.True(t, allergen.IsLeaf(row["class"]), "the class of a limit is a leaf by itself")
	}
	assert.Empty(t, allergen.Measured("mars"))
}
