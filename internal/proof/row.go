package proof

import (
	"slices"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/source"
)

// Row is a row of a table: what the table says of one food, or the digest of that.
type Row struct {
	Food     string     `json:"food"` // table:code
	Digest   string     `json:"sha256"`
	Withheld string     `json:"withheld,omitempty"` // why it may not be handed on; then it is not here
	Says     *Published `json:"says,omitempty"`
}

// Published is a food as its table has it. Numbers that nobody has stated are absent.
type Published struct {
	Names          []NameOf  `json:"names"`
	Group          string    `json:"group,omitempty"`
	PublisherGroup string    `json:"publisher_group,omitempty"`
	Density        *Density  `json:"density,omitempty"`
	Edible         *float64  `json:"edible,omitempty"` // share
	Chemical       bool      `json:"chemical,omitempty"`
	Note           string    `json:"note,omitempty"`
	Values         []Value   `json:"values"`
	Portions       []Portion `json:"portions,omitempty"`
	Marks          []Mark    `json:"marks,omitempty"`
}

// NameOf is a name of a food in a language.
type NameOf struct {
	Language string `json:"language"`
	Text     string `json:"text"`
}

// Density is in g/ml.
type Density struct {
	GramsPerMl *float64 `json:"g_per_ml,omitempty"`
	SD         *float64 `json:"sd,omitempty"`
	Source     string   `json:"source,omitempty"`
}

// Value is per 100 g of what is eaten, in the unit.
type Value struct {
	Of     string   `json:"of"`
	Unit   string   `json:"unit,omitempty"` // of the vocabulary; none of a column of the table's own
	Amount *float64 `json:"amount,omitempty"`
	SD     *float64 `json:"sd,omitempty"`
	N      int      `json:"n,omitempty"`
	Low    *float64 `json:"low,omitempty"`
	High   *float64 `json:"high,omitempty"`
	Most   *float64 `json:"most,omitempty"` // the limit of trace, below and unknown
	State  string   `json:"state"`
	Source string   `json:"source,omitempty"` // ids of works, or the table's own code
	Ref    string   `json:"ref,omitempty"`    // the row or place in the source
}

// Portion is a household measure.
type Portion struct {
	Name  string   `json:"name"`
	Grams *float64 `json:"g,omitempty"`
	SD    *float64 `json:"sd,omitempty"`
}

// Mark is what is known of a food besides its composition.
type Mark struct {
	Kind   string   `json:"kind"`
	Value  string   `json:"is,omitempty"`
	Share  *float64 `json:"share,omitempty"`
	Source string   `json:"source,omitempty"`
}

// stated gives a number that somebody has stated; nil if nobody has.
func stated(x float64) *float64 {
	if !food.Stated(x) {
		return nil
	}
	return &x
}

func orNone(x *float64) float64 {
	if x == nil {
		return food.None
	}
	return *x
}

// RowOf writes a row; withheld says why it may not be handed on, empty if it may.
func RowOf(f *food.Food, withheld string) Row {
	says := published(f)
	r := Row{Food: f.ID.String(), Digest: says.Digest(), Withheld: withheld}
	if withheld == "" {
		r.Says = says
	}
	return r
}

func published(f *food.Food) *Published {
	p := &Published{
		Names: []NameOf{}, Group: f.Group, PublisherGroup: f.PublisherGroup, Edible: stated(f.Edible), Chemical: f.Chemical, Note: f.Note, Values: []Value{},
	}
	for _, n := range f.Names {
		p.Names = append(p.Names, NameOf(n))
	}
	if d := f.Density; food.Stated(d.GramsPerMl) || food.Stated(d.SD) || d.Source != "" {
		p.Density = &Density{stated(d.GramsPerMl), stated(d.SD), d.Source}
	}
	for _, v := range f.Values {
		p.Values = append(p.Values, Value{
			string(v.Constituent), unitOf(v.Constituent), stated(v.Amount), stated(v.SD), v.N, stated(v.Low), stated(v.High), stated(v.Limit),
			v.State.String(), v.Source, v.Ref,
		})
	}
	for _, x := range f.Portions {
		p.Portions = append(p.Portions, Portion{x.Name, stated(x.Grams), stated(x.SD)})
	}
	for _, m := range f.Marks {
		p.Marks = append(p.Marks, Mark{m.Kind, m.Value, stated(m.Share), m.Source})
	}
	return p
}

// food reads a row that was checked.
func (r *Row) food() *food.Food {
	id, _ := food.ParseID(r.Food)
	p := r.Says
	f := &food.Food{
		ID: id, Group: p.Group, PublisherGroup: p.PublisherGroup, Edible: orNone(p.Edible), Chemical: p.Chemical, Note: p.Note,
		Density: food.Density{GramsPerMl: food.None, SD: food.None},
	}
	if d := p.Density; d != nil {
		f.Density = food.Density{GramsPerMl: orNone(d.GramsPerMl), SD: orNone(d.SD), Source: d.Source}
	}
	for _, n := range p.Names {
		f.Names = append(f.Names, food.Name(n))
	}
	for _, v := range p.Values {
		state, _ := estimate.ParseState(v.State)
		f.Values = append(f.Values, food.Value{
			Constituent: constituent.ID(v.Of), Amount: orNone(v.Amount), SD: orNone(v.SD), N: v.N, Low: orNone(v.Low), High: orNone(v.High),
			Limit: orNone(v.Most), State: state, Source: v.Source, Ref: v.Ref,
		})
	}
	for _, x := range p.Portions {
		f.Portions = append(f.Portions, food.Portion{Name: x.Name, Grams: orNone(x.Grams), SD: orNone(x.SD)})
	}
	for _, m := range p.Marks {
		f.Marks = append(f.Marks, food.Mark{Kind: m.Kind, Value: m.Value, Share: orNone(m.Share), Source: m.Source})
	}
	return f
}

// Find gives what the row says of a constituent.
func (p *Published) Find(tag string) (Value, bool) {
	i := slices.IndexFunc(p.Values, func(v Value) bool { return v.Of == tag })
	if i < 0 {
		return Value{}, false
	}
	return p.Values[i], true
}

func unitOf(id constituent.ID) string {
	if c, ok := constituent.Find(string(id)); ok && c.ID == id {
		return c.Unit
	}
	return ""
}

// citedBy lists the works that a row names.
func citedBy(f *food.Food) []string {
	list := strings.Fields(f.Density.Source)
	for _, v := range f.Values {
		list = append(list, strings.Fields(v.Source)...)
	}
	for _, m := range f.Marks {
		list = append(list, strings.Fields(m.Source)...)
	}
	return list
}

// withheld says why the rows of a table may not be handed on; empty if they may. Nobody has allowed
// it of a table without a licence.
func withheld(t source.Table) string {
	if strings.TrimSpace(t.Licence) == "" {
		return "nobody says under which licence the table is"
	}
	says := strings.ToLower(strings.Join([]string{t.Licence, t.Title, t.Publisher, t.Citation}, "\n"))
	for _, row := range embedded.Rows("licence_deny.csv") {
		if strings.Contains(says, strings.ToLower(row.Text("pattern"))) {
			return row.Text("why")
		}
	}
	return ""
}
