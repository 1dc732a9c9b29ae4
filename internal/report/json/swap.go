package jsonreport

import (
	"io"

	"sipsum/internal/fit"
	"sipsum/internal/sheet"
)

// swapDocument is sipsum.swap/1.
type swapDocument struct {
	head
	Line    string      `json:"line"`
	Of      string      `json:"of"`
	Name    string      `json:"name"`
	Without []string    `json:"without"`
	Less    string      `json:"less,omitempty"`
	Brings  []swapTrait `json:"brings"`
	Kept    []swapTrait `json:"kept"`
	Unread  []string    `json:"unread"`
	Looked  int         `json:"compared"`
	Found   []swapFound `json:"found"`
	Would   []swapWould `json:"would_do_if_read"`
	Out     []swapOut   `json:"left_out"`
	Why     string      `json:"why,omitempty"`
	Remarks []string    `json:"remarks"`
	Written string      `json:"written,omitempty"`
}

type swapTrait struct {
	Quality fit.Quality `json:"quality"`
	Figure  string      `json:"figure"`
	Words   string      `json:"words"`
	Unit    string      `json:"unit,omitempty"`
	Share   number      `json:"share"` // that the food brings
	Least   number      `json:"stays_from"`
	Most    number      `json:"stays_to"`
	Before  fitFigure   `json:"before"`
	After   *fitFigure  `json:"after,omitempty"`
	Low     *number     `json:"probability_low,omitempty"`
	High    *number     `json:"probability_high,omitempty"`
}

type swapFound struct {
	Food      string       `json:"food"`
	Name      string       `json:"name"`
	Pours     []swapPour   `json:"pours"`
	Low       number       `json:"probability_low"`
	High      number       `json:"probability_high"`
	Kept      []swapTrait  `json:"kept"`
	Comes     []string     `json:"new_in_the_drink"`
	Beside    []besideBody `json:"serving"`
	Allergens []string     `json:"allergens"`
	Goes      []string     `json:"cautions_go"`
	New       []string     `json:"cautions_come"`
	Still     []string     `json:"still_there"`
	Thick     []swapThick  `json:"may_crystallise"`
	Asked     bool         `json:"allergens_not_assessed"`
	Smelled   bool         `json:"smelled"`
}

// swapThick is how much of the food stands in the water of a pot.
type swapThick struct {
	Pot string `json:"pot"`
	Of  number `json:"g_in_100_g_water"`
}

type swapPour struct {
	Path   string `json:"path"`
	Pot    string `json:"pot,omitempty"`
	Before number `json:"before"`
	After  number `json:"after"`
	Unit   string `json:"unit"`
}

type swapWould struct {
	Food string `json:"food"`
	Name string `json:"name"`
	Read string `json:"read"`
}

type swapOut struct {
	Food string `json:"food"`
	Name string `json:"name"`
	Why  string `json:"why"`
}

// Swapped writes sipsum.swap/1.
func Swapped(w io.Writer, s *sheet.Swapped) error {
	d := swapDocument{
		head: headOf("sipsum.swap/1", s.Sheet), Line: s.Line(), Of: s.Of.ID.String(), Name: s.Of.Name(), Without: listed(s.Words),
		Brings: traits(s.Brings, false), Kept: traits(s.Kept, false), Unread: listed(s.Unread), Looked: s.Looked,
		Found: []swapFound{}, Would: []swapWould{}, Out: []swapOut{}, Why: s.Why, Remarks: listed(s.Remarks), Written: s.Written,
	}
	if s.Less != nil {
		d.Less = string(s.Less.ID)
	}
	for _, f := range s.Found {
		d.Found = append(d.Found, foundBody(f))
	}
	for _, x := range s.Would {
		d.Would = append(d.Would, swapWould{x.Food.ID.String(), x.Food.Name(), x.Read})
	}
	for _, x := range s.Out {
		d.Out = append(d.Out, swapOut{x.Food.ID.String(), x.Food.Name(), x.Why})
	}
	return write(w, d)
}

func foundBody(f sheet.SwappedFood) swapFound {
	b := swapFound{
		Food: f.Food.ID.String(), Name: f.Food.Name(), Pours: []swapPour{}, Low: number(f.Sure), High: number(f.May), Kept: traits(f.Held, true),
		Comes: []string{}, Beside: []besideBody{}, Allergens: []string{}, Goes: []string{}, New: []string{}, Still: listed(f.Still), Thick: []swapThick{}, Asked: f.Asked, Smelled: f.Smelled,
	}
	for _, p := range f.Poured {
		b.Pours = append(b.Pours, swapPour{p.Path, p.Pot, number(p.From.Number), number(p.To.Number), p.To.Measure.Name})
	}
	for _, t := range f.Thick {
		b.Thick = append(b.Thick, swapThick{t.Pot, number(t.Of)})
	}
	for _, t := range f.Comes {
		b.Comes = append(b.Comes, t.Words)
	}
	for _, m := range f.Moves() {
		b.Beside = append(b.Beside, besideBody{m.Words, m.After.Unit, figureBody(m.Before), figureBody(m.After)})
	}
	for _, l := range f.Declares() {
		b.Allergens = append(b.Allergens, l.Sentence())
	}
	goes, comes := f.NewCautions()
	for _, c := range goes {
		b.Goes = append(b.Goes, c.Text)
	}
	for _, c := range comes {
		b.New = append(b.New, c.Text)
	}
	return b
}

func traits(list []fit.Trait, after bool) []swapTrait {
	out := []swapTrait{}
	for _, t := range list {
		x := swapTrait{
			Quality: t.Quality, Figure: t.Figure, Words: t.Words, Unit: t.Before.Unit, Share: number(t.Share),
			Least: number(t.Least), Most: number(t.Most), Before: figureBody(t.Before),
		}
		if after {
			then, low, high := figureBody(t.After), number(t.Hurt), number(t.Help)
			x.After, x.Low, x.High, x.Unit = &then, &low, &high, t.After.Unit
		}
		out = append(out, x)
	}
	return out
}
