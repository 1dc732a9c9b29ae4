package invent

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/food"
	"sipsum/internal/phrase"
)

// Preparation is what a bar does to a food before it is poured (data/preparations.csv).
type Preparation struct {
	Name        string
	Says        string   // of a food that is prepared so; "": nothing need be said
	called      string   // the pot, with {} for the name of the food
	ingredients []string // with {food} for its code; none: the food itself is poured
	steps       []string
}

// Pot reports whether the food goes into a pot of its own.
func (p *Preparation) Pot() bool { return len(p.ingredients) > 0 }

// poured is a row of data/poured.csv: how much of the foods of a group somebody pours, prepared in one way.
type poured struct {
	group         string
	by            *Preparation
	from, to      float64 // g of a serving
	dry, wet      float64 // between how much water a gram of the food has
	words, unless phrase.List
}

var preparations = sync.OnceValue(func() map[string]*Preparation {
	all := map[string]*Preparation{}
	for _, row := range embedded.Rows("preparations.csv") {
		all[row.Text("preparation")] = &Preparation{
			Name: row.Text("preparation"), Says: row.Text("says"), called: row.Text("called"),
			ingredients: listed(row.Text("ingredients")), steps: listed(row.Text("steps")),
		}
	}
	return all
})

var pourable = sync.OnceValue(func() []poured {
	var list []poured
	for _, row := range embedded.Rows("poured.csv") {
		p := poured{
			group: row.Text("group"), by: preparations()[row.Text("preparation")], from: row.Number("from"), to: row.Number("to"),
			dry: row.Number("water_low") / hundred, wet: row.Number("water_high") / hundred,
			words: phrase.Read(row.Text("words")), unless: phrase.Read(row.Text("unless")),
		}
		if _, known := food.GroupOf(p.group); !known || p.by == nil || p.from >= p.to {
			row.Fail("a group, a preparation of preparations.csv, and an amount up to a greater one")
		}
		list = append(list, p)
	}
	return list
})

const hundred = 100

func listed(text string) []string {
	var list []string
	for part := range strings.SplitSeq(text, ";") {
		if part = strings.TrimSpace(part); part != "" {
			list = append(list, part)
		}
	}
	return list
}

// stocks are the acids that bars keep, as data/acid_doses.csv has them.
var stocks = sync.OnceValue(func() []string {
	var list []string
	for _, row := range embedded.Rows("acid_doses.csv") {
		list = append(list, row.Text("acid")+" acid")
	}
	return list
})

// pouredOf gives the ways in which a food may be poured.
func pouredOf(f *food.Food) []poured {
	var as []poured
	water, told := f.Value(constituent.Water)
	if !told || !food.Stated(water.Amount) {
		water.Amount = 0 // an acid by formula has none
		if !f.Chemical {
			return nil
		}
	}
	words := phrase.Words(f.Name())
	for _, p := range pourable() {
		x := water.Amount / hundred
		switch {
		case f.Group != p.group, x < p.dry, x > p.wet, p.unless.In(words), len(p.words) > 0 && !p.words.In(words):
		case f.Chemical && !slices.Contains(stocks(), strings.ToLower(head(f))): // a reagent, which no bar keeps
		default:
			as = append(as, p)
		}
	}
	return as
}
