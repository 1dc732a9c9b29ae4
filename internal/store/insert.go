package store

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/jmoiron/sqlx"
	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"

	"sipsum/internal/constituent"
	"sipsum/internal/fail"
	"sipsum/internal/food"
)

// batch is the number of value rows of one INSERT. By BenchmarkLoad fifty are
// about twice as fast as single rows, and two hundred are no faster.
const batch = 50

// valueColumns is the number of parameters of a value row.
const valueColumns = 11

// writer writes the foods of one release. Keys of foods and names rise, and so
// do those of the constituents of a food: every row goes to the end of its
// tree, which is what makes a load fast.
type writer struct {
	tx        *sqlx.Tx
	release   int64
	nextFood  int64
	firstName int64
	nextName  int64
	keys      map[constituent.ID]int64

	foodRow, nameRow, portionRow, markRow *sqlx.Stmt
	valueRows                             *sqlx.Stmt // a full batch
	waiting                               []any      // parameters of the value rows not yet written

	foods, values int
}

func newWriter(ctx context.Context, tx *sqlx.Tx, release int64) (*writer, error) {
	w := &writer{tx: tx, release: release, keys: map[constituent.ID]int64{}, waiting: make([]any, 0, batch*valueColumns)}
	if err := tx.GetContext(ctx, &w.nextFood, "SELECT coalesce(max(key), 0) + 1 FROM food"); err != nil {
		return nil, err
	}
	if err := tx.GetContext(ctx, &w.nextName, "SELECT coalesce(max(key), 0) + 1 FROM food_name"); err != nil {
		return nil, err
	}
	w.firstName = w.nextName
	var known []struct {
		Key int64
		ID  constituent.ID
	}
	if err := tx.SelectContext(ctx, &known, "SELECT key, id FROM constituent_key"); err != nil {
		return nil, err
	}
	for _, k := range known {
		w.keys[k.ID] = k.Key
	}
	for _, s := range []struct {
		at   **sqlx.Stmt
		text string
	}{
		{&w.foodRow, `INSERT INTO food (key, release, code, our_group, publisher_group, density, density_sd, density_source, edible, chemical, note)
			VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`},
		{&w.nameRow, "INSERT INTO food_name (key, food, language, text) VALUES (?, ?, ?, ?)"},
		{&w.portionRow, "INSERT INTO portion (food, place, name, grams, sd) VALUES (?, ?, ?, ?, ?)"},
		{&w.markRow, "INSERT INTO food_mark (food, place, kind, mark, share, source) VALUES (?, ?, ?, ?, ?, ?)"},
		{&w.valueRows, insertValues(batch)},
	} {
		statement, err := tx.PreparexContext(ctx, s.text)
		if err != nil {
			w.close()
			return nil, err
		}
		*s.at = statement
	}
	return w, nil
}

// insertValues gives the statement for so many value rows. OR FAIL: a load that
// fails is rolled back whole, so SQLite need not be ready to undo one statement
// of it, which is a fifth of a load.
func insertValues(rows int) string {
	row := "(" + strings.Repeat("?, ", valueColumns-1) + "?)"
	return "INSERT OR FAIL INTO value (food, constituent, amount, sd, n, low, high, most, state, source, ref) VALUES " +
		strings.Repeat(row+", ", rows-1) + row
}

func (w *writer) close() {
	for _, s := range []*sqlx.Stmt{w.foodRow, w.nameRow, w.portionRow, w.markRow, w.valueRows} {
		if s != nil {
			s.Close()
		}
	}
}

// food writes one food; its last values may wait for the next food.
func (w *writer) food(ctx context.Context, f *food.Food) error {
	key := w.nextFood
	if _, err := w.foodRow.ExecContext(ctx, key, w.release, f.ID.Code, f.Group, f.PublisherGroup,
		stated(f.Density.GramsPerMl), stated(f.Density.SD), f.Density.Source, stated(f.Edible), f.Chemical, f.Note); err != nil {
		return twice(err, "the food "+f.ID.String())
	}
	for _, n := range f.Names {
		if _, err := w.nameRow.ExecContext(ctx, w.nextName, key, n.Language, n.Text); err != nil {
			return err
		}
		w.nextName++
	}
	for i, p := range f.Portions {
		if _, err := w.portionRow.ExecContext(ctx, key, i, p.Name, stated(p.Grams), stated(p.SD)); err != nil {
			return err
		}
	}
	for i, m := range f.Marks {
		if _, err := w.markRow.ExecContext(ctx, key, i, m.Kind, m.Value, stated(m.Share), m.Source); err != nil {
			return err
		}
	}
	if err := w.add(ctx, key, f); err != nil {
		return err
	}
	w.nextFood++
	w.foods++
	w.values += len(f.Values)
	return nil
}

// add queues the values of a food in order of their keys.
func (w *writer) add(ctx context.Context, key int64, f *food.Food) error {
	type keyed struct {
		key int64
		food.Value
	}
	sorted := make([]keyed, len(f.Values))
	for i, v := range f.Values {
		k, err := w.key(ctx, v.Constituent)
		if err != nil {
			return err
		}
		sorted[i] = keyed{k, v}
	}
	slices.SortFunc(sorted, func(a, b keyed) int { return int(a.key - b.key) })
	for i, v := range sorted {
		if i > 0 && v.key == sorted[i-1].key {
			return fail.New(fail.Wrong, fmt.Sprintf("the food %s has two values for %s", f.ID, v.Constituent), "")
		}
		w.waiting = append(w.waiting, key, v.key, stated(v.Amount), stated(v.SD), v.N, stated(v.Low), stated(v.High), stated(v.Limit),
			int(v.State), v.Source, v.Ref)
		if len(w.waiting) == batch*valueColumns {
			if _, err := w.valueRows.ExecContext(ctx, w.waiting...); err != nil {
				return err
			}
			w.waiting = w.waiting[:0]
		}
	}
	return nil
}

// finish writes the values that still wait and indexes the names: all at once,
// because a transaction in which the index takes part is slower for every row.
func (w *writer) finish(ctx context.Context) error {
	if len(w.waiting) > 0 {
		if _, err := w.tx.ExecContext(ctx, insertValues(len(w.waiting)/valueColumns), w.waiting...); err != nil {
			return err
		}
	}
	_, err := w.tx.ExecContext(ctx, "INSERT INTO food_name_index (rowid, text) SELECT key, text FROM food_name WHERE key >= ?", w.firstName)
	return err
}

// key gives the number of a constituent, a new one if it is new.
func (w *writer) key(ctx context.Context, id constituent.ID) (int64, error) {
	if key, ok := w.keys[id]; ok {
		return key, nil
	}
	done, err := w.tx.ExecContext(ctx, "INSERT INTO constituent_key (id) VALUES (?)", string(id))
	if err != nil {
		return 0, err
	}
	key, err := done.LastInsertId()
	w.keys[id] = key
	return key, err
}

// twice names what was there already if that is what the error is about.
func twice(err error, what string) error {
	var said *sqlite.Error
	if errors.As(err, &said) && (said.Code() == sqlite3.SQLITE_CONSTRAINT_UNIQUE || said.Code() == sqlite3.SQLITE_CONSTRAINT_PRIMARYKEY) {
		return fail.New(fail.Wrong, what+" appears twice in the table", "")
	}
	return err
}
