package caution_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/allergen"
	"sipsum/internal/caution"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

func part(name string, steps ...string) caution.Part {
	return caution.Part{Name: name, Steps: steps, PHLow: math.NaN(), PHHigh: math.NaN()}
}

func in(component string, it allergen.Item) allergen.Item {
	it.Path = []string{component}
	return it
}

// What a caution asks for must meet in one part: herbs steeped here make no oil of there.
func TestWhatBelongsTogetherMeetsInOnePart(t *testing.T) {
	oil := of("oil", "Olive oil")
	drink := caution.Input{Items: []allergen.Item{in("dressing", oil)}, Parts: []caution.Part{part("infusion", "steep"), part("dressing"), part("")}}
	assert.NotContains(t, codes(drink), "garlic-oil")
	drink.Items[0].Path = []string{"infusion"}
	assert.Contains(t, codes(drink), "garlic-oil")
	drink.Items[0].Path = nil
	assert.NotContains(t, codes(drink), "garlic-oil", "it is poured into the glass")
	drink.Parts[2].Steps = []string{"steep"}
	assert.Contains(t, codes(drink), "garlic-oil", "and steeped there")

	gin := of("spirit", "Gin")
	bitters := caution.Input{Items: []allergen.Item{in("bitters", gin)}, Parts: []caution.Part{part("bitters", "steep"), part("")}}
	assert.NotContains(t, codes(bitters), "garlic-low-acid-infusion", "an infusion in spirit")
	bitters.Parts = append(bitters.Parts, part("tea", "steep"))
	assert.Contains(t, codes(bitters), "garlic-low-acid-infusion", "one of them is in water")
}

// Components are read by their names too, own foods by rows of their own. A drink's name is a
// name: what is in it stands in its lines.
func TestNamesOfComponentsAndNotOfTheDrink(t *testing.T) {
	drink := caution.Input{Name: "Tonka Flip", Parts: []caution.Part{part("tobacco syrup"), part("")}}
	assert.Equal(t, "its name: tobacco syrup", find(t, drink, "tobacco").Because)
	assert.NotContains(t, codes(drink), "tonka")
	chalky := caution.Input{Name: "Chalk Coast", Items: []allergen.Item{of("acid", "Citric acid")}, Parts: done()}
	assert.NotContains(t, codes(chalky), "acid-plus-carbonate", "nobody pours any")
	chalky.Items = append(chalky.Items, of("salt", "Chalk"))
	assert.Contains(t, codes(chalky), "acid-plus-carbonate")
	assert.NotContains(t, codes(caution.Input{Name: "Smoke Ring", Parts: done()}), "carbon-monoxide", "a drink's name is no technique")
	assert.Contains(t, codes(caution.Input{Parts: []caution.Part{part("smoked maple"), part("")}}), "carbon-monoxide")

	white := allergen.Item{Food: food.ID{Table: "own", Code: "white"}, Name: "Egg white, our hens"}
	assert.NotContains(t, codes(caution.Input{Items: []allergen.Item{white}}), "raw-egg", "a table says whether it is raw")
	white.Own = true
	assert.Contains(t, codes(caution.Input{Items: []allergen.Item{white}}), "raw-egg")
	white.Names, white.Name = []string{"Hühnerei"}, "White"
	assert.Contains(t, codes(caution.Input{Items: []allergen.Item{white}}), "raw-egg", "a further name")
}

