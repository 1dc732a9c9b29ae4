package sheet

import (
	"slices"
	"strings"

	"sipsum/internal/acidity"
	"sipsum/internal/assay"
	"sipsum/internal/evidence"
	"sipsum/internal/food"
	"sipsum/internal/source"
)

// PHWorks are the works that published the pH on which the chemistry of the drink and its
// components rests, by food.
type PHWorks map[food.ID][]source.Work

func phWorksOf(a *assay.Assay, works evidence.Works) PHWorks {
	found := PHWorks{}
	for _, c := range restsOn(a) {
		if found[c.Food] != nil || c.Group != "" { // the source of a group's range is a text, no list of works
			continue
		}
		for id := range strings.FieldsSeq(c.Source) {
			if w, ok := works(c.Food.Table, id); ok && !source.IsFromMemory(w.Citation) {
				found[c.Food] = append(found[c.Food], w)
			}
		}
	}
	return found
}

func restsOn(a *assay.Assay) []acidity.Calibration {
	var list []acidity.Calibration
	if a.Chemistry != nil {
		list = append(list, a.Chemistry.RestsOn...)
	}
	for _, c := range a.Components {
		if c.Chemistry != nil {
			list = slices.Concat(list, c.Chemistry.RestsOn)
		}
	}
	return list
}
