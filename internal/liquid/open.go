package liquid

import (
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// addOpen adds what mass that nobody has told apart takes up more if it is water or alcohol
// than if it is dissolved,
//
//	volume = open · ((1 − u)·solids + u·wet)
//
// with u anywhere between 0 and 1, one for each food, and wet what a gram of alcohol takes up
// where it may be that, else of water: all that is known of its density are its bounds.
func (g *Gauge) addOpen(volume []float64, pot *ledger.Pot, row int) {
	open, wet := openMass(pot, row), constituent.Water
	if open == nil {
		return
	}
	if ledger.OpenAlcohol(pot, row) != nil {
		wet = constituent.Alcohol
	}
	u := g.wetShare(pot.Rows[row])
	solids, fluid := g.constant(specificVolume, constituent.MassOther), g.constant(specificVolume, wet)
	for d, grams := range open {
		volume[d] += grams * u[d] * (fluid[d] - solids[d])
	}
}

// wetShare draws how much of what nobody has told apart of a food is water or alcohol.
func (g *Gauge) wetShare(row ledger.Row) []float64 {
	id := row.Profile.Food.ID.String()
	name := "water of " + id
	col, ok := g.Constants[name]
	if !ok {
		const all = 1
		col = g.ens.Column(estimate.Input{
			Central: all / 2.0, Shape: estimate.Uniform, High: all, Stream: g.ens.Stream("open", id),
		})
		g.Constants[name] = col
		g.ens.Journal.Write(estimate.Tables, name, col)
	}
	return col
}
