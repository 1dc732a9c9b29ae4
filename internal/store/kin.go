package store

import (
	"context"

	"github.com/jmoiron/sqlx"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// WithAny finds the foods of some groups that state an amount of any of some constituents that are ranked,
// in the order in which they were loaded; no tables means all that are loaded.
func (db *DB) WithAny(ctx context.Context, ids []constituent.ID, tables, groups []string) ([]food.ID, error) {
	var found []food.ID
	err := db.read(ctx, func(tx *sqlx.Tx) error {
		named := make([]string, len(ids))
		for i, id := range ids {
			named[i] = string(id)
		}
		scope, any := Ranking{Tables: tables, Groups: groups}.scope(), in("k.id", named)
		text := `SELECT DISTINCT r.table_id, g.code, g.key FROM constituent_key k CROSS JOIN release r
			CROSS JOIN stratum f ON f.constituent = k.key AND f.release = r.key
			CROSS JOIN ranked v ON v.stratum = f.key CROSS JOIN food g ON g.key = v.food WHERE ` + any.text + " AND " + scope.text
		args := append(any.args, scope.args...)
		rows, err := tx.QueryContext(ctx, text+" ORDER BY g.key", args...)
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
