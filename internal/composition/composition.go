package composition

import (
	"slices"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// Meter summarises columns with scratch buffers.
type Meter struct {
	summariser estimate.Summariser
	quotient   []float64
	full       []float64
	part       []float64
	foods      []string // by row of the pot whose contributions are given
	Brief      bool     // mean and standard deviation only
	Draws      bool     // figures keep their draws
}

// Of summarises a column.
func (m *Meter) Of(col []float64) estimate.Summary {
	if m.Brief {
		return estimate.Moments(col)
	}
	return m.summariser.Of(col)
}

// ratioOf summarises a / b · scale.
func (m *Meter) ratioOf(a, b []float64, scale float64) estimate.Summary {
	if len(m.quotient) != len(a) {
		m.quotient = make([]float64, len(a))
	}
	estimate.Divide(m.quotient, a, b, scale)
	return m.Of(m.quotient)
}

// draws gives those of the last ratio, if figures keep theirs.
func (m *Meter) draws() []float64 {
	if !m.Draws {
		return nil
	}
	return slices.Clone(m.quotient[1:])
}

// Composition gives every constituent of a pot with these totals over a divisor
// column, times times, in the vocabulary's units.
func (m *Meter) Composition(pot *ledger.Pot, ids []*constituent.Constituent, of Totals, divisor []float64, times float64) Composition {
	list := make(Composition, 0, len(ids))
	whole := m.ratioOf(pot.Mass(), divisor, times)
	ends := ceiling{constituent.Mass: {whole.Mean, max(whole.High, whole.Mean)}}
	for _, c := range ids { // totals stand before their parts
		if c.Kind == constituent.Figure {
			list = append(list, m.energy(pot, c, of[c.ID], divisor, times, ends[constituent.Mass]))
			continue
		}
		total := of[c.ID]
		bound, rows := pot.Bound(c.ID)
		r := Result{
			Unit:    c.Unit,
			State:   pot.State(c.ID),
			By:      totalBy(pot, c),
			Partial: len(rows) > 0,
			// guard: unknown is not zero
			Unknown: total[0] == 0 && len(rows) > 0, // none of what is known is more than nothing
		}
		scale := times * c.PerGram
		r.Summary = m.ratioOf(total, divisor, scale)
		r.Draws = m.draws()
		r.WithBounds, r.UpTo = r.Mean, max(r.High, r.Mean) // what is known wholly could be no more than its interval
		if r.Partial {
			most, _ := MostOf(pot, c.ID)
			r.WithBounds = (total[0] + most) / divisor[0] * scale
			r.UpTo = m.upTo(total, divisor, bound, scale, r.WithBounds)
		}
		if c.Parent != "" {
			e := ends.under(c.ID, end{r.WithBounds / c.PerGram, r.UpTo / c.PerGram})
			ends[c.ID] = e
			if r.Partial {
				r.WithBounds, r.UpTo = e.withBounds*c.PerGram, e.upTo*c.PerGram
			}
		}
		r.Coverage = coverage(r.Mean, r.WithBounds-r.Mean)
		if r.Unknown {
			r.State, r.By = estimate.Unknown, ""
		}
		list = append(list, Figure{Constituent: c, Result: r})
	}
	return list
}

// energy is a figure of energy; mass is that of all there is, on the same basis.
func (m *Meter) energy(pot *ledger.Pot, c *constituent.Constituent, total, divisor []float64, times float64, mass end) Figure {
	f := Figure{Constituent: c, Result: Known(m.ratioOf(total, divisor, times), c.Unit)}
	f.Draws = m.draws()
	if bound, partial := energyBound(pot, energyUnit(c.ID)); partial {
		f.Coverage, f.Partial = coverage(total[0], bound), true
		f.WithBounds = (total[0] + bound) / divisor[0] * times
		f.UpTo = m.upTo(total, divisor, bound, times, f.WithBounds)
		if mass.withBounds > 0 { // what is unknown weighs something
			most := richest(energyUnit(c.ID))
			f.WithBounds, f.UpTo = lower(f.WithBounds, mass.withBounds*most), lower(f.UpTo, mass.upTo*most)
			f.Coverage = coverage(f.Mean, f.WithBounds-f.Mean)
		}
		if f.Unknown = total[0] == 0; f.Unknown {
			f.State = estimate.Unknown
		}
	}
	return f
}

// FoodsOf names the food of each row of a pot.
func FoodsOf(pot *ledger.Pot) []string {
	foods := make([]string, len(pot.Rows))
	for row, r := range pot.Rows {
		foods[row] = r.Profile.Food.ID.String()
	}
	return foods
}

// Contribute gives the figures of a pot their contributions; those of the detailed
// constituents with shares. Figures are worked off side by side.
func (m *Meter) Contribute(list Composition, pot *ledger.Pot, of Totals, detailed []*constituent.Constituent) {
	foods := FoodsOf(pot)
	_ = estimate.InBlocks(len(list), func(from, to int) error {
		own := &Meter{Brief: m.Brief, foods: foods}
		for i := from; i < to; i++ {
			c, total := list[i].Constituent, []float64(nil) // no shares
			if slices.Contains(detailed, c) {
				total = of[c.ID]
			}
			if c.Kind == constituent.Figure {
				list[i].Contributions = own.energyContributions(pot, c, total)
			} else {
				list[i].Contributions = own.contributions(pot, c, total)
			}
		}
		return nil
	})
}

func (m *Meter) energyContributions(pot *ledger.Pot, c *constituent.Constituent, total []float64) []Contribution {
	var list []Contribution
	unit := energyUnit(c.ID)
	for row := range pot.Rows {
		part := []float64{rowEnergy(pot, row, unit)} // an amount alone needs no more than the central value
		if total != nil {
			part = make([]float64, pot.N)
			energy(pot, row, unit, part)
		}
		if part[0] > 0 {
			list = append(list, m.contribution(pot, row, part, total, 1))
		}
	}
	return list
}

// contributions gives what each row brings to a constituent, rows with nothing
// left out; rows that are unknown are listed with their bound. With a total come
// the shares of it.
func (m *Meter) contributions(pot *ledger.Pot, c *constituent.Constituent, total []float64) []Contribution {
	list := make([]Contribution, 0, len(pot.Rows))
	draws := max(len(total), 1)
	for row := range pot.Rows {
		part := m.firstOf(pot, row, c, draws)
		bound := pot.Bounds(row)[c.Order]
		if part[0] == 0 && bound == 0 {
			continue
		}
		con := m.contribution(pot, row, part, total, c.PerGram)
		cell := pot.Rows[row].Profile.Cells[c.Order]
		con.State, con.SourceNote, con.Table, con.Source, con.By = cell.State, cell.Why, cell.From.Works(), cell.Source, partBy(pot, row, c)
		if cell.Source == "" && c.Kind == constituent.Parent {
			con.Source = sourcesOfParts(pot, row, c)
		}
		if bound != 0 {
			con.Unknown, con.Bound = true, mostOfRow(pot, row, c)*c.PerGram
		}
		list = append(list, con)
	}
	if len(list) == 0 {
		return nil
	}
	return list
}

// firstOf gives the first n numbers of a constituent's column in one row, until it is asked
// again.
func (m *Meter) firstOf(pot *ledger.Pot, row int, c *constituent.Constituent, n int) []float64 {
	if cap(m.part) < n {
		m.part = make([]float64, n)
	}
	part := m.part[:n]
	clear(part)
	for _, col := range pot.Columns.Below(c.ID) {
		if pot.Has(row, col) {
			for d, x := range pot.Cell(row, col)[:n] {
				part[d] += x
			}
		}
	}
	return part
}

// sourcesOfParts gives the works behind a total that has no figure of its own:
// those of its parts.
func sourcesOfParts(pot *ledger.Pot, row int, total *constituent.Constituent) string {
	var ids []string
	for _, col := range pot.Columns.Below(total.ID) {
		leaf := pot.Columns.List[col]
		if pot.Cell(row, col)[0] == 0 {
			continue
		}
		for id := range strings.FieldsSeq(pot.Rows[row].Profile.Cells[leaf.Order].Source) {
			if !slices.Contains(ids, id) {
				ids = append(ids, id)
			}
		}
	}
	return strings.Join(ids, " ")
}

func (m *Meter) contribution(pot *ledger.Pot, row int, part, total []float64, perGram float64) Contribution {
	con := Contribution{
		Path: pot.Rows[row].Path, Food: m.foods[row],
		Mean: part[0] * perGram, Share: noShare(), State: estimate.Calculated,
	}
	if total != nil {
		con.Share = m.Share(part, total)
	}
	return con
}

// Totals are the columns of a pot's constituents: grams, or energy in its own unit.
type Totals map[constituent.ID][]float64

// TotalsOf adds the constituents up side by side.
func TotalsOf(pot *ledger.Pot, ids []*constituent.Constituent) Totals {
	columns := make([][]float64, len(ids))
	_ = estimate.InBlocks(len(ids), func(from, to int) error {
		for i := from; i < to; i++ {
			columns[i] = ColumnOf(pot, ids[i])
		}
		return nil
	})
	of := Totals{}
	for i, c := range ids {
		of[c.ID] = columns[i]
	}
	return of
}

// ColumnOf gives the column of a constituent over a pot: grams, or energy in its
// own unit.
func ColumnOf(pot *ledger.Pot, c *constituent.Constituent) []float64 {
	if c.Kind != constituent.Figure {
		return pot.Total(c.ID)
	}
	total := make([]float64, pot.N)
	for row := range pot.Rows {
		energy(pot, row, energyUnit(c.ID), total)
	}
	return total
}
