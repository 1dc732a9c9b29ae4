package cli

import (
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"syscall"

	"sipsum/internal/fail"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/store"
	"sipsum/internal/tables/core"
)

// app is what the commands of one run share.
type app struct {
	streams  Streams
	options  options
	db       *store.DB
	findings fail.Code // OK or Findings
}

// options are the common flags.
type options struct {
	db       string
	tables   []string
	format   string
	draws    int
	seed     uint64
	quiet    bool
	noColour bool
}

const (
	formatText = "text"
	formatJSON = "json"
)

// The bounds of --draws: fewer give no interval, more give nothing that is
// worth the wait.
const (
	usualDraws = 1000
	fewDraws   = 20
	manyDraws  = 100_000
)

func (a *app) check() error {
	switch {
	case a.options.format != formatText && a.options.format != formatJSON:
		return fail.New(fail.Wrong, "unknown format \""+a.options.format+"\"", "use --format text or --format json")
	case a.options.draws < fewDraws || a.options.draws > manyDraws:
		return fail.New(fail.Wrong, "--draws is out of range", "use a number from 20 to 100000")
	}
	return nil
}

func (a *app) json() bool { return a.options.format == formatJSON }

// style says how text is to look: colour only on a terminal that wants it.
func (a *app) style() textreport.Style {
	colour := a.streams.Terminal && !a.options.noColour && a.streams.Env("NO_COLOR") == "" && a.streams.Env("TERM") != "dumb"
	return textreport.Style{Colour: colour}
}

// path gives the place of the database: --db, $SIPSUM_DB, else the user's data
// folder.
func (a *app) path() (string, error) {
	if a.options.db != "" {
		return a.options.db, nil
	}
	if p := a.streams.Env("SIPSUM_DB"); p != "" {
		return p, nil
	}
	if p := a.streams.Env("XDG_DATA_HOME"); filepath.IsAbs(p) {
		return filepath.Join(p, "sipsum", "sipsum.db"), nil
	}
	if home := a.streams.Env("HOME"); home != "" {
		return filepath.Join(home, ".local", "share", "sipsum", "sipsum.db"), nil
	}
	if folder, err := os.UserConfigDir(); err == nil {
		return filepath.Join(folder, "sipsum", "sipsum.db"), nil
	}
	return "", fail.New(fail.Failed, "no folder is known for the database", "give one with --db FILE or SIPSUM_DB")
}

// store opens the database once and brings the core table up to date.
func (a *app) store(ctx context.Context) (*store.DB, error) {
	if a.db != nil {
		return a.db, nil
	}
	path, err := a.path()
	if err != nil {
		return nil, err
	}
	db, err := store.Open(ctx, path, store.Options{})
	if err != nil {
		return nil, err
	}
	a.db = db
	return db, a.loadCore(ctx)
}

// loadCore puts the embedded table into the database if it is not there, or
// not in this edition.
func (a *app) loadCore(ctx context.Context) error {
	embedded, err := core.Embedded()
	if err != nil {
		return err
	}
	loaded, found, err := a.db.Table(ctx, store.Core)
	if err != nil || (found && loaded.Table == embedded) {
		return err
	}
	release, err := core.Format.Open(ctx, "", "")
	if err != nil {
		return err
	}
	_, err = a.db.Load(ctx, store.Incoming{
		Table: release.Table, Columns: release.Columns, Works: release.Works, Foods: release.Foods,
	}, nil)
	return err
}

func (a *app) close() error {
	if a.db == nil {
		return nil
	}
	return a.db.Close()
}

// report prints an error. A closed pipe needs no words: nobody is listening.
func (a *app) report(err error) {
	if errors.Is(err, syscall.EPIPE) {
		return
	}
	var e *fail.Error
	if !errors.As(err, &e) {
		e = fail.New(fail.ExitCode(err), err.Error(), "")
	}
	if a.json() {
		_ = jsonreport.Error(a.streams.Err, e) // there is nowhere left to report to
		return
	}
	textreport.Error(a.streams.Err, e)
}

// readAll reads a file that the user named, within a limit. "-" is the standard
// input.
func (a *app) readAll(path string, most int64) ([]byte, error) {
	in := a.streams.In
	if path != "-" {
		f, err := os.Open(path)
		if err != nil {
			return nil, fail.Because(fail.Wrong, errors.Unwrap(err), "cannot read "+path, "check the name, or start one with: sipsum new NAME")
		}
		defer f.Close()
		in = f
	}
	text, err := io.ReadAll(io.LimitReader(in, most))
	if err != nil {
		return nil, fail.Because(fail.Wrong, err, "cannot read "+path, "")
	}
	return text, nil
}
