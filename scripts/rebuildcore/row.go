package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

var columns = []string{"code", "constituent", "amount", "sd", "n", "low", "high", "state", "source", "ref"}

// build makes the rows of values.csv in the order of foods.csv and of the
// vocabulary.
func build(p picks, sr map[string]*food.Food) ([]record, error) {
	made := map[string]map[constituent.ID]record{}
	for _, f := range p.foods {
		byID, err := make100g(p, sr, f)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", f["code"], err)
		}
		for _, row := range p.literature[f["code"]] {
			byID[constituent.ID(row["constituent"])] = row
		}
		made[f["code"]] = byID
	}
	var rows []record
	for _, f := range p.foods {
		byID := maps.Clone(made[f["code"]])
		for id, row := range byID {
			lent, err := lend(made, row, id)
			if err != nil {
				return nil, fmt.Errorf("%s: %w", f["code"], err)
			}
			byID[id] = lent
		}
		for _, c := range constituent.All() {
			if row, ok := byID[c.ID]; ok {
				rows = append(rows, row)
				delete(byID, c.ID)
			}
		}
		if len(byID) > 0 {
			return nil, fmt.Errorf("%s: not in the vocabulary: %v", f["code"], slices.Sorted(maps.Keys(byID)))
		}
	}
	return rows, nil
}

// make100g gives the values of a food without the literature.
func make100g(p picks, sr map[string]*food.Food, f record) (map[constituent.ID]record, error) {
	switch f["use"] {
	case chemical:
		c, ok := p.chemicals[f["code"]]
		if !ok {
			return nil, fmt.Errorf("no row in chemicals.csv")
		}
		return byFormula(c)
	case literature:
		return map[constituent.ID]record{}, nil
	case pressed:
		return press(f, sr[f["sr"]])
	}
	return take(f, sr[f["sr"]]), nil
}

func encode(rows []record) ([]byte, error) {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	if err := w.Write(columns); err != nil {
		return nil, err
	}
	for _, row := range rows {
		cells := make([]string, len(columns))
		for i, column := range columns {
			cells[i] = row[column]
		}
		if err := w.Write(cells); err != nil {
			return nil, err
		}
	}
	w.Flush()
	return out.Bytes(), w.Error()
}

// spread writes a standard deviation. A printed 0 only says that it is less than
// the last decimal: then none is stated.
func spread(sd float64) string {
	if sd == 0 {
		return ""
	}
	return rounded(sd, digits)
}

// printed writes a number as it was read; nothing if it is not stated.
func printed(x float64) string {
	if !food.Stated(x) {
		return ""
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// rounded writes a calculated number with so many significant digits.
func rounded(x float64, digits int) string {
	if !food.Stated(x) {
		return ""
	}
	if x == 0 {
		return "0"
	}
	scale := math.Pow10(digits - 1 - int(math.Floor(math.Log10(math.Abs(x)))))
	return strconv.FormatFloat(math.Round(x*scale)/scale, 'f', -1, 64)
}
