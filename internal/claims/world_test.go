package claims_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/fail"
	"sipsum/internal/taste"
)

const plum = `drink: "Plum and pear"
serves: 1
components:
  plum syrup:
    ingredients: [200 g core:plum-juice, 60 g core:sugar-white, 40 g core:water-pure]
    steps:
      - strain: {collect: 200 g, through: cloth}
build:
  - 30 g ± 6 g plum syrup
  - 40 g core:pear-juice
  - 30 g core:water-pure
claims:
`

// written makes the file of a world out of the file of the drink: the lines that the change tells, and
// the food's own lines pour it.
func written(t *testing.T, text string, w *claims.World) string {
	t.Helper()
	var foods []string
	for _, c := range w.Changes {
		if strings.HasPrefix(c.Line, "- ") { // an amount: of the line that pours the same
			amount := strings.TrimPrefix(c.Line, "- ")
			of := amount[strings.Index(amount[strings.Index(amount, " ")+1:], " ")+strings.Index(amount, " ")+2:]
			var lines []string
			for _, line := range strings.Split(text, "\n") {
				if strings.HasPrefix(line, "  - ") && strings.HasSuffix(line, " "+of) {
					line = "  - " + amount
				}
				lines = append(lines, line)
			}
			text = strings.Join(lines, "\n")
			continue
		}
		if line := "  " + strings.Replace(c.Line, `source: "…"`, `source: "the world in which the claim is false"`, 1); !slices.Contains(foods, line) {
			foods = append(foods, line)
		}
		code, rest, _ := strings.Cut(c.Line, ":")
		_, id, _ := strings.Cut(rest, `fill: "`)
		id, _, _ = strings.Cut(id, `"`)
		text = strings.ReplaceAll(text, " "+id, " own:"+code)
	}
	if len(foods) > 0 {
		text = strings.Replace(text, "components:\n", "foods:\n"+strings.Join(foods, "\n")+"\ncomponents:\n", 1)
	}
	return text
}

// Each counterexample breaks its claim where it is written as a file and run; the claim holds in
// the file as it was.
func TestEveryNearestWorldBreaksItsClaim(t *testing.T) {
	core := assaytest.Core(t)
	found := 0
	for _, check := range []string{
		`serving(MALAC) > 0.2 g`,
		`share(MALAC, "plum syrup") >= 20 %`,
		`share(MALAC, "plum syrup") <= 80 %`,
		`serving(SUGAR) > 10 g`,
		`serving(SUGAR) < 17 g`,
		`component("plum syrup", SUGAR) > 8 g`,
		`serving(K) > 50 mg and serving(SUGAR) < 30 g`,
		`ratio(MALAC, SUGAR) < 5 %`,
		`brix() < 20`,
		`ph() < 3.9`,
		`ta() > 1.5 g/l`,
		`serving(MALAC) between 0.05 g and 0.8 g`,
		`sweetness() > 8 %`,
		`sweetness() < 170 g/l`,
	} {
		text := plum + "  - say: \"x\"\n    check: '" + check + "'\n"
		said := judged(t, core, text)
		require.Len(t, said, 1)
		s := said[0]
		t.Logf("%s: %s", check, s.Line())
		for _, line := range s.Lines() {
			t.Log("   ", line)
		}
		if s.Nearest == nil {
			continue
		}
		found++
		require.True(t, s.Holds(), check)
		file := written(t, text, s.Nearest)
		a := run(t, core, file, 50)
		c, err := claim.Parse(check, fail.Place{})
		require.NoError(t, err)
		o, err := c.Evaluate(claims.NewGlass(a, nil), nil)
		require.NoError(t, err)
		_, may := o.AtCentre()
		assert.False(t, may, "%s\n%s", check, file)
		before, err := c.Evaluate(claims.NewGlass(run(t, core, text, 50), nil), nil)
		require.NoError(t, err)
		assert.True(t, before.Central(), "%s holds in the file as it was", check)
	}
	assert.GreaterOrEqual(t, found, 6, "of fourteen claims, hardly any of which is beyond doubt")
}

