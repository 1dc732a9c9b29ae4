package caution_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/allergen"
	"sipsum/internal/caution"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

func marked(name string, marks ...string) allergen.Item {
	it := allergen.Item{Food: food.ID{Table: "core", Code: name}, Name: name, Eaten: true}
	for _, m := range marks {
		it.Marks = append(it.Marks, food.Mark{Kind: "caution", Value: m})
	}
	return it
}

func codes(in caution.Input) []string {
	out := []string{}
	for _, c := range caution.For(in) {
		out = append(out, c.Code)
	}
	return out
}

func find(t *testing.T, in caution.Input, code string) caution.Caution {
	t.Helper()
	for _, c := range caution.For(in) {
		if c.Code == code {
			return c
		}
	}
	require.Failf(t, "no such caution", "%s in %v", code, codes(in))
	return caution.Caution{}
}

// done is a drink of one part, with some steps.
func done(steps ...string) []caution.Part {
	return []caution.Part{{Steps: steps, PHLow: math.NaN(), PHHigh: math.NaN()}}
}

// of makes a food of one of our groups, with caution marks.
func of(group, name string, marks ...string) allergen.Item {
	it := marked(name, marks...)
	it.Group = group
	return it
}

func caffeine(mg, most, ml float64) caution.Input {
	return caution.Input{Rules: "eu", Name: "Midnight Tonic", ServingMl: ml, ServingG: ml, ABV: math.NaN(),
		Amounts: map[constituent.ID]estimate.Amount{constituent.Caffeine: {Mean: mg, WithBounds: most, Known: true}}}
}

func sodium(mg float64) caution.Input {
	return caution.Input{Rules: "eu", Name: "Brine", ServingG: 100, ServingMl: 100, ABV: math.NaN(),
		Amounts: map[constituent.ID]estimate.Amount{constituent.Sodium: {Mean: mg, WithBounds: mg, Known: true}}}
}

