package textreport

import "sipsum/internal/sheet"

// foams prints what is known of each foam of a drink; whole, with the works that its conditions
// come from.
func (v view) foams(whole bool) {
	list := sheet.FoamsOf(v.s.Assay)
	if len(list) == 0 {
		return
	}
	v.heading("Foam")
	for _, f := range list {
		v.strong(marginWidth, 0, Clean(f.Name, mostName))
		solutions{page: v.page}.rows(f.Rows)
		if f.Remark != "" {
			v.paragraph(marginWidth, 2, f.Remark)
		}
		for _, c := range f.Conditions {
			text := Clean(c.Text, mostProse)
			if whole {
				text += " " + Clean(c.Source, mostProse) + "."
			}
			v.paragraph(marginWidth, 2, text)
		}
		if f.NoRange != "" {
			v.paragraph(marginWidth, 2, Clean(f.NoRange, mostProse))
		}
	}
	v.paragraph(0, 0, sheet.FoamMeans)
	v.paragraph(0, 0, sheet.FoamCards)
}
