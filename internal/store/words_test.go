package store_test

import (
	"fmt"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/food"
	"sipsum/internal/store"
)

// indexed gives the words of the names as the index itself has them.
const indexed = `
	CREATE VIRTUAL TABLE temp.word_of_name USING fts5vocab (main, food_name_index, 'instance');
	CREATE TEMP VIEW indexed AS
		SELECT f.release, length(term) AS letters, group_concat(char(10) || term || ' ' || names, '' ORDER BY term) || char(10) AS words FROM (
			SELECT f.release, w.term, count(DISTINCT w.doc) AS names
			FROM temp.word_of_name w CROSS JOIN main.food_name n ON n.key = w.doc CROSS JOIN main.food f ON f.key = n.food
			WHERE w.term GLOB '*[^0-9]*' GROUP BY f.release, w.term) f GROUP BY f.release, length(term)`

// The words that a load gathers are those of FTS5's own tokeniser, which are what a search can find: in the names of
// the core table, and in each letter and accent of the alphabets of Europe, of kana and some Han.
func TestTheWordsOfALoadAreThoseOfTheIndex(t *testing.T) {
	db := larder(t)
	var letters []*food.Food
	for _, block := range [][2]rune{{0x20, 0x17e}, {0x180, 0x24f}, {0x386, 0x3ce}, {0x400, 0x45f}, {0x1e00, 0x1e99}, {0x1ea0, 0x1ef9}, {0x3041, 0x3096}, {0x30a1, 0x30fa}, {0x4e00, 0x4e50}, {0x300, 0x304}} {
		for r := block[0]; r <= block[1]; r++ {
			if r == 'Ǡ' || r == 'ǡ' || !unicode.IsPrint(r) || unicode.In(r, unicode.So) { // the first two have two accents in the index
				continue
			}
			letters = append(letters, plain("letters", fmt.Sprintf("%U", r), fmt.Sprintf("q%[1]cz 7%[1]c 7 12", r)))
		}
	}
	load(t, db, "letters", "1", letters...)
	handle := db.Handle()
	handle.SetMaxOpenConns(1)
	_, err := handle.Exec(indexed)
	require.NoError(t, err)
	type list struct {
		Release, Letters int
		Words            string
	}
	var got, want []list
	require.NoError(t, handle.Select(&got, "SELECT release, letters, words FROM vocabulary ORDER BY release, letters"))
	require.NoError(t, handle.Select(&want, "SELECT release, letters, words FROM indexed ORDER BY release, letters"))
	require.NotEmpty(t, want)
	require.Len(t, got, len(want))
	for i := range want {
		assert.Equal(t, strings.Fields(want[i].Words), strings.Fields(got[i].Words), "release %d, %d letters", want[i].Release, want[i].Letters)
	}
}

// A word of a table that is not asked for, or not there any more, corrects nothing.
func TestSlipsAreOfTheTablesAskedFor(t *testing.T) {
	db := fresh(t)
	load(t, db, "aa", "1", plain("aa", "1", "Quince"))
	load(t, db, "bb", "1", plain("bb", "1", "Quinze"))
	hits, err := db.Find(t.Context(), store.Query{Words: "quincx", Tables: []string{"bb"}})
	require.NoError(t, err)
	assert.Equal(t, "bb:1", ids(hits))
	require.NoError(t, db.Remove(t.Context(), "aa"))
	hits, err = db.Find(t.Context(), store.Query{Words: "quincx"})
	require.NoError(t, err)
	assert.Equal(t, "bb:1", ids(hits))
}

// The beginning of hundreds of words is looked up as a beginning, and finds no less.
func TestABeginningOfManyWords(t *testing.T) {
	db := fresh(t)
	var foods []*food.Food
	for i := range 300 {
		foods = append(foods, plain("aa", fmt.Sprint(i), fmt.Sprintf("Syrup ma%c%c", 'a'+i/26, 'a'+i%26)))
	}
	load(t, db, "aa", "1", foods...)
	for words, want := range map[string]int{"ma": 300, "maa": 26, "maab": 1} {
		hits, err := db.Find(t.Context(), store.Query{Words: words, Limit: 1000})
		require.NoError(t, err)
		assert.Len(t, hits, want, words)
		assert.False(t, hits[0].Near)
	}
}
