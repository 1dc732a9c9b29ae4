package sweep_test

import (
	"fmt"
	"strings"
	"testing"

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
	switch most := limit("open water"); {
	case open > most && (c.TooDry == "" || !strings.Contains(c.TooDry, "water") || c.PHMeter.Why == ""):
		broken(open, "%.4g of 100 g may be anything, and °Brix (%v) or pH (%v) is given", open, c.Brix.Mean, c.PHMeter.Mean)
	case open < most && c.TooDry == "" && c.Brix.Low > max(c.Brix.Mean-open, 0)+1e-9:
		broken(open, "%.4g of 100 g may be water, and °Brix %.4g is no lower than %.4g", open, c.Brix.Mean, c.Brix.Low)
	}
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
