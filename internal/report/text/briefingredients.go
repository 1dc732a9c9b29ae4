package textreport

import (
	"strings"

	"sipsum/internal/composition"
	"sipsum/internal/sheet"
)

// ingredients says which foods bring a constituent and through which pots; of one that brings all
// its part of the drink has said so.
func (p brought) ingredients(list []sheet.Ingredient) {
	var all []string
	more := 0
	for _, in := range list {
		switch {
		case in.Mean == 0 || !sheet.HasShare(in.Share):
		case len(all) > 0 && in.Share.Mean*percentOf < tiny:
			more++
		default:
			all = append(all, Clean(in.Word, mostName)+" "+percent(in.Share)+through(in.Through))
		}
	}
	if len(all) < 2 {
		return
	}
	text := "by ingredient: " + strings.Join(all, ", ")
	if more > 0 {
		text += ", and " + grouped(more) + " more under 1" + glue + "%"
	}
	p.paragraph(partIndent, 2, text)
}

// through names the pots of an ingredient; of several with what came through each.
func through(ways []composition.Through) string {
	if len(ways) == 1 && len(ways[0].Path) == 0 {
		return ""
	}
	if len(ways) == 1 {
		return " through " + potOf(ways[0])
	}
	var list []string
	for _, t := range ways {
		list = append(list, potOf(t)+" "+percent(t.Share))
	}
	return " (" + strings.Join(list, ", ") + ")"
}

// potOf names the pot through which a food came, by its way from the outermost in.
func potOf(t composition.Through) string {
	names := make([]string, len(t.Path))
	for i, n := range t.Path {
		names[i] = Clean(n, mostName)
	}
	if len(names) == 0 {
		return "the glass"
	}
	return strings.Join(names, " and ")
}
