package prep

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
)

// methods is every step that is calculated, by its word in the drink file.
var methods = map[string]Method{
	"reduce": method[*drink.Reduce]{weight: states, makes: invertSugar, do: at.reduce},
	"strain": straining,
	"press":  straining,
	"curdle": method[*drink.Curdle]{weight: states, makes: []constituent.ID{burnt}, do: func(a at, s *drink.Curdle) (Outcome, error) {
		return Curdle(a.pot, a.amount(&s.Collect, "collect"), s.By, celsiusOf(s.Temperature), a.Factors)
	}},
	"clarify": method[*drink.Clarify]{weight: states, makes: []constituent.ID{burnt}, do: func(a at, s *drink.Clarify) (Outcome, error) {
		return Clarify(a.pot, a.aside(s.Ingredients), Clarifying{By: s.By, Collect: a.amount(&s.Collect, "collect"), Celsius: celsiusOf(s.Temperature)}, a.Factors)
	}},
	"brew": method[*drink.Brew]{weight: states, makes: []constituent.ID{burnt}, do: func(a at, s *drink.Brew) (Outcome, error) {
		return Brew(a.pot, Recipe{
			Out: a.amount(s.Out, "out"), Strength: a.share(s.Strength, "strength"), Yield: a.share(s.Yield, "yield"),
		}, a.Factors)
	}},
	"steep": method[*drink.Steep]{
		weight: leavesOpen, weighs: func(s *drink.Steep) bool { return s.Collect != nil },
		makes: []constituent.ID{burnt},
		do: func(a at, s *drink.Steep) (Outcome, error) {
			return Steep(a.pot, a.aside(s.Ingredients), Steeping{
				Minutes: a.figure(s.Minutes, 1, "for"), Celsius: a.figure(s.Temperature, 1, "at"), Collect: a.amount(s.Collect, "collect"),
			}, a.Factors)
		},
	},
	"add": method[*drink.Add]{weight: asBefore, do: func(a at, s *drink.Add) (Outcome, error) {
		a.Pour(a.pot, s.Ingredients)
		return Outcome{}, nil
	}},
	"chill": method[*drink.Chill]{weight: leavesOpen, do: at.chill},
	"cool":  method[*drink.Cool]{weight: asBefore, do: at.cool},
	"dilute": method[*drink.Dilute]{
		weight: leavesOpen, weighs: func(s *drink.Dilute) bool { return s.To != nil },
		do: at.dilute,
	},
	"invert": method[*drink.Invert]{
		weight: leavesOpen, makes: invertSugar,
		do: func(a at, s *drink.Invert) (Outcome, error) {
			if s.Share != nil {
				return a.splitting(constituent.Sucrose, Invert, a.share(s.Share, "share"), false)
			}
			share := Inverted(a.figure(s.PH, 1, "ph"), a.figure(s.Temperature, 1, "at"), a.figure(s.Minutes, 1, "for"), a.Factors)
			return a.splitting(constituent.Sucrose, Invert, share, true)
		},
	},
	"hydrolyse": method[*drink.Hydrolyse]{
		weight: leavesOpen, makes: []constituent.ID{constituent.Glucose, constituent.Galactose},
		do: func(a at, s *drink.Hydrolyse) (Outcome, error) {
			return a.splitting(constituent.Lactose, Hydrolyse, a.share(&s.Lactose, "lactose"), false)
		},
	},
	"convert": method[*drink.Convert]{
		weight: leavesOpen, makes: []constituent.ID{constituent.Glucose, maltose},
		do: func(a at, s *drink.Convert) (Outcome, error) {
			return Convert(a.pot, a.share(&s.Starch, "starch"), s.To)
		},
	},
	"ferment": method[*drink.Ferment]{weight: leavesOpen, alsoMakes: fermented, brings: FermentProducts, do: at.ferment},
	"caramelise": method[*drink.Caramelise]{
		weight: leavesOpen, weighs: func(s *drink.Caramelise) bool { return s.To != nil }, brings: BurntSugarAcids,
		makes: []constituent.ID{burnt, constituent.RestOf(constituent.OrganicAcids)},
		do:    at.caramelise,
	},
	"concentrate": method[*drink.Concentrate]{weight: states, do: concentrate},
	"wash": method[*drink.Wash]{
		weight: asBefore, weighs: func(s *drink.Wash) bool { return s.Collect != nil },
		do: func(a at, s *drink.Wash) (Outcome, error) {
			return Wash(a.pot, a.aside(s.Ingredients), a.amount(s.Collect, "collect"), a.Factors)
		},
	},
	"heat":   method[*drink.Heat]{weight: leavesOpen, alsoMakes: heated, do: hinting(at.heat)},
	"adjust": method[*drink.Adjust]{weight: asBefore, do: at.adjust},
	"split":  method[*drink.Split]{weight: states, do: at.split},
	"carbonate": method[*drink.Carbonate]{
		weight: asBefore, brings: Gas,
		makes: []constituent.ID{constituent.CarbonDioxide},
		gas:   func(s *drink.Carbonate) bool { return s.Left != nil },
		do:    at.carbonate,
	},
	"foam": method[*drink.Foam]{weight: asBefore, brings: Gas, alsoMakes: gassed, gas: func(s *drink.Foam) bool { return s.Left != nil }, do: func(a at, s *drink.Foam) (Outcome, error) {
		return frother{a}.foam(s)
	}},
	// Smoke, a flame or a bath of dry ice: nobody can say what they do to the figures.
	"treat": method[*drink.Treat]{weight: asBefore, do: hinting(func(_ at, s *drink.Treat) (Outcome, error) {
		var out Outcome
		out.note("%s: nothing of the composition is changed for it", s.Technique)
		return out, nil
	})},
	// A reading changes nothing by itself: whoever follows the drink takes it together
	// with those beside it.
	"measured": method[*drink.Measured]{weight: asBefore},
}

// straining is strain and press.
var straining = method[*drink.Strain]{weight: states, makes: []constituent.ID{burnt}, do: func(a at, s *drink.Strain) (Outcome, error) {
	return Strain(a.pot, a.amount(&s.Collect, "collect"), s.Through, a.Factors)
}}

// gassed is what the charge of a foam leaves in the liquid.
func gassed(s *drink.Foam) []constituent.ID {
	if s.Gas == drink.CO2 {
		return []constituent.ID{constituent.CarbonDioxide}
	}
	return nil
}

// celsiusOf gives a temperature, NaN if it is not stated.
func celsiusOf(q *drink.Quantity) float64 {
	if q == nil {
		return math.NaN()
	}
	return q.Number
}
