package food

import (
	"math"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/source"
	"sipsum/internal/unit"
)

// The published figures that bound the acids of a food.
const (
	titratable  constituent.ID = "titratable"
	publishedPH constituent.ID = "PH"
	citric      constituent.ID = "CITAC"
)

// endPoint is the pH to which published titratable acidities are titrated (IFU, AOAC).
const endPoint = 8.1

// acidRoom is the charge that the acids of a food have at a pH, at most, in mol per
// gram. Acids are totals, free and bound as salts. What takes up their protons is the
// base that titrates them, the metals that are there already and nitrogen: by
// electroneutrality
//
//	Σ n·z(pH) ≤ [Na] + [K] + 2[Ca] + 2[Mg] + [N] + base to that pH + [H⁺]
//
// with every other anion at none, so nothing is assumed of them.
type acidRoom struct {
	pH, charge float64
	why        string
}

// acidRooms are what a published titratable acidity and a published pH leave, where all
// the metals are known; none where they are not.
func (b *bounding) acidRooms() []acidRoom {
	charge, variance, ok := b.bases()
	if !ok {
		return nil
	}
	var rooms []acidRoom
	add := func(pH, protons, sd float64, why string) {
		most := charge + protons + 2*math.Sqrt(variance+sd*sd)
		for _, a := range organicAcids() {
			if cell := b.cell(a.Constituent); cell.Known {
				most -= cell.Amount / a.Molar * a.chargeAt(pH)
			}
		}
		rooms = append(rooms, acidRoom{pH, max(most, 0), why})
	}
	if v, ok := b.figures[titratable]; ok && Stated(v.Amount) {
		_, relative := Unmeasured("titratable acidity")
		sd := v.Amount * relative
		if Stated(v.SD) {
			sd = max(sd, v.SD)
		}
		perGram := 3 / (unit.Hundred * constituent.Must(citric).Molar) // mol of base; citric acid takes three
		add(endPoint, v.Amount*perGram, sd*perGram, "no more than its titratable acidity and its metals allow")
	}
	if v, ok := b.figures[publishedPH]; ok && Stated(v.Amount) && !source.IsFromMemory(v.Source) {
		apart, _ := Unmeasured("pH from one work")
		pH := v.Amount + apart
		if Stated(v.Low) {
			pH = min(pH, v.Low)
		}
		add(pH, math.Pow(10, -pH)/unit.Kilo, 0, "no more than its metals keep at its pH")
	}
	return rooms
}

// bases gives what can hold the charge of acids without being titrated, in mol per gram,
// and its variance; ok is false where a metal is unknown.
func (b *bounding) bases() (charge, variance float64, ok bool) {
	add := func(cell Cell, perGram float64) {
		charge += cell.Amount * perGram
		variance += cell.variance() * perGram * perGram
	}
	for _, m := range metals {
		c := constituent.Must(m.id)
		cell := b.cell(c)
		if !cell.Known {
			return 0, 0, false
		}
		add(*cell, m.charge/c.Molar)
	}
	protein := b.Cell(constituent.Protein)
	if !protein.Known {
		return 0, 0, false
	}
	add(protein, 1/(nitrogenFactor()*constituent.Must("NT").Molar))
	return charge, variance, true
}

// metals are those that come in amounts that weigh.
var metals = []struct {
	id     constituent.ID
	charge float64
}{{constituent.Sodium, 1}, {"K", 1}, {"CA", 2}, {"MG", 2}}

// nitrogenFactor is the least protein for a gram of nitrogen: as much nitrogen as there
// can be, and each a base.
var nitrogenFactor = sync.OnceValue(func() float64 {
	for _, c := range conversions() {
		if c.target == constituent.Protein {
			return c.low
		}
	}
	panic("food: derive.csv does not say how much nitrogen a protein has")
})

// most gives the most, in grams per gram, that one acid could be, or all of those that
// have no name: of the acid that weighs most for its charge.
func (r acidRoom) most(c *constituent.Constituent) float64 {
	most := 0.0
	for _, a := range organicAcids() {
		if a.Constituent == c {
			return r.charge / a.chargeAt(r.pH) * a.Molar
		}
		most = max(most, r.charge/a.chargeAt(r.pH)*a.Molar)
	}
	return most
}

// organicAcid is an acid of the vocabulary with the pK of its steps, each two standard
// deviations high: an acid that keeps more of its protons could be more.
type organicAcid struct {
	Constituent *constituent.Constituent
	Molar       float64
	pK          []float64
}

// chargeAt gives the mean charge of a molecule at a pH.
func (a organicAcid) chargeAt(pH float64) float64 {
	term, sum, charge := 1.0, 1.0, 0.0
	for i, pK := range a.pK {
		term *= math.Pow(10, pH-pK)
		sum += term
		charge += float64(i+1) * term
	}
	return charge / sum
}

// organicAcids are the acids below OA. Of one whose constants nobody has seen in print a
// single step counts, as weak as the weakest first step that was seen.
var organicAcids = sync.OnceValue(func() []organicAcid {
	steps, unseen, weakest := map[string][]float64{}, map[string]bool{}, 0.0
	for _, row := range embedded.Rows("acid_steps.csv") {
		name, pK := row.Text("acid"), row.Number("pk")+2*row.Number("sd")
		steps[name] = append(steps[name], pK)
		switch {
		case source.IsFromMemory(row.Text("source")):
			unseen[name] = true
		case row.Text("group") == "carboxyl" && row.Whole("step") == 1:
			weakest = max(weakest, pK)
		}
	}
	var list []organicAcid
	for _, row := range embedded.Rows("acid_acids.csv") {
		name, id := row.Text("acid"), constituent.ID(row.Text("constituent"))
		if id == "" || !below(constituent.Must(id), constituent.OrganicAcids) {
			continue
		}
		if unseen[name] {
			steps[name] = []float64{weakest}
		}
		list = append(list, organicAcid{constituent.Must(id), constituent.Must(id).Molar, steps[name]})
	}
	return list
})

// unmeasured are the rows of data/acid_unmeasured.csv, low and high.
var unmeasured = sync.OnceValue(func() map[string][2]float64 {
	all := map[string][2]float64{}
	for _, row := range embedded.Rows("acid_unmeasured.csv") {
		all[row.Text("what")] = [2]float64{row.Number("low"), row.Number("high")}
	}
	return all
})

// Unmeasured gives a row of data/acid_unmeasured.csv, what tables leave out and an acidity
// needs; it panics if there is none.
func Unmeasured(what string) (low, high float64) {
	s, ok := unmeasured()[what]
	if !ok {
		panic("food: acid_unmeasured.csv lacks " + what)
	}
	return s[0], s[1]
}
