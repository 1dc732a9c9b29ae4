package acidity

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
			if of.found() != nil {
				list[len(list)-1].weak = t.Column
			}
		case published:
			if c := of.found(); c != nil {
				list = append(list, applied{c.over(n), t.Column, t.Column})
			}
		}
	}
	return list
}

// RestsOnPublished reports whether the pH of a pot rests on what has been published of a food of
// it, or of brews such as it holds.
func RestsOnPublished(pot *ledger.Pot) bool {
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
func (lab *Laboratory) addVouched(in *Ions, pot *ledger.Pot, row int, c *calibration) {
	drawn := newIons(in.N)
	lab.addUnmeasured(&drawn, pot, row)
	for i, col := range drawn.columns {
		to := in.columns[i]
		for d, x := range col {
			to[d] += x
		}
	}
	in.protein, in.aired, in.Hidden = in.protein || drawn.protein, in.aired || drawn.aired, in.Hidden || drawn.Hidden
	open, foods := &in.Vouched, &in.Untold
	if c.by.group != "" {
		open, foods = &in.Nobody, &in.Unknown
	}
	for id, g := range drawn.Nobody.acids {
		open.add(id, g)
	}
	*foods = append(*foods, drawn.Unknown...)
}

// addTo adds what a row holds by a calibration to columns of grams: the strong ion as
// potassium, or as chloride where an anion is missing, and the acid as citric.
func (of applied) addTo(base, anion, acids []float64) {
	c := of.calibration
	for d := range base {
		mol := c.strong[d] * of.strong[d]
		base[d] += max(mol, 0) * constituent.Must(Potassium).Molar
		anion[d] += max(-mol, 0) * constituent.Must(Chloride).Molar
		acids[d] += c.weak[d] * of.weak[d] * constituent.Must(Citric).Molar
	}
}

// rest adds what a calibration found: the acid without a name, and the strong ion,
// potassium, or chloride where an anion is missing.
func (in *Ions) rest(of applied) {
	c := of.calibration
	of.addTo(in.grams[Potassium], in.grams[Chloride], in.grams[Citric])
	open := &in.Vouched
	if c.by.group != "" {
		open = &in.Nobody
	}
	in.Silent = in.Silent || c.silent || c.by.group != ""
	open.lessNone += (c.none - c.strong[0]) * of.strong[0]
	open.lessMost += (c.most - c.strong[0]) * of.strong[0]
	if told := (c.by.group != "" || c.by.atMost != nil) && !c.Moved; !told && !slices.Contains(in.RestsOn, c.Calibration) && (c.by.group == "" || moves(c, of)) {
		in.RestsOn = append(in.RestsOn, c.Calibration)
	}
}

// moves reports whether a calibration by a group is worth a word: a pinch of sugar brings
// next to nothing to neutralise.
func moves(c *calibration, of applied) bool {
	mol := math.Abs(c.strong[0])*of.strong[0] + c.weak[0]*of.weak[0]
	return mol > SpanOf("worth a word").High
}

// Forget lets a pH that was read take the place of those that are published: what they
// found stays as one guess of what the table left out, which the reading moves.
func (lab *Laboratory) Forget(pot *ledger.Pot) {
	lab.Settle(pot)
	for row := range pot.Rows {
		list := calibrated(pot, row, pot.N)
		if len(list) == 0 {
			continue
		}
		base, anion, acids := pot.Carry(row, UnmeasuredOf(Potassium)), pot.Carry(row, UnmeasuredOf(Chloride)), pot.Carry(row, UnmeasuredOf(Citric))
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
