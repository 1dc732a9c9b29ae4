package prep

import (
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// shortestSteep names the rows of data/kinetics.csv that say from which time on the shares
// of data/extraction.csv hold for what is no tea.
const shortestSteep = "shortest steep "

// hurry finds which part of its shares a row gives that is taken out before these hold.
//
//	tea     InfusedShare(t) / InfusedShare(least time)
//	others  t / shortest steep
//
// A time that is not stated is a usual one.
func (m *infusion) hurry(out *Outcome, row ledger.Row, s Steeping) {
	of := row.Profile.Food
	kind := leafKind(of)
	if _, done := m.short[kind]; done || s.Minutes == nil || mixes(row) || drunkWhole(of) {
		return
	}
	k := kinetics()
	least, tea := k[leastTime+kind]
	if !tea {
		if least = k[shortestSteep+of.Group]; least.value == 0 {
			least = k[shortestSteep+"*"]
		}
	}
	if s.Minutes[0] >= least.value {
		return
	}
	col := make([]float64, m.factors.N)
	if tea {
		enough := s
		enough.Minutes = make([]float64, m.factors.N)
		estimate.Fill(enough.Minutes, least.value)
		full := m.factors.infused(of, enough)
		for d, share := range m.factors.infused(of, s) {
			col[d] = min(share/full[d], 1)
		}
	} else {
		for d, t := range s.Minutes {
			col[d] = min(t/least.value, 1)
		}
	}
	m.short[kind] = col
	out.note("%s, short: the figures used begin at %g min; its shares are taken to grow from nothing to those of that time", of.Name(), least.value)
}

// shortOf gives the part of its share that a constituent of a row had time for, nil for
// all: the small solutes of a tea follow the time by themselves.
func (m *infusion) shortOf(row ledger.Row, c *constituent.Constituent) []float64 {
	if isLeaf(row.Profile.Food) && m.isSolute(row, c) {
		return nil
	}
	return m.short[leafKind(row.Profile.Food)]
}
