package ladder_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/food"
	"sipsum/internal/ladder"
)

// poured is 100 g of something that holds so many mg of malic acid, and up to so many that nobody
// knows, out of a pot of the build.
type poured struct {
	name, pot   string
	known, most float64
	chemical    bool
	sd          float64 // of the amount, over it
}

// served pours a serving, and tells its parts.
func served(list ...poured) ladder.Serving { return servedOf("MALAC", list...) }

func servedOf(id constituent.ID, list ...poured) ladder.Serving {
	const grams, mg, draws = 100.0, 1000.0, 200
	var foods []assaytest.Poured
	for i, p := range list {
		f := assaytest.Poured{Code: string(rune('a' + i)), Grams: grams, SD: p.sd * grams, Chemical: p.chemical}
		f.Holds = map[constituent.ID]float64{id: p.known / mg / grams, constituent.Water: 1 - p.known/mg/grams}
		if p.most != 0 {
			f.Most = map[constituent.ID]float64{}
			for up := id; up != "" && up != constituent.Mass; up = constituent.Must(up).Parent { // nobody knows its totals either
				f.Most[up] = p.most / mg / grams
			}
		}
		foods = append(foods, f)
	}
	pot, _ := assaytest.Pot(draws, foods...)
	s := ladder.Serving{Pot: pot, Ml: grams}
	at := map[string]int{}
	for row, p := range list {
		pot.Rows[row].Profile.Food.Names = []food.Name{{Text: p.name}}
		if p.pot != "" {
			pot.Rows[row].Path = []string{p.pot}
		}
		key := p.pot
		if key == "" {
			key = p.name
		}
		i, ok := at[key]
		if !ok {
			i = len(s.Parts)
			at[key] = i
			s.Parts = append(s.Parts, ladder.Part{Component: p.pot, Name: key})
		}
		s.Parts[i].Rows = append(s.Parts[i].Rows, row)
	}
	return s
}

func said(t *testing.T, s ladder.Serving, id constituent.ID) string {
	t.Helper()
	out, ok := s.Highest(constituent.Must(id))
	assert.Equal(t, ok, out.Text != "")
	return out.Text
}

// Drinks of known truth, one a rung. The arithmetic stands beside each.
func TestEachRungIsReachedWhereItHolds(t *testing.T) {
	none := poured{name: "milk"} // and knows it
	for _, x := range []struct {
		why, says string
		drink     []poured
	}{
		{"100 of 100", "The pear juice brings all of the malic acid.", []poured{{name: "pear juice", known: 100}, none}},
		{"95 of 100", "The pear juice brings nearly all of the malic acid: at least 95 %.", []poured{{name: "pear juice", known: 95}, {name: "apple juice", known: 5}}},
		{"90 of 100", "The pear juice brings nearly all of the malic acid: at least 90 %.", []poured{{name: "pear juice", known: 90}, {name: "apple juice", known: 10}}},
		{"80 of 80 + 10 + 20", "The pear juice brings most of the malic acid: at least 72 %.", []poured{{name: "pear juice", known: 80}, {name: "apple juice", known: 10}, {name: "mint", most: 20}}},
		{"60 of 100", "The pear juice brings most of the malic acid: at least 60 %.", []poured{{name: "pear juice", known: 60}, {name: "apple juice", known: 40}}},
		{"59 of 100, beside 41", "The pear juice brings more of the malic acid than any other ingredient: at least 59 %.", []poured{{name: "pear juice", known: 59}, {name: "apple juice", known: 41}}},
		{"45 of 45 + 30 + 30 + 40, and 45 > 30, 30, 40", "The pear juice brings more of the malic acid than any other ingredient: at least 31 %.",
			[]poured{{name: "pear juice", known: 45}, {name: "apple juice", known: 30}, {name: "plum juice", known: 30}, {name: "mint", most: 40}}},
		{"50 of 100, and no more than the other", "The pear juice brings about half of the malic acid: 50 %.", []poured{{name: "pear juice", known: 50}, {name: "apple juice", known: 50}}},
		{"45 of 45 + 45 + 10 to 45 of 45 + 45", "The pear juice brings about half of the malic acid: 45 to 50 %.", []poured{{name: "pear juice", known: 45}, {name: "apple juice", known: 45}, {name: "mint", most: 10}}},
		{"34 of 34 + 66, which nobody knows", "The pear juice brings at least a third of the malic acid: 34 % or more.", []poured{{name: "pear juice", known: 34}, {name: "mint", most: 66}}},
		{"30 of 30 + 90, which nobody knows", "The pear juice brings at least a quarter of the malic acid: 25 % or more.", []poured{{name: "pear juice", known: 30}, {name: "mint", most: 90}}},
		{"24 of 100", "The pear juice brings at least a fifth of the malic acid: 24 % or more.", []poured{{name: "pear juice", known: 24}, {name: "mint", most: 76}}},
		{"19 of 100", "The pear juice brings some of the malic acid: at least 19 %.", []poured{{name: "pear juice", known: 19}, {name: "mint", most: 81}}},
		{"4 of 100: nothing", "", []poured{{name: "pear juice", known: 4}, {name: "mint", most: 96}}},
		{"nothing bounds the mint", "", []poured{{name: "pear juice", known: 80}, {name: "mint", most: math.NaN()}}},
	} {
		assert.Equal(t, x.says, said(t, served(x.drink...), "MALAC"), x.why)
	}
}

