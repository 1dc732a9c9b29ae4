package allergen_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/allergen"
	"sipsum/internal/fail"
	"sipsum/internal/food"
)

func stated(code, name string, leaves ...string) allergen.Item {
	it := allergen.Item{Food: food.ID{Table: "own", Code: code}, Name: name, Own: true, Stated: true, Eaten: true}
	for _, leaf := range leaves {
		it.Marks = append(it.Marks, food.Mark{Kind: "allergen", Value: leaf})
	}
	return it
}

func declare(t *testing.T, rules string, items ...allergen.Item) allergen.Declaration {
	t.Helper()
	d, err := allergen.Declare(rules, items, nil)
	require.NoError(t, err)
	return d
}

func names(entries []allergen.Entry) []string {
	var out []string
	for _, e := range entries {
		out = append(out, e.Name)
	}
	return out
}

func TestTheSameMilkInTwoTables(t *testing.T) {
	core := allergen.Item{Food: food.ID{Table: "core", Code: "milk-whole"}, Name: "Milk, whole", Eaten: true,
		Marks: []food.Mark{{Kind: "allergen", Value: "cow milk"}}, Path: []string{"clarified milk"}}
	national := sr("01077", dairy, "Milk, whole, 3.25% milkfat, with added vitamin D", "", true).item()
	national.Path = core.Path
	for _, it := range []allergen.Item{core, national} {
		for _, rules := range allergen.Rules() {
			d := declare(t, rules, it)
			require.Len(t, d.Contains, 1, "%s under %s", it.Food, rules)
			assert.Equal(t, "milk", d.Contains[0].Code)
			assert.Equal(t, "Milk", d.Contains[0].Name)
			assert.Equal(t, []string{it.Food.String()}, d.Contains[0].From)
			assert.Equal(t, []string{"clarified milk"}, d.Contains[0].Via)
			assert.Empty(t, d.Check)
		}
	}
	assert.Equal(t, allergen.Inferred, declare(t, "eu", national).Contains[0].Knowledge[0].How)
	assert.Contains(t, declare(t, "eu", national).Contains[0].Knowledge[0].Rules, "sr-milk")
	assert.Equal(t, allergen.Usual, declare(t, "eu", core).Contains[0].Knowledge[0].How)
}

// Each row is one leaf under both sets of rules. What is expected is Annex II of
// Regulation (EU) No 1169/2011 and the major food allergens of the FD&C Act,
// 201(qq), with the list of tree nuts of the FDA's guidance, edition 5 (2025).
func TestLeavesUnderBothRules(t *testing.T) {
	for _, c := range []struct{ leaf, eu, us string }{
		{"oats", "Cereals containing gluten (oats)", ""}, // not a major allergen in the USA
		{"barley", "Cereals containing gluten (barley)", ""},
		{"rye", "Cereals containing gluten (rye)", ""},
		{"wheat", "Cereals containing gluten (wheat)", "Wheat"},
		{"almond", "Nuts (almonds)", "Almonds"}, // the nut is named alone in the USA
		{"pine nut", "", "Pine nuts"},
		{"coconut", "", ""}, // taken off the US list in 2025
		{"chestnut", "", ""},
		{"goat milk", "Milk", "Milk"},
		{"egg", "Eggs", "Egg"},
		{"soya", "Soybeans", "Soybeans"},
		{"peanut", "Peanuts", "Peanuts"},
		{"sesame", "Sesame seeds", "Sesame"},
		{"mustard", "Mustard", ""},
		{"celery", "Celery", ""},
		{"lupin", "Lupin", ""},
		{"fish", "Fish", "Fish"},
		{"crustacean", "Crustaceans", "Crustacean shellfish"},
		{"mollusc", "Molluscs", ""}, // crustacean shellfish only
		{"sulphites", "Sulphur dioxide and sulphites", "Sulfites"},
	} {
		for rules, want := range map[string]string{"eu": c.eu, "us": c.us} {
			d := declare(t, rules, stated("x", "x", c.leaf))
			if want == "" {
				assert.Empty(t, d.Contains, "%s under %s", c.leaf, rules)
				require.Len(t, d.NotDeclared, 1, "%s under %s is kept by name", c.leaf, rules)
				assert.Equal(t, c.leaf, d.NotDeclared[0].Code)
				continue
			}
			assert.Equal(t, []string{want}, names(d.Contains), "%s under %s", c.leaf, rules)
			assert.Empty(t, d.NotDeclared)
		}
	}
}

