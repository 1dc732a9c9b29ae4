package data_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/tables/core"
)

// Every fruit and juice of the core table has one kin, or none with a reason.
func TestEveryFruitHasItsKin(t *testing.T) {
	for code, f := range foodsOf(t, core.Format, "") {
		if !strings.Contains(f.Group, "fruit") && f.Group != "citrus juice" {
			continue
		}
		kin, ok := food.KinOf(f)
		if assert.True(t, ok, "%s: no row of kins.csv is its own: name it there, or say why there is none", code) && kin.Name == food.NoKin {
			assert.NotEmpty(t, kin.Note, code)
		}
	}
	for _, r := range rows(t, "kins.csv") {
		for code := range strings.FieldsSeq(r["foods"]) {
			assert.Contains(t, byKey(t, "core/foods.csv", "code"), code)
		}
		assert.Equal(t, r["kin"] == food.NoKin, r["rows"] == "", r["kin"])
	}
}

// The shares of a kin are at most all of it, and each row and source is named.
func TestSharesOfAKinAreAtMostOne(t *testing.T) {
	sum := map[string]float64{}
	for _, r := range rows(t, "kin_shares.csv") {
		sum[r["kin"]] += number(t, r, "share")
		assert.Equal(t, constituent.OrganicAcids, constituent.Must(constituent.ID(r["constituent"])).Parent, r["kin"])
		assert.NotEmpty(t, r["rows"], r["kin"])
		assert.NotEmpty(t, r["source"], r["kin"])
		assert.LessOrEqual(t, number(t, r, "low"), number(t, r, "high"), r["kin"])
	}
	for kin, all := range sum {
		assert.InDelta(t, 1, all, 0.001, kin)
	}
}

// Names of published tables, and names that only sound like a fruit.
func TestKinsByName(t *testing.T) {
	for _, c := range []struct{ group, name, kin string }{
		{"citrus juice", "Lime juice, raw", "acid citrus"},
		{"citrus juice", "（かんきつ類） ゆず 果汁 生", "acid citrus"},
		{"citrus fruit", "Orange, pulp, raw", "sweet citrus"},
		{"citrus juice", "Orange nectar", "none"},
		{"fruit", "Abricot, dénoyauté, cru", "apricot"},
		{"fruit", "Apricot, pitted, dried", "apricot, dried"},
		{"fruit", "Plums, dried (prunes), uncooked", "prune"},
		{"fruit", "Plums, raw", "plum"},
		{"fruit", "Strawberries, raw", "strawberry"},
		{"fruit", "Strawberry tree fruit, raw", ""},
		{"fruit", "Passion-fruit, (granadilla), purple, raw", "passion fruit"},
		{"fruit", "Grapes, red or green, raw", "grape"},
		{"citrus fruit", "Grapefruit, raw, pink and red", "sweet citrus"},
		{"fruit", "Grape leaves, raw", ""},
		{"fruit", "Pineapple, raw", "pineapple"},
		{"fruit", "Custard-apple, (bullock's-heart), raw", "custard apple"},
		{"fruit", "Prickly pears, raw", ""},
		{"fruit", "Melon, watermelon, peeled, raw", "watermelon"},
		{"fruit", "Melons, cantaloupe, raw", "melon"},
		{"fruit", "Gooseberries, raw", "Ribes"},
		{"fruit", "Groundcherries, (cape-gooseberries or poha), raw", "nightshade fruit"},
		{"fruit", "Currants, zante, dried", "grape"},
		{"fruit", "Himbeere, roh", "Rubus"},
		{"fruit", "Mûre (de ronce), crue", "Rubus"},
		{"fruit", "（もも類） もも 白肉種 生", "peach and nectarine"},
		{"fruit", "Acerola, (west indian cherry), raw", ""},
		{"fruit juice", "Apple and blackcurrant juice", ""}, // of two kins it is neither
		{"fruit juice", "Fruit juice (average)", "none"},
		{"other", "Apple pie", ""},
		{"", "Apple", ""},
	} {
		kin, ok := food.KinOf(&food.Food{ID: food.ID{Table: "sr", Code: "1"}, Group: c.group, Names: []food.Name{{Text: c.name}}})
		if assert.Equal(t, c.kin != "", ok, "%s", c.name) && ok {
			assert.Equal(t, c.kin, kin.Name, c.name)
		}
	}
}
