package store_test

import (
	"encoding/csv"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/embedded"
	"sipsum/internal/food"
	"sipsum/internal/store"
)

// larder holds the foods of the core table by their names, and some invented ones of other scripts.
func larder(tb testing.TB) *store.DB {
	names := map[string][]string{}
	for _, row := range embedded.Rows("core/names.csv") {
		names[row.Text("code")] = append(names[row.Text("code")], row.Text("name"))
	}
	var foods []*food.Food
	for _, row := range embedded.Rows("core/foods.csv") {
		foods = append(foods, plain("core", row.Text("code"), append([]string{row.Text("name")}, names[row.Text("code")]...)...))
	}
	db := fresh(tb)
	load(tb, db, "core", "1", foods...)
	load(tb, db, "inv", "1",
		plain("inv", "lemon-ru", "Лимонный сок"), plain("inv", "sugar-ru", "Сахар"),
		plain("inv", "lemon-ja", "レモン果汁"), plain("inv", "orange-ja", "オレンジジュース"),
		plain("inv", "elder-de", "Holunderblütensirup", "sirop de sureau"), plain("inv", "elder", "Holundersaft"))
	return db
}

// Slips of our own invention, each beside what was meant: the code of a food, or how those of several begin. It is
// among the first five that are found. A search that compares whole words alone
// finds 50 of the 54: it lacks parts of compounds and beginnings with a slip.
func TestWhatWasMeantIsFound(t *testing.T) {
	db := larder(t)
	file, err := os.Open("testdata/misspelt.csv")
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	found := 0
	for _, row := range rows[1:] {
		hits, err := db.Find(t.Context(), store.Query{Words: row[0], Limit: 5})
		require.NoError(t, err)
		meant := false
		for _, h := range hits {
			meant = meant || strings.HasPrefix(h.ID.Code, row[1])
		}
		if assert.True(t, meant, "%s (%s): %s", row[0], row[2], ids(hits)) {
			found++
		}
	}
	t.Logf("%d of %d", found, len(rows)-1)
}
