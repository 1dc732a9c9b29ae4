package sheet

import (
	"maps"
	"math"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/label"
	"sipsum/internal/ledger"
	"sipsum/internal/nutritionclaim"
	"sipsum/internal/solution"
	"sipsum/internal/unit"
)

// claim judges the nutrition claims that the rules of a card know, and writes them on it.
func claim(c *label.Card, in nutritionclaim.Input) {
	in.Rules = c.Rules
	in.Per100g, in.Per100ml, in.Serving = maps.Clone(in.Per100g), maps.Clone(in.Per100ml), maps.Clone(in.Serving)
	energy(in.Per100g, c, unit.Hundred/c.ServingG)
	energy(in.Serving, c, 1)
	if in.Per100ml != nil {
		energy(in.Per100ml, c, unit.Hundred/c.ServingMl)
	}
	for _, k := range nutritionclaim.Judge(in) {
		c.Claims = append(c.Claims, label.Claim{
			Claim: k.Name, Allowed: k.Verdict == nutritionclaim.Allowed, Why: k.Why, Short: k.Short,
			Verdict: string(k.Verdict), Near: k.Near, Implied: k.Implied, Disclosure: k.Disclosure, Status: k.Status, Source: k.Source,
		})
	}
	for _, t := range nutritionclaim.Texts(c.Rules, in.Strength.Most) {
		c.Notes = append(c.Notes, label.Note{Kind: "scope", Text: t.Text, Source: t.Source})
	}
}

// Claims gives the nutrition claims of a card that a page tells: those that are allowed, less
// those that another says better, and those that are near to be. A document lists them all.
func Claims(c *label.Card) (allowed, near []label.Claim) {
	for _, k := range c.Claims {
		switch {
		case k.Allowed && !k.Implied:
			allowed = append(allowed, k)
		case !k.Allowed && k.Near:
			near = append(near, k)
		}
	}
	return allowed, near
}

// claimInput gathers a drink as far as claims go, under any rules.
func claimInput(a *assay.Assay, facts label.Facts) nutritionclaim.Input {
	ids, m := claimed(), &composition.Meter{Brief: !a.Want.Intervals}
	of := composition.TotalsOf(a.Serving, ids)
	once := slices.Repeat([]float64{1}, a.Serving.N)
	in := nutritionclaim.Input{
		ServingMl: facts.ServingMl,
		Per100g:   amounts(a, m.Composition(a.Serving, ids, of, a.Serving.Mass(), unit.Hundred)),
		Serving:   amounts(a, m.Composition(a.Serving, ids, of, once, 1)),
		Foods:     claimFoods(a),
	}
	if boiled(a) {
		lose(in.Per100g)
		lose(in.Serving)
	}
	if facts.ServingMl > 0 {
		in.Per100ml = nutritionclaim.Amounts{}
		for id, f := range in.Per100g {
			f.Low, f.Mean = f.Low*a.Density.Low, f.Mean*a.Density.Mean
			f.High, f.Most = f.High*a.Density.High, f.Most*a.Density.High
			in.Per100ml[id] = f
		}
	}
	in.Strength = strengthOf(facts, took(a, "ferment"))
	return in
}

// strengthOf gives the strength of a drink; where there is alcohol and no volume, nobody knows.
func strengthOf(facts label.Facts, fermented bool) nutritionclaim.Figure {
	alcohol := facts.Serving[constituent.Alcohol]
	most := mostFermented(alcohol, fermented)
	if facts.ServingMl <= 0 && most != 0 { // NaN too
		return nutritionclaim.Figure{Most: math.NaN()}
	}
	abv := func(grams float64) float64 { return solution.ABV(grams, facts.ServingMl) }
	return nutritionclaim.Figure{Low: abv(alcohol.Mean), Mean: abv(alcohol.Mean), High: abv(alcohol.KnownMost()), Most: abv(most), Known: true}
}

// mostFermented is the most alcohol that a serving can hold, in g. Where nothing ferments, what
// nobody has stated counts for nothing: tables leave the alcohol out of a lemon. What a ferment
// may have made counts, and has no end if nobody bounds it.
func mostFermented(a estimate.Amount, fermented bool) float64 {
	if fermented {
		return a.Most()
	}
	return a.KnownMost()
}

// claimed lists the constituents that claims are made of.
func claimed() []*constituent.Constituent {
	return withTotals(append([]constituent.ID{constituent.Energy, constituent.EnergyKcal}, nutritionclaim.Constituents()...))
}

