package recipe

import (
	"fmt"
	"math"

	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// roast takes the row of the roast, or what lies between two.
func (c *coffeeCase) roast() {
	o := c.own.Coffee.Roast
	if o != nil && o.Colour != nil && (o.Called != "" || o.Loss != nil) {
		source, _ := noEffect("colour")
		c.say("%s: changes no figure beside what else is said of the roast (%s)", colour(o), source)
	}
	switch {
	case o == nil:
	case o.Called == "" && o.Loss == nil:
		c.coloured(o)
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

func colour(o *drink.Roast) string {
	return fmt.Sprintf("roast, %s %s", o.Scale, note.Grams(o.Colour.Number))
}

// coloured is a roast of which a colour number alone is known: any from light to dark, unless what
// lends is itself of one of these.
func (c *coffeeCase) coloured(o *drink.Roast) {
	if c.changesNothing(colour(o)) {
		return
	}
	const does = "; the mass that it lost or a word would tell: roast: {loss: 14 %} or {called: dark}"
	source, _ := noEffect("colour")
	if c.row.roast != plainRoast {
		c.say("%s: no published effect on these figures (%s); they are those of a %s roast, as %s is%s", colour(o), source, c.row.roast, c.lender.ID, does)
		return
	}
	var rows []*food.Food
	for _, name := range drink.RoastNames {
		if row, ok := c.row.at(c.row.species, name); ok && row != c.row {
			if f := c.find(row); f != nil {
				rows = append(rows, f)
			}
		}
	}
	wide := food.Across(c.lender, c.lender, rows)
	usual, last := position(plainRoast), len(drink.RoastNames)-1
	least, _ := grown(usual, position(drink.RoastNames[0]).figure)
	most, _ := grown(usual, position(drink.RoastNames[last]).figure)
	for _, id := range keptBy("roast") {
		wide = food.Kept(wide, id, 1, (most-least)/math.Sqrt(12)) // rectangular: JCGM 100:2008, 4.3.7
	}
	c.say("%s: no published effect on these figures (%s), which may be of any roast: they stay those of %s, and each is as unsure as from a %s to a %s roast%s", colour(o), source, c.lender.ID, drink.RoastNames[0], drink.RoastNames[last], does)
	c.lender = wide
}

// lost goes between two roasts by the mass that was lost; what is kept grows as the rest goes.
func (c *coffeeCase) lost(loss float64) {
	fact := fmt.Sprintf("roast, %s %% lost", note.Grams(loss))
	if c.changesNothing(fact) {
		return
	}
	beyond := ""
	if near := published(loss); near != loss {
		beyond = fmt.Sprintf("; no roast is published that lost more than %.0f or less than %.0f %%, and its figures are those of the nearest", published(unit.Hundred), published(0))
		loss = near
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
	c.say("%s: borrows %s, against %s: %s; what one roast has copied from another carries no difference%s", fact, between, c.lender.ID, listed(food.Changes(c.lender, mixed)), beyond)
	c.lender = mixed
}
