package main

import (
	"bytes"
	"encoding/csv"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

func main() {
	shared := flag.String("tables", "", "folder that holds afcd2 and japan2020")
	data := flag.String("data", "data", "folder of kins.csv, in which the shares are written")
	check := flag.Bool("check", false, "compare with the file instead of writing it")
	flag.Parse()
	if err := run(*shared, *data, *check); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(shared, data string, check bool) error {
	if shared == "" {
		return fmt.Errorf("give the folder of the tables: --tables FOLDER")
	}
	content, err := generate(shared, data)
	if err != nil {
		return err
	}
	out := filepath.Join(data, "kin_shares.csv")
	if !check {
		return os.WriteFile(out, content, 0o644)
	}
	old, err := os.ReadFile(out)
	if err != nil {
		return err
	}
	if !bytes.Equal(old, content) {
		return fmt.Errorf("%s is not what the rows give: run without --check", out)
	}
	return nil
}

// generate gives the content of data/kin_shares.csv.
func generate(shared, data string) ([]byte, error) {
	rows, err := rowsOf(shared, data)
	if err != nil {
		return nil, err
	}
	kins, err := kinsOf(filepath.Join(data, "kins.csv"), rows)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	if err := w.Write([]string{"kin", "constituent", "share", "sd", "low", "high", "n_rows", "rows", "source"}); err != nil {
		return nil, err
	}
	f := widths(kins)
	for i, k := range kins {
		var sources []string
		for _, r := range k.rows {
			if !slices.Contains(sources, r.source) {
				sources = append(sources, r.source)
			}
		}
		for _, s := range k.shares(f[i]) {
			record := []string{k.name, string(s.id), digits(s.mean), digits(s.sd), digits(s.low), digits(s.high), strconv.Itoa(s.n), strings.Join(k.names, " "), strings.Join(sources, "; ")}
			if err := w.Write(record); err != nil {
				return nil, err
			}
		}
	}
	w.Flush()
	return b.Bytes(), w.Error()
}

func digits(x float64) string { return strconv.FormatFloat(x, 'f', 4, 64) }
