package drink

import (
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// measuredKeys is the readings that a bench can take of a pot.
var measuredKeys = grammar[Measured]{"measured", []key[Measured]{
	mass("mass", "the mass in the pot", func(m *Measured) **unit.Amount { return &m.Mass }),
	scaled("brix", "the refractometer's reading", brixScale, func(m *Measured) **Quantity { return &m.Brix }),
	scaled("tds", "dissolved solids", percent, func(m *Measured) **Quantity { return &m.TDS }),
	scaled("ph", "the meter's reading", phScale, func(m *Measured) **Quantity { return &m.PH }),
	scaled("ta", "titratable acidity as citric acid", acidity, func(m *Measured) **Quantity { return &m.TA }),
	into("titration", "a bench titration, base (or acid) added so far and the pH then: [[0 ml, 3.42], [2 ml, 3.70], [4 ml, 4.05]]", false, listOf(pointShape),
		(*reader).points, func(m *Measured) *[]TitrationPoint { return &m.Titration }),
	scaled("base", "the strength of the titration's base", molarity, func(m *Measured) **Quantity { return &m.Base }),
	scaled("acid", "the strength of the titration's acid, counted by its protons: the pH falls", molarity, func(m *Measured) **Quantity { return &m.Acid }),
	amount("sample", "how much was titrated; 10 g if it is left out", either, func(m *Measured) **unit.Amount { return &m.Sample }),
	scaled("density", "the density", density, func(m *Measured) **Quantity { return &m.Density }),
	scaled("abv", "alcohol by volume", percent, func(m *Measured) **Quantity { return &m.ABV }),
	into("meter", "which instrument of the shelf of meters read it, or a list; the only one of its kind counts unnamed", false, anyOf(textShape(mostName), listOf(textShape(mostName))),
		meterNames, func(m *Measured) *[]Word { return &m.Meters }),
	into("day", "when it was read: 2027-03-31; a meter is known the less the longer nobody has checked it", false, textShape(mostName),
		dayOf, func(m *Measured) *int { return &m.Day }),
}}

// aboutReadings are the keys of measured that are no reading.
var aboutReadings = []string{"meter", "day"}

// pointShape is one point of a titration: [volume, pH].
var pointShape = shape{
	"type": "array", "minItems": 2, "maxItems": 2,
	"prefixItems": []shape{amountShape(volumeOnly), quantityShape(phScale)},
}

// points reads the points of a titration curve, each like [2 ml, 3.70]; none if one of
// them is at fault.
func (r *reader) points(n ast.Node, what string) []TitrationPoint {
	entries, ok := r.list(n, what)
	before := r.faults.Len()
	out := make([]TitrationPoint, len(entries))
	for i, e := range entries {
		pair, isList := r.list(e, "a point of the titration")
		if len(pair) == 2 {
			out[i] = TitrationPoint{Place: r.nodeAt(e), Volume: r.bound(pair[0], "volume", volumeOnly)}
			if q := r.quantity(pair[1], "ph", phScale); q != nil {
				out[i].PH = q.Number
			}
		} else if isList {
			r.faults.Add(r.nodeAt(e), "write it like [2 ml, 3.70]", "a point of the titration is a volume and a pH")
		}
	}
	if !ok || r.faults.Len() > before {
		return nil
	}
	return out
}

// readMeasured reads readings and tells whether they are without fault.
func readMeasured(r *reader, head Head, n ast.Node) (*Measured, bool) {
	m := &Measured{Head: head}
	before := r.faults.Len()
	present, ok := measuredKeys.read(r, m, n)
	if ok && len(present) == present.count(aboutReadings...) && r.faults.Len() == before {
		r.faults.Add(r.nodeAt(n), "give a reading: "+fail.Or(readings), "measured holds no reading")
	}
	if present.has("titration") {
		r.checkTitration(m, r.nodeAt(n), present)
	} else if i := slices.IndexFunc(titrationKeys, present.has); i >= 0 {
		r.faults.Add(present[titrationKeys[i]], "add the points, or take "+titrationKeys[i]+" out", "%s belongs to a titration, and there is none", titrationKeys[i])
	}
	return m, ok && r.faults.Len() == before
}

// Of gives the component that was read; none for the drink.
func (m *Measured) Of() []string {
	owner := Owner(m.StepPath())
	if owner == "finish" {
		return nil
	}
	return []string{owner}
}

// What names what was read, for a reader: a component, or the drink.
func (m *Measured) What() string {
	if of := m.Of(); len(of) > 0 {
		return of[0]
	}
	return "the drink"
}

// Pot names the pot of a reading: its path without the word.
func (m *Measured) Pot() string {
	path, _ := strings.CutSuffix(m.StepPath(), "/end/measured")
	return path
}
