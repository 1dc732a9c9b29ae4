package sheet

import (
	"sipsum/internal/assay"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// Hue is by what an ingredient is told from the others in every picture of a drink. A renderer
// gives it its colour; no picture says anything by colour alone.
type Hue string

// The hues that mean something; the others are numbered in the order of the build.
const (
	HueCoffee  Hue = "coffee"
	HuePowder  Hue = "powder"
	HuePowder2 Hue = "powder2"
	HueWater   Hue = "water"
	HueRest    Hue = "rest"
	HueMany    Hue = "many" // a pot of several things
)

// hues are those of the rest, in order; what is more begins again.
var hues = []Hue{"a", "b", "c", "d", "e", "f", "g", "h", "i", "j", "k", "l"}

// Hues gives the hues in a fixed order, for a legend of forms.
func Hues() []Hue {
	return append([]Hue{HueCoffee, HuePowder, HuePowder2, HueWater, HueRest, HueMany}, hues...)
}

// palette tells the foods and the pots of a drink apart.
type palette struct {
	foods map[food.ID]Hue
	pots  map[string]Hue
}

// paletteOf gives every food of a serving its hue, and every part of the build that of the
// food that is most of it, water apart.
func paletteOf(a *assay.Assay) palette {
	p := palette{map[food.ID]Hue{}, map[string]Hue{}}
	next, powders := 0, 0
	for _, r := range a.Serving.Rows {
		f := r.Profile.Food
		if _, known := p.foods[f.ID]; known {
			continue
		}
		switch facts := f.Facts(); {
		case facts.Coffee:
			p.foods[f.ID] = HueCoffee
		case facts.Water:
			p.foods[f.ID] = HueWater
		case f.Chemical:
			p.foods[f.ID] = []Hue{HuePowder, HuePowder2}[powders%2]
			powders++
		default:
			p.foods[f.ID] = hues[next%len(hues)]
			next++
		}
	}
	p.byPot(a.Serving)
	return p
}

// byPot gives a pot the hue of what is half of it or more, water apart.
func (p palette) byPot(pot *ledger.Pot) {
	all, most := map[string]float64{}, map[string]map[Hue]float64{}
	for row, r := range pot.Rows {
		hue := p.foods[r.Profile.Food.ID]
		if hue == HueWater {
			continue
		}
		grams := pot.CentralOf(row, constituent.Mass)
		for _, name := range r.Path {
			if most[name] == nil {
				most[name] = map[Hue]float64{}
			}
			all[name] += grams
			most[name][hue] += grams
		}
	}
	for name, by := range most {
		p.pots[name] = HueMany
		for hue, grams := range by {
			if grams > half*all[name] {
				p.pots[name] = hue
			}
		}
	}
}

// pot gives the hue of a pot.
func (p palette) pot(name string) Hue {
	if hue, ok := p.pots[name]; ok {
		return hue
	}
	return HueMany
}

// of gives the hue of a food; what no serving holds any more is of the rest.
func (p palette) of(f *food.Food) Hue {
	if hue, ok := p.foods[f.ID]; ok {
		return hue
	}
	if f.Facts().Water {
		return HueWater
	}
	return HueRest
}
