package claim_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/claim"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
)

// glass is a drink of two parts, the figures of which are given.
type glass struct {
	own, rest  map[constituent.ID]claim.Figure
	properties map[claim.Property]claim.Figure
	declared   map[string]bool
}

func (g glass) Amount(c *constituent.Constituent, of claim.Part) (claim.Figure, error) {
	switch {
	case of.Name != "" && of.Name != "syrup":
		return claim.Figure{}, fail.New(fail.Wrong, "there is no part "+of.Name, "there is: syrup")
	case of.Name == "":
		a, b := g.own[c.ID], g.rest[c.ID]
		sum := claim.Figure{Gaps: append(append([]claim.Gap{}, a.Gaps...), b.Gaps...)}
		for d := range a.Known {
			sum.Known = append(sum.Known, a.Known[d]+b.Known[d])
		}
		return sum, nil
	case of.Rest:
		return g.rest[c.ID], nil
	}
	return g.own[c.ID], nil
}

func (g glass) Property(p claim.Property) (claim.Figure, error) { return g.properties[p], nil }

func (g glass) Rank(_ *constituent.Constituent, food string) (claim.Figure, error) {
	if food != "core:plum" {
		return claim.Figure{}, fail.New(fail.Wrong, "there is no food "+food, "there is: core:plum")
	}
	return figure(even(0.5, 10.5, 1000), gap("others", 4)), nil
}

func (g glass) Contains(allergen string) (bool, claim.Gap, error) {
	return g.declared[allergen], claim.Gap{Key: allergen, Most: []float64{1}, What: "nobody declares it"}, nil
}

// even are n draws spread evenly from low to high, the middle first.
func even(low, high float64, n int) []float64 {
	col := []float64{(low + high) / 2}
	for d := range n {
		col = append(col, low+(high-low)*(float64(d)+0.5)/float64(n))
	}
	return col
}

func figure(col []float64, gaps ...claim.Gap) claim.Figure {
	return claim.Figure{Known: col, Gaps: gaps}
}

func gap(key string, most float64) claim.Gap {
	return claim.Gap{Key: key, Most: []float64{most}, What: key}
}

// sweet holds 8 to 12 g of sugar in the syrup and 2 g beside it, in even draws.
func sweet() glass {
	return glass{
		own:  map[constituent.ID]claim.Figure{"SUGAR": figure(even(8, 12, 1000)), "MALAC": figure(even(0.3, 0.3, 1000)), "CITAC": figure(even(0, 0, 1000))},
		rest: map[constituent.ID]claim.Figure{"SUGAR": figure(even(2, 2, 1000)), "MALAC": figure(even(0.1, 0.1, 1000), gap("oat", 0.4)), "CITAC": figure(even(0, 0, 1000), gap("oat", math.Inf(1)))},
		properties: map[claim.Property]claim.Figure{
			claim.Mass: figure(even(100, 100, 1000)), claim.Volume: figure(even(80, 80, 1000)), claim.PH: figure(even(3.5, 4, 200)),
			claim.Acidity: figure(even(0.006, 0.006, 200)), claim.Strength: figure(even(0.012, 0.012, 1000)), claim.Brix: figure(even(14, 14, 1000)),
			claim.Sweetness: figure(even(0.075, 0.105, 1000)),
		},
		declared: map[string]bool{"milk": true},
	}
}

func check(t *testing.T, env claim.Env, text string) claim.Verdict {
	t.Helper()
	c, err := claim.Parse(text, fail.Place{})
	require.NoError(t, err, text)
	v, err := c.Check(env)
	require.NoError(t, err, text)
	return v
}

