package liquid

import (
	"math"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
	"sipsum/internal/unit"
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

// Gauge reads the pots of a run as bodies: what they take up, and what a refractometer, a
// densimeter and an alcoholometer read of them.
type Gauge struct {
	ens    estimate.Ensemble
	drawer *ledger.Drawer

	Constants map[string][]float64      // of nature, by name: drawn once
	packs     map[*food.Profile]*packed // of foods that state their density
}

// NewGauge makes the gauge of a run, which has drawn no constant of nature yet.
func NewGauge(ens estimate.Ensemble, drawer *ledger.Drawer) *Gauge {
	return &Gauge{ens: ens, drawer: drawer, Constants: map[string][]float64{}, packs: map[*food.Profile]*packed{}}
}

// With gives a gauge for which the constants of nature are others.
func (g *Gauge) With(constants map[string][]float64) *Gauge {
	other := *g
	other.Constants = constants
	return &other
}

// Certain gives a gauge for which the constants of nature have no spread.
func (g *Gauge) Certain() *Gauge {
	constants := map[string][]float64{}
	for name, col := range g.Constants {
		constants[name] = estimate.Constant(len(col), col[0])
	}
	return g.With(constants)
}

// weighted adds up a property over the mass of a pot. What a gram adds is drawn
// once for the whole run: a constant of nature has one value in every pot.
func (g *Gauge) weighted(pot *ledger.Pot, p property) []float64 {
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

func (g *Gauge) constant(p property, id constituent.ID) []float64 {
	perGram, sd, row := p.of(id)
	name := p.name + " of " + string(row)
	col, ok := g.Constants[name]
	if !ok {
		col = g.ens.Column(estimate.Input{
			Central: perGram, Shape: estimate.Normal, SD: sd, High: math.Inf(1),
			Stream: g.ens.Stream("constant", p.name, string(row)),
		})
		g.Constants[name] = col
		g.ens.Journal.Write(estimate.Constants, p.name+" of "+constituent.Must(row).Name, col)
	}
	return col
}

// Volume gives the volume of a pot in ml: of its parts, and what sugar and alcohol take
// up at their strength; foods that state a density have it.
func (g *Gauge) Volume(pot *ledger.Pot) []float64 {
	sum := g.composedVolume(pot)
	g.addStated(sum, pot)
	return sum
}

// composedVolume gives the volume that a pot has by its composition alone.
func (g *Gauge) composedVolume(pot *ledger.Pot) []float64 {
	sum := g.weighted(pot, specificVolume)
	water, sugars, alcohol := pot.Total(constituent.Water), pot.Total(constituent.Sugar), pot.Total(constituent.Alcohol)
	for d := range sum {
		sum[d] += solution.Excess(water[d], sugars[d], alcohol[d])
	}
	for row := range pot.Rows {
		g.addOpen(sum, pot, row)
	}
	return sum
}

// Refracted gives what a pot reads on a refractometer, in per cent of a gram: of its parts, and
// what alcohol refracts more at its strength and citric acid without sugar.
func (g *Gauge) Refracted(pot *ledger.Pot) []float64 {
	sum := g.weighted(pot, refraction)
	water, alcohol := pot.Total(constituent.Water), pot.Total(constituent.Alcohol)
	citric, mass := pot.Total(solution.CitricAcid), pot.Mass()
	for d := range sum {
		sum[d] += solution.RefractionExcess(water[d], alcohol[d]) + solution.AcidRefractionExcess(citric[d], mass[d]-water[d]-alcohol[d]-citric[d])
	}
	return sum
}

// Dissolved gives the soluble solids of a pot, in grams.
func (g *Gauge) Dissolved(pot *ledger.Pot) []float64 { return g.weighted(pot, solubleShare) }

// Brix gives what a refractometer reads of a pot, in °Brix.
func (g *Gauge) Brix(pot *ledger.Pot) []float64 {
	return estimate.Ratio(g.Refracted(pot), pot.Mass(), unit.Hundred)
}

// Solids gives the soluble solids of a pot in per cent by mass. What water brought to
// coffee or tea does not count: the instrument is set to zero on that water, and the
// strength of a brew leaves it out too.
func (g *Gauge) Solids(pot *ledger.Pot) []float64 {
	dissolved := pot
	if slices.ContainsFunc(pot.Rows, extracted) {
		dissolved = pot.Only(func(row int) bool { return !pot.Rows[row].Profile.Food.Facts().Water })
	}
	return estimate.Ratio(g.weighted(dissolved, solubleShare), pot.Mass(), unit.Hundred)
}

// Density gives the density of a pot in g/ml at 20 °C.
func (g *Gauge) Density(pot *ledger.Pot) []float64 {
	return estimate.Ratio(pot.Mass(), g.Volume(pot), 1)
}

// Abv gives the alcoholic strength of a pot by volume, in per cent.
func (g *Gauge) Abv(pot *ledger.Pot) []float64 {
	alcohol, volume := pot.Total(constituent.Alcohol), g.Volume(pot)
	for d := range alcohol {
		alcohol[d] = solution.ABV(alcohol[d], volume[d])
	}
	return alcohol
}
