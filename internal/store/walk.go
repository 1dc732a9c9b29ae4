package store

import (
	"cmp"
	"context"
	"database/sql"
	"errors"
	"io"
	"slices"

	"github.com/jmoiron/sqlx"
)

// walk gives the foods that come first, or the others, from the strata that hold them: of each the food with the
// most waits, and the one with the most of all is next. No other food is read.
func (r *reader) walk(ctx context.Context, tx *sqlx.Tx, q Ranking, constituent int64, first bool, use func(Ranked) (bool, error)) (enough bool, err error) {
	keys, err := q.strata(ctx, tx, constituent, first)
	if err != nil {
		return false, err
	}
	var runs merging
	for _, key := range keys {
		rows, err := tx.QueryContext(ctx, "SELECT amount, food FROM ranked WHERE stratum = ? ORDER BY amount DESC, food", key)
		if err != nil {
			return false, err
		}
		defer rows.Close()
		runs = append(runs, &sortedRun{next: fromRows(rows)})
	}
	row, err := tx.PreparexContext(ctx, "SELECT "+rankedColumns+" FROM food f CROSS JOIN release r ON r.key = f.release WHERE f.key = ?")
	if err != nil {
		return false, err
	}
	defer row.Close()
	err = runs.each(func(p pair) error {
		x, err := r.ranked(ctx, q, row.QueryRowContext(ctx, p.food))
		if err != nil || x.Value.N < q.MinN {
			return err
		}
		x.First = first
		more, err := use(x)
		if err == nil && !more {
			err = errEnough
		}
		return err
	})
	if errors.Is(err, errEnough) {
		return true, nil
	}
	return false, err
}

// strata gives the keys of the strata with any of a constituent, of the foods that come first or of the others.
func (q Ranking) strata(ctx context.Context, tx *sqlx.Tx, constituent int64, first bool) (keys []int64, err error) {
	scope, isFirst := q.scope(), q.isFirst()
	if !first {
		isFirst.text = "NOT " + isFirst.text
	}
	return keys, tx.SelectContext(ctx, &keys, `
		SELECT f.key FROM release r CROSS JOIN stratum f ON f.constituent = ? AND f.release = r.key
		WHERE f.some > 0 AND `+scope.text+" AND "+isFirst.text, slices.Concat([]any{constituent}, scope.args, isFirst.args)...)
}

// fromRows reads the rows of a stratum.
func fromRows(rows *sql.Rows) func() (pair, error) {
	return func() (p pair, err error) {
		if !rows.Next() {
			return p, cmp.Or(rows.Err(), io.EOF)
		}
		return p, rows.Scan(&p.amount, &p.food) // its stratum does not matter: all are one ranking
	}
}
