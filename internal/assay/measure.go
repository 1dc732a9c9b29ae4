package assay

import (
	"slices"
	"sync"

	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/liquid"
	"sipsum/internal/unit"
)

// measure reads all results off the serving. Its parts only read the ledger,
// so they run side by side.
func (a *Assay) measure(p *Plan, list []*made) {
	mass, volume := a.Serving.Mass(), p.lab.Gauge.Volume(a.Serving)
	a.liquid = liquidPart{list[len(list)-1].pot, volume, p.lab, p.drawer.PerGram(p.recipe.Water)}
	if a.liquid.pot != a.Serving { // something of the garnish is eaten
		a.liquid.volume = p.lab.Gauge.Volume(a.liquid.pot)
	}
	filled, ones := list[len(list)-1].bubbles.filled(volume), p.ens.Of(1)
	ids := reported(a)
	of := composition.TotalsOf(a.Serving, ids)
	var side sync.WaitGroup
	side.Go(func() {
		m := &composition.Meter{Brief: !a.Want.Intervals, Draws: a.Want.Draws}
		a.Mass = composition.Known(m.Of(mass), "g")
		a.Volume, a.Filled = composition.Known(m.Of(volume), "ml"), composition.Known(m.Of(filled), "ml")
		if a.Want.Draws {
			abv := p.lab.Gauge.Abv(list[len(list)-1].pot)
			a.Strength = composition.Known(m.Of(abv), "% vol")
			a.Mass.Draws, a.Volume.Draws, a.Filled.Draws, a.Strength.Draws = mass[1:], volume[1:], filled[1:], abv[1:]
		}
		a.Density = composition.Known(m.Of(estimate.Ratio(mass, volume, 1)), "g/ml")
		a.PerServing = m.Composition(a.Serving, ids, of, ones, 1)
	})
	side.Go(func() {
		m := &composition.Meter{Brief: !a.Want.Whole || !a.Want.Intervals}
		a.Per100ml = m.Composition(a.Serving, ids, of, volume, unit.Hundred)
		// guard: nothing in 100 ml of nobody knows what
		if liquid.NoVolume(a.Serving) != "" {
			a.Per100ml = nil
		}
		if a.Want.Whole {
			a.Per100g = m.Composition(a.Serving, ids, of, mass, unit.Hundred)
		}
	})
	if !a.Want.Bare {
		side.Go(func() { a.components(of, a.detailed(ids)) })
	}
	side.Wait()
	if !a.Want.Bare {
		a.setAlone(p, list, a.detailed(ids))
		(&composition.Meter{Brief: !a.Want.Intervals}).Contribute(a.PerServing, a.Serving, of, a.detailed(ids))
	}
	a.TableEnergy = [2]composition.TableEnergy{composition.PrintedEnergy(a.Serving, constituent.Energy), composition.PrintedEnergy(a.Serving, constituent.EnergyKcal)}
	a.noteIce()
	a.noteGlass()
}

// detailed lists the constituents whose parts are given.
func (a *Assay) detailed(ids []*constituent.Constituent) []*constituent.Constituent {
	if a.Want.Whole {
		return ids
	}
	var list []*constituent.Constituent
	for _, c := range ids {
		if c.ID == constituent.Energy || slices.Contains(a.Want.Figures, c.ID) {
			list = append(list, c)
		}
	}
	return list
}

// reported lists the constituents to report: those that some food of the drink
// has or was analysed for, the parents, energy, and what the caller wants.
func reported(a *Assay) []*constituent.Constituent {
	var list []*constituent.Constituent
	for _, c := range constituent.All() {
		switch {
		case c.ID == constituent.Mass:
		case c.ID == constituent.Energy, c.ID == constituent.EnergyKcal, c.Kind == constituent.Parent,
			slices.Contains(a.Want.Figures, c.ID), c.InLedger() && (a.found(c) || a.Want.Whole && a.surelyNone(c)):
			list = append(list, c)
		}
	}
	return list
}

// found reports whether any row has some of a constituent, was analysed for it,
// or got it, or may have got it, by a step.
func (a *Assay) found(c *constituent.Constituent) bool {
	if a.Serving.Central(c.ID) > 0 {
		return true
	}
	for i, row := range a.Serving.Rows {
		cell := row.Profile.Cells[c.Order]
		if cell.Known && (cell.Amount > 0 || cell.State == estimate.Measured || a.Serving.Bounds(i)[c.Order] != 0) {
			return true
		}
	}
	return false
}

// surelyNone reports whether every row is known to have none of a constituent, if only by
// rule: whoever asks for the whole is told so, since what is not listed is not known.
func (a *Assay) surelyNone(c *constituent.Constituent) bool {
	for _, row := range a.Serving.Rows {
		if cell := row.Profile.Cells[c.Order]; !cell.Known || cell.Amount > 0 {
			return false
		}
	}
	return len(a.Serving.Rows) > 0
}

// components groups the serving's rows by what the build pours, part by part side by side.
func (a *Assay) components(of composition.Totals, ids []*constituent.Constituent) {
	parts := a.parts()
	a.Components = make([]Component, len(parts))
	var unknown composition.Unknowns
	if a.Want.Intervals {
		unknown = composition.UnknownsOf(a.Serving, ids)
	}
	_ = estimate.InBlocks(len(parts), func(from, to int) error {
		m := &composition.Meter{Brief: !a.Want.Intervals}
		for i := from; i < to; i++ {
			id, pot := parts[i], a.only(parts[i])
			own := composition.TotalsOf(pot, ids)
			c := componentOf(m, id, a.recipe.Called[id], pot, own, ids)
			m.ShareOut(c.Constituents, own, of, unknown, func(row int) bool { return partOf(a.Serving.Rows[row]) == id })
			c.Lines = a.lines(id)
			a.Components[i] = c
		}
		return nil
	})
}
