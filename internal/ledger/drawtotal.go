package ledger

import (
	"slices"

	"gonum.org/v1/gonum/floats"

	"sipsum/internal/food"
)

// total scales the parts of a published total in every draw to a draw of the
// total: fruits of one kind differ less in all their sugars than in each, so the
// total would be too wide if it were the sum of parts that are drawn each by itself.
func (d *Drawer) total(profile *food.Profile, t food.Total, cells Cells) {
	drawn, sum := make([]float64, d.ens.N), make([]float64, d.ens.N)
	d.input(t.Constituent, t.Cell).Fill(drawn)
	d.write(profile, t.Constituent, drawn)
	if t.Parts != nil {
		d.split(t, drawn, cells)
		return
	}
	var parts []int
	for _, at := range d.columns.Below(t.Constituent.ID) {
		if c := d.columns.List[at]; profile.Cells[c.Order].Limit == 0 && !profile.Fixed(c, t.Constituent) {
			parts = append(parts, at)
			continue
		}
		for i, x := range cells[at] { // of what nobody found a limit is known: it stays, and so does what is exact
			drawn[i] = max(drawn[i]-x, 0)
		}
	}
	d.rest(t, parts, drawn, cells)
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

// rest makes the rest of a stated total what its other parts leave of a draw.
func (d *Drawer) rest(t food.Total, parts []int, drawn []float64, cells Cells) {
	if t.Rest == nil {
		return
	}
	rest := d.columns.At(t.Rest.ID)
	if !slices.Contains(parts, rest) || cells[rest] == nil {
		return
	}
	left := slices.Clone(drawn)
	for _, at := range parts {
		if at != rest && cells[at] != nil {
			floats.Sub(left, cells[at])
		}
	}
	for i, x := range left {
		cells[rest][i] = max(x, 0)
	}
}

// split shares what a total leaves beside its other parts out to the parts of a split, as
// their draws share it: none has more than there is, or than a table allows of it. The
// rest, the last of the parts, takes what such a limit leaves.
func (d *Drawer) split(t food.Total, drawn []float64, cells Cells) {
	sum, left := make([]float64, d.ens.N), slices.Clone(drawn)
	shared := map[int]bool{}
	for _, part := range t.Parts {
		at := d.columns.At(part.Constituent.ID)
		shared[at] = true
		if at >= 0 {
			floats.Add(sum, cells.column(at, d.ens.N))
		}
	}
	for _, at := range d.columns.Below(t.Constituent.ID) {
		if !shared[at] {
			floats.Sub(left, cells.column(at, d.ens.N))
		}
	}
	rest := d.columns.At(t.Parts[len(t.Parts)-1].Constituent.ID)
	for _, part := range t.Parts {
		at := d.columns.At(part.Constituent.ID)
		if at < 0 {
			continue
		}
		for i, x := range cells[at] {
			share := 0.0
			if sum[i] > 0 {
				share = max(left[i], 0) / sum[i]
			}
			cells[at][i] = x * share
			// A published limit stands in every draw.
			if over := x*share - part.Most; over > 0 { // of None nothing is known
				cells[at][i] = part.Most
				if rest >= 0 && cells[rest] != nil {
					cells[rest][i] += over / share
				}
			}
		}
	}
}