// The limits are published; the cases sit on both sides of each.
func TestLimits(t *testing.T) {
	tea := caffeine(160, 160, 100)
	tea.Name, tea.Items = "Cold Tea Garden", []allergen.Item{of("tea drink", "Brew", "caffeine")}
	milky := caffeine(160, 160, 100)
	milky.Name, milky.Items = "Milky tea", []allergen.Item{of("milk", "Milk"), of("tea drink", "Brew", "caffeine"), of("citrus juice", "Lemon")}
	milky.Brought = map[constituent.ID][]food.ID{constituent.Caffeine: {{Table: "core", Code: "Brew"}}}
	bolt := caffeine(160, 160, 100)
	bolt.Name, bolt.Items = "Iced tea bolt", []allergen.Item{of("tea drink", "Brew", "caffeine"), of("soft drink", "Energy drink", "caffeine")}
	nameless := caffeine(160, 160, 100)
	nameless.Name, nameless.Items = "Iced tea bolt", []allergen.Item{of("tea drink", "Brew", "caffeine"), {Food: food.ID{Table: "own", Code: "zing"}, Name: "Red zing"}}
	nameless.Brought = map[constituent.ID][]food.ID{constituent.Caffeine: {{Table: "core", Code: "Brew"}, {Table: "own", Code: "zing"}}}
	cherry := caffeine(160, 160, 100)
	cherry.Name, cherry.Items = "Coffee cherry tea", []allergen.Item{of("tea drink", "Cascara, infusion of dried coffee fruit", "caffeine")}
	bare := caffeine(160, 160, 100)
	bare.Name = "Cold Tea Garden"
	coffee := caffeine(150, 150, 100) // 1,500 mg/l
	coffee.Name, coffee.Items = "cold coffee tonic", []allergen.Item{of("coffee bean", "Beans", "caffeine")}
	steak := caffeine(160, 160, 100)
	steak.Name = "Steaming Orchard" // holds the letters of tea, not the word
	us := caffeine(160, 160, 100)
	us.Rules = "us"
	for _, c := range []struct {
		what   string
		in     caution.Input
		code   string
		fires  bool
		source string
	}{
		{"150 mg/l", caffeine(30, 30, 200), "caffeine-statement", false, "Regulation (EU) No 1169/2011, Annex III, 4.1: above 150 mg/l"},
		{"151 mg/l", caffeine(30.2, 30.2, 200), "caffeine-statement", true, "idem"},
		{"1500 mg/l, named coffee", coffee, "caffeine-statement", false, "idem, exemption by name"},
		{"named tea", tea, "caffeine-statement", false, "idem"},
		{"named tea, with what brings none", milky, "caffeine-statement", false, "idem"},
		{"named tea, with an energy drink", bolt, "caffeine-statement", true, "idem: based on coffee or tea"},
		{"named tea, with a food that brings caffeine and says nothing", nameless, "caffeine-statement", true, "idem"},
		{"cascara", cherry, "caffeine-statement", true, "Regulation (EU) 2022/47: no exemption by its name"},
		{"named tea, and nothing in it is", bare, "caffeine-statement", true, "idem"},
		{"400 mg", caffeine(400, 400, 500), "caffeine-day", false, "EFSA Journal 2015;13(5):4102: 400 mg a day"},
		{"401 mg", caffeine(401, 401, 500), "caffeine-day", true, "idem"},
		{"401 mg says so alone", caffeine(401, 401, 500), "caffeine-dose", false, "the more cautious row speaks"},
		{"399 mg", caffeine(399, 399, 500), "caffeine-dose", true, "idem"},
		{"999 mg", caffeine(999, 999, 500), "caffeine-acute", false, "Kamijo et al. 2018: poisonings from 1 g"},
		{"1000 mg", caffeine(1000, 1000, 500), "caffeine-acute", true, "idem"},
		{"1000 mg says so alone", caffeine(1000, 1000, 500), "caffeine-day", false, "the more cautious row speaks"},
		{"2000 mg of sodium", sodium(2000), "salt-day", false, "WHO guideline 2012: 2 g of sodium a day"},
		{"2001 mg of sodium", sodium(2001), "salt-day", true, "idem"},
		{"4999 mg of sodium", sodium(4999), "salt-acute", false, "Campbell and Train 2017: deaths below 10 g; our own bound is the half"},
		{"10 g of sodium", sodium(10000), "salt-acute", true, "idem"},
		{"5000 mg of sodium say so alone", sodium(5000), "salt-day", false, "the more cautious row speaks"},
		{"199 mg", caffeine(199, 199, 250), "caffeine-dose", false, "EFSA Journal 2015;13(5):4102"},
		{"tea inside another word", steak, "caffeine-statement", true, "idem"},
		{"other rules", us, "caffeine-statement", false, "idem"},
		{"no volume", caffeine(160, 160, 0), "caffeine-statement", false, "a limit per litre needs a volume"},
		{"200 mg", caffeine(200, 200, 250), "caffeine-dose", false, "EFSA Journal 2015;13(5):4102: single doses up to 200 mg"},
		{"201 mg", caffeine(201, 201, 250), "caffeine-dose", true, "idem"},
		{"no caffeine", caffeine(0, 0, 250), "caffeine", false, "nothing to tell"},
		{"half of a last digit", caffeine(0.5, 0.5, 250), "caffeine", false, "an infusion of camomile in SR28 (14545): 0 mg, printed to 1 mg"},
		{"decaffeinated", caffeine(2, 2, 200), "caffeine", true, "SR28 (14201): 1 mg in 100 g"},
		{"1.2 % vol", caution.Input{Rules: "eu", ABV: 1.2}, "alcohol-strength", false, "Regulation (EU) No 1169/2011, Article 9(1)(k): more than 1.2 %"},
		{"1.21 % vol", caution.Input{Rules: "eu", ABV: 1.21}, "alcohol-strength", true, "idem"},
		{"1.21 % vol, uk", caution.Input{Rules: "uk", ABV: 1.21}, "alcohol-strength", true, "retained Regulation 1169/2011"},
		{"1.15 % vol, anz", caution.Input{Rules: "anz", ABV: 1.15}, "alcohol-pregnancy-anz", false, "Standard 2.7.1: above 1.15 %"},
		{"1.16 % vol, anz", caution.Input{Rules: "anz", ABV: 1.16}, "alcohol-pregnancy-anz", true, "idem"},
		{"1.3 % vol", caution.Input{Rules: "eu", ABV: 1.3}, "alcohol-strength", true, "idem"},
		{"0.49 % vol", caution.Input{Rules: "us", ABV: 0.49}, "alcohol-warning", false, "27 CFR 16.10: not less than 0.5 %"},
		{"0.5 % vol", caution.Input{Rules: "us", ABV: 0.5}, "alcohol-warning", true, "idem"},
		{"strength not known", caution.Input{Rules: "us", ABV: math.NaN()}, "alcohol-warning", false, "nothing is claimed of it"},
	} {
		if c.fires {
			assert.Contains(t, codes(c.in), c.code, "%s (%s)", c.what, c.source)
		} else {
			assert.NotContains(t, codes(c.in), c.code, "%s (%s)", c.what, c.source)
		}
	}
}

