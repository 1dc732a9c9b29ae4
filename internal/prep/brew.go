package prep

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// Recipe is a brew in columns: grams in the cup, dissolved solids in it and the
// share of the dose that is dissolved. Two are set; the third is nil.
type Recipe struct{ Out, Strength, Yield []float64 }

// solve finds the third figure: out·strength = dose·yield.
func (r *Recipe) solve(dose []float64) {
	over := func(a, b, c []float64) []float64 { // a·b ÷ c
		col := make([]float64, len(a))
		for d := range col {
			if c[d] > 0 {
				col[d] = a[d] * b[d] / c[d]
			}
		}
		return col
	}
	switch {
	case r.Yield == nil:
		r.Yield = over(r.Out, r.Strength, dose)
	case r.Strength == nil:
		r.Strength = over(dose, r.Yield, r.Out)
	case r.Out == nil:
		r.Out = over(dose, r.Yield, r.Strength)
	}
}

// Brew extracts the coffee or tea of the pot. The dose is every row of the groups
// coffee bean and tea leaf that has not been extracted; the other rows are the water.
//
// In the cup are dose·yield of the dose's solids: fat, protein, ash, acids … by
// their own shares (data/extraction.csv), the rest of the carbohydrate what is
// missing; if the shares alone exceed the yield they, and those of minerals and other
// riders, are scaled to it. The other
// rows, and the moisture of the dose, are in it by (out − solids) ÷ water, with
// their minerals; what is left is held by the grounds.
//
// Valid for roasted coffee in hot or cold water and for tea leaf in water near
// boiling. It is an error if there is no dose, too little water, or if the dose
// cannot give the solids.
//
// Caffeine and the other small solutes of coffee follow liquor and yield
// (WashedShare), those of tea the yield (SoluteShare).
//
// Limits: strength counts the dose's solids, not the water's. The way of brewing
// is not known: a moka pot that is stopped early gives less caffeine than its
// liquor tells. The filter is not known, so the fat of weak brews is wide.
// Roasting is not modelled: take the bean that was brewed.
func Brew(pot *ledger.Pot, r Recipe, f Factors) (Outcome, error) {
	dose, water := make([]float64, pot.N), make([]float64, pot.N)
	for row := range pot.Rows {
		mass, into := pot.Of(row, constituent.Mass), water
		if isDose(pot.Rows[row]) {
			for d, x := range pot.Of(row, constituent.Water) {
				water[d] += x
			}
			into = dose
		}
		for d, x := range mass {
			into[d] += x
		}
	}
	if dose[0] <= 0 {
		return Outcome{}, impossible("nothing here is brewed: no ingredient belongs to %s", fail.Or(food.GroupsThat(func(g food.Group) bool { return g.Dose })))
	}
	r.solve(dose)
	solids, liquid := make([]float64, pot.N), make([]float64, pot.N)
	for d := range solids {
		// a draw has no more solids than cup
		solids[d] = min(r.Out[d]*r.Strength[d], r.Out[d])
		liquid[d] = r.Out[d] - solids[d]
	}
	if r.Strength[0] >= 1 {
		return Outcome{}, impossible("%.4g g in the cup cannot hold %.4g g of solids", r.Out[0], r.Out[0]*r.Strength[0])
	}
	bean := slices.ContainsFunc(pot.Rows, isBean)
	soluble := brewing("soluble share coffee bean")
	// guard: no more than dissolves
	if bean && r.Yield[0] > soluble.high {
		return Outcome{}, impossible("%.3g %% of the dose would be in the cup, and of roasted coffee no more than %.0f %% dissolves in hot water", unit.Hundred*r.Yield[0], unit.Hundred*soluble.high)
	}
	if liquid[0] > water[0] {
		return Outcome{}, impossible("%.4g g in the cup hold %.4g g of water, but only %.4g g are there", r.Out[0], liquid[0], water[0])
	}
	m := newBrew(dose, r, f)
	m.water = partOf(liquid, water)
	if most := m.balance(pot, solids); solids[0] > most {
		return Outcome{}, impossible("%.3g g of solids in the cup: the dose can give about %.3g g", solids[0], most)
	}
	out := Outcome{Lost: apply(pot, m), Brewed: true}
	for row, r := range pot.Rows {
		if isDose(r) {
			m.nameCarbohydrate(pot, row)
			ledger.Extract(pot, row)
		}
	}
	out.note("%.4g g at %.3g %% are %.3g %% of the dose; the grounds hold %.2g g of water a gram", r.Out[0], unit.Hundred*r.Strength[0], unit.Hundred*r.Yield[0], (water[0]-liquid[0])/dose[0])
	if bean && r.Yield[0] > soluble.low {
		out.note("about %.0f %% of roasted coffee dissolves as a rule, and %.0f %% at most: check out, strength and the dose", unit.Hundred*soluble.low, unit.Hundred*soluble.high)
	}
	return out, nil
}

