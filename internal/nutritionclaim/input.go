package nutritionclaim

import (
	"math"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/unit"
)

// Input is a drink as far as claims go.
type Input struct {
	Rules string

	// Amounts in the unit of the vocabulary; energy by the rules of the card. What is not in
	// them is unknown, without a bound.
	Per100g   Amounts
	Per100ml  Amounts // nil if the volume is not known
	Serving   Amounts
	ServingMl float64

	Strength Figure // % by volume
	Foods    []Food // that are drunk
}

// Amounts are figures by constituent.
type Amounts map[constituent.ID]Figure

// Figure is how much there is of something, between the ends of its interval.
type Figure struct {
	Low     float64  // the lower end, every unknown part at nothing
	Mean    float64  // of what is known
	High    float64  // the upper end, every unknown part at nothing
	Most    float64  // the upper end, every unknown part at its most; NaN if one has no bound
	Known   bool     // false: nothing is known of it
	Unknown []string // the foods of which it is not known
}

// Food is an ingredient.
type Food struct {
	Name    string
	Group   string           // of ours; empty if nobody says
	Reduced bool             // a step took water from it
	Lacks   []constituent.ID // of which it is known to have none
}

// of gives the figure of a constituent.
func (a Amounts) of(id constituent.ID) Figure {
	if f, ok := a[id]; ok {
		return f
	}
	return Figure{Most: math.NaN()}
}

// sum adds constituents up, in a unit of which a gram has perGram; all of them together are
// no more than the whole, if there is one.
func (a Amounts) sum(ids []constituent.ID, within constituent.ID, perGram float64) Figure {
	total := Figure{}
	for _, id := range ids {
		f := a.of(id)
		if c := constituent.Must(id); c.PerGram > 0 {
			f = f.times(perGram / c.PerGram)
		}
		total = total.plus(f)
	}
	if within == "" {
		return total
	}
	whole := a.of(within).times(perGram / constituent.Must(within).PerGram)
	if math.IsNaN(total.Most) || whole.Most < total.Most {
		total.Most = max(whole.Most, total.Low)
		total.High = min(total.High, total.Most)
	}
	return total
}

// partly reports whether what is unknown could make it more than what is known does.
func (f Figure) partly() bool { return !(f.Most <= f.High*(1+unit.Closeness)) } // NaN too

func (f Figure) plus(g Figure) Figure {
	f.Low, f.Mean, f.High, f.Most = f.Low+g.Low, f.Mean+g.Mean, f.High+g.High, f.Most+g.Most
	f.Known = f.Known || g.Known
	f.Unknown = merged(f.Unknown, g.Unknown)
	return f
}

func (f Figure) times(factor float64) Figure {
	f.Low, f.Mean, f.High, f.Most = f.Low*factor, f.Mean*factor, f.High*factor, f.Most*factor
	return f
}

// over divides by a figure, each end by the end of the other that is against it. Nothing of
// nothing is nothing.
func (f Figure) over(g Figure) Figure {
	ratio := func(a, b float64) float64 {
		if a == 0 {
			return 0
		}
		return a / b
	}
	r := Figure{Mean: ratio(f.Mean, g.Mean), High: ratio(f.High, g.Low), Most: ratio(f.Most, g.Low), Known: f.Known && g.Known, Unknown: merged(f.Unknown, g.Unknown)}
	if !math.IsNaN(g.Most) {
		r.Low = ratio(f.Low, g.Most)
	}
	return r
}

// merged joins two lists of names, each name once.
func merged(a, b []string) []string {
	all := slices.Clone(a)
	for _, name := range b {
		if !slices.Contains(all, name) {
			all = append(all, name)
		}
	}
	return all
}
