package jsonreport

import (
	"io"

	"sipsum/internal/allergen"
	"sipsum/internal/caution"
	"sipsum/internal/label"
	"sipsum/internal/sheet"
)

// Card writes sipsum.card/1: the card under the first rules asked for; cards
// under further rules stand in "further".
func Card(w io.Writer, s *sheet.Sheet) error {
	return write(w, struct {
		head
		label.Card
		Further []label.Card `json:"further"`
	}{headOf("sipsum.card/1", s), s.Cards[0], s.Cards[1:]})
}

// CardWorking writes sipsum.card/1 with "workings": how each figure of each card
// came about, in the order of the rules.
func CardWorking(w io.Writer, s *sheet.Sheet) error {
	return write(w, struct {
		head
		label.Card
		Further  []label.Card      `json:"further"`
		Workings [][]label.Working `json:"workings"`
	}{headOf("sipsum.card/1", s), s.Cards[0], s.Cards[1:], s.Workings})
}

// declaration is a declaration with its cautions.
type declaration struct {
	allergen.Declaration
	Cautions []caution.Caution `json:"cautions"`
}

// Allergens writes sipsum.allergens/1: under the first rules asked for; further
// rules stand in "further".
func Allergens(w io.Writer, s *sheet.Sheet) error {
	all := declarationsOf(s)
	return write(w, struct {
		head
		declaration
		Further []declaration `json:"further"`
	}{headOf("sipsum.allergens/1", s), all[0], all[1:]})
}

func declarationsOf(s *sheet.Sheet) []declaration {
	list := make([]declaration, len(s.Allergens))
	for i, d := range s.Allergens {
		list[i] = declaration{d.Declaration, d.Cautions}
	}
	return list
}

// Sheet writes sipsum.sheet/1: the assay, the evidence, the cards and the
// declarations in one document.
func Sheet(w io.Writer, s *sheet.Sheet) error {
	return write(w, struct {
		head
		Assay     assayBody     `json:"assay"`
		Evidence  evidenceBody  `json:"evidence"`
		Cards     []label.Card  `json:"cards"`
		Allergens []declaration `json:"allergens"`
	}{headOf("sipsum.sheet/1", s), bodyOf(s.Assay), evidenceOf(s), s.Cards, declarationsOf(s)})
}
