package data_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"sipsum/internal/label"
)

// references are daily values by rules and row, and by how much the steps of the rules may
// move a percentage.
type references map[[2]string]reference

type reference struct {
	value float64
	even  bool // 21 CFR 101.9(c)(8)(iii): to 2, 5 or 10 per cent
}

func referencesOf(t *testing.T) references {
	t.Helper()
	values := map[[2]string]float64{}
	for _, r := range rows(t, "daily_values.csv") {
		values[[2]string{r["rules"], r["key"]}] = number(t, r, "value")
	}
	like := map[string]string{}
	for _, r := range rows(t, "card_rules.csv") {
		like[r["rules"]] = r["like"]
	}
	list, all := rows(t, "card_rows.csv"), references{}
	add := func(rules, of string) {
		for _, r := range list {
			value, ok := values[[2]string{rules, r["reference"]}]
			if !ok {
				value, ok = values[[2]string{of, r["reference"]}]
			}
			if r["rules"] == of && ok && r["percent_terms"] == "" { // shared ones are of two rows
				all[[2]string{rules, r["key"]}] = reference{value, r["percent"] == "dv-vitamin"}
			}
		}
	}
	for rules, of := range like {
		add(rules, rules)
		add(rules, of)
	}
	return all
}

// faults tells which percentages of a card are not those of the figures beside them: of the
// unrounded figure or of the printed one, rounded to the steps of the rules.
func (refs references) faults(c label.Card) []string {
	var out []string
	for _, r := range c.Rows {
		cell := r.Serving
		if cell == nil || cell.Value == nil || cell.Reference+cell.DailyValue == "" {
			continue
		}
		ref, ok := refs[[2]string{c.Rules, r.Key}]
		if !ok {
			continue
		}
		percent, err := strconv.ParseFloat(strings.TrimSuffix(cell.Reference+cell.DailyValue, " %"), 64)
		low, high, number := printedRange(cell)
		if !number {
			low, high = *cell.Value, *cell.Value
		}
		low, high = 100*min(low, *cell.Value)/ref.value, 100*max(high, *cell.Value)/ref.value
		if err != nil || math.IsNaN(percent) || percent < low-ref.half(low)-nothing || percent > high+ref.half(high)+nothing {
			out = append(out, fmt.Sprintf("%s %q is %q of %g", r.Key, cell.Printed, cell.Reference+cell.DailyValue, ref.value))
		}
	}
	return out
}

// half is half of the step to which a percentage is rounded; below 2 the vitamins print 0.
func (r reference) half(percent float64) float64 {
	switch {
	case !r.even:
		return 0.5
	case percent <= 2:
		return 2
	case percent <= 10:
		return 1
	case percent <= 50:
		return 2.5
	}
	return 5
}
