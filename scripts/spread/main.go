package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"flag"
	"fmt"
	"os"
	"path/filepath"
)

func main() {
	folder := flag.String("tables", "", "folder of the published tables: sr28, ciqual2020 …")
	out := flag.String("out", "data", "folder to write to")
	check := flag.Bool("check", false, "compare with the files instead of writing them")
	report := flag.Bool("report", false, "print how far the intervals hold what tables print that nothing was derived from")
	flag.Parse()
	if err := run(*folder, *out, *check, *report); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(folder, out string, check, report bool) error {
	if folder == "" {
		return fmt.Errorf("give the folder of the published tables: --tables FOLDER")
	}
	l, err := readLibrary(context.Background(), folder)
	if err != nil {
		return err
	}
	if report {
		return l.report(os.Stdout)
	}
	for _, file := range []struct {
		name    string
		content func() ([]byte, error)
	}{
		{"spread.csv", l.spread},
		{"anywhere.csv", func() ([]byte, error) { return l.anywhere(nobody) }},
	} {
		content, err := file.content()
		if err != nil {
			return err
		}
		if err := put(filepath.Join(out, file.name), content, check); err != nil {
			return err
		}
	}
	return nil
}

// put writes a file, or compares it with what stands there.
func put(path string, content []byte, check bool) error {
	if !check {
		return os.WriteFile(path, content, 0o644)
	}
	old, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	if !bytes.Equal(old, content) {
		return fmt.Errorf("%s is not what the sources give: run without --check", path)
	}
	return nil
}

// nobody is left out.
const nobody = ""

// library is all that the spreads are made from.
type library struct {
	lots    []sample
	reports []report
	own     *shelf
	others  []*shelf
	baskets []*basket
	apart   []comparison
}

func readLibrary(ctx context.Context, folder string) (*library, error) {
	l := &library{}
	var err error
	if l.lots, err = collect(ctx, filepath.Join(folder, "sr28")); err != nil {
		return nil, err
	}
	if l.reports, err = literature(); err != nil {
		return nil, err
	}
	if l.own, err = coreShelf(ctx, folder); err != nil {
		return nil, err
	}
	for _, p := range publishers {
		s, err := p.read(ctx, folder)
		if err != nil {
			return nil, err
		}
		if s != nil {
			l.others = append(l.others, s)
		}
	}
	l.baskets = fill(l.own, l.others)
	strangers(l.baskets)
	for _, b := range l.baskets {
		l.apart = append(l.apart, b.compare()...)
	}
	return l, nil
}

// spread gives the content of data/spread.csv.
func (l *library) spread() ([]byte, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	if err := w.Write([]string{"constituent", "group", "relative_sd", "between_sd", "rounding", "n", "evidence", "source"}); err != nil {
		return nil, err
	}
	for _, row := range merge(fromTable(l.lots), fromLiterature(l.reports)) {
		if err := w.Write(row.record()); err != nil {
			return nil, err
		}
	}
	w.Flush()
	return b.Bytes(), w.Error()
}
