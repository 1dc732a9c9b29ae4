package taste

import (
	"math"

	"sipsum/internal/chemistry"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/liquid"
	"sipsum/internal/unit"
)

// Taste is a taste as the tables name it.
type Taste string

// The tastes.
const (
	Sweet      Taste = "sweet"
	Sour       Taste = "sour"
	Bitter     Taste = "bitter"
	Astringent Taste = "astringent"
	Salty      Taste = "salty"
	Sparkling  Taste = "sparkling"
	Thick      Taste = "thick"
)

// Glass is a liquid of which somebody asks how it tastes.
type Glass struct {
	Pot       *ledger.Pot
	Volume    []float64 // ml
	Seed      uint64    // of the draws that the pot has
	Only      string    // the one kind of input that varies in them; "": all do
	Celsius   float64   // at which it is served
	Chemistry *chemistry.Chemistry
}

// Index is a figure that may be withheld: Why then says so. Partial says "at least": what is
// unknown, or what no rule counts, is not in the mean.
type Index struct {
	composition.Result
	Why string
}

// Profile is what the numbers say of a liquid's tastes.
type Profile struct {
	Sweet SweetIndex
	Sour  SourIndex
	Doses []Dose // bitter, astringent, salty, sparkling, in this order
	Body  Body
	Why   string // no profile: it is no liquid
}

// Of gives the profile of a liquid.
func Of(g Glass) Profile {
	if why := liquid.TooDry(g.Pot); why != "" {
		return Profile{Why: why}
	}
	return Profile{Sweet: Sweetness(g), Sour: g.sour(), Doses: g.doses(), Body: g.body()}
}

// figures gives constituents with all totals above them per so many ml, each with its draws.
func (g Glass) figures(ids []constituent.ID, ml float64) composition.Composition {
	wanted := map[constituent.ID]bool{}
	for _, id := range ids {
		for ; id != ""; id = constituent.Must(id).Parent {
			wanted[id] = true
		}
	}
	var list []*constituent.Constituent
	for _, c := range constituent.All() {
		if wanted[c.ID] && c.ID != constituent.Mass {
			list = append(list, c)
		}
	}
	m := &composition.Meter{Draws: true}
	return m.Composition(g.Pot, list, composition.TotalsOf(g.Pot, list), g.Volume, ml)
}

// carried tells whether there is something to say of a constituent: some food states it, a step
// makes it, or it is bounded. Of what no table asks about there is not.
func (g Glass) carried(id constituent.ID) bool {
	bound, rows := g.Pot.Bound(id)
	return len(g.Pot.Columns.Below(id)) > 0 || len(rows) > 0 && !math.IsNaN(bound)
}

// ensemble makes the draws of what the tables of this package leave open.
func (g Glass) ensemble() estimate.Ensemble {
	return estimate.Ensemble{Seed: g.Seed, N: g.Pot.N, Only: g.Only}
}

// indexOf reads an index off a column.
func indexOf(col []float64, unit string) Index {
	r := composition.Known(estimate.Summarise(col), unit)
	r.Draws = col[1:]
	return Index{Result: r}
}

// withheld is an index that is not given.
func withheld(unit, why string) Index {
	none := math.NaN()
	return Index{Why: why, Result: composition.Result{
		Summary: estimate.Summary{Mean: none, SD: none, Low: none, High: none}, Unit: unit,
		State: estimate.Unknown, Coverage: none, WithBounds: none, UpTo: none, Unknown: true,
	}}
}

// atMost says what an index may be with what is unknown of it at its most, as a column beside
// its own; nil if nothing bounds it.
func (x *Index) atMost(col []float64) {
	x.Partial = true
	x.UpTo, x.WithBounds, x.Coverage = math.NaN(), math.NaN(), math.NaN()
	if col == nil {
		return
	}
	most := estimate.Summarise(col)
	x.WithBounds, x.UpTo = max(most.Mean, x.Mean), max(most.High, x.High)
	if x.WithBounds > 0 {
		x.Coverage = x.Mean / x.WithBounds
	}
}

const perLitre, perHundred = float64(unit.Kilo), float64(unit.Hundred)
