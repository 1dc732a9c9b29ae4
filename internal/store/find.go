package store

import (
	"context"
	"database/sql"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"github.com/jmoiron/sqlx"

	"sipsum/internal/fail"
	"sipsum/internal/food"
)

// Query asks for foods by words.
type Query struct {
	Words  string   // words or their beginnings, in any order
	Tables []string // only these, in this order of preference; none means all loaded tables
	Groups []string // only these food groups; none means all
	Limit  int      // the most hits wanted; 0 means 20
	Strict bool     // no near misses, which take longer to find
}

// Hit is a food that was found.
type Hit struct {
	ID      food.ID
	Name    string // the one to print
	Matched string // the name that was found; another language or a synonym if it is not Name
	Near    bool   // no name has all the words: this is the nearest there is
	Label   bool   // no name has all the words, and the label of this food does
}

// The bounds of a query.
const (
	usualLimit = 20
	mostWords  = 32

	// mostRanked is how many names of a table an expression may bring into the
	// ranking, in the publisher's order: the beginning of a word that half a million
	// names have ranks nothing worth the wait.
	mostRanked = "5000"

	// mostParts is how many parts a query may be put together from, expressions
	// times tables; SQLite allows 500.
	mostParts = 480
)

// Find gives foods whose names have all the words, else near misses, the best
// first; see the package's Finding. No words, no hits.
func (db *DB) Find(ctx context.Context, q Query) ([]Hit, error) {
	words := wordsOf(q.Words)
	switch {
	case len(words) == 0:
		return nil, nil
	case len(words) > mostWords:
		return nil, fail.New(fail.Wrong, fmt.Sprintf("%d words are too many to search for", len(words)), fmt.Sprintf("give at most %d", mostWords))
	}
	if q.Limit <= 0 {
		q.Limit = usualLimit
	}
	var hits []Hit
	err := db.read(ctx, func(tx *sqlx.Tx) (err error) {
		for _, table := range q.Tables {
			if _, err := currentOf(ctx, tx, table); err != nil {
				return err
			}
		}
		hits, err = find(ctx, tx, q, words)
		return err
	})
	return hits, db.explain(ctx, err, "cannot search")
}

func find(ctx context.Context, tx *sqlx.Tx, q Query, words []string) ([]Hit, error) {
	known, err := knownWords(ctx, tx, q.Tables)
	if err != nil {
		return nil, err
	}
	if number, ok := article(words); ok {
		if hits, err := onLabels(ctx, tx, q, []string{number}); err != nil || len(hits) > 0 {
			return hits, err
		}
	}
	starts, whole := make([]string, len(words)), make([]string, len(words))
	for i, w := range words {
		starts[i], whole[i] = known.startOf(w), quoted(w)
	}
	hits, err := search(ctx, tx, q, []string{strings.Join(starts, " AND "), strings.Join(whole, " AND ")}) // whole words count twice
	if err != nil || len(hits) > 0 || q.Strict {
		return hits, err
	}
	if hits, err = onLabels(ctx, tx, q, tokens(strings.Join(words, " "))); err != nil || len(hits) > 0 {
		return hits, err
	}
	corrected := known.correct(words)
	if len(corrected) == 0 {
		return nil, nil
	}
	hits, err = search(ctx, tx, q, []string{strings.Join(corrected, " AND ")})
	if err == nil && len(hits) == 0 {
		hits, err = search(ctx, tx, q, corrected)
	}
	for i := range hits {
		hits[i].Near = true
	}
	return hits, err
}

// wordsOf splits at blanks and control characters and leaves out what has no
// letter and no digit. Names and words are hostile: the index's own tokeniser
// splits each word further, so punctuation has no meaning anywhere.
func wordsOf(text string) []string {
	words := strings.FieldsFunc(text, func(r rune) bool { return unicode.IsSpace(r) || unicode.IsControl(r) })
	return slices.DeleteFunc(words, func(w string) bool {
		return !strings.ContainsFunc(w, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsNumber(r) })
	})
}

func quoted(word string) string { return `"` + strings.ReplaceAll(word, `"`, `""`) + `"` }

