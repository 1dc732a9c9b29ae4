package sheet

import (
	"cmp"
	"math"
	"slices"

	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/caution"
	"sipsum/internal/chemistry"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/label"
	"sipsum/internal/liquid"
	"sipsum/internal/solution"
)

// warned looks a drink through for what may hurt, for whatever rules.
func warned(a *assay.Assay, facts label.Facts, items []allergen.Item) caution.Drink {
	alcohol, parts, ml := facts.Serving[constituent.Alcohol], partsOf(a), a.Volume.Mean
	if liquid.NoVolume(a.Serving) != "" && a.Volume.Low > 0 {
		ml = a.Volume.Low // the strongest that it may be
	}
	abv := func(grams float64) float64 {
		if !(ml > 0) {
			return math.NaN()
		}
		return solution.ABV(grams, ml)
	}
	in := caution.Input{
		Name: a.Drink.Name, Items: items, Parts: parts, Poured: pouredOf(a),
		ServingG: a.Mass.Mean, ServingMl: ml, Amounts: facts.Serving,
		ABV: abv(alcohol.Mean), ABVMost: abv(mostAlcohol(alcohol, took(a, "ferment"))),
		Brought: map[constituent.ID][]food.ID{}, Unstated: map[constituent.ID][]food.ID{},
	}
	if at := a.Drink.At; at != nil {
		in.ServedAt = at.Number
	}
	for _, id := range []constituent.ID{constituent.Alcohol, constituent.Caffeine} { // of which a row asks who brings it
		in.Brought[id], in.Unstated[id] = bringersOf(a, id)
	}
	return caution.Look(in)
}

// partsOf lists the house-made components that are in the drink, and the drink itself.
func partsOf(a *assay.Assay) []caution.Part {
	used := a.Used()
	var parts []caution.Part
	for i := range a.Drink.Components {
		if c := &a.Drink.Components[i]; used[c.Name] {
			p := partOf(c.Name, c.Vessel, c.Steps, c.Measured, chemistryOf(a, c.Name))
			if c.Keeps != nil {
				p.Steps = append(p.Steps, kept)
			}
			parts = append(parts, p)
		}
	}
	whole := partOf("", a.Drink.Vessel, a.Drink.Finish, nil, a.Chemistry)
	whole.Techniques = append(whole.Techniques, aromaWords(a)...)
	return append(parts, whole)
}

// chemistryOf gives a component as a solution; nil if the build does not pour it by itself.
func chemistryOf(a *assay.Assay, name string) *chemistry.Chemistry {
	for i := range a.Components {
		if a.Components[i].ID.Component == name {
			return a.Components[i].Chemistry
		}
	}
	return nil
}

// What cautions ask for as they ask for steps.
const (
	curdle    = "curdle"    // whatever parts milk
	carbonate = "carbonate" // whatever is charged with carbon dioxide
	hotSteep  = "hot steep" // a steep so hot that it has to be cooled
	kept      = "keep"      // a component with days that it keeps
)

func partOf(name, vessel string, steps []drink.Step, end *drink.Measured, c *chemistry.Chemistry) caution.Part {
	p := caution.Part{Name: name, Vessel: vessel, PHLow: math.NaN(), PHHigh: math.NaN()}
	var read *drink.Quantity
	sourer := false // than what was read: only an end above it is known
	for _, step := range steps {
		p.Steps, p.Techniques = append(p.Steps, step.Kind()), append(p.Techniques, drink.Techniques(step)...)
		if drink.Curdles(step) && step.Kind() != curdle {
			p.Steps = append(p.Steps, curdle)
		}
		if f, ok := step.(*drink.Foam); ok && f.Gas == drink.CO2 {
			p.Steps = append(p.Steps, carbonate)
		}
		if s, ok := step.(*drink.Steep); ok && s.Temperature != nil && s.Temperature.Number >= coldChain().From {
			p.Steps = append(p.Steps, hotSteep)
		}
		switch step := step.(type) {
		case *drink.Treat, *drink.Cool, *drink.Strain: // what was read still holds: a cloth keeps back no acid
		case *drink.Carbonate:
			sourer = true
		case *drink.Foam:
			sourer = sourer || step.Gas == drink.CO2
		case *drink.Measured:
			read, sourer = cmp.Or(step.PH, read), sourer && step.PH == nil
		default:
			read = nil // what was read before is of another state
		}
	}
	if end != nil && end.PH != nil {
		read, sourer = end.PH, false
	}
	switch {
	case read != nil:
		p.PHLow, p.PHHigh, p.PHRead = read.Number-read.Half, read.Number+read.Half, true
		if sourer {
			p.PHLow = math.NaN()
		}
	case c != nil && c.PHMeter.Why == "":
		p.PHLow, p.PHHigh = c.PHMeter.Low, c.PHMeter.High
	}
	return p
}

// pouredOf adds up what the lines pour of each food.
func pouredOf(a *assay.Assay) map[food.ID]caution.Mass {
	all := map[food.ID]caution.Mass{}
	for _, p := range a.Doses {
		m := all[p.Food]
		all[p.Food] = caution.Mass{Serving: m.Serving + p.Serving, Batch: m.Batch + p.Batch}
	}
	return all
}

// bringersOf gives the foods of a serving that are known to bring a constituent, more of it
// than a trace, and those of which nobody says how much they hold.
func bringersOf(a *assay.Assay, id constituent.ID) (brought, unstated []food.ID) {
	for row := range a.Serving.Rows {
		for _, col := range a.Serving.Columns.Below(id) {
			p := a.Serving.Rows[row].Profile
			if of := p.Food.ID; a.Serving.Cell(row, col)[0] > 0 && !isTrace(p.Cell(id)) && !slices.Contains(brought, of) {
				brought = append(brought, of)
			}
		}
	}
	_, rows := a.Serving.Bound(id)
	for _, row := range rows {
		unstated = append(unstated, a.Serving.Rows[row].Profile.Food.ID)
	}
	return brought, unstated
}

// isTrace reports whether a work found no more than a trace.
func isTrace(c food.Cell) bool { return c.State == estimate.Trace || c.State == estimate.Below }

// mostAlcohol is the most alcohol that a serving can hold, in g. What nobody has stated of
// the alcohol of a food counts for nothing here: tables leave it out of a lemon, and state it
// where there is some. What a ferment may have made counts.
func mostAlcohol(a estimate.Amount, fermented bool) float64 {
	most := max(a.Mean, a.High)
	if end := max(a.WithBounds, a.UpTo); fermented && end > most {
		return end
	}
	return most
}
