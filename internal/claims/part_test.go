package claims_test

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

const pots = `drink: "Pots"
serves: 1
components:
  lime juice: {ingredients: [50 g core:lemon-juice]}
  pear juice: {ingredients: [50 g core:pear, 10 g core:citric-acid]}
  espresso:
    ingredients: [18 g core:coffee-roasted-arabica, 60 g core:water-brew]
    steps: [brew: {out: 38 g, strength: 9.5 %}]
build: [10 g lime juice, 20 g pear juice, 30 g espresso, 10 g core:lemon-juice]
claims:
`

// A name means the component, the ingredient or the kind that it is, and a pot that bears the name
// of what is grown is counted by what is in it. Shares of what is certain are by hand; others are
// only told from none and all.
func TestParts(t *testing.T) {
	core := assaytest.Core(t)
	for _, c := range []struct {
		check  string
		word   string
		remark string
	}{
		{`share(CITAC, "lime juice") > 0`, "refuted", `holds no lime juice but core:lemon-juice`},
		{`share(CITAC, component "lime juice") > 0`, "supported", ""},
		{`share(CITAC, "pear juice") > 50 %`, "refuted", `counts the ingredient "pear juice"`}, // the pear in it, and not the powder
		{`share(CITAC, component "pear juice") > 50 %`, "supported", ""},
		{`share(CAFFN, "espresso") > 99 %`, "supported", ""}, // a name of what is brewed is the pot's
		{`share(CITAC, "core:lemon-juice") > share(CITAC, component "lime juice")`, "supported", ""},
		{`share(CITAC, "Lemon juice") > share(CITAC, component "lime juice")`, "supported", ""},
		{`share(CITAC, kind "citrus juice") > 0`, "supported", ""},
		{`share(CITAC, kind "citrus") > 0`, "supported", ""},
		{`share(CITAC, "citrus juices") > 0`, "supported", ""},
		{`share(CITAC, "banana") > 0`, "refuted", "no banana is in this drink"},
	} {
		said := judged(t, core, pots+"  - {say: x, check: '"+c.check+"'}\n")
		require.Len(t, said, 1)
		assert.EqualValues(t, c.word, said[0].Word, "%s: %s", c.check, said[0].Line())
		if c.remark == "" {
			assert.Empty(t, said[0].Remarks, c.check)
		} else {
			require.Len(t, said[0].Remarks, 1, c.check)
			assert.Contains(t, said[0].Remarks[0], c.remark)
		}
	}
}

// All that is wrong is told at once, each at its place in the file.
func TestFaultsOfClaims(t *testing.T) {
	core := assaytest.Core(t)
	_, err := benchOf(run(t, core, pots+"  - {say: x, check: 'share(CITAC, \"pear juise\") > 0'}\n  - {say: y, check: 'share(CITAC, kind \"wheels\") > 0'}\n", 50), core).Judge(context.Background())
	require.Error(t, err)
	assert.Contains(t, err.Error(), `test:11:35: the drink has no part "pear juise" (did you mean "pear juice"?`)
	assert.Contains(t, err.Error(), `test:12:35: the drink has no part "wheels"`)
}

// What nobody knows of a food is named, with the line that states it.
func TestWhatSettles(t *testing.T) {
	text := `drink: "x"
serves: 1
foods:
  herb: {name: "Herb, invented", per: 100 g, values: {WATER: 90 g, CAFFN: unknown}, source: "x"}
build: [10 g core:coffee-roasted-arabica, 50 g own:herb]
claims: [{say: x, check: 'share(CAFFN, "herb") < 50 %'}, {say: y, check: 'ph() < 5'}]
`
	said := judged(t, assaytest.Core(t), text)
	require.NotNil(t, said[0].Settle)
	assert.Equal(t, "caffeine of herb", said[0].Settle.What)
	assert.Equal(t, "values: {CAFFN: … mg}", said[0].Settle.Settle)
	assert.Equal(t, "foods, herb", said[0].Settle.Where)
	assert.Contains(t, said[0].Line(), "unknown: holds in")
	if said[1].Settle != nil {
		assert.Equal(t, "- measured: {ph: …}", said[1].Settle.Settle)
	}
}

