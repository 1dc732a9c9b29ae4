package recipe

import (
	"fmt"
	"math"
	"slices"

	"sipsum/internal/amount"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/pack"
	"sipsum/internal/unit"
)

// declaration is what an own food states, under the rules of its pack.
type declaration struct {
	food    *drink.OwnFood
	rules   *pack.Rules
	because string  // of these rules
	per100g float64 // from what the values refer to, to 100 g
	read    []accepted
	zeros   []string // as what its 0 are read
}

// meaning is a stated figure and what it is of.
type meaning struct {
	drink.Stated
	of     *constituent.Constituent
	factor float64 // to the vocabulary's unit in 100 g
	row    *pack.Row
	times  float64 // of the figure, to that of the row
	word   bool    // stated by the word of the row, and not by a tagname
}

// accepted is a figure of the pack and what its rules accept of it in 100 g or 100 ml; a side
// that they leave open is infinite, and both where they say nothing.
type accepted struct {
	row         *pack.Row
	of          *constituent.Constituent
	least, most float64
	source      string
}

// declaration finds the rules of a pack: its own, else the drink's first, else those of a drink
// that names none.
func (r *resolver) declaration(o *drink.OwnFood, per100g float64) *declaration {
	name, because := o.Declared, "as the file says"
	if name == "" && len(r.drink.Rules) > 0 {
		name, because = r.drink.Rules[0].Text, "the drink's first rules"
	}
	rules, ok := pack.Of(name)
	if !ok {
		rules, because = pack.Usual(), "since neither the food nor the drink names rules"
	}
	return &declaration{food: o, rules: rules, because: because, per100g: per100g}
}

// meaning tells which constituent a figure is of. What the rules count to a row and the pack states
// beside it is taken off: the polyols of an eu carbohydrate.
func (r *resolver) meaning(d *declaration, v drink.Stated, ofPack bool) (meaning, bool) {
	m, err := d.meant(v)
	if err != nil {
		r.faults.Join(v.Place, err)
		return m, false
	}
	times := 1.0
	if m.word {
		times = 1 / m.row.Times
	}
	if m.State == drink.Trace && m.row != nil {
		m.Unit = m.row.Unit
	}
	factor, ok := unit.Convert(m.Unit, m.of.Unit)
	if !ok && v.State != drink.Unknown && v.State != drink.Trace {
		r.faults.Add(v.Place, "write it in "+m.of.Unit, "%s is given in %s", v.Tag, note.Quote(v.Unit))
		return m, false
	}
	m.factor = factor * times * d.per100g
	if m.word && v.State == "" {
		m.Number -= d.statedIn(v.Unit, m.row.Also)
		if m.Number < 0 {
			r.faults.Add(v.Place, "check the figures", "%s of own food %s is less than what %s counts to it", v.Tag, note.Quote(d.food.Code), d.rules.Name)
			return m, false
		}
	}
	d.zero(&m, ofPack)
	return m, true
}

// meant tells what a figure is of by what it is called: its tagname; the row of a declaration that
// the word names, which the rules of the pack read; or the words of sheets and kitchens. Of two
// constituents that a word may mean it is the one that these rules have a row of.
func (d *declaration) meant(v drink.Stated) (meaning, error) {
	if c, ok := constituent.Find(v.Tag); ok {
		return d.of(v, c), nil
	}
	if row, ok := d.rules.Row(v.Tag); ok {
		return d.asRow(v, row), nil
	}
	if said := constituent.Said(v.Tag); len(said) > 1 {
		said = slices.DeleteFunc(slices.Clone(said), func(c *constituent.Constituent) bool { _, ok := d.rules.RowOf(c.ID); return !ok })
		if len(said) == 1 {
			row, _ := d.rules.RowOf(said[0].ID)
			return d.asRow(v, row), nil
		}
	}
	c, err := constituent.Read(v.Tag, constituent.Any)
	if err != nil {
		return meaning{}, err
	}
	return d.of(v, c), nil
}

// of is the meaning of a figure of a constituent, which the rules may have a row of.
func (d *declaration) of(v drink.Stated, c *constituent.Constituent) meaning {
	m := meaning{Stated: v, of: constituent.Must(energyIn(c.ID, v.Unit)), times: 1}
	if row, ok := d.rules.RowOf(m.of.ID); ok {
		m.row, m.times = &row, row.Times
	}
	return m
}

// asRow is the meaning of a figure of a row of the pack.
func (d *declaration) asRow(v drink.Stated, row pack.Row) meaning {
	return meaning{Stated: v, of: constituent.Must(energyIn(row.Of, v.Unit)), row: &row, times: 1, word: true}
}