// A meter's pH lifts what hangs on it, an estimate does not; of copper the lowest that the
// pH may be decides, and an unknown one is the worst.
func TestPHOfTheTables(t *testing.T) {
	const steep, ferment, copper = "garlic-low-acid-infusion", "kombucha-ph", "copper"
	for _, c := range []struct {
		low, high float64
		read      bool
		code      string
		fires     bool
		source    string
	}{
		{4.6, 4.6, true, steep, false, "FDA Food Code 1-201.10: up to 4.6"},
		{4.55, 4.61, true, steep, true, "idem, at the end of the reading's range"},
		{3, 3.1, false, steep, true, "an estimate lifts nothing"},
		{math.NaN(), math.NaN(), false, steep, true, "nor does what nobody knows"},
		{4.19, 4.19, true, ferment, false, "BCCDC note on kombucha: 4.2"},
		{4.2, 4.2, true, ferment, false, "idem"},
		{4.21, 4.21, true, ferment, true, "idem"},
		{5.9, 6.4, false, copper, true, "FDA Food Code 4-101.14: below 6"},
		{6, 6.4, false, copper, false, "idem, by calculation too"},
		{6, 6, true, copper, false, "idem"},
		{math.NaN(), math.NaN(), false, copper, true, "the more cautious"},
	} {
		p := caution.Part{Steps: []string{"steep", "ferment"}, Vessel: "copper mug", PHLow: c.low, PHHigh: c.high, PHRead: c.read}
		has := codes(caution.Input{Parts: []caution.Part{p}})
		if c.fires {
			assert.Contains(t, has, c.code, "%v", c)
		} else {
			assert.NotContains(t, has, c.code, "%v", c)
		}
	}
	calculated := caution.Input{Parts: []caution.Part{{Steps: []string{"steep"}, PHLow: 2.6, PHHigh: 3}}}
	assert.Contains(t, find(t, calculated, steep).Because, "pH by calculation 2.6 to 3.0, not read")
	read := caution.Input{Parts: []caution.Part{{Steps: []string{"steep"}, PHLow: 4.9, PHHigh: 5, PHRead: true}}}
	assert.Contains(t, find(t, read, steep).Because, "pH read: 5.00")
}

// Doses by mass, on both sides of each limit, per serving, batch, kilogram and litre.
func TestDosesByMass(t *testing.T) {
	for _, c := range []struct {
		name           string
		serving, batch float64
		g, ml          float64
		rules, code    string
		fires          bool
		says           string
	}{
		{"Nutmeg", 0.4, 4.9, 100, 100, "eu", "nutmeg", false, ""},
		{"Nutmeg", 0.4, 5, 100, 100, "eu", "nutmeg", true, "5.0 g of what is named nutmeg is in the batch"},
		{"Quinine sulphate", 0.0083, 0.0083, 100, 90, "us", "quinine-us", false, ""},
		{"Quinine sulphate", 0.0084, 0.0084, 100, 90, "us", "quinine-us", true, "84 mg of its salt in a kilogram of the drink, 1.0 times"},
		{"Quinine sulphate", 0.0085, 0.0085, 90, 100, "eu", "quinine-eu", false, ""},
		{"Quinine sulphate", 0.0086, 0.0086, 90, 100, "eu", "quinine-eu", true, "86 mg of its salt in a litre"},
		{"Quinine sulphate", 0.0086, 0.0086, 100, 0, "eu", "quinine-eu", true, "86 mg of its salt in a litre"},
		{"Glycyrrhizin", 0.0009, 0.0009, 100, 100, "eu", "liquorice-statement", false, ""},
		{"Glycyrrhizin", 0.001, 0.001, 100, 100, "eu", "liquorice-statement", true, "10 mg of glycyrrhizinic acid per litre"},
		{"Glycyrrhizin", 0.005, 0.005, 100, 100, "eu", "liquorice-statement", false, ""},
		{"Glycyrrhizin", 0.005, 0.005, 100, 100, "eu", "liquorice-hypertension", true, "50 mg"},
		{"Tonka bean", 0.1, 0.1, 100, 100, "eu", "tonka", true, "One gram of tonka"},
		{"Tonka bean", 0.2, 0.2, 100, 100, "eu", "tonka", true, "Too much, 200 mg per serving where 100 mg is the most: One gram of tonka"},
		{"Apricot kernels", 0.38, 0.38, 100, 100, "eu", "apricot-kernels", true, "Too much"},
		{"Cassia", 2.1, 2.1, 100, 100, "eu", "cassia", true, "Too much, 2.1 g per serving where 2.0 g is the most"},
	} {
		it := allergen.Item{Food: food.ID{Table: "own", Code: "x"}, Name: c.name}
		drink := caution.Input{Rules: c.rules, Items: []allergen.Item{it, it}, ServingG: c.g, ServingMl: c.ml, Poured: map[food.ID]caution.Mass{it.Food: {Serving: c.serving, Batch: c.batch}}}
		if !c.fires {
			assert.NotContains(t, codes(drink), c.code, "%v", c)
			continue
		}
		text := find(t, drink, c.code).Text
		assert.Contains(t, text, c.says, "%v", c)
		if c.serving == 0.1 {
			assert.NotContains(t, text, "Too much")
		}
		much := c.serving != 0.1 && !strings.HasPrefix(c.code, "liquorice")
		assert.Equal(t, much, find(t, drink, c.code).TooMuch == strings.ToLower(c.name), "what surely more is poured of than may be: %v", c)
	}
	strong := caution.Input{Rules: "eu", ABV: 1.3, ServingG: 100, ServingMl: 100, Items: []allergen.Item{{Name: "Glycyrrhizin"}}, Poured: map[food.ID]caution.Mass{{}: {Serving: 0.02}}}
	assert.NotContains(t, codes(strong), "liquorice-hypertension", "above 1.2 % vol from 300 mg/l")
	assert.NotContains(t, codes(strong), "liquorice-hypertension-strong")
	assert.Contains(t, codes(strong), "liquorice-statement")
	strong.Poured = map[food.ID]caution.Mass{{}: {Serving: 0.03}}
	assert.Contains(t, codes(strong), "liquorice-hypertension-strong")
}

