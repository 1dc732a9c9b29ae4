package assay

import (
	"sipsum/internal/acidity"
	"sipsum/internal/taste"
)

// Glass is what is liquid of a serving, for its taste: an eaten garnish is no part of it.
func (a *Assay) Glass() taste.Glass {
	g := taste.Glass{Pot: a.liquid.pot, Volume: a.liquid.volume, Seed: a.Seed, Only: a.Only, Celsius: acidity.MeterCelsius, Chemistry: a.Chemistry}
	if a.Drink.At != nil {
		g.Celsius = a.Drink.At.Number
	}
	return g
}
