package stfcj

import (
	"fmt"
	"strconv"
	"strings"

	"golang.org/x/text/unicode/norm"

	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// shown gives a cell as the spreadsheet shows it where its number format sets it
// in parentheses: \(0.0\) does to any number, 0.0_);\(0.0\) to a negative one,
// \(@\) to a text. Some estimated values were typed so. A format has up to four
// sections: for positive and negative numbers, zero and text.
func shown(cell, format string) string {
	if !strings.Contains(format, `\(`) {
		return cell
	}
	sections := strings.Split(format, ";")
	section := sections[0]
	if !strings.Contains(section, "@") {
		amount, minus := strings.CutPrefix(cell, "-")
		if _, what := number(amount); what != "" || minus && len(sections) == 1 {
			return cell
		}
		if minus {
			cell, section = amount, sections[1]
		}
	}
	if strings.HasPrefix(section, `\(`) {
		return "(" + cell + ")"
	}
	return cell
}

// value reads what is printed in a cell of a column; stated is false for the
// signs that say that there is no value. what is the fault, if there is one.
func (c *column) value(printed string, p part) (v food.Value, stated bool, what string) {
	v = table.NewValue(c.id, p.work(), c.Column)
	sign := strings.TrimSpace(norm.NFKC.String(printed))
	inside, wrapped := strings.CutPrefix(sign, "(")
	if wrapped {
		var closed bool
		if inside, closed = strings.CutSuffix(inside, ")"); !closed {
			return v, false, fmt.Sprintf("%.40q has no closing parenthesis", printed)
		}
		v.Source = estimated
	}
	inside = strings.TrimSuffix(strings.TrimSpace(inside), "†")
	switch {
	case sign == "-" || sign == "*":
		return v, false, ""
	case sign == "":
		return v, false, "the value is empty"
	case inside == "Tr":
		v.State, v.Limit = estimate.Trace, c.trace*c.Factor
		return v, true, ""
	}
	amount, what := number(inside)
	switch {
	case what != "":
		return v, false, what
	case amount == 0 && wrapped:
		v.State, v.Amount = estimate.Assumed, 0
	case amount == 0:
		v.State, v.Limit = estimate.Below, c.zero*c.Factor
	case wrapped || c.derived:
		v.State, v.Amount = estimate.Calculated, amount*c.Factor
	default:
		v.State, v.Amount = estimate.Measured, amount*c.Factor
	}
	return v, true, ""
}

// number reads a number as a person or a spreadsheet writes it.
func number(text string) (float64, string) {
	wrong := fmt.Sprintf("%.40q is not a number", text)
	if text == "" || strings.Trim(text, "0123456789.eE+-") != "" {
		return 0, wrong
	}
	x, err := strconv.ParseFloat(text, 64)
	switch {
	case err != nil:
		return 0, wrong
	case x < 0:
		return 0, fmt.Sprintf("%.40q is negative", text)
	}
	return x, ""
}
