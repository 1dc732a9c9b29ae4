package cli

import (
	"context"
	"io"
	"os"
	"os/signal"

	"sipsum/internal/fail"
)

// Streams is the world around a command.
type Streams struct {
	In       io.Reader
	Out      io.Writer
	Err      io.Writer
	Env      func(name string) string
	Terminal bool // Out is a terminal
	ErrTerm  bool // Err is a terminal: progress may be shown
}

// Main runs the command that args ask for and gives the exit code.
func Main(args []string, s Streams) int {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	app := &app{streams: s}
	root := newRoot(app)
	root.SetArgs(args)
	root.SetIn(s.In)
	root.SetOut(s.Out)
	root.SetErr(s.Err)
	err := root.ExecuteContext(ctx)
	if closeErr := app.close(); err == nil {
		err = closeErr
	}
	if err == nil {
		return int(app.findings)
	}
	if ctx.Err() != nil {
		err = fail.New(fail.Interrupted, "interrupted", "")
	}
	app.report(err)
	return int(fail.ExitCode(err))
}

// OS gives the streams of the process.
func OS() Streams {
	return Streams{
		In: os.Stdin, Out: os.Stdout, Err: os.Stderr, Env: os.Getenv,
		Terminal: isTerminal(os.Stdout), ErrTerm: isTerminal(os.Stderr),
	}
}

func isTerminal(f *os.File) bool {
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
