package store

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"github.com/jmoiron/sqlx"
	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"

	"sipsum/internal/constituent"
	"sipsum/internal/fail"
	"sipsum/internal/food"
)

// batch is the number of rows of one INSERT of names or ranks. By BenchmarkLoad fifty are
// about twice as fast as single rows, and two hundred are no faster.
const batch = 50

// writer writes the foods of one release. Keys of foods, names and texts rise, and the ranks are written
// in their order at the end: every row goes to the end of its tree, which is what makes a load fast.
type writer struct {
	tx       *sqlx.Tx
	release  int64
	nextFood int64

	foodRow *sqlx.Stmt
	names   *names
	texts   *sharing
	labels  *labels
	ranks   ranks
	strata  *strata
	ranked  map[constituent.ID]int64 // numbers of what is ranked

	facts, portions, marks []byte // of the food that is being written
	seen                   map[constituent.ID]bool

	foods, values int
}

func newWriter(ctx context.Context, tx *sqlx.Tx, release int64) (w *writer, err error) {
	w = &writer{tx: tx, release: release, ranked: map[constituent.ID]int64{}, seen: map[constituent.ID]bool{}}
	defer func() {
		if err != nil {
			w.close()
		}
	}()
	if err := tx.GetContext(ctx, &w.nextFood, "SELECT coalesce(max(key), 0) + 1 FROM food"); err != nil {
		return w, err
	}
	var known []struct {
		Key int64
		ID  constituent.ID
	}
	if err := tx.SelectContext(ctx, &known, "SELECT key, id FROM constituent_key"); err != nil {
		return w, err
	}
	for _, k := range known {
		w.ranked[k.ID] = k.Key
	}
	if w.names, err = newNames(ctx, tx); err != nil {
		return w, err
	}
	if w.texts, err = newSharing(ctx, tx); err != nil {
		return w, err
	}
	if w.labels, err = newLabels(ctx, tx); err != nil {
		return w, err
	}
	if w.strata, err = newStrata(ctx, tx); err != nil {
		return w, err
	}
	w.foodRow, err = tx.PreparexContext(ctx, `INSERT OR FAIL INTO food
		(key, release, code, our_group, publisher_group, density, density_sd, density_source, edible, chemical, note, facts, portions, marks)
		VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`)
	return w, err
}

func (w *writer) close() {
	w.ranks.close()
	if w.foodRow != nil {
		w.foodRow.Close()
	}
	if w.names != nil {
		w.names.rows.Close()
	}
	if w.labels != nil {
		w.labels.rows.Close()
	}
	if w.texts != nil {
		w.texts.insert.Close()
	}
}

// food writes one food; its names and ranks may wait.
func (w *writer) food(ctx context.Context, f *food.Food) error {
	key := w.nextFood
	if err := w.rank(key, f); err != nil {
		return err
	}
	w.facts = appendFacts(w.facts[:0], f.Values, func(to []byte, text string) []byte { return w.texts.append(ctx, w.release, to, text) })
	if w.texts.err != nil {
		return w.texts.err
	}
	w.portions, w.marks = appendPortions(w.portions[:0], f.Portions), appendMarks(w.marks[:0], f.Marks)
	if _, err := w.foodRow.ExecContext(ctx, key, w.release, f.ID.Code, f.Group, f.PublisherGroup,
		stated(f.Density.GramsPerMl), stated(f.Density.SD), f.Density.Source, stated(f.Edible), f.Chemical, f.Note,
		string(w.facts), string(w.portions), string(w.marks)); err != nil {
		return twice(err, "the food "+f.ID.String())
	}
	if err := w.names.add(ctx, key, f.Names); err != nil {
		return err
	}
	if err := w.labels.add(ctx, key, f); err != nil {
		return err
	}
	w.nextFood++
	w.foods++
	w.values += len(f.Values)
	return nil
}

// rank remembers how much a food has of what is ranked, and refuses two values for one constituent.
func (w *writer) rank(key int64, f *food.Food) error {
	clear(w.seen)
	w.strata.of(stratum{group: f.Group}).some++
	for _, v := range f.Values {
		if w.seen[v.Constituent] {
			return fail.New(fail.Wrong, fmt.Sprintf("the food %s has two values for %s", f.ID, v.Constituent), "")
		}
		w.seen[v.Constituent] = true
		number, ok := w.ranked[v.Constituent]
		if !ok {
			continue
		}
		in := w.strata.of(stratum{f.Group, number})
		if !in.states(v) {
			continue
		}
		if err := w.ranks.add(pair{in.key, v.Amount, key}); err != nil {
			return fail.Because(fail.Failed, err, "cannot keep the ranks of a load", "make room in the system's folder for temporary files")
		}
	}
	return nil
}

// finish writes what still waits and indexes the names: all at once, because a transaction in which the index
// takes part is slower for every row.
func (w *writer) finish(ctx context.Context) error {
	if err := w.names.finish(ctx, w.tx, w.release); err != nil {
		return err
	}
	if err := w.labels.finish(ctx, w.tx); err != nil {
		return err
	}
	if err := w.strata.insert(ctx, w.tx, w.release); err != nil {
		return err
	}
	return w.insertRanks(ctx)
}

// insertRanks writes the ranks in their order.
func (w *writer) insertRanks(ctx context.Context) error {
	rows := rowsOf(3)
	insert := func(n int) string { return "INSERT OR FAIL INTO ranked (stratum, amount, food) VALUES " + rows(n) }
	full, err := w.tx.PreparexContext(ctx, insert(batch))
	if err != nil {
		return err
	}
	defer full.Close()
	waiting := make([]any, 0, batch*3)
	err = w.ranks.each(func(p pair) error {
		waiting = append(waiting, p.stratum, p.amount, p.food)
		if len(waiting) < cap(waiting) {
			return nil
		}
		_, err := full.ExecContext(ctx, waiting...)
		waiting = waiting[:0]
		return err
	})
	if err == nil && len(waiting) > 0 {
		_, err = w.tx.ExecContext(ctx, insert(len(waiting)/3), waiting...)
	}
	return err
}

// rowsOf gives the VALUES of so many rows of so many columns.
func rowsOf(columns int) func(rows int) string {
	row := "(" + strings.Repeat("?, ", columns-1) + "?)"
	return func(rows int) string { return strings.Repeat(row+", ", rows-1) + row }
}

// twice names what was there already if that is what the error is about.
func twice(err error, what string) error {
	var said *sqlite.Error
	if errors.As(err, &said) && (said.Code() == sqlite3.SQLITE_CONSTRAINT_UNIQUE || said.Code() == sqlite3.SQLITE_CONSTRAINT_PRIMARYKEY) {
		return fail.New(fail.Wrong, what+" appears twice in the table", "")
	}
	return err
}
