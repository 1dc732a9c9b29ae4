package label_test

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/constituent"
	"sipsum/internal/label"
)

func table(t *testing.T, name string) []map[string]string {
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

// cardFiles are the tables that cards are made of.
var cardFiles = []string{"card_rules.csv", "card_rows.csv", "card_rounding.csv", "daily_values.csv", "card_texts.csv", "energy_factors.csv", "reference_amounts.csv"}

func TestEveryRuleHasASourceAndIsUsed(t *testing.T) {
	used := map[[3]string]bool{}
	for _, r := range table(t, "card_rows.csv") {
		used[[3]string{"band", r["rules"], r["rounding"]}] = true
		used[[3]string{"band", r["rules"], r["percent"]}] = true
		used[[3]string{"reference", r["rules"], r["reference"]}] = true
		assert.Equal(t, r["reference"] == "", r["percent"] == "", "%s: a reference needs a rounding", r["key"])
		assert.Regexp(t, `^(always|if known|if present|share>=[0-9.]+|amount>=[0-9.]+)$`, r["need"], r["key"])
		if r["within"] != "" {
			_, ok := constituent.Find(r["within"])
			assert.True(t, ok, r["key"])
		}
	}
	for _, r := range table(t, "card_texts.csv") {
		if strings.Contains(r["text"], "{standard drinks}") {
			used[[3]string{"reference", r["rules"], "standard-drink"}] = true
		}
	}
	have := map[[3]string]bool{}
	for _, r := range table(t, "card_rounding.csv") {
		key := [3]string{"band", r["rules"], r["band"]}
		have[key] = true
		assert.True(t, used[key], "%v", key)
		assert.NotEqual(t, r["step"] == "" && r["figures"] == "", r["text"] == "", "%v: steps, figures or a text", r)
	}
	for _, r := range table(t, "daily_values.csv") {
		key := [3]string{"reference", r["rules"], r["key"]}
		have[key] = true
		assert.True(t, used[key], "%v", key)
	}
	for key := range used {
		if key[2] != "" {
			assert.True(t, have[key], "%v is used but not given", key)
		}
	}
	for _, r := range table(t, "energy_factors.csv") {
		_, ok := constituent.Find(r["constituent"])
		assert.True(t, ok, r["constituent"])
	}
	assert.Equal(t, []string{"anz", "ca", "codex", "eu", "uk", "us"}, label.Rules())
	assert.Equal(t, []string{"eu"}, label.Usual())
	for _, r := range table(t, "card_rules.csv") {
		assert.NotEmpty(t, r["title"], r["rules"])
		assert.NotEmpty(t, r["unknown"], r["rules"])
		assert.Contains(t, []string{"volume", "serving"}, r["basis"], r["rules"])
		assert.Contains(t, r["percent_head"], "*", "%s: a statement explains it", r["rules"])
	}
}

// No cell without a legal reference and a status. Of eu and us nobody has to check one; of uk
// and anz no more than a tenth, and never what the rows for energy, sugars and salt or sodium
// say themselves (the factors of single acids and polyols are cells of their own, and mark an
// energy that was multiplied by one). What stands in a source as from memory is unverified,
// and the other way round.
func TestEveryCellHasAStatus(t *testing.T) {
	all, open := map[string]int{}, map[string]int{}
	count := func(rules, status string) {
		all[rules]++
		if status == label.Unverified {
			open[rules]++
		}
	}
	for _, file := range cardFiles {
		for _, r := range table(t, file) {
			where := file + ": " + r["rules"] + " " + r["key"] + r["band"] + r["constituent"] + r["text"]
			require.NotEmpty(t, r["source"], where)
			require.Contains(t, []string{label.Verified, label.Secondary, label.Unverified}, r["status"], where)
			assert.Equal(t, strings.Contains(r["source"], "from memory"), r["status"] == label.Unverified, where)
			count(r["rules"], r["status"])
			if r["rules"] == "eu" && file != "card_rules.csv" {
				count("uk", r["status"]) // whose rows are the same
			}
		}
	}
	assert.Zero(t, open["eu"])
	assert.Zero(t, open["us"])
	for _, rules := range []string{"uk", "anz"} {
		assert.LessOrEqual(t, 10*open[rules], all[rules], rules)
	}
	for _, rules := range []string{"eu", "uk", "us", "anz"} {
		c := card(t, rules, facts(100, map[constituent.ID]float64{"FAT": 3, "CHOAVL": 5, "SUGAR": 5, "CHOCDF": 5, "PROCNT": 3, "ALC": 3, "NA": 40, "FIBTG": 0}))
		for _, r := range c.Rows {
			assert.NotEmpty(t, r.Source, r.Key)
			assert.NotEqual(t, label.Unverified, r.Status, "%s: %s", rules, r.Key)
		}
	}
	for rules, n := range open {
		assert.Len(t, card(t, rules, facts(100, nil)).Unverified, n, "%s: every one is listed", rules)
	}
}

// A reference is divided into the amount of its row: both in one unit.
func TestReferencesAreInTheUnitOfTheirRows(t *testing.T) {
	units := map[[2]string]string{}
	for _, r := range table(t, "daily_values.csv") {
		units[[2]string{r["rules"], r["key"]}] = r["unit"]
	}
	for _, r := range table(t, "card_rows.csv") {
		if r["reference"] == "" {
			continue
		}
		assert.Regexp(t, "^"+units[[2]string{r["rules"], r["reference"]}]+"( |$)", r["unit"], r["key"])
	}
}