// A lead is one in every draw: of two that are alike but for their spread neither leads, and
// what is said of a half is as wide as the draws.
func TestALeadIsOneInEveryDraw(t *testing.T) {
	const wide, narrow = 0.2, 0.01
	assert.Regexp(t, `brings at least a (third|quarter) of|about half`, said(t, served(poured{name: "pear juice", known: 55, sd: wide}, poured{name: "apple juice", known: 45, sd: wide}), "MALAC"))
	assert.Contains(t, said(t, served(poured{name: "pear juice", known: 55, sd: narrow}, poured{name: "apple juice", known: 45, sd: narrow}), "MALAC"), "than any other ingredient: at least 5")
}

// The pot is named with the ingredient, and does not speak in its place.
func TestAPotsNameFoolsNobody(t *testing.T) {
	cherry := served(poured{name: "sour cherry juice", pot: "cherry syrup", known: 20}, poured{name: "apple juice", pot: "cherry syrup", known: 80}, poured{name: "milk"})
	assert.Equal(t, "The apple juice of the cherry syrup brings most of the malic acid: at least 80 %.", said(t, cherry, "MALAC"))
	out, _ := cherry.Highest(constituent.Must("MALAC"))
	assert.Equal(t, []string{"cherry syrup"}, out.Pots)
	assert.Empty(t, out.Component)

	// Of three juices none leads; the syrup does, and may be named only where its name tells no tale.
	three := func(pot string) ladder.Serving {
		return served(poured{name: "sour cherry juice", pot: pot, known: 20}, poured{name: "apple juice", pot: pot, known: 40}, poured{name: "plum juice", pot: pot, known: 40}, poured{name: "milk"})
	}
	assert.Equal(t, "The apple juice of the cherry syrup brings about half of the malic acid: 40 %.", said(t, three("cherry syrup"), "MALAC"))
	assert.Equal(t, "The house syrup brings all of the malic acid.", said(t, three("house syrup"), "MALAC"))
	assert.True(t, ladder.Suggests("cherry syrup", "sour cherry juice"))
	assert.False(t, ladder.Suggests("cherry syrup", "maple syrup"), "both are syrups")
	assert.True(t, ladder.Suggests("clear apple", "apple juice"))
	assert.True(t, ladder.Suggests("cardamom milk", "milk"))
}

// What is the whole drink beside ice brings all there is, and is not said to.
func TestAWholeDrinkBringsNothing(t *testing.T) {
	of := func(beside poured) string {
		s := served(poured{name: "apple juice", pot: "punch", known: 40}, poured{name: "plum juice", pot: "punch", known: 40}, poured{name: "pear juice", pot: "punch", known: 20}, beside)
		s.Pot.Rows[3].Profile.Food.Group = map[string]string{"ice": "water"}[beside.name]
		return said(t, s, "MALAC")
	}
	assert.Equal(t, "The punch brings all of the malic acid.", of(poured{name: "milk"}))
	assert.NotContains(t, of(poured{name: "ice"}), "The punch brings")
}

// What comes through two pots names both, and what is poured by itself too names none.
func TestThePotsOfAnIngredient(t *testing.T) {
	pear := func(pots ...string) string {
		var list []poured
		for _, pot := range pots {
			list = append(list, poured{name: "pear juice", pot: pot, known: 100}, poured{name: "milk", pot: pot})
		}
		s := served(list...)
		for row, r := range s.Pot.Rows { // the same two foods in each
			r.Profile.Food.ID = s.Pot.Rows[row%2].Profile.Food.ID
		}
		return said(t, s, "MALAC")
	}
	assert.Equal(t, "The pear juice of the cordial brings all of the malic acid.", pear("cordial"))
	assert.Equal(t, "The pear juice of the cordial and the shrub brings all of the malic acid.", pear("cordial", "shrub"))
	assert.Equal(t, "The pear juice brings all of the malic acid.", pear("cordial", ""))
	assert.Equal(t, "The pear juice brings all of the malic acid.", said(t, served(poured{name: "pear juice", pot: "pear", known: 100}, poured{name: "milk"}), "MALAC"), "there is nothing else in it")
}

