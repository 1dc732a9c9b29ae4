package data_test

import (
	"bufio"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/encoding/charmap"
)

// weight is a row of WEIGHT.txt of USDA SR28: so many of a measure weigh so much.
type weight struct {
	spreads          bool // a standard deviation is printed
	count, grams, sd float64
	n                int
	measure          string
}

// weights gives those of each food, and the group of each.
func weights(t *testing.T) (all map[string][]weight, groups map[string]string) {
	t.Helper()
	shared := os.Getenv("SIPSUM_SHARED")
	if shared == "" {
		t.Skip("set SIPSUM_SHARED to the folder that holds tables/sr28")
	}
	all, groups = map[string][]weight{}, map[string]string{}
	lines := func(name string, do func([]string)) {
		f, err := os.Open(filepath.Join(shared, "tables", "sr28", name))
		require.NoError(t, err)
		defer f.Close()
		for s := bufio.NewScanner(charmap.Windows1252.NewDecoder().Reader(f)); s.Scan(); {
			do(strings.Split(strings.ReplaceAll(strings.TrimRight(s.Text(), "\r"), "~", ""), "^"))
		}
	}
	figure := func(text string) float64 { x, _ := strconv.ParseFloat(text, 64); return x }
	lines("FOOD_DES.txt", func(c []string) { groups[c[0]] = c[1] })
	lines("WEIGHT.txt", func(c []string) {
		n, _ := strconv.Atoi(c[5])
		all[c[0]] = append(all[c[0]], weight{c[6] != "", figure(c[2]), figure(c[4]), figure(c[6]), n, c[3]})
	})
	return all, groups
}

// The spreads of spoons, cups and pieces at home are the medians of what was weighed more than once.
func TestSpoonsSpreadAsSR28WeighedThem(t *testing.T) {
	all, groups := weights(t)
	first := func(measure string) string {
		word, _, _ := strings.Cut(measure, " ")
		return strings.Trim(word, ",")
	}
	oneOf := func(words string) func(string, string) bool {
		return func(_, measure string) bool { return slices.Contains(strings.Fields(words), first(measure)) }
	}
	for of, counts := range map[string]func(food, measure string) bool{
		"spoon": oneOf("tsp tbsp teaspoon tablespoon"),
		"cup": func(food, measure string) bool {
			poured := measure == "cup" || measure == "fl oz" || strings.HasPrefix(measure, "cup (8 fl")
			return poured && slices.Contains([]string{"1400", "0900", "0100"}, groups[food])
		},
		"piece": oneOf("piece fruit leaf leaves sprig sprigs slice slices wedge stalk stick berry clove pod cube large medium small"),
	} {
		var spreads []float64
		for food, list := range all {
			for _, w := range list {
				if w.n > 1 && counts(food, w.measure) && strings.TrimSpace(w.measure) != "" && w.spreads {
					spreads = append(spreads, w.sd/w.grams)
				}
			}
		}
		slices.Sort(spreads)
		require.NotEmpty(t, spreads)
		n := len(spreads)
		median := (spreads[(n-1)/2] + spreads[n/2]) / 2
		i := slices.IndexFunc(rows(t, "home.csv"), func(r row) bool { return r["what"] == "spread" && r["of"] == of })
		require.GreaterOrEqual(t, i, 0, of)
		assert.InDelta(t, 100*median, number(t, rows(t, "home.csv")[i], "value"), 0.05, "%s: %d rows", of, n)
		assert.Contains(t, rows(t, "home.csv")[i]["source"], strconv.Itoa(n), of)
	}
}

// A spoon, a cup or a piece of a core food weighs what the food that its source names does in SR28.
func TestPortionsWeighAsSR28(t *testing.T) {
	all, _ := weights(t)
	source := regexp.MustCompile(`^SR28 WEIGHT (\d{5})`)
	checked := 0
	for _, p := range rows(t, "core/portions.csv") {
		m := source.FindStringSubmatch(p["source"])
		if m == nil {
			continue
		}
		word := strings.FieldsFunc(strings.TrimLeft(p["portion"], "0123456789 "), func(r rune) bool { return r == ' ' || r == ',' })[0]
		found := slices.ContainsFunc(all[m[1]], func(w weight) bool {
			each := w.grams / w.count
			return strings.Contains(w.measure, word) && (near(each, number(t, p, "grams")) || near(w.grams, number(t, p, "grams")))
		})
		assert.True(t, found, "%s: %s of %s g", p["code"], p["portion"], p["grams"])
		checked++
	}
	assert.Greater(t, checked, 400)
}

// near allows for the digits that are kept of a division.
func near(a, b float64) bool { return a > 0.999*b && a < 1.001*b }
