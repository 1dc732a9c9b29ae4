package composition

import (
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// byOf tells whose figure a row's is, where nobody measured its own (food.Cell.By); of a total
// without a figure, what a weighty share of its parts says.
func byOf(pot *ledger.Pot, row int, c *constituent.Constituent) string {
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
	const weighty = 0.05 // as of states: our own bound (package ledger)
	if lent > 0 && lent >= weighty*total {
		return by
	}
	return ""
}
