package constituent_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

func saidIDs(text string) (ids []constituent.ID) {
	for _, c := range constituent.Said(text) {
		ids = append(ids, c.ID)
	}
	return ids
}

// Tagnames and the names of the vocabulary, in any case, mean their constituent and no other.
func TestNamesAndTagsAreRead(t *testing.T) {
	for _, c := range constituent.All() {
		for _, word := range append([]string{string(c.ID), c.Name, c.Words()}, c.Aliases...) {
			assert.Equal(t, []constituent.ID{c.ID}, saidIDs(word), word)
		}
	}
}

// Every row of the words is needed: a name says the same already, or another row does.
func TestEveryWordIsReadAndNeeded(t *testing.T) {
	seen := map[string]bool{}
	for _, row := range embedded.Rows("constituent_words.csv") {
		word := row.Text("word")
		assert.False(t, seen[word], "%s stands twice", word)
		seen[word] = true
		assert.NotEmpty(t, row.Text("source"), word)
		said := constituent.Said(word)
		require.NotEmpty(t, said, word)
		for _, c := range said {
			assert.Contains(t, row.Text("constituents"), string(c.ID), word)
			assert.NotEqual(t, c.Name, word, "its name says it")
		}
	}
}

// What is said at a bench and on the labels of Regulation (EU) No 1169/2011, Annex XV, and of 21 CFR
// 101.9: carbohydrate is available there and total here, salt is told by its sodium.
func TestWordsOfADesigner(t *testing.T) {
	for said, want := range map[string][]constituent.ID{
		"malic": {"MALAC"}, "Malic  Acid": {"MALAC"}, " quinac ": {"QUINAC"}, "sugar": {"SUGAR"}, "Sugars": {"SUGAR"}, "of which sugars": {"SUGAR"}, "– sugars": {"SUGAR"},
		"caffeine": {"CAFFN"}, "CHO-": {"CHOCDF"}, "saturated fat": {"FASAT"}, "of which saturates": {"FASAT"}, "saturates": {"FASAT"}, "fibre": {"FIBTG"}, "fiber": {"FIBTG"}, "Dietary Fiber": {"FIBTG"},
		"salt": {"NA"}, "Salt": {"NA"}, "energy": {"ENERC"}, "kcal": {"ENERC_KCAL"}, "Calories": {"ENERC_KCAL"}, "protein": {"PROCNT"}, "glucose": {"GLUS"}, "chlorogenic acid": {"CHLRAC"}, "tannin": {"TAN"},
		"carbohydrate": {"CHOAVL", "CHOCDF"}, "carbs": {"CHOAVL", "CHOCDF"}, "total carbohydrate": {"CHOCDF"}, "vitamin c": {"VITC"}, "folic acid": {"FOLAC"},
		"": nil, " ": nil, "acid": nil, "sour": nil, "malic acids": nil, "-": nil,
	} {
		assert.Equal(t, want, saidIDs(said), said)
	}
}

// A word that nobody knows is answered with the nearest, printed words first and the tagname beside
// them, and one with two meanings with both.
func TestWhatAnUnknownWordIsAnsweredWith(t *testing.T) {
	for word, want := range map[string]string{
		"glucos":       `unknown constituent "glucos" (did you mean glucose (GLUS)?)`,
		"chloro":       `unknown constituent "chloro" (did you mean chlorogenic acids (CHLRAC)?)`,
		"acid":         `unknown constituent "acid" (did you mean organic acids (OA), citric acid (CITAC), isocitric acid (ISOCAC) or malic acid (MALAC)?)`,
		"sour":         `unknown constituent "sour" (write words or a tagname, such as citric acid (CITAC), caffeine (CAFFN) or sugars (SUGAR))`,
		"carbohydrate": `"carbohydrate" may be available carbohydrate (CHOAVL) or carbohydrate by difference (CHOCDF) (write which: "available carbohydrate" or "carbohydrate by difference")`,
	} {
		_, err := constituent.Read(word, constituent.OfDrinks)
		assert.EqualError(t, err, want)
	}
	c, err := constituent.Read("vitamin A", constituent.OfDrinks)
	require.NoError(t, err, "the international units are of tables alone")
	assert.Equal(t, constituent.ID("VITA_RAE"), c.ID)
	_, err = constituent.Read("vitamin A", constituent.Any)
	assert.ErrorContains(t, err, "may be")
	_, err = constituent.Read("NACL", constituent.OfDrinks)
	assert.ErrorContains(t, err, "salt equivalent (NACL) is printed by tables and is no figure of a drink")
	assert.Equal(t, "trigonelline", constituent.Must("trigonelline").Named(), "an id that is its own name stands once")
}
