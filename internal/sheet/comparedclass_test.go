package sheet_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/fit"
	"sipsum/internal/sheet"
)

// allergensOf is what a comparison says of allergens.
func allergensOf(c *sheet.Compared) string {
	var lines []string
	for _, b := range c.Leaf().Blocks {
		if b.Heading == "Allergens" {
			for _, l := range b.Lines {
				lines = append(lines, l.Sentence())
			}
		}
	}
	return strings.Join(lines, "\n")
}

// Regulation (EU) No 1169/2011, Annex II, 1 and 8: the cereal and the nut are named. Who reacts to pecans is not
// told by "nuts in both", nor by a cross-contact that only one of the drinks states.
func TestAComparisonNamesTheNutThatComes(t *testing.T) {
	const rules = "rules: [eu]\n"
	c := compared(t, rules+"build: [36 g core:espresso, 30 g core:hazelnut]", rules+"build: [36 g core:espresso, 30 g core:pecan]\nmay-contain: [almond]")
	text := allergensOf(c)
	assert.Contains(t, text, "EU: Nuts: declared in A and in B; only in A: hazelnuts; only in B: pecans; may get in only in B: almonds")
	assert.NotContains(t, text, "alike")
	c = compared(t, rules+"build: [36 g core:espresso, 30 g core:hazelnut]", rules+"build: [36 g core:espresso, 20 g core:hazelnut]")
	assert.Contains(t, allergensOf(c), "EU: every class stands alike in both")
}

// The same of a food that gives way to another in its own class.
func TestASwapNamesTheNutThatComes(t *testing.T) {
	s := swapped(t, "\ndrink: nut\nserves: 1\nscale: 1 g\nrules: [eu]\nbuild: [36 g core:espresso, 30 g core:hazelnut]\n", fit.Exchange{Food: "core:hazelnut"}, "pecan")
	require.NotEmpty(t, s.Found)
	var lines []string
	for _, l := range s.Found[0].Declares() {
		lines = append(lines, l.Sentence())
	}
	assert.Contains(t, strings.Join(lines, "\n"), "EU: Nuts: declared before and then; only before: hazelnuts; only then: pecans")
}

// From 5 g of nutmeg people were poisoned (toxicology monograph of data/cautions.csv): of fifteen grams a fit and a
// comparison say it, though the drink as it was written had them, and so had both.
func TestWhatIsTooMuchIsSaidThoughItWasBefore(t *testing.T) {
	const spiced = "build: [36 g core:espresso, 5 g core:sugar-white, 15 g core:nutmeg]\n"
	c := compared(t, spiced, spiced)
	require.Len(t, c.TooMuchInBoth(), 1)
	assert.True(t, c.ToDecide())
	var page []string
	for _, b := range c.Leaf().Blocks {
		for _, l := range b.Lines {
			page = append(page, b.Heading+" "+l.Sentence())
		}
	}
	assert.Contains(t, strings.Join(page, "\n"), "Too much in both nutmeg")
	f := fitted(t, "drink: spiced\nserves: 1\n"+spiced+"targets: [serving(SUGAR) between 5.5 g and 6 g]\nvary: [{of: core:sugar-white, from: 4 g, to: 8 g}]\n")
	written, err := sheet.Build("test", f.Before, nil, uncited, nil)
	require.NoError(t, err)
	f.Raise(written)
	assert.True(t, f.TooMuch())
	require.NotEmpty(t, f.Raised)
	assert.Equal(t, "nutmeg", f.Raised[0].Code)
}

// Of what may kill the brief tells the first sentence: how much is poisoning stands in it (nutmeg: 5 g).
func TestTheBriefSaysHowMuchNutmegIsPoisoning(t *testing.T) {
	s := ranAs(t, "build: [36 g core:espresso, 15 g core:nutmeg]")
	said := ""
	for _, c := range sheet.BriefOf(s).Guest.Cautions {
		said += c.Words + "\n"
	}
	assert.Contains(t, said, "5 g of nutmeg (under a tablespoon) in one person is poisoning")
}

// Regulation (EU) No 1169/2011, Annex II, 8: a menu names the nut, and the one that may get in beside it.
func TestAMenuNamesTheNuts(t *testing.T) {
	s := ranAs(t, "build: [36 g core:espresso, 30 g core:hazelnut, 20 g core:milk-whole, 15 g core:nutmeg]\nmay-contain: [almond]")
	m := &sheet.Menu{Rules: []string{"eu"}, Drinks: []sheet.Offer{s.Offer("nut.drink.yaml")}}
	cells := map[string]string{}
	for _, r := range m.Leaf(1).Blocks[0].Grid.Rows {
		cells[r.Label] = r.Cells[0].Text
	}
	assert.Equal(t, "contains hazelnuts, may contain almonds", cells["Nuts"])
	assert.Equal(t, "contains", cells["Milk"])
	assert.Contains(t, strings.Join(m.Drinks[0].TooMuch, "\n"), "Too much")
}