// The probabilities are lengths of a line: of 10 to 14 g, 3 of 4 lie below 13 g.
func TestVerdicts(t *testing.T) {
	for _, c := range []struct {
		text string
		word claim.Word
		p    float64
	}{
		{`serving(SUGAR) < 13.9 g`, "supported", 0.975},
		{`serving(SUGAR) < 13400 mg`, "likely", 0.85},
		{`serving(SUGAR) < 12 g`, "unclear", 0.5},
		{`not serving(SUGAR) < 12 g`, "unclear", 0.5},
		{`serving(SUGAR) < 10.6 g`, "unlikely", 0.15},
		{`serving(SUGAR) < 10.1 g`, "refuted", 0.025},
		{`11 g <= serving(SUGAR) < 13 g`, "unclear", 0.5},
		{`serving(SUGAR) between 10.4 g and 13.6 g`, "likely", 0.8},
		{`serving(SUGAR) < 10.8 g or serving(SUGAR) > 13.2 g`, "unclear", 0.4},
		{`not (serving(SUGAR) < 10.4 g) and serving(SUGAR) < 20 g`, "likely", 0.9},
		{`per100g(SUGAR) < 13 g`, "likely", 0.75},
		{`per100ml(SUGAR) < 16.25 g`, "likely", 0.75},
		{`share(SUGAR, "syrup") > 10/12`, "unclear", 0.5},
		{`component("syrup", SUGAR) / serving(SUGAR) > 10/12`, "unclear", 0.5},
		{`serving(SUGAR) - component("syrup", SUGAR) <= 2 g`, "supported", 1},
		{`serving(SUGAR) - component("syrup", SUGAR) < 2 g`, "refuted", 0},
		{`2 * serving(SUGAR) * 50 % < 13 g`, "likely", 0.75},
		{`ph() < 3.9`, "likely", 0.8},
		{`ph() < 3.9 and serving(SUGAR) < 13.9 g`, "likely", 0.8},
		{`ta() >= 6 g/l`, "supported", 1},
		{`alcohol_abv() <= 1.2 %`, "supported", 1},
		{`brix() > 13`, "supported", 1},
		{`contains("milk")`, "supported", 1},
		{`sweetness() < 9.75 %`, "likely", 0.75},
		{`sweetness() between 82.5 g/l and 9.75 g/100 ml`, "unclear", 0.5},
		{`food_rank(MALAC, "core:plum") <= 14.4`, "supported", 0.99}, // 0.5 to 10.5, up to 4 more
		{`food_rank(MALAC, "core:plum") > 9.5`, "unknown", 0},
		{`component("syrup", CITAC) > 0 g`, "refuted", 0}, // none is not more than none
		{`component("syrup", CITAC) >= 0 g`, "supported", 1},
		{`share(MALAC, "syrup") >= 30 %`, "supported", 1},       // 0.3 of 0.8 at the most: 37.5 %
		{`ratio(MALAC, SUGAR) < 10 %`, "supported", 1},          // 0.8 of 10
		{`0 * serving(CITAC) < 1 g`, "supported", 1},            // none of what nothing bounds
		{`share(MALAC, "syrup") >= 80 %`, "refuted", 0},         // 75 % at best
		{`serving(MALAC) >= 0.4 g`, "supported", 1},             // what is known alone
		{`serving(MALAC) > 0.81 g`, "refuted", 0},               // with all that is unknown
		{`serving(SUGAR) / serving(CITAC) > 1`, "unknown", 0},   // by what may be nothing
		{`share(MALAC, "syrup") >= 50 %`, "unknown", 0},         // 37.5 to 75 %
		{`serving(CITAC) < 5 g`, "unknown", 0},                  // nothing bounds it
		{`not contains("oats")`, "unknown", 0},                  // nobody is told that there is none
		{`contains("milk") and contains("oats")`, "unknown", 0}, //
	} {
		v := check(t, sweet(), c.text)
		assert.Equal(t, c.word, v.Word, c.text)
		if c.word != claim.Unknown {
			assert.InDelta(t, c.p, v.P, 0.002, c.text)
		} else {
			require.NotNil(t, v.Settle, c.text)
			assert.True(t, v.Decides())
		}
	}
}

// An unknown that shifts a verdict by less than draws can tell decides nothing.
func TestTheUnknownThatShiftsLittle(t *testing.T) {
	g := sweet()
	g.rest["SUGAR"] = figure(even(2, 2, 1000), gap("oat", 0.1))
	v := check(t, g, `serving(SUGAR) < 13.05 g`) // 0.7375 to 0.7625
	assert.EqualValues(t, "unclear", v.Word, "the end that says it less surely")
	assert.InDelta(t, 0.7375, v.P, 0.002)
	g.rest["SUGAR"] = figure(even(2, 2, 1000), gap("oat", 0.4))
	assert.Equal(t, claim.Unknown, check(t, g, `serving(SUGAR) < 13.1 g`).Word) // 0.675 to 0.775
}

