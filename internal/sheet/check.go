package sheet

import (
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/claims"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/note"
	"sipsum/internal/spelling"
)

// Check finds what a drink file asks of its sheet and nobody can give: allergens that no
// rules know, claims and targets that check nothing. The file may be right by its grammar; these are its faults all the same, each
// at its place, beside all others.
func Check(d *drink.Drink, faults *fail.List) {
	for _, f := range d.Foods {
		for _, code := range f.Allergens {
			if !allergen.IsLeaf(code.Text) {
				faults.Add(code.Place, nearestAllergen(code.Text), "own food %s: there is no allergen %q", note.Quote(f.Code), code.Text)
			}
		}
	}
	claims.Read(d, faults)
	fit.Read(d, faults)
	for _, code := range d.MayContain {
		if !allergen.IsLeaf(code.Text) {
			faults.Add(code.Place, nearestAllergen(code.Text), "may-contain does not know the allergen %q", code.Text)
		}
	}
}

// nearestAllergen tells what to write for an allergen that is called by the name of its class, as
// "soybeans", or nearly so.
func nearestAllergen(text string) string {
	leaves := allergen.LeavesOf(text)
	if len(leaves) == 0 {
		leaves = spelling.Nearest(text, strings.Split(allergen.LeafNames(), ", "))
	}
	if len(leaves) == 0 {
		return "use one of: " + allergen.LeafNames()
	}
	return "write " + fail.Or(leaves)
}

// texts gives the texts of a list.
func texts(words []drink.Word) []string {
	list := make([]string, len(words))
	for i, w := range words {
		list[i] = w.Text
	}
	return list
}
