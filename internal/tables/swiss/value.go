package swiss

import (
	"fmt"
	"math"
	"strings"

	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// The works that values name.
const (
	sourced  = "swiss"
	computed = "swiss-computed"
)

// What a figure is per, as the file has it.
const (
	per100g  = "per 100g edible portion"
	per100ml = "per 100ml food volume"
)

// value reads a constituent of the current row; there is false if the file has
// no figure.
func (r *reader) value(rows *table.Rows, c column, gravity float64) (v food.Value, there bool, err error) {
	figure, err := rows.Number(c.heading)
	if err != nil {
		return v, false, err
	}
	field := func(name string) string { return rows.Text(c.heading + ": " + name) }
	unit, matrix, kind, from := field("unit"), field("matrix unit"), field("value type"), field("source")
	if !food.Stated(figure) {
		if unit+matrix+kind+from != "" {
			return v, false, rows.Wrong(c.heading, "the value is empty, but its unit, type or source is there")
		}
		return v, false, nil
	}
	if unit != c.printed {
		return v, false, rows.Wrong(c.heading+": unit", fmt.Sprintf("unit %.40q of %s should be %q", unit, c.heading, c.printed))
	}
	state, ok := r.types[kind]
	if !ok {
		return v, false, rows.Wrong(c.heading+": value type", fmt.Sprintf("value type %.40q is not known to sipsum", kind))
	}
	v = table.NewValue(c.ID(r.tableID), sourced, c.heading)
	v.State = state
	switch {
	case strings.EqualFold(from, "Computed value"):
		v.Source = computed
	case from != "":
		v.Ref += ", source " + from
	}
	share := c.Factor
	switch {
	case matrix == per100ml && !food.Stated(gravity):
		v.State = estimate.Unknown
		v.Ref += ", printed per 100 ml: " + rows.Text(c.heading)
		return v, true, nil
	case matrix == per100ml:
		share /= gravity
		v.Ref += ", printed per 100 ml: " + rows.Text(c.heading)
	case matrix != per100g:
		return v, false, rows.Wrong(c.heading+": matrix unit", fmt.Sprintf("%.40q is neither %q nor %q", matrix, per100g, per100ml))
	}
	halfDigit := math.Pow10(-c.decimals) / 2
	switch {
	case state == estimate.Trace:
		v.Limit = (figure + halfDigit) * share
	case state == estimate.Below && figure == 0:
		v.Limit = halfDigit * share
	case state == estimate.Below:
		v.Limit = figure * share
	default:
		v.Amount = figure * share
	}
	for _, x := range []float64{v.Amount, v.Limit} {
		if math.IsInf(x, 0) {
			return v, false, rows.Wrong(c.heading, fmt.Sprintf("%.40q is too large", rows.Text(c.heading)))
		}
	}
	if what := table.CannotBe(v); what != "" {
		return v, false, rows.Wrong(c.heading, fmt.Sprintf("%.40q %s", rows.Text(c.heading), what))
	}
	return v, true, nil
}
