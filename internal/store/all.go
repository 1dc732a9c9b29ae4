package store

import (
	"context"
	"errors"
	"iter"

	"github.com/jmoiron/sqlx"

	"sipsum/internal/food"
)

// errEnough ends a transaction whose reader wants no more.
var errEnough = errors.New("enough")

// All gives the foods of a table in ascending order of code, byte by byte, all
// from one state of the database.
func (db *DB) All(ctx context.Context, table string) iter.Seq2[*food.Food, error] {
	return func(yield func(*food.Food, error) bool) {
		prepared, err := db.reader(ctx)
		if err != nil {
			yield(nil, db.explain(ctx, err, "cannot read the foods of"))
			return
		}
		err = db.read(ctx, func(tx *sqlx.Tx) error {
			release, err := currentOf(ctx, tx, table)
			if err != nil {
				return err
			}
			var keys []int64
			if err := tx.SelectContext(ctx, &keys, "SELECT key FROM food WHERE release = ? ORDER BY code", release); err != nil {
				return err
			}
			r := prepared.in(ctx, tx)
			for _, key := range keys {
				f, err := r.food(ctx, key, table)
				if err != nil {
					return err
				}
				if !yield(f, nil) {
					return errEnough
				}
			}
			return nil
		})
		if err != nil && !errors.Is(err, errEnough) {
			yield(nil, db.explain(ctx, err, "cannot read the foods of"))
		}
	}
}
