package claim

import (
	"sipsum/internal/constituent"
)

// function is a word of the grammar that stands for a figure of the drink.
type function struct {
	name  string
	takes string // t: a constituent, p: a part, f: a food of a table, in order
	shape string // as it is written
	is    func([]*constituent.Constituent) dimension
	eval  func(*evaluation, figure) (span, error)

	solution bool // it is of the chemistry
}

func (f *function) dimension(tags []*constituent.Constituent) dimension { return f.is(tags) }

func always(d dimension) func([]*constituent.Constituent) dimension {
	return func([]*constituent.Constituent) dimension { return d }
}

// amountOf is what a constituent is counted in.
func amountOf(tags []*constituent.Constituent) dimension {
	if tags[0].ID == constituent.Energy || tags[0].ID == constituent.EnergyKcal {
		return ofEnergy
	}
	return ofMass
}

// functions lists the figures that a claim can ask for.
var functions []*function

func init() { // the functions evaluate figures, and figures name their function
	functions = []*function{
		{"serving", "t", "serving(SUGAR)", amountOf, (*evaluation).serving, false},
		{"per100g", "t", "per100g(SUGAR)", amountOf, (*evaluation).per100g, false},
		{"per100ml", "t", "per100ml(SUGAR)", amountOf, (*evaluation).per100ml, false},
		{"component", "pt", `component("cherry syrup", SUGAR)`, amountOf, (*evaluation).serving, false},
		{"share", "tp", `share(MALAC, "cherry syrup")`, always(plain), (*evaluation).share, false},
		{"ratio", "tt", "ratio(MALAC, CITAC)", always(plain), (*evaluation).ratio, false},
		{"mass", "", "mass()", always(ofMass), property(Mass), false},
		{"volume", "", "volume()", always(ofVolume), property(Volume), false},
		{"ph", "", "ph()", always(ofPH), property(PH), true},
		{"ta", "", "ta()", always(concentration), property(Acidity), true},
		{"brix", "", "brix()", always(ofBrix), property(Brix), true},
		{"brix_acid", "", "brix_acid()", always(plain), property(BrixAcid), true},
		{"alcohol_abv", "", "alcohol_abv()", always(plain), property(Strength), false},
		{"sweetness", "", "sweetness()", always(ofSweetness), property(Sweetness), false},
		{"food_rank", "tf", `food_rank(CITAC, "core:lemon-juice")`, always(ofPlace), (*evaluation).rank, false},
	}
}

func functionOf(name string) *function {
	for _, f := range functions {
		if f.name == name {
			return f
		}
	}
	return nil
}

func functionNames() []string {
	names := make([]string, len(functions), len(functions)+1)
	for i, f := range functions {
		names[i] = f.name
	}
	return append(names, "contains")
}
