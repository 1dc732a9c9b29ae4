package houserules_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/houserules"
)

// deep is an invented drink with a food in every place where one can stand.
const deep = `drink: "Deep"
serves: 2
at: 60 °C
takes: 12 min ± 1 min
foods:
  sour: {name: "Sour powder", group: acid, per: 100 g, values: {citric acid: 100 g ± 0 g}, source: "invented", allergens: []}
  yellow: {name: "Yellow juice", fill: core:lemon-juice, per: 100 g, values: {water: 92 g}, source: "invented", allergens: []}
  kombucha: {name: "House kombucha", group: soft drink, per: 100 g, values: {water: 93 g, sugars: 5 g, alcohol: unknown}, source: "invented", allergens: []}
  trace: {name: "Ripe must", group: fruit juice, per: 100 g, values: {water: 85 g, sugars: 14 g, alcohol: trace}, source: "invented", allergens: []}
components:
  inner:
    ingredients: [20 g core:water-pure, 4 g core:milk-whole]
    steps:
      - steep: {ingredients: [1 g core:bay-leaf], at: 90 °C, for: 5 min, collect: 20 g}
      - treat: "smoked, apple wood"
  outer: {ingredients: [10 g inner, 5 g core:orange-juice, 1 g own:sour]}
  cleared:
    ingredients: [100 g core:apple-juice]
    steps:
      - clarify: {by: agar, with: 0.4 g core:agar, collect: 80 g}
      - adjust: {ph: 3.0, with: core:tartaric-acid}
build: [20 g outer, 20 g cleared, 50 g core:water-tap]
finish:
  - chill: {melt: 10 g}
garnish: [1 g core:spearmint]
aroma: [{of: orange peel, treatment: expressed}]
`

// with puts a line into the build of the drink.
func with(line string) string {
	return strings.Replace(deep, "50 g core:water-tap", "50 g core:water-tap, "+line, 1)
}

