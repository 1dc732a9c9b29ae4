package store_test

import (
	"fmt"
	"path/filepath"
	"testing"

	"github.com/jmoiron/sqlx"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/store"
)

// oldFile makes a file as the first of the schemas had it, by its own statements.
func oldFile(t *testing.T, version int, rows string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "x.db")
	raw, err := sqlx.Open("sqlite", path)
	require.NoError(t, err)
	defer raw.Close()
	names := []string{"0001_tables.sql", "0002_runs.sql", "0003_one_text_a_food.sql"}
	for _, name := range names[:version] {
		text, err := store.MigrationsOnDisk.ReadFile("migrations/" + name)
		require.NoError(t, err)
		_, err = raw.Exec(string(text))
		require.NoError(t, err)
	}
	_, err = raw.Exec(fmt.Sprintf("PRAGMA journal_mode = WAL; PRAGMA user_version = %d; ", version) + rows)
	require.NoError(t, err)
	return path
}

// oldRelease is a release of two foods called Sugar.
func oldRelease(key int, id string) string {
	return fmt.Sprintf(`
		INSERT INTO release (key, table_id, format, title, edition, publisher, licence, citation, hash, foods, amounts, loaded_at, current)
			VALUES (%[1]d, '%[2]s', 'f', 't', 'e', 'p', 'l', 'c', 'h', 2, 0, '2026-03-01T11:00:00Z', 1);
		INSERT INTO food (key, release, code, our_group, publisher_group, density, density_sd, density_source, edible, chemical, note)
			VALUES (%[1]d*10, %[1]d, '2', '', '', NULL, NULL, '', NULL, 0, ''), (%[1]d*10+1, %[1]d, '1', 'juice', 'J', 1.3, NULL, 'w', 0.75, 1, 'n');
		INSERT INTO food_name (key, food, language, text) VALUES (%[1]d*10, %[1]d*10, 'en', 'Sugar'), (%[1]d*10+1, %[1]d*10+1, 'en', 'Sugar');
		INSERT INTO food_name_index (rowid, text) VALUES (%[1]d*10, 'Sugar'), (%[1]d*10+1, 'Sugar');`, key, id)
}

// A file of the first schema knows no runs; opening it finds them.
func TestAFileWithoutRunsLearnsThem(t *testing.T) {
	path := oldFile(t, 1, oldRelease(1, "zz")+oldRelease(2, "core")+oldRelease(3, "aa"))
	db := open(t, path)
	for _, id := range []string{"zz", "core", "aa"} {
		hits, err := db.Find(t.Context(), store.Query{Words: "sugar", Tables: []string{id}, Strict: true})
		require.NoError(t, err)
		assert.Equal(t, id+":2 "+id+":1", ids(hits))
	}
	require.NoError(t, db.Remove(t.Context(), "core"))
	hits, err := db.Find(t.Context(), store.Query{Words: "sugar"})
	require.NoError(t, err)
	assert.Equal(t, "aa:2 aa:1 zz:2 zz:1", ids(hits))
}

// A file with a row for each value becomes one with a text for each food, to the last bit.
func TestRowsOfValuesBecomeTexts(t *testing.T) {
	path := oldFile(t, 2, oldRelease(1, "inv")+`
		UPDATE release SET first_food = 10, last_food = 11;
		INSERT INTO constituent_key (key, id) VALUES (50, 'inv:2"5\7');
		INSERT INTO value (food, constituent, amount, sd, n, low, high, most, state, source, ref) VALUES
			(11, 1, 0.1, 0.30000000000000004, 7, 1e-300, 1e300, NULL, 0, 'w1', 'Table "2"'),
			(11, 14, NULL, NULL, 0, NULL, NULL, 0.05, 4, 'w1', ''),
			(11, 50, 2, NULL, 0, NULL, NULL, NULL, 1, '', 'x'),
			(10, 1, 0.2, NULL, 0, NULL, NULL, NULL, 1, 'w1', '');
		INSERT INTO portion (food, place, name, grams, sd) VALUES (11, 1, 'cup', 244.5, 2), (11, 0, 'fruit (2-1/8" dia)', 58, NULL);
		INSERT INTO food_mark (food, place, kind, mark, share, source) VALUES (11, 0, 'allergen', '', 0, 'w1'), (11, 1, 'caution', 'x', NULL, '');`)
	db := open(t, path)
	none := food.None
	got, err := db.Food(t.Context(), food.ID{Table: "inv", Code: "1"})
	require.NoError(t, err)
	want := []food.Value{
		{Constituent: "CITAC", Amount: 0.1, SD: 0.30000000000000004, N: 7, Low: 1e-300, High: 1e300, Limit: none, State: estimate.Measured, Source: "w1", Ref: `Table "2"`},
		{Constituent: "SUGAR", Amount: none, SD: none, Low: none, High: none, Limit: 0.05, State: estimate.Below, Source: "w1"},
		{Constituent: `inv:2"5\7`, Amount: 2, SD: none, Low: none, High: none, Limit: none, State: estimate.Calculated, Ref: "x"},
	}
	text := func(x any) string { return fmt.Sprintf("%#v", x) } // NaN is not equal to itself
	assert.Equal(t, text(want), text(got.Values))
	assert.Equal(t, text([]food.Portion{{Name: `fruit (2-1/8" dia)`, Grams: 58, SD: none}, {Name: "cup", Grams: 244.5, SD: 2}}), text(got.Portions))
	assert.Equal(t, text([]food.Mark{{Kind: "allergen", Source: "w1"}, {Kind: "caution", Value: "x", Share: none}}), text(got.Marks))
	bare, err := db.Food(t.Context(), food.ID{Table: "inv", Code: "2"})
	require.NoError(t, err)
	assert.Empty(t, bare.Portions)
	assert.Empty(t, bare.Marks)
	var ranked []string
	require.NoError(t, db.Rank(t.Context(), store.Ranking{Of: "CITAC"}, func(x store.Ranked) (bool, error) {
		ranked = append(ranked, fmt.Sprint(x.ID, " ", x.Figure))
		return true, nil
	}))
	assert.Equal(t, []string{"inv:2 0.2", "inv:1 0.1"}, ranked)
	require.NoError(t, db.Remove(t.Context(), "inv"))
	nothingLeft(t, db)
}

