package data_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
)

// The tables of the preparation steps: every figure lies in its range and has a
// source; none is from memory.
func TestStepTablesAreSourced(t *testing.T) {
	for file, value := range map[string]string{
		"partition.csv": "share", "extraction.csv": "share", "kinetics.csv": "value", "minutes.csv": "value", "brewing.csv": "value", "phases.csv": "share", "heat_capacities.csv": "value",
	} {
		for _, r := range rows(t, file) {
			at := file + ": " + strings.Join([]string{r["group"], r["constituent"], r["by"], r["quantity"], r["name"], r["phase"], r["through"]}, " ")
			assert.NotEmpty(t, r["source"], at)
			assert.NotContains(t, r["source"], "from memory", at)
			if r[value] == "" || r[value] == "solute" || r[value] == "steeped" {
				assert.Empty(t, r["low"]+r["high"], at)
				continue
			}
			x := number(t, r, value)
			assert.LessOrEqual(t, number(t, r, "low"), x, at)
			assert.GreaterOrEqual(t, number(t, r, "high"), x, at)
			if use, marked := r["use"]; marked {
				assert.Contains(t, []string{"fit", "practice"}, use, at)
				assert.Equal(t, use == "practice", strings.Contains(r["source"], "no source"), "%s: practice is what has no source of its own", at)
			}
		}
	}
	for _, file := range []string{"curdling.csv", "curdling_proteins.csv", "curdling_foods.csv", "curdling_salts.csv", "solubility.csv", "fermentation.csv", "constants.csv", "vapour_ethanol.csv", "enzyme_foods.csv"} {
		for _, r := range rows(t, file) {
			assert.NotEmpty(t, r["source"], file)
		}
	}
}

// Each rule of a filter is of a class of foods that exists, of what was extracted, or of an
// agent that clarifies.
func TestFiltersNameGroups(t *testing.T) {
	groups := byKey(t, "groups.csv", "group")
	for _, r := range rows(t, "phases.csv") {
		if group := r["group"]; !slices.Contains([]string{"*", "extract", "agent"}, group) {
			assert.Contains(t, groups, group)
		}
		assert.Contains(t, []string{"*", "cloth", "paper", "metal", "sieve", "bag", "egg white", "gelatine", "agar", "centrifuge"}, r["through"])
		assert.Contains(t, []string{"suspended", "protein", "fat", "any"}, r["phase"])
	}
}

func TestStepTablesNameConstituents(t *testing.T) {
	for _, r := range rows(t, "heat_capacities.csv") {
		if name := r["constituent"]; name != "*" && name != "ice" {
			_, ok := constituent.Find(name)
			assert.True(t, ok, name)
		}
	}
	for _, r := range rows(t, "partition.csv") {
		_, ok := constituent.Find(r["constituent"])
		assert.True(t, ok, r["constituent"])
		assert.Contains(t, []string{"acid", "acid hot", "rennet", "*", "others"}, r["by"])
	}
	groups := byKey(t, "groups.csv", "group")
	for _, r := range rows(t, "extraction.csv") {
		if r["group"] != "*" {
			assert.Contains(t, groups, r["group"])
		}
		switch r["constituent"] {
		case "solids", "riders", "yield", "available":
		default:
			_, ok := constituent.Find(r["constituent"])
			assert.True(t, ok, r["constituent"])
		}
	}
}

// The equations of data/fermentation.csv balance: hexose and oxygen weigh as much
// as product, gas and water, by the atomic weights.
func TestFermentationsBalance(t *testing.T) {
	molar := func(formula string) float64 {
		m, err := constituent.MolarMass(formula)
		assert.NoError(t, err)
		return m
	}
	for _, r := range rows(t, "fermentation.csv") {
		in := number(t, r, "sugar")*molar("C6H12O6") + number(t, r, "oxygen")*molar("O2")
		out := constituent.Must(constituent.ID(r["product"])).Molar + number(t, r, "carbon_dioxide")*molar("CO2") + number(t, r, "water")*molar("H2O")
		assert.InDelta(t, in, out, 1e-6, r["equation"])
	}
}
