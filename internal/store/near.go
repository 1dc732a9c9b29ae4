package store

import (
	"cmp"
	"context"
	"errors"
	"slices"
	"strings"
	"unicode"

	"github.com/jmoiron/sqlx"

	"sipsum/internal/fail"
	"sipsum/internal/food"
)

// suggestions is how many near matches an error offers.
const suggestions = 3

// Near gives the foods that someone who wrote text may have meant: for
// "table:code" those of that table with nearly this code or with the words of
// the code in their names, for any other text what Find gives.
func (db *DB) Near(ctx context.Context, text string, limit int) ([]Hit, error) {
	table, code, isID := strings.Cut(text, ":")
	if !isID {
		return db.Find(ctx, Query{Words: text, Limit: limit})
	}
	var near []Hit
	err := db.read(ctx, func(tx *sqlx.Tx) (err error) {
		if near, err = nearCodes(ctx, tx, table, code); err != nil {
			return err
		}
		words := strings.FieldsFunc(code, func(r rune) bool { return !unicode.IsLetter(r) })
		if len(near) >= limit || len(words) == 0 {
			return nil
		}
		byName, err := find(ctx, tx, Query{Tables: []string{table}, Limit: limit}, words)
		for _, h := range byName {
			if !slices.ContainsFunc(near, func(n Hit) bool { return n.ID == h.ID }) {
				near = append(near, h)
			}
		}
		return err
	})
	for i := range near {
		near[i].Near = true
	}
	return near[:min(limit, len(near))], db.explain(ctx, err, "cannot search")
}

// nearCodes gives the foods of a table whose codes are a slip or two away, the
// nearest first.
func nearCodes(ctx context.Context, tx *sqlx.Tx, table, code string) ([]Hit, error) {
	rows, err := tx.QueryContext(ctx, `
		SELECT f.code, coalesce((SELECT text FROM food_name WHERE food = f.key ORDER BY food_name.key LIMIT 1), '')
		FROM release r CROSS JOIN food f ON f.release = r.key WHERE r.table_id = ? AND r.current = 1 ORDER BY f.key`, table)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	type candidate struct {
		Hit
		slips int
	}
	var near []candidate
	most := slipsAllowed(code)
	for rows.Next() {
		var h Hit
		if err := rows.Scan(&h.ID.Code, &h.Name); err != nil {
			return nil, err
		}
		h.ID.Table, h.Matched = table, h.Name
		if slips := distance(code, h.ID.Code, most); slips <= most {
			near = append(near, candidate{h, slips})
		}
	}
	slices.SortStableFunc(near, func(a, b candidate) int { return cmp.Compare(a.slips, b.slips) })
	hits := make([]Hit, len(near))
	for i := range hits {
		hits[i] = near[i].Hit
	}
	return hits, rows.Err()
}

// mostCorrections is how many words of equal distance may stand for one.
const mostCorrections = 8

// correct gives an FTS5 expression for each word: its beginnings if there are
// any, else the nearest words of the index. Words without either are left out.
func correct(ctx context.Context, tx *sqlx.Tx, words []string) ([]string, error) {
	var vocabulary []string
	if err := tx.SelectContext(ctx, &vocabulary, "SELECT term FROM food_word"); err != nil {
		return nil, err
	}
	var expressions []string
	for _, word := range tokens(words) {
		if slices.ContainsFunc(vocabulary, func(term string) bool { return strings.HasPrefix(term, word) }) {
			expressions = append(expressions, startOf(word))
			continue
		}
		var best []string
		most := slipsAllowed(word)
		for _, term := range vocabulary {
			slips := distance(word, term, most)
			if slips < most {
				most, best = slips, nil
			}
			if slips == most {
				best = append(best, quoted(term))
			}
		}
		if len(best) > 0 {
			expressions = append(expressions, "("+strings.Join(best[:min(len(best), mostCorrections)], " OR ")+")")
		}
	}
	return expressions, nil
}

// tokens splits words further, as the index does with names.
func tokens(words []string) []string {
	var all []string
	for _, w := range words {
		all = append(all, strings.FieldsFunc(strings.ToLower(w), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsNumber(r) })...)
	}
	return all
}

// notFound makes the error for foods and tables that are not there.
func (db *DB) notFound(ctx context.Context, missing []food.ID, noTable []error) error {
	e := &fail.Error{Exit: fail.Wrong, Cause: ErrNoFood}
	for _, err := range noTable {
		var known *fail.Error
		if errors.As(err, &known) {
			e.Exit, e.Cause = known.Exit, known.Cause // without its table nothing can be said of the food
			e.Faults = append(e.Faults, known.Faults...)
		}
	}
	for _, id := range missing {
		near, err := db.Near(ctx, id.String(), suggestions)
		if err != nil {
			return err
		}
		do := "see sipsum food find WORDS"
		if len(near) > 0 {
			names := make([]string, len(near))
			for i, h := range near {
				names[i] = h.ID.String() + ` "` + h.Name + `"`
			}
			do = "perhaps " + strings.Join(names, ", ")
		}
		e.Faults = append(e.Faults, fail.Fault{What: "there is no food " + id.String(), Do: do})
	}
	e.Faults = slices.Compact(e.Faults)
	return e
}
