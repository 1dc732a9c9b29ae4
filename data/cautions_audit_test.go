package data_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
)

// A caution has a rank, words that promise nothing, and a source; what it measures has a
// limit and a unit; who silences whom exists. The local code is named once for all of them
// (sheet.LocalCode), not in each.
func TestCautionsAreWhole(t *testing.T) {
	all := rows(t, "cautions.csv")
	codes, hazards := map[string]bool{}, map[string]bool{}
	for _, r := range all {
		codes[r["code"]] = true
		for hazard := range strings.SplitSeq(r["hazard"], "|") {
			hazards[hazard] = true
		}
	}
	delete(hazards, "")
	assert.Len(t, hazards, 114, "of the facts on hazards")
	seen := map[string]bool{}
	for _, r := range all {
		at := r["code"] + " " + r["rules"] + " " + r["measure"] + " " + r["of"]
		assert.False(t, seen[at], at)
		seen[at] = true
		assert.Regexp(t, "^[1-5]$", r["rank"], at)
		assert.NotEmpty(t, r["text"], at)
		assert.NotEmpty(t, r["source"], at)
		assert.NotEmpty(t, r["when"]+r["measure"], "%s: nothing brings it up", at)
		if r["rules"] != "" {
			for rule := range strings.SplitSeq(r["rules"], "|") {
				assert.Contains(t, []string{"eu", "uk", "us", "ca", "anz", "codex"}, rule, at)
			}
		}
		if r["silences"] != "" {
			for code := range strings.SplitSeq(r["silences"], "|") {
				assert.True(t, codes[code], "%s silences %s", at, code)
			}
		}
		measured(t, at, r)
		for _, promise := range []string{"free from", "harmless", "is safe", "local code"} {
			assert.NotContains(t, strings.ToLower(r["text"]), promise, at)
		}
		assert.LessOrEqual(t, len(strings.Fields(r["text"])), 62, "%s: nobody reads that on a sheet", at)
	}
}

var placeholder = regexp.MustCompile(`\{[^}]*\}`)

// measured holds a row to what its measure needs, and its text to the figures that it gives.
func measured(t *testing.T, at string, r map[string]string) {
	t.Helper()
	figures := []string{"{abv}"}
	switch r["measure"] {
	case "":
	case "unknown":
		figures = append(figures, "{foods}")
	case "amount":
		figures = append(figures, "{serving}", "{100 ml}", "{100 g}", "{amount}")
		_, ok := constituent.Find(r["of"])
		assert.True(t, ok, at)
		assert.Contains(t, []string{"serving", "100 ml", "100 g", "litre", "kg"}, r["basis"], at)
	case "mass":
		figures = append(figures, "{mass}", "{times}")
		assert.Equal(t, "g", r["unit"], at)
		assert.Contains(t, []string{"serving", "batch", "kg", "litre"}, r["basis"], at)
		assert.Contains(t, r["when"], "food:", at)
	case "abv", "ph":
	default:
		t.Errorf("%s: measure %q is not known", at, r["measure"])
	}
	if r["measure"] != "" && r["measure"] != "unknown" {
		assert.GreaterOrEqual(t, number(t, r, "limit"), 0.0, at)
		assert.Contains(t, []string{"over", "at least", "below", "tell", "too much over", "too much from"}, r["compare"], at)
	}
	for _, p := range placeholder.FindAllString(r["text"], -1) {
		assert.Contains(t, figures, p, at)
	}
}

// Words are written as names are cut: small letters and digits, single spaces; each list is
// asked for by a caution, and each mark that a rule can infer has one.
func TestHazardWordsAreUsed(t *testing.T) {
	asked := ""
	for _, r := range rows(t, "cautions.csv") {
		asked += "|" + r["when"] + "|" + r["only_with"] + "|" + r["exempt_foods"]
	}
	form := regexp.MustCompile(`^[\p{Ll}\d]+( [\p{Ll}\d]+)*\*?$`)
	written := map[string]bool{}
	for _, table := range []string{"hazard_foods.csv", "techniques.csv"} {
		for _, r := range rows(t, table) {
			at := r["list"] + " " + r["language"]
			assert.False(t, written[at], at)
			written[at] = true
			assert.Contains(t, []string{"en", "de", "fr", "es", "it"}, r["language"], at)
			assert.Regexp(t, `(food|ownfood|technique|vessel):`+regexp.QuoteMeta(r["list"])+`(\W|$)`, asked, at)
			for _, column := range []string{"words", "ignore", "not"} {
				if r[column] == "" {
					continue
				}
				once := map[string]bool{}
				for words := range strings.SplitSeq(r[column], "|") {
					assert.Regexp(t, form, words, "%s: %s", at, column)
					assert.False(t, once[words], "%s: %s: %s", at, column, words)
					once[words] = true
				}
			}
			assert.NotEmpty(t, r["words"], at)
		}
	}
	for _, r := range rows(t, "mark_rules.csv") {
		if r["cautions"] != "" {
			for mark := range strings.SplitSeq(r["cautions"], "|") {
				assert.Contains(t, asked+"|mark:alcohol", "mark:"+mark, r["id"])
			}
		}
	}
}
