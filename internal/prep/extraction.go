package prep

import (
	"math"
	"sync"

	"sipsum/internal/constituent"
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
	yieldEntry  constituent.ID = "yield" // of a brew whose yield nobody states
)

type extractKey struct {
	group, style string
	id           constituent.ID
}

// extracted is a row of data/extraction.csv: the share of a constituent of the
// dose that ends in the liquor. A solute follows the yield (SoluteShare).
type extracted struct {
	factor
	solute bool
}

var extractions = sync.OnceValue(func() map[extractKey]extracted {
	const file = "extraction.csv"
	table := map[extractKey]extracted{}
	for _, row := range tableRows(file)[1:] {
		key := extractKey{row[0], row[1], constituent.ID(row[2])}
		if row[3] == "solute" {
			table[key] = extracted{solute: true}
			continue
		}
		table[key] = extracted{factor: factorOf(file, row[3:6])}
	}
	return table
})

// brewing gives a figure of data/brewing.csv.
func brewing(name string) factor { return brewingFigures()[name] }

var brewingFigures = sync.OnceValue(func() map[string]factor {
	const file = "brewing.csv"
	table := map[string]factor{}
	for _, row := range tableRows(file)[1:] {
		table[row[0]] = factorOf(file, row[1:4])
	}
	return table
})

// SoluteShare gives the share of a small solute, such as caffeine, that is in
// the liquor when a yield of the solids is: both leave the grounds by first
// order, the solute faster by a factor,
//
//	share = 1 − (1 − yield / soluble)^factor
func SoluteShare(yield, soluble, factor float64) float64 {
	return 1 - math.Pow(1-min(yield/soluble, 1), factor)
}

// extraction finds and draws the shares of one step.
type extraction struct {
	style   string
	factors Factors
	yield   func(group string) []float64 // of the solids of a group
	drawn   map[extractKey][]float64
	solutes map[string][]float64 // by group
}

func newExtraction(style string, f Factors, yield func(group string) []float64) extraction {
	return extraction{style: style, factors: f, yield: yield, drawn: map[extractKey][]float64{}, solutes: map[string][]float64{}}
}

// solute gives the share of the small solutes of a group. The scatter from brew
// to brew is drawn; no more than all of it dissolves.
func (x *extraction) solute(group string) []float64 {
	if col, ok := x.solutes[group]; ok {
		return col
	}
	soluble, exponent := x.factors.draw("soluble share/"+group, brewing("soluble share "+group)), brewing("solute exponent").value
	col := x.factors.draw("solute scatter/"+group, brewing("solute scatter"))
	for d, yield := range x.yield(group) {
		col[d] = min(col[d]*SoluteShare(yield, soluble[d], exponent), 1)
	}
	x.solutes[group] = col
	return col
}

// fixed gives the share of a constituent of a row by its own entry or its
// nearest parent's, in the row's group, else in all groups; a constituent of the
// fat follows the fat. nil: it has no entry.
func (x *extraction) fixed(row ledger.Row, c *constituent.Constituent) []float64 {
	of := func(id constituent.ID) (extractKey, bool) { return x.find(row.Profile.Food.Group, id) }
	key, ok := nearest(c, of)
	if !ok && c.Phase == fatPhase {
		key, ok = of(constituent.Fat)
	}
	if !ok {
		return nil
	}
	return x.column(key)
}

// entry gives the share of one of the entries that are no constituents.
func (x *extraction) entry(row ledger.Row, id constituent.ID) []float64 {
	key, ok := x.find(row.Profile.Food.Group, id)
	if !ok {
		panic("prep: extraction.csv lacks " + string(id))
	}
	return x.column(key)
}

func (x *extraction) find(group string, id constituent.ID) (extractKey, bool) {
	for _, key := range []extractKey{{group, x.style, id}, {group, "*", id}, {"*", "*", id}} {
		if _, ok := extractions()[key]; ok {
			return key, true
		}
	}
	return extractKey{}, false
}

func (x *extraction) column(key extractKey) []float64 {
	row := extractions()[key]
	if row.solute {
		return x.solute(key.group)
	}
	col, ok := x.drawn[key]
	if !ok {
		col = x.factors.draw(string(key.id)+"/"+key.group, row.factor)
		x.drawn[key] = col
	}
	return col
}
