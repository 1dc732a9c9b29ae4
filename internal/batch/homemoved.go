package batch

import (
	"math"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/unit"
)

// Shift is a figure of a serving beside what it was.
type Shift struct {
	Name         string                   // of no constituent: Volume, Mass, Acidity or PH
	Figure       *constituent.Constituent // nil: it is none
	Before, Home composition.Result
	Always       bool // it is told whether it moved or not
	Moved        bool // beyond what the interval of the drink as it is written hides
}

// The figures that are of no constituent.
const (
	Volume  = "volume"
	Acidity = "titratable acidity"
	PH      = "pH"
)

// Shifts sets the figures of the home version beside those of the drink as it is written: those that are
// always told, and all others that moved. One has
// moved if it left the interval that the page prints of it, or if one of the two is not known.
func Shifts(before, home *assay.Assay) []Shift {
	var list []Shift
	add := func(always bool, name string, f *constituent.Constituent, a, b composition.Result) {
		if a.Mean == 0 && b.Mean == 0 && a.Unknown == b.Unknown && a.Partial == b.Partial {
			return
		}
		list = append(list, Shift{name, f, a, b, always, moved(a, b)})
	}
	add(true, Volume, nil, before.Volume, home.Volume)
	told := atHome().figures
	for _, id := range told {
		a, ok := before.PerServing.Find(id)
		b, also := home.PerServing.Find(id)
		if ok && also {
			add(true, "", a.Constituent, a.Result, b.Result)
		}
	}
	for _, a := range before.PerServing { // of all others those that moved
		b, ok := home.PerServing.Find(a.Constituent.ID)
		if ok && !slices.Contains(told, a.Constituent.ID) && a.Constituent.ID != constituent.EnergyKcal && moved(a.Result, b.Result) {
			add(false, "", a.Constituent, a.Result, b.Result)
		}
	}
	if a, b := before.Chemistry, home.Chemistry; a != nil && b != nil {
		if len(a.Acidity) > 0 && len(b.Acidity) > 0 {
			add(true, Acidity, nil, withheld(a.Acidity[0].PerLitre.Result, a.Acidity[0].PerLitre.Why), withheld(b.Acidity[0].PerLitre.Result, b.Acidity[0].PerLitre.Why))
		}
		add(true, PH, nil, withheld(a.PH.Result, a.PH.Why), withheld(b.PH.Result, b.PH.Why))
	}
	return list
}

// withheld is a figure that is not given, as unknown.
func withheld(r composition.Result, why string) composition.Result {
	if why != "" {
		r.Unknown = true
		r.Mean, r.Low, r.High = math.NaN(), math.NaN(), math.NaN()
	}
	return r
}

// moved reports whether a figure left the interval that it had.
func moved(a, b composition.Result) bool {
	if a.Unknown || b.Unknown {
		return a.Unknown != b.Unknown
	}
	dust := unit.Closeness * math.Max(math.Abs(a.Mean), 1)
	return a.Partial != b.Partial || b.Mean < a.Low-dust || b.Mean > a.High+dust
}
