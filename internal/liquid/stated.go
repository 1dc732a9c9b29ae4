package liquid

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/unit"
)

// packed is how a food whose own density is stated differs from its composition.
type packed struct {
	more  []float64 // of its volume, as a share of what its composition takes up
	water []float64 // in a gram as it was poured
	loose bool      // a powder: what it takes up more is air between its grains
}

// addStated adds what the foods of the drink file take up more than their composition
// says (or less), where they state a density: that is the density, and the composition
// only tells how it changes. In a row of the food
//
//	volume = composition's volume · (1 + more · s)     s = alikeness of the row's water content
//
// so it is exact as poured, blends by volume, and fades as water is boiled off. Powders
// bring their air into nothing but a vessel of their own.
func (g *Gauge) addStated(volume []float64, pot *ledger.Pot) {
	for row, r := range pot.Rows {
		b := g.packedOf(r.Profile)
		if b == nil || b.loose && mixed(pot, r.Profile.Food.ID) {
			continue
		}
		alone := pot.Only(func(other int) bool { return other == row })
		own, mass, water := g.composedVolume(alone), alone.Mass(), alone.Total(constituent.Water)
		for d := range volume {
			volume[d] += own[d] * b.more[d] * alike(water[d], b.water[d]*mass[d])
		}
	}
}

// alike is 1 for what is the same and falls to 0.
func alike(a, b float64) float64 {
	switch {
	case a == b:
		return 1
	case a <= 0 || b <= 0:
		return 0
	}
	return min(a/b, b/a)
}

func mixed(pot *ledger.Pot, with food.ID) bool {
	for row, r := range pot.Rows {
		if r.Profile.Food.ID != with && pot.CentralOf(row, constituent.Mass) > 0 {
			return true
		}
	}
	return false
}

// statesDensity reports whether a food is one of the drink file that states its density.
func statesDensity(f *food.Food) bool {
	return f.ID.Table == food.Own && food.Stated(f.Density.GramsPerMl)
}

// packedOf gives what a food of the drink file states of its density; nil if nothing. The
// densities of tables are mostly household measures: good for pouring, no better than the
// composition for a volume.
func (g *Gauge) packedOf(profile *food.Profile) *packed {
	f := profile.Food
	if !statesDensity(f) {
		return nil
	}
	if b, ok := g.packs[profile]; ok {
		return b
	}
	gram := g.drawer.NewPot()
	gram.Pour(profile, g.drawer.PerGram(profile), g.ens.Of(1), "")
	composed := g.composedVolume(gram)
	b := &packed{more: g.densityOf(f), water: gram.Total(constituent.Water)}
	for d, density := range b.more {
		b.more[d] = 0
		if composed[d] > 0 {
			b.more[d] = 1/(density*composed[d]) - 1
		}
	}
	const mostly = 0.5
	moist := unit.Hundred * (gram.Central(constituent.Water) + gram.Central(constituent.Alcohol) + OpenMass(gram))
	b.loose = b.more[0] > 0 && unit.LimitOf("moisture of a powder", "g/100 g").Holds(moist) && gram.Central(constituent.Fat) < mostly // an oil is dry, and no powder
	g.packs[profile] = b
	return b
}

// densityOf draws a food's density, in g/ml: it has one, whoever pours it.
func (g *Gauge) densityOf(f *food.Food) []float64 {
	sd := f.Density.SD
	if math.IsNaN(sd) {
		sd = 0
	}
	return g.ens.Column(estimate.Input{
		Central: f.Density.GramsPerMl, Shape: estimate.Lognormal, SD: sd, Stream: g.ens.Stream("density", f.ID.String()),
	})
}
