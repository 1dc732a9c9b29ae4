package store

import (
	"context"
	"errors"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"github.com/jmoiron/sqlx"
	_ "modernc.org/sqlite" // registers the driver "sqlite"

	"sipsum/internal/fail"
)

// connections is how many may be open at once: one load and a few readers.
const connections = 4

// DB is an open database. It may be used by several goroutines.
type DB struct {
	handle *sqlx.DB
	path   string
	now    func() time.Time

	preparing sync.Mutex
	prepared  *reader // nil until the first food is read
}

// Options says how to open a database.
type Options struct {
	ReadOnly bool             // never write: the file must exist and be up to date
	Now      func() time.Time // the clock for "loaded at"; nil means time.Now
}

// Open opens the database file at path. Unless ReadOnly is set it makes the
// folder and the file if they do not exist and brings the schema up to date;
// an existing file that is up to date is not written to.
func Open(ctx context.Context, path string, o Options) (*DB, error) {
	if o.Now == nil {
		o.Now = time.Now
	}
	full, err := filepath.Abs(path)
	if err != nil {
		return nil, fail.Because(fail.Failed, err, "cannot open the database "+path, "")
	}
	if err := ready(full, o.ReadOnly); err != nil {
		return nil, err
	}
	handle, err := sqlx.Open("sqlite", dsn(full, o.ReadOnly))
	if err != nil {
		return nil, fail.Because(fail.Failed, err, "cannot open the database "+path, "")
	}
	handle.SetMaxOpenConns(connections)
	handle.SetMaxIdleConns(connections)
	db := &DB{handle: handle, path: full, now: o.Now}
	if err := db.migrate(ctx, o.ReadOnly); err != nil {
		handle.Close() // the error to tell is the first one
		return nil, db.explain(ctx, err, "cannot open the database")
	}
	return db, nil
}

// Close closes the database.
func (db *DB) Close() error {
	if err := db.handle.Close(); err != nil {
		return fail.Because(fail.Failed, err, "cannot close the database "+db.path, "")
	}
	return nil
}

// ready makes the folder of the file, or for a reader looks whether the file
// is there.
func ready(path string, readOnly bool) error {
	info, err := os.Stat(path)
	switch {
	case err == nil && info.IsDir():
		return fail.New(fail.Failed, path+" is a folder, not a database", "name a file: --db FILE")
	case err == nil:
		return nil
	case !errors.Is(err, fs.ErrNotExist):
		return fail.Because(fail.Failed, err, "cannot open the database", "name another file: --db FILE")
	case readOnly:
		return fail.New(fail.NeedsTable, "there is no database at "+path, "load a table first: sipsum table load FORMAT PATH")
	}
	const ownerOnly = 0o700
	if err := os.MkdirAll(filepath.Dir(path), ownerOnly); err != nil {
		return fail.Because(fail.Failed, err, "cannot make the folder of the database", "name a file in a folder you may write to: --db FILE")
	}
	return nil
}

// dsn gives the driver's name of the file. The journal mode is not part of it:
// it is a property of the file, set when we make one, and must not be changed
// in a database that turns out to be someone else's.
func dsn(path string, readOnly bool) string {
	slashed := filepath.ToSlash(path)
	if !strings.HasPrefix(slashed, "/") {
		slashed = "/" + slashed // a drive letter
	}
	options := url.Values{
		"_busy_timeout": {"5000"},
		"_synchronous":  {"NORMAL"}, // safe with WAL: a crash cannot corrupt, a power cut may lose the last commit
		"_foreign_keys": {"on"},
		"_txlock":       {"immediate"},
	}
	if readOnly {
		options.Set("mode", "ro")
	}
	return (&url.URL{Scheme: "file", Path: slashed, RawQuery: options.Encode()}).String()
}