// Each line against a drink of which the answer is plain to see.
func TestLines(t *testing.T) {
	const pass, fails, open = houserules.Pass, houserules.Fails, houserules.CannotTell
	for _, c := range []struct {
		name, text, rule string
		want             houserules.Verdict
		says             string
	}{
		{"by code, in the build", deep, "forbidden: {ingredients: [core:water-tap]}", fails, "in the build"},
		{"by name, two deep", deep, "forbidden: {ingredients: [milk]}", fails, "(core:milk-whole) in outer / inner"},
		{"taken out again", deep, "forbidden: {ingredients: [bay leaf]}", fails, "core:bay-leaf"},
		{"what clears", deep, "forbidden: {ingredients: [agar]}", fails, "core:agar"},
		{"a dose", deep, "forbidden: {ingredients: [core:tartaric-acid]}", fails, "in cleared"},
		{"what melts", deep, "forbidden: {ingredients: [core:water-pure]}", fails, "core:water-pure"},
		{"on top", deep, "forbidden: {ingredients: [spearmint]}", fails, "on top, not eaten"},
		{"a substance by another name", deep, "forbidden: {ingredients: [citric acid]}", fails, "Sour powder (own:sour)"},
		{"an own food by its name", deep, "forbidden: {ingredients: [sour powder]}", fails, "own:sour"},
		{"what is not there", deep, "forbidden: {ingredients: [honey, core:gin-45]}", pass, "no food of the drink is called so"},
		{"a pot's name is no ingredient", strings.ReplaceAll(deep, "outer", "honey"), "forbidden: {ingredients: [honey]}", pass, ""},
		{"the name within another", deep, "forbidden: {ingredients: [apple]}", open, "has it in its name"},
		{"what lends", with("5 g own:yellow"), "forbidden: {ingredients: [core:lemon-juice]}", open, "borrows its figures from core:lemon-juice"},
		{"what lends, by name", with("5 g own:yellow"), "forbidden: {ingredients: [lemon juice]}", open, "borrows its figures from core:lemon-juice"},
		{"another of that name", with("5 g core:lemon-juice-bottled"), "forbidden: {ingredients: [core:lemon-juice]}", open, "is called Lemon juice too"},
		{"what is made of it", with("5 g core:whey-acid"), "forbidden: {ingredients: [peanut]}", pass, ""},
		{"whey", strings.ReplaceAll(deep, "core:milk-whole", "core:whey-acid"), "forbidden: {ingredients: [milk]}", open, "as an allergen: it is in core:whey-acid"},
		{"what is smelled", deep, "forbidden: {ingredients: [orange peel]}", open, "aroma:"},
		{"a technique", deep, "forbidden: {ingredients: [apple wood]}", open, "a technique of inner"},
		{"what nobody knows", deep, "forbidden: {ingredients: [xanadu]}", open, "no food that sipsum has is called xanadu"},
		{"a constituent among ingredients", with("20 g core:gin-45"), "forbidden: {ingredients: [alcohol]}", open, "no food that sipsum has is called alcohol"},
		{"a kind among ingredients", with("20 g core:gin-45"), "forbidden: {ingredients: [spirits]}", open, "(core:gin-45) is of the kind spirit"},
		{"a kind by its other foods", with("20 g core:buttermilk"), "forbidden: {ingredients: [wine]}", pass, ""},
		{"a code of another table", deep, "forbidden: {ingredients: [\"sr:09152\"]}", open, "is of another table"},

		{"a kind", deep, "forbidden: {kinds: [milk]}", fails, "core:milk-whole"},
		{"a kind in part of its words", deep, "forbidden: {kinds: [citrus]}", fails, "core:orange-juice"},
		{"a kind on top", deep, "forbidden: {kinds: [herbs]}", fails, "core:spearmint"},
		{"a kind that is not there", deep, "forbidden: {kinds: [spirit]}", pass, ""},
		{"the kind of what lends", with("5 g own:yellow"), "forbidden: {kinds: [vegetable]}", pass, ""},

		{"lactose", deep, "forbidden: {constituents: [lactose]}", fails, "Milk, whole"},
		{"no caffeine", deep, "forbidden: {constituents: [caffeine]}", pass, "known or taken to have none"},
		{"alcohol that nobody knows", with("5 g own:kombucha"), "forbidden: {constituents: [alcohol]}", open, "nobody knows alcohol of house kombucha"},
		{"the gas of still water", "drink: x\nserves: 1\nbuild: [100 g core:water-brew]\n", "forbidden: {constituents: [carbon dioxide]}", pass, "no gas was put in"},
		{"gas that was put in", "drink: x\nserves: 1\nbuild: [100 g core:water-brew]\nfinish: [carbonate: {bottle: 0.5 l, charge: 1 g, at: 4 °C, left: 0.1 g/l}]\n", "forbidden: {constituents: [carbon dioxide]}", fails, "Carbon dioxide"},
		{"a trace is not zero", with("5 g own:trace"), "forbidden: {constituents: [alcohol]}", open, "a trace, or less than could be found, is in Ripe must"},
		{"and not hidden by what is there", with("5 g own:trace, 5 g core:gin-45"), "forbidden: {constituents: [alcohol]}", fails, "Gin"},

		{"an allergen", deep, "forbidden: {allergens: [milk]}", fails, "core:milk-whole"},
		{"an allergen on top", deep + "may-contain: [almond]\n", "forbidden: {allergens: [almond]}", open, "may get in at your bar"},
		{"none that was found", deep, "forbidden: {allergens: [fish]}", pass, "no promise"},

		{"a limit that holds", deep, "limits: [{say: weak, check: alcohol_abv() <= 0.5 %}]", pass, "holds in 100 of 100"},
		{"a limit that does not", with("20 g core:gin-45"), "limits: [{say: weak, check: alcohol_abv() <= 0.5 %}]", fails, "holds in 0 of 100"},
		{"a limit that nobody knows", with("60 g own:kombucha"), "limits: [{say: weak, check: alcohol_abv() <= 0.5 %}]", open, "nobody knows alcohol"},
		{"a limit that likely holds", "drink: x\nserves: 1\nbuild: [100 g core:lemon-juice]\n", "limits: [{say: sour, check: serving(CITAC) > 4.5 g}]", open, "likely: holds in"},
		{"a limit of a part that is not there", deep, "limits: [{say: shots, check: 'share(CAFFN, component \"shot\") > 0'}]", open, "no part \"shot\""},

		{"servings", deep, "servings: 2", pass, "serves: 2"},
		{"too few servings", deep, "servings: 4", fails, "serves: 2"},
		{"servings within", deep, "servings: 2 to 4", pass, ""},
		{"at least", deep, "servings: at least 3", fails, ""},
		{"volume within", deep, "volume: 40 ml to 60 ml", pass, "holds in 100 of 100"},
		{"volume above", deep, "volume: at most 4 cl", fails, "holds in 0 of 100"},
		{"volume below", deep, "volume: at least 1 dl", fails, ""},
		{"hot enough", deep, "temperature: 55 °C to 70 °C", pass, "stated: 60 °C"},
		{"the end is within", deep, "temperature: 60-70 °C", pass, ""},
		{"too hot", deep, "temperature: at most 10 °C", fails, ""},
		{"no temperature", strings.Replace(deep, "at: 60 °C\n", "", 1), "temperature: at most 10 °C", open, "does not say"},
		{"in time", deep, "minutes: 15", pass, "stated: 12 min ± 1 min"},
		{"too long", deep, "minutes: 10", fails, ""},
		{"perhaps in time", deep, "minutes: 12", open, "12 min ± 1 min"},
		{"no time", strings.Replace(deep, "takes: 12 min ± 1 min\n", "", 1), "minutes: 12", open, "does not say"},
		{"at least in time", deep, "minutes: at least 10 min", pass, ""},

		{"a paper that is printed", deep, "hand-over: [\"The list of ingredients\"]", pass, "sipsum allergens"},
		{"a card", deep, "hand-over: [nutrition declaration]", pass, "sipsum card"},
		{"a paper that is not", deep, "hand-over: [recipe card]", open, "a thing for you to bring"},
	} {
		for _, l := range answered(t, c.text, c.rule).Lines {
			assert.Equal(t, c.want, l.Verdict, "%s: %s: %s", c.name, l.Rule, l.Why)
			assert.Contains(t, l.Why, c.says, c.name)
			if l.Verdict == open && l.Key != "hand-over" && !strings.Contains(l.Why, "may get in") {
				assert.NotEmpty(t, l.Settle, "%s: what would settle it", c.name)
			}
			assert.NotContains(t, l.Rule+l.Why, "free from", c.name)
		}
	}
}

