package batch

import (
	"math"
	"slices"

	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/unit"
)

// Cost is what the glasses cost of what has a price, through all that the steps lose of it.
type Cost struct {
	Currency string
	Used     float64 // of what is weighed in
	Outlay   float64 // of the whole packs that are bought for it
}

// Sold is how a purchase is sold, as its own food says.
type Sold struct {
	Price     *drink.Price
	Packs     float64      // whole ones; 0 without a price
	Unpriced  *drink.Price // by a volume, of what nobody states a density: it counts for nothing
	Lot, Best string
	Past      bool     // it is best before a day that is over on that of the service
	Late      []Late   // pots with it that would keep for longer
	Reread    []string // pots that were read, in which it is: with another lot they are read again
}

// sell says of every purchase how it is sold, and adds the costs up, by currency.
func (m *maker) sell() {
	for i := range m.out.Purchases {
		p := &m.out.Purchases[i]
		own, ok := m.Recipe.Drink.OwnFood(p.Food.ID.Code)
		if p.Food.ID.Table != food.Own || !ok {
			continue
		}
		p.Sold = Sold{Price: own.Price, Lot: own.Lot, Best: own.Best}
		m.best(p)
		if own.Lot != "" {
			p.Reread = m.reread(p)
		}
		packs := p.packs()
		if math.IsNaN(packs) {
			p.Unpriced = p.Price // sold by a volume, and nobody states its density
			p.Price = nil
		}
		if p.Price == nil {
			continue
		}
		p.Packs = max(wholly(packs), 1)
		at := slices.IndexFunc(m.out.Costs, func(c Cost) bool { return c.Currency == own.Price.Currency })
		if at < 0 {
			at = len(m.out.Costs)
			m.out.Costs = append(m.out.Costs, Cost{Currency: own.Price.Currency})
		}
		m.out.Costs[at].Used += packs * own.Price.Number
		m.out.Costs[at].Outlay += p.Packs * own.Price.Number
	}
}

// packs is how many packs are used; NaN where nobody knows.
func (p *Purchase) packs() float64 {
	switch {
	case p.Price == nil:
		return math.NaN()
	case p.Price.Per.Measure.Kind == unit.Volume:
		return p.Bought / p.Food.Density.GramsPerMl / p.Price.Per.Base()
	}
	return p.Bought / p.Price.Per.Base()
}

// reread lists the pots with a reading that take a purchase.
func (m *maker) reread(p *Purchase) []string {
	var pots []string
	for _, of := range p.Of {
		c, ok := m.Recipe.Drink.Component(of.Pot)
		if ok && (c.Measured != nil || slices.ContainsFunc(c.Steps, func(s drink.Step) bool { return s.Kind() == "measured" })) {
			pots = append(pots, c.Name)
		}
	}
	return pots
}