func TestPolyolStatement(t *testing.T) {
	// Annex III, 2.4: more than 10 % added polyols.
	in := caution.Input{Rules: "eu", ServingG: 100, ABV: math.NaN(), Amounts: map[constituent.ID]estimate.Amount{
		constituent.Polyols: {Mean: 10, WithBounds: 10, Known: true}}}
	assert.NotContains(t, codes(in), "polyol-statement")
	in.Amounts[constituent.Polyols] = estimate.Amount{Mean: 10.1, WithBounds: 10.1, Known: true}
	assert.Contains(t, codes(in), "polyol-statement")
}

// Polyols that a table leaves out of a plain coffee have not been added to it: only a
// food that is sweetened with them, or of which nobody says what it is, may hide some.
func TestPolyolsThatNobodyAddedAreNotRuledIn(t *testing.T) {
	in := caution.Input{Rules: "eu", ServingG: 100, ABV: math.NaN(), Amounts: map[constituent.ID]estimate.Amount{
		constituent.Polyols: {Mean: 0, WithBounds: 19, Known: true}}}
	in.Items = []allergen.Item{{Name: "Coffee", Group: "coffee drink"}}
	assert.NotContains(t, codes(in), "polyol-statement")
	in.Items = append(in.Items, allergen.Item{Name: "House syrup"})
	assert.True(t, strings.HasPrefix(find(t, in, "polyol-statement").Text, "Cannot be ruled out: "))
	in.Items = append(in.Items[:1:1], marked("Light syrup", "polyol"))
	assert.Contains(t, codes(in), "polyol-statement")
}

// A safety limit is judged by the interval too.
func TestLimitInsideTheIntervalCannotBeRuledOut(t *testing.T) {
	in := caffeine(190, 190, 250)
	in.Items = []allergen.Item{of("coffee drink", "Espresso", "caffeine")}
	in.Amounts[constituent.Caffeine] = estimate.Amount{Mean: 190, WithBounds: 190, UpTo: 214, Known: true}
	c := find(t, in, "caffeine-dose")
	assert.True(t, strings.HasPrefix(c.Text, "Cannot be ruled out: One serving (about 190, up to 214 mg)"), c.Text)
}

// Where nothing bounds the rest, what is known may be above the limit by itself.
func TestTheKnownPartIsJudgedByItsInterval(t *testing.T) {
	in := caffeine(13, math.NaN(), 100)
	in.Amounts[constituent.Caffeine] = estimate.Amount{Mean: 13, WithBounds: math.NaN(), UpTo: math.NaN(), High: 18.3, Known: true}
	c := find(t, in, "caffeine-statement")
	assert.True(t, strings.HasPrefix(c.Text, "Cannot be ruled out: "), c.Text)
	assert.Contains(t, c.Text, "here at least 13 mg, what is known of it up to 18 mg")

	prune := caution.Input{Rules: "eu", ServingG: 100, ABV: math.NaN(), Items: []allergen.Item{{Name: "Prune", Group: "fruit"}}}
	prune.Amounts = map[constituent.ID]estimate.Amount{constituent.Polyols: {Mean: 9, WithBounds: 9, High: 18, UpTo: 18, Known: true}}
	assert.Contains(t, codes(prune), "polyol-statement", "nobody added it, and it is there")
}

