package allergen_test

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/allergen"
	"sipsum/internal/food"
)

func (n named) item() allergen.Item {
	return allergen.Item{
		Food: food.ID{Table: n.table, Code: n.code}, Name: n.name,
		Group: n.ours, PublisherGroup: n.group, Own: n.table == "own", Eaten: true,
	}
}

// codes reads "cow milk egg" against the list of leaves.
func codes(t *testing.T, text string) []string {
	t.Helper()
	var out []string
	left := " " + text + " "
	leaves := allergen.Leaves()
	slices.SortFunc(leaves, func(a, b string) int { return len(b) - len(a) })
	for _, code := range leaves {
		if strings.Contains(left, " "+code+" ") {
			out = append(out, code)
			left = strings.Replace(left, " "+code+" ", " ", 1)
		}
	}
	require.Empty(t, strings.TrimSpace(left), "leaves of %q", text)
	return out
}

func TestMarksInferredFromNames(t *testing.T) {
	require.GreaterOrEqual(t, len(srNames), 60)
	for _, n := range slices.Concat(srNames, otherNames) {
		a := allergen.Assess(n.item())
		assert.ElementsMatch(t, codes(t, n.holds), a.Leaves, "%s %s: %s", n.table, n.code, n.name)
		assert.ElementsMatch(t, codes(t, n.maybe), a.Likely, "%s %s: %s: to be checked", n.table, n.code, n.name)
		want := allergen.NotAssessed
		if n.settled {
			want = allergen.Inferred
		}
		assert.Equal(t, want, a.Knowledge, "%s %s: %s", n.table, n.code, n.name)
		assert.Equal(t, n.cautions, strings.Join(a.Cautions, " "), "%s %s: %s: cautions", n.table, n.code, n.name)
	}
}

// A rule that finds nothing in any of the names above would be untested.
func TestEveryMarkRuleBites(t *testing.T) {
	bites := map[string]bool{}
	for _, n := range slices.Concat(srNames, otherNames) {
		for _, ids := range allergen.Assess(n.item()).Rules {
			for _, id := range ids {
				bites[id] = true
			}
		}
	}
	for _, file := range []string{"mark_rules.csv", "allergen_questions.csv"} {
		for _, row := range rows(t, file) {
			assert.True(t, bites[row["id"]], "%s: row %s", file, row["id"])
		}
	}
}

func TestMarkRulesAreWellFormed(t *testing.T) {
	cautions := []string{"caffeine", "alcohol", "raw egg", "quinine", "liquorice", "grapefruit", "honey", "polyol", "phenylalanine"}
	seen := map[string]bool{}
	for _, row := range rows(t, "mark_rules.csv") {
		id := row["id"]
		assert.False(t, seen[id], "%s stands twice", id)
		seen[id] = true
		assert.NotEmpty(t, row["source"], id)
		assert.NotEmpty(t, row["why"], id)
		assert.Contains(t, []string{"yes", "no"}, row["settles"], id)
		assert.NotEmpty(t, row["name_words"]+row["group"]+row["publisher_group"], "%s would match every food", id)
		assert.NotContains(t, row["allergens"], "?", "%s: what is only possible is a question", id)
		if row["table"] == "*" {
			assert.Equal(t, "no", row["settles"], "%s: only a rule for one table can know what its names mean", id)
		}
		assert.NotEmpty(t, row["allergens"]+row["cautions"]+strings.TrimPrefix(row["settles"], "no"), "%s says nothing", id)
		for _, code := range strings.FieldsFunc(row["allergens"], func(r rune) bool { return r == '|' }) {
			assert.True(t, allergen.IsLeaf(strings.TrimSuffix(code, "?")), "%s: %s", id, code)
		}
		for _, code := range strings.FieldsFunc(row["cautions"], func(r rune) bool { return r == '|' }) {
			assert.Contains(t, cautions, code, id)
		}
	}
}

