package nutritionclaim_test

import (
	"encoding/csv"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/constituent"
	"sipsum/internal/nutritionclaim"
)

// number reads a figure of a test row.
func number(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return x
}

// exactly is an amount without a spread.
func exactly(x float64) nutritionclaim.Figure {
	return nutritionclaim.Figure{Low: x, Mean: x, High: x, Most: x, Known: true}
}

// drink is one of which all is known: none of everything but of amounts, which are in so many
// ml; a ml weighs a gram, and that many ml are a serving.
func drink(rules string, ml float64, amounts map[constituent.ID]float64, foods ...nutritionclaim.Food) nutritionclaim.Input {
	in := nutritionclaim.Input{
		Rules: rules, ServingMl: ml, Strength: exactly(0), Foods: foods,
		Per100g: nutritionclaim.Amounts{}, Per100ml: nutritionclaim.Amounts{}, Serving: nutritionclaim.Amounts{},
	}
	for _, id := range append(nutritionclaim.Constituents(), constituent.Energy, constituent.EnergyKcal) {
		in.Per100g[id], in.Per100ml[id], in.Serving[id] = exactly(0), exactly(0), exactly(0)
	}
	for id, x := range amounts {
		set(in, id, exactly(x))
	}
	return in
}

// set puts a figure of a serving into a drink.
func set(in nutritionclaim.Input, id constituent.ID, f nutritionclaim.Figure) {
	in.Serving[id] = f
	f.Low, f.Mean, f.High, f.Most = f.Low*100/in.ServingMl, f.Mean*100/in.ServingMl, f.High*100/in.ServingMl, f.Most*100/in.ServingMl
	in.Per100g[id], in.Per100ml[id] = f, f
}

func judged(t *testing.T, in nutritionclaim.Input, name string) nutritionclaim.Claim {
	t.Helper()
	for _, c := range nutritionclaim.Judge(in) {
		if c.Name == name {
			return c
		}
	}
	require.Failf(t, "no such claim", "%s of %s", name, in.Rules)
	return nutritionclaim.Claim{}
}

func read(t *testing.T, records [][]string, err error) (rows []map[string]string) {
	t.Helper()
	require.NoError(t, err)
	for _, record := range records[1:] {
		row := map[string]string{}
		for i, column := range records[0] {
			row[column] = record[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func cases(t *testing.T) []map[string]string {
	t.Helper()
	file, err := os.Open("testdata/claims.csv")
	require.NoError(t, err)
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	return read(t, records, err)
}

func table(t *testing.T, name string) []map[string]string {
	t.Helper()
	file, err := data.FS.Open(name)
	require.NoError(t, err)
	defer file.Close()
	records, err := csv.NewReader(file).ReadAll()
	return read(t, records, err)
}

// inputOf makes the drink of a test row.
func inputOf(t *testing.T, rules string, row map[string]string) nutritionclaim.Input {
	t.Helper()
	amounts := map[constituent.ID]float64{}
	for part := range strings.FieldsSeq(row["amounts"]) {
		id, x, _ := strings.Cut(part, "=")
		amounts[constituent.Must(constituent.ID(id)).ID] = number(t, x)
	}
	var foods []nutritionclaim.Food
	if row["foods"] != "" {
		name, group, _ := strings.Cut(row["foods"], ":")
		foods = append(foods, nutritionclaim.Food{Name: name, Group: group})
	}
	in := drink(rules, number(t, row["ml"]), amounts, foods...)
	in.Strength = exactly(number(t, row["strength"]))
	return in
}

// Each condition of each claim lets pass what is just inside of it, and nothing just outside
// (testdata/claims.csv: figures of the regulations). What is of eu is of uk.
func TestEveryConditionAtItsLimit(t *testing.T) {
	tried := map[string]bool{}
	for _, row := range cases(t) {
		rules := []string{row["rules"]}
		if row["rules"] == "eu" {
			rules = append(rules, "uk")
		}
		for _, r := range rules {
			c := judged(t, inputOf(t, r, row), row["claim"])
			at := fmt.Sprintf("%s %s %s: %s %s: %s", r, c.Name, row["condition"], row["amounts"], row["foods"], c.Why)
			assert.Equal(t, row["allowed"] == "yes", c.Verdict == nutritionclaim.Allowed, at)
			assert.NotEmpty(t, row["source"], at)
			assert.NotEmpty(t, c.Why, at)
			assert.NotEmpty(t, c.Source, at)
			assert.Contains(t, []string{"verified", "secondary"}, c.Status, at)
			tried[r+" "+row["claim"]+" "+row["condition"]+" "+row["allowed"]] = true
		}
	}
	named := map[string]bool{} // these conditions refuse nothing: TestNamedIngredients
	for _, row := range table(t, "nutrition_claims.csv") {
		named[row["claim"]+row["is"]] = true
	}
	for _, r := range []string{"eu", "uk", "us"} {
		for _, name := range nutritionclaim.Names(r) {
			if strings.HasPrefix(name, "high ") && name != "high potassium" && name != "high fibre" && name != "high protein" {
				continue // the reference is tried by "source of", the limit by potassium
			}
			for i := range nutritionclaim.ConditionsOf(r, name) {
				if i == 1 && (named[name+"named"] || strings.HasPrefix(name, "good source of ") && name != "good source of potassium") {
					continue
				}
				for _, side := range []string{"yes", "no"} {
					assert.True(t, tried[fmt.Sprintf("%s %s %d %s", r, name, i+1, side)], "%s %s, condition %d: no case that says %s", r, name, i+1, side)
				}
			}
		}
	}
}
