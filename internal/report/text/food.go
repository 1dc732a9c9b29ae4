package textreport

import (
	"io"
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/food"
	"sipsum/internal/source"
)

// Food prints everything that a table says about one food, as published: values
// per 100 g edible part with their sources. columns names the table's columns
// that have no id in the vocabulary; works finds what a value cites.
func Food(w io.Writer, f *food.Food, columns []food.Column, works func(id string) (source.Work, bool), st Style) error {
	p := newPage(st)
	notes := &footnotes{}
	p.title(Clean(f.Name(), mostName), Clean(f.ID.String(), mostName))
	foodPage{p}.about(f)
	v := values{page: p, food: f, notes: notes, works: works}
	v.byGroup()
	v.others(columns)
	v.states()
	p.sources(notes)
	return p.write(w)
}

// foodPage prints what is known of a food beside its values.
type foodPage struct{ *page }

// about prints what a food is, besides its values.
func (p foodPage) about(f *food.Food) {
	say := func(what, text string) {
		if text != "" {
			p.hanging(what+": ", 2, text)
		}
	}
	var names []string
	for i, n := range f.Names {
		if i > 0 {
			names = append(names, strings.TrimSpace(Clean(n.Text, mostName)+" "+inBrackets(Clean(n.Language, mostName))))
		}
	}
	say("also", strings.Join(names, ", "))
	group := Clean(f.Group, mostName)
	if own := Clean(f.PublisherGroup, mostName); own != "" {
		group = strings.TrimSpace(group + " " + inBrackets("the table's own: "+own))
	}
	say("group", group)
	if food.Stated(f.Density.GramsPerMl) {
		say("density", plain(f.Density.GramsPerMl)+deviation(f.Density.SD)+" g/ml "+inBrackets(Clean(f.Density.Source, mostProse)))
	}
	if food.Stated(f.Edible) {
		say("edible", plain(f.Edible*percentOf)+" %")
	}
	var portions []string
	for _, m := range f.Portions {
		portions = append(portions, Clean(m.Name, mostName)+" "+plain(m.Grams)+deviation(m.SD)+" g")
	}
	say("portions", strings.Join(portions, ", "))
	p.marks(f)
	say("note", Clean(f.Note, mostProse))
}

// marks prints what is known of a food besides its composition.
func (p foodPage) marks(f *food.Food) {
	for _, m := range f.Marks {
		value, kind := Clean(m.Value, mostName), Clean(m.Kind, mostName)
		if m.Kind == "allergen" {
			kind += ", " + string(allergen.MarksAre(f.ID.Table))
		}
		switch {
		case m.Kind == "added sugar":
			value = plain(m.Share*percentOf) + " % of the sugars"
		case value == "":
			value = "none known"
		}
		p.hanging(kind+": ", 2, strings.TrimSpace(value+" "+inBrackets(Clean(m.Source, mostProse))))
	}
}

func inBrackets(text string) string {
	if text == "" {
		return ""
	}
	return "(" + text + ")"
}

// deviation writes a standard deviation after a figure; nothing if none is
// stated.
func deviation(sd float64) string {
	if !food.Stated(sd) || sd == 0 {
		return ""
	}
	return " ± " + plainSpread(sd)
}
