package store_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/store"
)

// pantry holds invented tables to search in.
func pantry(t *testing.T) *store.DB {
	db := fresh(t)
	load(t, db, "sr", "1",
		plain("sr", "09152", "Lemon juice, raw"), plain("sr", "09153", "Lemon juice from concentrate, bottled"), plain("sr", "09150", "Lemons, raw, without peel"),
		plain("sr", "01049", "Cream, half-and-half"), plain("sr", "11979", "Peppers, jalapeño, raw"), plain("sr", "14209", "Coffee, brewed"), plain("sr", "09160", "Lime juice, raw"))
	load(t, db, "ifct", "1", plain("ifct", "E032", "Lemon, juice", "Nimbu"), plain("ifct", "E033", "Lime, sweet"))
	load(t, db, "core", "1", plain("core", "lemon-juice", "Lemon juice", "jus de citron", "Zitronensaft"), plain("core", "coffee-espresso", "Espresso coffee", "café serré"),
		plain("core", "quoted", `Syrup "AND" NEAR(x)`), plain("core", "lemon-flesh", "Lemon flesh"))
	return db
}

func ids(hits []store.Hit) string {
	var all []string
	for _, h := range hits {
		all = append(all, h.ID.String())
	}
	return strings.Join(all, " ")
}

// A table's names are a run of keys: that of a table without names is empty, and a
// table that is loaded again has another.
func TestFindKeepsToItsTables(t *testing.T) {
	db := pantry(t)
	nameless := plain("own", "x", "")
	nameless.Names = nil
	load(t, db, "own", "1", nameless)
	load(t, db, "sr", "2", plain("sr", "09152", "Lemon juice, raw"), plain("sr", "09999", "Lemon juice, frozen"))
	for _, c := range []struct {
		tables []string
		want   string
	}{
		{[]string{"own"}, ""},
		{[]string{"sr"}, "sr:09152 sr:09999"},
		{[]string{"ifct", "own", "sr"}, "ifct:E032 sr:09152 sr:09999"},
	} {
		hits, err := db.Find(t.Context(), store.Query{Words: "lemon juice", Tables: c.tables, Strict: true})
		require.NoError(t, err)
		assert.Equal(t, c.want, ids(hits), "%v", c.tables)
	}
}

func TestFind(t *testing.T) {
	db := pantry(t)
	for _, c := range []struct {
		why  string
		q    store.Query
		want string
		near bool
	}{
		{"all words, core before others, shorter first", store.Query{Words: "lemon juice"}, "core:lemon-juice ifct:E032 sr:09152 sr:09153", false},
		{"beginnings, any order, any case", store.Query{Words: "JUI lem"}, "core:lemon-juice ifct:E032 sr:09152 sr:09153", false},
		{"limit", store.Query{Words: "lemon juice", Limit: 2}, "core:lemon-juice ifct:E032", false},
		{"only these tables, in their order", store.Query{Words: "lemon juice", Tables: []string{"sr", "ifct"}}, "sr:09152 sr:09153 ifct:E032", false},
		{"without an accent", store.Query{Words: "jalapeno"}, "sr:11979", false},
		{"with an accent too many", store.Query{Words: "cofféé"}, "core:coffee-espresso sr:14209", false},
		{"another language", store.Query{Words: "citron"}, "core:lemon-juice", false},
		{"hyphens", store.Query{Words: "half-and-half cream"}, "sr:01049", false},
		{"syntax of the index has no meaning", store.Query{Words: `"AND" NEAR(x) * ^`}, "core:quoted", false},
		{"no letters", store.Query{Words: " -- * \x00 ' "}, "", false},
		{"a slip", store.Query{Words: "lemno juice"}, "core:lemon-juice ifct:E032 sr:09152 sr:09153", true},
		{"one slip is allowed in a short word", store.Query{Words: "lmie"}, "ifct:E033 sr:09160", true},
		{"some of the words, most first", store.Query{Words: "lime espresso coffee"}, "core:coffee-espresso ifct:E033 sr:14209 sr:09160", true},
		{"no near misses", store.Query{Words: "lemno juice", Strict: true}, "", false},
		{"nothing is near", store.Query{Words: "xylophone"}, "", true},
	} {
		hits, err := db.Find(t.Context(), c.q)
		require.NoError(t, err, c.why)
		assert.Equal(t, c.want, ids(hits), c.why)
		for _, h := range hits {
			assert.Equal(t, c.near, h.Near, c.why)
		}
	}
}

func TestTablesInTheOrderAskedForBreakTies(t *testing.T) {
	db := fresh(t)
	for _, id := range []string{"zz", "core", "aa"} {
		load(t, db, id, "1", plain(id, "2", "Sugar"), plain(id, "1", "Sugar"))
	}
	for want, tables := range map[string][]string{
		"core:2 core:1 aa:2 aa:1 zz:2 zz:1": nil,
		"zz:2 zz:1 core:2 core:1":           {"zz", "core"},
	} {
		hits, err := db.Find(t.Context(), store.Query{Words: "sugar", Tables: tables})
		require.NoError(t, err)
		assert.Equal(t, want, ids(hits))
	}
}

