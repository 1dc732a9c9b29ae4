package proof

import (
	"cmp"
	"slices"

	"sipsum/internal/food"
	"sipsum/internal/source"
)

// Schema is the form of a pack.
const Schema = "sipsum.proof/1"

// Pack is a drink with all that its figures were calculated from.
type Pack struct {
	Schema  string `json:"schema"`
	Program string `json:"program"`
	Short   string `json:"short"`
	Inputs
	Figures []Figure `json:"figures"`
	Seal    string   `json:"sha256"`
}

// Inputs are all that a run is given.
type Inputs struct {
	Drink     string      `json:"drink"`
	Files     []File      `json:"files"` // the drink file first, then its shelves
	Seed      uint64      `json:"seed"`
	Draws     int         `json:"draws"`
	Rules     []string    `json:"rules"`
	Unproven  []string    `json:"unproven,omitempty"`
	Names     []Name      `json:"names"`
	Tables    []Table     `json:"tables"`
	Rows      []Row       `json:"rows"`
	Works     []Work      `json:"works"`
	Constants []Constants `json:"constants"`
}

// File is a text as it was read.
type File struct {
	Name string `json:"name"` // of the drink file without its folder; of a shelf as use: has it
	Text string `json:"text"`
}

// Name is what a drink calls a row, where that is not the row's own code.
type Name struct {
	Text string `json:"text"`
	Row  string `json:"row"`
}

// Table is the release that rows stand in.
type Table struct {
	ID        string `json:"id"`
	Format    string `json:"format"`
	Title     string `json:"title"`
	Edition   string `json:"edition"`
	Publisher string `json:"publisher"`
	Licence   string `json:"licence"`
	Citation  string `json:"citation"`
	Hash      string `json:"release_sha256"` // of the files that were loaded
}

// Work is what values of a table cite.
type Work struct {
	Table    string `json:"table"`
	ID       string `json:"id"`
	Citation string `json:"citation"`
	URL      string `json:"url,omitempty"`
	Licence  string `json:"licence,omitempty"`
	Grade    string `json:"grade,omitempty"`
	Note     string `json:"note,omitempty"`
}

// Figure is a figure of the drink. In says of what part of it, Of what it is.
type Figure struct {
	ID      string `json:"id"`
	In      string `json:"in"`
	Of      string `json:"of"`
	Printed string `json:"printed"`
	Stored
	Parts []Part `json:"brought_by,omitempty"`
}

// Stored is a figure as it was calculated; what there is not is absent.
type Stored struct {
	Mean *float64 `json:"mean,omitempty"`
	SD   *float64 `json:"sd,omitempty"`
	Low  *float64 `json:"low,omitempty"`
	High *float64 `json:"high,omitempty"`
	UpTo *float64 `json:"up_to,omitempty"`
}

// Part is what one food brings to a figure.
type Part struct {
	Through []string `json:"through,omitempty"` // the pots, outer ones first; none: poured as it is
	Food    string   `json:"food"`
	Name    string   `json:"name"`
	Lender  string   `json:"lender,omitempty"` // whose row it is where the food's own does not say
	Tags    []string `json:"tags,omitempty"`   // the values of the row that the figure rests on
	Printed string   `json:"printed"`
	Mean    *float64 `json:"mean,omitempty"` // absent where nobody knows it
	Most    *float64 `json:"most,omitempty"` // and then the most that it could be
	State   string   `json:"state"`
	Why     string   `json:"why,omitempty"`
	At      string   `json:"at,omitempty"` // file and line of a food that the drink file describes
}

// Used is what a run looked up. A digest wants the rows alone.
type Used struct {
	Rows   map[string]*food.Food                      // by the text that found each
	Tables []source.Table                             // that are loaded
	Works  func(table, id string) (source.Work, bool) // what values cite
}

// Gather puts into the inputs what a run looked up, in an order of its own.
func (in *Inputs) Gather(u Used) {
	loaded := map[string]source.Table{}
	for _, t := range u.Tables {
		loaded[t.ID] = t
	}
	rows, tables, works := map[string]Row{}, map[string]bool{}, map[[2]string]Work{}
	for text, f := range u.Rows {
		id := f.ID.String()
		if text != id {
			in.Names = append(in.Names, Name{text, id})
		}
		if _, ok := rows[id]; ok {
			continue
		}
		rows[id] = RowOf(f, withheld(loaded[f.ID.Table]))
		tables[f.ID.Table] = true
		if u.Works == nil {
			continue
		}
		for _, cited := range citedBy(f) {
			if w, ok := u.Works(f.ID.Table, cited); ok {
				works[[2]string{f.ID.Table, cited}] = Work{f.ID.Table, w.ID, w.Citation, w.URL, w.Licence, w.Grade, w.Note}
			}
		}
	}
	for id := range tables {
		if t, ok := loaded[id]; ok {
			in.Tables = append(in.Tables, Table(t))
		}
	}
	for _, r := range rows {
		in.Rows = append(in.Rows, r)
	}
	for _, w := range works {
		in.Works = append(in.Works, w)
	}
	slices.SortFunc(in.Names, func(a, b Name) int { return cmp.Compare(a.Text, b.Text) })
	slices.SortFunc(in.Tables, func(a, b Table) int { return cmp.Compare(a.ID, b.ID) })
	slices.SortFunc(in.Rows, func(a, b Row) int { return cmp.Compare(a.Food, b.Food) })
	slices.SortFunc(in.Works, func(a, b Work) int { return cmp.Or(cmp.Compare(a.Table, b.Table), cmp.Compare(a.ID, b.ID)) })
}

// Sources gives the tables of a pack as the program knows tables.
func (in *Inputs) Sources() []source.Table {
	list := make([]source.Table, len(in.Tables))
	for i, t := range in.Tables {
		list[i] = source.Table(t)
	}
	return list
}

// Work finds what a value cites.
func (in *Inputs) Work(table, id string) (source.Work, bool) {
	for _, w := range in.Works {
		if w.Table == table && w.ID == id {
			return source.Work{ID: w.ID, Citation: w.Citation, URL: w.URL, Licence: w.Licence, Grade: w.Grade, Note: w.Note}, true
		}
	}
	return source.Work{}, false
}
