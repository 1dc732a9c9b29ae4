package main

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"sipsum/internal/constituent"
)

// row is a row of data/spread.csv.
type row struct {
	constituent, group string
	relative, rounding float64
	between            float64 // relative; 0 where the evidence compares places already
	n                  int
	evidence, source   string
}

const tableSource = "SR28 (2015), analysed values with n ≥ 3 and a standard error"

// The least evidence for a row of its own.
const (
	leastOfAll   = 30 // rows, for a constituent
	leastOfGroup = 12 // rows, for a constituent in a group
)

func (r row) record() []string {
	rounding, n := "", ""
	if !math.IsNaN(r.rounding) {
		rounding = strconv.FormatFloat(r.rounding, 'g', 3, 64)
	}
	if r.n > 0 {
		n = strconv.Itoa(r.n)
	}
	return []string{r.constituent, r.group, strconv.FormatFloat(r.relative, 'g', 2, 64), strconv.FormatFloat(r.between, 'g', 2, 64), rounding, n, r.evidence, r.source}
}

// fromTable makes the rows that SR28 gives evidence for.
func fromTable(all []sample) []row {
	rows := []row{of("*", "*", all, "all constituents, ")}
	for _, class := range classes {
		from := class.pool
		if from == nil {
			from = class.members
		}
		pool := pick(all, func(s sample) bool { return slices.Contains(from, s.constituent) })
		for _, id := range class.members {
			rows = append(rows, forConstituent(all, id, pool, class.name)...)
		}
	}
	for _, id := range single {
		rows = append(rows, forConstituent(all, id, nil, "")...)
	}
	return rows
}

// forConstituent makes the row for all drink foods and the rows of groups.
func forConstituent(all []sample, id constituent.ID, pool []sample, class string) []row {
	own := pick(all, func(s sample) bool { return s.constituent == id })
	general := own
	if id == constituent.Water {
		general = pick(own, func(s sample) bool { return s.amount > dryMost })
	}
	var rows []row
	switch {
	case len(general) >= leastOfAll:
		rows = append(rows, of(string(id), "*", general, ""))
	case len(pool) > 0:
		rows = append(rows, of(string(id), "*", pool, "class "+class+", "))
	}
	groups := map[string]bool{}
	for _, s := range own {
		groups[s.group] = true
	}
	for _, group := range sortedKeys(groups) {
		evidence := own
		switch {
		case id == constituent.Fat && slices.Contains(creamy, group):
			evidence = pick(own, func(s sample) bool { return s.amount > leanMost })
		case !slices.Contains(dry, group):
			evidence = general
		}
		if r, ok := forGroup(evidence, id, group); ok {
			rows = append(rows, r)
		}
	}
	if id == constituent.Water {
		rows = append(rows, dryRows(own, rows)...)
	}
	return rows
}

// forGroup takes the group's own evidence, else its family's. Refined sugars are
// few and unlike any other food, so their sugars take what there is.
func forGroup(own []sample, id constituent.ID, group string) (row, bool) {
	in := pick(own, func(s sample) bool { return s.group == group })
	if len(in) >= leastOfGroup || group == refined && (id == constituent.Sugar || id == constituent.Sucrose) {
		return of(string(id), group, in, ""), true
	}
	for _, family := range families {
		if !slices.Contains(family, group) || group == refined {
			continue
		}
		in = pick(own, func(s sample) bool { return slices.Contains(family, s.group) })
		if len(in) >= leastOfGroup {
			return of(string(id), group, in, "family of groups, "), true
		}
	}
	return row{}, false
}

// dryRows gives the dry groups without evidence of their own the pool of all dry
// foods.
func dryRows(own []sample, have []row) []row {
	pool := pick(own, func(s sample) bool { return s.amount <= dryMost })
	var rows []row
	for _, group := range dry {
		if !slices.ContainsFunc(have, func(r row) bool { return r.group == group }) {
			rows = append(rows, of(string(constituent.Water), group, pool, fmt.Sprintf("all foods of up to %d g water, ", dryMost)))
		}
	}
	return rows
}

// of sums samples up to a row.
func of(id, group string, in []sample, about string) row {
	relative, byRange := make([]float64, len(in)), make([]float64, len(in))
	r := row{constituent: id, group: group, n: len(in), rounding: math.NaN(), source: tableSource}
	for i, s := range in {
		relative[i], byRange[i] = s.relative, s.byRange
		if string(s.constituent) == id {
			r.rounding = s.rounding
		}
	}
	if group != refined {
		r.between = betweenOf(id) * median(relative)
	}
	r.relative = math.Hypot(quantile(relative, share), r.between)
	r.evidence = fmt.Sprintf("%smedian %.2g", about, median(relative))
	if m := median(byRange); !math.IsNaN(m) {
		r.evidence += fmt.Sprintf("; by range %.2g", m)
	}
	return r
}

func pick(all []sample, want func(sample) bool) []sample {
	var in []sample
	for _, s := range all {
		if want(s) {
			in = append(in, s)
		}
	}
	return in
}

func sortedKeys(set map[string]bool) []string {
	keys := make([]string, 0, len(set))
	for k := range set {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}
