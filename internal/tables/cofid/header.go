package cofid

import (
	"strings"
	"unicode"

	"sipsum/internal/tables/table"
	"sipsum/internal/unit"
)

// kind is what a column of a sheet is.
type kind uint8

const (
	text    kind = iota // goes into the note
	code                // Food Code
	foodOf              // Food Name
	more                // Description
	group               // Group
	edible              // edible proportion, 0..1
	gravity             // specific gravity
	amount              // a constituent
)

// described are the columns without a unit that have a meaning of their own.
var described = map[string]kind{
	"food-code": code, "food-name": foodOf, "description": more, "group": group,
	"edible-proportion": edible, "specific-gravity": gravity,
}

// heading is a cell of a header, taken apart.
type heading struct {
	label string // as printed, without the unit
	slug  string
	unit  string // empty for a column that is no constituent
	kind  kind
}

// headingOf takes "Total sugars (g)" apart. A Greek mu is a micro sign.
func headingOf(cell string) heading {
	cell = strings.Join(strings.Fields(strings.ReplaceAll(cell, "\u03bc", "µ")), " ")
	h := heading{label: cell}
	if at := strings.LastIndex(cell, "("); at > 0 && strings.HasSuffix(cell, ")") {
		if printed := cell[at+1 : len(cell)-1]; isUnit(printed) {
			h.label, h.unit, h.kind = strings.TrimSpace(cell[:at]), printed, amount
		}
	}
	h.slug = slugOf(h.label)
	if h.unit == "" {
		h.kind = described[h.slug]
	}
	return h
}

// isUnit knows the units of mass and energy.
func isUnit(printed string) bool {
	_, mass := unit.PerGram(printed)
	return mass || printed == "kJ" || printed == "kcal" || printed == "IU"
}

// slugOf writes a name in small letters and digits with dashes between.
func slugOf(text string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }), "-")
}

// ofFat tells whether figures are per 100 g of fatty acids, not of food.
func ofFat(sheet, label string) bool {
	packed := strings.ToLower(strings.ReplaceAll(sheet+"|"+label, " ", ""))
	return strings.Contains(packed, "100gfa") || strings.Contains(packed, "100fa")
}

// fateOf finds a heading in the map; what is not in it is kept.
func fateOf(m *table.ColumnMap, h heading, sheet string) table.Mapping {
	row, ok := m.Find(h.slug)
	if !ok || ofFat(sheet, h.label) {
		return table.Mapping{Column: h.slug, Fate: table.Kept, Factor: 1, Why: "not known to the map"}
	}
	return row
}
