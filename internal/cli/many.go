package cli

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"runtime"
	"slices"

	"github.com/spf13/cobra"

	"sipsum/internal/embedded"
	"sipsum/internal/fail"
	"sipsum/internal/inorder"
	"sipsum/internal/report/json"
)

// many is how many drinks are assayed.
type many struct {
	jobs int // at once
}

func (m *many) flags(cmd *cobra.Command) {
	cmd.Annotations = map[string]string{streams: "yes"}
	most := embedded.Limit("jobs")
	cmd.Flags().IntVar(&m.jobs, "jobs", min(runtime.GOMAXPROCS(0), most), "drinks at once, with --format "+formatLines+" (default: one for each core)")
	cmd.Flags().Lookup("jobs").DefValue = "0" // the help is the same on every machine
}

// asked reports whether a drink a line is asked for.
func (m *many) asked(a *app) bool { return a.options.format == formatLines }

// check refuses more than one drink in a form that is of one, and what would work on none.
func (m *many) check(a *app, cmd *cobra.Command, args []string) error {
	most := embedded.Limit("jobs")
	folder := func(arg string) bool {
		info, err := os.Stat(arg)
		return err == nil && info.IsDir()
	}
	switch {
	case m.jobs < 1 || m.jobs > most:
		return fail.New(fail.Wrong, "--jobs is out of range", fmt.Sprintf("use a number from 1 to %d", most))
	case m.asked(a) && len(slices.DeleteFunc(slices.Clone(args), func(arg string) bool { return arg != "-" })) > 1:
		return fail.New(fail.Wrong, "the standard input can be read once", "write - for one drink")
	case m.asked(a):
		return nil
	case cmd.Flags().Changed("jobs"):
		return fail.New(fail.Wrong, "--jobs is for many drinks", "add --format "+formatLines+", or leave it out")
	case len(args) > 1:
		return fail.New(fail.Wrong, "many drinks have a form of their own", "add --format "+formatLines+": a line of JSON for each")
	case folder(args[0]):
		return fail.New(fail.Wrong, args[0]+" is a folder, not a file to read", "name a file in it, or add --format "+formatLines+": a line of JSON for each drink in it")
	}
	return nil
}

// line is what is written of one drink.
type line struct {
	file string
	text []byte
	err  error // of the drink, or of what was to be one
}

// many assays the drinks that arguments name. A drink that is wrong has a line that says so, and a word on the error
// stream; the others are done. What went wrong otherwise ends the command after the lines before it.
func (a drinks) many(ctx context.Context, args []string, jobs int, ask asked) error {
	if _, err := a.store(ctx); err != nil { // once, and before all that ask for it
		return err
	}
	a.streams.limitMemory(jobs)
	all, failed := 0, 0
	for l := range inorder.Map(ctx, jobs, walk(args), func(ctx context.Context, w walked) line { return a.line(ctx, w, ask) }) {
		if ctx.Err() != nil {
			break // what was not calculated to its end is no drink's fault
		}
		all++
		if l.err != nil {
			failed++
			var err error
			if l.text, err = faultLine(l); err != nil {
				return err
			}
			a.report(l.err)
		}
		if err := a.whole(l.text); err != nil {
			return err
		}
	}
	if failed > 0 && ctx.Err() == nil {
		a.findings = fail.Partly
		a.note(fmt.Sprintf("%d of %d failed: each has a line that says why", failed, all))
	}
	return ctx.Err()
}

// line assays one drink.
func (a drinks) line(ctx context.Context, w walked, ask asked) line {
	if w.err != nil {
		return line{file: w.file, err: w.err}
	}
	s, err := a.sheet(ctx, w.file, ask)
	var text bytes.Buffer
	if err == nil {
		err = jsonreport.AssayLine(&text, s, w.file)
	}
	return line{w.file, text.Bytes(), err}
}

// faultLine is the line of a drink that is wrong, or that wants a table; any other error is given back.
func faultLine(l line) ([]byte, error) {
	var wrong *fail.Error
	if !errors.As(l.err, &wrong) || wrong.Exit != fail.Wrong && wrong.Exit != fail.NeedsTable {
		return nil, l.err
	}
	var text bytes.Buffer
	err := jsonreport.ErrorLine(&text, wrong, l.file)
	return text.Bytes(), err
}

// whole writes a line. An interruption waits until it is written to its end, and then no other begins.
func (a *app) whole(line []byte) error {
	a.writing.Lock()
	defer a.writing.Unlock()
	_, err := a.streams.Out.Write(line)
	return err
}
