package textreport

import (
	"strings"

	"sipsum/internal/composition"
	"sipsum/internal/sheet"
)

// ingredients says which foods bring a constituent and through which pots, where that is more
// than its parts say.
func (p brought) ingredients(list []sheet.Ingredient, parts sheet.Brought) {
	if known(list) < 2 && len(parts.Known) < 2 {
		return
	}
	var all []string
	more := 0
	for i, in := range list {
		switch {
		case in.Mean == 0 || !sheet.HasShare(in.Share):
		case i > 0 && in.Share.Mean*percentOf < tiny:
			more++
		default:
			all = append(all, Clean(in.Word, mostName)+" "+percent(in.Share)+through(in))
		}
	}
	text := "by ingredient: " + strings.Join(all, ", ")
	if more > 0 {
		text += ", and " + grouped(more) + " more under 1" + glue + "%"
	}
	p.paragraph(partIndent, 2, text)
}

// through names the pots of an ingredient; of several with what came through each.
func through(in sheet.Ingredient) string {
	var list []string
	for _, t := range in.Through {
		name := potName(t)
		switch {
		case name == "":
			name = "the build"
			fallthrough
		case len(in.Through) > 1:
			if len(in.Through) == 1 {
				return ""
			}
			name += " " + percent(t.Share)
		}
		list = append(list, name)
	}
	if len(in.Through) == 1 {
		return " through " + list[0]
	}
	return " (" + strings.Join(list, ", ") + ")"
}

// potName names the pot through which a food came, by its way in; empty: the build itself.
func potName(t composition.Through) string {
	names := make([]string, len(t.Path))
	for i, n := range t.Path {
		names[i] = Clean(n, mostName)
	}
	return strings.Join(names, ", ")
}
