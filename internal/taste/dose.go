package taste

import (
	"math"

	"sipsum/internal/composition"
	"sipsum/internal/constituent"
)

// Dose is one compound beside the thresholds that are published for it.
type Dose struct {
	Taste       Taste
	Constituent *constituent.Constituent
	Amount      composition.Result // mg per litre
	Why         string             // no threshold, and why; or why the amount is withheld
	Neutral     bool               // it is published to have no taste
	Low, High   float64            // thresholds in mg of it per litre; 0 if there is none
	Times       Times
	Sources     []string
}

// Times is a dose over its thresholds: from the low end of the amount over the highest threshold
// to the high end over the lowest. UpTo has what is unknown at its most, NaN if nothing bounds it.
type Times struct{ Low, High, UpTo float64 }

// Place says where a dose lies among its thresholds.
type Place int

// The places.
const (
	Unplaced Place = iota // no threshold, or the amount is open
	Below                 // below the lowest, with all that is unknown
	Among                 // it depends on whose threshold
	Above                 // above the highest
)

// Place says where the dose lies.
func (d Dose) Place() Place {
	switch {
	case d.High == 0:
		return Unplaced
	case d.Times.Low >= 1:
		return Above
	case d.Times.UpTo < 1:
		return Below
	case d.Amount.Unknown, math.IsNaN(d.Times.UpTo) && d.Times.High < 1:
		return Unplaced
	}
	return Among
}

// doses gives every compound that the liquid has or may have.
func (g Glass) doses() []Dose {
	var ids []constituent.ID
	for _, t := range thresholds() {
		ids = append(ids, t.constituent.ID)
	}
	figures := g.figures(ids, perLitre)
	var list []Dose
	for _, t := range thresholds() {
		f, ok := figures.Find(t.constituent.ID)
		if !ok || !g.carried(t.constituent.ID) || f.Mean == 0 && !f.Partial {
			continue
		}
		list = append(list, g.dose(t, f.Result))
	}
	return list
}

// dose sets an amount per litre beside its thresholds.
func (g Glass) dose(t *threshold, amount composition.Result) Dose {
	d := Dose{Taste: t.taste, Constituent: t.constituent, Amount: inMilligrams(amount, t.constituent), Neutral: t.neutral, Low: t.low, High: t.high, Sources: t.sources}
	if t.high == 0 && !t.neutral {
		d.Why = t.why
	}
	if t.taste == Sparkling && g.Chemistry != nil && g.Chemistry.CO2.Unknown {
		d.Amount = withheld("mg", "").Result
		d.Why, d.Times.UpTo = "how much gas is in it nobody has stated", math.NaN()
		return d
	}
	switch {
	case t.high == 0:
	case d.Amount.Unknown: // of what is known there is none
		d.Times = Times{0, 0, d.Amount.UpTo / t.low}
	default:
		d.Times = Times{d.Amount.Low / t.high, d.Amount.High / t.low, d.Amount.UpTo / t.low}
	}
	return d
}

// inMilligrams is a figure in mg.
func inMilligrams(r composition.Result, c *constituent.Constituent) composition.Result {
	scale := milli / c.PerGram
	for _, p := range []*float64{&r.Mean, &r.SD, &r.Low, &r.High, &r.WithBounds, &r.UpTo} {
		*p *= scale
	}
	draws := make([]float64, len(r.Draws))
	for i, x := range r.Draws {
		draws[i] = x * scale
	}
	r.Draws, r.Unit = draws, "mg"
	return r
}
