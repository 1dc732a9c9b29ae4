package curdling

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/embedded"
	"sipsum/internal/food"
)

// Protein is what curdles, with the pH at which it begins to.
type Protein struct {
	ID    string
	Name  string
	bands []Band // by temperature
}

// Band bounds the pH at which a protein begins to curdle at a temperature: at Low
// it has, at High it has not.
type Band struct {
	Celsius   float64
	Low, High float64
	Source    string
}

var proteins = sync.OnceValue(func() map[string]*Protein {
	all := map[string]*Protein{}
	for _, row := range embedded.Rows("curdling_proteins.csv") {
		id := row.Text("protein")
		if all[id] == nil {
			all[id] = &Protein{ID: id, Name: row.Text("name")}
		}
		p, b := all[id], Band{row.Number("celsius"), row.Number("low"), row.Number("high"), row.Text("source")}
		if last := len(p.bands) - 1; b.Low > b.High || last >= 0 && b.Celsius <= p.bands[last].Celsius {
			row.Fail("%s: temperatures rise, and low lies below high", id)
		}
		p.bands = append(p.bands, b)
	}
	return all
})

// Find gives a protein of data/curdling_proteins.csv.
func Find(id string) (*Protein, bool) {
	p, ok := proteins()[id]
	return p, ok
}

// At bounds the pH of curdling at a temperature in °C. Source is of the nearest
// published temperature.
func (p *Protein) At(celsius float64) Band {
	first, last := p.bands[0], p.bands[len(p.bands)-1]
	switch {
	case celsius <= first.Celsius:
		return first
	case celsius >= last.Celsius:
		return last
	}
	i := 1
	for p.bands[i].Celsius < celsius {
		i++
	}
	a, b := p.bands[i-1], p.bands[i]
	way := (celsius - a.Celsius) / (b.Celsius - a.Celsius)
	between := Band{Celsius: celsius, Low: a.Low + way*(b.Low-a.Low), High: a.High + way*(b.High-a.High), Source: a.Source}
	if b.Celsius-celsius < celsius-a.Celsius {
		between.Source = b.Source
	}
	return between
}

// Coldest is the lowest temperature of the protein's figures.
func (p *Protein) Coldest() float64 { return p.bands[0].Celsius }

// kind is a row of data/curdling_foods.csv.
type kind struct {
	group   string
	words   []string // one of which is in the food's name; none: any food of the group
	protein *Protein // nil: it curdles, nobody has published when
}

var kinds = sync.OnceValue(func() []kind {
	var list []kind
	for _, row := range embedded.Rows("curdling_foods.csv") {
		k := kind{group: row.Text("group"), words: strings.Fields(row.Text("words"))}
		if id := row.Text("protein"); id != "" {
			p, ok := Find(id)
			if !ok {
				row.Fail("no protein %s", id)
			}
			k.protein = p
		}
		list = append(list, k)
	}
	return list
})

// Of tells whether a food curdles and what in it does: the first row of
// data/curdling_foods.csv that fits its group and a name of it or an allergen. The
// protein is nil if nobody has published when it curdles.
func Of(f *food.Food) (p *Protein, curdles bool) {
	words := wordsOf(f)
	for _, k := range kinds() {
		fits := func(word string) bool { return slices.Contains(words, word) }
		if k.group == f.Group && (len(k.words) == 0 || slices.ContainsFunc(k.words, fits)) {
			return k.protein, true
		}
	}
	return nil, false
}

// wordsOf lists the words of a food's names and of its allergens, in lower case.
func wordsOf(f *food.Food) []string {
	text := make([]string, 0, len(f.Names)+len(f.Marks))
	for _, n := range f.Names {
		text = append(text, n.Text)
	}
	for _, m := range f.Marks {
		if m.Kind == "allergen" {
			text = append(text, m.Value)
		}
	}
	apart := func(r rune) bool { return !('a' <= r && r <= 'z') }
	return strings.FieldsFunc(strings.ToLower(strings.Join(text, " ")), apart)
}