// An own food of which nobody tells anything passes no line of ingredients or kinds.
func TestAnOwnFoodOfWhichNobodyTells(t *testing.T) {
	text := "drink: x\nserves: 1\nfoods:\n  mystery: {name: \"Mystery\", per: 100 g, values: {water: 90 g}, source: \"invented\"}\nbuild: [10 g own:mystery, 50 g core:water-tap]\n"
	for _, rule := range []string{"{ingredients: [honey]}", "{ingredients: [core:honey]}", "{kinds: [spirit]}", "{allergens: [milk]}"} {
		l := only(t, text, "forbidden: "+rule)
		assert.Equal(t, houserules.CannotTell, l.Verdict, rule)
		assert.Contains(t, l.Why, "own:mystery", rule)
	}
	told := strings.Replace(text, "per:", "group: syrup, per:", 1)
	a := answered(t, told, "forbidden: {ingredients: [honey]}")
	assert.Equal(t, houserules.Pass, a.Lines[0].Verdict)
	require.Len(t, a.Remarks, 1)
	assert.Contains(t, a.Remarks[0], "Nobody has read what stands on the pack of own:mystery")
}

// Lines stand in the order of the file's keys, and say whether something must be decided.
func TestAnswer(t *testing.T) {
	a := answered(t, deep, "servings: 2\nforbidden: {kinds: [spirit], ingredients: [honey]}\nhand-over: [allergens]\n")
	var keys []string
	for _, l := range a.Lines {
		keys = append(keys, l.Key)
	}
	assert.Equal(t, []string{"ingredients", "kinds", "servings", "hand-over"}, keys)
	assert.False(t, a.Decides())
	assert.True(t, answered(t, deep, "servings: 3").Decides())
	assert.True(t, answered(t, deep, "hand-over: [recipe card]").Decides())
	assert.False(t, (*houserules.Answer)(nil).Decides())
	assert.Empty(t, answered(t, deep, "").Lines)
}

