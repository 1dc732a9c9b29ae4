package store

import (
	"context"
	"database/sql"
	"errors"
	"time"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/source"
	"sipsum/internal/spelling"

	"github.com/jmoiron/sqlx"
)

// Core is the id of the table that sipsum brings along. It is listed and
// searched first.
const Core = "core"

// Info is what the database knows of a loaded table.
type Info struct {
	source.Table
	Foods    int
	Values   int
	LoadedAt time.Time
}

// infoColumns are those that scanInfo reads, in its order.
const infoColumns = "table_id, format, title, edition, publisher, licence, citation, hash, foods, amounts, loaded_at"

func scanInfo(row interface{ Scan(...any) error }) (Info, error) {
	var i Info
	var at string
	err := row.Scan(&i.ID, &i.Format, &i.Title, &i.Edition, &i.Publisher, &i.Licence, &i.Citation, &i.Hash, &i.Foods, &i.Values, &at)
	if err != nil {
		return Info{}, err
	}
	i.LoadedAt, err = time.Parse(time.RFC3339, at)
	return i, err
}

// Tables lists the loaded tables, the core table first and the others by id.
func (db *DB) Tables(ctx context.Context) ([]Info, error) {
	const doing = "cannot list the tables of"
	rows, err := db.handle.QueryContext(ctx, "SELECT "+infoColumns+" FROM release WHERE current = 1 ORDER BY table_id <> ?, table_id", Core)
	if err != nil {
		return nil, db.explain(ctx, err, doing)
	}
	defer rows.Close()
	var all []Info
	for rows.Next() {
		info, err := scanInfo(rows)
		if err != nil {
			return nil, db.explain(ctx, err, doing)
		}
		all = append(all, info)
	}
	return all, db.explain(ctx, rows.Err(), doing)
}

// Table gives one loaded table and whether it is loaded.
func (db *DB) Table(ctx context.Context, id string) (Info, bool, error) {
	info, found, err := currentTable(ctx, db.handle, id)
	return info, found, db.explain(ctx, err, "cannot look up the table "+id+" in")
}

// currentTable gives the current release of a table as from sees it.
func currentTable(ctx context.Context, from sqlx.QueryerContext, id string) (Info, bool, error) {
	info, err := scanInfo(from.QueryRowxContext(ctx, "SELECT "+infoColumns+" FROM release WHERE table_id = ? AND current = 1", id))
	if errors.Is(err, sql.ErrNoRows) {
		return Info{}, false, nil
	}
	return info, err == nil, err
}

// Remove takes a table out of the database.
func (db *DB) Remove(ctx context.Context, id string) error {
	const doing = "cannot remove the table from"
	err := db.write(ctx, func(tx *sqlx.Tx) error {
		done, err := tx.ExecContext(ctx, "UPDATE release SET current = 0 WHERE table_id = ? AND current = 1", id)
		if err != nil {
			return err
		}
		if n, err := done.RowsAffected(); err != nil || n > 0 {
			return err
		}
		return &fail.Error{Exit: fail.Wrong, Cause: ErrNoTable,
			Faults: []fail.Fault{{What: "the table " + id + " is not loaded", Do: "see sipsum table list"}}}
	})
	if err != nil {
		return db.explain(ctx, err, doing)
	}
	return db.explain(ctx, db.sweep(ctx), doing)
}

// currentOf gives the current release of a table. None is an error that says
// which was meant, or how to load it.
func currentOf(ctx context.Context, tx *sqlx.Tx, table string) (release int64, err error) {
	err = tx.GetContext(ctx, &release, "SELECT key FROM release WHERE table_id = ? AND current = 1", table)
	if !errors.Is(err, sql.ErrNoRows) {
		return release, err
	}
	var loaded []string
	if err := tx.SelectContext(ctx, &loaded, "SELECT table_id FROM release WHERE current = 1 ORDER BY key"); err != nil {
		return 0, err
	}
	do := "load it: sipsum table load FORMAT PATH --as " + table + "; see sipsum table formats"
	if near := spelling.Nearest(table, loaded); len(near) > 0 {
		do = "did you mean " + near[0] + ":? else " + do
	}
	return 0, &fail.Error{Exit: fail.NeedsTable, Cause: ErrNoTable, Faults: []fail.Fault{{What: "the table " + table + " is not loaded", Do: do}}}
}

// Columns lists the columns of a table in the publisher's order.
func (db *DB) Columns(ctx context.Context, table string) (columns []food.Column, err error) {
	err = db.read(ctx, func(tx *sqlx.Tx) error {
		release, err := currentOf(ctx, tx, table)
		if err != nil {
			return err
		}
		return tx.SelectContext(ctx, &columns, `
			SELECT id, number, name, unit, decimals, constituent FROM table_column WHERE release = ? ORDER BY place`, release)
	})
	return columns, db.explain(ctx, err, "cannot read the columns of "+table+" from")
}

// Works lists the works that the values of a table cite, in the table's order.
func (db *DB) Works(ctx context.Context, table string) (works []source.Work, err error) {
	err = db.read(ctx, func(tx *sqlx.Tx) error {
		release, err := currentOf(ctx, tx, table)
		if err != nil {
			return err
		}
		return tx.SelectContext(ctx, &works, `
			SELECT id, citation, url, licence, grade, note FROM source WHERE release = ? ORDER BY place`, release)
	})
	return works, db.explain(ctx, err, "cannot read the sources of "+table+" from")
}
