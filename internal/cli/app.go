package cli

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strconv"
	"strings"
	"sync"
	"syscall"

	"github.com/spf13/cobra"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
	"sipsum/internal/store"
)

// app is what the commands of one run share.
type app struct {
	streams  Streams
	options  options
	db       *store.DB
	findings fail.Code // of a command that was done: OK, Findings, Partly, or what its check says

	writing *sync.Mutex // held while a line is written that nobody may see a part of
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

const usualDraws = 1000

func (a *app) check(cmd *cobra.Command) error {
	least, most := drink.Draws()
	forms := formatsOf(cmd)
	switch {
	case !slices.Contains(allFormats, a.options.format) && a.options.format != formatLines:
		return fail.New(fail.Wrong, "unknown format \""+a.options.format+"\"", "use --format "+fail.Or(forms))
	case !slices.Contains(forms, a.options.format):
		return fail.New(fail.Wrong, askedOf(cmd)+" has no form \""+a.options.format+"\"", "use --format "+fail.Or(forms))
	case a.options.draws < least || a.options.draws > most:
		return fail.New(fail.Wrong, "--draws is out of range", fmt.Sprintf("use a number from %d to %d", least, most))
	}
	return nil
}

func (a *app) json() bool { return a.options.format == formatJSON }

// style says how text is to look: colour only on a terminal that wants it, and as wide as the
// terminal, or as $COLUMNS says.
func (a *app) style() textreport.Style {
	colour := a.streams.Terminal && !a.options.noColour && a.streams.Env("NO_COLOR") == "" && a.streams.Env("TERM") != "dumb"
	columns, err := strconv.Atoi(a.streams.Env("COLUMNS"))
	if err != nil || columns <= 0 {
		columns = a.streams.Columns
	}
	return textreport.Style{Colour: colour, Width: columns}
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

// readAll reads a file that the user named, within a limit; absent is what to do if there is none.
// "-" is the standard input.
func (a *app) readAll(path string, most int64, absent string) ([]byte, error) {
	in := a.streams.In
	if path != "-" {
		f, err := openDrink(path, absent)
		if err != nil {
			return nil, err
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

// openDrink opens a file. Anything but a file is refused before it is opened: a
// named pipe would wait for a writer, and a device may never end. A pipe that
// the shell opened for us (/dev/stdin, /dev/fd/63) is read.
func openDrink(path, absent string) (*os.File, error) {
	info, err := os.Stat(path)
	if err == nil {
		opened := info.Mode()&fs.ModeNamedPipe != 0 && strings.HasPrefix(path, "/dev/")
		switch {
		case info.IsDir():
			return nil, fail.New(fail.Wrong, path+" is a folder, not a file to read", "name a file in it")
		case !info.Mode().IsRegular() && !opened:
			return nil, fail.New(fail.Wrong, path+" is not a file but a pipe or a device", "give the text to the standard input and write - for the drink")
		}
	}
	var file *os.File
	if err == nil {
		file, err = os.Open(path)
	}
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, fail.Because(fail.Wrong, errors.Unwrap(err), "cannot read "+path, absent)
	case errors.Is(err, fs.ErrPermission):
		return nil, fail.Because(fail.Wrong, errors.Unwrap(err), "cannot read "+path, "let yourself read it: the name is right, the file's permissions are not")
	case err != nil:
		return nil, fail.Because(fail.Wrong, errors.Unwrap(err), "cannot read "+path, "see whether it is a file on a disk that can be read")
	}
	return file, nil
}
