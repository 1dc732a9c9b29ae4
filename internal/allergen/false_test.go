package allergen_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/allergen"
)

// A word that is part of another name is not what it says alone.
func TestNamesThatOnlySoundLikeAnAllergen(t *testing.T) {
	for _, c := range rowsOf(t, "false.csv") {
		a := allergen.Assess(ownItem(c["food"]))
		if c["never"] != "" {
			assert.NotContains(t, a.Leaves, c["never"], "%s: %s", c["food"], c["source"])
			assert.NotContains(t, a.Likely, c["never"], "%s: %s", c["food"], c["source"])
		}
		assert.Equal(t, codes(t, c["holds"]), a.Leaves, c["food"])
	}
}

// What a pack says of a food settles its questions, and nothing else does. A name that says more
// than the list is a contradiction, an owner's as well as a table's.
func TestWhoSettlesAQuestion(t *testing.T) {
	gelatine := coreItems(t)["gelatin"]
	d := declare(t, "eu", gelatine)
	assert.Equal(t, []string{allergen.CheckPossible}, checkCodes(d))
	assert.Equal(t, "of which animal?", d.Check[0].Question)
	assert.Contains(t, d.Check[0].Answer, "own:my-gelatin")
	assert.Contains(t, d.Check[0].Short(), "core:gelatin: of which animal?")

	assert.Empty(t, declare(t, "eu", stated("my-gelatin", gelatine.Name)).Check, "[]: the pack says so")
	assert.Equal(t, []string{"Fish"}, names(declare(t, "eu", stated("my-gelatin", gelatine.Name, "fish")).Contains))

	d = declare(t, "eu", stated("p", "Peanut butter"))
	assert.Equal(t, []string{allergen.CheckContradicts}, checkCodes(d))
	assert.Contains(t, d.Check[0].Short(), "the name says peanut")
}

// Wine's sulphites are usual, not stated; a question of a class that is declared already is not
// asked again.
func TestUsualIsSaidToBe(t *testing.T) {
	d := declare(t, "eu", coreItems(t)["wine-red"])
	assert.Equal(t, []string{"Sulphur dioxide and sulphites"}, names(d.Contains))
	assert.Equal(t, allergen.Usual, d.Contains[0].Knowledge[0].How)
	for _, c := range d.Check {
		assert.NotContains(t, c.Leaves, "sulphites")
	}
	usual := coreItems(t)["sugar-white"]
	assert.Equal(t, allergen.Usual, allergen.Assess(usual).Knowledge)
	assert.Empty(t, declare(t, "eu", usual).Check, "usual alone asks nothing")
}

// Isinglass that cleared a wine is excepted in the European Union alone.
func TestAQuestionOfSomeRules(t *testing.T) {
	asks := func(rules string) (list []string) {
		for _, c := range declare(t, rules, coreItems(t)["wine-red"]).Check {
			list = append(list, c.Question)
		}
		return list
	}
	assert.NotContains(t, asks("eu"), "fined with isinglass?")
	assert.Contains(t, asks("us"), "fined with isinglass?")
}

// Each food has its own way into the drink.
func TestWaysAreNotMixed(t *testing.T) {
	syrup, base := stated("a", "a", "cow milk"), stated("b", "b", "goat milk")
	syrup.Path = []string{"milk syrup", "base"}
	again := syrup
	again.Path = nil
	d := declare(t, "eu", syrup, base, again)
	assert.Equal(t, []allergen.Way{
		{Food: "own:a", Via: []string{"milk syrup / base", "the build"}}, {Food: "own:b", Via: []string{"the build"}},
	}, d.Contains[0].Ways)
	assert.True(t, d.Contains[0].Ways[1].Straight())
	assert.False(t, d.Contains[0].Ways[0].Straight())
}

// What a food borrows from is milk, and its owner says that none is in it: somebody has to
// look. So do all rules that know milk; who lists it is not asked.
func TestWhatIsBorrowedSpeaksAgainstAnEmptyList(t *testing.T) {
	lender := coreItems(t)["milk-lactose-free"]
	denied, said, group := stated("a", "Velvet"), stated("b", "Velvet", "cow milk"), stated("c", "Velvet")
	denied.Lender, said.Lender, group.Group = &lender, &lender, "milk"
	for _, rules := range allergen.Rules() {
		d := declare(t, rules, denied)
		assert.Equal(t, []string{allergen.CheckLent}, checkCodes(d), rules)
		assert.Equal(t, "own:a: what it borrows from, core:milk-lactose-free, holds cows' milk, the list of allergens does not", d.Check[0].Short())
		assert.Empty(t, declare(t, rules, said).Check, rules)
	}
	bean := denied
	bean.Group = "coffee bean"
	assert.Equal(t, []string{allergen.CheckLent}, checkCodes(declare(t, "eu", bean)))
	assert.Equal(t, "own:c: the group says milk (animal not stated), the list of allergens does not", declare(t, "eu", group).Check[0].Short(), "no name says it")
}

// A list is a statement under all rules, and answers every question: what could be in the
// food by any of them stands in the line to copy.
func TestTheLineToCopyHoldsAllThatIsAsked(t *testing.T) {
	d := declare(t, "us", coreItems(t)["port"])
	require.NotEmpty(t, d.Check)
	for _, c := range d.Check {
		assert.Contains(t, c.Answer, "allergens: [sulphites, egg, milk, fish]")
	}
}
