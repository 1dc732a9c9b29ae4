package assay

import (
	"math"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
)

// property is what a gram of a constituent adds to something of the whole
// liquid.
type property struct {
	name  string
	of    func(constituent.ID) (perGram, sd float64, row constituent.ID)
	count func(ledger.Row, constituent.ID) constituent.ID // what a constituent of a row counts as; nil: itself
}

var (
	specificVolume = property{"specific volume", func(id constituent.ID) (float64, float64, constituent.ID) {
		v, row := solution.VolumeOf(id)
		return v.MlPerGram, v.SD, row
	}, nil}
	refraction = property{"refraction", func(id constituent.ID) (float64, float64, constituent.ID) {
		r, row := solution.RefractionOf(id)
		return r.Brix, r.BrixSD, row
	}, refracts}
	solubleShare = property{"soluble share", func(id constituent.ID) (float64, float64, constituent.ID) {
		r, row := solution.RefractionOf(id)
		return r.Solids, r.SolidsSD, row
	}, dissolves}
)

// gauge reads the pots of a run as bodies: what they take up, and what a refractometer, a
// densimeter and an alcoholometer read of them.
type gauge struct {
	ens    estimate.Ensemble
	drawer *ledger.Drawer

	constants map[string][]float64      // of nature, by name: drawn once
	packs     map[*food.Profile]*packed // of foods that state their density
}

func newGauge(ens estimate.Ensemble, drawer *ledger.Drawer) *gauge {
	return &gauge{ens: ens, drawer: drawer, constants: map[string][]float64{}, packs: map[*food.Profile]*packed{}}
}

// with gives a gauge for which the constants of nature are others.
func (g *gauge) with(constants map[string][]float64) *gauge {
	other := *g
	other.constants = constants
	return &other
}

// certain gives a gauge for which the constants of nature have no spread.
func (g *gauge) certain() *gauge {
	constants := map[string][]float64{}
	for name, col := range g.constants {
		constants[name] = estimate.Constant(len(col), col[0])
	}
	return g.with(constants)
}

// weighted adds up a property over the mass of a pot. What a gram adds is drawn
// once for the whole run: a constant of nature has one value in every pot.
func (g *gauge) weighted(pot *ledger.Pot, p property) []float64 {
	sum := make([]float64, pot.N)
	for _, col := range pot.Columns.Below(constituent.Mass) {
		for row := range pot.Rows {
			if !pot.Has(row, col) {
				continue
			}
			id := pot.Columns.List[col].ID
			if p.count != nil {
				id = p.count(pot.Rows[row], id)
			}
			each := g.constant(p, id)
			for d, x := range pot.Cell(row, col) {
				sum[d] += x * each[d]
			}
		}
	}
	return sum
}

func (g *gauge) constant(p property, id constituent.ID) []float64 {
	perGram, sd, row := p.of(id)
	name := p.name + " of " + string(row)
	col, ok := g.constants[name]
	if !ok {
		col = g.ens.Column(estimate.Input{
			Central: perGram, Shape: estimate.Normal, SD: sd, High: math.Inf(1),
			Stream: g.ens.Stream("constant", p.name, string(row)),
		})
		g.constants[name] = col
		g.ens.Journal.Write(estimate.Constants, p.name+" of "+constituent.Must(row).Name, col)
	}
	return col
}

// volume gives the volume of a pot in ml: of its parts, and what sugar and alcohol take
// up at their strength; foods that state a density have it.
func (g *gauge) volume(pot *ledger.Pot) []float64 {
	sum := g.composedVolume(pot)
	g.addStated(sum, pot)
	return sum
}

// composedVolume gives the volume that a pot has by its composition alone.
func (g *gauge) composedVolume(pot *ledger.Pot) []float64 {
	sum := g.weighted(pot, specificVolume)
	water, sugars, alcohol := pot.Total(constituent.Water), pot.Total(constituent.Sugar), pot.Total(constituent.Alcohol)
	for d := range sum {
		sum[d] += solution.Excess(water[d], sugars[d], alcohol[d])
	}
	return sum
}

// percent gives a property as a share of the mass.
func (g *gauge) percent(pot *ledger.Pot, p property) []float64 {
	const percent = 100
	return estimate.Ratio(g.weighted(pot, p), pot.Mass(), percent)
}

// refracted gives what a pot reads on a refractometer, in per cent of a gram.
func (g *gauge) refracted(pot *ledger.Pot) []float64 { return g.weighted(pot, refraction) }

// dissolved gives the soluble solids of a pot, in grams.
func (g *gauge) dissolved(pot *ledger.Pot) []float64 { return g.weighted(pot, solubleShare) }

// brix gives what a refractometer reads of a pot, in °Brix.
func (g *gauge) brix(pot *ledger.Pot) []float64 { return g.percent(pot, refraction) }

// solids gives the soluble solids of a pot in per cent by mass. What water brought to
// coffee or tea does not count: the instrument is set to zero on that water, and the
// strength of a brew leaves it out too.
func (g *gauge) solids(pot *ledger.Pot) []float64 {
	dissolved := pot
	if slices.ContainsFunc(pot.Rows, extracted) {
		dissolved = pot.Only(func(row int) bool { return !pot.Rows[row].Profile.Food.Facts().Water })
	}
	const percent = 100
	return estimate.Ratio(g.weighted(dissolved, solubleShare), pot.Mass(), percent)
}

// density gives the density of a pot in g/ml at 20 °C.
func (g *gauge) density(pot *ledger.Pot) []float64 {
	return estimate.Ratio(pot.Mass(), g.volume(pot), 1)
}

// abv gives the alcoholic strength of a pot by volume, in per cent.
func (g *gauge) abv(pot *ledger.Pot) []float64 {
	alcohol, volume := pot.Total(constituent.Alcohol), g.volume(pot)
	for d := range alcohol {
		alcohol[d] = solution.ABV(alcohol[d], volume[d])
	}
	return alcohol
}
