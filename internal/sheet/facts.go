package sheet

import (
	"math"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/label"
	"sipsum/internal/liquid"
)

// factsOf turns an assay into what cards and cautions are made of. What is no liquid is
// declared by its mass.
func factsOf(a *assay.Assay) label.Facts {
	f := label.Facts{
		ServingG: a.Mass.Mean, ServingMl: a.Volume.Mean, Serves: a.Drink.Serves, Serving: map[constituent.ID]estimate.Amount{},
		ByDifference: composition.ByDifference(a.Serving), Stated: statedEnergy(a),
	}
	if NoLiquid(a) != "" {
		f.ServingMl = 0
	}
	for _, c := range constituent.All() {
		if c.PerGram == 0 || c.Kind == constituent.Figure {
			continue
		}
		x := estimate.Amount{}
		x.Mean, x.WithBounds, x.Known = a.AmountOf(c.ID)
		if r, ok := a.PerServing.Find(c.ID); ok && !r.Unknown {
			x.High, x.UpTo = r.High, r.UpTo
		} else if ok {
			x.UpTo = r.UpTo
		}
		f.Serving[c.ID] = x
	}
	for _, id := range []constituent.ID{constituent.Energy, constituent.EnergyKcal} {
		if r, ok := a.PerServing.Find(id); ok {
			f.Serving[id] = estimate.Amount{Mean: r.Mean, WithBounds: r.WithBounds, High: r.High, UpTo: r.UpTo, Known: !r.Unknown}
		}
	}
	return f
}

// NoLiquid says why a serving is no liquid: it has a mass, and neither a volume nor a density
// that anybody would read. Empty if it is one. Where nobody has stated the water of a food, its
// density says how much room it takes all the same.
func NoLiquid(a *assay.Assay) string {
	why := liquid.TooDry(a.Serving)
	if strings.HasPrefix(why, liquid.Unstated) {
		return liquid.NoVolume(a.Serving)
	}
	return why
}

// servingMl is the volume of a serving; NaN if it has none that anybody knows.
func servingMl(a *assay.Assay) float64 {
	if NoLiquid(a) != "" {
		return math.NaN()
	}
	return a.Volume.Mean
}

// statedEnergy is what packs and tables state of the energy themselves, where all of them do,
// beside the interval of ours; in the unit that all of them print, if there is one, since
// the factors of the rules in kJ and in kcal differ from the conversion.
func statedEnergy(a *assay.Assay) label.Stated {
	for _, converted := range []bool{false, true} {
		for _, e := range a.TableEnergy {
			own, ok := a.PerServing.Find(e.ID)
			if e.Converted == converted && e.Amount > 0 && len(e.Missing) == 0 && ok {
				return label.Stated{Amount: e.Amount, Unit: own.Unit, Low: own.Low, High: max(own.High, own.UpTo)}
			}
		}
	}
	return label.Stated{}
}
