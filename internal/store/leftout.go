package store

import (
	"context"

	"github.com/jmoiron/sqlx"

	"sipsum/internal/estimate"
)

// LeftOut counts the foods that come first in a ranking by why they are not in it.
type LeftOut struct {
	Foods    int // that come first
	NoFigure int // nobody has stated an amount or a limit
	None     int // stated to hold none, or less than could be told
	Few      int // of fewer samples than asked for
	NoBasis  int // without the constituent that the ranking relates to, or with too little of it
}

// LeftOut counts those foods that come first and that Rank leaves out.
func (db *DB) LeftOut(ctx context.Context, q Ranking) (out LeftOut, err error) {
	err = db.read(ctx, func(tx *sqlx.Tx) error {
		if err := allCurrent(ctx, tx, q.Tables); err != nil {
			return err
		}
		out, err = leftOut(ctx, tx, q)
		return err
	})
	return out, db.explain(ctx, err, "cannot count the foods of")
}

func leftOut(ctx context.Context, tx *sqlx.Tx, q Ranking) (out LeftOut, err error) {
	args := []any{q.Of}
	related, based := "", "1"
	if q.Per != "" {
		related, based = `LEFT JOIN value p ON p.food = f.key AND p.constituent = (SELECT key FROM constituent_key WHERE id = ?) `, "coalesce(p.amount > ?, 0)"
		args = append(args, q.Per)
	}
	scope, isFirst := q.scope(), q.isFirst()
	text := `SELECT count(*),
		coalesce(sum(v.amount IS NULL AND coalesce(v.state, ?) = ?), 0),
		coalesce(sum(coalesce(v.amount = 0, v.state <> ?)), 0),
		coalesce(sum(v.amount > 0 AND v.n < ?), 0),
		coalesce(sum(v.amount > 0 AND v.n >= ? AND NOT ` + based + `), 0)
		FROM release r JOIN food f ON f.release = r.key
		LEFT JOIN value v ON v.food = f.key AND v.constituent = (SELECT key FROM constituent_key WHERE id = ?) ` + related +
		`WHERE ` + scope.text + ` AND ` + isFirst.text
	unknown := int(estimate.Unknown)
	first := []any{unknown, unknown, unknown, q.MinN, q.MinN}
	if q.Per != "" {
		first = append(first, q.MoreThan)
	}
	args = append(first, args...)
	args = append(append(args, scope.args...), isFirst.args...)
	err = tx.QueryRowContext(ctx, text, args...).Scan(&out.Foods, &out.NoFigure, &out.None, &out.Few, &out.NoBasis)
	return out, err
}
