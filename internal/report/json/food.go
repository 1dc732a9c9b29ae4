package jsonreport

import (
	"io"
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/source"
)

// Hit is a food that was found.
type Hit struct {
	Food    string `json:"food"`
	Name    string `json:"name"`
	Matched string `json:"matched"`
	Near    bool   `json:"near"`
	Label   bool   `json:"label,omitempty"` // its label has the words, and no name
}

// Hits writes sipsum.find/1.
func Hits(w io.Writer, words string, hits []Hit) error {
	return write(w, struct {
		Schema string `json:"schema"`
		Words  string `json:"words"`
		Foods  []Hit  `json:"foods"`
	}{"sipsum.find/1", words, hits})
}

type valueDocument struct {
	Mean   number `json:"mean"`
	Unit   string `json:"unit"`
	SD     number `json:"sd"`
	N      int    `json:"n"`
	Low    number `json:"low"`
	High   number `json:"high"`
	Limit  number `json:"limit"`
	State  string `json:"state"`
	By     string `json:"by,omitempty"` // borrowed or kin: nobody measured this food's own
	Name   string `json:"name"`
	Source string `json:"source"`
	Ref    string `json:"ref,omitempty"`
}

type markDocument struct {
	Value  string `json:"value"`
	Share  number `json:"share"`
	Source string `json:"source"`

	Knowledge allergen.Knowledge `json:"knowledge,omitempty"` // of an allergen
}

type foodDocument struct {
	Schema         string                           `json:"schema"`
	Food           string                           `json:"food"`
	Name           string                           `json:"name"`
	Names          []string                         `json:"names"`
	Group          string                           `json:"group"`
	PublisherGroup string                           `json:"publisher_group,omitempty"`
	Constituents   map[constituent.ID]valueDocument `json:"constituents"`
	Density        *densityDocument                 `json:"density"`
	Edible         number                           `json:"edible_share"`
	Portions       []portionDocument                `json:"portions"`
	Marks          map[string][]markDocument        `json:"marks"`
	Note           string                           `json:"note,omitempty"`
}

type densityDocument struct {
	GramsPerMl number `json:"g_per_ml"`
	SD         number `json:"sd"`
	Source     string `json:"source"`
}

type portionDocument struct {
	Name  string `json:"name"`
	Grams number `json:"grams"`
	SD    number `json:"sd"`
}

// Food writes sipsum.food/1. cited finds the work behind a value's source id.
func Food(w io.Writer, f *food.Food, columns []food.Column, cited func(id string) (source.Work, bool)) error {
	document := foodDocument{
		Schema: "sipsum.food/1", Food: f.ID.String(), Name: f.Name(), Names: []string{}, Group: f.Group, PublisherGroup: f.PublisherGroup,
		Constituents: map[constituent.ID]valueDocument{}, Edible: number(f.Edible), Portions: []portionDocument{}, Marks: map[string][]markDocument{}, Note: f.Note,
	}
	for _, n := range f.Names {
		document.Names = append(document.Names, n.Text)
	}
	for _, v := range f.Values {
		name, unit := describe(v.Constituent, columns)
		document.Constituents[v.Constituent] = valueDocument{
			number(v.Amount), unit, number(v.SD), v.N, number(v.Low), number(v.High), number(v.Limit), v.State.String(),
			food.ByOf(f.ID, v), name, citations(v.Source, cited), v.Ref,
		}
	}
	if food.Stated(f.Density.GramsPerMl) {
		document.Density = &densityDocument{number(f.Density.GramsPerMl), number(f.Density.SD), f.Density.Source}
	}
	for _, p := range f.Portions {
		document.Portions = append(document.Portions, portionDocument{p.Name, number(p.Grams), number(p.SD)})
	}
	for _, m := range f.Marks {
		mark := markDocument{Value: m.Value, Share: number(m.Share), Source: m.Source}
		if m.Kind == "allergen" {
			mark.Knowledge = allergen.MarksAre(f.ID.Table)
		}
		document.Marks[m.Kind] = append(document.Marks[m.Kind], mark)
	}
	return write(w, document)
}

// describe gives a constituent's name and unit: the vocabulary's, else what the
// table's column says.
func describe(id constituent.ID, columns []food.Column) (name, unit string) {
	if c, ok := constituent.Find(string(id)); ok {
		return c.Name, c.Unit
	}
	for _, c := range columns {
		if c.ID == id {
			return c.Name, c.Unit
		}
	}
	return "", ""
}

// citations gives the works behind a value's source ids in words.
func citations(ids string, cited func(id string) (source.Work, bool)) string {
	var list []string
	for id := range strings.FieldsSeq(ids) {
		if w, ok := cited(id); ok {
			id = w.Citation
		}
		list = append(list, id)
	}
	return strings.Join(list, "; ")
}
