package pack

import (
	"math"
	"strconv"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

// zero is what a content may be, of the row or of another constituent, for rules to let the row be
// printed as 0.
type zero struct {
	of    constituent.ID // empty: of the row
	below float64        // in the unit of the row
}

// readZeros finds below what each band of each set of rules prints 0: below the least figure that
// is printed otherwise, or below what the line asks for itself (NA<5). A drink with alcohol has
// lines of its own, which no pack of a component is under.
func readZeros(rules map[string]*Rules) {
	least := map[*Rules]map[string]float64{}
	for _, r := range embedded.Rows("card_rounding.csv") {
		of, band, when := rules[r.Text("rules")], r.Text("band"), r.Text("when")
		if strings.HasPrefix(when, "abv") {
			continue
		}
		if least[of] == nil {
			least[of] = map[string]float64{}
		}
		if from := r.Number("from"); from > 0 { // the table goes from the greatest figure down
			least[of][band] = from
		}
		if r.Text("text") != "0" {
			continue
		}
		zeros := []zero{{below: least[of][band]}}
		for term := range strings.FieldsSeq(when) {
			if id, limit, ok := strings.Cut(term, "<"); ok {
				x, err := strconv.ParseFloat(limit, 64)
				if err != nil {
					r.Fail("when: %v", err)
				}
				zeros = append(zeros, zero{constituent.ID(id), x})
			}
		}
		of.zeros[band] = zeros
	}
}

// Zero is below what a row was when it was declared as 0, in its unit, on the basis of the figure:
// the limit that the rules name. Where they name none, ruled is false: half of their step, or 0.
func (r *Rules) Zero(row Row) (below float64, ruled bool) {
	below = math.Inf(1)
	for _, z := range r.zeros[row.rounding] {
		if z.below > 0 && (z.of == "" || z.of == row.Of) {
			below, ruled = min(below, z.below), true
		}
	}
	if ruled {
		return below, true
	}
	below = 0
	for _, s := range r.steps[row.rounding] {
		if s.including && s.from == 0 {
			below = s.step / 2
		}
	}
	return below, false
}
