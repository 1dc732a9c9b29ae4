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
	"sipsum/internal/spelling"
)

// suggestions is how many near matches an error offers.
const suggestions = 3

// Near gives the foods that someone who wrote text may have meant, the nearest first (package
// spelling): for "table:code" those of that table whose code has the words of the text, then those
// whose names have them, then those whose code is a slip or two away, whatever else there is; for
// any other text what Find gives.
func (db *DB) Near(ctx context.Context, text string, limit int) ([]Hit, error) {
	id, isID := food.ParseID(text)
	if !isID {
		return db.Find(ctx, Query{Words: text, Limit: limit})
	}
	var near []Hit
	err := db.read(ctx, func(tx *sqlx.Tx) error {
		byWord, bySlip, err := nearCodes(ctx, tx, id)
		if err != nil {
			return err
		}
		var byName, byLikeName []Hit
		if words := strings.FieldsFunc(id.Code, func(r rune) bool { return !unicode.IsLetter(r) }); len(words) > 0 && len(byWord) < limit {
			named, err := find(ctx, tx, Query{Tables: []string{id.Table}, Limit: limit}, words)
			if err != nil {
				return err
			}
			for _, h := range named {
				if h.Near || h.Label {
					byLikeName = append(byLikeName, h)
				} else {
					byName = append(byName, h)
				}
			}
		}
		for _, h := range slices.Concat(byWord, byName, bySlip, byLikeName) {
			h.Near = true
			if !slices.ContainsFunc(near, func(other Hit) bool { return other.ID == h.ID }) {
				near = append(near, h)
			}
		}
		return nil
	})
	return near[:min(limit, len(near))], db.explain(ctx, err, "cannot search")
}

// nearCodes gives the foods of a table whose codes are near, the nearest first: those that have the
// words, and those that only look alike.
func nearCodes(ctx context.Context, tx *sqlx.Tx, id food.ID) (byWord, bySlip []Hit, err error) {
	rows, err := tx.QueryContext(ctx, `
		SELECT f.code, coalesce((SELECT text FROM food_name WHERE food = f.key ORDER BY food_name.key LIMIT 1), '')
		FROM release r CROSS JOIN food f ON f.release = r.key WHERE r.table_id = ? AND r.current = 1 ORDER BY f.key`, id.Table)
	if err != nil {
		return nil, nil, err
	}
	defer rows.Close()
	type candidate struct {
		Hit
		spelling.Nearness
	}
	var near []candidate
	written := spelling.NameOf(id.Code)
	for rows.Next() {
		var h Hit
		if err := rows.Scan(&h.ID.Code, &h.Name); err != nil {
			return nil, nil, err
		}
		h.ID.Table, h.Matched = id.Table, h.Name
		if n, ok := spelling.Near(written, spelling.NameOf(h.ID.Code)); ok {
			near = append(near, candidate{h, n})
		}
	}
	slices.SortStableFunc(near, func(a, b candidate) int {
		return cmp.Or(a.Compare(b.Nearness), cmp.Compare(len(a.ID.Code), len(b.ID.Code)))
	})
	for _, c := range near {
		if c.InWords() {
			byWord = append(byWord, c.Hit)
		} else {
			bySlip = append(bySlip, c.Hit)
		}
	}
	return byWord, bySlip, rows.Err()
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
			if spelling.Plain(near[0].ID.Code) == spelling.Plain(id.Code) {
				do = "write " + names[0]
			}
		}
		e.Faults = append(e.Faults, fail.Fault{What: "there is no food " + id.String(), Do: do})
	}
	e.Faults = slices.Compact(e.Faults)
	return e
}
