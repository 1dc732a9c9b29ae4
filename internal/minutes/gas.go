package minutes

import (
	"math"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/liquid"
	"sipsum/internal/solution"
)

// escape is what gas leaves a glass, draw by draw.
type escape struct {
	held   []float64 // g at the pour
	stays  []float64 // g, in open air
	poured []float64 // the share that pouring leaves
	rate   []float64 // 1/min
}

// fizzes reports whether a glass has gas to lose.
func (g Glass) fizzes() bool {
	gas := g.Pot.Central(constituent.CarbonDioxide)
	return gas > 0 && !liquid.Still(gas, g.Pot.Mass()[0])
}

// escape works out how gas leaves a glass; nil if there is none to lose.
func (g Glass) escape(b *bench) *escape {
	if !g.fizzes() {
		return nil
	}
	e := &escape{held: g.Pot.Total(constituent.CarbonDioxide), poured: estimate.Constant(g.Pot.N, 1)}
	e.stays = g.stays(e.held)
	if bottled := g.bottled(e.held); bottled != nil {
		lost := b.draw("pouring loses")
		for d := range e.poured {
			e.poured[d] = 1 - lost[d]*bottled[d]
		}
	}
	e.rate = b.escape(g.Drink.Stands, g.sparkles(e.held[0]))
	return e
}

// sparkles reports whether a drink holds more gas than water does under 1 atm of it, so that bubbles rise.
func (g Glass) sparkles(held float64) bool {
	celsius := acidity.MeterCelsius
	if g.Drink.At != nil {
		celsius = g.Drink.At.Number
	}
	molar := constituent.Must(constituent.CarbonDioxide).Molar
	return held > solution.CO2Solubility(celsius)*molar*g.Lab.Gauge.Volume(g.Pot)[0]/acidity.PerLitre
}

// stays gives the grams of carbon dioxide that the open air leaves in a glass: its bicarbonate, as far as
// no acid frees it. A pot that cannot be solved is taken to lose all.
func (g Glass) stays(held []float64) []float64 {
	carbonic, molar := acid.Must("carbonic"), constituent.Must(constituent.CarbonDioxide).Molar
	air := acidity.SpanOf("air").High * solution.CO2Solubility(acidity.MeterCelsius)
	stays := make([]float64, g.Pot.N)
	err := g.Lab.IonsOf(g.Pot, g.Pot.N).Each(func(s *acid.Solver, sol *acid.Solution, near, _ acid.State, d int) error {
		_, err := s.Degas(sol, air, near)
		stays[d] = min(sol.Acids[carbonic]*molar, held[d]) // what takes gas up from the air does not do so in minutes
		return err
	})
	if err != nil {
		estimate.Fill(stays, 0)
	}
	return stays
}

// bottled gives the share of the gas that comes out of bottles, draw by draw; nil if none does.
func (g Glass) bottled(held []float64) []float64 {
	var share []float64
	for row := range g.Pot.Rows {
		of := g.Pot.Of(row, constituent.CarbonDioxide)
		if !g.Bottled(row) || !(of[0] > 0) {
			continue
		}
		if share == nil {
			share = make([]float64, g.Pot.N)
		}
		for d, grams := range of {
			if held[d] > 0 {
				share[d] += grams / held[d]
			}
		}
	}
	return share
}

// left gives the share of the gas that is in the glass some minutes after the pour, draw by draw.
func (e *escape) left(minutes float64) []float64 {
	share := estimate.Constant(len(e.held), 1)
	if minutes == 0 {
		return share
	}
	for d, held := range e.held {
		if held > 0 {
			share[d] = (e.stays[d] + (held-e.stays[d])*e.poured[d]*math.Exp(-e.rate[d]*minutes)) / held
		}
	}
	return share
}

// flatten leaves a share of the gas in a pot.
func flatten(pot *ledger.Pot, share []float64) {
	col := pot.Columns.At(constituent.CarbonDioxide)
	for row := range pot.Rows {
		if !pot.Has(row, col) {
			continue
		}
		for d, cell := 0, pot.Write(row, col); d < pot.N; d++ {
			cell[d] *= share[d]
		}
	}
}
