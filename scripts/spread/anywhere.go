package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
)

// anywhere gives the content of data/anywhere.csv as it is without one of the tables, and
// without those that are kept back.
func (l *library) anywhere(without string) ([]byte, error) {
	hidden := map[string]bool{without: true}
	for _, s := range l.others {
		hidden[s.format] = hidden[s.format] || s.keptBack
	}
	var seen []comparison
	for _, c := range l.apart {
		if !hidden[c.table] {
			seen = append(seen, c)
		}
	}
	lies := learn(seen)
	tail := strconv.FormatFloat(lies.tail(), 'g', 2, 64)
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	rows := [][]string{{"constituent", "class", "relative_sd", "tail", "foods", "evidence"}}
	for _, id := range compared() {
		for _, class := range classesOfFoods() {
			sigma, n, ok := lies.between(string(id), class)
			if !ok {
				continue
			}
			sd := math.Sqrt(math.Expm1(sigma * sigma)) // by moments, as it is drawn
			rows = append(rows, []string{string(id), class, strconv.FormatFloat(sd, 'g', 2, 64), tail, strconv.Itoa(n), lies.told(string(id), class, n)})
		}
	}
	if err := w.WriteAll(rows); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// told says what a row rests on.
func (l *lies) told(id, class string, n int) string {
	if n == 0 {
		return fmt.Sprintf("as its kind, %s", kindOf(id).name)
	}
	sample := l.sample[[2]string{id, class}]
	return fmt.Sprintf("apart by %.2g in the middle, %.2g at 85 %%, in %d comparisons", math.Expm1(sample.quantile(0.5)), math.Expm1(sample.quantile(0.85)), len(sample))
}
