package main

import (
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"slices"
)

// How the values of a food are made.
const (
	whole      = ""
	pressed    = "pressed"
	chemical   = "chemical"
	literature = "literature"
)

// picks are the files of the core table that people keep by hand.
type picks struct {
	foods      []record
	chemicals  map[string]record   // by code
	literature map[string][]record // by code
}

// record is a row of a CSV file by column name.
type record map[string]string

func readPicks(folder string) (picks, error) {
	foods, err := readRecords(filepath.Join(folder, "foods.csv"))
	if err != nil {
		return picks{}, err
	}
	known := map[string]bool{}
	for _, f := range foods {
		if known[f["code"]] {
			return picks{}, fmt.Errorf("foods.csv: %s stands twice", f["code"])
		}
		known[f["code"]] = true
		if needs := f["use"] == whole || f["use"] == pressed; needs != (f["sr"] != "") {
			return picks{}, fmt.Errorf("foods.csv: %s: use %q and sr %q do not go together", f["code"], f["use"], f["sr"])
		}
		if !slices.Contains([]string{whole, pressed, chemical, literature}, f["use"]) {
			return picks{}, fmt.Errorf("foods.csv: %s: use %q is not known", f["code"], f["use"])
		}
	}
	p := picks{foods: foods, chemicals: map[string]record{}, literature: map[string][]record{}}
	chemicals, err := readRecords(filepath.Join(folder, "chemicals.csv"))
	if err != nil {
		return picks{}, err
	}
	for _, c := range chemicals {
		if !known[c["code"]] {
			return picks{}, fmt.Errorf("chemicals.csv: %s is not in foods.csv", c["code"])
		}
		p.chemicals[c["code"]] = c
	}
	published, err := readRecords(filepath.Join(folder, "literature.csv"))
	if err != nil {
		return picks{}, err
	}
	for _, row := range published {
		if !known[row["code"]] {
			return picks{}, fmt.Errorf("literature.csv: %s is not in foods.csv", row["code"])
		}
		p.literature[row["code"]] = append(p.literature[row["code"]], row)
	}
	return p, nil
}

func readRecords(path string) ([]record, error) {
	file, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	if len(lines) == 0 {
		return nil, fmt.Errorf("%s is empty", path)
	}
	var rows []record
	for _, line := range lines[1:] {
		row := record{}
		for i, column := range lines[0] {
			row[column] = line[i]
		}
		rows = append(rows, row)
	}
	return rows, nil
}
