package assay

import (
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
	"sipsum/internal/recipe"
	"sipsum/internal/unit"
)

// pour adds lines to a pot, without a garnish that is not eaten. Shares (p %) are of the
// mass of the same list's other lines.
func (w *walk) pour(pot *ledger.Pot, lines []drink.Line) {
	var columns [][]float64
	absolute := make([]float64, w.plan.ens.N)
	for _, line := range lines {
		in := w.plan.recipe.Lines[line.Path]
		var grams []float64
		switch {
		case isShare(line):
		case in.Component != nil:
			grams = w.componentGrams(in)
		default:
			grams = w.grams(in)
		}
		for d := range grams {
			absolute[d] += grams[d]
		}
		columns = append(columns, grams)
	}
	for i, line := range lines {
		in, grams := w.plan.recipe.Lines[line.Path], columns[i]
		if isShare(line) {
			grams = w.amounts.Column(line.Amount, line.Path)
			for d := range grams {
				grams[d] *= absolute[d]
			}
		}
		if line.Eaten {
			w.making.yield.pour(in, grams[0])
			w.add(pot, in, grams)
		}
	}
}

func isShare(line drink.Line) bool {
	return line.Portion == "" && line.Amount.Measure.Kind == unit.Share
}

func (w *walk) add(pot *ledger.Pot, in recipe.Ingredient, grams []float64) {
	if w.ctx.Err() != nil {
		return
	}
	if in.Component == nil {
		if n := w.food(pot, in, grams); n != nil {
			w.note(*n)
		}
		return
	}
	from := w.component(in.Component)
	w.making.log = append(w.making.log, event{within: in.Component})
	if weigh(from.pot) <= 0 {
		w.faults.Add(in.Line.Place, "give it ingredients", "component %s is empty", note.Quote(in.Component.Name))
		return
	}
	factor := shares(grams, from.pot)
	w.making.uses = append(w.making.uses, use{from.name, factor})
	w.making.bubbles.with(from.bubbles, factor)
	pot.Mix(from.pot, factor, in.Component.Name)
}

// food pours grams of a food; a note tells a run that asks for chemistry where what is published of
// it disagrees.
func (w *walk) food(pot *ledger.Pot, in recipe.Ingredient, grams []float64) *note.Note {
	pot.Pour(in.Profile, w.plan.drawer.PerGram(in.Profile), grams, in.Line.Path)
	if !w.sour {
		w.plan.lab.CalibrateLater(pot, grams)
		return nil
	}
	return w.plan.lab.Calibrate(pot, grams)
}

// shares gives which share of a pot so many grams of it are.
func shares(grams []float64, of *ledger.Pot) []float64 {
	share, mass := make([]float64, len(grams)), of.Mass()
	for d, g := range grams {
		if mass[d] > 0 {
			share[d] = g / mass[d]
		}
	}
	return share
}

// componentGrams gives the mass of a component's line; a volume takes the
// density that its composition gives, and the bubbles of a foam.
func (w *walk) componentGrams(in recipe.Ingredient) []float64 {
	col := w.amounts.Column(in.Line.Amount, in.Line.Path)
	if in.Line.Amount.Measure.Kind != unit.Volume {
		return col
	}
	from := w.component(in.Component)
	pot := from.pot
	w.making.log = append(w.making.log, event{within: in.Component})
	if len(from.bubbles.unread) > 0 {
		w.faults.Add(in.Line.Place, "weigh it and write grams, or read its overrun and write - foam: {overrun: … %}: a cup of the liquid ÷ the same cup of foam − 1, by weight",
			"%s is foamed, and nobody read its overrun: what %s of it weighs is not known", note.Quote(in.Component.Name), in.Line.Amount)
	}
	mass, volume := pot.Mass(), from.bubbles.filled(w.volume(pot))
	for d := range col {
		if volume[d] > 0 {
			col[d] *= mass[d] / volume[d]
		}
	}
	return col
}

// grams gives the mass of an ingredient line whose amount is not a share.
func (w *walk) grams(in recipe.Ingredient) []float64 {
	var col []float64
	if in.Line.Portion != "" {
		col = w.plan.ens.Of(in.Line.Count)
	} else {
		col = w.amounts.Column(in.Line.Amount, in.Line.Path)
	}
	sd := in.GramsSD
	if !food.Stated(sd) {
		sd = 0
	}
	// A food has one density, whoever pours it: the stream is the food's.
	name := "density"
	if in.Line.Portion != "" {
		name = "portion/" + in.Line.Portion
	}
	each := w.plan.ens.Column(estimate.Input{
		Central: in.Grams, Shape: estimate.Lognormal, SD: sd,
		Stream: w.plan.ens.Stream(name, in.Profile.Food.ID.String()),
	})
	w.plan.ens.Journal.Write(estimate.Tables, name+" of "+in.Profile.Food.ID.String(), each)
	for d := range col {
		col[d] *= each[d]
	}
	return col
}