// The view shows to who asks by SQL what the program reads.
func TestTheViewOfValues(t *testing.T) {
	db := fresh(t)
	f := plain("inv", "1", "Syrup")
	f.Values[0].Source, f.Values[0].Ref, f.Values[0].N, f.Values[0].Line = "w1", "p. 7", 3, 1204
	load(t, db, "inv", "1", f)
	var row string
	require.NoError(t, db.Handle().Get(&row, `
		SELECT concat_ws('|', constituent, amount, state, source, ref, n, coalesce(sd, 'null'), coalesce(most, 'null'), line) FROM value`))
	assert.Equal(t, "WATER|90.0|0|w1|p. 7|3|null|null|1204", row)
	got, err := db.Food(t.Context(), f.ID)
	require.NoError(t, err)
	assert.Equal(t, 1204, got.Values[0].Line)
}

// A file whose search read the index of the names, and whose foods are ranked all together, finds and counts what
// one that is loaded anew does.
func TestAFileLearnsItsWordsAndStrata(t *testing.T) {
	path := oldFile(t, 3, oldRelease(1, "inv")+`
		UPDATE release SET first_food = 10, last_food = 11;
		UPDATE food SET our_group = 'syrup', note = 'Brand: Invented' || char(10) || 'GTIN: 00012345678905' || char(10) || 'Market: here' || char(10)
			|| 'Ingredients: WATER, AÇAÍ.' || char(10) || 'On 1008: see there' WHERE key = 10;
		UPDATE food SET facts = '{"MALAC":[2,0],"OA":[null,4,null,null,0,null,null,null,0.5],"titratable":[1.5,0],"BIOT":[1,0]}' WHERE key = 10;
		UPDATE food SET facts = '{"MALAC":[0,0],"OA":[null,5],"titratable":[null,3]}' WHERE key = 11;
		INSERT INTO ranked (constituent, amount, food) VALUES (2, 2, 10);
		INSERT INTO food_name (key, food, language, text) VALUES (12, 10, 'de', 'Größe 7up 12 12');
		INSERT INTO food_name_index (rowid, text) VALUES (12, 'Größe 7up 12 12');`)
	db := open(t, path)
	anew := fresh(t)
	value := func(id constituent.ID, amount, limit float64, state estimate.State) food.Value {
		return food.Value{Constituent: id, Amount: amount, SD: food.None, Low: food.None, High: food.None, Limit: limit, State: state}
	}
	none := food.None
	two, one := plain("inv", "2", "Sugar", "Größe 7up 12 12"), plain("inv", "1", "Sugar")
	two.Group, two.Article, two.Declared = "syrup", "00012345678905", "WATER, AÇAÍ."
	two.Values = []food.Value{value("MALAC", 2, none, estimate.Measured), value("OA", none, 0.5, estimate.Below), value("titratable", 1.5, none, estimate.Measured), value("BIOT", 1, none, estimate.Measured)}
	one.Group = "juice"
	one.Values = []food.Value{value("MALAC", 0, none, estimate.Measured), value("OA", none, none, estimate.Unknown), value("titratable", none, none, estimate.Trace)}
	load(t, anew, "inv", "1", two, one)
	for _, query := range []string{
		"SELECT concat_ws('|', letters, words) FROM vocabulary ORDER BY letters",
		"SELECT concat_ws('|', our_group, constituent, some, none) FROM stratum ORDER BY our_group, constituent",
		"SELECT concat_ws('|', s.our_group, s.constituent, v.amount, f.code) FROM ranked v JOIN stratum s ON s.key = v.stratum JOIN food f ON f.key = v.food ORDER BY 1",
		"SELECT concat_ws('|', c.text, f.code) FROM called c JOIN food_name n ON n.key = c.name JOIN food f ON f.key = n.food ORDER BY 1",
	} {
		var got, want []string
		require.NoError(t, db.Handle().Select(&got, query))
		require.NoError(t, anew.Handle().Select(&want, query))
		require.NotEmpty(t, want)
		assert.Equal(t, want, got, query)
	}
	for _, words := range []string{"12345678905", "acai", "sugra", "gros", "see"} {
		got, err := db.Find(t.Context(), store.Query{Words: words})
		require.NoError(t, err)
		want, err := anew.Find(t.Context(), store.Query{Words: words})
		require.NoError(t, err)
		assert.Equal(t, want, got, words)
	}
	require.NoError(t, db.Remove(t.Context(), "inv"))
	nothingLeft(t, db)
}

// What kin share out is looked up among the ranks.
func TestWhatKinSplitIsRanked(t *testing.T) {
	db := fresh(t)
	for _, id := range food.Splittable() {
		var n int
		require.NoError(t, db.Handle().Get(&n, "SELECT count(*) FROM constituent_key WHERE id = ?", string(id)))
		assert.Equal(t, 1, n, string(id))
	}
}
