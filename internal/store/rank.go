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
	Of       constituent.ID
	Per      constituent.ID // in relation to this constituent; empty: per 100 g of food
	MoreThan float64        // of Per in 100 g, in the vocabulary's unit: foods with no more are left out
	Tables   []string       // only these; none means all loaded tables
	Groups   []string       // only these food groups; none means all
	First    []string       // foods of these groups, and those of core, come before all others
	MinN     int            // only values of at least so many samples
}

// Ranked is a food and how much it has.
type Ranked struct {
	ID     food.ID
	Name   string
	Group  string
	Value  food.Value
	Per    float64 // of Ranking.Per in 100 g of the food, in the vocabulary's unit; None without it
	Figure float64 // what the foods are ranked by: Value.Amount, or Value.Amount / Per
	First  bool    // of core or a group of Ranking.First
}

// Rank gives foods to use until use says that it has enough: those that come
// first, then the others, and of each the one with the highest figure first. Foods
// without a stated amount above zero are left out, and so are those without the
// constituent that the ranking relates to; LeftOut counts them.
func (db *DB) Rank(ctx context.Context, q Ranking, use func(Ranked) (more bool, err error)) error {
	err := db.read(ctx, func(tx *sqlx.Tx) error {
		if err := allCurrent(ctx, tx, q.Tables); err != nil {
			return err
		}
		for _, first := range []bool{true, false} { // two walks of the index, each in its order
			if enough, err := rank(ctx, tx, q, first, use); err != nil || enough {
				return err
			}
		}
		return nil
	})
	return db.explain(ctx, err, "cannot rank the foods of")
}

// allCurrent makes sure that tables are loaded.
func allCurrent(ctx context.Context, tx *sqlx.Tx, tables []string) error {
	for _, table := range tables {
		if _, err := currentOf(ctx, tx, table); err != nil {
			return err
		}
	}
	return nil
}

// condition is a part of a query with its arguments.
type condition struct {
	text string
	args []any
}

// isFirst is true of the foods that a ranking puts first.
func (q Ranking) isFirst() condition {
	if len(q.First) == 0 {
		return condition{"1", nil}
	}
	among := in("f.our_group", q.First)
	return condition{"(r.table_id = ? OR " + among.text + ")", append([]any{Core}, among.args...)}
}

// scope is true of the foods of the tables and groups that are asked for.
func (q Ranking) scope() condition {
	c := condition{text: "r.current = 1"}
	for _, list := range []condition{in("r.table_id", q.Tables), in("f.our_group", q.Groups)} {
		if len(list.args) > 0 {
			c.text += " AND " + list.text
			c.args = append(c.args, list.args...)
		}
	}
	return c
}

func in(column string, list []string) condition {
	if len(list) == 0 {
		return condition{}
	}
	c := condition{text: column + " IN (?" + strings.Repeat(", ?", len(list)-1) + ")"}
	for _, x := range list {
		c.args = append(c.args, x)
	}
	return c
}

// rank gives the foods that come first, or the others.
func rank(ctx context.Context, tx *sqlx.Tx, q Ranking, first bool, use func(Ranked) (bool, error)) (enough bool, err error) {
	var args []any
	related, figure := "", "v.amount"
	per := "NULL"
	if q.Per != "" {
		related = " CROSS JOIN value p ON p.food = v.food AND p.constituent = (SELECT key FROM constituent_key WHERE id = ?) AND p.amount > ?"
		figure, per = "v.amount / p.amount", "p.amount"
	}
	text := `SELECT r.table_id, f.code, coalesce((SELECT text FROM food_name WHERE food = f.key ORDER BY key LIMIT 1), ''), f.our_group,
		v.amount, v.sd, v.n, v.low, v.high, v.state, v.source, v.ref, ` + per + `, ` + figure + `
		FROM value v` + related + ` CROSS JOIN food f ON f.key = v.food CROSS JOIN release r ON r.key = f.release
		WHERE v.constituent = (SELECT key FROM constituent_key WHERE id = ?)` + indexed(ctx, tx, q.Of) + ` AND v.amount > 0 AND v.n >= ?`
	if q.Per != "" {
		args = append(args, q.Per, q.MoreThan)
	}
	args = append(args, q.Of, q.MinN)
	scope, isFirst := q.scope(), q.isFirst()
	not := ""
	if !first {
		not = "NOT "
	}
	text += " AND " + scope.text + " AND " + not + isFirst.text
	args = append(append(args, scope.args...), isFirst.args...)
	rows, err := tx.QueryContext(ctx, text+" ORDER BY "+figure+" DESC, v.food", args...)
	if err != nil {
		return false, err
	}
	defer rows.Close()
	for rows.Next() {
		x := Ranked{First: first, Value: food.Value{Constituent: q.Of, Limit: food.None}}
		v := &x.Value
		var state int
		if err := rows.Scan(&x.ID.Table, &x.ID.Code, &x.Name, &x.Group, (*number)(&v.Amount), (*number)(&v.SD), &v.N,
			(*number)(&v.Low), (*number)(&v.High), &state, &v.Source, &v.Ref, (*number)(&x.Per), &x.Figure); err != nil {
			return false, err
		}
		v.State = estimate.State(state)
		if more, err := use(x); err != nil || !more {
			return true, err
		}
	}
	return false, rows.Err()
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
