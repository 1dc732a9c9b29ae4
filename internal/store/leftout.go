package store

import (
	"context"
	"slices"

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
	scope, isFirst := q.scope(), q.isFirst()
	amount, state, n := place(atAmount).of(q.Of), place(atState).of(q.Of), place(atN).of(q.Of)
	based := condition{text: "1"}
	if q.Per != "" {
		based = place(atAmount).of(q.Per)
		based.text = "coalesce(" + based.text + " > ?, 0)"
		based.args = append(based.args, q.MoreThan)
	}
	unknown := int(estimate.Unknown)
	err = tx.QueryRowContext(ctx, `SELECT count(*),
		coalesce(sum(amount IS NULL AND coalesce(state, ?) = ?), 0),
		coalesce(sum(coalesce(amount = 0, state <> ?)), 0),
		coalesce(sum(amount > 0 AND n < ?), 0),
		coalesce(sum(amount > 0 AND n >= ? AND NOT based), 0)
		FROM (SELECT `+amount.text+` AS amount, `+state.text+` AS state, coalesce(`+n.text+`, 0) AS n, `+based.text+` AS based
			FROM release r JOIN food f ON f.release = r.key WHERE `+scope.text+` AND `+isFirst.text+`)`,
		slices.Concat([]any{unknown, unknown, unknown, q.MinN, q.MinN}, amount.args, state.args, n.args, based.args, scope.args, isFirst.args)...).
		Scan(&out.Foods, &out.NoFigure, &out.None, &out.Few, &out.NoBasis)
	return out, err
}