// A claim on one figure of one food is broken at the figure itself: 100 g of a drink with half of a
// food that has m in 100 g has m/2.
func TestNearestOfOneFigureByHand(t *testing.T) {
	core := assaytest.Core(t)
	text := "drink: \"x\"\nserves: 1\nbuild: [50.00 g core:lemon-juice, 50.00 g core:water-pure]\nclaims: [{say: x, check: serving(CITAC) > 1.8 g}]\n"
	s := judged(t, core, text)[0]
	require.NotNil(t, s.Nearest, s.Line())
	require.Len(t, s.Nearest.Changes, 1)
	assert.InDelta(t, 3600, s.Nearest.Changes[0].To, 20, "mg in 100 g: 1.8 g in 50 g")
	assert.Contains(t, s.Nearest.Changes[0].Words, "your lemon juice has under 3")
	require.NotNil(t, s.Weakest)
	assert.Equal(t, "citric acid of lemon juice", s.Weakest.Name)
}

// Of the five works on plums whose malic acid stands in data/samples.csv (all acids of 1.27, 1.5, 0.6 and 0.5 g, × 1.5 ÷ 1.7,
// and 1.5 g; in the juice × 1.014) two print less than 0.6 g of it in 100 g, and one more than 1.4 g. Of a food whose
// figures are not kept one by one nothing is said.
func TestTheWorldCountsPublishedFigures(t *testing.T) {
	core := assaytest.Core(t)
	of := func(food, check string) string {
		s := judged(t, core, "drink: \"x\"\nserves: 1\nbuild: [50.00 g core:"+food+", 50.00 g core:water-pure]\nclaims: [{say: x, check: "+check+"}]\n")[0]
		require.NotNil(t, s.Nearest, s.Line())
		return strings.Join(s.Lines(), "\n")
	}
	assert.Regexp(t, `has under (600|59.) mg malic acid in 100 g \(taken to be 1120; 2 of 5 published figures that stand alone are: 447, 537, 1140, 1340, 1520\)`, of("plum-juice", "serving(MALAC) > 0.3 g"))
	assert.Regexp(t, `has over (1400|140.) mg malic acid in 100 g \(taken to be 1120; 1 of 5 published figures that stand alone is: `, of("plum-juice", "serving(MALAC) < 0.7 g"))
	assert.Contains(t, of("plum-juice", "serving(MALAC) < 0.9 g"), "; none of 5 published figures that stand alone is: 447, ")
	// Of espresso four works print 410 to 584 mg caffeine, and USDA SR28 (14210) prints 212: it does not stand among them,
	// and is not passed over.
	assert.Contains(t, of("espresso", "serving(CAFFN) > 140 mg"), "none of 4 published figures that stand alone is: 410, 460, 520, 584; others reach down to 212)")
	assert.NotContains(t, of("pear-juice", "serving(MALAC) > 0.05 g"), "published")
}

// A figure that the file states itself is another in its own food, per what it states it; a serving
// of 100 ml at 1.05 g/ml has what 100 ml have.
func TestNearestOfAnOwnFood(t *testing.T) {
	core := assaytest.Core(t)
	text := `drink: "x"
serves: 1
foods:
  oat: {name: "Oat drink, invented", group: plant drink, per: 100 ml, density: 1.05 g/ml, values: {WATER: 90 g ± 0, sugars: 4 g ± 0.5 g sd}, source: "the pack"}
build: [100.00 ml own:oat]
claims: [{say: x, check: serving(SUGAR) < 4.5 g}]
`
	s := judged(t, core, text)[0]
	require.NotNil(t, s.Nearest, s.Line())
	require.Len(t, s.Nearest.Changes, 1)
	assert.InDelta(t, 4.5/1.05, s.Nearest.Changes[0].To, 0.02, "g in 100 g")
	assert.Contains(t, s.Nearest.Changes[0].Line, "in foods, oat")
	assert.Equal(t, "by the pack", s.Weakest.Answer)
	value := s.Nearest.Drink.Foods[0].Values
	assert.InDelta(t, 4.5, value[len(value)-1].Number, 0.02, "g in 100 ml")
}

