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

// leftOut reads what was counted as the table was loaded. What depends on the question, and what is not
// ranked, is counted food by food.
func leftOut(ctx context.Context, tx *sqlx.Tx, q Ranking) (out LeftOut, err error) {
	key, err := rankedKey(ctx, tx, q.Of)
	if err != nil {
		return out, err
	}
	if key == 0 {
		return q.countFoods(ctx, tx)
	}
	scope, isFirst := q.scope(), q.isFirst()
	some := 0
	err = tx.QueryRowContext(ctx, `
		SELECT coalesce(sum(iif(f.constituent = 0, f.some, 0)), 0), coalesce(sum(f.none), 0), coalesce(sum(iif(f.constituent = ?, f.some, 0)), 0)
		FROM release r CROSS JOIN stratum f ON f.constituent IN (0, ?) AND f.release = r.key WHERE `+scope.text+" AND "+isFirst.text,
		slices.Concat([]any{key, key}, scope.args, isFirst.args)...).Scan(&out.Foods, &out.None, &some)
	out.NoFigure = out.Foods - out.None - some
	if err != nil || q.MinN <= 0 && q.Per == "" {
		return out, err
	}
	keys, err := q.strata(ctx, tx, key, true)
	if err != nil || len(keys) == 0 {
		return out, err
	}
	n, based := place(atN).of(q.Of), q.based()
	text, args, err := sqlx.In(`SELECT coalesce(sum(n < ?), 0), coalesce(sum(n >= ? AND NOT based), 0)
		FROM (SELECT coalesce(`+n.text+`, 0) AS n, `+based.text+` AS based FROM ranked v CROSS JOIN food f ON f.key = v.food WHERE v.stratum IN (?))`,
		slices.Concat([]any{q.MinN, q.MinN}, n.args, based.args, []any{keys})...)
	if err != nil {
		return out, err
	}
	return out, tx.QueryRowContext(ctx, text, args...).Scan(&out.Few, &out.NoBasis)
}

// based is true of a food that has enough of what a ranking relates to.
func (q Ranking) based() condition {
	if q.Per == "" {
		return condition{text: "1"}
	}
	c := place(atAmount).of(q.Per)
	return condition{"coalesce(" + c.text + " > ?, 0)", append(slices.Clone(c.args), q.MoreThan)}
}

// countFoods counts food by food.
func (q Ranking) countFoods(ctx context.Context, tx *sqlx.Tx) (out LeftOut, err error) {
	scope, isFirst := q.scope(), q.isFirst()
	amount, state, n, based := place(atAmount).of(q.Of), place(atState).of(q.Of), place(atN).of(q.Of), q.based()
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
