package batch

import (
	"math"

	"sipsum/internal/drink"
)

// Days is when a pot may be made.
type Days struct {
	Keeps  *drink.Keeps // as the file says; nil: it does not
	Ahead  float64      // days before it is served at which it may be made at the earliest; 0: on the day
	Glass  bool         // it is made for each glass as it is built
	Before []string     // pots that are made of it, which have to be made later
}

// days tells how long before the service each pot may be made: as long as it keeps, or before those
// that are made of it, as long as these keep. What nobody says of how long it keeps is made on the
// day.
func (m *maker) days() {
	pots := m.out.Pots
	for i := len(pots) - 1; i >= 0; i-- { // those that hold others stand behind them
		p := &pots[i]
		c, _ := m.Recipe.Drink.Component(p.Name)
		p.Keeps = c.Keeps
		own := 0.0
		if c.Keeps != nil {
			own = c.Keeps.Days
		}
		drunk, _ := m.taken(p.Name)
		p.Glass = p.Whole != nil && drunk > 0 && own == 0
		latest := math.Inf(1)
		if drunk > 0 {
			latest = 0
		}
		for k := i + 1; k < len(pots); k++ {
			for _, line := range m.yields[pots[k].Name].Poured {
				if in := m.Recipe.Lines[line.Path]; in.Component != nil && in.Component.Name == p.Name {
					latest = min(latest, pots[k].Ahead)
					p.Before = appendOnce(p.Before, pots[k].Name)
				}
			}
		}
		if math.IsInf(latest, 1) {
			latest = 0
		}
		p.Ahead = latest + own
	}
}

func appendOnce(list []string, text string) []string {
	for _, have := range list {
		if have == text {
			return list
		}
	}
	return append(list, text)
}
