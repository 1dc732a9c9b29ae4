package cli

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"net/url"
	"strconv"

	"github.com/spf13/cobra"

	"sipsum/internal/fail"
	"sipsum/internal/report/json"
	"sipsum/internal/web"
	"sipsum/internal/workshop"
)

// loopback is this machine, as seen from itself.
const loopback = "127.0.0.1"

func newServe(a *app) *cobra.Command {
	var at address
	var dir string
	cmd := &cobra.Command{
		Use: "serve", Short: "a page on this machine where drinks are built, seen and defended", Args: exactly(0, "no argument"),
		Long: "serve opens a page for the drink files of a folder and prints its address. It listens on this machine alone,\n" +
			"unless --listen names an address for others, a phone at the bar: then the address that is printed has a key in\n" +
			"it, which is good for one browser, and another is printed for the next. What is sent there is not encrypted:\n" +
			"listen in a network of your own only. Saved drinks are written to their files; the last twenty texts of each are\n" +
			"kept, and a file that was changed from somewhere else is never written over. Interrupt to end it.",
		RunE: func(cmd *cobra.Command, _ []string) error {
			if cmd.Flags().Changed("listen") && cmd.Flags().Changed("port") {
				return fail.New(fail.Wrong, "--listen names the port too", "leave --port out: --listen HOST:PORT")
			}
			return serve(cmd.Context(), a, dir, at)
		},
	}
	cmd.Flags().IntVar(&at.port, "port", 0, "port (default: a free one)")
	cmd.Flags().StringVar(&at.listen, "listen", "", "listen for other machines too, on this HOST:PORT of ours; whoever comes needs the key that is printed")
	cmd.Flags().StringVar(&dir, "dir", ".", "folder of the drink files")
	return cmd
}

// address is where the page is.
type address struct {
	port   int
	listen string // for other machines; empty: for this one alone
}

// open listens.
func (at address) open() (net.Listener, error) {
	to, do := net.JoinHostPort(loopback, strconv.Itoa(at.port)), "leave --port out, and a free one is taken"
	if at.listen != "" {
		to, do = at.listen, "name an address of this machine and a port that is free, HOST:PORT; port 0 takes a free one"
	}
	listener, err := net.Listen("tcp", to)
	if err != nil {
		return nil, fail.Because(fail.Wrong, err, "cannot listen on "+to, do)
	}
	return listener, nil
}

// door says who may come in, and tells by say where.
func (at address) door(listener net.Listener, say func(address string)) web.Door {
	_, port, _ := net.SplitHostPort(listener.Addr().String()) // a listener's own address has both
	if at.listen == "" {
		say((&url.URL{Scheme: "http", Host: net.JoinHostPort(loopback, port), Path: "/"}).String())
		return web.Door{Hosts: web.Loopback()}
	}
	named, _, _ := net.SplitHostPort(at.listen) // it was listened on
	hosts := reached(named)
	keys := web.NewKeys(func(token string) {
		for _, host := range hosts {
			say((&url.URL{Scheme: "http", Host: net.JoinHostPort(host, port), Path: web.Entrance, RawQuery: url.Values{"token": {token}}.Encode()}).String())
		}
	})
	return web.Door{Hosts: append(web.Loopback(), named), Keys: keys}
}

// reached lists the hosts by which others reach a machine that listens on a host: those of all its networks if it
// listens on every one.
func reached(host string) []string {
	if ip := net.ParseIP(host); host != "" && (ip == nil || !ip.IsUnspecified()) {
		return []string{host}
	}
	var list []string
	all, _ := net.InterfaceAddrs() // a machine that cannot tell is reached as itself
	for _, a := range all {
		if n, ok := a.(*net.IPNet); ok && n.IP.IsGlobalUnicast() {
			list = append(list, n.IP.String())
		}
	}
	if len(list) == 0 {
		return []string{loopback}
	}
	return list
}

// serve answers requests until it is interrupted.
func serve(ctx context.Context, a *app, dir string, at address) error {
	folder, err := workshop.Open(dir, mostText)
	if err != nil {
		return err
	}
	defer folder.Close()
	kitchen, err := newKitchen(ctx, a, folder)
	if err != nil {
		return err
	}
	listener, err := at.open()
	if err != nil {
		return err
	}
	a.streams.limitMemory(servedAtOnce)
	server := web.New(kitchen, folder).Serving(at.door(listener, saying(a)), a.streams.Err)
	context.AfterFunc(ctx, func() { _ = server.Close() }) // what is asked for then, nobody waits for
	if err := server.Serve(listener); !errors.Is(err, http.ErrServerClosed) {
		return fail.Because(fail.Failed, err, "the page can no longer be reached", "start it again")
	}
	return nil
}

// saying prints an address of the page.
func saying(a *app) func(address string) {
	return func(address string) {
		if a.json() {
			_ = jsonreport.Serving(a.streams.Out, address) // whoever closed the output knows the address
			return
		}
		fmt.Fprintln(a.streams.Out, address)
	}
}
