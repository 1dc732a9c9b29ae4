package store

import (
	"context"
	"database/sql"
	"embed"
	"fmt"
	"time"

	"github.com/jmoiron/sqlx"

	"sipsum/internal/fail"
)

// files are the migrations, NNNN_name.sql, numbered from 1 without gaps.
//
//go:embed migrations/*.sql
var files embed.FS

// applicationID is in the header of every file of ours: "sips" in ASCII.
const applicationID = 0x73697073

// header is what a database file says of itself.
type header struct {
	Application int `db:"application_id"`
	Version     int `db:"user_version"`
	Objects     int `db:"objects"` // tables and indexes
}

// migrate checks that the file is ours and applies the migrations it lacks.
// The usual case, a file that is up to date, costs one read.
func (db *DB) migrate(ctx context.Context, readOnly bool) error {
	all, err := files.ReadDir("migrations")
	if err != nil {
		return err
	}
	head, err := db.header(ctx)
	if err != nil {
		return err
	}
	switch {
	case head.Application != applicationID && (head.Application != 0 || head.Version != 0 || head.Objects != 0):
		return fail.New(fail.Failed, db.path+" is a database of another program", "name another file: --db FILE")
	case head.Version > len(all):
		return fail.New(fail.Failed,
			fmt.Sprintf("the database %s was written by a newer sipsum (schema %d, this one knows %d)", db.path, head.Version, len(all)),
			"use the newer sipsum, or another file: --db FILE")
	case head.Version == len(all):
		return nil
	case readOnly:
		return fail.New(fail.Failed,
			fmt.Sprintf("the database %s is of an older sipsum (schema %d, this one needs %d)", db.path, head.Version, len(all)),
			"run sipsum table list once, where the file may be written")
	}
	if head.Version == 0 {
		if err := db.useWAL(ctx); err != nil {
			return err
		}
	}
	for i, file := range all[head.Version:] {
		text, err := files.ReadFile("migrations/" + file.Name())
		if err != nil {
			return err
		}
		if err := db.apply(ctx, head.Version+i+1, string(text)); err != nil {
			return fmt.Errorf("migration %s: %w", file.Name(), err)
		}
	}
	return nil
}

// useWAL sets the journal mode, which the file keeps. SQLite waits for other
// processes everywhere but here, so we do when several make the file at once.
func (db *DB) useWAL(ctx context.Context) error {
	const wait = 10 * time.Millisecond
	for waited := time.Duration(0); ; waited += wait {
		_, err := db.handle.ExecContext(ctx, "PRAGMA journal_mode = WAL")
		if !isBusy(err) || waited >= patience {
			return err
		}
		select {
		case <-ctx.Done():
			return ctx.Err()
		case <-time.After(wait):
		}
	}
}

// header reads the three facts in one transaction, so that they belong together
// while another process makes the file.
func (db *DB) header(ctx context.Context) (head header, err error) {
	err = db.read(ctx, func(tx *sqlx.Tx) error {
		return tx.GetContext(ctx, &head, `
			SELECT application_id, user_version, (SELECT count(*) FROM sqlite_schema) AS objects
			FROM pragma_application_id, pragma_user_version`)
	})
	return head, err
}

// apply applies one migration unless another process has done so meanwhile.
func (db *DB) apply(ctx context.Context, number int, text string) error {
	return db.write(ctx, func(tx *sqlx.Tx) error {
		var done int
		if err := tx.GetContext(ctx, &done, "PRAGMA user_version"); err != nil {
			return err
		}
		if done >= number {
			return nil
		}
		if _, err := tx.ExecContext(ctx, text); err != nil {
			return err
		}
		_, err := tx.ExecContext(ctx, fmt.Sprintf("PRAGMA user_version = %d", number)) // takes no parameters
		return err
	})
}

// write runs work in one transaction that holds the write lock from its start.
func (db *DB) write(ctx context.Context, work func(tx *sqlx.Tx) error) error {
	return db.transaction(ctx, &sql.TxOptions{}, work)
}

// read runs work on one unchanging state of the database.
func (db *DB) read(ctx context.Context, work func(tx *sqlx.Tx) error) error {
	return db.transaction(ctx, &sql.TxOptions{ReadOnly: true}, work)
}

func (db *DB) transaction(ctx context.Context, o *sql.TxOptions, work func(tx *sqlx.Tx) error) error {
	tx, err := db.handle.BeginTxx(ctx, o)
	if err != nil {
		return err
	}
	defer tx.Rollback() // does nothing after a commit
	if err := work(tx); err != nil {
		return err
	}
	return tx.Commit()
}
