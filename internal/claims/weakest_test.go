package claims_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/claim"
)

// coffees is a drink of so many like parts, of which each goes with the same share of the caffeine.
func coffees(n int, checks ...string) string {
	var foods, build, claims strings.Builder
	for i := range n {
		fmt.Fprintf(&foods, "  c%d: {name: \"Coffee %c, invented\", per: 100 g, values: {WATER: 98 g ± 0, CAFFN: 40 mg ± 12 mg sd}, source: \"x\"}\n", i, 'a'+i)
		fmt.Fprintf(&build, "  - 10.00 g own:c%d\n", i)
	}
	for _, check := range checks {
		fmt.Fprintf(&claims, "  - {say: x, check: '%s'}\n", check)
	}
	return "drink: \"x\"\nserves: 1\nfoods:\n" + foods.String() + "build:\n" + build.String() + "claims:\n" + claims.String()
}

// A link is told where a real share of the margin hangs on it: of two like parts each has a half, of twenty each a
// twentieth. Far from the limit nothing decides, and where the unknown does only what settles it is told.
func TestTheWeakestLinkDecidesSomething(t *testing.T) {
	core := assaytest.Core(t)
	said := judged(t, core, coffees(2, `serving(CAFFN) > 6 mg`, `serving(CAFFN) < 1 g`, `serving(CAFFN) > 1 g`))
	require.NotNil(t, said[0].Weakest, said[0].Line())
	assert.Contains(t, said[0].Weakest.Name, "caffeine of coffee")
	for _, s := range said[1:] {
		assert.Nil(t, s.Weakest, s.Line())
		assert.Nil(t, s.Closes, s.Lines())
	}
	said = judged(t, core, coffees(20, `serving(CAFFN) > 70 mg`))
	assert.Nil(t, said[0].Weakest, said[0].Line())

	open := judged(t, core, "drink: \"x\"\nserves: 1\nfoods:\n  herb: {name: \"Herb, invented\", per: 100 g, values: {WATER: 80 g ± 3 g sd, CAFFN: unknown}, source: \"x\"}\nbuild: [50.00 g own:herb]\nclaims: [{say: x, check: serving(CAFFN) < 5 g}]\n")[0]
	require.Equal(t, claim.Unknown, open.Word, open.Line())
	assert.Nil(t, open.Weakest)
	assert.Nil(t, open.Closes)
	assert.Len(t, open.Lines(), 1, "what settles it")
}

// A reading is told where it narrows the margin by as much as one is worth taking for (data/worth.csv, a fifth).
func TestTheReadingThatClosesIsWorthTaking(t *testing.T) {
	core := assaytest.Core(t)
	closes := 0
	for _, check := range []string{`serving(SUGAR) > 10 g`, `serving(MALAC) > 0.2 g`, `per100g(K) < 150 mg`, `ph() < 3.9`, `ratio(MALAC, SUGAR) < 5 %`} {
		s := judged(t, core, plum+"  - {say: x, check: '"+check+"'}\n")[0]
		if s.Closes != nil {
			closes++
			assert.GreaterOrEqual(t, s.Closes.Narrows[0].By, 0.2, "%s: %s", check, s.Lines())
		}
	}
	assert.Equal(t, 2, closes, "of the sugars and the pH")
}

// Nobody asks why the caffeine is not a powder; of an acid a judge does.
func TestThePowderIsOneOfABar(t *testing.T) {
	core := assaytest.Core(t)
	of := func(check, food string) string {
		return judged(t, core, "drink: \"x\"\nserves: 1\ncomponents:\n  pot: {ingredients: [50 g "+food+", 5 g core:sugar-white]}\nbuild: [50 g pot, 50 g core:water-pure]\nclaims: [{say: x, check: '"+check+"'}]\n")[0].Line()
	}
	assert.NotContains(t, of(`share(CAFFN, "pot") > 90 %`, "core:espresso"), "powder")
	assert.NotContains(t, of(`share(FRUS, "pot") > 60 %`, "core:apple-juice"), "powder")
	assert.Contains(t, of(`share(CITAC, "pot") > 90 %`, "core:lemon-juice"), "asked next: why not the powder?")
}

// Where no few figures break a claim, the draws in which it fails are not denied: many things are a little off there.
func TestNoWorldIsSaid(t *testing.T) {
	s := judged(t, assaytest.Core(t), coffees(20, `serving(CAFFN) > 72 mg`))[0]
	require.True(t, s.Holds() && s.P < 1, s.Line())
	require.Nil(t, s.Nearest)
	assert.Contains(t, strings.Join(s.Lines(), "\n"), fmt.Sprintf("no single figure of a food or amount breaks it within the range of its draws, nor do up to three together; in the %.0f of 100 draws in which it fails many things are a little off", 100*(1-s.P)))
}
