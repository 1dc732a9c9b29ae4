package evidence

import (
	"slices"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/ladder"
	"sipsum/internal/recipe"
	"sipsum/internal/source"
)

// View is the assay by category.
type View struct {
	CompareWith string   // the component it is set against; empty if none
	Also        []string // further ones, in the order of the file
	Categories  []Category
}

// Category is one sensory category of the drink.
type Category struct {
	Name      string
	Entries   []Entry
	Sentences []ladder.Sentence // the strongest first; each of another constituent
}

// Entry is one constituent of a category.
type Entry struct {
	composition.Figure
	Alone *composition.Figure // what compare-with brings to the serving, or to what it is used in
	Also  []Alone             // what further ones bring
	Parts []Part              // by component, largest first
	Works []source.Work       // behind the figures, without those from memory

	fromMemory bool // a part that counts has no other work
}

// Remembered reports whether a part that weighs rests on memory alone.
func (e Entry) Remembered() bool { return e.fromMemory }

// Alone is what a component that the drink is set against brings; Figure is nil if it surely has none.
type Alone struct {
	Name   string
	Figure *composition.Figure
}

// Part is what one component, or one food poured directly, brings.
type Part struct {
	ID      recipe.PartID
	Name    string
	Mean    float64
	Share   composition.Share
	Unknown bool
}

// Works finds the work that a value of a table cites; ok is false if there is
// none.
type Works func(table, sourceID string) (work source.Work, ok bool)

// Of reads the evidence off an assay.
func Of(a *assay.Assay, works Works) View {
	v := View{CompareWith: a.Drink.CompareWith}
	serving, cites := servingOf(a), citing{a.Drink, works}
	for _, also := range a.Also {
		v.Also = append(v.Also, also.Name)
	}
	for _, p := range plans(a.Drink) {
		c := Category{Name: p.name}
		for _, id := range p.ids {
			if e, ok := entry(a, id, cites); ok {
				c.Entries = append(c.Entries, e)
			}
		}
		if len(c.Entries) > 0 {
			c.Sentences = sentences(serving, c, cites)
			v.Categories = append(v.Categories, c)
		}
	}
	return v
}

// entry gives a constituent's evidence; ok is false if the drink surely has
// none of it, or of gas too little to sparkle.
func entry(a *assay.Assay, id constituent.ID, works citing) (Entry, bool) {
	f, ok := a.PerServing.Find(id)
	if !ok || (f.Mean == 0 && !f.Partial) || id == constituent.CarbonDioxide && Still(a, f.Result) {
		return Entry{}, false
	}
	e := Entry{Figure: f}
	for i := range a.Components {
		c := &a.Components[i]
		part, _ := c.Constituents.Find(id)
		if part.Mean == 0 && !part.Partial {
			continue
		}
		e.Parts = append(e.Parts, partOf(c, part))
	}
	e.Alone = aloneOf(a.Alone, id)
	for _, also := range a.Also {
		e.Also = append(e.Also, Alone{also.Name, aloneOf(also, id)})
	}
	slices.SortStableFunc(e.Parts, func(x, y Part) int {
		switch {
		case x.Mean > y.Mean:
			return -1
		case x.Mean < y.Mean:
			return 1
		}
		return 0
	})
	e.Works, e.fromMemory = works.behind(f.Contributions), onlyFromMemory(e, works)
	return e, true
}

// aloneOf gives what a component that the drink is set against has of a constituent;
// nil if it surely has none.
func aloneOf(alone *assay.Component, id constituent.ID) *composition.Figure {
	if alone == nil {
		return nil
	}
	f, ok := alone.Constituents.Find(id)
	if !ok || f.Mean == 0 && !f.Partial {
		return nil
	}
	return &f
}

func partOf(c *assay.Component, part composition.Figure) Part {
	return Part{ID: c.ID, Name: c.Name, Mean: part.Mean, Share: part.Share, Unknown: part.Unknown}
}

// OwnSource is the note of a work that only the drink file names, for a food of its own.
const OwnSource = "as the drink file says"

// citing finds the works behind what a drink's foods hold: those of tables, and for its own foods what
// the file says of where their figures come from.
type citing struct {
	of    *drink.Drink
	works Works
}

// own gives the source that the drink file states for a part of a figure; ok is false if it is none of
// the file's own figures, or none is stated.
func (k citing) own(c composition.Contribution) (source.Work, bool) {
	id, ok := food.ParseID(c.Food)
	if !ok || id.Table != food.Own || c.Table != food.Own {
		return source.Work{}, false
	}
	own, ok := k.of.OwnFood(id.Code)
	if !ok || own.Source == "" {
		return source.Work{}, false
	}
	return source.Work{ID: id.String(), Citation: own.Source, Note: OwnSource}, true
}

// each lists the works that a part of a figure names, those from memory too.
func (k citing) each(c composition.Contribution) []source.Work {
	if w, ok := k.own(c); ok {
		return []source.Work{w}
	}
	var list []source.Work
	for id := range strings.FieldsSeq(c.Source) {
		if w, ok := k.works(c.Table, id); ok {
			list = append(list, w)
		}
	}
	return list
}

// WorksBehind lists the works that a part of a figure of a drink names, those from memory too.
func WorksBehind(d *drink.Drink, works Works, c composition.Contribution) []source.Work {
	return citing{d, works}.each(c)
}

// behind lists the works behind the parts of a figure, without those from memory.
func (k citing) behind(parts []composition.Contribution) []source.Work {
	var list []source.Work
	for _, c := range parts {
		if c.Mean == 0 {
			continue
		}
		if c.By == food.ByKin {
			list = append(list, source.Work{ID: c.Food, Citation: clean.UpperFirst(c.SourceNote)})
		}
		for _, w := range k.each(c) {
			if !source.IsFromMemory(w.Citation) && !slices.ContainsFunc(list, func(x source.Work) bool { return x.ID == w.ID && x.Citation == w.Citation }) {
				list = append(list, w)
			}
		}
	}
	return list
}
