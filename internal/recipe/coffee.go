package recipe

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/note"
)

// noteCoffee is the kind of what is said of the facts of a coffee.
const noteCoffee = "coffee"

// coffeeLender gives the food that lends to a coffee, as its facts have it: the row of its species
// and roast in place of the one that is named, or one that lies between two roasts. It notes of
// each fact what it changes.
func (r *resolver) coffeeLender(o *drink.OwnFood, f, lender *food.Food) *food.Food {
	c := &coffeeCase{resolver: r, own: o, id: f.ID, lender: lender}
	if _, done := r.coffeeSaid[f.ID]; done {
		c.silent = true
	}
	r.coffeeSaid[f.ID] = true
	if lender != nil {
		c.row, c.known = roastedOf(lender.ID)
	}
	c.species()
	c.roast()
	c.anySpecies()
	for _, fact := range []struct{ name, value string }{{"process", o.Coffee.Process}, {"origin", o.Coffee.Origin}, {"altitude", metres(o.Coffee.Altitude)}} {
		if source, none := noEffect(fact.name); none && fact.value != "" {
			c.say("%s, %s: no published effect on these figures (%s)", fact.name, fact.value, source)
		}
	}
	c.lab()
	return c.lender
}

func metres(q *drink.Quantity) string {
	if q == nil {
		return ""
	}
	return note.Grams(q.Number) + " " + q.Unit
}

// coffeeCase is a coffee whose facts are gone through.
type coffeeCase struct {
	*resolver
	own    *drink.OwnFood
	id     food.ID
	lender *food.Food // as the facts so far have it; nil if nothing is borrowed
	row    roasted
	known  bool      // row is the lender's
	silent bool      // all has been said
	others []roasted // of other species, where the table has none of this one's
}

func (c *coffeeCase) say(format string, args ...any) {
	if !c.silent {
		c.ownNotes[c.id] = append(c.ownNotes[c.id], food.Note{Kind: noteCoffee, Text: fmt.Sprintf(format, args...)})
	}
}

// changesNothing says why a fact that could change what is borrowed does not.
func (c *coffeeCase) changesNothing(fact string) bool {
	switch {
	case c.lender == nil:
		c.say("%s: changes no figure, since nothing is borrowed; with fill: core:coffee-roasted-arabica it would", fact)
	case !c.known:
		c.say("%s: no published effect on these figures, of which %s lends some: its species and roast are not on record", fact, c.lender.ID)
	default:
		return false
	}
	return true
}

// species takes the row of the species.
func (c *coffeeCase) species() {
	s := c.own.Coffee.Species
	fact := "species, " + s
	switch {
	case s == "" || c.changesNothing(fact):
	case s == c.row.species:
		c.say("%s: changes no figure, since %s is of it", fact, c.lender.ID)
	default:
		row, ok := c.row.at(s, c.row.roast)
		if !ok {
			c.ofNoRow(fact)
			return
		}
		c.take(fact, row)
	}
}

// ofNoRow says that the table has nothing of a species, and what stands for it.
func (c *coffeeCase) ofNoRow(fact string) {
	var names []string
	for _, s := range drink.CoffeeSpecies {
		if row, ok := c.row.at(s, c.row.roast); ok && s != c.row.species {
			c.others, names = append(c.others, row), append(names, s)
		}
	}
	text := ""
	if len(names) > 0 {
		text = ", as unsure as from " + c.row.species + " to " + strings.Join(names, " and ")
	}
	c.say("%s: nothing of it is in the core table, no %s and no other figure; those of %s (%s) are taken in its place%s", fact, c.row.form, c.row.species, c.lender.ID, text)
}

// anySpecies makes the figures as unsure as from species to species, where the table has none of
// this one's.
func (c *coffeeCase) anySpecies() {
	var rows []*food.Food
	for _, row := range c.others {
		if f := c.find(row); f != nil {
			rows = append(rows, f)
		}
	}
	if len(rows) == 0 {
		return
	}
	first, _ := c.row.at(c.row.species, c.others[0].roast)
	if base := c.find(first); base != nil {
		c.lender = food.Across(c.lender, base, rows)
	}
}

// take borrows from another row and says what that changes.
func (c *coffeeCase) take(fact string, row roasted) {
	other := c.find(row)
	if other == nil {
		return
	}
	c.say("%s: borrows from %s in place of %s: %s", fact, other.ID, c.lender.ID, listed(food.Changes(c.lender, other)))
	c.lender, c.row = other, row
}

func (c *coffeeCase) find(row roasted) *food.Food {
	return c.lookup(coreTable+":"+row.food, c.own.Coffee.Place)
}

// listed names changes, the largest first.
func listed(changes []food.Change) string {
	if len(changes) == 0 {
		return "no figure changes"
	}
	slices.SortStableFunc(changes, func(a, b food.Change) int {
		return cmp.Compare(math.Abs(math.Log(b.Times)), math.Abs(math.Log(a.Times)))
	})
	const most = 12 // our own bound: a sentence
	list := make([]string, 0, most)
	for _, x := range changes[:min(len(changes), most)] {
		list = append(list, fmt.Sprintf("%s × %.2f", x.Constituent.Name, x.Times))
	}
	text := strings.Join(list, ", ")
	if more := len(changes) - most; more > 0 {
		text += fmt.Sprintf(" and %d more", more)
	}
	return text
}

// lab says which figures are the laboratory's.
func (c *coffeeCase) lab() {
	lab := c.own.Coffee.Lab
	if lab == nil {
		return
	}
	var list []string
	for _, v := range lab.Values {
		name := v.Tag
		if c, ok := constituent.Find(v.Tag); ok && c.Name != v.Tag {
			name = c.Name + " (" + v.Tag + ")"
		}
		text := name + " " + v.State
		switch v.State {
		case "":
			text = name + " " + note.Grams(v.Number) + " " + v.Unit
		case drink.Below:
			text = name + " < " + note.Grams(v.Limit) + " " + v.Unit
		}
		list = append(list, text)
	}
	c.say("lab: in %s %s, in place of what is borrowed (%s)", inBase(c.own), strings.Join(list, ", "), lab.Source)
}
