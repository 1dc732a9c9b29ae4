package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/jmoiron/sqlx"

	"sipsum/internal/constituent"
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
	prepared, err := db.reader(ctx)
	if err != nil {
		return db.explain(ctx, err, "cannot rank the foods of")
	}
	err = db.read(ctx, func(tx *sqlx.Tx) error {
		if err := allCurrent(ctx, tx, q.Tables); err != nil {
			return err
		}
		r := prepared.in(ctx, tx)
		for _, first := range []bool{true, false} { // two walks of the index, each in its order
			if enough, err := r.rank(ctx, tx, q, first, use); err != nil || enough {
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

// of is what a food states in a place of its value of a constituent, as SQL: null if nothing.
func (p place) of(id constituent.ID) condition {
	return condition{fmt.Sprintf("(f.facts ->> ('$.' || json_quote(?) || '[%d]'))", p), []any{string(id)}}
}

// place is where a figure stands in a value; see facts.go.
type place int

// rank gives the foods that come first, or the others.
func (r *reader) rank(ctx context.Context, tx *sqlx.Tx, q Ranking, first bool, use func(Ranked) (bool, error)) (enough bool, err error) {
	key, err := rankedKey(ctx, tx, q.Of)
	if err != nil {
		return false, err
	}
	if key != 0 && q.Per == "" {
		return r.walk(ctx, tx, q, key, first, use)
	}
	text, args := q.query(key, first)
	rows, err := tx.QueryContext(ctx, text, args...)
	if err != nil {
		return false, err
	}
	defer rows.Close()
	for rows.Next() {
		x, err := r.ranked(ctx, q, rows)
		if err != nil {
			return false, err
		}
		x.First = first
		if more, err := use(x); err != nil || !more {
			return true, err
		}
	}
	return false, rows.Err()
}

// rankedColumns are those that ranked reads, in its order.
const rankedColumns = "r.table_id, f.code, coalesce((SELECT text FROM food_name WHERE food = f.key ORDER BY key LIMIT 1), ''), f.our_group, f.facts"

// ranked reads a food of a ranking.
func (r *reader) ranked(ctx context.Context, q Ranking, row interface{ Scan(...any) error }) (Ranked, error) {
	x := Ranked{Per: food.None}
	var facts []byte
	if err := row.Scan(&x.ID.Table, &x.ID.Code, &x.Name, &x.Group, &facts); err != nil {
		return x, err
	}
	values, err := factsOf(facts, r.sharing(ctx))
	if err != nil {
		return x, err
	}
	x.Value, _ = (&food.Food{Values: values}).Value(q.Of)
	x.Figure = x.Value.Amount
	if q.Per != "" {
		per, _ := (&food.Food{Values: values}).Value(q.Per)
		x.Per = per.Amount
		x.Figure /= x.Per
	}
	return x, nil
}

// query is the SQL of one walk of what has no index; key is the number of what is asked for in the ranks, 0 if it is not ranked.
func (q Ranking) query(key int64, first bool) (text string, args []any) {
	amount := condition{"v.amount", nil}
	from := condition{"stratum s CROSS JOIN ranked v ON v.stratum = s.key CROSS JOIN food f ON f.key = v.food CROSS JOIN release r ON r.key = f.release WHERE s.constituent = ?", []any{key}}
	if key == 0 { // every food is read
		amount = place(atAmount).of(q.Of)
		from = condition{"release r CROSS JOIN food f ON f.release = r.key WHERE " + amount.text + " > 0", amount.args}
	}
	figure := amount
	where := []condition{from, q.scope(), q.isFirst()}
	if !first {
		where[2].text = "NOT " + where[2].text
	}
	if q.Per != "" {
		per := place(atAmount).of(q.Per)
		where = append(where, condition{per.text + " > ?", append(slices.Clone(per.args), q.MoreThan)})
		figure = condition{amount.text + " / " + per.text, slices.Concat(amount.args, per.args)}
	}
	if q.MinN > 0 {
		n := place(atN).of(q.Of)
		where = append(where, condition{"coalesce(" + n.text + ", 0) >= ?", append(slices.Clone(n.args), q.MinN)})
	}
	var texts []string
	for _, c := range where {
		texts = append(texts, c.text)
		args = append(args, c.args...)
	}
	return "SELECT " + rankedColumns + " FROM " + strings.Join(texts, " AND ") + " ORDER BY " + figure.text + " DESC, f.key", append(args, figure.args...)
}

// rankedKey gives the number of a constituent in the ranks, 0 if it has none.
func rankedKey(ctx context.Context, tx *sqlx.Tx, id constituent.ID) (key int64, err error) {
	err = tx.GetContext(ctx, &key, "SELECT key FROM constituent_key WHERE id = ?", id)
	if errors.Is(err, sql.ErrNoRows) {
		return 0, nil
	}
	return key, err
}
