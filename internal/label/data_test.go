package label_test

import (
	"encoding/csv"
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

func TestEveryRuleHasASourceAndIsUsed(t *testing.T) {
	used := map[[3]string]bool{}
	for _, r := range table(t, "card_rows.csv") {
		used[[3]string{"band", r["rules"], r["rounding"]}] = true
		used[[3]string{"band", r["rules"], r["percent"]}] = true
		used[[3]string{"reference", r["rules"], r["reference"]}] = true
		assert.Equal(t, r["reference"] == "", r["percent"] == "", "%s: a reference needs a rounding", r["key"])
		assert.Contains(t, []string{"always", "if known", "if present"}, r["need"], r["key"])
	}
	for _, file := range []string{"card_rules.csv", "card_rows.csv", "card_rounding.csv", "daily_values.csv", "card_texts.csv", "energy_factors.csv"} {
		for _, r := range table(t, file) {
			assert.NotEmpty(t, r["source"], "%s: %v", file, r)
		}
	}
	have := map[[3]string]bool{}
	for _, r := range table(t, "card_rounding.csv") {
		key := [3]string{"band", r["rules"], r["band"]}
		have[key] = true
		assert.True(t, used[key], "%v", key)
		assert.NotEqual(t, r["step"] == "", r["text"] == "", "%v: a step or a text", r)
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
	assert.Equal(t, []string{"eu", "us"}, label.Rules())
	assert.Equal(t, []string{"eu"}, label.Usual())
	var named []string
	for _, r := range table(t, "card_rules.csv") {
		named = append(named, r["rules"])
		assert.NotEmpty(t, r["title"], r["rules"])
		assert.Contains(t, []string{"volume", "serving"}, r["basis"], r["rules"])
		assert.Contains(t, r["percent_head"], "*", "%s: a statement explains it", r["rules"])
	}
	assert.ElementsMatch(t, label.Rules(), named, "rules with rows, and no others, have a head")
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
