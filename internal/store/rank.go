package store

import (
	"context"
	"strings"

	"github.com/jmoiron/sqlx"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// Ranking asks for the foods with the most of a constituent.
type Ranking struct {
	Of     constituent.ID
	Per    constituent.ID // in relation to this constituent; empty: per 100 g of food
	Tables []string       // only these; none means all loaded tables
	Groups []string       // only these food groups; none means all
	MinN   int            // only values of at least so many samples
}

// Ranked is a food and how much it has.
type Ranked struct {
	ID     food.ID
	Name   string
	Group  string
	Value  food.Value
	Per    float64 // of Ranking.Per in 100 g of the food, in the vocabulary's unit; None without it
	Figure float64 // what the foods are ranked by: Value.Amount, or Value.Amount / Per
}

// Rank gives foods to use, the one with the highest figure first, until use
// says that it has enough. Foods without a stated amount above zero are left
// out, and so are those without the constituent that the ranking relates to.
func (db *DB) Rank(ctx context.Context, q Ranking, use func(Ranked) (more bool, err error)) error {
	err := db.read(ctx, func(tx *sqlx.Tx) error {
		for _, table := range q.Tables {
			if _, err := currentOf(ctx, tx, table); err != nil {
				return err
			}
		}
		return rank(ctx, tx, q, use)
	})
	return db.explain(ctx, err, "cannot rank the foods of")
}

func rank(ctx context.Context, tx *sqlx.Tx, q Ranking, use func(Ranked) (bool, error)) error {
	var args []any
	related, figure := "", "v.amount"
	per := "NULL"
	if q.Per != "" {
		related = " CROSS JOIN value p ON p.food = v.food AND p.constituent = (SELECT key FROM constituent_key WHERE id = ?) AND p.amount > 0"
		figure, per = "v.amount / p.amount", "p.amount"
	}
	text := `SELECT r.table_id, f.code, coalesce((SELECT text FROM food_name WHERE food = f.key ORDER BY key LIMIT 1), ''), f.our_group,
		v.amount, v.sd, v.n, v.low, v.high, v.state, v.source, v.ref, ` + per + `, ` + figure + `
		FROM value v` + related + ` CROSS JOIN food f ON f.key = v.food CROSS JOIN release r ON r.key = f.release
		WHERE v.constituent = (SELECT key FROM constituent_key WHERE id = ?)` + indexed(ctx, tx, q.Of) + ` AND v.amount > 0 AND v.n >= ? AND r.current = 1`
	if q.Per != "" {
		args = append(args, q.Per)
	}
	args = append(args, q.Of, q.MinN)
	for _, in := range []struct {
		column string
		list   []string
	}{{"r.table_id", q.Tables}, {"f.our_group", q.Groups}} {
		if len(in.list) == 0 {
			continue
		}
		text += " AND " + in.column + " IN (?" + strings.Repeat(", ?", len(in.list)-1) + ")"
		for _, x := range in.list {
			args = append(args, x)
		}
	}
	rows, err := tx.QueryContext(ctx, text+" ORDER BY "+figure+" DESC, v.food", args...)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		x := Ranked{Value: food.Value{Constituent: q.Of, Limit: food.None}}
		v := &x.Value
		var state int
		if err := rows.Scan(&x.ID.Table, &x.ID.Code, &x.Name, &x.Group, (*number)(&v.Amount), (*number)(&v.SD), &v.N,
			(*number)(&v.Low), (*number)(&v.High), &state, &v.Source, &v.Ref, (*number)(&x.Per), &x.Figure); err != nil {
			return err
		}
		v.State = estimate.State(state)
		if more, err := use(x); err != nil || !more {
			return err
		}
	}
	return rows.Err()
}

// indexed is the condition by which SQLite sees that a constituent is in the
// partial index.
func indexed(ctx context.Context, tx *sqlx.Tx, id constituent.ID) string {
	var key int
	if err := tx.GetContext(ctx, &key, "SELECT key FROM constituent_key WHERE id = ?", id); err != nil || key > indexedKeys {
		return "" // not a drink constituent: all values are read
	}
	return " AND v.constituent <= " + indexedText
}

// The constituents with these keys are in the index value_rank; see the
// migration.
const (
	indexedKeys = 42
	indexedText = "42"
)
