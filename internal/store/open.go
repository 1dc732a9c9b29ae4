package store

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"github.com/jmoiron/sqlx"
	_ "modernc.org/sqlite" // registers the driver "sqlite"

	"sipsum/internal/fail"
)

// connections is how many may be open at once: one load and a few readers.
const connections = 4

// patience is how long one process waits for another that writes: a load of the
// core table takes a fraction of a second, sixty first runs at once some seconds.
const patience = 30 * time.Second

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
	db, err := open(ctx, full, fileURI(full, o.ReadOnly, false), o)
	if o.ReadOnly && CannotWrite(err) && !isFile(full+"-wal") {
		return open(ctx, full, fileURI(full, true, true), o)
	}
	return db, err
}

// memories counts the databases in memory, which need names of their own.
var memories atomic.Int64

// OpenMemory makes an empty database in memory.
func OpenMemory(ctx context.Context) (*DB, error) {
	uri := fmt.Sprintf("file:/sipsum-%d?vfs=memdb&_busy_timeout=%d&_foreign_keys=on&_txlock=immediate", memories.Add(1), patience.Milliseconds())
	return open(ctx, "in memory", uri, Options{Now: time.Now})
}

func open(ctx context.Context, path, uri string, o Options) (*DB, error) {
	handle, err := sqlx.Open("sqlite", uri)
	if err != nil {
		return nil, fail.Because(fail.Failed, err, "cannot open the database "+path, "")
	}
	handle.SetMaxOpenConns(connections)
	handle.SetMaxIdleConns(connections)
	db := &DB{handle: handle, path: path, now: o.Now}
	if err := db.migrate(ctx, o.ReadOnly); err != nil {
		handle.Close() // the error to tell is the first one
		return nil, db.explain(ctx, err, "cannot open the database")
	}
	return db, nil
}

func isFile(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.Mode().IsRegular() && info.Size() > 0
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
		return fail.Because(fail.Failed, unwritable{err}, "cannot open the database", "name another file: --db FILE")
	case readOnly:
		return fail.New(fail.NeedsTable, "there is no database at "+path, "load a table first: sipsum table load FORMAT PATH")
	}
	const ownerOnly = 0o700
	if err := os.MkdirAll(filepath.Dir(path), ownerOnly); err != nil {
		return fail.Because(fail.Failed, unwritable{err}, "cannot make the folder of the database", "name a file in a folder you may write to: --db FILE")
	}
	return nil
}

// fileURI gives the driver's name of the file. The journal mode is not part of it:
// it is a property of the file, set when we make one, and must not be changed
// in a database that turns out to be someone else's. unchanging promises that
// nobody writes to the file: SQLite then keeps no notes beside it.
func fileURI(path string, readOnly, unchanging bool) string {
	slashed := filepath.ToSlash(path)
	if !strings.HasPrefix(slashed, "/") {
		slashed = "/" + slashed // a drive letter
	}
	options := url.Values{
		"_busy_timeout": {strconv.FormatInt(patience.Milliseconds(), 10)},
		"_synchronous":  {"NORMAL"}, // safe with WAL: a crash cannot corrupt, a power cut may lose the last commit
		"_foreign_keys": {"on"},
		"_txlock":       {"immediate"},
	}
	if readOnly {
		options.Set("mode", "ro")
	}
	if unchanging {
		options.Set("immutable", "1")
	}
	return (&url.URL{Scheme: "file", Path: slashed, RawQuery: options.Encode()}).String()
}