// Nothing says what its words say anyway.
func TestNoTautology(t *testing.T) {
	const all = 100_000 // mg in 100 g
	milk := poured{name: "Milk, whole"}
	assert.Equal(t, "All of the citric acid is added pure.", said(t, servedOf("CITAC", poured{name: "Citric acid, anhydrous", known: all, chemical: true}, milk), "CITAC"))
	assert.Equal(t, "All of the citric acid is added pure.", said(t, servedOf("CITAC", poured{name: "Citric acid", pot: "sour", known: 0.96 * all}, milk), "CITAC"), "96 % of it, the designer's own")
	assert.Empty(t, said(t, servedOf("CITAC", poured{name: "Citric acid", known: 0.9 * all}, milk), "CITAC"), "its name says so, and it is not pure")
	assert.Equal(t, "All of the citric acid is added as trisodium citrate.", said(t, servedOf("CITAC", poured{name: "Trisodium citrate", known: 0.6 * all, chemical: true}, milk), "CITAC"))
	assert.Equal(t, "All of the sucrose is added as sugar.", said(t, servedOf("SUCS", poured{name: "Sugar, white", known: 0.999 * all}, milk), "SUCS"))
	assert.Empty(t, said(t, servedOf("SUCS", poured{name: "Sugar, white", known: 0.999 * all}, milk), "SUGAR"), "sugar does not bring the sugars")
	assert.Equal(t, "The house syrup brings all of the sugars.", said(t, servedOf("SUCS", poured{name: "Sugar, white", pot: "house syrup", known: 0.999 * all}, milk), "SUGAR"))
	assert.Empty(t, said(t, servedOf("SUCS", poured{name: "Sugar, white", pot: "sugar syrup", known: 0.999 * all}, milk), "SUGAR"), "nor does a syrup of its name")
	assert.Equal(t, "All of the sugars are added as sucrose.", said(t, servedOf("SUCS", poured{name: "Sucrose, pure", known: all, chemical: true}, milk), "SUGAR"))
	assert.Empty(t, said(t, servedOf("CITAC", poured{name: "Lemon juice", known: 5000}), "CITAC"), "of a single food there is nothing to say")
	assert.Empty(t, said(t, ladder.Serving{}, "CITAC"))
	assert.False(t, ladder.Worth(constituent.Must(constituent.CarbonDioxide), all, 100), "no gas brings the gas")
}

// Of who brings some of something there has to be enough of it to be worth a word: 0.5 g of sugars
// in 100 ml (data/worth.csv).
func TestSomeIsWorthAWord(t *testing.T) {
	some := func(mg float64) string {
		return said(t, servedOf("SUGAR-other", poured{name: "pear juice", known: mg}, poured{name: "mint", most: 2 * mg}), constituent.Sugar)
	}
	assert.Empty(t, some(499))
	assert.Equal(t, "The pear juice brings at least a quarter of the sugars: 33 % or more.", some(501))
}

// Every rung has its words and says where its shares come from.
func TestEveryRungHasASource(t *testing.T) {
	rungs := []ladder.Rung{ladder.All, ladder.NearlyAll, ladder.Most, ladder.Lead, ladder.Half, ladder.Third, ladder.Quarter, ladder.Fifth, ladder.Some}
	rows := embedded.Rows("ladder.csv")
	require.Len(t, rows, len(rungs))
	for i, row := range rows {
		assert.Equal(t, rungs[i], ladder.Rung(row.Text("rung")))
		assert.Equal(t, i, rungs[i].Height())
		assert.Regexp(t, `^our own bound: \S.{20}|\d{4}`, row.Text("source"), row.Text("rung"))
		for _, words := range []string{row.Text("brings"), row.Text("added")} {
			assert.Contains(t, words, "{what}")
			assert.Equal(t, i > 0, strings.Contains(words, "{least}"), "the share stands beside its word")
		}
	}
	for _, row := range embedded.Rows("worth.csv") {
		assert.Regexp(t, `^our own bound: \S|\d{4}`, row.Text("source"))
	}
}
