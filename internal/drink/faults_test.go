package drink_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// faultsOf gives the faults of a text, one a line, without the file's name.
func faultsOf(t *testing.T, text string) []string {
	t.Helper()
	_, faults := drink.Parse("t", []byte(text), nil)
	err := faults.Err(fail.Wrong)
	if err == nil {
		return nil
	}
	return strings.Split(strings.TrimPrefix(err.Error(), "t:"), "\nt:")
}

const head = "drink: x\nserves: 1\n" // lines 1 and 2

// Each text has one fault; want is its place and pieces of what it says.
func TestFaultsOfLines(t *testing.T) {
	cases := []struct {
		line string // of the build, which begins in line 4, column 5
		want string
		says []string
	}{
		{"- 12,5 g espresso", "4:5", []string{"comma", "write: - 12.5 g espresso"}},
		{"- 1,000 g water", "4:5", []string{"a thousand to some", "write: - 1000 g water, or: - 1.000 g water"}},
		{"- 2 oz rum", "4:5", []string{"oz", "write: - 2 fl-oz rum"}},
		{"- 1,5 oz rum", "4:5", []string{"comma", "write: - 1.5 fl-oz rum"}},
		{"- 20 t sugar", "4:5", []string{"unknown unit", "g kg mg", "… g t sugar"}},
		{"- espresso", "4:5", []string{"does not begin with an amount", "36 g espresso"}},
		{"- espresso 36 g", "4:5", []string{"does not begin with an amount", "write: - 36 g espresso"}},
		{"- espresso: 36 g", "4:5", []string{"the amount comes before the food", "write: - 36 g espresso"}},
		{"- lemon juice: 0,5 cl", "4:5", []string{"write: - 0.5 cl lemon juice"}},
		{"- a pinch of salt", "4:5", []string{"write: - 1 pinch salt"}},
		{"- about 36 g espresso", "4:5", []string{"by how much", "write: - 36 g espresso"}},
		{"- 36-40 g ± 2 g espresso", "4:5", []string{"range twice"}},
		{"- 40-36 g espresso", "4:5", []string{"smaller amount first"}},
		{"- 2-3 leaves core:spearmint", "4:5", []string{"takes no range", "write: - 2 leaves core:spearmint, or: - 3 leaves core:spearmint"}},
		{"- 20 g", "4:5", []string{"no food after"}},
		{"- 0 g x", "4:5", []string{"zero"}},
		{"- 0.0000001 mg x", "4:5", []string{"less than a microgram"}},
		{"- 0.0000000001 ml x", "4:5", []string{"less than a microgram"}},
		{"- 20 t x", "4:5", []string{"unknown unit"}},
		{"- 99999 kg x", "4:5", []string{"ten tonnes"}},
		{"- 36 g ± 3 g ± 1 g espresso", "4:16", []string{"not read as a range"}},
		{"- 3 g ± 2 ml x", "4:5", []string{"does not fit"}},
		{"- 50 % x", "4:5", []string{"share of the other lines"}},
		{"- 20 g core:rum #2", "4:19", []string{"cut here", "#2", "quotes"}},
		{"- 20 g #rum", "4:10", []string{"cut here", "#rum"}},
		{"- 20 g # rum", "4:5", []string{"no food after"}},
		{"- \"20 g a\\u200bb\"", "4:5", []string{"nobody sees (U+200B)", "20 g ab"}},
		{"- 20 g a\u200bb", "4:11", []string{"nobody sees (U+200B)", "- 20 g ab"}},
		{"- 20 g foo: bar", "4:5", []string{"makes a map", `put quotes round it: "20 g foo: bar"`}},
		{"- 20 g foo: bar: baz", "4:15", []string{`second ": "`, "quotes"}},
		{"- 20 g foo\n    30 g bar", "4:5", []string{"runs on", "30 g bar"}},
		{"- 304", "4:5", []string{"number where a line was meant"}},
		{"- [20 g x]", "4:5", []string{"a list stands where a line was meant"}},
		{"-", "4:4", []string{"no value"}},
		{`- ""`, "4:5", []string{"empty"}},
		{"- ~", "4:5", []string{"reads ~ as nothing", "quotes"}},
		{"- `20 g x", "4:5", []string{"cannot begin with this character", "quotes"}},
		{"- *x", "4:5", []string{"aliases", "quotes"}},
		{"- &x 20 g y", "4:5", []string{"anchors"}},
		{"- !x 20 g y", "4:5", []string{"tags"}},
		{"- 20 g " + strings.Repeat("é", 201), "4:10", []string{"201 characters", "at most 200"}},
		{`- "20 g a\u202eb"`, "4:5", []string{"U+202E", "reorders"}},
		{`- "20 g a\tb"`, "4:5", []string{"control character (U+0009)"}},
		{"- {food: a}", "4:5", []string{"needs an amount"}},
		{"- {amount: 2 g}", "4:5", []string{`needs "food"`}},
		{"- {food: a, amount: 2 g x}", "4:27", []string{"followed by \"x\""}},
		{"- {food: a, amount: 2 g, portion: cup, count: 1}", "4:28", []string{"an amount or a portion"}},
		{"- {food: a, amount: 2 g, count: 1}", "4:28", []string{"no count"}},
		{"- {food: a, portion: cup}", "4:5", []string{"portion and count together"}},
		{"- {food: a, portion: cup, count: 0}", "4:36", []string{"not a count"}},
		{"- {food: a, portion: cup, count: -1}", "4:36", []string{"out of range"}},
		{"- {food: 0304, amount: 2 g}", "4:12", []string{"number where a food was meant", `"0304"`}},
		{"- {food: a, amount: 2 g, as: peeled}", "4:32", []string{"edible or whole"}},
		{"- {food: a, amount: 2 g, fill: lemon}", "4:34", []string{"table:code"}},
		{"- {food: a, amount: 2 g, eaten: no}", "4:35", []string{"true or false"}},
		{"- {food: a, amount: 2 g, eaten: false}", "4:5", []string{"only a garnish"}},
		{"- {food: a, amout: 2 g, amount: 2 g}", "4:15", []string{"no key \"amout\"", "did you mean \"amount\""}},
		{"- {food: a, amount: 2 g, food: b}", "4:28", []string{"again", "line 4"}},
		{"- {food: a, b, amount: 2 g}", "4:15", []string{"comma before \"b\"", "quotes"}},
		{"- {food: a, amount: 12,5 g}", "4:23", []string{"12,5", "12.5"}},
	}
	for _, c := range cases {
		got := faultsOf(t, head+"build:\n  "+c.line+"\n")
		require.Len(t, got, 1, "%s\n%s", c.line, strings.Join(got, "\n"))
		assert.True(t, strings.HasPrefix(got[0], c.want+": "), "%s: %s", c.line, got[0])
		for _, s := range c.says {
			assert.Contains(t, got[0], s, c.line)
		}
	}
}