// withTotals lists constituents with the totals above them, in vocabulary order.
func withTotals(ids []constituent.ID) []*constituent.Constituent {
	wanted := map[constituent.ID]bool{}
	for _, id := range ids {
		for at := id; at != "" && at != constituent.Mass; at = constituent.Must(at).Parent {
			wanted[at] = true
		}
	}
	var list []*constituent.Constituent
	for _, c := range constituent.All() {
		if wanted[c.ID] {
			list = append(list, c)
		}
	}
	return list
}

// amounts reads the figures of a composition.
func amounts(a *assay.Assay, of composition.Composition) nutritionclaim.Amounts {
	list := nutritionclaim.Amounts{}
	for _, f := range of {
		list[f.Constituent.ID] = nutritionclaim.Figure{Low: f.Low, Mean: f.Mean, High: f.High, Most: mostOf(f, a.Want.Intervals), Known: !f.Unknown, Unknown: unknownOf(a, f)}
	}
	return list
}

// mostOf is the upper end of a figure with every unknown part at its most.
func mostOf(f composition.Figure, intervals bool) float64 {
	if intervals {
		return f.UpTo
	}
	return f.WithBounds
}

// unknownOf names the foods of which a figure is not known; one that has none of the whole
// has none of the part.
func unknownOf(a *assay.Assay, f composition.Figure) []string {
	if !f.Partial || f.Constituent.Kind == constituent.Figure {
		return nil
	}
	var names []string
	_, rows := composition.MostOf(a.Serving, f.Constituent.ID)
	whole := nutritionclaim.Whole(f.Constituent.ID)
	for _, row := range rows {
		if whole != "" && none(a.Serving, row, whole) {
			continue
		}
		if name := a.Serving.Rows[row].Profile.Food.Name(); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

// none reports whether a row is known to have nothing of a constituent.
func none(pot *ledger.Pot, row int, id constituent.ID) bool {
	return pot.Of(row, id)[0] == 0 && pot.Bounds(row)[constituent.Must(id).Order] == 0
}

// energy puts the energy that a card has summed up in the place of the assay's own, with an
// interval as wide for its size.
func energy(list nutritionclaim.Amounts, c *label.Card, scale float64) {
	for i := range c.Rows {
		cell := c.Rows[i].Serving
		switch tag := constituent.ID(c.Rows[i].Tag); {
		case cell == nil:
		case tag == constituent.Energy:
			list[constituent.Energy] = asOnCard(list[constituent.Energy], cell.Value, scale)
			list[constituent.EnergyKcal] = asOnCard(list[constituent.EnergyKcal], cell.Kcal, scale)
		case tag == constituent.EnergyKcal:
			list[constituent.EnergyKcal] = asOnCard(list[constituent.EnergyKcal], cell.Value, scale)
		}
	}
}

func asOnCard(f nutritionclaim.Figure, value *float64, scale float64) nutritionclaim.Figure {
	if value == nil {
		f.Known = false
		return f
	}
	mean := *value * scale
	if f.Mean > 0 {
		f.Low, f.High, f.Most = f.Low*mean/f.Mean, f.High*mean/f.Mean, f.Most*mean/f.Mean
	} else {
		f.Low, f.High, f.Most = mean, f.High+mean, f.Most+mean
	}
	f.Mean, f.Known = mean, true
	return f
}

// claimFoods gives the foods that are drunk.
func claimFoods(a *assay.Assay) []nutritionclaim.Food {
	reduced := map[string]bool{}
	for _, c := range a.Drink.Components {
		for _, step := range c.Steps {
			if takesWater[step.Kind()] {
				reduced[c.Name] = true
			}
		}
	}
	var list []nutritionclaim.Food
	for _, item := range a.Items {
		if !item.Eaten {
			continue
		}
		list = append(list, nutritionclaim.Food{
			Name: item.Food.Name(), Group: item.Food.Group, Lacks: lacks(a, item.Food.ID.String()),
			Reduced: slices.ContainsFunc(item.Path, func(name string) bool { return reduced[name] }),
		})
	}
	return list
}

// takesWater lists the steps that leave more of a juice in less water.
var takesWater = map[string]bool{"reduce": true, "concentrate": true}

// lacks lists what a food is known to have none of, as it enters the drink.
func lacks(a *assay.Assay, food string) []constituent.ID {
	for _, row := range a.Serving.Rows {
		if row.Profile.Food.ID.String() != food {
			continue
		}
		var none []constituent.ID
		for _, id := range nutritionclaim.Constituents() {
			if cell := row.Profile.Cell(id); cell.Known && cell.Amount == 0 && cell.State != estimate.Trace {
				none = append(none, id)
			}
		}
		return none
	}
	return nil
}
