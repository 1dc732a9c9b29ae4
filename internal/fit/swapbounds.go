package fit

import (
	"context"
	"fmt"
	"strings"
	"sync"

	"sipsum/internal/assay"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/embedded"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// beyond tells why the amount that was found cannot be poured, though the arithmetic of the steps allows it: it
// does not dissolve, or the dose would have to give more of itself than coffee does.
func (s *swap) beyond(ctx context.Context, t *trial) (why, err error) {
	if of := t.drawsOut(); of > usualYield() && drewOut(s, t) <= usualYield() {
		return fail.New(fail.Wrong, fmt.Sprintf("%.1f %% of it would have to be in the cup, and about %.0f %% of roasted coffee dissolves as a rule", unit.Hundred*of, unit.Hundred*usualYield()), ""), nil
	}
	sol, known := solubilities()[t.food.ID.String()]
	if !known {
		return nil, nil
	}
	a, err := t.bench.Central.Run(ctx, t.to(), assay.Want{Draws: true, Chemistry: true})
	if err != nil {
		return nil, err
	}
	for _, in := range inWater(a, t.food) {
		if in.Of > sol.of && !(in.Pot == "" && hotter(t.bench.Drink, sol.celsius)) {
			return fail.New(fail.Wrong, fmt.Sprintf("it does not dissolve: %s g of it to 100 g of water, which holds %s g at %g °C", note.Number(in.Of), note.Number(sol.of), sol.celsius), ""), nil
		}
	}
	return nil, nil
}

func hotter(d *drink.Drink, celsius float64) bool { return d.At != nil && d.At.Number > celsius }

// usualYield is the share of roasted coffee that dissolves as a rule.
var usualYield = sync.OnceValue(func() (share float64) {
	for _, row := range embedded.Rows("brewing.csv") {
		if row.Text("name") == "soluble share coffee bean" {
			share = row.Number("low")
		}
	}
	return share
})

// drawsOut is the share of a dose that its brew puts into the cup, where the drink states both; 0: it does not.
func (t *trial) drawsOut() (most float64) {
	for _, p := range t.pours {
		most = max(most, yieldOf(t.bench.Drink, p.Now, t.poursIn(p)))
	}
	return most
}

// drewOut is that of the drink as it is written.
func drewOut(s *swap, t *trial) (most float64) {
	for _, p := range t.pours {
		most = max(most, yieldOf(s.bench.Drink, p.Path, s.weighs(p)))
	}
	return most
}

// poursIn is what a pour weighs in, in grams.
func (t *trial) poursIn(p Pour) float64 { return p.To.Base() * t.recipe.Lines[p.Now].Grams }

// yieldOf is what a brew of so many grams of a dose has drawn out, by what is stated of its cup.
func yieldOf(d *drink.Drink, path string, dose float64) float64 {
	owner, _, _ := strings.Cut(path, "/")
	for _, c := range d.Components {
		if c.Name != owner || dose <= 0 || len(c.Ingredients) == 0 {
			continue
		}
		for _, step := range c.Steps {
			if b, ok := step.(*drink.Brew); ok && b.Out != nil && b.Strength != nil {
				return b.Out.Base() * b.Strength.Number / unit.Hundred / dose
			}
		}
	}
	return 0
}

// dissolved is how much of a pure food 100 g of water hold.
type dissolved struct{ of, celsius float64 }

var solubilities = sync.OnceValue(func() map[string]dissolved {
	all := map[string]dissolved{}
	for _, row := range embedded.Rows("swap_solubility.csv") {
		all[row.Text("food")] = dissolved{row.Number("dissolves"), row.Number("celsius")}
	}
	return all
})

// thick lists the pots in which there is so much of a pure food to their water that it may not stay dissolved: by what
// water holds of it, and of what nobody has looked up by what it holds of any.
func thick(a *assay.Assay, f *food.Food) (list []Thick) {
	surely := unit.LimitOf("what surely dissolves", "g/100 g water").High
	if sol, ok := solubilities()[f.ID.String()]; ok {
		surely = sol.of * unit.LimitOf("what stays dissolved in the cold", "share").High
	}
	for _, x := range inWater(a, f) {
		if x.Of > surely {
			x.Surely = surely
			list = append(list, x)
		}
	}
	return list
}

// inWater tells how much of a pure food there is to the water of each pot, and of the serving, which has no name.
func inWater(a *assay.Assay, f *food.Food) (list []Thick) {
	if !f.Chemical {
		return nil
	}
	its, water, all, allWater := map[string]float64{}, map[string]float64{}, 0.0, 0.0
	for row, x := range a.Serving.Rows {
		pot := ""
		if len(x.Path) > 0 {
			pot = x.Path[0]
		}
		w, g := gramsOf(a.Serving, row, constituent.Water), 0.0
		if x.Profile.Food.ID == f.ID {
			g = gramsOf(a.Serving, row, constituent.Mass)
		}
		its[pot], water[pot], all, allWater = its[pot]+g, water[pot]+w, all+g, allWater+w
	}
	for _, c := range a.Components {
		if g := its[c.ID.Component]; c.House && g > 0 {
			list = append(list, Thick{Pot: c.Name, Of: unit.Hundred * g / water[c.ID.Component]})
		}
	}
	return append(list, Thick{Of: unit.Hundred * all / allWater})
}