func TestLinesThatAreFine(t *testing.T) {
	for _, line := range []string{
		"- 36 g espresso   # double shot",
		"- 36 g espresso #",
		"- 36 g espresso ## x",
		"- 36 g rum#2",
		"- '36 g rum #2' #2",
		"- '20 g foo: bar'",
		"- 20 g http://x",
		"- 20 g 50 % syrup",
		"- 1/2 tsp a",
		"- 36g a",
		"- 36 g ±3 g a",
		"- 36 g +/- 3 g espresso",
		"- 36±2 g espresso",
		"- 36 g to 40 g espresso",
		"- 36–40 g espresso",
		"- {food: 'a, b: c', amount: 2 g ± 1 g}",
		"- {food: own:a, amount: 2 g, eaten: true}",
		"- >\n    20 g\n    a",
	} {
		assert.Empty(t, faultsOf(t, head+"build:\n  "+line+"\n"), line)
	}
}

func TestFaultsOfBracketLists(t *testing.T) {
	cases := []struct{ list, want string }{
		{"[18 g core:coffee, roasted]", `3:27: "roasted" does not begin with an amount (put quotes`},
		{"[12,5 g x, 1 g y]", `3:9: "12,5" has a comma (write: 12.5 g x)`},
		{"[1,000 g x, 1 g y]", `3:9: "1,000" is a thousand to some and decimals to others (write: 1000 g x, or: 1.000 g x)`},
		{"[18 g core: coffee]", `3:9: YAML makes a map of this line because of its colon (put quotes round it: "18 g core: coffee")`},
		{"[20 g rum #2]", "3:18: the text is cut here"},
		{"[20 g rum", "3:8: the [ that opens here is not closed"},
		{"[20 g rum}", "3:8: the [ that opens here is not closed"},
		{"[]", "3:8: build is empty"},
		{"[{food: a, amount: 2 g]", "3:30: a comma or } is missing here"},
	}
	for _, c := range cases {
		got := faultsOf(t, head+"build: "+c.list+"\n")
		require.Len(t, got, 1, "%s\n%s", c.list, strings.Join(got, "\n"))
		assert.True(t, strings.HasPrefix(got[0], c.want), "%s: %s", c.list, got[0])
	}
	assert.Empty(t, faultsOf(t, head+"build: [1 g a, \"2 g b, c\", {food: core:d, amount: 2 g}]\nfinish: [{wash: {fat: [60 g core:butter]}}]\n"))
}

