package jsonreport

import (
	"io"

	"sipsum/internal/constituent"
	"sipsum/internal/evidence"
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
	Sentences     []string                    `json:"sentences"`
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
}

// Evidence writes sipsum.evidence/1.
func Evidence(w io.Writer, s *sheet.Sheet) error {
	return write(w, struct {
		head
		evidenceBody
	}{headOf("sipsum.evidence/1", s), evidenceOf(s)})
}

func evidenceOf(s *sheet.Sheet) evidenceBody {
	body := evidenceBody{CompareWith: s.Evidence.CompareWith, Categories: []category{}, Claims: claimsOf(s), Works: []work{}}
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
		Contributions: []part{}, Ingredients: []ingredientShare{}, Sources: map[constituent.ID][]string{}, Sentences: append([]string{}, c.Sentences...),
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
