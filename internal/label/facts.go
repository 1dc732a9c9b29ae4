package label

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/unit"
)

// Facts is what a card is made of.
type Facts struct {
	ServingG  float64
	ServingMl float64 // 0 if the volume is not known, or what is served is no liquid
	Serves    int     // servings that are made; 0 if nobody says

	// Serving is what one serving holds, each in the unit of the vocabulary. A constituent
	// that is not in it is unknown, without a bound.
	Serving map[constituent.ID]estimate.Amount

	// ByDifference is what carbohydrate by difference is made of, in grams: the mass of the
	// foods whose water, protein, fat and ash are all known, these, and the known
	// carbohydrate of the others. Nil: it is worked out of Serving.
	ByDifference map[constituent.ID]estimate.Amount

	Stated Stated
}

// Stated is the energy that packs and tables print themselves, beside the interval of ours,
// both by the assay's own factors.
type Stated struct {
	Amount    float64 // 0 if one of the foods states none
	Unit      string
	Low, High float64 // High is NaN where nothing bounds ours
}

// of gives the amount in a unit of mass (units in one gram), unknown if missing.
func (f Facts) of(id constituent.ID, perGram float64) estimate.Amount {
	a, ok := f.Serving[id]
	if !ok {
		return unknown()
	}
	if !a.Known {
		a.Mean = 0
	}
	return a.Times(perGram / constituent.Must(id).PerGram)
}

// unknown is an amount of which nothing is known.
func unknown() estimate.Amount { return estimate.Amount{WithBounds: math.NaN()} }

// closed gives facts in which no parent is below its known parts: what is known of a part is
// known of its whole, whoever left the whole out.
func (f Facts) closed() Facts {
	serving := make(map[constituent.ID]estimate.Amount, len(f.Serving))
	for id, a := range f.Serving {
		serving[id] = a
	}
	f.Serving = serving
	for _, c := range constituent.Sums().Children(constituent.Mass) {
		f.close(c)
	}
	return f
}

// close raises a constituent, and all below it, to the sum of the known parts.
func (f Facts) close(c *constituent.Constituent) {
	parts, high := 0.0, 0.0
	for _, child := range constituent.Sums().Children(c.ID) {
		f.close(child)
		a := f.of(child.ID, c.PerGram)
		parts, high = parts+a.Mean, high+a.KnownMost()
	}
	a, have := f.Serving[c.ID]
	if !have {
		a = unknown()
	}
	if known := f.of(c.ID, c.PerGram).Mean; parts <= known*(1+unit.Closeness) {
		return
	}
	a.Mean, a.Known, a.High = parts, true, max(a.High, high)
	if a.WithBounds < parts {
		a.WithBounds = parts
	}
	f.Serving[c.ID] = a
}

// A mass less what is moist and what is gone is its carbohydrate by difference: a food must
// state the first for it, and of the second what is not known counts nothing. Instead of it
// stands what is known of the carbohydrate.
var (
	moist    = []constituent.ID{constituent.Water, constituent.Protein, constituent.Fat, constituent.Ash}
	gone     = []constituent.ID{constituent.Alcohol, constituent.CarbonDioxide}
	declared = []constituent.ID{constituent.Sugar, constituent.Fibre, constituent.Polyols}
	instead  = append([]constituent.ID{constituent.Carbohydrate}, declared...)
)

// difference gives what carbohydrate by difference is made of, in grams. Where water,
// protein, fat or ash is not known it is what is known of the carbohydrate, and where the
// parts that rows of their own declare are more than the difference, these make it.
func (f Facts) difference() map[constituent.ID]estimate.Amount {
	if f.ByDifference != nil {
		return f.ByDifference
	}
	of := map[constituent.ID]estimate.Amount{constituent.Mass: {Mean: f.ServingG, WithBounds: f.ServingG, Known: true}}
	for _, id := range moist {
		if of[id] = f.of(id, 1); !of[id].Complete() {
			return map[constituent.ID]estimate.Amount{constituent.Carbohydrate: f.of(constituent.Carbohydrate, 1)}
		}
	}
	for _, id := range gone {
		of[id] = f.asKnown(id)
	}
	parts, more := map[constituent.ID]estimate.Amount{}, -f.ServingG
	for _, id := range declared {
		parts[id] = f.asKnown(id)
		more += parts[id].Mean
	}
	for _, id := range append(moist, gone...) {
		more += of[id].Mean
	}
	if more > 0 {
		return parts
	}
	return of
}

// asKnown is what is known of an amount in grams, as if that were all.
func (f Facts) asKnown(id constituent.ID) estimate.Amount {
	x := f.of(id, 1).Mean
	return estimate.Amount{Mean: x, WithBounds: x, Known: true}
}