func TestFaultsOfTheTop(t *testing.T) {
	cases := []struct{ text, want string }{
		{"serves: 1\nbuild: [1 g a]\n", `1:1: the drink needs "drink"`},
		{"drink: x\nbuild: [1 g a]\n", `1:1: the drink needs "serves"`},
		{"drink: x\nserves: 1\n", `1:1: the drink needs "build"`},
		{"drink: x\nserves: 0\nbuild: [1 g a]\n", `2:9: serves is "0" (write a whole number from 1 to 10000)`},
		{"drink: x\nserves: 10001\nbuild: [1 g a]\n", `2:9: serves is "10001"`},
		{"drink: x\nserves: 1.5\nbuild: [1 g a]\n", `2:9: serves is "1.5"`},
		{"drink: x\nserves: 0x2\nbuild: [1 g a]\n", `2:9: serves is "0x2"`},
		{"drink: x\nserves: 1\nbuild: 1 g a\n", `3:8: build must be a list`},
		{"drink: x\nserves: 1\nbuild: [1 g a]\nglas: 180 ml\n", `4:1: the drink has no key "glas" (did you mean "glass"? it has use, drink,`},
		{"drink: x\nserves: 1\nbuild: [1 g a]\nserves: 2\n", `4:1: "serves" stands here again, first in line 2`},
		{"drink: x\nserves: 1\nbuild: [1 g a]\ngarnish:\n", `4:9: garnish has no value`},
		{"drink: Copper: Orchard\nserves: 1\nbuild: [1 g a]\n", `1:`},
		{"drink: Copper #9\nserves: 1\nbuild: [1 g a]\n", `1:15: the text is cut here`},
		{"drink: {a: b}\nserves: 1\nbuild: [1 g a]\n", `1:8: the drink's name is a map where text was meant (put quotes`},
		{"drink: " + strings.Repeat("x", 201) + "\nserves: 1\nbuild: [1 g a]\n", `1:8: the drink's name has 201 characters`},
		{"drink: x\nserves: 1 #one\nbuild: [1 g a]\nglass: 180 g\n", `4:8: glass cannot be given in g (use ml, cl`},
		{head + "build: [1 g a]\nglass: 18 cl ± 1 cl\n", `4:8: glass takes no ±`},
		{head + "build: [1 g a]\nscale: 1 ml\n", `4:8: scale cannot be given in ml`},
		{head + "build: [1 g a]\nat: 6 K\n", `4:5: a serving temperature is not given in "K" (take 273.15 off`},
		{head + "build: [1 g a]\nat: 6\n", `4:5: a serving temperature needs a unit (write: at: 6 °C)`},
		{head + "build: [1 g a]\nat:6 °C\n", `4:1: there is no space after the colon of at (write: at: 6 °C)`},
		{"drink: x\nserves:1\nbuild: [1 g a]\n", `2:1: there is no space after the colon of serves (write: serves: 1)`},
		{head + "build: {espresso: 36g}\n", `3:9: the amount comes before the food (write: - 36g espresso)`},
		{head + "build:\n  -36 g a\n", `4:3: there is no space after the dash (write: - 36 g a)`},
		{head + "build: [1 g a]\nservings: 4\n", `4:1: the drink has no key "servings" (write: serves: 4`},
		{head + "build: [1 g a]\nSERVES: 2\n", `4:1: "serves" stands here again, first in line 2`},
		{head + "build: [1 g a]\nat: 279 K\n", `4:5: a serving temperature is not given in "K" (take 273.15 off`},
		{head + "build: [1 g a]\nat: 131 °C\n", `4:5: "131 °C" is out of range for a serving temperature (it lies between -30 and 100 °C)`},
		{head + "build: [1 g a]\nat: −41 °C\n", `4:5: "−41 °C" is out of range`},
		{head + "build: [1 g a]\nat: .inf\n", `4:5: ".inf" does not begin with a number`},
		{head + "build: [1 g a]\nat: nan °C\n", `4:5: "nan °C" does not begin with a number`},
		{head + "build: [1 g a]\nat: 1e3 °C\n", `4:5: a serving temperature is not given in "e3 °C"`},
		{head + "build: [1 g a]\nat: 12,5 °C\n", `4:5: "12,5" has a comma`},
		{head + "build: [1 g a]\nrules: [eu, usa]\n", `4:13: rules does not know "usa" (did you mean "us"?`},
		{head + "build: [1 g a]\nrules: eu\n", `4:8: rules must be a list`},
		{head + "build: [1 g a]\nmay-contain: [almond, almond]\n", `4:23: "almond" stands twice`},
		{head + "build: [1 g a]\ncomponents: {c: {ingredients: [1 g a]}}\ngarnish: [1 g c]\ncompare-with: c\n", `6:15: compare-with names "c", and no line of the drink uses it (pour it,`},
		{head + "build: [1 g a]\ncompare-with: a\n", `4:15: compare-with names no component: "a"`},
		{head + "build: [1 g espresso]\ncomponents: {espresso: {ingredients: [1 g a]}}\ncompare-with: [espresso, espreso]\n", `5:26: compare-with names no component: "espreso" (write espresso)`},
		{head + "build: [1 g pot]\ncomponents: {pot: {ingredients: [1 g a]}}\ncompare-with: [pot, pot]\n", `5:21: "pot" stands twice in compare-with`},
		{head + "build: [1 g pot]\ncomponents: {pot: {ingredients: [1 g a]}, b: {ingredients: [1 g a]}}\ncompare-with: [pot, b]\n", `5:21: compare-with names "b", and no line of the drink uses it`},
		{head + "build: [1 g a]\ncompare-with: []\n", `4:15: compare-with is empty (name a component,`},
		{head + "build: [1 g a]\nclaims: [{say: s}]\n", `4:10: a claim needs "check"`},
		{head + "build: [1 g a]\nclaims: [{say: s, check: \"\"}]\n", `4:26: check is empty`},
		{head + "build: [1 g a]\nclaims: [{say: s, check: 12}]\n", `4:26: check is "12", which checks nothing`},
		{head + "build: [1 g a]\ntargets:\n  - ratio(A, \"b: c\") < 1\n", `5:5: YAML makes a map of this line`},
		{head + "build: [1 g a]\nvary: [{of: a, from: 2 g, to: 1 g}]\n", `4:8: from 2 g to 1 g is not a range`},
		{head + "build: [1 g a]\nvary: [{of: a, from: 2 g, to: 3 ml}]\n", `4:8: from 2 g to 3 ml is not a range`},
		{head + "build: [1 g abc]\nvary: [{of: abd, from: 2 g, to: 3 g}]\n", `4:8: vary names "abd", which is in no line (did you mean "abc"?)`},
		{head + "build: [1 g a]\nuse: []\nuse2: 1\n", `5:1: the drink has no key "use2"`},
	}
	for _, c := range cases {
		got := faultsOf(t, c.text)
		require.Len(t, got, 1, "%s\n%s", c.text, strings.Join(got, "\n"))
		assert.True(t, strings.HasPrefix(got[0], c.want), "%s: %s", c.text, got[0])
	}
}