// Of two unknowns that one is named which decides.
func TestWhatSettlesIsNamed(t *testing.T) {
	g := sweet()
	g.rest["SUGAR"] = figure(even(2, 2, 1000), gap("small", 0.2), gap("large", 3))
	v := check(t, g, `serving(SUGAR) < 14 g`)
	require.Equal(t, claim.Unknown, v.Word)
	assert.Equal(t, "large", v.Settle.What)
}

// A part that is not there is a fault at its name.
func TestNoSuchPart(t *testing.T) {
	c, err := claim.Parse(`serving(SUGAR) < 1 g or share(SUGAR, "pear") > 50 %`, fail.Place{File: "d.yaml", Line: 7, Col: 12})
	require.NoError(t, err)
	_, err = c.Check(sweet())
	require.Error(t, err)
	assert.Equal(t, "d.yaml:7:49: there is no part pear (there is: syrup)", err.Error())
}

// broken is a drink that cannot tell anything.
type broken struct{ glass }

var errBroken = errors.New("broken")

func (b broken) Amount(c *constituent.Constituent, of claim.Part) (claim.Figure, error) {
	if c.ID == "SUGAR" {
		return claim.Figure{}, errBroken
	}
	return b.glass.Amount(c, of)
}
func (broken) Rank(*constituent.Constituent, string) (claim.Figure, error) {
	return claim.Figure{}, errBroken
}
func (broken) Property(claim.Property) (claim.Figure, error) { return claim.Figure{}, errBroken }
func (broken) Contains(string) (bool, claim.Gap, error)      { return false, claim.Gap{}, errBroken }

// What a drink cannot tell is told, wherever in a claim it stands.
func TestWhatTheDrinkCannotTell(t *testing.T) {
	for _, text := range []string{
		`serving(SUGAR) < 1 g`, `1 g < serving(SUGAR)`, `per100g(SUGAR) < 1 g`, `per100ml(MALAC) < 1 g`, `share(SUGAR, "syrup") > 1 %`, `ratio(SUGAR, MALAC) > 1`, `ratio(MALAC, SUGAR) > 1`,
		`ph() < 3`, `sweetness() < 9 %`, `food_rank(MALAC, "core:plum") < 3`, `contains("milk")`, `not contains("milk")`, `serving(MALAC) > 0 g and ph() < 3`, `ph() < 3 or serving(MALAC) > 0 g`, `serving(MALAC) + serving(SUGAR) < 1 g`, `serving(SUGAR) - serving(MALAC) < 1 g`,
	} {
		c, err := claim.Parse(text, fail.Place{})
		require.NoError(t, err, text)
		_, err = c.Check(broken{sweet()})
		assert.ErrorIs(t, err, errBroken, text)
	}
}

// The input that a margin goes with most is its weakest link, and noise is none.
func TestWeakest(t *testing.T) {
	noise := make([]float64, 1001)
	for d := range noise {
		noise[d] = math.Sin(float64(d*d) * 12.9898)
	}
	a := even(8, 12, 1000)
	margin := make([]float64, len(a))
	for d := range margin {
		margin[d] = 14 - a[d] + noise[d]/10
	}
	inputs := []estimate.Entry{{Name: "noise", Column: noise}, {Name: "sugar", Column: a}}
	at, share := claim.Weakest(margin, inputs)
	assert.Equal(t, 1, at)
	assert.Greater(t, share, 0.9)
	at, _ = claim.Weakest(margin, []estimate.Entry{{Name: "constant", Column: even(1, 1, 1000)}})
	assert.Equal(t, -1, at)
	at, _ = claim.Weakest(a, inputs[:1])
	assert.Equal(t, -1, at, "a correlation that is noise counts as none")
}

// Claim is the cost of one claim over 1,000 draws.
func BenchmarkCheck(b *testing.B) {
	c, err := claim.Parse(`share(MALAC, "syrup") >= 50 % and 11 g <= serving(SUGAR) < 13 g`, fail.Place{})
	require.NoError(b, err)
	env := sweet()
	for b.Loop() {
		if _, err := c.Check(env); err != nil {
			b.Fatal(err)
		}
	}
}
