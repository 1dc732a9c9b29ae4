package composition

import (
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// totalBy tells by what else than a measurement a constituent of a pot is known: food.ByKin
// where a row that makes up at least 5 % of it at central values has it so; else empty.
func totalBy(pot *ledger.Pot, c *constituent.Constituent) string {
	columns := pot.Columns.Below(c.ID)
	total := pot.Central(c.ID)
	for row := range pot.Rows {
		cells := pot.Rows[row].Profile.Cells
		if own := cells[c.Order]; c.Kind == constituent.Parent && own.Known && own.By == "" {
			continue // somebody measured the whole, whatever is said of its parts
		}
		sum := 0.0
		for _, col := range columns {
			if cells[pot.Columns.List[col].Order].By == food.ByKin {
				sum += pot.Cell(row, col)[0]
			}
		}
		if sum > 0 && sum >= ledger.Weighty*total {
			return food.ByKin
		}
	}
	return ""
}

// partBy tells whose figure a row's is, where nobody measured its own (food.Cell.By); of a total
// without a figure, what a weighty share of its parts says.
func partBy(pot *ledger.Pot, row int, c *constituent.Constituent) string {
	profile := pot.Rows[row].Profile
	if cell := profile.Cells[c.Order]; c.Kind != constituent.Parent || cell.Source != "" {
		return cell.By
	}
	total, by, lent := 0.0, "", 0.0
	for _, leaf := range constituent.Sums().Leaves(c.ID) {
		cell := profile.Cells[leaf.Order]
		total += cell.Amount
		if cell.By != "" {
			by, lent = cell.By, lent+cell.Amount
		}
	}
	if lent > 0 && lent >= ledger.Weighty*total {
		return by
	}
	return ""
}