func TestFaultsOfOwnFoods(t *testing.T) {
	cases := []struct{ food, want string }{
		{"f: {name: n, per: 100 g}", `4:3: nothing is known of "f"`},
		{"f: {name: n, per: 100 g, values: {FAT: 1 g}}", `4:3: the values of "f" have no source`},
		{"f: {name: n, fill: core:a}", `4:6: an own food needs "per"`},
		{"f: {per: 100 g, fill: core:a}", `4:6: an own food needs "name"`},
		{"f: {name: n, per: 100 %, fill: core:a}", `4:21: per cannot be given in %`},
		{"f: {name: n, per: 100 g, fill: own:g}", `4:34: an own food cannot borrow`},
		{"f: {name: n, per: 100 g, fill: core:a, density: 1.03}", `4:51: a density needs a unit (write: density: 1.03 g/ml)`},
		{"f g: {name: n, per: 100 g, fill: core:a}", `4:3: the food's code "f g" has a space (write: f-g:, and in the lines own:f-g)`},
		{"f: {name: n, per: 100 g, fill: core:a, density: 0 g/ml}", `4:51: "0 g/ml" is out of range`},
		{"f: {name: n, group: planet drink, per: 100 g, fill: core:a}", `4:23: group does not know "planet drink" (did you mean "plant drink"? use`},
		{"f: {name: n, group: moon, per: 100 g, fill: core:a}", `4:23: group does not know "moon" (use water`},
		{"f: {name: n, per: 100 g, fill: core:a, declared: usa}", `4:52: declared does not know "usa" (did you mean "us"? use`},
		{"f: {name: n, per: 100 g, fill: core:a, coffee: {}}", `4:50: coffee holds no fact (give a fact: species, process`},
		{"f: {name: n, per: 100 g, fill: core:a, coffee: washed}", `4:50: coffee must be written as key: value`},
		{"f: {name: n, per: 100 g, coffee: {species: arabica}}", `4:3: nothing is known of "f" (add values: or fill:`},
		{"f: {name: n, per: 100 g, fill: core:a, coffee: {species: arabika}}", `4:60: species does not know "arabika" (did you mean "arabica"? use`},
		{"f: {name: n, per: 100 g, fill: core:a, coffee: {process: wahsed}}", `4:60: process does not know "wahsed" (did you mean "washed"?`},
		{"f: {name: n, per: 100 g, fill: core:a, coffee: {proces: washed}}", `4:51: coffee has no key "proces" (did you mean "process"?`},
		{"f: {name: n, per: 100 g, fill: core:a, coffee: {roast: {}}}", `4:58: roast says neither loss, colour nor called (write roast: {loss: 14 %})`},
		{"f: {name: n, per: 100 g, fill: core:a, coffee: {roast: {loss: 14 %, called: dark}}}", `4:71: roast says both loss and called`},
		{"f: {name: n, per: 100 g, fill: core:a, coffee: {roast: {colour: 62}}}", `4:58: a colour number and its scale go together (write roast: {colour: 62, scale: agtron gourmet}`},
		{"f: {name: n, per: 100 g, fill: core:a, coffee: {roast: {colour: 62, scale: agtron}}}", `4:78: scale does not know "agtron"`},
		{"f: {name: n, per: 100 g, fill: core:a, coffee: {roast: {loss: 90 %}}}", `4:65: "90 %" is out of range for a loss of mass (it lies between 8 and 40 %)`},
		{"f: {name: n, per: 100 g, fill: core:a, coffee: {roast: {loss: 2 %}}}", `4:65: "2 %" is out of range for a loss of mass (it lies between 8 and 40 %)`},
		{"f: {name: n, per: 100 g, fill: core:a, coffee: {roast: {colour: 150, scale: CIE L*}}}", `4:59: 150 is no number of the scale CIE L* (it lies between 0 and 100)`},
		{"f: {name: n, per: 100 g, fill: core:a, coffee: {roast: {colour: 150, scale: agtron gourmet}}}", `4:59: 150 is no number of the scale agtron gourmet (it lies between 0 and 133)`},
		{"f: {name: n, per: 100 g, fill: core:a, coffee: {altitude: 1900 ft}}", `4:61: an altitude is not given in "ft"`},
		{"f: {name: n, per: 100 g, coffee: {lab: {values: {CAFFN: 1 g}}}}", `4:42: lab needs "source"`},
		{"f: {name: n, per: 100 g, fill: core:a, allergens: }", `4:52: allergens has no value (write [] if you looked`},
		{"f: {name: n, per: 100 g, fill: core:a, allergens: ~}", `4:53: allergens has no value`},
		{"f: {name: n, per: 100 g, source: s, values: {FAT: 1.5}}", `4:53: a figure needs a unit`},
		{"f: {name: n, per: 100 g, source: s, values: {FAT: -1 g}}", `4:53: "-1 g" is out of range`},
		{"f: {name: n, per: 100 g, fill: core:a, density: 9 g/ml}", `4:51: "9 g/ml" is out of range for a density (it lies between 0.1 and 2.2 g/ml)`},
		{"f: {name: n, per: 100 g, source: s, values: {FAT: 3 g ± 30 g}}", `4:53: "3 g ± 30 g" reaches below zero (half of the range is at most the figure: write 3 g ± 3 g, or less)`},
		{"f: {name: n, per: 100 g, source: s, values: {FAT: 1 g ± 100 g sd}}", `4:53: the standard deviation in "1 g ± 100 g sd" is more than the figure itself`},
		{"f: {name: n, per: 100 g, source: s, values: {FAT: 0 g ± 1 g}}", `4:53: "0 g ± 1 g" reaches below zero (write the middle of the range and half of its width, such as 0.5 g ± 0.5 g)`},
		{"f: {name: n, per: 100 g, source: s, values: {FAT: 1 IU}}", `4:53: a figure is not given in "IU"`},
		{"f: {name: n, per: 100 g, source: s, values: {FAT: < 0 g}}", `4:53: "< 0 g" is not a limit`},
		{"f: {name: n, per: 100 g, source: s, values: {FAT: traces}}", `4:53: "traces" does not begin with a number`},
		{"f: {name: n, per: 100 g, source: s, values: {FAT: 1 g, FAT: 2 g}}", `4:58: "FAT" stands here again`},
	}
	for _, c := range cases {
		got := faultsOf(t, head+"foods:\n  "+c.food+"\nbuild: [1 g a]\n")
		require.Len(t, got, 1, "%s\n%s", c.food, strings.Join(got, "\n"))
		assert.True(t, strings.HasPrefix(got[0], c.want), "%s: %s", c.food, got[0])
	}
}

