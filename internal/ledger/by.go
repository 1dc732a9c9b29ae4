package ledger

import (
	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// By tells by what else than a measurement a constituent is known: food.ByKin where rows
// that make up at least 5 % of it at central values have it so; else empty.
func (p *Pot) By(id constituent.ID) string {
	total := p.Central(id)
	for row := range p.Rows {
		sum := 0.0
		for _, col := range p.Columns.Below(id) {
			if p.Rows[row].Profile.Cells[p.Columns.List[col].Order].By == food.ByKin {
				sum += p.Cell(row, col)[0]
			}
		}
		if sum > 0 && sum >= weighty*total && !p.wholeMeasured(row, id) {
			return food.ByKin
		}
	}
	return ""
}

// wholeMeasured reports whether a row has a figure of its own for a total, whatever is said
// of its parts.
func (p *Pot) wholeMeasured(row int, id constituent.ID) bool {
	c := constituent.Must(id)
	cell := p.Rows[row].Profile.Cells[c.Order]
	return c.Kind == constituent.Parent && cell.Known && cell.By == ""
}
