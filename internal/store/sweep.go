package store

import (
	"context"
	"database/sql"
	"errors"

	"github.com/jmoiron/sqlx"
)

// sweepFoods is the number of foods deleted in one transaction: some tens of
// milliseconds, so that a writer who waits is not kept waiting.
const sweepFoods = 250

// sweep deletes the rows of releases that are no longer current.
func (db *DB) sweep(ctx context.Context) error {
	for {
		var release int64
		err := db.handle.GetContext(ctx, &release, "SELECT key FROM release WHERE current = 0 ORDER BY key LIMIT 1")
		if errors.Is(err, sql.ErrNoRows) {
			return nil
		}
		if err != nil {
			return err
		}
		if err := db.sweepRanks(ctx, release); err != nil {
			return err
		}
		for more := true; more; {
			err := db.write(ctx, func(tx *sqlx.Tx) (err error) {
				more, err = sweepChunk(ctx, tx, release)
				return err
			})
			if err != nil {
				return err
			}
		}
	}
}

// sweepRanks deletes the ranks of a release, of one stratum in a transaction.
func (db *DB) sweepRanks(ctx context.Context, release int64) error {
	var keys []int64
	if err := db.handle.SelectContext(ctx, &keys, "SELECT key FROM stratum WHERE release = ?", release); err != nil {
		return err
	}
	for _, key := range keys {
		err := db.write(ctx, func(tx *sqlx.Tx) error {
			if _, err := tx.ExecContext(ctx, "DELETE FROM ranked WHERE stratum = ?", key); err != nil {
				return err
			}
			_, err := tx.ExecContext(ctx, "DELETE FROM stratum WHERE key = ?", key)
			return err
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// sweepChunk deletes some foods of a release, the first of those left, or the
// release itself when it has none left, and tells whether anything is left.
func sweepChunk(ctx context.Context, tx *sqlx.Tx, release int64) (more bool, err error) {
	var first, last int64
	err = tx.QueryRowContext(ctx, `
		SELECT f.key, r.last_food FROM release r CROSS JOIN food f ON f.key BETWEEN r.first_food AND r.last_food
		WHERE r.key = ? ORDER BY f.key LIMIT 1`, release).Scan(&first, &last)
	if errors.Is(err, sql.ErrNoRows) {
		for _, text := range []string{
			"DELETE FROM table_column WHERE release = ?",
			"DELETE FROM source WHERE release = ?",
			"DELETE FROM shared_text WHERE release = ?",
			"DELETE FROM vocabulary WHERE release = ?",
			"DELETE FROM release WHERE key = ?",
		} {
			if _, err := tx.ExecContext(ctx, text, release); err != nil {
				return false, err
			}
		}
		return false, nil
	}
	if err != nil {
		return false, err
	}
	end := min(first+sweepFoods-1, last)
	for _, text := range []string{
		"DELETE FROM food_name_index WHERE rowid IN (SELECT key FROM food_name WHERE food BETWEEN ? AND ?)",
		"DELETE FROM called WHERE (text, name) IN (SELECT text, key FROM food_name WHERE food BETWEEN ? AND ?)",
		"DELETE FROM food_name WHERE food BETWEEN ? AND ?",
		"DELETE FROM food_label_index WHERE rowid BETWEEN ? AND ?",
		"DELETE FROM food WHERE key BETWEEN ? AND ?",
	} {
		if _, err := tx.ExecContext(ctx, text, first, end); err != nil {
			return false, err
		}
	}
	return true, nil
}
