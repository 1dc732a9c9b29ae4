package sweep_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// fewFigures: of a food of which one figure is known nobody knows how much of it is water, nor
// what is solid, nor what hangs on that.
var fewFigures = law{"few figures leave the water open", "an own food that states one figure has no sure water, no sure solids, no °Brix, density and pH as if it had", "design §5, Unknown", waterIsOpen}

// fewIn is a drink with an own food of a group and one figure, in 100 g of it.
func fewIn(group, figure string, grams float64) string {
	lines := "    name: \"House\"\n    per: 100 g\n    values: {" + figure + "}\n    source: \"invented\"\n"
	if group != "" {
		lines += "    group: " + group + "\n"
	}
	return fmt.Sprintf("drink: \"Few\"\nserves: 1\nfoods:\n  own:\n%sbuild: [%g g own:own, %g g core:water-pure]\n", lines, grams, 100-grams)
}

// waterIsOpen holds drinks of one own food of few figures in water, 100 g together.
func waterIsOpen(s *subject, broken say) {
	pot := s.assay.Serving
	row := 0
	for pot.Rows[row].Profile.Food.ID.Table != food.Own {
		row++
	}
	profile := pot.Rows[row].Profile
	stated := 0.0
	for _, v := range profile.Food.Values {
		if c := constituent.Must(v.Constituent); c.PerGram > 0 {
			stated += v.Amount / c.PerGram
		}
	}
	open := pot.Of(row, constituent.Mass)[0] * (1 - stated/100)
	if f, _ := s.assay.PerServing.Find(constituent.Water); !f.Partial || f.WithBounds < f.Mean+open*(1-1e-3) {
		broken(open, "water is %.4g g, with bounds %.4g, and %.4g g may be anything", f.Mean, f.WithBounds, open)
	}
	solids := (&composition.Meter{}).InGrams(pot, composition.Solids(pot))
	if !solids.Partial || solids.WithBounds < solids.Mean+open*(1-1e-3) || solids.Mean > stated+1e-3 {
		broken(open, "solids are %.4g g, with bounds %.4g, and %.4g g may be anything", solids.Mean, solids.WithBounds, open)
	}
	c := s.assay.Chemistry
	if most := limit("open water"); open > most && len(s.assay.Per100ml) > 0 {
		broken(open, "%.4g of 100 g may be water or sugar, and figures stand for 100 ml", open)
	}
	switch most := limit("open water"); {
	case open > most && (c.TooDry == "" || !strings.Contains(c.TooDry, "water") || c.PHMeter.Why == ""):
		broken(open, "%.4g of 100 g may be anything, and °Brix (%v) or pH (%v) is given", open, c.Brix.Mean, c.PHMeter.Mean)
	case open < most && c.TooDry == "" && c.Brix.Low > max(c.Brix.Mean-open, 0)+1e-9:
		broken(open, "%.4g of 100 g may be water, and °Brix %.4g is no lower than %.4g", open, c.Brix.Mean, c.Brix.Low)
	}
}

// unstatedAlcohol: what a wine, a beer or a spirit does not state may be its alcohol.
var unstatedAlcohol = law{"unstated alcohol is not solid", "an own wine, beer or spirit that states its water and not its alcohol has no °Brix as if the rest were sugar, and nothing in 100 ml", "design §5, Unknown", alcoholIsOpen}

// alcoholIsOpen holds drinks of an own food of which much is neither water nor stated.
func alcoholIsOpen(s *subject, broken say) {
	if c := s.assay.Chemistry; c.TooDry == "" || len(s.assay.Per100ml) > 0 {
		broken(1, "nobody has stated its alcohol, and °Brix is %.4g, with %d figures for 100 ml", c.Brix.Mean, len(s.assay.Per100ml))
	}
	// ethanol and sucrose in water at 20 °C, OIML R 22 and CRC Handbook: 0.95 and 1.17 g/ml at 36 %
	if v, g := s.assay.Volume, s.assay.Mass.Mean; v.High < g/0.97 || v.Low > g/1.13 {
		broken(1, "%.4g g take %.4g to %.4g ml: it may be all alcohol, or all sugar", g, v.Low, v.High)
	}
}

// The three groups of which a share is alcohol.
func TestUnstatedAlcoholIsNotSolid(t *testing.T) {
	k, b := newKitchen(t), newBreaches([]law{unstatedAlcohol})
	for _, group := range []string{"wine", "beer", "spirit"} {
		s, refused := k.serve(group, fewIn(group, "WATER: 62 g, SUGAR: 2 g", 98))
		require.Nil(t, refused, group)
		b.judge(s, []law{unstatedAlcohol})
	}
	b.report(t)
}

// Whatever the group, one figure closes no food; but where published tables say of a group that
// it holds nothing else (waters).
func TestFewFiguresLeaveTheWaterOpen(t *testing.T) {
	k, b := newKitchen(t), newBreaches([]law{fewFigures}, refusalLaws)
	groups := []string{""}
	for _, group := range food.GroupsThat(func(food.Group) bool { return true }) {
		if group != "water" {
			groups = append(groups, group)
		}
	}
	type few struct {
		group, figure string
		grams         float64
	}
	var all []few
	for _, group := range groups {
		all = append(all, few{group, "SUGAR: 5 g", 2})
		for _, figure := range []string{"", "SUGAR: 5 g", "CAFFN: 1 mg", "NA: 4 mg", "FAT: 2 g", "PROCNT: 3 g", "ALC: 0.5 g", "CITAC: 100 mg"} {
			all = append(all, few{group, figure, 50})
		}
	}
	sideBySide(all, func(f few) {
		name, text := fmt.Sprintf("%s {%s}, %g g", f.group, f.figure, f.grams), fewIn(f.group, f.figure, f.grams)
		s, refused := k.serve(name, text)
		if refused != nil {
			b.add(foodIsServed.name, breach{1, name, text, refused.err.Error()})
			return
		}
		b.judge(s, []law{fewFigures})
	})
	b.report(t)
}
