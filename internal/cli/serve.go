package cli

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"strconv"
	"time"

	"github.com/spf13/cobra"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/sheet"
	"sipsum/internal/web"
	"sipsum/internal/workshop"
)

const (
	// loopback is this machine, as seen from itself.
	loopback = "127.0.0.1"

	// patience is how long a request may take to say what it wants.
	patience = 5 * time.Second
)

func newServe(a *app) *cobra.Command {
	var port int
	var dir string
	cmd := &cobra.Command{
		Use: "serve", Short: "a page on this machine where drinks are built, seen and defended", Args: exactly(0, "no argument"),
		Long: "serve opens a page for the drink files of a folder and prints its address. It listens on this machine alone.",
		RunE: func(cmd *cobra.Command, _ []string) error { return serve(cmd.Context(), a, dir, port) },
	}
	cmd.Flags().IntVar(&port, "port", 0, "port (default: a free one)")
	cmd.Flags().StringVar(&dir, "dir", ".", "folder of the drink files")
	return cmd
}

// serve answers requests until it is interrupted.
func serve(ctx context.Context, a *app, dir string, port int) error {
	folder, err := workshop.Open(dir, mostText)
	if err != nil {
		return err
	}
	defer folder.Close()
	listener, err := net.Listen("tcp", net.JoinHostPort(loopback, strconv.Itoa(port)))
	if err != nil {
		return fail.Because(fail.Failed, err, "cannot listen on port "+strconv.Itoa(port), "leave --port out, and a free one is taken")
	}
	server := &http.Server{Handler: web.New(kitchen{drinks{a}, folder}, shelves{folder}).Handler(), ReadHeaderTimeout: patience}
	fmt.Fprintln(a.streams.Out, "http://"+listener.Addr().String()+"/")
	context.AfterFunc(ctx, func() { _ = server.Close() }) // what is asked for then, nobody waits for
	if err := server.Serve(listener); !errors.Is(err, http.ErrServerClosed) {
		return fail.Because(fail.Failed, err, "the page can no longer be reached", "start it again")
	}
	return nil
}

// shelves is the folder as pages want it.
type shelves struct{ *workshop.Folder }

func (s shelves) List() ([]web.Entry, error) {
	names, err := s.Folder.List()
	var list []web.Entry
	for _, n := range names {
		list = append(list, web.Entry{Name: n})
	}
	return list, err
}

// kitchen calculates drinks for pages, as the commands do.
type kitchen struct {
	drinks
	folder *workshop.Folder
}

func (k kitchen) Sheet(ctx context.Context, file web.File, ask web.Ask) (*sheet.Sheet, error) {
	app := *k.app
	app.options.draws = ask.Draws
	by := drinks{&app}
	d, faults := drink.Parse(file.Name, file.Text, k.folder.Read)
	if d.TooLarge {
		return nil, faults.Err(fail.Wrong)
	}
	if err := d.Fits(ask.Draws); err != nil {
		return nil, err
	}
	found, err := by.lookUp(ctx, d, faults)
	if err != nil {
		return nil, err
	}
	return by.calculate(ctx, found, asked{rules: ask.Rules, claims: ask.Claims, next: ask.Next, change: ask.Change, whole: ask.Whole}, nil)
}
