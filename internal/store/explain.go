package store

import (
	"context"
	"errors"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"

	"sipsum/internal/fail"
)

// Causes by which callers tell errors apart.
var (
	ErrNoFood  = errors.New("no such food")
	ErrNoTable = errors.New("no such table")
)

// primary is the part of an SQLite result code that names the kind of error;
// the rest is detail.
const primary = 0xff

// explain turns what the database said into a sentence and advice. Errors that
// are for people already pass as they are; nil stays nil.
func (db *DB) explain(ctx context.Context, err error, doing string) error {
	var known *fail.Error
	var said *sqlite.Error
	switch {
	case err == nil:
		return nil
	case errors.As(err, &known):
		return err
	case ctx.Err() != nil:
		return fail.Because(fail.Interrupted, ctx.Err(), doing+" "+db.path, "")
	case !errors.As(err, &said):
		return fail.Because(fail.Failed, err, doing+" "+db.path, "")
	}
	what, do := doing+" "+db.path, ""
	switch said.Code() & primary {
	case sqlite3.SQLITE_NOTADB:
		what, do = db.path+" is not a database", "name another file: --db FILE"
	case sqlite3.SQLITE_CORRUPT:
		what, do = "the database "+db.path+" is damaged", "delete it and load the tables again"
	case sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM:
		do = "name a file in a folder you may write to: --db FILE"
	case sqlite3.SQLITE_READONLY:
		what, do = "the database "+db.path+" cannot be written to", "name a file you may write to: --db FILE"
	case sqlite3.SQLITE_FULL:
		what, do = "the disk is full: "+doing+" "+db.path, "make room, or name a file on another disk: --db FILE"
	case sqlite3.SQLITE_IOERR:
		do = "see whether the disk is full or failing"
	case sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED:
		what, do = "another sipsum is writing to "+db.path, "wait until it is done, then try again"
	}
	return fail.Because(fail.Failed, err, what, do)
}

// unwritable marks an error of the system as one of the database's place.
type unwritable struct{ error }

func (u unwritable) Unwrap() error { return u.error }

// CannotWrite tells whether an error is that the database, or the place where it
// should be made, cannot be written to or has no room.
func CannotWrite(err error) bool {
	var place unwritable
	var said *sqlite.Error
	switch {
	case errors.As(err, &place):
		return true
	case !errors.As(err, &said):
		return false
	}
	switch said.Code() & primary {
	case sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM, sqlite3.SQLITE_READONLY, sqlite3.SQLITE_FULL:
		return true
	}
	return false
}

// isBusy tells whether the error is that another process holds a lock.
func isBusy(err error) bool {
	var said *sqlite.Error
	return errors.As(err, &said) && said.Code()&primary == sqlite3.SQLITE_BUSY
}
