package main

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
	"io"
)

//go:embed releases.csv
var releasesCSV []byte

// file is a row of releases.csv: a file of a release.
type file struct {
	format, release, publisher, licence string
	page                                string // where the publisher offers it
	name                                string // of the file
	url                                 string // empty: to be taken from the page by hand
	sha256                              string // hexadecimal; empty if not known
	source                              string // of the address
}

// readFiles reads releases.csv.
func readFiles() ([]file, error) {
	rows, err := csv.NewReader(bytes.NewReader(releasesCSV)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("releases.csv: %w", err)
	}
	var all []file
	for _, r := range rows[1:] {
		all = append(all, file{
			format: r[0], release: r[1], publisher: r[2], licence: r[3], page: r[4], name: r[5], url: r[6], sha256: r[7], source: r[8],
		})
	}
	return all, nil
}

// list prints the files, format by format.
func list(out io.Writer, files []file) {
	for _, f := range files {
		fmt.Fprintf(out, "%s %s: %s\n  licence: %s\n", f.format, f.release, f.publisher, f.licence)
		for _, line := range []struct{ label, text string }{{"page", f.page}, {"file", f.name}, {"address", f.url}, {"source", f.source}} {
			if line.text != "" {
				fmt.Fprintf(out, "  %s: %s\n", line.label, line.text)
			}
		}
	}
}
