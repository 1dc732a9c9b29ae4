package bench

import (
	"slices"

	"sipsum/internal/drink"
)

// logged reports whether the bench log has what was read; m may be nil.
func logged(m *drink.Measured) bool { return m != nil && len(m.Logged) > 0 }

// meters names those of the shelf by which a reading of the fields may have been taken.
func (p *potter) meters() []string {
	var list []string
	for i := range p.d.Meters {
		if m := &p.d.Meters[i]; slices.ContainsFunc(fields, m.Reads) {
			list = append(list, m.Name)
		}
	}
	return list
}
