package drink_test

import (
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/drink"
	"sipsum/internal/unit"
)

// drinkFiles are all drinks that sipsum brings along and those of its tests that have no fault.
func drinkFiles(t *testing.T) map[string]string {
	t.Helper()
	files := map[string]string{}
	for _, tree := range []fs.FS{data.FS, os.DirFS("../../testdata")} {
		for _, pattern := range []string{"demo/*.yaml", "*/*.drink.yaml", "*/*/*.drink.yaml"} {
			names, err := fs.Glob(tree, pattern)
			require.NoError(t, err)
			for _, name := range names {
				text, err := fs.ReadFile(tree, name)
				require.NoError(t, err)
				files[name] = string(text)
			}
		}
	}
	require.Greater(t, len(files), 15)
	return files
}

// reading parses a drink and gives all of it but the places; faults end it.
func reading(t *testing.T, name, text string) (string, bool) {
	t.Helper()
	d, faults := drink.Parse("t", []byte(text), func(path string) ([]byte, error) {
		return os.ReadFile(filepath.Join("../../testdata", filepath.Dir(name), path))
	})
	if faults.Len() > 0 {
		return faults.Err(2).Error(), false
	}
	js, err := json.Marshal(d)
	require.NoError(t, err)
	return regexp.MustCompile(`"(Line|Col)":\d+`).ReplaceAllString(string(js), ""), true
}

// The same drink in other forms is the same drink: units and keys in capitals, ± as a keyboard
// has it, the spaces of a word processor, °C without its sign.
func TestAFileInOtherFormsIsTheSameDrink(t *testing.T) {
	amounts := regexp.MustCompile(`(\d) (ml|cl|g|kg|mg|l)\b`)
	key := regexp.MustCompile(`(?m)(^ *(?:- )?|[{,] ?)(ph|brix|ta|abv|tds|at|to|collect|note|steps|build|food|amount)(: )`)
	forms := map[string]func(string) string{
		"units in capitals": func(s string) string { return amounts.ReplaceAllStringFunc(s, strings.ToUpper) },
		"units glued on":    func(s string) string { return amounts.ReplaceAllString(s, "$1$2") },
		"+/-":               func(s string) string { return strings.ReplaceAll(s, "±", "+/-") },
		"+-":                func(s string) string { return strings.ReplaceAll(s, " ± ", "+-") },
		"no-break spaces":   func(s string) string { return amounts.ReplaceAllString(s, "$1\u00a0$2") },
		"thin spaces":       func(s string) string { return amounts.ReplaceAllString(s, "$1\u2009$2") },
		"C":                 func(s string) string { return strings.ReplaceAll(s, " °C", "C") },
		"minutes":           func(s string) string { return regexp.MustCompile(`(\d) min\b`).ReplaceAllString(s, "$1 Minutes") },
		"keys in capitals":  func(s string) string { return key.ReplaceAllStringFunc(s, strings.ToUpper) },
	}
	changed := map[string]int{}
	for name, text := range drinkFiles(t) {
		want, clean := reading(t, name, text)
		if !clean {
			assert.Contains(t, name, "faults", "%s: %s", name, want)
			continue
		}
		for form, write := range forms {
			other := write(text)
			if other != text {
				changed[form]++
			}
			got, clean := reading(t, name, other)
			// a text for people may have changed with them
			assert.True(t, clean && unformed(got) == unformed(want), "%s with %s is another drink: %s", name, form, got)
		}
	}
	for form := range forms {
		assert.Positive(t, changed[form], "no file has what %s changes", form)
	}
}

// unformed gives a text without what the forms change in prose.
func unformed(text string) string {
	return strings.ToLower(strings.NewReplacer("\u00a0", "", "\u2009", "", " ", "", "+-", "±", "+/-", "±", "°C", "C", "Minutes", "min").Replace(text))
}

// What is written as a recipe would write it is read back as it was.
func TestEveryAmountIsReadBack(t *testing.T) {
	var texts []string
	for _, text := range drinkFiles(t) {
		texts = append(texts, regexp.MustCompile(`\d[\d.]* (?:g|ml|kg|l|cl|mg|dash|drop|tsp|tbsp)(?: ± \d[\d.]* g)?`).FindAllString(text, -1)...)
	}
	require.Greater(t, len(texts), 100)
	for _, text := range texts {
		a, rest, err := unit.ParseAmount(text)
		require.NoError(t, err, text)
		require.Empty(t, rest, text)
		b, rest, err := unit.ParseAmount(a.String())
		require.NoError(t, err, a.String())
		require.Empty(t, rest)
		assert.InDelta(t, a.Base(), b.Base(), 1e-9, text)
		assert.InDelta(t, a.Half, b.Half, 1e-9, text)
	}
}
