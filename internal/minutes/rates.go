package minutes

import (
	"math"
	"sync"

	"sipsum/internal/amount"
	"sipsum/internal/composition"
	"sipsum/internal/drink"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
	"sipsum/internal/prep"
	"sipsum/internal/unit"
)

// Rate is something by which a glass was calculated.
type Rate struct {
	Name   string
	Result composition.Result
	Stated bool   // the drink file says so
	Source string // of what it does not say
}

// row is a row of data/minutes.csv.
type row struct {
	value, low, high float64
	unit, source     string
}

var rows = sync.OnceValue(func() map[string]row {
	all := map[string]row{}
	for _, r := range embedded.Rows("minutes.csv") {
		all[r.Text("quantity")] = row{r.Number("value"), r.Number("low"), r.Number("high"), r.Text("unit"), r.Text("source")}
	}
	return all
})

// Worth tells from how far on a brief speaks of what a glass does: "temperature", "gas", "melt".
func Worth(what string) float64 { return rows()["worth "+what].value }

// Serving is the mass of a serving, in grams, of which the rates of a cold and of a hot glass are.
func Serving() float64 { return rows()["serving of the rates"].value }

// bench draws the rates of a glass, and notes which were used.
type bench struct {
	ens  estimate.Ensemble
	used []Rate
}

// path is whose the streams of a standing glass are.
const path = "stands"

// stated draws a quantity of the file.
func (b *bench) stated(name string, q drink.Quantity, factor float64) []float64 {
	col := b.hand(nil).DrawQuantity(q, factor, path+"/"+name)
	b.note(Rate{Name: name, Result: composition.Known(estimate.Summarise(scaled(col, 1/factor)), q.Unit), Stated: true})
	return col
}

// scaled gives a column times a factor.
func scaled(col []float64, factor float64) []float64 {
	return estimate.Ratio(col, estimate.Constant(len(col), 1), factor)
}

// ice draws how much ice is in a glass.
func (b *bench) ice(a *unit.Amount, scale *unit.Amount) []float64 {
	col := b.hand(scale).Draw(*a, path+"/ice")
	b.note(Rate{Name: "ice", Result: composition.Known(estimate.Summarise(col), "g"), Stated: true})
	return col
}

func (b *bench) hand(scale *unit.Amount) amount.Hand { return amount.Hand{Ens: b.ens, Scale: scale} }

// factors draws what package prep needs of constants.
func (b *bench) factors() prep.Factors { return prep.Factors{Ensemble: b.ens, Path: path} }

// draw draws a row over its range.
func (b *bench) draw(name string) []float64 {
	r, shape := rows()[name], estimate.Uniform
	if r.low == r.high {
		shape = estimate.Exact
	}
	col := b.factors().Factor(name, estimate.Input{Central: r.value, Shape: shape, Low: r.low, High: r.high})
	b.note(Rate{Name: name, Result: composition.Known(estimate.Summarise(col), r.unit), Source: r.source})
	return col
}

func (b *bench) note(r Rate) { b.used = append(b.used, r) }

// room draws how warm the room is.
func (b *bench) room(s *drink.Stands) []float64 {
	if s != nil && s.Room != nil {
		return b.stated("room", *s.Room, 1)
	}
	return b.draw("room")
}

// exchange draws how fast a glass comes to the temperature of the room, a minute: rows are of a serving of
// 150 g, and a larger one has less surface for its mass.
func (b *bench) exchange(drink, room float64, mass []float64) []float64 {
	name := "cold glass"
	if drink > room && drink >= rows()["coolest hot cup"].value {
		name = "hot cup"
	}
	rate, of := b.draw(name), Serving()
	for d := range rate {
		rate[d] *= math.Cbrt(of / mass[d])
	}
	return rate
}

// escape draws how fast gas leaves, a minute.
func (b *bench) escape(s *drink.Stands, sparkles bool) []float64 {
	if s != nil && s.Loses != nil {
		rate := b.stated("loses", *s.Loses, percent)
		for d, share := range rate {
			rate[d] = -math.Log1p(-min(share, almostAll)) // no more gas leaves than there is
		}
		return rate
	}
	if sparkles {
		return b.draw("gas leaves")
	}
	return b.draw("gas leaves unseen")
}

const (
	percent   = 0.01
	almostAll = 1 - 1e-9
)