// The worst stands first, and agencies that disagree are told by the rules in force.
func TestOrderAndAgencies(t *testing.T) {
	drink := caffeine(1200, 1200, 200)
	drink.Items = []allergen.Item{{Name: "Honey"}, {Name: "Elderberry"}}
	last := 0
	for _, c := range caution.For(drink) {
		assert.GreaterOrEqual(t, c.Rank, last, c.Code)
		last = c.Rank
	}
	assert.Equal(t, "caffeine-acute", codes(drink)[0])
	for rules, day := range map[string]string{"eu": "200 mg", "us": "200 mg", "ca": "300 mg"} {
		drink.Rules = rules
		assert.Contains(t, find(t, drink, "caffeine").Text, "within "+day+",", rules)
	}
	for rules, hot := range map[string]string{"us": "stay at 57 °C", "uk": "stay at 63 °C", "anz": "stay at 60 °C", "eu": "57, 60 or 63 °C"} {
		p := part("")
		p.Techniques = []string{"bain-marie"}
		assert.Contains(t, find(t, caution.Input{Rules: rules, Parts: []caution.Part{p}}, "hot-holding").Text, hot, rules)
	}
	assert.NotEmpty(t, find(t, drink, "caffeine").Who)
}

// A row that says more speaks for one that says less only if it is as sure.
func TestOnlyWhatIsAsSureSilences(t *testing.T) {
	drink := caffeine(390, 390, 500)
	drink.Items = []allergen.Item{of("coffee drink", "Brew", "caffeine")}
	a := drink.Amounts["CAFFN"]
	a.High, a.UpTo = 420, 420
	drink.Amounts["CAFFN"] = a
	assert.Contains(t, find(t, drink, "caffeine-day").Text, "Cannot be ruled out: One serving holds about 390, up to 420 mg")
	assert.Contains(t, codes(drink), "caffeine-dose")
	a.Mean, a.WithBounds = 201, 201
	a.High, a.UpTo = 863, 863
	drink.Amounts["CAFFN"] = a
	assert.Contains(t, find(t, drink, "caffeine-dose").Text, "about 201, up to 863 mg")
}

