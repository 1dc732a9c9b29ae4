package prep

import (
	"slices"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// Curdle parts curd and whey and collects grams (a column) of the whey. By is
// acid or rennet; celsius is the temperature, NaN if not stated.
//
// Of each constituent of the dairy rows a share q is in the liquor, whatever the
// amount collected (data/partition.csv); the rest is curd. Other rows are the
// liquor's: what is dissolved splits with the water, pulp and fat stay as in a
// paper filter. All of the liquor has one composition:
//
//	kept = q·x·collect / Σ q·x
//
// That milk parted with acid is evidence of its pH (Outcome.Parted).
//
// Valid for cow's milk and cream whose casein comes down wholly (acid below about
// pH 4.9). It is an error to collect more than the liquor, or if nothing curdles.
//
// Limits: what other rows lose to the curd by binding (tannins, chlorogenic
// acids, bitter flavanones) becomes unknown, caffeine is taken as not bound; trace
// metals of the milk become unknown. Vitamins go with the water or the fat. A
// plant drink does not curdle here. Rows keep their food, so the whey of milk is
// milk.
func Curdle(pot *ledger.Pot, collect []float64, by string, celsius float64, f Factors) (Outcome, error) {
	dairy := 0.0
	for row := range pot.Rows {
		if isDairy(pot.Rows[row]) {
			dairy += pot.CentralOf(row, constituent.Mass)
		}
	}
	if dairy == 0 {
		return Outcome{}, impossible("nothing here curdles: no ingredient belongs to %s", fail.Or(food.GroupsThat(func(g food.Group) bool { return g.Curdles })))
	}
	m := &curd{
		by: by, hot: celsius >= advice("hot"), factors: f, drawn: map[partKey][]float64{}, part: estimate.Constant(pot.N, 1),
		others: newFilter("paper", f),
	}
	liquor := passing(pot, m)
	// guard: no more than the whey
	if collect[0] > liquor[0] {
		return Outcome{}, unlike("collect %s g: curd and whey give about %s g of whey", collect[0], liquor[0])
	}
	var out Outcome
	if by == "acid" {
		out.Notes = adviseAcid(pot, dairy, celsius)
		out.Parted = f.parting(celsius)
		out.note("that the milk parted says that the pot was at most at pH %.1f to %.1f", out.Parted.Low, out.Parted.High)
	}
	m.part = partOf(collect, liquor)
	m.others.part = m.part
	out.Lost = apply(pot, m)
	m.others.extracted(pot)
	for row := range pot.Rows {
		capPhosphate(pot, row)
	}
	m.forget(pot)
	return out, nil
}

func isDairy(row ledger.Row) bool { return row.Profile.Food.Facts().Curdles }

type partKey struct {
	id constituent.ID
	by string
}

// partition is a row of data/partition.csv; an unknown one has no figure.
type partition struct {
	factor
	unknown bool
}

var partitions = sync.OnceValue(func() map[partKey]partition {
	table := map[partKey]partition{}
	for _, row := range embedded.Rows("partition.csv") {
		key := partKey{constituent.Must(constituent.ID(row.Text("constituent"))).ID, row.Text("by")}
		if row.Text("share") == "" {
			table[key] = partition{unknown: true}
			continue
		}
		table[key] = partition{factor: factorOf(row, "share")}
	}
	return table
})

// curd keeps the liquor's share of each constituent; of the liquor, part is
// collected.
type curd struct {
	by      string
	hot     bool
	factors Factors
	drawn   map[partKey][]float64
	part    []float64
	others  *filter
}

func (m *curd) Share(row ledger.Row, c *constituent.Constituent, share []float64) {
	if !isDairy(row) {
		m.others.Share(row, c, share)
		return
	}
	copy(share, m.part)
	key, p, ok := m.find(c)
	if !ok || p.unknown {
		return // dissolved: it goes with the water
	}
	col, ok := m.drawn[key]
	if !ok {
		col = m.factors.draw(string(key.id)+"/"+key.by, p.factor)
		m.drawn[key] = col
	}
	for d := range share {
		share[d] *= col[d]
	}
}

// find gives the row for a constituent of milk: its own or that of the nearest
// parent, else the fat's for what is dissolved in fat.
func (m *curd) find(c *constituent.Constituent) (partKey, partition, bool) {
	ways := []string{m.by, "*"}
	if m.hot && m.by == "acid" {
		ways = slices.Insert(ways, 0, "acid hot")
	}
	of := func(id constituent.ID) (partKey, bool) {
		for _, by := range ways {
			if _, ok := partitions()[partKey{id, by}]; ok {
				return partKey{id, by}, true
			}
		}
		return partKey{}, false
	}
	key, ok := nearest(c, of)
	if !ok && c.Phase == fatPhase {
		key, ok = of(constituent.Fat)
	}
	return key, partitions()[key], ok
}

// fatPhase is the phase of data/constituents.csv that goes with the fat.
const fatPhase = "fat"

// forget makes unknown what nobody has measured.
func (m *curd) forget(pot *ledger.Pot) {
	for row := range pot.Rows {
		by := "others"
		if isDairy(pot.Rows[row]) {
			by = "*"
		}
		forgetOf(pot, row, by)
	}
}

// forgetOf makes unknown what data/partition.csv has without a figure.
func forgetOf(pot *ledger.Pot, row int, by string) {
	for _, c := range constituent.All() {
		if p, ok := partitions()[partKey{c.ID, by}]; ok && p.unknown {
			pot.Forget(row, c.ID)
		}
	}
}

const (
	phosphate  constituent.ID = "phosphate"
	phosphorus constituent.ID = "P"
)

// phosphateOfPhosphorus is the phosphate that a gram of phosphorus is part of.
var phosphateOfPhosphorus = sync.OnceValue(func() float64 {
	p, err := constituent.MolarMass(string(phosphorus))
	if err != nil {
		panic("prep: " + err.Error())
	}
	return molarMass(phosphate) / p
})

// capPhosphate lets the phosphate of a row be no more than all of its phosphorus: what
// dissolves of the curd's and what stays in it are drawn each by itself.
func capPhosphate(pot *ledger.Pot, row int) {
	dissolved, all := pot.Columns.At(phosphate), pot.Columns.At(phosphorus)
	if all < 0 || !pot.Has(row, all) {
		return
	}
	most := pot.Cell(row, all)
	if dissolved >= 0 && pot.Has(row, dissolved) {
		cell := pot.Write(row, dissolved)
		for d, x := range cell {
			cell[d] = min(x, most[d]*phosphateOfPhosphorus())
		}
	}
	order := constituent.Must(phosphate).Order
	if b := pot.Bounds(row)[order]; b > 0 {
		pot.Bounds(row)[order] = min(b, most[0]*phosphateOfPhosphorus())
	}
}