func TestAStrengthIsJudgedByItsInterval(t *testing.T) {
	for code, in := range map[string]caution.Input{
		"alcohol-warning":  {Rules: "us", ABV: 0.42, ABVMost: 0.53},
		"alcohol-strength": {Rules: "eu", ABV: 1.1, ABVMost: 1.38},
	} {
		assert.True(t, strings.HasPrefix(find(t, in, code).Text, "Cannot be ruled out: "), code)
		assert.Contains(t, find(t, in, code).Because, "up to", code)
		in.ABVMost = in.ABV
		assert.NotContains(t, codes(in), code)
	}
}

func TestWhatIsUnknownIsNotNothing(t *testing.T) {
	likely := caffeine(150, 260, 250)
	likely.Items = []allergen.Item{of("citrus juice", "Lemon juice")}
	assert.NotContains(t, codes(likely), "caffeine-dose", "nothing in it could bring more")
	likely.Items = append(likely.Items, of("coffee drink", "Espresso", "caffeine"))
	c := find(t, likely, "caffeine-dose")
	assert.True(t, strings.HasPrefix(c.Text, "Cannot be ruled out: "), c.Text)
	assert.Contains(t, c.Text, "between 150 and 260 mg")

	open := caffeine(90, math.NaN(), 250)
	open.Items = []allergen.Item{marked("Espresso", "caffeine"), marked("Guest blend", "caffeine"), {Name: "Plum"}}
	open.Unstated = map[constituent.ID][]food.ID{constituent.Caffeine: {{Table: "core", Code: "Guest blend"}, {Table: "core", Code: "Plum"}}}
	assert.Contains(t, find(t, open, "caffeine").Text, "at least 90 mg")
	assert.True(t, strings.HasPrefix(find(t, open, "caffeine-unknown").Text, "Guest blend: caffeine is in it"), "the food of which nobody says, and no other")

	nothing := caution.Input{Rules: "eu", ABV: math.NaN(), Items: open.Items, Unstated: open.Unstated}
	assert.Equal(t, []string{"caffeine-unknown"}, codes(nothing))

	full := caffeine(90, 90, 250)
	full.Items = open.Items
	assert.NotContains(t, find(t, full, "caffeine").Text, "up to")
	assert.NotContains(t, codes(full), "caffeine-unknown")
	assert.Contains(t, find(t, full, "caffeine").Text, "about 90 mg")
}

