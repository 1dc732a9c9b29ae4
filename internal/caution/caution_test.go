package caution_test

import (
	"encoding/csv"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
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

func caffeine(mg, most, ml float64) caution.Input {
	return caution.Input{Rules: "eu", Name: "Midnight Tonic", ServingMl: ml, ServingG: ml, ABV: math.NaN(),
		Amounts: map[constituent.ID]estimate.Amount{constituent.Caffeine: {Mean: mg, WithBounds: most, Known: true}}}
}

// The limits are published; the cases sit on both sides of each.
func TestLimits(t *testing.T) {
	tea := caffeine(160, 160, 100)
	tea.Name = "Cold Tea Garden"
	coffee := caffeine(150, 150, 100) // 1,500 mg/l
	coffee.Name = "cold coffee tonic"
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
		{"tea inside another word", steak, "caffeine-statement", true, "idem"},
		{"other rules", us, "caffeine-statement", false, "idem"},
		{"no volume", caffeine(160, 160, 0), "caffeine-statement", false, "a limit per litre needs a volume"},
		{"200 mg", caffeine(200, 200, 250), "caffeine-dose", false, "EFSA Journal 2015;13(5):4102: single doses up to 200 mg"},
		{"201 mg", caffeine(201, 201, 250), "caffeine-dose", true, "idem"},
		{"no caffeine", caffeine(0, 0, 250), "caffeine", false, "nothing to tell"},
		{"half of a last digit", caffeine(0.5, 0.5, 250), "caffeine", false, "an infusion of camomile in SR28 (14545): 0 mg, printed to 1 mg"},
		{"decaffeinated", caffeine(2, 2, 200), "caffeine", true, "SR28 (14201): 1 mg in 100 g"},
		{"1.2 % vol", caution.Input{Rules: "eu", ABV: 1.2}, "alcohol-strength", false, "Regulation (EU) No 1169/2011, Article 9(1)(k): more than 1.2 %"},
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
	c := find(t, likely, "caffeine-dose")
	assert.True(t, strings.HasPrefix(c.Text, "Cannot be ruled out: "), c.Text)
	assert.Contains(t, c.Text, "between 150 and 260 mg")

	open := caffeine(90, math.NaN(), 250)
	open.Items = []allergen.Item{marked("Cascara", "caffeine")}
	assert.Contains(t, find(t, open, "caffeine").Text, "at least 90 mg")
	assert.Contains(t, find(t, open, "caffeine-unknown").Text, "Cascara brings caffeine")

	nothing := caution.Input{Rules: "eu", ABV: math.NaN(), Items: open.Items}
	assert.Equal(t, []string{"caffeine-unknown"}, codes(nothing))

	full := caffeine(90, 90, 250)
	full.Items = open.Items
	assert.NotContains(t, codes(full), "caffeine-unknown")
	assert.Contains(t, find(t, full, "caffeine").Text, "about 90 mg")
}

func TestMarksGroupsAndSteps(t *testing.T) {
	for _, c := range []struct {
		in   caution.Input
		want []string
	}{
		{caution.Input{Items: []allergen.Item{marked("Egg white", "raw egg")}}, []string{"raw-egg"}},
		{caution.Input{Items: []allergen.Item{marked("Tonic", "quinine")}}, []string{"quinine"}},
		{caution.Input{Items: []allergen.Item{marked("Root", "liquorice")}}, []string{"liquorice"}},
		{caution.Input{Items: []allergen.Item{{Name: "Grapefruit juice", Eaten: true}}}, []string{"grapefruit"}},
		{caution.Input{Items: []allergen.Item{{Name: "Honey", Eaten: true}}}, []string{"honey"}},
		{caution.Input{Items: []allergen.Item{{Name: "Erythritol", Eaten: true}}}, []string{"polyol"}},
		{caution.Input{Items: []allergen.Item{{Name: "Aspartame", Eaten: true}}}, []string{"phenylalanine"}},
		{caution.Input{Items: []allergen.Item{{Name: "Citric acid", Group: "acid", Chemical: true, Eaten: true}}}, []string{"acid"}},
		{caution.Input{Items: []allergen.Item{marked("Rum", "alcohol")}}, []string{"alcohol"}},
		{caution.Input{Steps: []string{"carbonate"}}, []string{"pressure"}},
		{caution.Input{Steps: []string{"caramelise"}}, []string{"hot-sugar"}},
		{caution.Input{Steps: []string{"reduce", "heat", "reduce"}}, []string{"hot-liquid"}},
		{caution.Input{Steps: []string{"ferment"}}, []string{"ferment"}},
		{caution.Input{Steps: []string{"curdle"}}, []string{"cold-holding"}},
		{caution.Input{Steps: []string{"wash"}}, []string{"fat-wash"}},
		{caution.Input{Steps: []string{"strain", "chill"}}, []string{}},
	} {
		c.in.ABV = math.NaN()
		assert.Equal(t, c.want, codes(c.in))
	}
	both := caution.Input{ABV: math.NaN(), Items: []allergen.Item{marked("Rum", "alcohol"), marked("Espresso", "caffeine")}}
	assert.Equal(t, []string{"caffeine-unknown", "alcohol", "alcohol-and-caffeine"}, codes(both))
	assert.Contains(t, find(t, both, "alcohol-and-caffeine").Because, "Rum, Espresso")
}

func TestRowsAreSourcedAndPromiseNothing(t *testing.T) {
	file, err := data.FS.Open("cautions.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	for _, row := range rows[1:] {
		assert.NotEmpty(t, row[10], row[0])
		assert.NotEmpty(t, row[11], row[0])
		for _, promise := range []string{"free from", "harmless", "is safe"} {
			assert.NotContains(t, strings.ToLower(row[10]), promise, row[0])
		}
	}
	// every mark that a rule can infer has a caution
	have := map[string]bool{}
	for _, row := range rows[1:] {
		have[row[3]], have[row[4]] = true, true
	}
	for _, mark := range []string{"caffeine", "alcohol", "raw egg", "quinine", "liquorice", "grapefruit", "honey", "polyol", "phenylalanine"} {
		assert.True(t, have[mark], mark)
	}
}

// Only a word of the drink's name lifts the statement, not a part of one: Regulation (EU) No
// 1169/2011, Annex III, 4.1, speaks of a name that includes the term.
func TestOnlyAWholeWordOfTheNameExcuses(t *testing.T) {
	for name, excused := range map[string]bool{
		"Cold Tea Garden": true, "TEA-time": true, "Steam": false, "Teaz": false, "Zteaz": false, "Ateliers": false, "Coffeea": false, "Iced coffee!": true,
	} {
		in := caffeine(160, 160, 100)
		in.Name = name
		assert.Equal(t, excused, !slices.Contains(codes(in), "caffeine-statement"), name)
	}
}

// What a drink holds is said where nobody knows how much of it.
func TestAStrengthThatNobodyKnowsIsSaidSo(t *testing.T) {
	in := caution.Input{ABV: math.NaN(), Items: []allergen.Item{marked("Rum", "alcohol")}}
	assert.Contains(t, find(t, in, "alcohol").Text, "Holds alcohol (strength not known).")
	in.ABV = 12.34
	assert.Contains(t, find(t, in, "alcohol").Text, "Holds alcohol (12.3 % vol).")
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
	in := caution.Input{ABV: math.NaN(), Items: []allergen.Item{it, it, marked("Gin", "alcohol")}}
	assert.Equal(t, "in it: core:rum, Gin", find(t, in, "alcohol").Because)
}
