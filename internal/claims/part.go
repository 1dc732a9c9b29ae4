package claims

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/claim"
	"sipsum/internal/embedded"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
	"sipsum/internal/spelling"
)

// found is what a part of an expression means.
type found struct {
	holds  func(ledger.Row) bool
	remark string // what must be known of how it was meant; may be empty
}

// find tells which rows a part means; an error says which parts there are.
func (g *Glass) find(p claim.Part) (found, error) {
	switch p.Sort {
	case claim.Whole:
		return found{holds: func(ledger.Row) bool { return true }}, nil
	case claim.OfComponent:
		return g.component(p.Name)
	case claim.OfIngredient:
		return g.ingredient(p.Name)
	case claim.OfKind:
		return g.kind(p.Name)
	}
	if _, err := g.component(p.Name); err == nil {
		if grown(p.Name) {
			return g.namedPot(p.Name), nil
		}
		return g.component(p.Name)
	}
	if f, err := g.ingredient(p.Name); err == nil {
		return f, nil
	}
	if f, err := g.kind(p.Name); err == nil {
		return f, nil
	}
	return found{}, g.noPart(p.Name)
}

// namedPot counts what a pot is called by, not what is in it.
func (g *Glass) namedPot(name string) found {
	is := func(f *food.Food) bool {
		first := head(f.Name())
		return called(f, name) || first != "" && strings.HasPrefix(spelling.Plain(name), first+" ")
	}
	f := found{holds: func(r ledger.Row) bool { return is(r.Profile.Food) }}
	f.remark = "counts the ingredient " + note.Quote(name) + ", in whatever pot; for the pot write component " + note.Quote(name)
	if !slices.ContainsFunc(g.assay.Serving.Rows, f.holds) {
		var foods []string
		for _, r := range g.assay.Serving.Rows {
			if slices.Contains(r.Path, name) {
				foods = append(foods, r.Profile.Food.ID.String())
			}
		}
		f.remark = "the pot " + note.Quote(name) + " holds no " + name + " but " + note.Listed(foods) + "; for what the pot brings write component " + note.Quote(name)
	}
	return f
}

func (g *Glass) component(name string) (found, error) {
	for i := range g.assay.Drink.Components {
		if c := g.assay.Drink.Components[i].Name; c == name {
			return found{holds: func(r ledger.Row) bool { return slices.Contains(r.Path, c) }}, nil
		}
	}
	return found{}, g.noPart(name)
}

func (g *Glass) ingredient(name string) (found, error) {
	if id, coded := food.ParseID(name); coded {
		f := found{holds: func(r ledger.Row) bool { return g.stands(r.Profile.Food.ID) == id }}
		if !slices.ContainsFunc(g.assay.Serving.Rows, f.holds) {
			return found{}, g.noPart(name)
		}
		return f, nil
	}
	f := found{holds: func(r ledger.Row) bool { return called(r.Profile.Food, name) }}
	switch {
	case slices.ContainsFunc(g.assay.Serving.Rows, f.holds):
		return f, nil
	case len(heads()[spelling.Plain(name)]) > 0:
		f.remark = "no " + name + " is in this drink"
		return f, nil
	}
	return found{}, g.noPart(name)
}

// kind finds foods by their group: those whose group has all the words.
func (g *Glass) kind(name string) (found, error) {
	groups := GroupsCalled(name)
	if len(groups) == 0 {
		return found{}, g.noPart(name)
	}
	return found{holds: func(r ledger.Row) bool { return slices.Contains(groups, r.Profile.Food.Group) }}, nil
}

func (g *Glass) noPart(name string) error {
	var names []string
	for i := range g.assay.Drink.Components {
		names = append(names, g.assay.Drink.Components[i].Name)
	}
	for _, r := range g.assay.Serving.Rows {
		if id := r.Profile.Food.ID.String(); !slices.Contains(names, id) {
			names = append(names, id)
		}
	}
	do := "the drink has: " + strings.Join(names, ", ")
	if near := spelling.Nearest(name, names); len(near) > 0 {
		do = "did you mean " + note.Quote(near[0]) + "? " + do
	}
	return fail.New(fail.Wrong, "the drink has no part "+note.Quote(name), do)
}

// called tells whether a food bears a name: its own, or what stands before its first comma.
func called(f *food.Food, name string) bool {
	plain := spelling.Plain(name)
	for _, n := range f.Names {
		if spelling.Plain(n.Text) == plain || head(n.Text) == plain || head(n.Text)+"s" == plain || head(n.Text) == plain+"s" {
			return true
		}
	}
	return false
}

// head is what stands before the first comma of a name.
func head(name string) string {
	before, _, _ := strings.Cut(name, ",")
	return spelling.Plain(before)
}

// heads gives, by what stands before the comma of a core food's name, the groups of such foods.
var heads = sync.OnceValue(func() map[string][]string {
	groups := map[string][]string{}
	for _, row := range embedded.Rows("core/foods.csv") {
		groups[head(row.Text("name"))] = append(groups[head(row.Text("name"))], row.Text("group"))
	}
	return groups
})

// chemicals are the names of core foods that are one substance, before their comma.
var chemicals = sync.OnceValue(func() map[string]bool {
	names := map[string]bool{}
	for _, row := range embedded.Rows("core/foods.csv") {
		if row.Text("use") == "chemical" {
			names[head(row.Text("name"))] = true
		}
	}
	return names
})

// grown tells whether a name is that of something grown.
func grown(name string) bool {
	return slices.ContainsFunc(heads()[spelling.Plain(name)], func(group string) bool {
		g, _ := food.GroupOf(group)
		return g.Grown
	})
}
