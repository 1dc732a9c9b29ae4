package caution_test

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/allergen"
	"sipsum/internal/caution"
	"sipsum/internal/food"
)

func rowsOf(t *testing.T, path string) []map[string]string {
	t.Helper()
	file, err := os.Open(filepath.FromSlash(path))
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	var all []map[string]string
	for _, row := range rows[1:] {
		r := map[string]string{}
		for i, column := range rows[0] {
			r[column] = row[i]
		}
		all = append(all, r)
	}
	return all
}

// small makes a drink of what a row of testdata names: foods (parted by " + "), a step, a
// technique, a vessel, a pH that a meter read.
func small(t *testing.T, r map[string]string) caution.Input {
	t.Helper()
	number := func(column string, otherwise float64) float64 {
		if r[column] == "" {
			return otherwise
		}
		x, err := strconv.ParseFloat(r[column], 64)
		require.NoError(t, err)
		return x
	}
	pH := number("ph", math.NaN())
	in := caution.Input{
		Rules: r["rules"], Name: "Small", ServingG: 100, ServingMl: 100, ServedAt: number("at", 0), ABV: number("abv", 0), Poured: map[food.ID]caution.Mass{},
		Parts: []caution.Part{{Vessel: r["vessel"], PHLow: pH, PHHigh: pH, PHRead: r["ph"] != ""}},
	}
	if r["step"] != "" {
		in.Parts[0].Steps = strings.Split(r["step"], " + ")
	}
	if r["technique"] != "" {
		in.Parts[0].Techniques = []string{r["technique"]}
	}
	for name := range strings.SplitSeq(r["food"], " + ") {
		if name == "" {
			continue
		}
		it := allergen.Item{Food: food.ID{Table: "own", Code: name}, Name: name, Group: r["group"], Own: r["own"] == "yes", Eaten: true}
		if r["marks"] != "" {
			it.Marks = []food.Mark{{Kind: "caution", Value: r["marks"]}}
		}
		in.Items = append(in.Items, it)
		grams := number("grams", 1)
		in.Poured[it.Food] = caution.Mass{Serving: grams, Batch: grams}
	}
	return in
}

// Each of the 114 hazards of the facts fires on its own food (in the words of five
// languages), step, technique, vessel or dose.
func TestEachHazardFires(t *testing.T) {
	fired := map[string]bool{}
	for _, r := range rowsOf(t, "testdata/fires.csv") {
		if r["hazard"] != "" { // else a row of our own
			fired[r["hazard"]] = true
		}
		assert.Contains(t, codes(small(t, r)), r["code"], "%v", r)
	}
	for _, r := range rowsOf(t, "../../data/cautions.csv") {
		for hazard := range strings.SplitSeq(r["hazard"], "|") {
			assert.True(t, hazard == "" || fired[hazard], "%s: nothing shows that it fires", hazard)
		}
	}
	assert.Len(t, fired, 114)
}

// What the names of the facts warn of: root beer is no beer, and slaked lime no fruit.
func TestTrapsInTheWordsDoNotFire(t *testing.T) {
	for _, r := range rowsOf(t, "testdata/silent.csv") {
		assert.NotContains(t, codes(small(t, r)), r["code"], "%v", r)
	}
}

// The rows of the table are those of the facts, where the facts are at hand.
func TestRowsAreTheHazardsOfTheFacts(t *testing.T) {
	shared := os.Getenv("SIPSUM_SHARED")
	if shared == "" {
		t.Skip("SIPSUM_SHARED is not set")
	}
	rows := rowsOf(t, "../../data/cautions.csv")
	for _, hazard := range rowsOf(t, filepath.Join(shared, "facts", "rules", "hazards.csv")) {
		i := slices.IndexFunc(rows, func(r map[string]string) bool {
			return slices.Contains(strings.Split(r["hazard"], "|"), hazard["code"])
		})
		if assert.GreaterOrEqual(t, i, 0, hazard["code"]) && hazard["status"] == "memory" {
			assert.Contains(t, rows[i]["source"], "from memory", hazard["code"])
		}
	}
}
