package data_test

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// The rules by which two tables' values are the same quantity. None of them looks
// at the interval.
//
//   - Both state an amount above zero, and the core value is not from that table.
//   - Where a table marks what it did not analyse itself, that is left out. A row
//     that agrees with SR28 to its last digit in more than half of its cells was
//     taken from there (two Ciqual rows of five) and is left out whole.
//   - The other's values are brought to the core food's water (EuroFIR, Recipe
//     calculation, adjustment of moisture content: values of different origin are
//     compared at the same moisture).
//   - Values below ten last places of either table are left out: they are mostly
//     rounding (as in scripts/spread).
//   - Available carbohydrate is compared as a difference if the core's is one,
//     with the organic acids taken off on both sides or on none.
//   - Sugars of a row whose sugars and starch do not make up its own carbohydrate
//     by difference within a tenth are left out: something was not analysed.
const (
	tooRough     = 10  // last places
	driest       = 0.5 // g/100 g of dry matter: below it there is nothing to bring to the same water
	unbalanced   = 0.1 // of the carbohydrate by difference
	acidsMatter  = 0.05
	fewestToTell = 4 // cells: a row with fewer cannot show that it was copied
)

// cells gives the comparable cells of a pair.
func (p crossPair) cells() []crossCell {
	var cells []crossCell
	for _, class := range classes {
		for _, id := range class.ids {
			summary, ok := p.intervals[id]
			if !ok || !p.measured(id) || class.name == "sugars" && !p.balanced() {
				continue
			}
			value, ok := p.value(id)
			place := p.place(id)
			if !ok || summary.Mean < tooRough*coarsest(id) || value < tooRough*place {
				continue
			}
			scale := 1.0
			if id != constituent.Water {
				scale = p.sameWater()
			}
			cells = append(cells, crossCell{
				class: class.name, food: p.ours.ID.Code, table: p.table.format.Name, id: id,
				mean: summary.Mean, low: summary.Low, high: summary.High,
				value: value * scale, rounding: (coarsest(id) + place*scale) / 2,
			})
		}
	}
	return cells
}

// measured reports whether the core value is a figure of its own and not the
// other table's.
func (p crossPair) measured(id constituent.ID) bool {
	v, ok := p.ours.Value(publishedAs(p.ours, id))
	return ok && food.Stated(v.Amount) && v.Amount > 0 && v.State != estimate.Assumed && !p.table.isSourceOf(v)
}

// isSourceOf reports whether a value was taken from the table.
func (o outsideTable) isSourceOf(v food.Value) bool {
	return slices.ContainsFunc(strings.Fields(v.Source), func(id string) bool { return slices.Contains(strings.Fields(o.source), id) })
}

// publishedAs is the constituent that a food states in place of id: available
// carbohydrate is carbohydrate by difference less fibre and acids.
func publishedAs(f *food.Food, id constituent.ID) constituent.ID {
	if _, ok := f.Value(id); !ok && id == constituent.Available {
		return constituent.Carbohydrate
	}
	return id
}

// value gives what the other table says, in the unit of the vocabulary.
func (p crossPair) value(id constituent.ID) (float64, bool) {
	if id == constituent.Available && p.table.analysed && publishedAs(p.ours, id) != id {
		return p.difference()
	}
	v := p.other.Cell(id)
	if !v.Known || v.Limit > 0 || v.Amount == 0 || v.State == estimate.Assumed || p.table.marks && v.State != estimate.Measured {
		return 0, false
	}
	return v.Amount * 100 * constituent.Must(id).PerGram, true
}

// difference is the other table's available carbohydrate by difference, as the
// core's.
func (p crossPair) difference() (float64, bool) {
	left, ok := byDifference(p.other)
	ours := p.own.Cell(constituent.OrganicAcids).Amount
	theirs := acids(p)
	if ours > 0 {
		if theirs == 0 && ours > acidsMatter*p.own.Cell(constituent.Available).Amount {
			return 0, false
		}
		left -= theirs
	}
	return left, ok && left > 0
}

// byDifference is 100 less water, protein, fat, ash, fibre and alcohol, g/100 g.
func byDifference(profile *food.Profile) (float64, bool) {
	left := 1.0
	for _, id := range []constituent.ID{constituent.Water, "PROCNT", "FAT", "ASH", "FIBTG", "ALC"} {
		cell := profile.Cell(id)
		if !cell.Known && id != "ALC" {
			return 0, false
		}
		left -= cell.Amount
	}
	return 100 * left, true
}

// acids are the other table's organic acids, g/100 g; 0 if it states none.
func acids(p crossPair) float64 {
	if v, ok := p.theirs.Value("ifct:orgac"); ok && food.Stated(v.Amount) {
		return v.Amount
	}
	return 100 * p.other.Cell(constituent.OrganicAcids).Amount
}

// balanced reports whether the other table's analysed sugars and starch make up
// its own carbohydrate by difference. Where it analysed no sum they cannot be told.
func (p crossPair) balanced() bool {
	sum, ok := p.theirs.Value(constituent.Available)
	left, known := byDifference(p.other)
	if !p.table.analysed || !ok || !food.Stated(sum.Amount) || !known {
		return true
	}
	left -= acids(p)
	return math.Abs(sum.Amount-left) <= unbalanced*left
}

// sameWater is what brings the other table's values to the core food's water.
func (p crossPair) sameWater() float64 {
	ours, ok := p.intervals[constituent.Water]
	theirs := p.other.Cell(constituent.Water)
	if !ok || !theirs.Known {
		return 1
	}
	solids, theirSolids := 100-ours.Mean, 100-100*theirs.Amount
	if solids <= driest || theirSolids <= driest {
		return 1
	}
	return solids / theirSolids
}

// copied reports whether most cells are SR28's own to the digit printed.
func (p crossPair) copied(cells []crossCell) bool {
	alike, of := 0, 0
	for _, c := range cells {
		ours, ok := p.ours.Value(c.id)
		theirs, there := p.theirs.Value(c.id)
		if !ok || !there || ours.Source != "sr28" {
			continue
		}
		of++
		if printed := strconv.FormatFloat(theirs.Amount, 'f', -1, 64); strconv.FormatFloat(ours.Amount, 'f', decimals(printed), 64) == printed {
			alike++
		}
	}
	return of >= fewestToTell && 2*alike > of
}

func decimals(number string) int {
	_, after, _ := strings.Cut(number, ".")
	return len(after)
}

// place is the last place of the other table's column; of a table that does not
// say it, that of the core table.
func (p crossPair) place(id constituent.ID) float64 {
	if place := p.places[id]; place > 0 {
		return place
	}
	return coarsest(id)
}

// coarsest is the last place of SR28 (Num_Dec of NUTR_DEF), the source of most
// core cells.
func coarsest(id constituent.ID) float64 {
	switch id {
	case "NA", "K", "CA", "MG", "P":
		return 1
	case "CU", "MN":
		return 0.001
	case "FIBTG", "ALC":
		return 0.1
	}
	return 0.01
}
