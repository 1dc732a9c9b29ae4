package sheet

import (
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/chemistry"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/evidence"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// coffee is what a brief sets a drink against.
type coffee struct {
	name      string
	rows      []int // of the serving; none: it is only inside other components
	figures   composition.Composition
	chemistry *chemistry.Chemistry
}

// coffee finds what a drink is set against: what compare-with names, else the one part of the
// build that is coffee and nothing but water, else the one coffee among its foods; else nothing.
func (s briefing) coffee() *coffee {
	a := s.Assay
	switch {
	case a.Alone != nil:
		return s.part(a.Alone)
	case a.Drink.CompareWith != "":
		return nil
	}
	var parts []*assay.Component
	for i := range a.Components {
		if isCoffee(a.Serving, evidence.RowsOf(a, &a.Components[i])) {
			parts = append(parts, &a.Components[i])
		}
	}
	if len(parts) == 1 {
		return s.part(parts[0])
	}
	return s.coffeeFood()
}

// further are the others that compare-with names.
func (s briefing) further() []*coffee {
	var list []*coffee
	for _, c := range s.Assay.Also {
		list = append(list, s.part(c))
	}
	return list
}

// part is a component as a coffee.
func (s briefing) part(c *assay.Component) *coffee {
	k := &coffee{name: c.Name, rows: evidence.RowsOf(s.Assay, c), figures: c.Constituents, chemistry: c.Chemistry}
	if c.ID.Component == "" {
		k.name = s.words()[c.ID.Food]
	}
	if len(k.rows) > 0 && !s.Assay.ReadAgainst() {
		k.figures = composed(s.Assay.Serving, k.rows)
	}
	return k
}

// coffeeFood is the one coffee among the foods, as much of it as a serving holds.
func (s briefing) coffeeFood() *coffee {
	pot := s.Assay.Serving
	var rows []int
	var of food.ID
	for row, r := range pot.Rows {
		if !r.Profile.Food.Facts().Coffee {
			continue
		}
		if len(rows) > 0 && r.Profile.Food.ID != of {
			return nil
		}
		rows, of = append(rows, row), r.Profile.Food.ID
	}
	if len(rows) == 0 {
		return nil
	}
	return &coffee{name: s.words()[of], rows: rows, figures: composed(pot, rows)}
}

// isCoffee reports whether rows hold coffee, and nothing beside it but water.
func isCoffee(pot *ledger.Pot, rows []int) bool {
	some := false
	for _, row := range rows {
		f := pot.Rows[row].Profile.Food
		switch {
		case f.Facts().Coffee:
			some = true
		case !f.Facts().Water:
			return false
		}
	}
	return some
}

// composed gives the composition of some rows of a serving.
func composed(pot *ledger.Pot, rows []int) composition.Composition {
	only := pot.Only(func(row int) bool { return slices.Contains(rows, row) })
	ids := onScreen(only)
	m := &composition.Meter{}
	once := slices.Repeat([]float64{1}, only.N)
	return m.Composition(only, ids, composition.TotalsOf(only, ids), once, 1)
}

// onScreen lists the constituents of a brief.
func onScreen(pot *ledger.Pot) []*constituent.Constituent {
	return withTotals(slices.Concat(briefly, acids(pot)))
}
