package assay

import (
	"math"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// calibrated gives what a row has its published pH by, over n draws, and how much of each.
func calibrated(pot *ledger.Pot, row, n int) []applied {
	var list []applied
	for _, t := range pot.Traced(row) {
		switch of := t.Tracer.(type) {
		case byProtein:
			list[len(list)-1].weak = t.Column
		case published:
			list = append(list, applied{of.over(n), t.Column, t.Column})
		}
	}
	return list
}

// restsOnPublished reports whether the pH of a pot rests on what has been published of a food of
// it, or of brews such as it holds.
func restsOnPublished(pot *ledger.Pot) bool {
	for row := range pot.Rows {
		for _, of := range calibrated(pot, row, 1) {
			if of.by.group == "" && of.by.atMost == nil {
				return true
			}
		}
	}
	return false
}

// applied is a calibration and how much of its strong ion and of its acid a row has, by
// draw.
type applied struct {
	*calibration
	strong, weak []float64
}

// addVouched adds what the table of a row left out whose food has a published pH, or a
// pH that its group has: then what is unknown of its metals does not leave the pH open,
// nor, with a pH of its own, what is unknown of its acids.
func (lab *laboratory) addVouched(in *ions, pot *ledger.Pot, row int, c *calibration) {
	drawn := newIons(in.n)
	lab.addUnmeasured(&drawn, pot, row)
	for id, col := range drawn.grams {
		for d, x := range col {
			in.grams[id][d] += x
		}
	}
	in.protein, in.aired, in.hidden = in.protein || drawn.protein, in.aired || drawn.aired, in.hidden || drawn.hidden
	open, foods := &in.vouched, &in.untold
	if c.by.group != "" {
		open, foods = &in.nobody, &in.unknown
	}
	for id, g := range drawn.nobody.acids {
		open.add(id, g)
	}
	*foods = append(*foods, drawn.unknown...)
}

// addTo adds what a row holds by a calibration to columns of grams: the strong ion as
// potassium, or as chloride where an anion is missing, and the acid as citric.
func (of applied) addTo(base, anion, acids []float64) {
	c := of.calibration
	for d := range base {
		mol := c.strong[d] * of.strong[d]
		base[d] += max(mol, 0) * constituent.Must(potassium).Molar
		anion[d] += max(-mol, 0) * constituent.Must(chloride).Molar
		acids[d] += c.weak[d] * of.weak[d] * constituent.Must(citric).Molar
	}
}

// rest adds what a calibration found: the acid without a name, and the strong ion,
// potassium, or chloride where an anion is missing.
func (in *ions) rest(of applied) {
	c := of.calibration
	of.addTo(in.grams[potassium], in.grams[chloride], in.grams[citric])
	open := &in.vouched
	if c.by.group != "" {
		open = &in.nobody
	}
	in.silent = in.silent || c.silent || c.by.group != ""
	open.lessNone += (c.none - c.strong[0]) * of.strong[0]
	open.lessMost += (c.most - c.strong[0]) * of.strong[0]
	if told := (c.by.group != "" || c.by.atMost != nil) && !c.Moved; !told && !slices.Contains(in.restsOn, c.Calibration) && (c.by.group == "" || moves(c, of)) {
		in.restsOn = append(in.restsOn, c.Calibration)
	}
}

// moves reports whether a calibration by a group is worth a word: a pinch of sugar brings
// next to nothing to neutralise.
func moves(c *calibration, of applied) bool {
	mol := math.Abs(c.strong[0])*of.strong[0] + c.weak[0]*of.weak[0]
	return mol > spanOf("worth a word").high
}

// forget lets a pH that was read take the place of those that are published: what they
// found stays as one guess of what the table left out, which the reading moves.
func (lab *laboratory) forget(pot *ledger.Pot) {
	lab.settle(pot)
	for row := range pot.Rows {
		list := calibrated(pot, row, pot.N)
		if len(list) == 0 {
			continue
		}
		base, anion, acids := pot.Carry(row, unmeasuredOf(potassium)), pot.Carry(row, unmeasuredOf(chloride)), pot.Carry(row, unmeasuredOf(citric))
		for _, of := range list {
			of.addTo(base, anion, acids)
		}
		for _, t := range slices.Clone(pot.Traced(row)) {
			if isCalibration(t.Tracer) {
				pot.Shed(row, t.Tracer)
			}
		}
	}
}