func TestFaultsOfComponents(t *testing.T) {
	cases := []struct{ component, want string }{
		{"3x: {ingredients: [1 g a]}", `4:3: the component's name "3x" begins with a digit`},
		{"'a: b': {ingredients: [1 g a]}", `4:3: the component's name "a: b" has a colon`},
		{"'': {ingredients: [1 g a]}", `4:3: the component's name is empty`},
		{"build: {ingredients: [1 g a]}", `4:3: the component cannot be called "build"`},
		{"\"a\\u2066\": {ingredients: [1 g a]}", `4:3: the component's name holds a character that reorders text`},
		{strings.Repeat("n", 201) + ": {ingredients: [1 g a]}", `4:3: the component's name has 201 characters`},
		{"c: {steps: []}", `4:6: a component needs "ingredients"`},
		{"c: {ingredients: [1 g a], keeps: 5 months}", `4:36: a time is not given in "months"`},
		{"c: {ingredients: [1 g a], measured: {ph: 3, pH: 3}}", `4:47: "ph" stands here again, first in line 4`},
		{"c: {ingredients: [1 g a], measured: {ph:3}}", `4:40: there is no space after the colon of ph (write: ph: 3)`},
		{"c: {ingredients: [1 g a], keeps: 5 days at 4 m}", `4:46: a temperature is not given in "m"`},
		{"c: {ingredients: [1 g a], keeps: 0 days}", `4:36: keeps is zero`},
		{"c: {ingredients: [1 g a], measured: {}}", `4:39: measured holds no reading`},
		{"c: {ingredients: [1 g a], measured: {brix: 101}}", `4:46: "101" is out of range`},
		{"c: {ingredients: [1 g a], measured: {ph: 14}}", `4:44: "14" is out of range for a pH (it lies between 1 and 11.5)`},
		{"c: {ingredients: [1 g a], measured: {ph: 0.5}}", `4:44: "0.5" is out of range for a pH`},
		{"c: {ingredients: [1 g a], measured: {ta: 90 %}}", `4:44: "90 %" is out of range for a titratable acidity (it lies between 0 and 64.3 %)`},
		{"c: {ingredients: [1 g a], measured: {ta: 900 g/l}}", `4:44: "900 g/l" is out of range for a titratable acidity (it lies between 0 and 850 g/l)`},
		{"c: {ingredients: [1 g a], measured: {brix: 99}}", `4:46: "99" is out of range for a reading in °Brix (it lies between 0 and 95)`},
		{"c: {ingredients: [1 g a], measured: {density: 3 g/ml}}", `4:49: "3 g/ml" is out of range for a density (it lies between 0.6 and 2.2 g/ml)`},
		{"c: {ingredients: [1 g a], measured: {abv: 120 %}}", `4:45: "120 %" is out of range for a share (it lies between 0 and 100 %)`},
		{"c: {ingredients: [1 g a], measured: {brix: 12 ± 13}}", `4:46: "12 ± 13" reaches below zero`},
		{"c: {ingredients: [3 g ± 30 g a]}", `4:21: "3 g ± 30 g" reaches below zero`},
		{"c: {ingredients: [1 g ± 100 g sd a]}", `4:21: the standard deviation in "1 g ± 100 g sd" is more than the figure itself`},
		{"c: {ingredients: [1 g a], measured: {ph: 3.1 %}}", `4:44: a pH is not given in "%" (write the number alone`},
		{"c: {ingredients: [1 g a], measured: {tds: 9.5}}", `4:45: a share needs a unit`},
		{"c: {ingredients: [1 g a, 2 g c]}", `4:32: components go round in a circle: c → c`},
	}
	for _, c := range cases {
		got := faultsOf(t, head+"components:\n  "+c.component+"\nbuild: [1 g a]\n")
		require.Len(t, got, 1, "%s\n%s", c.component, strings.Join(got, "\n"))
		assert.True(t, strings.HasPrefix(got[0], c.want), "%s: %s", c.component, got[0])
	}
}

