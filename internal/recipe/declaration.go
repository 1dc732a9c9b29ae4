package recipe

import (
	"fmt"
	"math"

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

// meaning tells which constituent a figure is of: by its tagname, or as the row of a declaration
// that the word names. What the rules count to a row and the pack states beside it is taken off:
// the polyols of an eu carbohydrate.
func (r *resolver) meaning(d *declaration, v drink.Stated, ofPack bool) (meaning, bool) {
	m := meaning{Stated: v, times: 1}
	times := 1.0
	if c, ok := constituent.Find(v.Tag); ok {
		m.of = c
		if c.ID == constituent.Energy { // kcal are as good as kJ
			m.of = constituent.Must(energyIn(c.ID, v.Unit))
		}
		if row, ok := d.rules.RowOf(m.of.ID); ok {
			m.row, m.times = &row, row.Times
		}
	} else if row, ok := d.rules.Row(v.Tag); ok {
		m.of, m.row, m.word, times = constituent.Must(energyIn(row.Of, v.Unit)), &row, true, 1/row.Times
	} else {
		r.faults.Add(v.Place, "use a tagname such as SUGAR, FAT, PROCNT, NA, or a row of the pack such as carbohydrate, sugars, salt", "unknown constituent %s", note.Quote(v.Tag))
		return m, false
	}
	factor, ok := unit.Convert(v.Unit, m.of.Unit)
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

// zero reads a 0 as what it was rounded from: less than what the rules of the pack let be printed
// so, and of a laboratory less than half of its last digit. A pack's 0 of what no rules round
// (alcohol, caffeine) is what its source says of the food, and stays none, and so does 0 g ± 0 g.
func (d *declaration) zero(m *meaning, ofPack bool) {
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
			c, ok := constituent.Find(v.Tag)
			if row, word := d.rules.Row(v.Tag); !ok && word {
				c, ok = constituent.Find(string(row.Of))
			}
			if factor, mass := unit.Convert(v.Unit, in); ok && mass && c.ID == id && v.State == "" {
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
		if m.State == drink.Below {
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
