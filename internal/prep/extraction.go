package prep

import (
	"math"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// The styles of data/extraction.csv, told apart by strength.
const (
	espressoStyle = "espresso"
	filterStyle   = "filter"
)

// The entries of data/extraction.csv that are no constituents: what dissolves of
// the parts of the mass, and of the riders, that have no row of their own.
const (
	solidsEntry constituent.ID = "solids"
	ridersEntry constituent.ID = "riders"
	yieldEntry  constituent.ID = "yield" // of a steep, whose yield nobody states
)

type extractKey struct {
	group, style string
	id           constituent.ID
}

// extracted is a row of data/extraction.csv: the share of a constituent of the
// dose that ends in the liquor. A solute has the share that the step gives to all
// small solutes of the group.
type extracted struct {
	factor
	solute bool
}

var extractions = sync.OnceValue(func() map[extractKey]extracted {
	table := map[extractKey]extracted{}
	for _, row := range embedded.Rows("extraction.csv") {
		key := extractKey{row.Text("group"), row.Text("style"), constituent.ID(row.Text("constituent"))}
		if row.Text("share") == "solute" {
			table[key] = extracted{solute: true}
			continue
		}
		table[key] = extracted{factor: factorOf(row, "share")}
	}
	return table
})

// brewing gives a figure of data/brewing.csv.
func brewing(name string) factor { return brewingFigures()[name] }

var brewingFigures = sync.OnceValue(func() map[string]factor {
	table := map[string]factor{}
	for _, row := range embedded.Rows("brewing.csv") {
		table[row.Text("name")] = factorOf(row, "value")
	}
	return table
})

// extraction finds and draws the shares of one step.
type extraction struct {
	style   string
	factors Factors
	drawing func(of *food.Food) []float64 // the share of a food's small solutes
	drawn   map[extractKey][]float64
	solutes map[string][]float64 // by leafKind
}

func newExtraction(style string, f Factors, drawing func(of *food.Food) []float64) extraction {
	return extraction{style: style, factors: f, drawing: drawing, drawn: map[extractKey][]float64{}, solutes: map[string][]float64{}}
}

// solute gives the share of the small solutes of a food: one for them all, and
// no more than all.
func (x *extraction) solute(of *food.Food) []float64 {
	kind := leafKind(of)
	col, ok := x.solutes[kind]
	if !ok {
		col = x.drawing(of)
		for d := range col {
			col[d] = min(col[d], 1)
		}
		x.solutes[kind] = col
	}
	return col
}

// fixed gives the share of a constituent of a row by its own entry or its
// nearest parent's, in the row's group, else in all groups; a constituent of the
// fat follows the fat. nil: it has no entry.
func (x *extraction) fixed(row ledger.Row, c *constituent.Constituent) []float64 {
	key, ok := x.key(row, c)
	if !ok {
		return nil
	}
	return x.column(row, key)
}

func (x *extraction) key(row ledger.Row, c *constituent.Constituent) (extractKey, bool) {
	of := func(id constituent.ID) (extractKey, bool) { return x.find(row.Profile.Food.Group, id) }
	key, ok := nearest(c, of)
	if !ok && c.Phase == fatPhase {
		key, ok = of(constituent.Fat)
	}
	return key, ok
}

// isSolute reports whether a constituent of a row is one of the small solutes, whose share
// follows the yield by itself.
func (x *extraction) isSolute(row ledger.Row, c *constituent.Constituent) bool {
	key, ok := x.key(row, c)
	return ok && extractions()[key].solute
}

// given gives the share of a constituent that a steep draws out of a row.
func (x *extraction) given(row ledger.Row, c *constituent.Constituent) []float64 {
	if by := x.fixed(row, c); by != nil {
		return by
	}
	if c.Kind == constituent.Rider {
		return x.entry(row, ridersEntry)
	}
	return x.entry(row, solidsEntry)
}

// entry gives the share of one of the entries that are no constituents.
func (x *extraction) entry(row ledger.Row, id constituent.ID) []float64 {
	key, ok := x.find(row.Profile.Food.Group, id)
	if !ok {
		panic("prep: extraction.csv lacks " + string(id))
	}
	return x.column(row, key)
}

func (x *extraction) find(group string, id constituent.ID) (extractKey, bool) {
	for _, key := range []extractKey{{group, x.style, id}, {group, "*", id}, {"*", "*", id}} {
		if _, ok := extractions()[key]; ok {
			return key, true
		}
	}
	return extractKey{}, false
}

func (x *extraction) column(row ledger.Row, key extractKey) []float64 {
	entry := extractions()[key]
	if entry.solute {
		return x.solute(row.Profile.Food)
	}
	col, ok := x.drawn[key]
	if !ok {
		col = x.factors.draw(string(key.id)+"/"+key.group, entry.factor)
		x.drawn[key] = col
	}
	return col
}

// availableEntry is the entry of data/extraction.csv for the available carbohydrate in a
// gram of what dissolves of a solid.
const availableEntry constituent.ID = "available"

// nameCarbohydrate tells what the carbohydrate is that a brew or a steep has drawn out of a
// row, where data/extraction.csv knows: tables give a solid its carbohydrate by difference,
// and of that next to nothing is sugar or starch in the liquid. What goes beyond is
// carbohydrate without a name (CHOCDF-other), and no sugar is unknown beyond it.
func (x *extraction) nameCarbohydrate(pot *ledger.Pot, row int) {
	key, ok := x.find(pot.Rows[row].Profile.Food.Group, availableEntry)
	from, to := pot.Columns.At(constituent.RestOf(constituent.Available)), pot.Columns.At(burnt)
	if !ok || from < 0 || to < 0 || !pot.Has(row, from) {
		return
	}
	share := x.column(pot.Rows[row], key)
	solids, water, available := pot.Of(row, constituent.Mass), pot.Of(row, constituent.Water), pot.Of(row, constituent.Available)
	rest, unnamed := pot.Write(row, from), pot.Write(row, to)
	for d := range rest {
		beyond := available[d] - share[d]*(solids[d]-water[d])
		moved := min(max(beyond, 0), max(rest[d], 0))
		rest[d] -= moved
		unnamed[d] += moved
	}
	most := extractions()[key].high * (solids[0] - water[0])
	bounds := pot.Bounds(row)
	for _, id := range []constituent.ID{constituent.Sugar, constituent.Available, "STARCH"} {
		capBound(bounds, id, most)
	}
	for _, leaf := range constituent.Sums().Leaves(constituent.Sugar) {
		capBound(bounds, leaf.ID, most)
	}
}

// capBound lets what is unknown be no more than most.
func capBound(bounds []float64, id constituent.ID, most float64) {
	order := constituent.Must(id).Order
	if b := bounds[order]; b > most || math.IsNaN(b) {
		bounds[order] = most
	}
}