func TestOrderAndNamingFollowTheRules(t *testing.T) {
	items := []allergen.Item{
		stated("a", "a", "hazelnut"), stated("b", "b", "sulphites", "cow milk"), stated("c", "c", "oats", "barley", "almond"), stated("d", "d", "goat milk"),
	}
	d := declare(t, "eu", items...)
	assert.Equal(t, []string{"Cereals containing gluten (oats, barley)", "Milk", "Nuts (hazelnuts, almonds)", "Sulphur dioxide and sulphites"}, names(d.Contains))
	assert.Equal(t, []string{"own:b", "own:d"}, d.Contains[1].From)
	assert.Contains(t, d.Contains[3].Note, "10 mg/kg")
	assert.Equal(t, "Contains: Cereals containing gluten (oats, barley), Milk, Nuts (hazelnuts, almonds), Sulphur dioxide and sulphites", d.Statement())
	assert.Equal(t, []string{"Milk", "Hazelnuts, almonds", "Sulfites"}, names(declare(t, "us", items...).Contains))
}

func TestNobodyLooked(t *testing.T) {
	silent := allergen.Item{Food: food.ID{Table: "own", Code: "house-syrup"}, Name: "House syrup", Own: true, Eaten: true}
	d := declare(t, "eu", silent)
	require.NotEmpty(t, d.Check)
	assert.Equal(t, allergen.CheckNotAssessed, d.Check[0].Code)
	assert.Equal(t, []string{"own:house-syrup"}, d.Check[0].Foods)

	assert.Empty(t, declare(t, "eu", stated("house-syrup", "House syrup")).Check, "an empty list is a statement")

	mixture := sr("14192", drinks, "Beverages, Cocoa mix, powder", "", false).item()
	d = declare(t, "us", mixture)
	assert.Equal(t, []string{allergen.CheckNotAssessed, allergen.CheckPossible}, checkCodes(d))
	assert.Equal(t, []string{"milk", "soya"}, d.Check[1].Leaves)
	curry := sr("02015", spices, "Spices, curry powder", "", false).item()
	assert.Equal(t, []string{allergen.CheckNotAssessed}, checkCodes(declare(t, "us", curry)), "celery and mustard are no class in the USA")
	assert.Equal(t, []string{"celery", "mustard"}, declare(t, "eu", curry).Check[1].Leaves)

	assert.Equal(t, []string{allergen.CheckContradicts}, checkCodes(declare(t, "eu", stated("o", "Almond orgeat"))))
	assert.Equal(t, []string{allergen.CheckContradicts}, checkCodes(declare(t, "eu", stated("c", "Celery juice"))))
	assert.Empty(t, declare(t, "us", stated("c", "Celery juice")).Check, "celery is no class in the USA")
}

func checkCodes(d allergen.Declaration) []string {
	var out []string
	for _, c := range d.Check {
		out = append(out, c.Code)
	}
	return out
}

func TestUneatenGarnishCounts(t *testing.T) {
	garnish := stated("rim", "Rim", "sesame")
	garnish.Eaten = false
	d := declare(t, "eu", garnish)
	require.Len(t, d.Contains, 1)
	assert.Equal(t, []string{"garnish, not eaten"}, d.Contains[0].Via)
}

func TestMayContain(t *testing.T) {
	d, err := allergen.Declare("eu", []allergen.Item{stated("a", "a", "almond", "oats", "cow milk")}, []string{"almond", "hazelnut", "pine nut", "milk"})
	require.NoError(t, err)
	assert.Equal(t, []string{"Nuts (hazelnuts)", "pine nuts"}, names(d.MayContain), "what is declared anyway is not repeated")
	assert.Equal(t, []string{"Cereals containing gluten (oats)", "Milk", "Nuts (almonds)"}, names(d.Contains))
}

