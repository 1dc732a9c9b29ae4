package store_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/food"
	"sipsum/internal/store"
)

// packed is an invented food with a label.
func packed(code, name, article, declared string) *food.Food {
	f := plain("packs", code, name)
	f.Article, f.Declared = article, declared
	return f
}

func TestFindReadsLabels(t *testing.T) {
	db := pantry(t)
	packs := func(hash string) {
		juice := packed("3", "JUICE DRINK", "00000000012348", "WATER, SUGAR, ACEROLA.")
		juice.Group = "soft drink"
		load(t, db, "packs", hash,
			packed("1", "OAT DRINK, sour", "00012345678905", "WATER, OATS (10 %),\nMALIC ACID, XANTHAN-GUM"), packed("2", "SOUR CHEWS", "05012345678900", "Sugar, malic acid, açaí"),
			juice, plain("packs", "4", "Malice"))
	}
	packs("1")
	for _, c := range []struct {
		q     store.Query
		want  string
		label bool
	}{
		{store.Query{Words: "12345678905"}, "packs:1", true}, // zeros left out, as copies do
		{store.Query{Words: "012345678905", Strict: true}, "packs:1", true},
		{store.Query{Words: "5012345678900"}, "packs:2", true},
		{store.Query{Words: "00012348"}, "packs:3", true},
		{store.Query{Words: "5012345678900", Tables: []string{"sr"}}, "", true},
		{store.Query{Words: "malic"}, "packs:4", false}, // a name comes before any label
		{store.Query{Words: "acid malic"}, "packs:1 packs:2", true},
		{store.Query{Words: "malic acid", Limit: 1}, "packs:1", true},
		{store.Query{Words: "chews malic"}, "packs:2", true}, // some in the name, some on the label
		{store.Query{Words: "acai"}, "packs:2", true},
		{store.Query{Words: "xanthan gum"}, "packs:1", true},
		{store.Query{Words: "XANTHAN-GUM"}, "packs:1", true},
		{store.Query{Words: "acerola", Groups: []string{"soft drink"}}, "packs:3", true},
		{store.Query{Words: "acerola", Groups: []string{"fruit"}}, "", true},
		{store.Query{Words: "acerola", Strict: true}, "", true},
		{store.Query{Words: `acerola" OR "water`}, "", true},
	} {
		hits, err := db.Find(t.Context(), c.q)
		require.NoError(t, err)
		assert.Equal(t, c.want, ids(hits), "%+v", c.q)
		for _, h := range hits {
			assert.Equal(t, c.label, h.Label, "%+v", c.q)
			assert.False(t, h.Near)
		}
	}
	packs("2") // what is loaded again is found once
	hits, err := db.Find(t.Context(), store.Query{Words: "acerola"})
	require.NoError(t, err)
	assert.Equal(t, "packs:3", ids(hits))
	require.NoError(t, db.Remove(t.Context(), "packs"))
	nothingLeft(t, db)
}