func TestMarksGroupsAndSteps(t *testing.T) {
	for _, c := range []struct {
		in   caution.Input
		want []string
	}{
		{caution.Input{Items: []allergen.Item{marked("Egg white", "raw egg")}}, []string{"raw-egg", "egg-pooled"}},
		{caution.Input{Items: []allergen.Item{marked("Tonic", "quinine")}}, []string{"quinine-risk-groups", "quinine"}},
		{caution.Input{Items: []allergen.Item{marked("Root", "liquorice")}}, []string{"liquorice-dose", "liquorice-pregnancy", "liquorice"}},
		{caution.Input{Items: []allergen.Item{{Name: "Grapefruit juice", Eaten: true}}}, []string{"grapefruit"}},
		{caution.Input{Items: []allergen.Item{{Name: "Honey", Eaten: true}}}, []string{"honey"}},
		{caution.Input{Items: []allergen.Item{{Name: "Erythritol", Eaten: true}}}, []string{"polyol", "erythritol"}},
		{caution.Input{Items: []allergen.Item{{Name: "Allulose", Eaten: true}}}, []string{"allulose"}}, // a sugar, no polyol
		{caution.Input{Items: []allergen.Item{{Name: "Aspartame", Eaten: true}}}, []string{"phenylalanine"}},
		{caution.Input{Items: []allergen.Item{{Name: "Citric acid", Group: "acid", Chemical: true, Eaten: true}}}, []string{"acid"}},
		{caution.Input{Parts: done("carbonate")}, []string{"pressure", "co2-room"}},
		{caution.Input{Parts: done("caramelise")}, []string{"hot-sugar"}},
		{caution.Input{Parts: done("reduce", "heat", "reduce"), ServedAt: 6}, []string{"cooling", "hot-liquid"}},
		{caution.Input{Parts: done("heat")}, []string{"very-hot-drink", "cooling", "hot-liquid"}},
		{caution.Input{Parts: done(), ServedAt: 65}, []string{"very-hot-drink"}},
		{caution.Input{Parts: done(), ServedAt: 64}, []string{}},
		{caution.Input{Parts: done("ferment")}, []string{"co2-room", "ferment", "ferment-alcohol", "ferment-amines", "kombucha-ph"}},
		{caution.Input{Parts: done("curdle")}, []string{"cooling", "cold-holding"}},
		{caution.Input{Parts: done("wash")}, []string{"fat-wash"}},
		{caution.Input{Parts: done("foam")}, []string{}}, // no milk in it
		{caution.Input{Parts: done("foam"), Items: []allergen.Item{of("cream", "Cream")}}, []string{"dairy-foam"}},
		{caution.Input{Parts: done("strain", "chill")}, []string{"ice"}},
		{caution.Input{Parts: done("strain", "dilute")}, []string{}},
	} {
		c.in.ABV = math.NaN()
		assert.Equal(t, c.want, codes(c.in))
	}
	both := caution.Input{ABV: 8, Items: []allergen.Item{marked("Rum", "alcohol"), marked("Espresso", "caffeine")}}
	assert.Equal(t, []string{"alcohol", "alcohol-pregnancy", "alcohol-and-caffeine"}, codes(both))
	assert.Contains(t, find(t, both, "alcohol-and-caffeine").Because, "Espresso")
	for abv, hides := range map[float64]bool{0.1: false, 1.2: false, 1.3: true} { // what is stated of a strength by law begins above 1.2 % vol
		both.ABV = abv
		assert.Equal(t, hides, slices.Contains(codes(both), "alcohol-and-caffeine"), abv)
	}
	rum := &both.Items[0]
	rum.Food = food.ID{Table: "own", Code: "rum"}
	both.ABV, both.Unstated = math.NaN(), map[constituent.ID][]food.ID{constituent.Alcohol: {rum.Food}}
	assert.Contains(t, find(t, both, "alcohol-and-caffeine").Text, "Cannot be ruled out: ")
}

// Only a word of the drink's name lifts the statement, not a part of one: Regulation (EU) No
// 1169/2011, Annex III, 4.1, speaks of a name that includes the term.
func TestOnlyAWholeWordOfTheNameExcuses(t *testing.T) {
	for name, excused := range map[string]bool{
		"Cold Tea Garden": true, "TEA-time": true, "Steam": false, "Teaz": false, "Zteaz": false, "Ateliers": false, "Coffeea": false, "Iced coffee!": true,
	} {
		in := caffeine(160, 160, 100)
		in.Name, in.Items = name, []allergen.Item{of("tea drink", "Brew", "caffeine")}
		assert.Equal(t, excused, !slices.Contains(codes(in), "caffeine-statement"), name)
	}
}

