package store

import (
	"context"
	"iter"
	"time"

	"github.com/jmoiron/sqlx"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/source"
)

// Incoming is a release to be loaded.
type Incoming struct {
	Table   source.Table
	Columns []food.Column
	Works   []source.Work
	Foods   iter.Seq2[*food.Food, error] // an error ends it, and nothing is loaded
	Force   bool                         // load even if the same content is loaded already

	// Judge, if set, is asked about the whole release before it becomes the current
	// one; replaces is the one that it would replace, nil if there is none. An error
	// ends the load, and nothing is loaded.
	Judge func(loaded Loaded, replaces *Info) error
}

// Loaded says what a load did.
type Loaded struct {
	Foods   int
	Values  int
	Already bool // the same release was current; nothing was written
}

// loadCache is how much of the database a load keeps in memory, as SQLite writes it: 32 MB. With its usual two
// every other page is written twice.
const loadCache = "-32768"

// progressEvery is the number of foods between two reports of progress.
const progressEvery = 100

// Load writes a release and makes it the current one of its table; see the
// package's model. Errors of in.Foods come back whole. progress, which may be
// nil, is told how many foods and values have been written so far.
func (db *DB) Load(ctx context.Context, in Incoming, progress func(foods, values int)) (Loaded, error) {
	const doing = "cannot load the table into"
	current, found, err := db.Table(ctx, in.Table.ID)
	if err != nil {
		return Loaded{}, err
	}
	if found && in.isLoaded(current) {
		return already(current), nil
	}
	if err := db.sweep(ctx); err != nil { // what a killed load or removal has left
		return Loaded{}, db.explain(ctx, err, doing)
	}
	var loaded Loaded
	err = db.write(ctx, func(tx *sqlx.Tx) (err error) {
		loaded, err = db.load(ctx, tx, in, progress)
		return err
	})
	if err != nil {
		return Loaded{}, db.explain(ctx, err, doing)
	}
	if loaded.Already {
		return loaded, nil
	}
	// The table is loaded whatever comes now: what cannot be swept (the user is
	// leaving, the disk is full) is swept before the next load.
	if db.sweep(ctx) == nil {
		db.handle.ExecContext(ctx, "PRAGMA wal_checkpoint(TRUNCATE)") // one file on the disk; readers may prevent it
	}
	return loaded, nil
}

// isLoaded tells whether a current release is the one that comes in.
func (in Incoming) isLoaded(current Info) bool { return !in.Force && current.Table == in.Table }

func already(current Info) Loaded {
	return Loaded{Foods: current.Foods, Values: current.Values, Already: true}
}

// load writes everything of a release in the given transaction, unless another
// process has loaded the same while this one waited for it.
func (db *DB) load(ctx context.Context, tx *sqlx.Tx, in Incoming, progress func(foods, values int)) (Loaded, error) {
	current, found, err := currentTable(ctx, tx, in.Table.ID)
	if err != nil {
		return Loaded{}, err
	}
	if found && in.isLoaded(current) {
		return already(current), nil
	}
	release, err := insertRelease(ctx, tx, in.Table, db.now())
	if err != nil {
		return Loaded{}, err
	}
	if err := insertSources(ctx, tx, release, in.Columns, in.Works); err != nil {
		return Loaded{}, err
	}
	if _, err := tx.ExecContext(ctx, "PRAGMA cache_size = "+loadCache); err != nil {
		return Loaded{}, err
	}
	w, err := newWriter(ctx, tx, release)
	if err != nil {
		return Loaded{}, err
	}
	defer w.close()
	firstFood := w.nextFood
	for f, err := range readAhead(ctx, in.Foods) {
		if err != nil {
			return Loaded{}, err
		}
		if err := w.food(ctx, f); err != nil {
			return Loaded{}, err
		}
		if progress != nil && w.foods%progressEvery == 0 {
			progress(w.foods, w.values)
		}
	}
	if err := w.finish(ctx); err != nil {
		return Loaded{}, err
	}
	// A stream may end early because its reader saw the context end.
	if err := ctx.Err(); err != nil {
		return Loaded{}, err
	}
	if w.foods == 0 {
		return Loaded{}, fail.New(fail.Wrong, "the table "+in.Table.ID+" has no foods", "see whether the path holds the published files")
	}
	if progress != nil {
		progress(w.foods, w.values)
	}
	loaded := Loaded{Foods: w.foods, Values: w.values}
	if in.Judge != nil {
		var replaces *Info
		if found {
			replaces = &current
		}
		if err := in.Judge(loaded, replaces); err != nil {
			return Loaded{}, err
		}
	}
	if err := switchTo(ctx, tx, release, in.Table.ID); err != nil {
		return Loaded{}, err
	}
	_, err = tx.ExecContext(ctx, "UPDATE release SET foods = ?, amounts = ?, first_food = ?, last_food = ? WHERE key = ?",
		w.foods, w.values, firstFood, w.nextFood-1, release)
	return loaded, err
}

// insertRelease adds a release that nobody sees yet.
func insertRelease(ctx context.Context, tx *sqlx.Tx, t source.Table, at time.Time) (int64, error) {
	done, err := tx.ExecContext(ctx, `
		INSERT INTO release (table_id, format, title, edition, publisher, licence, citation, hash, foods, amounts, loaded_at, current)
		VALUES (?, ?, ?, ?, ?, ?, ?, ?, 0, 0, ?, 0)`,
		t.ID, t.Format, t.Title, t.Edition, t.Publisher, t.Licence, t.Citation, t.Hash, at.UTC().Format(time.RFC3339))
	if err != nil {
		return 0, err
	}
	return done.LastInsertId()
}

// switchTo makes a release the one that readers see.
func switchTo(ctx context.Context, tx *sqlx.Tx, release int64, table string) error {
	if _, err := tx.ExecContext(ctx, "UPDATE release SET current = 0 WHERE table_id = ? AND current = 1", table); err != nil {
		return err
	}
	_, err := tx.ExecContext(ctx, "UPDATE release SET current = 1 WHERE key = ?", release)
	return err
}

// insertSources adds the columns and works of a release.
func insertSources(ctx context.Context, tx *sqlx.Tx, release int64, columns []food.Column, works []source.Work) error {
	for i, c := range columns {
		if _, err := tx.ExecContext(ctx, `
			INSERT INTO table_column (release, place, id, number, name, unit, decimals, constituent) VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
			release, i, string(c.ID), c.Number, c.Name, c.Unit, c.Decimals, c.Constituent); err != nil {
			return err
		}
	}
	for i, w := range works {
		if _, err := tx.ExecContext(ctx, `
			INSERT INTO source (release, id, place, citation, url, licence, grade, note) VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
			release, w.ID, i, w.Citation, w.URL, w.Licence, w.Grade, w.Note); err != nil {
			return twice(err, "the work "+w.ID)
		}
	}
	return nil
}
