package jsonreport

import (
	"math"

	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/foaming"
)

// foam is what a step made a foam of: all of a component, or of the drink. What nobody stated, or
// what cannot be calculated of it, is not there.
type foam struct {
	Of          string          `json:"of"` // a component; "": the drink
	Step        string          `json:"step"`
	Gas         string          `json:"gas"` // "": air
	Charge      *interval       `json:"charge,omitempty"`
	Dissolved   *interval       `json:"dissolved,omitempty"`
	Head        *interval       `json:"head,omitempty"`
	Pressure    *interval       `json:"pressure,omitempty"`
	Liquid      *interval       `json:"liquid,omitempty"`
	Overrun     *interval       `json:"overrun,omitempty"`
	LiquidShare *interval       `json:"liquid_share,omitempty"`
	Volume      *interval       `json:"volume,omitempty"`
	Density     *interval       `json:"density,omitempty"`
	Aired       bool            `json:"more_gas_than_charged,omitempty"` // at the pressure of the air
	Conditions  []foamCondition `json:"conditions"`
	StabilityIs string          `json:"stability"`
}

// foamCondition is one published condition of a kind of foam.
type foamCondition struct {
	Kind     string      `json:"kind"`
	Of       string      `json:"of"`
	Unit     string      `json:"unit,omitempty"` // a pH has none
	Figure   *interval   `json:"figure,omitempty"`
	Why      string      `json:"why,omitempty"`
	Verdict  string      `json:"verdict"`
	Ranges   []foamRange `json:"ranges"`
	Searched string      `json:"searched,omitempty"`
}

type foamRange struct {
	From   *number `json:"from,omitempty"`
	To     *number `json:"to,omitempty"`
	Says   string  `json:"says"`
	Read   string  `json:"read"`
	Source string  `json:"source"`
}

func foamsOf(a *assay.Assay) []foam {
	var list []foam
	for _, f := range a.Foams {
		out := foam{
			Of: f.Component, Step: f.Path, Gas: f.Gas, Aired: f.Aired, Liquid: stated(f.Liquid), Conditions: []foamCondition{}, StabilityIs: "never predicted",
			Charge: stated(f.Charge), Dissolved: stated(f.Dissolved), Head: stated(f.Head), Pressure: stated(f.Pressure),
			Overrun: stated(f.Overrun), LiquidShare: stated(f.Fraction), Volume: stated(f.Volume), Density: stated(f.Density),
		}
		for _, c := range f.Conditions {
			out.Conditions = append(out.Conditions, foamConditionOf(c))
		}
		list = append(list, out)
	}
	return list
}

// stated is a figure that may not be there.
func stated(r composition.Result) *interval {
	if r.Unit == "" {
		return nil
	}
	i := intervalOf(r)
	return &i
}

func foamConditionOf(c foaming.Condition) foamCondition {
	out := foamCondition{Kind: c.Kind, Of: c.Of, Unit: c.Unit, Why: c.Why, Verdict: string(c.Verdict), Ranges: []foamRange{}, Searched: c.Searched}
	if c.Why == "" {
		f := intervalOf(c.Figure) // a pH has no unit
		out.Figure = &f
	}
	end := func(x float64) *number {
		if math.IsInf(x, 0) {
			return nil
		}
		n := number(x)
		return &n
	}
	for _, r := range c.Ranges {
		out.Ranges = append(out.Ranges, foamRange{end(r.From), end(r.To), r.Says, r.Read, r.Source})
	}
	return out
}