// Alcohol goes by its strength: a house ferment has the caution, wine without alcohol has
// none of them, and what nobody knows is said so.
func TestAlcoholGoesByItsStrength(t *testing.T) {
	two := []string{"alcohol", "alcohol-pregnancy"}
	wine := []allergen.Item{of("wine", "House wine", "alcohol")}
	ferment := caution.Input{Rules: "eu", ABV: 5, Parts: done("ferment")}
	assert.Subset(t, codes(ferment), append(two, "alcohol-strength"))
	assert.Contains(t, find(t, ferment, "alcohol").Text, "Holds alcohol (5.0 % vol)")

	without := caution.Input{Rules: "eu", ABV: 0, Items: wine}
	for _, code := range append(two, "alcohol-strength", "alcohol-warning") {
		assert.NotContains(t, codes(without), code)
	}

	unsaid := without
	unsaid.Unstated = map[constituent.ID][]food.ID{constituent.Alcohol: {wine[0].Food, {Table: "core", Code: "lemon"}}}
	assert.Contains(t, find(t, unsaid, "alcohol").Text, "Holds alcohol (strength not known)")
	assert.True(t, strings.HasPrefix(find(t, unsaid, "alcohol-strength").Text, "Cannot be ruled out: "))
	for _, c := range caution.For(unsaid) {
		assert.NotContains(t, c.Text+c.Because, "0.0", c.Code)
	}
	unsaid.ABV, unsaid.Items = 0.6, append(wine, allergen.Item{Food: food.ID{Table: "core", Code: "rum"}, Name: "Rum", Group: "spirit"})
	assert.Contains(t, find(t, unsaid, "alcohol").Text, "at least 0.60 % vol, the strength of the rest not known")

	lemon := without
	lemon.Items = []allergen.Item{of("citrus juice", "lemon")}
	lemon.Unstated = unsaid.Unstated
	assert.NotContains(t, codes(lemon), "alcohol", "tables leave the alcohol of a lemon out")

	rum := caution.Input{ABV: math.NaN(), Items: []allergen.Item{of("spirit", "Rum", "alcohol")},
		Amounts: map[constituent.ID]estimate.Amount{constituent.Alcohol: {Mean: 10, WithBounds: 10, Known: true}}}
	assert.Contains(t, find(t, rum, "alcohol").Text, "Holds alcohol (strength not known)", "nobody knows its volume")
	rum.ABV = 12.34
	assert.Contains(t, find(t, rum, "alcohol").Text, "Holds alcohol (12.3 % vol)")
	rum.ABV = 0.05
	assert.Contains(t, codes(rum), "alcohol")
	rum.ABV, rum.Amounts = 0.049, nil
	assert.NotContains(t, codes(rum), "alcohol", "prints as 0.0")

	young := caution.Input{Rules: "us", ABV: 0, ABVMost: 0.7, Parts: done("ferment")}
	assert.True(t, strings.HasPrefix(find(t, young, "alcohol").Text, "Cannot be ruled out: Holds alcohol (about 0, up to 0.70 % vol)"), find(t, young, "alcohol").Text)
	young.Parts = done("strain")
	assert.NotContains(t, codes(young), "alcohol", "nothing in it could bring some")
}

// A page that proposes a thing takes its caution by its code, as the row has it.
func TestStandingIsTheRow(t *testing.T) {
	c := caution.Standing("hot-liquid")
	assert.Equal(t, "hot-liquid", c.Code)
	assert.NotEmpty(t, c.Text)
	assert.NotEmpty(t, c.Source)
	assert.Panics(t, func() { caution.Standing("no such caution") })
}

// What has no name is called by its code, and once.
func TestFoodsOfACautionAreNamedOnce(t *testing.T) {
	it := marked("rum", "alcohol")
	it.Name = ""
	it.Marks[0].Value = "honey"
	in := caution.Input{ABV: math.NaN(), Items: []allergen.Item{it, it, marked("Gin", "honey")}}
	assert.Equal(t, "in it: core:rum, Gin", find(t, in, "honey").Because)
}

// Of an infusion without caffeine, and of a flower whose further name alone is a tea, nobody
// says that alcohol and caffeine are together; of an unknown coffee somebody does.
func TestCaffeineIsNamedOfWhatBringsIt(t *testing.T) {
	item := func(name, group string, names ...string) allergen.Item {
		return allergen.Item{Food: food.ID{Table: "core", Code: name}, Name: name, Names: names, Group: group, Eaten: true}
	}
	items := []allergen.Item{item("Hibiscus infusion", "tea drink", "karkade"), item("Butterfly pea flower", "herb", "blue tea"), item("Guest blend", "coffee drink"), item("Matcha", "tea leaf")}
	in := caution.Input{
		Rules: "eu", ABV: 10, Items: items, Parts: []caution.Part{{PHLow: math.NaN(), PHHigh: math.NaN()}},
		Brought:  map[constituent.ID][]food.ID{constituent.Caffeine: {items[3].Food}},
		Unstated: map[constituent.ID][]food.ID{constituent.Caffeine: {items[1].Food, items[2].Food}},
	}
	assert.Contains(t, find(t, in, "alcohol-and-caffeine").Because, "in it: Guest blend, Matcha")
	assert.Contains(t, find(t, in, "caffeine-unknown").Text, "Guest blend: caffeine is in it")
	in.Items = items[:2]
	assert.NotContains(t, codes(in), "alcohol-and-caffeine")
	assert.NotContains(t, codes(in), "caffeine-unknown")
}
