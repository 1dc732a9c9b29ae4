package allergen_test

import (
	"encoding/csv"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/allergen"
	"sipsum/internal/food"
)

// sets are the sets of rules with a column of their own; that of the United Kingdom has the
// classes of the European Union.
var sets = map[string]string{"eu": "eu", "uk": "eu", "us": "us", "ca": "ca", "anz": "anz", "codex": "codex"}

// rowsOf reads a table of testdata/allergens.
func rowsOf(t *testing.T, name string) []map[string]string {
	t.Helper()
	file, err := os.Open("../../testdata/allergens/" + name)
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

// published reads a table of cases, each with its source.
func published(t *testing.T, name string) []map[string]string {
	t.Helper()
	cases := rowsOf(t, name)
	for _, c := range cases {
		assert.NotEmpty(t, c["source"], c["food"])
	}
	return cases
}

// coreItems gives every food of the core table, with all its names and marks.
func coreItems(t *testing.T) map[string]allergen.Item {
	t.Helper()
	items := map[string]allergen.Item{}
	for _, row := range rows(t, "core/foods.csv") {
		items[row["code"]] = allergen.Item{
			Food: food.ID{Table: "core", Code: row["code"]}, Name: row["name"], Group: row["group"],
			Chemical: row["use"] == "chemical", Eaten: true,
		}
	}
	for _, row := range rows(t, "core/names.csv") {
		it := items[row["code"]]
		it.Names = append(it.Names, row["name"])
		items[row["code"]] = it
	}
	for _, row := range rows(t, "core/marks.csv") {
		it := items[row["code"]]
		it.Marks = append(it.Marks, food.Mark{Kind: row["kind"], Value: row["value"]})
		items[row["code"]] = it
	}
	return items
}

func ownItem(name string) allergen.Item {
	return allergen.Item{Food: food.ID{Table: "own", Code: "x"}, Name: name, Own: true, Eaten: true}
}

// classesSaid lists the classes that are declared, and those that a question names. That nobody has
// assessed a food of a bar's own says nothing of any one class.
func classesSaid(d allergen.Declaration) (list []string) {
	for _, c := range allergen.Classes(d.Rules) {
		bare := d
		bare.Check = slices.DeleteFunc(slices.Clone(d.Check), func(c allergen.Check) bool { return c.Code == allergen.CheckNotAssessed })
		if bare.State(c.Code) != allergen.StateNoneFound {
			list = append(list, c.Code)
		}
	}
	return list
}

// What each set of rules names is declared, or asked for, whether the food is one of the core
// table or known by its name alone: no miss.
func TestWhatTheRulesNameIsNeverMissed(t *testing.T) {
	core := coreItems(t)
	for _, table := range []string{"core.csv", "own.csv"} {
		cases := published(t, table)
		require.GreaterOrEqual(t, len(cases), 60, table)
		for _, c := range cases {
			it, found := core[c["food"]]
			require.Equal(t, table == "core.csv", found, c["food"])
			if !found {
				it = ownItem(c["food"])
			}
			for rules, column := range sets {
				have := classesSaid(declare(t, rules, it))
				for want := range strings.FieldsFuncSeq(c[column], func(r rune) bool { return r == '|' }) {
					assert.Contains(t, have, want, "%s under %s: %s", c["food"], rules, c["source"])
				}
			}
		}
	}
}

// mostFalse is the share of clean foods that may be suspected of something: our own bound, so
// that a warning still means something.
const mostFalse = 0.05

// Foods that no set of rules names are not declared, and nothing is asked of them.
func TestCleanFoodsRaiseNoAlarm(t *testing.T) {
	core := coreItems(t)
	cases := published(t, "clean.csv")
	require.GreaterOrEqual(t, len(cases), 60)
	var alarms []string
	for _, c := range cases {
		it := ownItem(c["food"])
		if code, ok := strings.CutPrefix(c["food"], "core:"); ok {
			require.Contains(t, core, code)
			it = core[code]
		}
		for rules := range sets {
			if have := classesSaid(declare(t, rules, it)); len(have) > 0 {
				alarms = append(alarms, c["food"]+": "+strings.Join(have, ", "))
				break
			}
		}
	}
	t.Logf("%d of %d clean foods raise an alarm: %v", len(alarms), len(cases), alarms)
	assert.LessOrEqual(t, float64(len(alarms)), mostFalse*float64(len(cases)))
}
