package sheet_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/embedded"
	"sipsum/internal/report/reporttest"
	"sipsum/internal/sheet"
)

// tolds are the keys of what a guest may be told, whatever the drink.
var tolds = []string{
	"kind.guest", "kind.allergens", "serving", "serving.of", "at", "in", "on", "contains", "may", "none", "open", "check", "ask", "rules",
	"strength", "strength.is", "caffeine", "caffeine.is", "caffeine.least", "calculated", "unmeasured", "memory", "figures", "size", "matrix",
	"missing", "advice", "too much", "and", "inferred", "other.guest", "other.allergens", "language",
}

// A guest is told in each language all that one is told in English: as many gaps, and nothing left out.
func TestALanguageHasAllThatAGuestIsTold(t *testing.T) {
	texts := map[string]map[string]string{}
	for _, row := range embedded.Rows("card_words.csv") {
		in := row.Text("language")
		if texts[in] == nil {
			texts[in] = map[string]string{}
		}
		texts[in][row.Text("key")] = row.Text("text")
	}
	require.GreaterOrEqual(t, len(sheet.Languages()), 2)
	assert.Equal(t, sheet.Language{Code: "en", Name: "English"}, sheet.Languages()[0])
	keys := tolds
	for key := range texts["en"] {
		if strings.HasPrefix(key, "advice.") {
			keys = append(keys, key)
		}
	}
	assert.Greater(t, len(keys), 100)
	for _, l := range sheet.Languages() {
		for _, key := range keys {
			english, ok := texts["en"][key]
			require.True(t, ok, key)
			text, ok := texts[l.Code][key]
			assert.True(t, ok, "%s has no %s", l.Name, key)
			assert.Equal(t, english == "", text == "", "%s: %s is for the kitchen in one language alone", l.Name, key)
			assert.Equal(t, strings.Count(english, "{}"), strings.Count(text, "{}"), "%s: %s", l.Name, key)
		}
	}
}

// Every allergen of any rules has its name in each language; so has every row of the declaration of the EU.
func TestALanguageNamesEveryAllergen(t *testing.T) {
	names := map[string]map[string]bool{}
	for _, row := range embedded.Rows("card_names.csv") {
		in := row.Text("language")
		if names[in] == nil {
			names[in] = map[string]bool{}
		}
		assert.NotEmpty(t, row.Text("source"), row.Text("of"))
		names[in][row.Text("of")] = true
	}
	var wanted []string
	for _, row := range embedded.Rows("allergen_rules.csv") {
		wanted = append(wanted, row.Text("name"))
	}
	for _, row := range embedded.Rows("allergens.csv") {
		wanted = append(wanted, row.Text("word"))
		if name := row.Text("name"); name != "" {
			whole, inside, _ := strings.Cut(strings.TrimSuffix(name, ")"), " (")
			if wanted = append(wanted, whole); inside != "" {
				wanted = append(wanted, inside)
			}
		}
	}
	for _, row := range embedded.Rows("card_rows.csv") {
		if row.Text("rules") == "eu" {
			wanted = append(wanted, row.Text("label"))
		}
	}
	for _, l := range sheet.Languages()[1:] {
		for _, name := range wanted {
			assert.True(t, names[l.Code][name], "%s has no word for %q", l.Name, name)
		}
	}
}

// The names of Annex II of Regulation (EU) No 1169/2011 as its German text has them (freirecht.de; the Chamber of
// Commerce of Bolzano prints the same).
func TestAGermanGuestIsToldOfAllergens(t *testing.T) {
	s := reporttest.Read(t, `
drink: Lantern
serves: 1
rules: [eu]
may-contain: [tree nut]
foods:
  bar: {name: "House mix", per: 100 g, values: {SUGAR: 12 g, CAFFN: 30 mg}, allergens: [milk, barley, hazelnut], source: "invented"}
build: [40 g own:bar, 20 g core:espresso, 1 g core:honey]
`)
	told := func(l *sheet.Leaf) string {
		var b strings.Builder
		for _, block := range l.Blocks {
			b.WriteString(block.Heading + "\n")
			for _, line := range block.Lines {
				b.WriteString(line.Sentence() + "\n")
			}
		}
		return b.String()
	}
	guest := told(s.GuestLeafIn("de"))
	assert.Contains(t, guest, "Enthält: Glutenhaltiges Getreide (Gerste)")
	assert.Contains(t, guest, " · Milch · Schalenfrüchte (Haselnüsse)")
	assert.Contains(t, guest, "Kann enthalten: Schalenfrüchte")
	assert.Contains(t, guest, "Mit Honig: nie für Kinder unter 12 Monaten.")
	assert.NotContains(t, guest, "Please")
	allergens := told(s.AllergensLeafIn("de"))
	assert.Contains(t, allergens, "Allergene, EU")
	assert.Contains(t, allergens, "Enthält: Glutenhaltiges Getreide")
	assert.Contains(t, allergens, "Fragen Sie uns bei einer Allergie")
	us := reporttest.Read(t, "drink: Lantern\nserves: 1\nrules: [us]\nmay-contain: [tree nut, chestnut]\nbuild: [10 g core:almond-butter, 20 g core:espresso]\n")
	assert.Contains(t, told(us.GuestLeafIn("de")), "Enthält: Mandeln\n", "the United States have the nut named, and not its class")
	assert.Contains(t, told(us.AllergensLeafIn("de")), "Kann enthalten: Schalenfrucht nicht angegeben")
	assert.Equal(t, s.GuestLeaf(), s.GuestLeafIn("xx"), "what nobody has words in is English")
	assert.Equal(t, s.AllergensLeaf(), s.AllergensLeafIn("en"))
}

// A declaration of which a language has not every row stands whole in that of its rules.
func TestADeclarationIsNeverInTwoLanguages(t *testing.T) {
	const drink = "drink: Lantern\nserves: 1\nrules: [%s]\nbuild: [100 g core:milk-whole]\n"
	labels := func(rules, language string) (all string) {
		l := reporttest.Read(t, strings.Replace(drink, "%s", rules, 1)).GuestLeafIn(language)
		for _, b := range l.Blocks {
			if b.Grid != nil {
				all += b.Grid.Caption + "\n"
				for _, r := range b.Grid.Rows {
					all += r.Label + "\n"
				}
			}
		}
		return all
	}
	assert.Contains(t, labels("eu", "de"), "Nährwertdeklaration, EU\nBrennwert\nFett\n")
	assert.NotContains(t, labels("eu", "de"), "Fat")
	assert.Equal(t, labels("us", "en"), labels("us", "de"))
}
