package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"flag"
	"fmt"
	"os"
)

func main() {
	folder := flag.String("sr", "", "folder of the SR28 files")
	out := flag.String("out", "data/spread.csv", "file to write")
	check := flag.Bool("check", false, "compare with the file instead of writing it")
	flag.Parse()
	if err := run(*folder, *out, *check); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(folder, out string, check bool) error {
	if folder == "" {
		return fmt.Errorf("give the folder of the SR28 files: --sr FOLDER")
	}
	content, err := generate(context.Background(), folder)
	if err != nil {
		return err
	}
	if !check {
		return os.WriteFile(out, content, 0o644)
	}
	old, err := os.ReadFile(out)
	if err != nil {
		return err
	}
	if !bytes.Equal(old, content) {
		return fmt.Errorf("%s is not what the sources give: run without --check", out)
	}
	return nil
}

// generate gives the content of data/spread.csv.
func generate(ctx context.Context, folder string) ([]byte, error) {
	samples, err := collect(ctx, folder)
	if err != nil {
		return nil, err
	}
	reports, err := literature()
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	if err := w.Write([]string{"constituent", "group", "relative_sd", "between_sd", "rounding", "n", "evidence", "source"}); err != nil {
		return nil, err
	}
	for _, row := range merge(fromTable(samples), fromLiterature(reports)) {
		if err := w.Write(row.record()); err != nil {
			return nil, err
		}
	}
	w.Flush()
	return b.Bytes(), w.Error()
}
