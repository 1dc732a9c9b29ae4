package jsonreport

import (
	"io"

	"sipsum/internal/sheet"
)

// Sheet writes sipsum.sheet/1: the brief, the assay, the evidence, the cards, the
// declarations and the yields in one document.
func Sheet(w io.Writer, s *sheet.Sheet) error {
	return write(w, struct {
		head
		Brief     briefBody     `json:"brief"`
		Assay     assayBody     `json:"assay"`
		Evidence  evidenceBody  `json:"evidence"`
		Cards     []card        `json:"cards"`
		Allergens []declaration `json:"allergens"`
		Yields    []yieldForm   `json:"yields"`
	}{headOf("sipsum.sheet/1", s), briefOf(s), bodyOf(s), evidenceOf(s), cardsOf(s.Cards()), declarationsOf(s), yieldsOf(s.Assay)})
}
