package houserules

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/recipe"
)

// poured is what a drink is made of.
type poured struct {
	foods []pouredFood
	told  []told
}

// pouredFood is a food and the ways by which it gets into the drink.
type pouredFood struct {
	*food.Food
	lender *food.Food // of which it borrows; nil if of none
	own    bool
	ways   []string

	profile func() *food.Profile // as it enters the ledger
}

// told is a material that the file names in a text, and no line pours.
type told struct {
	text, where string
	surely      bool // it is there: the ice of a step
	pot         bool // it is what somebody calls a pot: what is in it is known by its foods
}

// poured lists every food of the drink once, garnish included, and what steps bring by themselves.
func (c Case) poured() poured {
	var p poured
	for _, it := range c.Assay.Items {
		p.add(it.Food, it.Lender, wayOf(it))
	}
	for _, r := range c.Assay.Serving.Rows {
		f := r.Profile.Food
		if !slices.ContainsFunc(p.foods, func(x pouredFood) bool { return x.ID == f.ID }) {
			p.add(f, r.Profile.Lender, "brought by a step")
		}
	}
	d := c.Assay.Drink
	for _, a := range d.Aroma {
		p.told = append(p.told, told{text: a.Of, where: "aroma: (" + a.Treatment + ")"})
	}
	for i := range d.Components {
		p.told = append(p.told, told{text: d.Components[i].Name, where: "the name of a pot", pot: true})
		p.treated(d.Components[i].Steps, d.Components[i].Name)
	}
	p.treated(d.Finish, "the finish")
	return p
}

// wayOf says how an item gets into the drink.
func wayOf(it recipe.Item) string {
	way := "in " + strings.Join(it.Path, " / ")
	switch {
	case !it.Eaten && len(it.Path) == 0:
		return "on top, not eaten"
	case !it.Eaten:
		return way + " on top, not eaten"
	case len(it.Path) == 0:
		return "in the build"
	}
	return way
}

func (p *poured) add(f, lender *food.Food, way string) {
	i := slices.IndexFunc(p.foods, func(x pouredFood) bool { return x.ID == f.ID && x.lender == lender })
	if i < 0 {
		profile := sync.OnceValue(func() *food.Profile { return food.Enter(f, lender) })
		i, p.foods = len(p.foods), append(p.foods, pouredFood{f, lender, f.ID.Table == food.Own, nil, profile})
	}
	if !slices.Contains(p.foods[i].ways, way) {
		p.foods[i].ways = append(p.foods[i].ways, way)
	}
}

// treated keeps what techniques say in words, and that ice melts.
func (p *poured) treated(steps []drink.Step, where string) {
	for _, s := range steps {
		switch s := s.(type) {
		case *drink.Treat:
			p.told = append(p.told, told{text: s.Technique, where: "a technique of " + where})
		case *drink.Chill:
			p.told = append(p.told, told{text: "ice", where: where + ", where it melts", surely: true})
		}
	}
}

// called names a food with its code.
func (f pouredFood) called() string {
	return f.Name() + " (" + f.ID.String() + ")"
}

// where names a food and how it gets into the drink.
func (f pouredFood) where() string { return f.called() + " " + f.way() }

func (f pouredFood) way() string { return strings.Join(f.ways, " and ") }

// untold reports whether nobody has said of an own food what it is: neither its kind nor what lends to it.
func (f pouredFood) untold() bool { return f.own && f.Group == "" && f.lender == nil }

// remarks say what names leave open.
func remarks(p poured) []string {
	list := []string{"A food counts as what it is called, on top and not eaten too."}
	var own []string
	for _, f := range p.foods {
		if f.own {
			own = append(own, f.ID.String())
		}
	}
	if len(own) > 0 {
		list[0] += " Nobody has read what stands on the pack of " + note.Listed(own) + ": do."
	}
	return list
}