func TestFaultsOfTitrations(t *testing.T) {
	cases := []struct {
		measured string
		want     []string
	}{
		{"titration: [[0 ml, 4], [1 ml, 5], [1 ml, 6]], base: 0.1 mol/l, sample: 9 g", []string{`4:74: this point does not follow`}},
		{"titration: [[0 ml, 4], [1 ml, 3.5], [2 ml, 3]], base: 0.1 mol/l, sample: 9 g", []string{`4:63: this point does not follow`, `4:76: this point does not follow`}},
		{"titration: [[0 ml, 4], [1 ml, 4.5], [2 ml, 5]], acid: 0.1 mol/l, sample: 9 g", []string{`4:63: this point does not follow`, `4:76: this point does not follow`}},
		{"titration: [[1 ml, 4], [2 ml, 4.5], [3 ml, 5]]", []string{
			`4:39: a titration needs the strength of its base (add base: 0.1 mol/l`,
			`4:52: the titration does not begin at 0 ml`,
		}},
		{"titration: [[0 ml, 4], [2 ml, 4.5]], base: 0.1 mol/l, sample: 9 g", []string{`4:40: a titration has 2 points`}},
		{"titration: [[0 ml, 15], [2 ml, 4.5], [3 g, 5]], base: 0.1 mol/l, sample: 9 g", []string{`4:59: "15" is out of range for a pH`, `4:78: volume`}},
		{"titration: [[0 ml, 4], [2 ml, 4.5], [3 ml, 5]], base: 0.1 mol/l, acid: 0.1 mol/l, sample: 9 g", []string{`4:105: a titration goes one way`}},
		{"titration: [[0 ml, 4], [2 ml, 4.5], [3 ml, 5]], base: 0.1 mol/l, sample: 0.05 g", []string{`4:105: a titration of less than 0.1 g`}},
		{"titration: [[0 ml, 4], [2 ml, 4.5], [3 l, 5]], base: 0.1 mol/l, sample: 9 g", []string{`4:76: a titration with more than 1000 ml`}},
		{"ph: 3, sample: 9 g", []string{`4:47: sample belongs to a titration, and there is none`}},
	}
	for _, c := range cases {
		got := faultsOf(t, head+"components:\n  c: {ingredients: [1 g a], measured: {"+c.measured+"}}\nbuild: [1 g a]\n")
		require.Len(t, got, len(c.want), "%s\n%s", c.measured, strings.Join(got, "\n"))
		for i, want := range c.want {
			assert.True(t, strings.HasPrefix(got[i], want), "%s: %s", c.measured, got[i])
		}
	}
}

