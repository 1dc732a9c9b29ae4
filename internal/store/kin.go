package store

import (
	"context"

	"github.com/jmoiron/sqlx"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// WithAny finds the foods of some groups that state an amount of any of some constituents,
// in the order in which they were loaded; no tables means all that are loaded.
func (db *DB) WithAny(ctx context.Context, ids []constituent.ID, tables, groups []string) ([]food.ID, error) {
	var found []food.ID
	err := db.read(ctx, func(tx *sqlx.Tx) error {
		named := make([]string, len(ids))
		for i, id := range ids {
			named[i] = string(id)
		}
		scope, any := Ranking{Tables: tables, Groups: groups}.scope(), in("v.key", named)
		text := `SELECT r.table_id, f.code, f.key FROM release r CROSS JOIN food f ON f.release = r.key
			WHERE ` + scope.text + ` AND EXISTS (SELECT 1 FROM json_each(f.facts) v WHERE ` + any.text + ` AND v.value ->> 0 > 0)`
		args := append(scope.args, any.args...)
		rows, err := tx.QueryContext(ctx, text+" ORDER BY f.key", args...)
		if err != nil {
			return err
		}
		defer rows.Close()
		for rows.Next() {
			var id food.ID
			var key int64
			if err := rows.Scan(&id.Table, &id.Code, &key); err != nil {
				return err
			}
			found = append(found, id)
		}
		return rows.Err()
	})
	return found, db.explain(ctx, err, "cannot look for the foods of")
}
