package caution_test

import (
	"flag"
	"maps"
	"os"
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

var update = flag.Bool("update", false, "rewrite the table of alarms: judge each by hand before it is committed")

// alarms is which core foods each caution fires on, by their names, groups and marks, under
// all rules: what an amount decides is not in it.
const alarms = "testdata/core_alarms.csv"

// Each caution fires on no core food that it does not mean: the expected alarms are judged
// by hand, and a new one fails.
func TestAlarmsOverAllCoreFoods(t *testing.T) {
	byCode := map[string][]string{}
	foods := coreItems(t)
	for _, it := range foods {
		in := caution.Input{Name: "Alone", Items: []allergen.Item{it}, ServingG: 100, ServingMl: 100, Poured: map[food.ID]caution.Mass{it.Food: {Serving: 100, Batch: 100}}}
		looked := caution.Look(in)
		for _, rules := range []string{"eu", "uk", "us", "ca", "anz", "codex"} {
			for _, c := range looked.Under(rules) {
				if !slices.Contains(byCode[c.Code], it.Food.Code) {
					byCode[c.Code] = append(byCode[c.Code], it.Food.Code)
				}
			}
		}
	}
	var text strings.Builder
	text.WriteString("caution,count,foods\n")
	total := 0
	for _, code := range slices.Sorted(maps.Keys(byCode)) {
		total += len(byCode[code])
		text.WriteString(strings.Join([]string{code, strconv.Itoa(len(byCode[code])), strings.Join(byCode[code], " ")}, ",") + "\n")
	}
	t.Logf("%d alarms of %d cautions over %d core foods", total, len(byCode), len(foods))
	if *update {
		require.NoError(t, os.WriteFile(alarms, []byte(text.String()), 0o644))
	}
	want, err := os.ReadFile(alarms)
	require.NoError(t, err)
	assert.Equal(t, string(want), text.String())
}

// coreItems gives every food of the core table as a drink of it alone has it.
func coreItems(t *testing.T) []allergen.Item {
	t.Helper()
	marks, names := map[string][]food.Mark{}, map[string][]string{}
	for _, row := range rowsOf(t, "../../data/core/marks.csv") {
		marks[row["code"]] = append(marks[row["code"]], food.Mark{Kind: row["kind"], Value: row["value"]})
	}
	for _, row := range rowsOf(t, "../../data/core/names.csv") {
		names[row["code"]] = append(names[row["code"]], row["name"])
	}
	var items []allergen.Item
	for _, row := range rowsOf(t, "../../data/core/foods.csv") {
		items = append(items, allergen.Item{
			Food: food.ID{Table: "core", Code: row["code"]}, Name: row["name"], Names: names[row["code"]], Group: row["group"], Marks: marks[row["code"]], Eaten: true,
		})
	}
	require.Greater(t, len(items), 600)
	return items
}