func TestFaultsOfSteps(t *testing.T) {
	cases := []struct{ step, want string }{
		{"chill", `7:9: chill has no parameters`},
		{"boil", `7:9: "boil" does not say what reduce needs (write - reduce: {to: … g`},
		{"boyl", `7:9: "boyl" is not a step (did you mean "boil"? It is read as reduce: - reduce: {to: … g} if water boils off`},
		{"clarify: {by: gelatine, collect: 90 g}", `7:9: clarify by gelatine does not say how much gelatine (write with: and how much of it is stirred in: - clarify: {by: gelatine, with: … g FOOD, collect: 90 g})`},
		{"clarify: {by: centrifuge, with: 1 g a, collect: 90 g}", `7:9: a centrifuge takes no agent`},
		{"chill: {from: 20 °C}", `7:9: chill needs melt, or from and to together`},
		{"chill: {melt: 3 g, ice: -18 °C}", `7:9: chill has melt and ice`},
		{"ferment: {after: {}}", `7:26: ferment does not say what it made`},
		{"ferment: {after: {brix: 200}}", `7:33: "200" is out of range for a reading in °Brix`},
		{"convert: {starch: 60 %}", `7:18: convert needs "to"`},
		{"sparge", `7:9: "sparge" is not a step (the steps are, one line of each:`},
		{"{redcue: {to: 1 g}}", `7:10: "redcue" is not a step (did you mean "reduce"?`},
		{"{}", `7:9: a step is empty`},
		{"reduce: 40 g", `7:17: reduce must be written as key: value (write: - reduce: {to: 40 g`},
		{"reduce: {to: 40 g, for: 3 min}", `7:9: reduce has for without at (write: - reduce: {to: 40 g, at: … °C, for: 3 min})`},
		{"reduce: {}", `7:9: reduce needs to or by`},
		{"reduce: {to: 1 g, by: 2 %}", `7:9: reduce has to and by`},
		{"reduce: {to: 1 ml}", `7:22: to cannot be given in ml (use g, kg or mg)`},
		{"reduce: {by: 101 %}", `7:22: "101 %" is out of range for a share`},
		{"reduce: {by: 30}", `7:22: a share needs a unit`},
		{"reduce: {too: 1 g}", `7:18: reduce has no key "too" (did you mean "to"?`},
		{"strain: {collect: 1 g}", `7:17: strain needs "through"`},
		{"strain: {collect: 1 g, through: cloths}", `7:41: through does not know "cloths" (did you mean "cloth"?`},
		{"strain:\n        collect: 1 g", `8:9: "collect" stands beside strain instead of inside it`},
		{"chill: {melt: 1 g}\n        dilute: {to: 2 g}", `8:9: two steps stand in one entry: chill and dilute`},
		{"curdle: {collect: 1 g, by: heat}", `7:36: by does not know "heat" (use acid or rennet)`},
		{"brew: {out: 38 g}", `7:9: brew needs two of out, strength and yield`},
		{"brew: {out: 38 g, strength: 9 %, yield: 20 %}", `7:9: brew has out, strength and yield`},
		{"steep: {ingredients: []}", `7:30: ingredients is empty`},
		{"steep: {ingredients: [1 g a], for: 4}", `7:44: a time needs a unit (write: for: 4 min, or: for: 4 h`},
		{"add: 20 f x", `7:14: unknown unit "f"`},
		{"add: 20 % x", `7:14: % is a share of the other lines`},
		{"dilute: {brix: 12, to: 1 g}", `7:9: dilute has to and brix`},
		{"invert: {ph: 3, at: 90 °C}", `7:9: invert needs share, or ph, at and for together`},
		{"invert: {share: 3 %, at: 90 °C}", `7:9: invert needs share, or`},
		{"hydrolyse: {}", `7:20: hydrolyse needs "lactose"`},
		{"ferment: {after: {ALC: 0.5 g}}", `7:18: ferment needs "because"`},
		{"caramelise: {loss: 12 g}", `7:28: a share is not given in "g"`},
		{"concentrate: {by: heat, to: 1 g}", `7:27: by does not know "heat" (use freezing or vacuum)`},
		{"wash: {collect: 1 g}", `7:15: wash needs "fat"`},
		{"heat: {}", `7:9: heat needs code or at and for`},
		{"heat: {at: 80 °C}", `7:9: heat has at without for (write: - heat: {at: 80 °C, for: … min})`},
		{"caramelise: {}", `7:9: caramelise needs loss or to`},
		{"adjust: {ph: 3.2}", `7:17: adjust needs "with"`},
		{"adjust: {with: core:citric-acid}", `7:9: adjust needs one of ph, ta and brix`},
		{"adjust: {ph: 3, ta: 6 g/l, with: core:citric-acid}", `7:9: adjust has more than one of ph, ta and brix`},
		{"adjust: {ph: 3.2, with: 2 g core:citric-acid}", `7:33: with is a food without an amount: the dose is calculated (write with: core:citric-acid)`},
		{"adjust: {ph: 3.2, with: [1 g a]}", `7:33: `},
		{"split: {keep: {}, because: b}", `7:23: keep names no constituent`},
		{"split: {keep: {FAT: 3 %}}", `7:16: split needs "because"`},
		{"carbonate: {bottle: 0.5 l}", `7:9: carbonate needs bottle, charge and at together, or left`},
		{"carbonate: {}", `7:9: carbonate needs bottle`},
		{"foam: {}", `7:9: foam needs overrun, or charge and gas (write what was read`},
		{"foam: {charge: 8 g}", `7:9: foam needs charge and gas together (write: - foam: {charge: 8 g, gas: N2O`},
		{"foam: {gas: N2, overrun: 80 %}", `7:9: foam needs charge and gas together`},
		{"foam: {bottle: 0.5 l, overrun: 80 %}", `7:9: foam has bottle without charge`},
		{"foam: {charge: 8 g, gas: CO2, overrun: 80 %}", `7:9: carbon dioxide sours a foam`},
		{"foam: {charge: 8 g, gas: air}", `7:34: gas does not know "air" (use N2O, CO2 or N2)`},
		{"foam: {overrun: 5000 %}", `7:25: "5000 %" is out of range for an overrun`},
		{"foam: {overrun: -5 %}", `7:25: "-5 %" is out of range for an overrun`},
		{"measured: {mas: 1 g}", `7:20: measured has no key "mas" (did you mean "mass"?`},
	}
	for _, c := range cases {
		got := faultsOf(t, head+"components:\n  c:\n    ingredients: [1 g a]\n    steps:\n      - "+c.step+"\nbuild: [1 g a]\n")
		require.Len(t, got, 1, "%s\n%s", c.step, strings.Join(got, "\n"))
		assert.True(t, strings.HasPrefix(got[0], c.want), "%s: %s", c.step, got[0])
	}
}

func TestFilesThatCannotBeReadSayWhy(t *testing.T) {
	cases := []struct{ name, text, want string }{
		{"empty", "", "1:1: the file is empty (begin with drink:"},
		{"spaces", " \n\n", "1:1: the file is empty"},
		{"comment", "# x\n", "1:1: the file holds nothing but comments"},
		{"text", "just text", "1:1: the drink must be written as key: value"},
		{"no space", "drink:x", "1:1: the drink must be written as key: value (write a space after the colon: drink: x)"},
		{"list", "- a", "1:1: the drink must be written as key: value"},
		{"binary", "drink: \x00x", "1:8: the file is not UTF-8 text"},
		{"latin 1", "drink: caf\xe9", "1:11: the file is not UTF-8 text"},
		{"control", "drink: x\n#\x07", "2:2: there is a control character (U+0007)"},
		{"old Mac", "drink: x\rserves: 1", "1:9: there is a control character (U+000D)"},
		{"bidi comment", "drink: x # \u202e", "1:12: there is a character that reorders text (U+202E)"},
		{"tab", "drink: x\nbuild:\n\t- 1 g a", "3:1: there is a tab in the indentation (indent with spaces)"},
		{"tab after spaces", "drink: x\nbuild:\n  \t- 1 g a", "3:3: there is a tab in the indentation"},
		{"two documents", head + "build: [1 g a]\n---\na: 1", "4:1: a second document begins here"},
		{"after the end", head + "build: [1 g a]\n...\na: 1", "4:1: the document ends here, but the file goes on"},
		{"directive", "%YAML 1.2\n---\n" + head + "build: [1 g a]", "1:1: YAML directives (%) are not used"},
		{"merge key", head + "build: [1 g a]\n<<: {a: 1}", "4:1: merge keys (<<) are not used"},
		{"open quote", "drink: \"x\nserves: 1", "1:8: the quote that opens here is not closed"},
		{"indentation", head + "build:\n  - 1 g a\n - 2 g b\n", "5:2: this does not fit the lines above"},
		{"too large", "drink: " + strings.Repeat("x", drink.MostBytes()), "1:1: the file has more than 262144 bytes"},
		{"empty lines", "drink: x" + strings.Repeat("\n", 102) + "a", "102:1: more than 100 empty lines in a row"},
		{"too deep", "drink: " + strings.Repeat("[", 32), "1:39: lists and maps stand more than 32 deep"},
		{"too deep in block", "drink:\n" + strings.Repeat("- ", 33), "2:65: lists and maps stand more than 32 deep"},
		{"too many words", "drink: [" + strings.Repeat("a,", 60000), "1:100006: the file has more than 100000 words and signs"},
		{"too many keys", strings.Repeat("a: 1\n", 2001), "2001:2: a map has more than 2000 keys"},
		{"too many tags", head + "build: [1 g a]\ncategories:\n  a: [" + tags(125) + "]\n  b: [" + tags(125) + "]\n  c: [SUGAR]\n  d: [SUGAR]\n", "7:3: the categories name more than 250 constituents together"},
		{"too many lines", head + "build:\n" + strings.Repeat("  - 1 g a\n", 101), "104:5: written out, every component replaced by its ingredients, it comes to more than 100 ingredient lines"},
	}
	for _, c := range cases {
		got := faultsOf(t, c.text)
		require.Len(t, got, 1, "%s\n%s", c.name, strings.Join(got, "\n"))
		assert.True(t, strings.HasPrefix(got[0], c.want), "%s: %s", c.name, got[0])
	}
	assert.Empty(t, faultsOf(t, "---\n"+head+"build: [1 g a]\n...\n"), "one document with its marks is fine")
	assert.Empty(t, faultsOf(t, head+"build:\n"+strings.Repeat("  - 1 g a\n", 100)))
}