// The quoted names are compared with the published file where it is at hand.
func TestQuotedNamesAreThePublished(t *testing.T) {
	shared := os.Getenv("SIPSUM_SHARED")
	if shared == "" {
		t.Skip("SIPSUM_SHARED is not set: the published table is not at hand")
	}
	read := func(name string) [][]string {
		raw, err := os.ReadFile(filepath.Join(shared, "tables", "sr28", name))
		require.NoError(t, err)
		var out [][]string
		for line := range strings.Lines(string(raw)) {
			out = append(out, strings.Split(strings.ReplaceAll(strings.TrimSpace(line), "~", ""), "^"))
		}
		return out
	}
	groups, published := map[string]string{}, map[string][2]string{}
	for _, g := range read("FD_GROUP.txt") {
		groups[g[0]] = g[1]
	}
	for _, f := range read("FOOD_DES.txt") {
		published[f[0]] = [2]string{groups[f[1]], f[2]}
	}
	for _, n := range srNames {
		assert.Equal(t, published[n.code], [2]string{n.group, n.name}, n.code)
	}
}

func TestStatementsWinOverNames(t *testing.T) {
	it := allergen.Item{Food: food.ID{Table: "own", Code: "house-oat"}, Name: "Oat drink", Own: true, Eaten: true}
	assert.Equal(t, allergen.NotAssessed, allergen.Assess(it).Knowledge, "nobody has listed its allergens")

	it.Stated = true
	a := allergen.Assess(it)
	assert.Equal(t, allergen.Stated, a.Knowledge)
	assert.Empty(t, a.Leaves)
	assert.Equal(t, []string{"oats"}, a.Missed, "the name contradicts the empty list")

	it.Marks = []food.Mark{{Kind: "allergen", Value: "oats"}}
	a = allergen.Assess(it)
	assert.Equal(t, []string{"oats"}, a.Leaves)
	assert.Empty(t, a.Missed)

	core := allergen.Item{Food: food.ID{Table: "core", Code: "milk-whole"}, Name: "Milk, whole", Eaten: true,
		Marks: []food.Mark{{Kind: "allergen", Value: "cow milk"}, {Kind: "caution", Value: "caffeine"}}}
	a = allergen.Assess(core)
	assert.Equal(t, allergen.Usual, a.Knowledge, "the core table judges a food as it is usually sold")
	assert.Empty(t, a.Missed, "cows' milk covers milk")
	assert.Equal(t, []string{"caffeine"}, a.Cautions)
}

func TestFurtherNamesOnlyAdd(t *testing.T) {
	it := allergen.Item{Food: food.ID{Table: "sr", Code: "09216"}, Name: "Blend of the house", Names: []string{"Orange peel, raw", "with almonds"}, PublisherGroup: fruits, Eaten: true}
	a := allergen.Assess(it)
	assert.Equal(t, allergen.NotAssessed, a.Knowledge, "a further name settles nothing")
	assert.Equal(t, []string{"almond"}, a.Leaves)
}

func TestUnknownTableIsNotAssessed(t *testing.T) {
	it := allergen.Item{Food: food.ID{Table: "elsewhere", Code: "1"}, Name: "Jus de citron", Eaten: true}
	assert.Equal(t, allergen.NotAssessed, allergen.Assess(it).Knowledge)
}

func rows(t *testing.T, name string) []map[string]string {
	t.Helper()
	file, err := data.FS.Open(name)
	require.NoError(t, err)
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	var out []map[string]string
	for _, record := range records[1:] {
		row := map[string]string{}
		for i, column := range records[0] {
			row[column] = record[i]
		}
		out = append(out, row)
	}
	return out
}

// Barley is a cereal of Annex II, item 1, which have to be named, and no major allergen of FD&C
// Act 201(qq): who declares wheat has said there all that barley asks for.
func TestWhatIsNoClassAsksForNothing(t *testing.T) {
	it := allergen.Item{Food: food.ID{Table: "own", Code: "malt"}, Name: "Barley malt", Own: true, Eaten: true, Stated: true}
	require.Equal(t, []string{"barley"}, allergen.Assess(it).Missed)
	it.Marks = []food.Mark{{Kind: "allergen", Value: "wheat"}}
	assert.Empty(t, declare(t, "us", it).Check)
	assert.Len(t, declare(t, "eu", it).Check, 1, "the cereal is to be named, and that one is not")
	assert.Len(t, declare(t, "ca", it).Check, 1, "barley is a gluten source of its own in Canada")
	assert.Empty(t, declare(t, "anz", it).Check, "gluten in the summary is gluten")
	it.Name, it.Marks[0].Value = "Wheat malt", "barley"
	assert.Equal(t, []string{"wheat"}, allergen.Assess(it).Missed, "wheat is a class of its own in the USA")
}