// Wine may hold sulphites and dried fruit that is sulphured does.
func TestWhatIsOnlyLikelyCannotBeRuledOut(t *testing.T) {
	wine := caution.Input{ABV: 12, Items: []allergen.Item{{Name: "Wine"}}}
	assert.Contains(t, find(t, wine, "sulphites").Text, "Cannot be ruled out: Holds sulphites")
	wine.Items = append(wine.Items, allergen.Item{Name: "Apricot, dried, sulphured"})
	assert.NotContains(t, find(t, wine, "sulphites").Text, "Cannot be ruled out")
}

// Limits of what the law asks for by its amount, on both sides of each.
func TestFiguresThatTheLawAsksFor(t *testing.T) {
	for _, c := range []struct {
		of     constituent.ID
		mg     float64 // in 100 g and 90 ml
		rules  string
		abv    float64
		code   string
		fires  bool
		source string
	}{
		{"SO2", 0.9, "eu", 0, "sulphites", false, "Regulation (EU) No 1169/2011, Annex II, 12: more than 10 mg/l"},
		{"SO2", 0.91, "eu", 0, "sulphites", true, "idem"},
		{"SO2", 0.99, "us", 0, "sulphites", false, "21 CFR 101.100(a)(4): 10 ppm or more"},
		{"SO2", 1, "us", 0, "sulphites", true, "idem"},
		{"quinine", 8.3, "us", 0, "quinine-by-figure-us", false, "21 CFR 172.575: 83 ppm"},
		{"quinine", 8.31, "us", 0, "quinine-by-figure-us", true, "idem"},
		{"quinine", 7.65, "eu", 0, "quinine-by-figure-eu", false, "85 mg/l, BfR 020/2008"},
		{"quinine", 7.66, "eu", 0, "quinine-by-figure-eu", true, "idem"},
		{"glycyrrhizin", 0.89, "eu", 0, "liquorice-statement", false, "Annex III, 3.1: 10 mg/l or more"},
		{"glycyrrhizin", 0.9, "eu", 0, "liquorice-statement", true, "idem"},
		{"glycyrrhizin", 4.49, "eu", 1.2, "liquorice-hypertension", false, "idem, 3.3: 50 mg/l or more"},
		{"glycyrrhizin", 4.5, "eu", 1.2, "liquorice-hypertension", true, "idem"},
		{"glycyrrhizin", 4.5, "eu", 1.21, "liquorice-hypertension", false, "idem: up to 1.2 % vol"},
		{"glycyrrhizin", 26.9, "eu", 1.21, "liquorice-hypertension-strong", false, "idem: 300 mg/l or more above 1.2 % vol"},
		{"glycyrrhizin", 27, "eu", 1.21, "liquorice-hypertension-strong", true, "idem"},
		{"glycyrrhizin", 4.5, "us", 0, "liquorice-hypertension", false, "other rules"},
		{"ASPM", 0, "us", 0, "phenylalanine", false, "21 CFR 172.804(d)(2)"},
		{"ASPM", 1, "us", 0, "phenylalanine", true, "idem"},
		{"sucralose", 1, "uk", 0, "sweetener-statement", true, "Annex III, 2.1"},
	} {
		drink := caution.Input{Rules: c.rules, ABV: c.abv, ServingG: 100, ServingMl: 90, Amounts: map[constituent.ID]estimate.Amount{
			c.of: {Mean: c.mg, WithBounds: c.mg, Known: true},
		}}
		if c.fires {
			assert.Contains(t, codes(drink), c.code, "%v", c)
		} else {
			assert.NotContains(t, codes(drink), c.code, "%v", c)
		}
	}
	sweet := caution.Input{Rules: "eu", ServingG: 100, Items: []allergen.Item{{Name: "Aspartame"}}, Amounts: map[constituent.ID]estimate.Amount{"ASPM": {Mean: 20, WithBounds: 20, Known: true}}}
	assert.Equal(t, []string{"phenylalanine", "sweetener-statement"}, codes(sweet), "each code once")
}