// Where something is unknown besides, the world states it too, at the end that hurts: else the file
// of it would be one of which nobody can tell.
func TestTheNearestWorldStatesTheUnknown(t *testing.T) {
	core := assaytest.Core(t)
	text := `drink: "x"
serves: 1
foods:
  dark: {name: "Dark, invented", per: 100 g, values: {WATER: 99 g ± 0, CAFFN: 40 mg ± 5 mg sd}, source: "x"}
  herb: {name: "Herb, invented", per: 100 g, values: {WATER: 99 g ± 0, CAFFN: unknown}, source: "x"}
build: [50.00 g own:dark, 50.00 g own:herb]
claims: [{say: x, check: serving(CAFFN) > 15 mg}]
`
	s := judged(t, core, text)[0]
	require.NotNil(t, s.Nearest, s.Line())
	require.Len(t, s.Nearest.Changes, 2)
	assert.InDelta(t, 30, s.Nearest.Changes[0].To, 0.2, "15 mg of 50 g")
	assert.Equal(t, "your herb has 0 mg caffeine in 100 g", s.Nearest.Changes[1].Words)
	assert.Contains(t, strings.Join(s.Lines(), "\n"), "your herb has 0 mg caffeine in 100 g, which nobody knows")
	again, err := benchOf(run(t, core, text, 50), core).Again(context.Background(), s.Nearest.Drink, false)
	require.NoError(t, err)
	c, err := claim.Parse(s.Check, fail.Place{})
	require.NoError(t, err)
	o, err := c.Evaluate(claims.NewGlass(again, nil), nil)
	require.NoError(t, err)
	_, may := o.AtCentre()
	assert.False(t, may, "false, and not only unknown")
}

// A drink is as sweet as its sugar, in the volume of the solution. Where which sugars there are decides too, that no file has stated, no world is told, nor that
// there is none.
func TestNearestOfSweetness(t *testing.T) {
	core := assaytest.Core(t)
	text := "drink: \"x\"\nserves: 1\nbuild:\n  - 10 g ± 2 g core:sugar-white\n  - 90.00 g core:water-pure\nclaims: [{say: x, check: sweetness() < 11.5 %}]\n"
	s := judged(t, core, text)[0]
	require.NotNil(t, s.Nearest, s.Line())
	require.Len(t, s.Nearest.Changes, 1)
	sugar := s.Nearest.Changes[0].To
	byMass := 100 * sugar / (sugar + 90) // of 11.5 g in 100 ml, which weigh more than 100 g and less than 106
	assert.Less(t, byMass, 11.5)
	assert.Greater(t, byMass, 11.5/1.06)
	again, err := benchOf(run(t, core, text, 50), core).Again(context.Background(), s.Nearest.Drink, false)
	require.NoError(t, err)
	assert.InDelta(t, 11.5, taste.Sweetness(again.Glass()).Mean, 0.05)

	s = judged(t, core, plum+"  - {say: x, check: sweetness() < 170 g/l}\n")[0]
	require.True(t, s.Holds(), s.Line())
	assert.Nil(t, s.Nearest)
	assert.False(t, s.Searched)
	assert.NotContains(t, strings.Join(s.Lines(), " "), "no figure of a food")
}

// A world that no draw comes near is not told.
func TestNoWorldBeyondTheDraws(t *testing.T) {
	core := assaytest.Core(t)
	said, err := benchOf(run(t, core, "drink: \"x\"\nserves: 1\nbuild: [50 g core:lemon-juice]\nclaims: [{say: x, check: serving(CITAC) > 1 mg}]\n", 300), core).Judge(context.Background())
	require.NoError(t, err)
	assert.Nil(t, said[0].Nearest)
	assert.Contains(t, strings.Join(said[0].Lines(), "\n"), "within the range of its draws")
}
