package jsonreport

import (
	"encoding/json"
	"io"
	"math"
	"strconv"

	"sipsum/internal/unit"
)

// number is a figure in JSON: null where there is none, and as many digits as
// a double needs to come back the same, but for the dust of a calculation.
type number float64

// MarshalJSON writes null for NaN and infinities, which JSON has no word for.
func (n number) MarshalJSON() ([]byte, error) {
	f := float64(n)
	// guard: no NaN in a document
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return []byte("null"), nil
	}
	return strconv.AppendFloat(nil, unit.Clean(f), 'g', -1, 64), nil
}

// writeLine prints a document on a line of its own, whatever stands in it.
func writeLine(w io.Writer, document any) error {
	encoder := json.NewEncoder(w)
	encoder.SetEscapeHTML(false)
	return encoder.Encode(document)
}

// write prints a document with two spaces of indentation.
func write(w io.Writer, document any) error {
	encoder := json.NewEncoder(w)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	return encoder.Encode(document)
}