// zero reads a 0 as what it was rounded from: less than what the rules of the pack let be printed
// so, and of a laboratory less than half of its last digit. A trace on a pack is no more than such a
// 0; of what no rules round nobody knows how little it is. A pack's 0 of what no rules round
// (alcohol, caffeine) is what its source says of the food, and stays none, and so does 0 g ± 0 g.
func (d *declaration) zero(m *meaning, ofPack bool) {
	if m.State == drink.Trace && m.row != nil && ofPack {
		below, _ := d.rules.Zero(*m.row)
		m.Limit = below / m.times
		return
	}
	if m.State != "" || m.Number != 0 || m.Half > 0 || m.Exact || m.row == nil && ofPack {
		return
	}
	limit := math.Pow10(-m.Decimals) / 2
	if in, ok := 0.0, false; m.row != nil && ofPack {
		if in, ok = unit.Convert(m.Unit, m.row.Unit); ok {
			below, ruled := d.rules.Zero(*m.row)
			below /= in * m.times
			if ruled {
				limit = below
			} else { // written in a unit that no pack prints it in: "K: 0 g"
				limit = min(limit, 1/(2*in))
			}
			limit = max(limit, below)
		}
		d.zeros = append(d.zeros, fmt.Sprintf("%s < %s %s", m.row.Word, note.Number(limit), m.Unit))
	}
	m.State, m.Limit = drink.Below, limit
}

// energyIn gives the energy that a unit measures; of all else, itself.
func energyIn(id constituent.ID, in string) constituent.ID {
	switch {
	case id != constituent.Energy && id != constituent.EnergyKcal:
		return id
	case in == constituent.Must(constituent.EnergyKcal).Unit:
		return constituent.EnergyKcal
	}
	return constituent.Energy
}

// statedIn adds up, in a unit, the figures that the pack states of some constituents.
func (d *declaration) statedIn(in string, ids []constituent.ID) float64 {
	sum := 0.0
	for _, id := range ids {
		for _, v := range d.food.Values {
			m, err := d.meant(v)
			if factor, mass := unit.Convert(v.Unit, in); err == nil && mass && m.of.ID == id && v.State == "" {
				sum += v.Number * factor
			}
		}
	}
	return sum
}

// value brings a figure to the vocabulary's unit per 100 g, with the spread that its ± states or
// else, if a pack declares it, its rules give it.
func (d *declaration) value(m meaning, ofPack bool) food.Value {
	v := food.Value{
		Constituent: m.of.ID, Amount: m.Number * m.factor, SD: food.None, Low: food.None, High: food.None, Limit: food.None,
		State: estimate.Calculated, Source: food.Own, Ref: d.food.Code,
	}
	switch {
	case m.State != "":
		v.Amount = food.None
		v.State, _ = estimate.ParseState(m.State)
		if m.Limit > 0 {
			v.Limit = m.Limit * m.factor
		}
	case m.Half > 0, m.Exact:
		v.SD = amount.HalfSD(&m.Quantity) * m.factor
	case ofPack && m.row != nil && m.Number > 0 && m.of.PerGram > 0:
		v.SD = d.spread(m)
	}
	return v
}

// spread gives the standard deviation of a declared figure in the vocabulary's unit per 100 g,
// and notes what is accepted of it; None where the rules say nothing.
func (d *declaration) spread(m meaning) float64 {
	x, rounding := d.inRow(m)
	least, most := math.Inf(-1), math.Inf(1)
	t, ok := pack.ToleranceOf(d.rules.Name, m.row.Word, x)
	if ok {
		least, most = t.Around(max(x-rounding, 0), x+rounding)
	}
	d.read = append(d.read, accepted{m.row, m.of, least, most, t.Source})
	if !ok {
		return food.None
	}
	perRow := m.Number * m.factor / x // what one of the row in 100 g or 100 ml is in the vocabulary's unit in 100 g
	limit, scale, _ := food.LimitOf(m.of)
	return pack.Spread(x, least, most, food.ClassSpread(m.of, d.food.Group)*x, limit.High/scale/perRow) * perRow
}

// inRow gives a figure and its rounding in the unit of its row in 100 g or 100 ml.
func (d *declaration) inRow(m meaning) (x, rounding float64) {
	in, ok := unit.Convert(m.Unit, m.row.Unit)
	if !ok {
		in = 1 // another energy than the row's: nothing is compared across them
	}
	in *= m.times
	rounding = math.Pow10(-m.Decimals) / 2 * in
	if in == 1 {
		rounding = d.rules.Rounding(*m.row, m.Number, m.Decimals)
	}
	to100 := unit.Hundred / d.food.Per.Base()
	return m.Number * in * to100, rounding * to100
}