// isDose reports whether a row is grounds or leaf: not what has been drawn out of them.
func isDose(row ledger.Row) bool {
	return !row.Extracted && row.Profile.Food.Facts().Dose
}

// EspressoStrength is the share of dissolved solids above which a coffee is brewed as
// espresso.
func EspressoStrength() float64 { return brewing("espresso strength").value }

func isBean(row ledger.Row) bool {
	group := row.Profile.Food.Facts()
	return group.Coffee && group.Dose
}

func isLeaf(of *food.Food) bool {
	group := of.Facts()
	return group.Tea && group.Dose
}

// brew keeps what is in the cup.
type brew struct {
	extraction
	water []float64 // share of the water, and of all rows but the dose
	scale []float64 // of the shares by entry, where they alone exceed the yield
	rest  []float64 // share of the parts of the mass without an entry
}

func newBrew(dose []float64, r Recipe, f Factors) *brew {
	style := filterStyle
	if r.Strength[0] >= brewing("espresso strength").value {
		style = espressoStyle
	}
	liquor := make([]float64, f.N)
	for d := range liquor {
		if dose[d] > 0 {
			liquor[d] = r.Out[d] / dose[d]
		}
	}
	return &brew{
		extraction: newExtraction(style, f, func(of *food.Food) []float64 { return f.washed(of, liquor, r.Yield) }),
		scale:      estimate.Constant(f.N, 1), rest: make([]float64, f.N),
	}
}

// balance makes the cup hold the solids, and gives the most that the dose can
// give at central values.
func (m *brew) balance(pot *ledger.Pot, solids []float64) (most float64) {
	byEntry, others := make([]float64, pot.N), make([]float64, pot.N)
	for row := range pot.Rows {
		if !isDose(pot.Rows[row]) {
			continue
		}
		for _, col := range pot.Columns.Below(constituent.Mass) {
			c := pot.Columns.List[col]
			if c.ID == constituent.Water {
				continue
			}
			share := m.fixed(pot.Rows[row], c)
			for d, x := range pot.Cell(row, col) {
				if share == nil {
					others[d] += x
				} else {
					byEntry[d] += x * share[d]
				}
			}
		}
	}
	for d, s := range solids {
		switch {
		case s < byEntry[d]:
			m.scale[d] = s / byEntry[d]
		case others[d] > 0:
			m.rest[d] = min((s-byEntry[d])/others[d], 1)
		}
	}
	return byEntry[0] + others[0]
}

func (m *brew) Share(row ledger.Row, c *constituent.Constituent, share []float64) {
	if !isDose(row) || c.ID == constituent.Water {
		copy(share, m.water)
		return
	}
	by, rider := m.fixed(row, c), c.Kind == constituent.Rider
	if by == nil && rider {
		by = m.entry(row, ridersEntry)
	}
	switch {
	case by == nil:
		copy(share, m.rest)
	case rider && m.isSolute(row, c):
		copy(share, by)
	default:
		for d := range share {
			share[d] = by[d] * m.scale[d]
		}
	}
}