// search ranks the foods that match any of the FTS5 expressions: those that
// match more of them first, then by table (the core table, or the order asked
// for), then shorter names, then the publisher's order.
func search(ctx context.Context, tx *sqlx.Tx, q Query, expressions []string) ([]Hit, error) {
	runs, err := namesOf(ctx, tx, q.Tables)
	if err != nil || len(runs) == 0 {
		return nil, err
	}
	text, args := q.ranking(runs, expressions[:min(len(expressions), max(mostParts/len(runs), 1))])
	// A food is ranked by its best name; SQLite takes the other columns of a
	// group from the row with the least rank. A matched expression outweighs
	// any length of a name.
	rows, err := tx.QueryContext(ctx, `
		SELECT r.table_id, f.code, (SELECT text FROM food_name WHERE food = f.key ORDER BY key LIMIT 1), matched
		FROM (`+text+`) AS found CROSS JOIN food f ON f.key = found.food CROSS JOIN release r ON r.key = f.release ORDER BY `+bestFirst, args...)
	if err != nil {
		return nil, err
	}
	return hitsOf(rows)
}

// hitsOf reads hits: table, code, name and what was found.
func hitsOf(rows *sql.Rows) (hits []Hit, err error) {
	defer rows.Close()
	for rows.Next() {
		var h Hit
		if err := rows.Scan(&h.ID.Table, &h.ID.Code, &h.Name, &h.Matched); err != nil {
			return nil, err
		}
		hits = append(hits, h)
	}
	return hits, rows.Err()
}

// ranking is the SQL that ranks the names of some tables: the foods, the name of each that was found, and its place.
// CROSS JOIN keeps the order of the joins: from the index's few names on.
func (q Query) ranking(runs []run, expressions []string) (text string, args []any) {
	limit, join := " LIMIT "+mostRanked, ""
	if len(q.Groups) > 0 { // the first names may all be of other groups
		of := in("f.our_group", q.Groups)
		limit, join = "", " CROSS JOIN food f ON f.key = n.food AND "+of.text
		defer func() { args = append(args, append(of.args, q.Limit)...) }()
	} else {
		defer func() { args = append(args, q.Limit) }()
	}
	var each []string
	for _, e := range expressions {
		for i, run := range runs {
			each = append(each, fmt.Sprintf(`SELECT * FROM (SELECT rowid AS name, %d AS preferred, %d AS "table" FROM food_name_index
				WHERE food_name_index MATCH ? AND rowid BETWEEN ? AND ?%s)`, q.preference(run.Table), i, limit))
			args = append(args, e, run.First, run.Last)
		}
	}
	return `SELECT n.food, n.text AS matched, w.preferred, w."table", min(length(n.text) - 1e6 * w.expressions) AS rank
		FROM (SELECT name, preferred, "table", count(*) AS expressions FROM (` + strings.Join(each, " UNION ALL ") + `) GROUP BY name) w
		CROSS JOIN food_name n ON n.key = w.name` + join + " GROUP BY n.food ORDER BY " + bestFirst + " LIMIT ?", args
}

// bestFirst is the order of the foods of a ranking.
const bestFirst = `round(rank / 1e6), preferred, rank, "table", food`

// preference is the place of a table in the order asked for, or that of the core table before all others.
func (q Query) preference(table string) int {
	preferred := q.Tables
	if len(preferred) == 0 {
		preferred = []string{Core}
	}
	if at := slices.Index(preferred, table); at >= 0 {
		return at
	}
	return len(preferred)
}

// run is the run of keys of a table's names.
type run struct {
	Table       string `db:"table_id"`
	First, Last int64
}

// namesOf gives the names of the tables, of all that are loaded if none is given, by the id of the table.
func namesOf(ctx context.Context, tx *sqlx.Tx, tables []string) (runs []run, err error) {
	scope := Ranking{Tables: tables}.scope()
	return runs, tx.SelectContext(ctx, &runs, `
		SELECT r.table_id,
			coalesce((SELECT n.key FROM food_name n WHERE n.food BETWEEN r.first_food AND r.last_food ORDER BY n.food, n.key LIMIT 1), 0) AS first,
			coalesce((SELECT n.key FROM food_name n WHERE n.food BETWEEN r.first_food AND r.last_food ORDER BY n.food DESC, n.key DESC LIMIT 1), -1) AS last
		FROM release r WHERE `+scope.text+" ORDER BY r.table_id", scope.args...)
}
