package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"net/http"
	"os"
	"os/signal"
)

func main() {
	get := flag.String("get", "", "format to fetch, such as cnf")
	to := flag.String("to", "", "folder to fetch into")
	sum := flag.String("sha256", "", "sum that the one file must have")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if err := run(ctx, os.Stdout, *get, *to, *sum); err != nil {
		fmt.Fprintln(os.Stderr, "download:", err)
		stop()
		os.Exit(1)
	}
}

// run lists the files, or fetches those of a format.
func run(ctx context.Context, out io.Writer, format, to, sum string) error {
	files, err := readFiles()
	if err != nil {
		return err
	}
	if format == "" {
		list(out, files)
		return nil
	}
	if to == "" {
		return errors.New("say into which folder: -to DIR")
	}
	var wanted []file
	for _, f := range files {
		if f.format == format {
			wanted = append(wanted, f)
		}
	}
	if len(wanted) == 0 {
		return fmt.Errorf("no release of format %q is listed", format)
	}
	if err := os.MkdirAll(to, 0o755); err != nil {
		return err
	}
	return getAll(ctx, &fetcher{client: client(), out: out, progress: newProgress(os.Stderr)}, wanted, to, sum)
}

// getAll fetches files; sum, if given, is that of the only one.
func getAll(ctx context.Context, f *fetcher, files []file, to, sum string) error {
	fetched := 0
	for _, each := range files {
		if each.url == "" {
			fmt.Fprintf(f.out, "%s %s: no address is known; take %s from %s\n", each.format, each.release, orThe(each.name, "the files"), orThe(each.page, "the publisher"))
			continue
		}
		if sum != "" {
			if fetched > 0 {
				return errors.New("-sha256 is for a format of one file")
			}
			each.sha256 = sum
		}
		fetched++
		if err := f.get(ctx, each, to); err != nil {
			return fmt.Errorf("%s: %w (see %s)", each.name, err, each.page)
		}
	}
	return nil
}

func orThe(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}

// client follows redirects to https only.
func client() *http.Client {
	return &http.Client{CheckRedirect: func(request *http.Request, via []*http.Request) error {
		const most = 10
		switch {
		case request.URL.Scheme != "https":
			return fmt.Errorf("it leads to %s, which is not https", request.URL.Redacted())
		case len(via) >= most:
			return errors.New("it leads in a circle")
		}
		return nil
	}}
}
