package store

import (
	"cmp"
	"context"
	"slices"

	"github.com/jmoiron/sqlx"

	"sipsum/internal/food"
)

// reader reads whole foods.
type reader struct {
	exact, foodRow, names, text *sqlx.Stmt
	shared                      *sharedTexts
}

// reader prepares the statements of a reader, once for every transaction to come.
func (db *DB) reader(ctx context.Context) (*reader, error) {
	db.preparing.Lock()
	defer db.preparing.Unlock()
	if db.prepared != nil {
		return db.prepared, nil
	}
	r := &reader{shared: &sharedTexts{}}
	for _, s := range []struct {
		at   **sqlx.Stmt
		text string
	}{
		{&r.exact, `SELECT f.key FROM release r CROSS JOIN food f ON f.release = r.key WHERE r.table_id = ? AND r.current = 1 AND f.code = ?`},
		{&r.foodRow, `SELECT code, our_group, publisher_group, density, density_sd, density_source, edible, chemical, note, facts, portions, marks FROM food WHERE key = ?`},
		{&r.names, `SELECT language, text FROM food_name WHERE food = ? ORDER BY key`},
		{&r.text, `SELECT text FROM shared_text WHERE key = ?`},
	} {
		statement, err := db.handle.PreparexContext(ctx, s.text)
		if err != nil {
			return nil, err
		}
		*s.at = statement
	}
	db.prepared = r
	return r, nil
}

// in gives the reader for one transaction, with which it ends.
func (r *reader) in(ctx context.Context, tx *sqlx.Tx) *reader {
	return &reader{
		exact: tx.StmtxContext(ctx, r.exact), foodRow: tx.StmtxContext(ctx, r.foodRow),
		names: tx.StmtxContext(ctx, r.names), text: tx.StmtxContext(ctx, r.text), shared: r.shared,
	}
}

// food reads the food with the key, which must exist.
func (r *reader) food(ctx context.Context, key int64, table string) (*food.Food, error) {
	f := &food.Food{ID: food.ID{Table: table}}
	d := &f.Density
	var facts, portions, marks []byte
	err := r.foodRow.QueryRowContext(ctx, key).Scan(&f.ID.Code, &f.Group, &f.PublisherGroup,
		(*number)(&d.GramsPerMl), (*number)(&d.SD), &d.Source, (*number)(&f.Edible), &f.Chemical, &f.Note, &facts, &portions, &marks)
	if err != nil {
		return nil, err
	}
	if f.Names, err = list(ctx, r.names, key, func(n *food.Name) []any {
		return []any{&n.Language, &n.Text}
	}); err != nil {
		return nil, err
	}
	if f.Values, err = factsOf(facts, r.sharing(ctx)); err != nil {
		return nil, err
	}
	slices.SortFunc(f.Values, func(a, b food.Value) int { return cmp.Compare(a.Constituent, b.Constituent) })
	if f.Portions, err = portionsOf(portions); err != nil {
		return nil, err
	}
	f.Marks, err = marksOf(marks)
	return f, err
}

// sharing gives what a key of a shared text stands for.
func (r *reader) sharing(ctx context.Context) func(key int64) (string, error) {
	return func(key int64) (string, error) { return r.shared.of(ctx, r.text, key) }
}

// list reads all rows of a food; columns gives where a row's columns go.
func list[T any](ctx context.Context, statement *sqlx.Stmt, key int64, columns func(*T) []any) ([]T, error) {
	rows, err := statement.QueryContext(ctx, key)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var all []T
	for rows.Next() {
		var one T
		if err := rows.Scan(columns(&one)...); err != nil {
			return nil, err
		}
		all = append(all, one)
	}
	return all, rows.Err()
}
