package jsonreport

import (
	"io"

	"sipsum/internal/sheet"
)

// Sheet writes sipsum.sheet/1: the assay, the evidence, the cards and the
// declarations in one document.
func Sheet(w io.Writer, s *sheet.Sheet) error {
	return write(w, struct {
		head
		Assay     assayBody     `json:"assay"`
		Evidence  evidenceBody  `json:"evidence"`
		Cards     []card        `json:"cards"`
		Allergens []declaration `json:"allergens"`
	}{headOf("sipsum.sheet/1", s), bodyOf(s.Assay), evidenceOf(s), cardsOf(s.Cards()), declarationsOf(s)})
}
