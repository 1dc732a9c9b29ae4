package drink

import (
	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/unit"
)

// measuredKeys is the readings that a bench can take of a pot.
var measuredKeys = grammar[Measured]{"measured", []key[Measured]{
	mass("mass", "the mass in the pot", func(m *Measured) **unit.Amount { return &m.Mass }),
	scaled("brix", "the refractometer's reading", false, brixScale, func(m *Measured) **Quantity { return &m.Brix }),
	scaled("tds", "dissolved solids", false, percent, func(m *Measured) **Quantity { return &m.TDS }),
	scaled("ph", "the meter's reading", false, phScale, func(m *Measured) **Quantity { return &m.PH }),
	scaled("ta", "titratable acidity as citric acid", false, acidity, func(m *Measured) **Quantity { return &m.TA }),
	{"titration", "a bench titration, base added so far and the pH then: [[0 ml, 3.42], [2 ml, 3.70]]", false, listOf(pointShape), func(r *reader, m *Measured, n ast.Node) {
		m.Titration = r.points(n)
	}},
	scaled("base", "the strength of the titration's base", false, molarity, func(m *Measured) **Quantity { return &m.Base }),
	{"sample", "how much was titrated", false, amountShape(either), func(r *reader, m *Measured, n ast.Node) {
		m.Sample = r.amount(n, "sample", either)
	}},
	scaled("density", "the density", false, density, func(m *Measured) **Quantity { return &m.Density }),
	scaled("abv", "alcohol by volume", false, percent, func(m *Measured) **Quantity { return &m.ABV }),
}}

// pointShape is one point of a titration: [volume, pH].
var pointShape = shape{
	"type": "array", "minItems": 2, "maxItems": 2,
	"prefixItems": []shape{amountShape(volumeOnly), quantityShape(phScale)},
}

// points reads a titration curve: more base and a higher pH at each point.
func (r *reader) points(n ast.Node) []TitrationPoint {
	entries, ok := r.list(n, "titration")
	if !ok {
		return nil
	}
	var out []TitrationPoint
	for _, e := range entries {
		p, ok := r.point(e)
		if !ok {
			return nil
		}
		if last := len(out) - 1; last >= 0 && (p.Volume.Base() <= out[last].Volume.Base() || p.PH < out[last].PH) {
			r.faults.Add(r.nodeAt(e), "list the points as they were read: more base, higher pH", "this point does not follow the one before")
			return nil
		}
		out = append(out, p)
	}
	if len(out) < 2 {
		r.faults.Add(r.nodeAt(n), "give at least two points", "a titration has %d points", len(out))
	}
	return out
}

// point reads [2 ml, 3.70].
func (r *reader) point(n ast.Node) (TitrationPoint, bool) {
	pair, ok := r.list(n, "a point of the titration")
	if !ok {
		return TitrationPoint{}, false
	}
	if len(pair) != 2 {
		r.faults.Add(r.nodeAt(n), "write it like [2 ml, 3.70]", "a point of the titration is a volume and a pH")
		return TitrationPoint{}, false
	}
	before := r.faults.Len()
	p := TitrationPoint{Volume: r.bound(pair[0], "volume", volumeOnly)}
	if q := r.quantity(pair[1], "ph", phScale); q != nil {
		p.PH = q.Number
	}
	return p, r.faults.Len() == before
}

// readMeasured reads readings and tells whether they are without fault.
func readMeasured(r *reader, head Head, n ast.Node) (*Measured, bool) {
	m := &Measured{Head: head}
	before := r.faults.Len()
	present, ok := measuredKeys.read(r, m, n)
	if ok && len(present) == 0 && r.faults.Len() == before {
		r.faults.Add(r.nodeAt(n), "give a reading: "+alternatives(measuredKeys.names()), "measured holds no reading")
	}
	if m.Titration != nil && m.Base == nil {
		r.faults.Add(r.nodeAt(n), "add base: 0.1 mol/l", "a titration needs the strength of its base")
	}
	return m, ok && r.faults.Len() == before
}