func TestFindGivesTheNameAndWhatMatched(t *testing.T) {
	hits, err := pantry(t).Find(t.Context(), store.Query{Words: "zitro"})
	require.NoError(t, err)
	assert.Equal(t, []store.Hit{{ID: food.ID{Table: "core", Code: "lemon-juice"}, Name: "Lemon juice", Matched: "Zitronensaft"}}, hits)
}

func TestFindRefuses(t *testing.T) {
	db := pantry(t)
	_, err := db.Find(t.Context(), store.Query{Words: "lemon", Tables: []string{"core", "ciqual"}})
	assert.Equal(t, fail.NeedsTable, fail.ExitCode(err))
	_, err = db.Find(t.Context(), store.Query{Words: strings.Repeat("lemon ", 10000)})
	assert.Equal(t, fail.Wrong, fail.ExitCode(err))
}

func TestRemovedTablesAreNotFound(t *testing.T) {
	db := pantry(t)
	require.NoError(t, db.Remove(t.Context(), "sr"))
	hits, err := db.Find(t.Context(), store.Query{Words: "lemon juice"})
	require.NoError(t, err)
	assert.Equal(t, "core:lemon-juice ifct:E032", ids(hits))
}

// A food that is found by its words and by a slip is offered once.
func TestNearOffersAFoodOnce(t *testing.T) {
	db := fresh(t)
	load(t, db, "core", "1", plain("core", "gelatin", "Gelatin, dry", "Gelatine"))
	hits, err := db.Near(t.Context(), "core:gelatine", 3)
	require.NoError(t, err)
	assert.Equal(t, "core:gelatin", ids(hits))
}

func TestNear(t *testing.T) {
	db := pantry(t)
	for text, want := range map[string]string{
		"sr:9152":            "sr:09152", // one digit is left out
		"sr:09151":           "sr:09152 sr:09153 sr:09150",
		"core:lemonjuice":    "core:lemon-juice",
		"core:juice-lemon":   "core:lemon-juice",
		"core:juice":         "core:lemon-juice", // a word of the code
		"core:lemon juice":   "core:lemon-juice",
		"Core:Lemon-Juice":   "core:lemon-juice",
		"core:zzz":           "",
		"ciqual:lemon-juice": "",
		"Lemn juice":         "core:lemon-juice ifct:E032 sr:09152",
		"":                   "",
		":":                  "",
	} {
		hits, err := db.Near(t.Context(), text, 3)
		require.NoError(t, err)
		assert.Equal(t, want, ids(hits), text)
		for _, h := range hits {
			assert.True(t, h.Near)
		}
	}
}

// A word of a name says more than the letters of a code.
func TestNearPutsWordsBeforeSlips(t *testing.T) {
	db := fresh(t)
	load(t, db, "core", "1", plain("core", "watter", "Date"), plain("core", "a-1", "Water, tap"), plain("core", "soda-water", "Soda"), plain("core", "b", "Walter's ale"))
	hits, err := db.Near(t.Context(), "core:water", 5)
	require.NoError(t, err)
	assert.Equal(t, "core:soda-water core:a-1 core:watter", ids(hits))
	load(t, db, "sr", "1", plain("sr", "1", "Lemongrass"), plain("sr", "2", "Juice of the lemon, fresh"))
	hits, err = db.Find(t.Context(), store.Query{Words: "lemon"})
	require.NoError(t, err)
	assert.Equal(t, "sr:2 sr:1", ids(hits), "a whole word before the beginning of one, however long the name")
}

func FuzzFind(f *testing.F) {
	for _, words := range []string{"lemon", `"`, `a" OR "b`, "*", "NEAR(", "{x}:y", "-x", "\x00", "\xff\xfe", "ﬁ", "नींबू रस", "レモン"} {
		f.Add(words)
	}
	db := fresh(f)
	load(f, db, "core", "1", plain("core", "lemon-juice", "Lemon juice", "नींबू रस", "レモン"))
	f.Fuzz(func(t *testing.T, words string) {
		if _, err := db.Find(t.Context(), store.Query{Words: words}); err != nil {
			assert.Equal(t, fail.Wrong, fail.ExitCode(err), "%q: %v", words, err)
		}
		_, err := db.Near(t.Context(), words, 3)
		assert.NotEqual(t, fail.Failed, fail.ExitCode(err), "%q: %v", words, err)
	})
}

// A table with many names does not hide those of one that was loaded after it.
func TestManyNamesHideNoTable(t *testing.T) {
	db := fresh(t)
	crowd := make([]*food.Food, 5001)
	for i := range crowd {
		crowd[i] = plain("aa", fmt.Sprint(i), "Sugar")
	}
	load(t, db, "aa", "1", crowd...)
	load(t, db, "core", "1", plain("core", "x", "Sugar, white"))
	hits, err := db.Find(t.Context(), store.Query{Words: "sugar", Limit: 2})
	require.NoError(t, err)
	assert.Equal(t, "core:x aa:0", ids(hits))
}
