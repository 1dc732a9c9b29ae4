package food

import (
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
)

type anywhereKey struct{ constituent, class string }

// kindSpread is a row of data/anywhere.csv: how far what any food of a name has lies from the
// figure of one source.
type kindSpread struct {
	relative float64 // standard deviation
	tail     float64 // how heavy its tails are (estimate.Input)
}

// Anywhere says how far what any food of a name has, wherever it is bought, lies from the
// figure of one source: by constituent and class of food groups.
type Anywhere struct {
	rows    map[anywhereKey]kindSpread
	classes map[string]string // by group
}

// AnywhereOf reads the rows of a table like data/anywhere.csv.
func AnywhereOf(rows []embedded.Row) *Anywhere {
	a := &Anywhere{map[anywhereKey]kindSpread{}, map[string]string{}}
	for _, row := range rows {
		a.rows[anywhereKey{row.Text("constituent"), row.Text("class")}] = kindSpread{row.Number("relative_sd"), row.Number("tail")}
	}
	for _, row := range embedded.Rows("anywhere_classes.csv") {
		a.classes[row.Text("group")] = row.Text("class")
	}
	return a
}

var anywhere = sync.OnceValue(func() *Anywhere { return AnywhereOf(embedded.Rows("anywhere.csv")) })

// of gives what is known of a constituent in the class of a group; nothing where nobody has
// compared tables.
func (a *Anywhere) of(c *constituent.Constituent, group string) (kindSpread, bool) {
	row, ok := a.rows[anywhereKey{string(c.ID), a.classes[group]}]
	return row, ok
}

// lesser is what the spread of water is a share of: the water of a dry food, the solids of
// a juice.
func lesser(water, whole float64) float64 { return min(water, max(whole-water, 0)) }

// widen gives every figure of a table the spread of what any food of its name has, if its
// own is less: until here the figures of a row were held against each other, by what one
// source's samples vary. What a designer says of a food in hand stands.
func (a *Anywhere) widen(e *entry) {
	if e.Food.Chemical || e.Food.ID.Table == Own {
		return
	}
	fixed := func(id constituent.ID) bool {
		return e.strong && (id == constituent.Alcohol || id == constituent.Water)
	}
	for _, c := range constituent.All() {
		if cell := e.cell(c); !fixed(c.ID) && c.Kind != constituent.Parent && c.Kind != constituent.Rest && cell.Known {
			cell.widen(a, c, e.Food.Group)
		}
	}
	for _, c := range constituent.All() {
		if c.Kind == constituent.Parent && c.ID != constituent.Mass && !byDifference(c) {
			a.widenTotal(e, c)
		}
	}
	e.narrow()
}

// severalWorks is the number of works from which the range of a figure, if it has one, tells
// by itself what lies between sources: our own bound.
const severalWorks = 3

// widen gives a figure the spread of its kind, if its own is less.
func (c *Cell) widen(by *Anywhere, of *constituent.Constituent, group string) {
	kind, ok := by.of(of, group)
	if !ok || c.Limit > 0 || c.Amount == 0 || !c.Class && worksOf(c) >= severalWorks {
		return
	}
	sd := kind.relative * c.Amount
	if of.ID == constituent.Water {
		sd = kind.relative * lesser(c.Amount, whole)
	}
	if sd > c.SD {
		c.SD, c.Tail = sd, kind.tail
	}
}

// worksOf counts the works that a figure rests on, the lender's where it is borrowed.
func worksOf(c *Cell) int {
	return len(strings.Fields(strings.TrimPrefix(c.Source, Borrowed+" ")))
}

// widenTotal gives a total the spread of its kind, not what its parts add up to if each
// varies by itself: a sweeter lot is sweeter in all its sugars.
func (a *Anywhere) widenTotal(e *entry, c *constituent.Constituent) {
	amount, _ := e.sum(c)
	if amount == 0 || !ofKind(e, c) {
		return
	}
	for i, t := range e.Totals {
		if t.Constituent == c {
			e.Totals[i].Cell.widen(a, c, e.Food.Group)
			return
		}
	}
	total := Total{Constituent: c, Cell: *e.cell(c)}
	if !e.published[c.Order] {
		total.Cell = Cell{Known: true, State: estimate.Calculated, Bound: None, Class: true, From: e.Food.ID, Row: e.Food.ID.String()}
	}
	total.Cell.Amount, total.Cell.SD, total.Cell.Limit = amount, 0, 0
	if total.Cell.widen(a, c, e.Food.Group); total.Cell.SD > 0 {
		e.Totals = append(e.Totals, total)
	}
}

// ofKind reports whether a part of a total has the spread of its kind.
func ofKind(e *entry, total *constituent.Constituent) bool {
	for _, leaf := range constituent.Sums().Leaves(total.ID) {
		if cell := e.cell(leaf); cell.Known && cell.Amount > 0 && cell.Tail > 0 {
			return true
		}
	}
	return false
}
