package cli

import (
	"context"
	"io"
	"os"
	"os/signal"
	"runtime/debug"
	"sync"
	"time"

	"golang.org/x/term"

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
	Columns  int  // of the terminal; 0 if Out is none
}

// grace is how long an interrupted command may take to leave tidily. A command
// that does not hear in that time (it waits for a pipe, it is in the middle of a
// long sum) is left as it is: the process ends when Main returns, and a database
// is whole after any end (package store).
const grace = 50 * time.Millisecond

// ample is the memory, for each drink that is calculated at once, above which the garbage collector
// works harder. The largest drink within the limits keeps less than that alive.
const ample = 384 << 20

// Main runs the command that args ask for and gives the exit code. After an
// interruption the command may still run when Main returns: the process must end.
func Main(args []string, s Streams) int {
	s.limitMemory(1)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	app := &app{streams: s, writing: &sync.Mutex{}}
	done := make(chan error, 1)
	go func() { done <- app.run(ctx, args) }()
	select {
	case err := <-done:
		return app.exit(ctx, err)
	case <-ctx.Done():
		stop() // a second interruption ends the process as it stands
	}
	select {
	case err := <-done:
		return app.exit(ctx, err)
	case <-time.After(grace):
		app.writing.Lock() // a line is written to its end, and none begins any more
		return app.exit(ctx, ctx.Err())
	}
}

// limitMemory says above which memory the garbage collector works harder, for so many drinks at once; who sets that in
// the environment is not overruled.
func (s Streams) limitMemory(drinks int) {
	if s.Env("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(int64(drinks) * ample)
	}
}

func (a *app) run(ctx context.Context, args []string) error {
	root := newRoot(a)
	root.SetArgs(args)
	root.SetIn(a.streams.In)
	root.SetOut(a.streams.Out)
	root.SetErr(a.streams.Err)
	err := root.ExecuteContext(ctx)
	if err != nil && wantsJSON(args) {
		a.options.format = formatJSON
	}
	if closeErr := a.close(); err == nil {
		err = closeErr
	}
	return err
}

// exit reports how a command ended and gives its exit code.
func (a *app) exit(ctx context.Context, err error) int {
	if err == nil {
		return int(a.findings)
	}
	if ctx.Err() != nil {
		err = fail.New(fail.Interrupted, "interrupted", "")
	}
	a.report(err)
	return int(fail.ExitCode(err))
}

// OS gives the streams of the process.
func OS() Streams {
	return Streams{
		In: os.Stdin, Out: os.Stdout, Err: os.Stderr, Env: os.Getenv,
		Terminal: isTerminal(os.Stdout), ErrTerm: isTerminal(os.Stderr), Columns: columns(os.Stdout),
	}
}

// columns gives the width of a terminal; 0 if it is none, or does not say.
func columns(f *os.File) int {
	n, _, err := term.GetSize(int(f.Fd()))
	if err != nil {
		return 0
	}
	return n
}

func isTerminal(f *os.File) bool {
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
