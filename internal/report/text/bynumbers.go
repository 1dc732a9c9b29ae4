package textreport

import "sipsum/internal/sheet"

// byNumbers prints the numbers beside the tastes.
type byNumbers struct {
	*page
	notes *footnotes
}

func (p byNumbers) print(s *sheet.Sheet) {
	rows := sheet.TasteRows(sheet.TasteOf(s))
	if len(rows) == 0 {
		return
	}
	p.heading("Taste, by numbers")
	for _, r := range rows {
		if r.Withheld {
			p.paragraph(marginWidth, 2, r.Name+": "+p.inWords(r.Said))
			continue
		}
		p.row(r.Name, "", p.show(r.Result), "")
		p.paragraph(partIndent, 2, Clean(r.Said, mostProse)+p.notes.All(r.Sources))
	}
	p.paragraph(0, 0, sheet.TasteMeans)
}
