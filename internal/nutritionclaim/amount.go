package nutritionclaim

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/unit"
)

// serving is a row of data/claim_servings.csv.
type serving struct {
	ml     float64
	groups []string // a drink with a food of these may be of the category; none: any drink
	status string
	source string
}

var referenceAmounts = sync.OnceValue(func() map[string][]serving {
	all := map[string][]serving{}
	for _, r := range embedded.Rows("claim_servings.csv") {
		s := serving{ml: r.Number("ml"), status: r.Text("status"), source: r.Text("source")}
		if r.Text("groups") != "" {
			s.groups = strings.Split(r.Text("groups"), "|")
		}
		all[r.Text("rules")] = append(all[r.Text("rules")], s)
	}
	return all
})

// measured is the figure of a condition on one of its bases.
type measured struct {
	Figure
	per    string // "per 100 ml"
	status string // of what the basis rests on, if it is a rule of its own
	source string
}

// figures gives what a condition is about, on each basis on which it must hold; missing says
// what is lacking if there is none.
func (in Input) figures(c *condition) (list []measured, missing string) {
	perGram, _ := unit.PerGram(c.unit)
	if c.unit == percent {
		perGram, _ = unit.PerGram(c.in)
	}
	of := func(a Amounts) Figure { return c.share(a.sum(c.of, c.within, perGram)) }
	switch c.basis {
	case ofDrink:
		return []measured{{Figure: in.Strength, per: "in the drink"}}, ""
	case per100g:
		return []measured{{Figure: of(in.Per100g), per: "per 100 g"}}, ""
	case ofEnergy:
		return []measured{{Figure: in.ofEnergy(c), per: "of the energy"}}, ""
	case per100kcal:
		grams := in.Per100g.sum(c.of, c.within, perGram)
		return []measured{{Figure: grams.over(in.Per100g.of(constituent.EnergyKcal)).times(unit.Hundred), per: "per 100 kcal"}}, ""
	}
	if in.Per100ml == nil {
		return nil, "the volume of the drink is not known"
	}
	if c.basis == per100ml {
		return []measured{{Figure: of(in.Per100ml), per: "per 100 ml"}}, ""
	}
	for _, s := range in.servings() {
		list = append(list, measured{
			Figure: c.share(in.Per100ml.sum(c.of, c.within, perGram).times(s.ml / unit.Hundred)),
			per:    fmt.Sprintf("per reference amount of %g ml", s.ml), status: s.status, source: s.source,
		})
	}
	if c.basis == perBoth {
		list = append(list, measured{Figure: of(in.Serving), per: fmt.Sprintf("per serving of %.0f ml", in.ServingMl)})
	}
	return list, ""
}

const percent = "%"

// share gives a figure as a share of what it is held against.
func (c *condition) share(f Figure) Figure {
	if c.against == 0 {
		return f
	}
	return f.times(unit.Hundred / c.against)
}

// ofEnergy gives the share of the energy that an amount brings, at against kcal per gram.
func (in Input) ofEnergy(c *condition) Figure {
	grams := in.Per100g.sum(c.of, c.within, 1)
	return grams.times(c.against).over(in.Per100g.of(constituent.EnergyKcal)).times(unit.Hundred)
}

// servings gives the reference amounts that the drink may have.
func (in Input) servings() []serving {
	var list []serving
	for _, s := range referenceAmounts()[in.Rules] {
		mayBe := s.groups == nil || slices.ContainsFunc(in.Foods, func(f Food) bool { return slices.Contains(s.groups, f.Group) })
		if mayBe && !slices.ContainsFunc(list, func(have serving) bool { return math.Abs(have.ml-s.ml) < 1 }) {
			list = append(list, s)
		}
	}
	return list
}
