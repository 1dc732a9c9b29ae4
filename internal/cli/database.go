package cli

import (
	"context"
	"fmt"
	"os"
	"path/filepath"

	"sipsum/internal/fail"
	"sipsum/internal/store"
	"sipsum/internal/tables/core"
)

// inMemory is the name of a database that is not kept, as SQLite writes it.
const inMemory = ":memory:"

// path gives the place of the database: --db, $SIPSUM_DB, else the user's data
// folder. With none of them there is no place.
func (a *app) path() (path string, ok bool) {
	if a.options.db != "" {
		return a.options.db, true
	}
	if p := a.streams.Env("SIPSUM_DB"); p != "" {
		return p, true
	}
	if p := a.streams.Env("XDG_DATA_HOME"); filepath.IsAbs(p) {
		return filepath.Join(p, "sipsum", "sipsum.db"), true
	}
	if home := a.streams.Env("HOME"); home != "" {
		return filepath.Join(home, ".local", "share", "sipsum", "sipsum.db"), true
	}
	if folder, err := os.UserConfigDir(); err == nil {
		return filepath.Join(folder, "sipsum", "sipsum.db"), true
	}
	return "", false
}

// store opens the database once, and knows the tables that the user chose.
func (a *app) store(ctx context.Context) (*store.DB, error) {
	db, err := a.opened(ctx)
	if err != nil {
		return nil, err
	}
	for _, id := range a.options.tables {
		switch _, found, err := db.Table(ctx, id); {
		case err != nil:
			return nil, err
		case !found:
			return nil, fail.New(fail.NeedsTable, fmt.Sprintf("--tables: the table %q is not loaded", id), "see which are: sipsum table list")
		}
	}
	return db, nil
}

// opened opens the database once and brings the core table up to date. Where
// nothing can be written it reads the database that is there, and if there is
// none that will do it works from memory and says so.
func (a *app) opened(ctx context.Context) (*store.DB, error) {
	if a.db != nil {
		return a.db, nil
	}
	path, ok := a.path()
	switch {
	case !ok:
		return a.memory(ctx, "no folder is known for the database")
	case path == inMemory:
		return a.memory(ctx, "")
	}
	err := a.open(ctx, path, store.Options{})
	if !store.CannotWrite(err) {
		return a.db, err
	}
	if a.open(ctx, path, store.Options{ReadOnly: true}) == nil {
		return a.db, nil
	}
	why := fmt.Sprintf("the database %s cannot be written to", path)
	if file, err := os.Open(path); err == nil { // it can be read, but will not do
		file.Close()
		why += ", and what is in it was not made by this edition of sipsum"
	}
	return a.memory(ctx, why)
}

// keeping opens the database for a command that is to change it.
func (a *app) keeping(ctx context.Context) (*store.DB, error) {
	path, ok := a.path()
	switch {
	case !ok:
		return nil, fail.New(fail.Failed, "no folder is known for the database", "give one with --db FILE or SIPSUM_DB")
	case path == inMemory:
		return nil, fail.New(fail.Wrong, "a database in memory is gone when the command ends", "name a file: --db FILE")
	}
	err := a.open(ctx, path, store.Options{})
	return a.db, err
}

// open opens a database that holds the core table of this sipsum, or can be
// given it.
func (a *app) open(ctx context.Context, path string, o store.Options) error {
	db, err := store.Open(ctx, path, o)
	if err != nil {
		return err
	}
	if err := loadCore(ctx, db); err != nil {
		db.Close() // the error to tell is the first one
		return err
	}
	a.db = db
	return nil
}

// memory makes a database that lives as long as the command; why is said once.
func (a *app) memory(ctx context.Context, why string) (*store.DB, error) {
	if why != "" {
		a.note(why + ": working from memory, with sipsum's own table only")
	}
	db, err := store.OpenMemory(ctx)
	if err != nil {
		return nil, err
	}
	a.db = db
	return db, loadCore(ctx, db)
}

// loadCore puts the embedded table into a database if it is not there, or not in
// this edition.
func loadCore(ctx context.Context, db *store.DB) error {
	embedded, err := core.Embedded()
	if err != nil {
		return err
	}
	loaded, found, err := db.Table(ctx, store.Core)
	if err != nil || (found && loaded.Table == embedded) {
		return err
	}
	release, err := core.Format.Open(ctx, "", "")
	if err != nil {
		return err
	}
	_, err = db.Load(ctx, store.Incoming{
		Table: release.Table, Columns: release.Columns, Works: release.Works, Foods: release.Foods,
	}, nil)
	return err
}

// note tells the user what a command did otherwise than expected.
func (a *app) note(text string) {
	if !a.options.quiet {
		fmt.Fprintln(a.streams.Err, "sipsum: "+text)
	}
}

func (a *app) close() error {
	if a.db == nil {
		return nil
	}
	return a.db.Close()
}