// Where nobody doubts who brings an acid the question is why not the acid itself; a powder is not
// asked for itself, and nobody asks it of sugars.
func TestThePowderIsAskedFor(t *testing.T) {
	core := assaytest.Core(t)
	asked := func(check string) string {
		s := judged(t, core, pots+"  - {say: x, check: '"+check+"'}\n")[0]
		require.NotNil(t, s.Weakest, check)
		return s.Weakest.Asked + " " + s.Weakest.Answer
	}
	assert.Contains(t, asked(`component("pear juice", MALAC) > 5 mg`), "why not the powder? the powder is malic acid alone; with pear juice come ")
	assert.Contains(t, asked(`component("pear juice", SUGAR) > 0.1 g`), "how ")
	assert.Contains(t, asked(`serving(MALAC) > 1 mg`), "how ")
}

// A file does not have the program judge without end.
func TestTooManyClaims(t *testing.T) {
	text := pots
	for range 51 {
		text += "  - {say: x, check: ph() < 7}\n"
	}
	d, faults := drink.Parse("test", []byte(text), nil)
	claims.Read(d, faults)
	assert.ErrorContains(t, faults.Err(fail.Wrong), "test:61:5: the drink has 51 claims, at most 50 are judged")
}

// BenchmarkVerdict is the cost of the verdict on one claim of a drink over 1,000 draws, figures and
// all: aim 1 ms.
func BenchmarkVerdict(b *testing.B) {
	core := assaytest.Core(b)
	a := run(b, core, pots+"  - {say: x, check: 'share(CITAC, component \"pear juice\") > 50 % and serving(SUGAR) < 12 g'}\n", 1000)
	c, err := claim.Parse(a.Drink.Claims[0].Check, fail.Place{})
	require.NoError(b, err)
	for b.Loop() {
		if _, err := c.Check(claims.NewGlass(a, nil)); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkJudge is that with the weakest link and the reading that closes it.
func BenchmarkJudge(b *testing.B) {
	core := assaytest.Core(b)
	bench := benchOf(run(b, core, pots+"  - {say: x, check: 'share(CITAC, component \"pear juice\") > 50 % and serving(SUGAR) < 12 g'}\n", 1000), core)
	bench.Again = nil
	for b.Loop() {
		if _, err := bench.Judge(context.Background()); err != nil {
			b.Fatal(err)
		}
	}
}

// Alcohol that nobody knows is not none: the strength of a drink with it is unknown too, and no more than
// its most. 20 g of 1.58 g in 100 g (data/bounds.csv) in some 70 ml are 0.57 % vol.
func TestUnknownAlcoholOfAStrength(t *testing.T) {
	text := `drink: "x"
serves: 1
foods:
  kombucha: {name: "House kombucha", group: soft drink, per: 100 g, values: {water: 93 g, sugars: 5 g, alcohol: unknown}, source: "invented"}
build: [20 g own:kombucha, 50 g core:water-pure]
claims: [{say: x, check: alcohol_abv() <= 0.3 %}, {say: y, check: alcohol_abv() < 1.2 %}, {say: z, check: alcohol_abv() > 1 %}]
`
	said := judged(t, assaytest.Core(t), text)
	assert.Equal(t, claim.Unknown, said[0].Word, said[0].Line())
	require.NotNil(t, said[0].Settle)
	assert.Equal(t, "alcohol of house kombucha", said[0].Settle.What)
	assert.EqualValues(t, "supported", said[1].Word, said[1].Line())
	assert.EqualValues(t, "refuted", said[2].Word, said[2].Line())
}

// What each of the new figures costs: the first time that a drink is asked for it, and then. A place wants
// its whole table entered and drawn once.
func BenchmarkFigures(b *testing.B) {
	core := assaytest.Core(b)
	a := run(b, core, pots+"  - {say: x, check: serving(MALAC) < 1 g}\n", 1000)
	for _, text := range []string{`sweetness() < 9 %`, `serving(MALAC) < 1 g`, `food_rank(CITAC, "core:lemon-juice") <= 10`} {
		c, err := claim.Parse(text, fail.Place{})
		require.NoError(b, err)
		name, _, _ := strings.Cut(text, "(")
		b.Run("first "+name, func(b *testing.B) {
			for b.Loop() {
				if _, err := c.Check(claims.NewGlass(a, nil).RankBy(shelf(core))); err != nil {
					b.Fatal(err)
				}
			}
		})
		g := claims.NewGlass(a, nil).RankBy(shelf(core))
		b.Run("again "+name, func(b *testing.B) {
			for b.Loop() {
				if _, err := c.Check(g); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