// What nobody could judge is told with the faults of reading, each at its place.
func TestFaultsOfCheck(t *testing.T) {
	h, faults := drink.ParseHouseRules("r", []byte(`rules: "Invented"
forbidden:
  kinds: [wheels]
  ingredients: [core:lemon-jiuce, "own:x"]
  allergens: [mlik]
  constituents: [alcool]
limits:
  - {say: a, check: ph() <}
  - {say: b, check: sweetnes() < 3}
`))
	houserules.Check(h, faults)
	err := faults.Err(fail.Wrong)
	require.Error(t, err)
	for _, want := range []string{
		`r:3:11: there is no kind of food "wheels"`, `r:4:17: there is no food core:lemon-jiuce (perhaps lemon-juice`, "r:4:35: own:x is a food of one drink file", `r:5:15: there is no allergen "mlik" (perhaps milk`,
		`r:6:18: unknown constituent "alcool"`, "r:8:27: ", "r:9:21: ",
	} {
		assert.Contains(t, err.Error(), want)
	}
	assert.Len(t, strings.Split(err.Error(), "\n"), 7)
}

// The fructose of sugar that a boil with acid has split is of no food, and counts: the rule has all that the
// claim has, of 50 g of sugar of which each gram gives half a gram.
func TestTheFructoseOfSplitSugarCounts(t *testing.T) {
	text := `drink: "x"
serves: 1
components:
  syrup:
    ingredients: [50 g core:sugar-white, 50 g core:water-pure]
    steps:
      - invert: {share: 60 %}
build: [100 g syrup]
`
	l := only(t, text, "forbidden: {constituents: [fructose]}")
	assert.Equal(t, houserules.Fails, l.Verdict, l.Why)
	assert.Contains(t, l.Why, "Sugar")
	assert.Equal(t, houserules.Pass, only(t, text, "limits: [{say: split, check: serving(FRUS) > 13 g}]").Verdict)
}

// Ice that a step melts is ice; what a pot is called speaks for a kind, and for a thing that no food is called.
func TestWhatNoLinePours(t *testing.T) {
	const text = "components:\n  passion syrup: {ingredients: [50 g core:passion-fruit-juice-purple, 50 g core:sugar-white]}\nbuild: [30 g passion syrup, 20 g core:cream-heavy, 40 g core:espresso]\nfinish: [chill: {melt: 10 g}]\n"
	for rule, want := range map[string]houserules.Verdict{
		"ingredients: [ice]": houserules.Fails, "ingredients: [passion syrup]": houserules.CannotTell, "kinds: [syrup]": houserules.CannotTell,
		"kinds: [milk]": houserules.CannotTell, "kinds: [spirit]": houserules.Pass,
	} {
		l := only(t, "drink: x\nserves: 1\n"+text, "forbidden: {"+rule+"}\n")
		assert.Equal(t, want, l.Verdict, "%s: %s", rule, l.Why)
	}
}
