package table

import (
	"math"
	"strconv"
	"strings"
)

// ParsePrinted reads a number as tables print it: digits, one decimal point and
// perhaps an exponent; ok is false for all else, for negative numbers and for
// those too large for any unit of a table.
func ParsePrinted(text string) (x float64, ok bool) {
	if text == "" || text[0] == '-' || strings.Trim(text, "0123456789.eE+-") != "" {
		return 0, false
	}
	x, err := strconv.ParseFloat(text, 64)
	return x, err == nil && x <= largest
}

// largest is more than any table prints, in any unit.
const largest = 1e12

// LastDigits tells to which decimal each column of a table is printed. Tables
// that do not state it drop trailing zeros and hold stray digits of conversions,
// so it is the last decimal that at least one number in twenty of the column
// reaches.
type LastDigits struct {
	counts map[int]*[mostDecimals + 1]int // by column: numbers with so many decimals
}

// mostDecimals is more than any agency prints.
const mostDecimals = 9

// Add counts a number of a column. A spreadsheet stores 9.7 as
// 9.6999999999999993; the shortest text of the same number counts.
func (d *LastDigits) Add(column int, x float64) {
	if d.counts == nil {
		d.counts = map[int]*[mostDecimals + 1]int{}
	}
	n := d.counts[column]
	if n == nil {
		n = new([mostDecimals + 1]int)
		d.counts[column] = n
	}
	_, decimals, _ := strings.Cut(strconv.FormatFloat(x, 'f', -1, 64), ".")
	n[min(len(decimals), mostDecimals)]++
}

// Decimals gives the decimals of a column; -1 if it has no number.
func (d *LastDigits) Decimals(column int) int {
	n := d.counts[column]
	if n == nil {
		return -1
	}
	total := 0
	for _, c := range n {
		total += c
	}
	const oneIn = 20
	reach := 0
	for decimals := mostDecimals; decimals >= 0; decimals-- {
		if reach += n[decimals]; reach*oneIn >= total {
			return decimals
		}
	}
	return 0
}

// Half gives half of the last digit of a column, in the unit printed; NaN if the
// column has no number.
func (d *LastDigits) Half(column int) float64 {
	decimals := d.Decimals(column)
	if decimals < 0 {
		return math.NaN()
	}
	return math.Pow10(-decimals) / 2
}
