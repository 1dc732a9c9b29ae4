package jsonreport

import (
	"io"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/evidence"
	"sipsum/internal/ladder"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

type part struct {
	Constituent constituent.ID `json:"constituent"`
	Component   string         `json:"component"`
	Food        string         `json:"food,omitempty"`
	Mean        number         `json:"mean"`
	Share       number         `json:"share"`
	ShareLow    number         `json:"share_low"`
	ShareHigh   number         `json:"share_high"`
	Unknown     bool           `json:"unknown,omitempty"`
}

type work struct {
	ID       string `json:"id"`
	Citation string `json:"citation"`
	URL      string `json:"url,omitempty"`
	Licence  string `json:"licence"`
	Grade    string `json:"grade,omitempty"`
}

type category struct {
	Name          string                      `json:"name"`
	Constituents  []constituent.ID            `json:"constituents"`
	Serving       constituents                `json:"serving"`
	CompareWith   constituents                `json:"compare_with"`
	CompareAlso   []alsoAlone                 `json:"compare_with_also,omitempty"`
	Contributions []part                      `json:"contributions"`
	Ingredients   []ingredientShare           `json:"ingredients"`
	Sources       map[constituent.ID][]string `json:"sources"`
	Sentences     []string                    `json:"sentences"` // each ends with its sources: ids of works
	Ladder        []sentence                  `json:"ladder"`    // the same, taken apart
	Taste         *tasteLine                  `json:"taste,omitempty"`
}

// tasteLine is what the numbers beside a taste say of a category.
type tasteLine struct {
	Says    string   `json:"says"`
	Sources []string `json:"sources"`
}

// sentence says who brings a constituent, no more than holds in every draw with every unknown part
// at its most against it.
type sentence struct {
	Text        string         `json:"text"`
	Rung        string         `json:"rung"` // of data/ladder.csv
	Constituent constituent.ID `json:"constituent"`
	Food        string         `json:"food,omitempty"`      // of an ingredient
	Through     []string       `json:"through"`             // components that the ingredient comes through
	Component   string         `json:"component,omitempty"` // where no ingredient bears as much
	Added       bool           `json:"added"`               // it is the constituent itself
	Least       number         `json:"least"`               // ends of its share, 0 to 1
	Most        number         `json:"most"`                // null where nothing bounds what is unknown
	Sources     []string       `json:"sources"`
}

func sentenceOf(s ladder.Sentence) sentence {
	out := sentence{
		Text: s.Text, Rung: string(s.Rung), Constituent: s.Constituent.ID, Through: append([]string{}, s.Pots...), Component: s.Component,
		Added: s.Added, Least: number(s.Least), Most: number(s.Most), Sources: idsOf(s.Works),
	}
	if s.Component == "" {
		out.Food = s.Food.String()
	}
	return out
}

// cited is a sentence with its sources behind it.
func cited(s ladder.Sentence) string { return s.Text + " [" + strings.Join(idsOf(s.Works), ", ") + "]" }

func idsOf(works []source.Work) []string {
	return each(works, func(w source.Work) string { return w.ID })
}

// alsoAlone is what a further component that the drink is set against has alone.
type alsoAlone struct {
	Name         string       `json:"name"`
	MassG        number       `json:"mass_g,omitempty"`
	Constituents constituents `json:"constituents,omitempty"`
}

type evidenceBody struct {
	CompareWith string      `json:"compare_with,omitempty"`
	CompareG    number      `json:"compare_with_mass_g,omitempty"` // of it in a serving, or in what is made of it for one
	CompareAlso []alsoAlone `json:"compare_with_also,omitempty"`   // further ones, in the order of the file
	Categories  []category  `json:"categories"`
	Claims      []saidClaim `json:"claims"`
	Works       []work      `json:"works"`
	House       *houseForm  `json:"house_rules,omitempty"`
	TasteLimits string      `json:"taste_limits"`
}

// Evidence writes sipsum.evidence/1.
func Evidence(w io.Writer, s *sheet.Sheet) error {
	return write(w, struct {
		head
		evidenceBody
	}{headOf("sipsum.evidence/1", s), evidenceOf(s)})
}

func evidenceOf(s *sheet.Sheet) evidenceBody {
	body := evidenceBody{CompareWith: s.Evidence.CompareWith, Categories: []category{}, Claims: claimsOf(s), Works: []work{}, House: houseOf(s), TasteLimits: sheet.TasteMeans}
	if alone := s.Assay.Alone; alone != nil {
		body.CompareG = number(alone.Mass.Mean)
	}
	for _, also := range s.Assay.Also {
		body.CompareAlso = append(body.CompareAlso, alsoAlone{Name: also.Name, MassG: number(also.Mass.Mean)})
	}
	for _, c := range s.Evidence.Categories {
		body.Categories = append(body.Categories, categoryOf(s, c))
	}
	for _, x := range s.Works {
		body.Works = append(body.Works, workOf(x))
	}
	return body
}

func workOf(w source.Work) work { return work{w.ID, w.Citation, w.URL, w.Licence, w.Grade} }

func categoryOf(s *sheet.Sheet, c evidence.Category) category {
	out := category{
		Name: c.Name, Constituents: []constituent.ID{}, Serving: constituents{}, CompareWith: constituents{},
		Contributions: []part{}, Ingredients: []ingredientShare{}, Sources: map[constituent.ID][]string{}, Sentences: each(c.Sentences, cited), Ladder: each(c.Sentences, sentenceOf),
	}
	if line, ok := sheet.TasteLineOf(s, c.Name); ok {
		out.Taste = &tasteLine{line.Says, line.Sources}
	}
	for _, name := range s.Evidence.Also {
		out.CompareAlso = append(out.CompareAlso, alsoAlone{Name: name, Constituents: constituents{}})
	}
	for _, e := range c.Entries {
		id := e.Constituent.ID
		out.Constituents = append(out.Constituents, id)
		out.Serving[id] = figureOf(e.Result)
		if e.Alone != nil {
			out.CompareWith[id] = figureOf(e.Alone.Result)
		}
		for i, also := range e.Also {
			if also.Figure != nil {
				out.CompareAlso[i].Constituents[id] = figureOf(also.Figure.Result)
			}
		}
		for _, p := range e.Parts {
			out.Contributions = append(out.Contributions, part{
				id, p.Name, foodOf(p.ID), number(p.Mean), number(p.Share.Mean), number(p.Share.Low), number(p.Share.High), p.Unknown,
			})
		}
		out.Ingredients = append(out.Ingredients, ingredientShares(id, sheet.Ingredients(s, e.Constituent))...)
		for _, w := range e.Works {
			out.Sources[id] = append(out.Sources[id], w.ID)
		}
	}
	return out
}
