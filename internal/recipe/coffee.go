package recipe

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

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
	known  bool // row is the lender's
	silent bool // all has been said
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
			c.say("%s: no published effect on these figures: the core table has no %s of it", fact, c.row.form)
			return
		}
		c.take(fact, row)
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

// roast takes the row of the roast, or what lies between two.
func (c *coffeeCase) roast() {
	o := c.own.Coffee.Roast
	switch {
	case o == nil:
	case o.Colour != nil:
		source, _ := noEffect("colour")
		c.say("roast, %s %s: no published effect on these figures (%s); the mass that it lost would tell: roast: {loss: 14 %%}", o.Scale, note.Grams(o.Colour.Number), source)
	case o.Called != "":
		fact := "roast, " + o.Called
		if c.changesNothing(fact) {
			return
		}
		if row, ok := c.row.at(c.row.species, o.Called); ok && row != c.row {
			c.take(fact, row)
			return
		}
		c.say("%s: changes no figure, since %s is of it", fact, c.lender.ID)
	default:
		c.lost(o.Loss.Number)
	}
}

// lost goes between two roasts by the mass that was lost; what is kept grows as the rest goes.
func (c *coffeeCase) lost(loss float64) {
	fact := fmt.Sprintf("roast, %s %% lost", note.Grams(loss))
	if c.changesNothing(fact) {
		return
	}
	var rows []*food.Food
	from, to, w, sd := neighbours(loss, drink.RoastNames)
	for _, name := range []string{from, to} {
		row, ok := c.row.at(c.row.species, name)
		if !ok {
			c.say("%s: no published effect on these figures: the core table has no %s of another roast", fact, c.row.form)
			return
		}
		if f := c.find(row); f != nil {
			rows = append(rows, f)
		}
	}
	if len(rows) < 2 {
		return // a fault has been reported
	}
	mixed := food.Between(rows[0], rows[1], w, sd)
	near := from
	if mixed.ID == rows[1].ID {
		near = to
	}
	for _, id := range keptBy("roast") {
		usual := position(near)
		if v, ok := mixed.Value(id); ok {
			if lender, lent := food.LenderOf(mixed, v); lent { // a copy is of the roast it was copied from
				if row, known := oneRoasted(func(r roasted) bool { return coreTable+":"+r.food == lender }); known {
					usual = position(row.roast)
				}
			}
		}
		factor, unsure := grown(usual, loss)
		mixed = food.Kept(mixed, id, factor, unsure)
	}
	between := fmt.Sprintf("between %s and %s", rows[0].ID, rows[1].ID)
	if w == 0 || w == 1 {
		between = "as " + mixed.ID.String()
	}
	c.say("%s: borrows %s, against %s: %s; what one roast has copied from another carries no difference", fact, between, c.lender.ID, listed(food.Changes(c.lender, mixed)))
	c.lender = mixed
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
		text := v.Tag + " " + v.State
		switch v.State {
		case "":
			text = v.Tag + " " + note.Grams(v.Number) + " " + v.Unit
		case drink.Below:
			text = v.Tag + " < " + note.Grams(v.Limit) + " " + v.Unit
		}
		list = append(list, text)
	}
	c.say("lab: in %s %s, in place of what is borrowed (%s)", inBase(c.own), strings.Join(list, ", "), lab.Source)
}
