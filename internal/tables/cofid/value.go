package cofid

import (
	"strings"

	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// meaning reads a mark: Tr, N or "< 0.1", whose limit is in the unit printed.
func meaning(text string) (v food.Value, known bool) {
	v = table.NewValue("", work, "")
	switch {
	case strings.EqualFold(text, "Tr"):
		v.State = estimate.Trace
	case text == "N":
		v.State = estimate.Unknown
	case strings.HasPrefix(text, "<"):
		limit, ok := table.ParsePrinted(strings.TrimSpace(text[1:]))
		if !ok || limit == 0 {
			return v, false
		}
		v.State, v.Limit = estimate.Below, limit
	default:
		return v, false
	}
	return v, true
}

// valueOf says what a cell means; ok is false for an empty one. gravity is the
// mass of 1 ml for a food printed per 100 ml, else 1.
func valueOf(c column, in cell, gravity float64) (v food.Value, ok bool) {
	scale := c.scale
	if !c.fat {
		scale /= gravity
	}
	if in.text == "" && food.Stated(in.x) {
		v, _ = meaning("N")
		v.Amount, v.State = in.x*scale, estimate.Calculated
	} else if v, ok = meaning(in.text); !ok {
		return v, false
	}
	v.Constituent = c.id
	switch v.State {
	case estimate.Below:
		v.Limit *= scale
	case estimate.Trace:
		v.Limit = c.limit / c.scale * scale
	}
	return v, true
}
