package assay

import (
	"math"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
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

// weighted adds up a property over the mass of a pot. What a gram adds is drawn
// once for the whole run: a constant of nature has one value in every pot.
func (w *walk) weighted(pot *ledger.Pot, p property) []float64 {
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
			each := w.constant(p, id)
			for d, g := range pot.Cell(row, col) {
				sum[d] += g * each[d]
			}
		}
	}
	return sum
}

func (w *walk) constant(p property, id constituent.ID) []float64 {
	perGram, sd, row := p.of(id)
	name := p.name + " of " + string(row)
	col, ok := w.constants[name]
	if !ok {
		col = make([]float64, w.amounts.n)
		estimate.Input{
			Central: perGram, Shape: estimate.Normal, SD: sd, High: math.Inf(1),
			Stream: estimate.KeyOf(w.amounts.seed, "constant", p.name, string(row)),
		}.Fill(col)
		w.constants[name] = col
		w.journal.write(Constants, p.name+" of "+constituent.Must(row).Name, col)
	}
	return col
}

// volume gives the volume of a pot in ml: of its parts, and what sugar and alcohol take
// up at their strength; foods that state a density have it.
func (w *walk) volume(pot *ledger.Pot) []float64 {
	sum := w.composedVolume(pot)
	w.addStated(sum, pot)
	return sum
}

// composedVolume gives the volume that a pot has by its composition alone.
func (w *walk) composedVolume(pot *ledger.Pot) []float64 {
	sum := w.weighted(pot, specificVolume)
	water, sugars, alcohol := pot.Total(constituent.Water), pot.Total(constituent.Sugar), pot.Total(constituent.Alcohol)
	for d := range sum {
		sum[d] += solution.Excess(water[d], sugars[d], alcohol[d])
	}
	return sum
}

// percent gives a property as a share of the mass.
func (w *walk) percent(pot *ledger.Pot, p property) []float64 {
	const percent = 100
	return ratio(w.weighted(pot, p), pot.Mass(), percent)
}

// brix gives what a refractometer reads of a pot, in °Brix.
func (w *walk) brix(pot *ledger.Pot) []float64 { return w.percent(pot, refraction) }

// solids gives the soluble solids of a pot in per cent by mass. What water brought to
// coffee or tea does not count: the instrument is set to zero on that water, and the
// strength of a brew leaves it out too.
func (w *walk) solids(pot *ledger.Pot) []float64 {
	dissolved := pot
	if slices.ContainsFunc(pot.Rows, extracted) {
		dissolved = pot.Only(func(row int) bool { return !pot.Rows[row].Profile.Food.Facts().Water })
	}
	const percent = 100
	return ratio(w.weighted(dissolved, solubleShare), pot.Mass(), percent)
}

// density gives the density of a pot in g/ml at 20 °C.
func (w *walk) density(pot *ledger.Pot) []float64 { return ratio(pot.Mass(), w.volume(pot), 1) }

// abv gives the alcoholic strength of a pot by volume, in per cent.
func (w *walk) abv(pot *ledger.Pot) []float64 {
	alcohol, volume := pot.Total(constituent.Alcohol), w.volume(pot)
	for d := range alcohol {
		alcohol[d] = solution.ABV(alcohol[d], volume[d])
	}
	return alcohol
}