// tags lists so many different constituents, whatever they are.
func tags(n int) string {
	var b strings.Builder
	for _, c := range constituent.All() {
		if constituent.OfDrinks(c) && n > 0 {
			fmt.Fprintf(&b, "%s, ", c.ID)
			n--
		}
	}
	return b.String()
}

func TestAllFaultsAtOnce(t *testing.T) {
	_, faults := drink.Parse("f.yaml", readDrink(t, "faults.drink.yaml"), nil)
	err := faults.Err(fail.Wrong)
	require.Error(t, err)
	got := strings.Split(err.Error(), "\n")
	require.Len(t, got, 5, err)
	for i, want := range []string{
		`f.yaml:3:1: the drink has no key "glas"`,
		"f.yaml:12:14: components go round in a circle: red syrup → blue syrup → red syrup",
		`f.yaml:15:5: "12,5" has a comma`,
		`f.yaml:16:5: unknown unit "t"`,
		"f.yaml:17:19: the text is cut here: YAML takes #2 for a comment",
	} {
		assert.True(t, strings.HasPrefix(got[i], want), got[i])
	}
}

func TestUnreadableLinesDoNotHideTheRest(t *testing.T) {
	got := faultsOf(t, head+"build:\n  - 1 g a: b: c\n  - 1,5 g a\n  - @x\n  - 2 t b\nglas: 1 ml\n")
	var places []string
	for _, g := range got {
		places = append(places, strings.SplitN(g, " ", 2)[0])
	}
	assert.Equal(t, []string{"4:12:", "5:5:", "6:5:", "7:5:", "8:1:"}, places)
}

func TestCirclesAreTakenOutOfTheDrink(t *testing.T) {
	d, faults := drink.Parse("t", []byte(head+"components:\n  a: {ingredients: [1 g b]}\n  b: {ingredients: [1 g c, 1 g x]}\n  c: {ingredients: [1 g x], steps: [{add: 1 g a}]}\nbuild: [1 g a]\n"), nil)
	require.ErrorContains(t, faults.Err(fail.Wrong), "t:6:47: components go round in a circle: a → b → c → a")
	c, _ := d.Component("c")
	assert.Empty(t, c.Steps[0].(*drink.Add).Ingredients)
}

func TestComponentsTakeNoPortion(t *testing.T) {
	got := faultsOf(t, head+"components:\n  c: {ingredients: [1 g a]}\nbuild:\n  - {food: c, amount: 1 g, as: whole}\n")
	require.Len(t, got, 1)
	assert.Contains(t, got[0], `6:5: "c" is a component, not a food of a table`)
}

// A limit is the last that is allowed.
func TestATitrationUpToItsLimitIsFine(t *testing.T) {
	const until = head + "components:\n  c: {ingredients: [1 g a], measured: {titration: [[0 ml, 4], [2 ml, 4.5], [%d ml, 5]], base: 0.1 mol/l, sample: 9 g}}\nbuild: [1 g c]\n"
	assert.Empty(t, faultsOf(t, fmt.Sprintf(until, 1000)))
	assert.Len(t, faultsOf(t, fmt.Sprintf(until, 1001)), 1)
}

// A word of a closed list may stand in capitals; the drink has it as the list does.
func TestAGroupInCapitals(t *testing.T) {
	d, faults := drink.Parse("test", []byte("drink: x\nserves: 1\nfoods:\n  f: {name: n, group: Plant Drink, per: 100 g, fill: core:a}\nbuild: [1 g own:f]\n"), nil)
	require.Zero(t, faults.Len())
	assert.Equal(t, "plant drink", d.Foods[0].Group)
}
