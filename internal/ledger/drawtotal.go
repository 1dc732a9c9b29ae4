package ledger

import "sipsum/internal/food"

// total scales the parts of a published total in every draw to a draw of the
// total: fruits of one kind differ less in all their sugars than in each, so the
// total would be too wide if it were the sum of parts that are drawn each by itself.
func (d *Drawer) total(profile *food.Profile, t food.Total, cells Cells) {
	drawn, sum := make([]float64, d.ens.N), make([]float64, d.ens.N)
	d.input(t.Constituent, t.Cell).Fill(drawn)
	d.write(profile, t.Constituent, drawn)
	var parts []int
	for _, at := range d.columns.Below(t.Constituent.ID) {
		if profile.Cells[d.columns.List[at].Order].Limit == 0 {
			parts = append(parts, at)
			continue
		}
		for i, x := range cells[at] { // of what nobody found a limit is known: it stays
			drawn[i] = max(drawn[i]-x, 0)
		}
	}
	for _, at := range parts {
		for i, x := range cells[at] {
			sum[i] += x
		}
	}
	for _, at := range parts {
		cell := cells[at]
		for i := range cell {
			if sum[i] > 0 {
				cell[i] *= drawn[i] / sum[i]
			}
		}
	}
}
