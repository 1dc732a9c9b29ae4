package main

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

//go:embed literature.csv
var literatureRows string

//go:embed sources.csv
var sourceRows string

// report is a published spread: a row of literature.csv.
type report struct {
	constituent, group string
	relative           float64
	n                  int // samples; 0 if not stated
	source             string
}

// literature reads the published spreads and names their sources in full.
func literature() ([]report, error) {
	citations := map[string]string{}
	rows, err := csv.NewReader(strings.NewReader(sourceRows)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("sources.csv: %w", err)
	}
	for _, r := range rows[1:] {
		citations[r[0]] = r[1]
	}
	rows, err = csv.NewReader(strings.NewReader(literatureRows)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("literature.csv: %w", err)
	}
	var all []report
	for i, r := range rows[1:] {
		one, err := parseReport(r)
		if err != nil {
			return nil, fmt.Errorf("literature.csv:%d: %w", i+2, err)
		}
		citation, ok := citations[r[7]]
		if !ok {
			return nil, fmt.Errorf("literature.csv:%d: source %q is not in sources.csv", i+2, r[7])
		}
		one.source = citation
		all = append(all, one)
	}
	return all, nil
}

// parseReport reads constituent,groups,mean,sd,low,high,n,source,note: a mean
// with its deviation, or a range, which is rectangular if it has no number of
// samples.
func parseReport(r []string) (report, error) {
	one := report{constituent: r[0], group: r[1]}
	var x [5]float64
	for i, text := range r[2:7] {
		x[i] = math.NaN()
		if text == "" {
			continue
		}
		var err error
		if x[i], err = strconv.ParseFloat(text, 64); err != nil {
			return one, err
		}
	}
	mean, sd, low, high, n := x[0], x[1], x[2], x[3], x[4]
	if !math.IsNaN(n) {
		one.n = int(n)
	}
	one.relative = sd / mean
	if math.IsNaN(sd) {
		if math.IsNaN(mean) {
			mean = (low + high) / 2
		}
		divisor := math.Sqrt(12) // of a rectangular distribution: JCGM 100:2008, 4.3.7
		if one.n > 0 {
			divisor = estimate.RangeDivisor(one.n)
		}
		one.relative = (high - low) / divisor / mean
	}
	if !(one.relative > 0) {
		return one, fmt.Errorf("neither a mean with its deviation nor a range")
	}
	return one, nil
}

// unknownToTable are the constituents besides acids of which SR28 has no values,
// or a handful.
var unknownToTable = []string{"CHLRAC", "trigonelline", "CAFFN"}

// fromLiterature gives each constituent and group the median of its reports; the
// acids and what else SR28 lacks get a row for all foods, the median over groups,
// and OA the median over all acids.
func fromLiterature(all []report) []row {
	byKey := map[[2]string][]report{}
	var keys [][2]string
	add := func(id, group string, r report) {
		key := [2]string{id, group}
		if byKey[key] == nil {
			keys = append(keys, key)
		}
		byKey[key] = append(byKey[key], r)
	}
	for _, r := range all {
		add(r.constituent, r.group, r)
		acid := constituent.Must(constituent.ID(r.constituent)).Parent == constituent.OrganicAcids
		if acid {
			add(string(constituent.OrganicAcids), "*", r)
		}
		if acid || slices.Contains(unknownToTable, r.constituent) {
			add(r.constituent, "*", r)
		}
		if r.constituent == string(constituent.Caffeine) {
			add("THEBRN", "*", r) // the other xanthine, of which there are no reports
		}
	}
	rows := make([]row, 0, len(keys))
	for _, key := range keys {
		rows = append(rows, sumUp(key, byKey[key]))
	}
	return rows
}

func sumUp(key [2]string, reports []report) row {
	relative := make([]float64, len(reports))
	var sources []string
	for i, r := range reports {
		relative[i] = r.relative
		if !slices.Contains(sources, r.source) {
			sources = append(sources, r.source)
		}
	}
	slices.Sort(sources)
	return row{
		constituent: key[0], group: key[1], relative: median(relative), rounding: math.NaN(), n: len(reports),
		evidence: fmt.Sprintf("literature, %.2g to %.2g", slices.Min(relative), slices.Max(relative)),
		source:   strings.Join(sources, "; "),
	}
}
