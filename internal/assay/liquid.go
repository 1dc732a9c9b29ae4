package assay

import (
	"fmt"
	"math"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
)

// tooDry tells why a pot is no liquid that a refractometer or a densimeter reads; empty
// if it is one.
func tooDry(pot *ledger.Pot) string {
	if crystals(pot) {
		return "it is a pure substance and no solution: the water of a crystal does not run"
	}
	grams := map[constituent.ID]float64{}
	for _, leaf := range constituent.Sums().Leaves(constituent.Mass) {
		grams[leaf.ID] = pot.Central(leaf.ID)
	}
	share, least := solution.Wetness(grams)
	if share >= least {
		return ""
	}
	if _, unknown := pot.Bound(constituent.Water); len(unknown) > 0 {
		return "nobody has stated its water"
	}
	return fmt.Sprintf("it is no liquid: %.0f %% of what is not fat is water or alcohol, a liquid holds %g %% or more", share, least)
}

// crystals reports whether a pot holds nothing but pure substances of solid groups.
func crystals(pot *ledger.Pot) bool {
	for _, row := range pot.Rows {
		f := row.Profile.Food
		liquid := slices.ContainsFunc(food.Groups(), func(g food.Group) bool { return g.Name == f.Group && g.Liquid })
		if !f.Chemical || liquid {
			return false
		}
	}
	return true
}

// withholdReadings withholds what only a liquid has.
func (c *Chemistry) withholdReadings(why string) {
	if why == "" {
		return
	}
	c.TooDry = why
	for _, r := range []*Result{&c.Brix, &c.Density} {
		r.Unknown = true
		r.Mean, r.SD, r.Low, r.High, r.WithBounds, r.UpTo = math.NaN(), math.NaN(), math.NaN(), math.NaN(), math.NaN(), math.NaN()
	}
	c.BrixAcid.withhold(why)
	c.BrixCorrected.withhold(why)
}
