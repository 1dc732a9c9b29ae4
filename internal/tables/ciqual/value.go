package ciqual

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// The columns that depend on each other.
const (
	carbohydrate = "31000" // polyols included
	polyols      = "34000"
)

// value reads a cell. there is false if nothing was determined; wrong is what is
// wrong with the cell, empty if nothing is.
func (c column) value(tableID, cell string) (v food.Value, there bool, wrong string) {
	v = table.NewValue(c.ID(tableID), work, c.Column)
	limit, below := strings.CutPrefix(cell, "<")
	switch {
	case cell == "" || cell == "-":
		return v, false, ""
	case cell == "traces":
		v.State, v.Limit = estimate.Trace, c.halfDigit()
	case below:
		x, wrong := number(strings.TrimSpace(limit))
		if wrong != "" {
			return v, false, wrong
		}
		v.State, v.Limit = estimate.Below, x*c.Factor
		if x == 0 { // a limit that was rounded to nothing
			v.Limit = c.halfDigit()
		}
	default:
		x, wrong := number(cell)
		if wrong != "" {
			return v, false, wrong
		}
		v.State, v.Amount = estimate.Calculated, x*c.Factor
	}
	if wrong := table.CannotBe(v); wrong != "" {
		return v, false, fmt.Sprintf("%.40q %s", cell, wrong)
	}
	return v, true, ""
}

// halfDigit is half the last digit that the figures of the column commonly
// print, in the unit stored.
func (c column) halfDigit() float64 { return math.Pow10(-c.decimals) / 2 * c.Factor }

// number reads digits with at most one decimal sign, digits on both its sides.
func number(text string) (x float64, wrong string) {
	whole, fraction, decimals := strings.Cut(strings.Replace(text, ",", ".", 1), ".")
	if strings.HasPrefix(text, "-") {
		return 0, fmt.Sprintf("%.40q is negative", text)
	}
	if !digits(whole) || decimals && !digits(fraction) {
		return 0, fmt.Sprintf("%.40q is not a number", text)
	}
	x, err := strconv.ParseFloat(whole+"."+fraction, 64)
	if err != nil {
		return 0, fmt.Sprintf("%.40q is too large for a number", text)
	}
	return x, ""
}

func digits(text string) bool { return text != "" && strings.Trim(text, "0123456789") == "" }

// takePolyolsOff makes the published carbohydrate of a food, which holds its
// polyols, the available carbohydrate.
func takePolyolsOff(values []food.Value, available, polyol constituent.ID) {
	var whole, part *food.Value
	for i := range values {
		switch v := &values[i]; v.Constituent {
		case available:
			whole = v
		case polyol:
			part = v
		}
	}
	switch {
	case whole == nil || !food.Stated(whole.Amount):
		return
	case part == nil:
		whole.Ref += ", polyols not stated"
	case food.Stated(part.Amount):
		if part.Amount == 0 {
			return
		}
		whole.Ref = fmt.Sprintf("%s − %s: %g − %g", carbohydrate, polyols, whole.Amount, part.Amount)
		whole.Low, whole.High = less(whole.Low, part.Amount), less(whole.High, part.Amount)
		if whole.Amount = less(whole.Amount, part.Amount); food.Stated(whole.Amount) {
			return
		}
		whole.State, whole.Limit = estimate.Unknown, food.None // the polyols are of another sample
	default: // trace or below: anywhere between none and the limit
		whole.Ref = fmt.Sprintf("%s − %s: %g − at most %g", carbohydrate, polyols, whole.Amount, part.Limit)
		most := min(part.Limit, whole.Amount)
		if !food.Stated(whole.Low) && !food.Stated(whole.High) {
			whole.Low, whole.High = whole.Amount-most, whole.Amount
		}
		whole.Amount -= most / 2
	}
}

// less takes a part off; None if the part is more than all.
func less(whole, part float64) float64 {
	if part > whole {
		return food.None
	}
	return whole - part
}
