package composition

import (
	"math"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// Bringing is what some rows of a pot bring of something.
type Bringing struct {
	Mean  float64
	Share Share   // of what is known
	Worst float64 // the share in its worst draw, with all that others do not know at its most; NaN where nothing bounds that
	Most  float64 // what the rows do not know, at its most; NaN where nothing bounds it

	Unknown bool // the rows do not know all of it
}

// Ingredient is what one food brings of something, and through which pots.
type Ingredient struct {
	Food *food.Food
	Bringing
	Through []Through // in the order of the rows; of one pot, or of several whose bringings add up
}

// Through is a way of a food into the drink: by components from the outermost in, or by the
// build itself.
type Through struct {
	Path []string
	Bringing
}

// Sort is something that rows hold, draw by draw: a constituent, or what is made of several.
type Sort struct {
	PerGram float64                 // of its unit
	rows    int                     // of the pot
	column  func(row int) []float64 // grams, or energy in its own unit; nil: none
	most    func(row int) []float64 // what the row does not know of it, at its most; nil: it knows all
}

// SortOf is a constituent of a pot.
func SortOf(pot *ledger.Pot, c *constituent.Constituent) Sort {
	if c.Kind == constituent.Figure {
		return energySort(pot, energyUnit(c.ID))
	}
	return Sort{c.PerGram, len(pot.Rows), func(row int) []float64 { return someOf(pot, row, c.ID) }, func(row int) []float64 { return mostByDraw(pot, row, c) }}
}

func energySort(pot *ledger.Pot, unit int) Sort {
	return Sort{1, len(pot.Rows), func(row int) []float64 {
		col := make([]float64, pot.N)
		energy(pot, row, unit, col)
		return col
	}, func(row int) []float64 {
		if bound, partial := energyBound(pot.Only(func(r int) bool { return r == row }), unit); partial {
			return slices.Repeat([]float64{bound}, pot.N)
		}
		return nil
	}}
}

// Solids are what is left of a pot when water, alcohol and gas have gone. Mass that may be
// water is unknown.
func Solids(pot *ledger.Pot) Sort {
	return Sort{1, len(pot.Rows), func(row int) []float64 {
		col := pot.Of(row, constituent.Mass)
		for d, x := range ledger.OpenWater(pot, row) {
			// guard: what may be water is no solids
			col[d] -= x
		}
		for _, id := range []constituent.ID{constituent.Water, constituent.Alcohol, constituent.CarbonDioxide} {
			for d, x := range someOf(pot, row, id) {
				col[d] = max(col[d]-x, 0)
			}
		}
		return col
	}, func(row int) []float64 { return ledger.OpenWater(pot, row) }}
}

// someOf gives the column of a constituent in a row; nil if there is none of it.
func someOf(pot *ledger.Pot, row int, id constituent.ID) []float64 {
	if !slices.ContainsFunc(pot.Columns.Below(id), func(col int) bool { return pot.Has(row, col) }) {
		return nil
	}
	return pot.Of(row, id)
}

// mostByDraw is the most that a row holds of what it does not know of a constituent, draw by
// draw: its bound, and no more than its totals leave. Nil if it knows all.
func mostByDraw(pot *ledger.Pot, row int, c *constituent.Constituent) []float64 {
	bounds := pot.Bounds(row)
	bound := bounds[c.Order]
	if bound == 0 {
		return nil
	}
	most := slices.Repeat([]float64{bound}, pot.N)
	if pot.CentralOf(row, constituent.Mass) == 0 { // what a step made of another row, and weighs there
		return most
	}
	var own []float64
	for up := c.Parent; up != ""; up = constituent.Must(up).Parent {
		above := bounds[constituent.Must(up).Order]
		if !food.Stated(above) { // a total without an end bounds nothing
			continue
		}
		if own == nil {
			own = pot.Of(row, c.ID)
		}
		for d, total := range pot.Of(row, up) {
			most[d] = max(lower(most[d], total+above-own[d]), 0)
		}
	}
	return most
}

// Of gives the column of a row, in grams or in its own unit; nil if it has none.
func (s Sort) Of(row int) []float64 { return s.column(row) }

// UnknownOf gives the most that a row holds of what it does not know, draw by draw; nil if it knows
// all, not a number where nothing bounds it.
func (s Sort) UnknownOf(row int) []float64 { return s.most(row) }

// Total adds a sort up over a pot.
func (s Sort) Total(pot *ledger.Pot) []float64 {
	total := make([]float64, pot.N)
	for row := range pot.Rows {
		add(total, s.column(row))
	}
	return total
}

// InGrams is what a pot holds of a sort that is counted in grams: with what its rows do not
// know of it as the end.
func (m *Meter) InGrams(pot *ledger.Pot, s Sort) Result {
	total := s.Total(pot)
	r, bound := Known(m.Of(total), "g"), 0.0
	for row := range pot.Rows {
		if most := s.most(row); most != nil {
			bound, r.Partial = bound+most[0], true
		}
	}
	if r.Partial {
		r.Unknown = total[0] == 0
		r.WithBounds, r.UpTo = r.Mean+bound, max(r.High, r.Mean)+bound
		r.Coverage = coverage(r.Mean, bound)
	}
	return r
}

// MostOf is the most that some rows hold of a sort in any draw, with what they do not know.
func (s Sort) MostOf(pot *ledger.Pot) float64 {
	total := s.Total(pot)
	for row := range pot.Rows {
		add(total, s.most(row))
	}
	return highest(total) * s.PerGram
}

// Bring tells what each of some groups of rows brings of a sort. A group has each row once.
func (m *Meter) Bring(pot *ledger.Pot, s Sort, groups [][]int) []Bringing {
	columns, bounds := make([][]float64, len(pot.Rows)), make([][]float64, len(pot.Rows))
	total := make([]float64, pot.N)
	for row := range pot.Rows {
		columns[row] = s.column(row)
		add(total, columns[row])
		bounds[row] = s.most(row)
	}
	list := make([]Bringing, len(groups))
	part, full := make([]float64, pot.N), make([]float64, pot.N)
	for i, rows := range groups {
		clear(part)
		copy(full, total)
		b := &list[i]
		for _, row := range rows {
			add(part, columns[row])
			if bounds[row] != nil {
				b.Unknown = true
				b.Most += bounds[row][0] * s.PerGram
			}
		}
		for row, most := range bounds {
			if !slices.Contains(rows, row) {
				add(full, most) // NaN stays NaN
			}
		}
		b.Mean, b.Share, b.Worst = part[0]*s.PerGram, m.Share(part, total), worstShare(part, full)
	}
	return list
}

// worstShare is the least that a part is of a whole in any draw; NaN where the whole has no
// bound, or is nothing.
func worstShare(part, whole []float64) float64 {
	least := math.Inf(1)
	for d, x := range part {
		least = min(least, x/whole[d]) // NaN stays NaN
	}
	return least
}

func highest(col []float64) float64 {
	most := math.Inf(-1)
	for _, x := range col {
		most = max(most, x) // NaN stays NaN
	}
	return most
}

func add(sum, col []float64) {
	for d, x := range col {
		sum[d] += x
	}
}

// Ingredients tells what each food of a pot brings of a sort, the most first; those that bring
// nothing and know so are left out.
func (m *Meter) Ingredients(pot *ledger.Pot, s Sort) []Ingredient {
	type way struct{ food, from, to int } // its groups
	var list []Ingredient
	var groups [][]int
	at := map[food.ID]int{}
	for row, r := range pot.Rows {
		id := r.Profile.Food.ID
		i, have := at[id]
		if !have {
			i = len(list)
			at[id] = i
			list = append(list, Ingredient{Food: r.Profile.Food})
			groups = append(groups, nil)
		}
		groups[i] = append(groups[i], row)
	}
	var ways []way
	for i := range list {
		w := way{i, len(groups), 0}
		for _, row := range groups[i] {
			same := func(t Through) bool { return slices.Equal(t.Path, pot.Rows[row].Path) }
			if k := slices.IndexFunc(list[i].Through, same); k >= 0 {
				groups[w.from+k] = append(groups[w.from+k], row)
				continue
			}
			list[i].Through = append(list[i].Through, Through{Path: pot.Rows[row].Path})
			groups = append(groups, []int{row})
		}
		w.to = len(groups)
		ways = append(ways, w)
	}
	brought := m.Bring(pot, s, groups)
	for _, w := range ways {
		list[w.food].Bringing = brought[w.food]
		for k, b := range brought[w.from:w.to] {
			list[w.food].Through[k].Bringing = b
		}
	}
	return worthNaming(list)
}

// worthNaming drops what brings nothing, and sorts: the most first.
func worthNaming(list []Ingredient) []Ingredient {
	nothing := func(b Bringing) bool { return b.Mean == 0 && !b.Unknown }
	list = slices.DeleteFunc(list, func(i Ingredient) bool { return nothing(i.Bringing) })
	for i := range list {
		list[i].Through = slices.DeleteFunc(list[i].Through, func(t Through) bool { return nothing(t.Bringing) })
	}
	slices.SortStableFunc(list, func(a, b Ingredient) int {
		switch {
		case a.Mean > b.Mean:
			return -1
		case a.Mean < b.Mean:
			return 1
		}
		return 0
	})
	return list
}
