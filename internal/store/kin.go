package store

import (
	"context"
	"strings"

	"github.com/jmoiron/sqlx"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// WithAny finds the foods of some groups that state an amount of any of some constituents,
// in the order in which they were loaded; no tables means all that are loaded.
func (db *DB) WithAny(ctx context.Context, ids []constituent.ID, tables, groups []string) ([]food.ID, error) {
	var found []food.ID
	err := db.read(ctx, func(tx *sqlx.Tx) error {
		text := `SELECT DISTINCT r.table_id, f.code, f.key FROM value v JOIN food f ON f.key = v.food JOIN release r ON r.key = f.release
			WHERE r.current = 1 AND v.amount > 0`
		var args []any
		among := func(column, each string, list []string) {
			text += " AND " + column + " IN (" + each + strings.Repeat(", "+each, len(list)-1) + ")"
			for _, x := range list {
				args = append(args, x)
			}
		}
		names := make([]string, len(ids))
		for i, id := range ids {
			names[i] = string(id)
		}
		among("v.constituent", "(SELECT key FROM constituent_key WHERE id = ?)", names)
		among("f.our_group", "?", groups)
		if len(tables) > 0 {
			among("r.table_id", "?", tables)
		}
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