func TestWrongWordsAreRefused(t *testing.T) {
	_, err := allergen.Declare("mars", nil, nil)
	assert.Equal(t, fail.Wrong, fail.ExitCode(err))
	_, err = allergen.Declare("eu", []allergen.Item{stated("a", "a", "oat milk powder")}, []string{"dust"})
	require.Error(t, err)
	assert.Equal(t, fail.Wrong, fail.ExitCode(err))
	assert.Contains(t, err.Error(), `own:a: unknown allergen "oat milk powder"`)
	assert.Contains(t, err.Error(), `may-contain: unknown allergen "dust"`)
}

// Absence is never printed, in any text that this package can put out.
func TestNothingIsCalledFree(t *testing.T) {
	texts := []string{allergen.Caution, declare(t, "eu").Statement()}
	for _, file := range []string{"allergen_rules.csv", "allergens.csv"} {
		for _, row := range rows(t, file) {
			for column, text := range row {
				if column != "source" {
					texts = append(texts, text)
				}
			}
		}
	}
	for _, row := range slices.Concat(rows(t, "mark_rules.csv"), rows(t, "allergen_questions.csv"), rows(t, "allergen_exceptions.csv")) {
		texts = append(texts, row["why"], row["question"], row["what"])
	}
	for _, s := range allergen.States() {
		texts = append(texts, s.State, s.Means)
	}
	for _, text := range texts {
		assert.NotContains(t, strings.ToLower(text), "free from")
		assert.NotContains(t, strings.ToLower(text), "-free")
	}
}

func TestEveryLeafHasARowForEveryRules(t *testing.T) {
	classes := map[[2]string]bool{}
	for _, row := range rows(t, "allergen_rules.csv") {
		classes[[2]string{row["rules"], row["class"]}] = true
		assert.NotEmpty(t, row["source"], row["class"])
		assert.Contains(t, []string{"class", "leaves", "class and leaves"}, row["naming"], row["class"])
		assert.Contains(t, []string{"verified", "secondary", "unverified"}, row["status"], row["class"])
		if row["rules"] != "codex" { // its revisions are open; of the others nothing is printed that nobody has read
			assert.NotEqual(t, "unverified", row["status"], "%s %s", row["rules"], row["class"])
			assert.NotContains(t, row["source"], "from memory", "%s %s", row["rules"], row["class"])
		}
	}
	has := map[[2]string]bool{}
	class := map[[2]string]string{}
	for _, row := range rows(t, "allergens.csv") {
		has[[2]string{row["leaf"], row["rules"]}] = true
		class[[2]string{row["leaf"], row["rules"]}] = row["class"]
		assert.Contains(t, []string{"verified", "secondary", "unverified"}, row["status"], row["leaf"])
		assert.NotEmpty(t, row["source"], row["leaf"])
		assert.NotEmpty(t, row["word"], row["leaf"])
		for c := range strings.FieldsFuncSeq(row["class"], func(r rune) bool { return r == '|' }) {
			assert.True(t, classes[[2]string{row["rules"], c}], "%s: no class %s", row["leaf"], c)
		}
	}
	for _, leaf := range allergen.Leaves() {
		for _, rules := range allergen.Rules() {
			assert.True(t, has[[2]string{leaf, rules}], "%s has no row for %s", leaf, rules)
		}
	}
	for _, row := range rows(t, "allergens.csv") {
		if part := row["part_of"]; part != "" {
			assert.Equal(t, class[[2]string{part, row["rules"]}], row["class"], "%s says more than %s but declares another class", row["leaf"], part)
		}
	}
	assert.Equal(t, []string{"eu", "uk", "us", "ca", "anz", "codex"}, allergen.Rules())
	assert.True(t, slices.Contains(allergen.Leaves(), "cow milk"))
}
