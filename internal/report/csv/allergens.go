package csvreport

import (
	"io"
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/sheet"
)

// allergenHeader are the columns of a declaration of allergens.
var allergenHeader = []string{"drink", "rules", "what", "name", "foods", "by_way_of", "text", "source"}

// Allergens prints what must be declared, what somebody has to check and what may hurt.
func Allergens(w io.Writer, s *sheet.Sheet) error {
	var rows [][]string
	for _, d := range s.Allergens() {
		add := func(what, name string, foods, via []string, say, source string) {
			rows = append(rows, []string{
				text(s.Assay.Drink.Name), text(d.Rules), what, text(name), text(strings.Join(foods, "; ")), text(strings.Join(via, "; ")), text(say), text(source),
			})
		}
		for what, entries := range byState(&d.Declaration) {
			for _, e := range entries {
				add(what, e.Name, e.From, e.Via, e.Note, e.Source)
			}
		}
		for _, c := range d.Check {
			add(string(allergen.StateCheck), c.Name, c.Foods, nil, c.Text, c.Source)
		}
		for _, c := range d.Cautions {
			add("caution", c.Code, nil, nil, c.Text, c.Source)
		}
	}
	return write(w, allergenHeader, rows)
}

// byState gives the entries of a declaration by what it says of them, in its order.
func byState(d *allergen.Declaration) func(func(string, []allergen.Entry) bool) {
	return func(yield func(string, []allergen.Entry) bool) {
		_ = yield(string(allergen.StateContains), d.Contains) &&
			yield(string(allergen.StateMayContain), d.MayContain) &&
			yield("not declared by these rules", d.NotDeclared)
	}
}

// Menu prints the figures and the allergen matrix of several drinks, one figure or one state
// a line.
func Menu(w io.Writer, m *sheet.Menu) error {
	header := []string{"drink", "file", "rules", "what", "key", "name", "basis", "printed", "value", "known"}
	var rows [][]string
	for i := range m.Drinks {
		d := &m.Drinks[i]
		for j := range d.Cards {
			for _, r := range cardRows(d.Name, &d.Cards[j]) {
				rows = append(rows, []string{r[0], text(d.File), r[1], "figure", r[2], r[3], r[4], r[5], r[6], r[9]})
			}
		}
		for _, x := range m.Matrices() {
			for k, c := range x.Classes {
				rows = append(rows, []string{text(d.Name), text(d.File), text(x.Rules), "allergen", text(c.Code), text(c.Name), "", string(x.States[i][k]), "", ""})
			}
		}
		for _, said := range d.TooMuch {
			rows = append(rows, []string{text(d.Name), text(d.File), "", "caution", "too-much", "", "", text(said), "", ""})
		}
	}
	return write(w, header, rows)
}
