package sheet

import (
	"math"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/solution"
	"sipsum/internal/speech"
	"sipsum/internal/unit"
)

// alcohol tells the strength from where on it has to be stated: whoever judges drinks too, and drives
// home. Of one that nobody knows it tells that there is some.
func (s *speaker) alcohol() {
	limit := speech.Limits().Strength
	works := append(s.works(s.entry(constituent.Alcohol)), worded(limit.Source)...)
	if len(works) == 1 {
		works = append(s.file(), works...)
	}
	i := slices.IndexFunc(s.brief.Senses, func(x Sense) bool { return x.Name == "alcohol" && len(x.Figures) > 0 })
	if i < 0 {
		if s.cautioned("alcohol") {
			s.tell("alcohol.unknown", "", 0, works)
		}
		return
	}
	if r := byVolume(s.Assay, s.brief.Senses[i].Figures[0].Result); math.IsNaN(r.UpTo) || unit.Over(r.UpTo, limit.Value) {
		s.tell("alcohol", "", 0, works).Range = &r
	}
}

// byVolume is grams of alcohol in a serving as % vol. What tables leave out of a food counts for
// nothing (mostAlcohol); what a ferment made counts, and what an own food holds that does not say so.
func byVolume(a *assay.Assay, r composition.Result) speech.Range {
	most := r.High
	if took(a, "ferment") {
		most = r.UpTo
	}
	_, unstated := bringersOf(a, constituent.Alcohol)
	if slices.ContainsFunc(unstated, func(id food.ID) bool { return id.Table == food.Own }) {
		most = math.NaN()
	}
	return speech.Range{Low: solution.ABV(r.Low, a.Volume.High), UpTo: solution.ABV(most, a.Volume.Low), Unit: "%"}
}
