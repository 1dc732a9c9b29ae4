package titration

import (
	"strings"

	"gonum.org/v1/gonum/stat"

	"sipsum/internal/acid"
	"sipsum/internal/burette"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/unit"
)

// Told is what a titration tells of a pot beside what its recipe expects. Amounts are of 100 g of
// the liquid.
type Told struct {
	Path   []string // of the component; none: the drink
	Points int
	Acids  []Acid
	Joined []Joined // acids that the curve does not tell apart

	Nameless *Quantity // mmol of protons of an acid without a name; nil: none was asked for
	Strong   Quantity  // mmol of charge on metals, less chloride
	Zero     Quantity  // pH that the meter shows too much at pH 7
	Slope    Quantity  // of the meter
	Base     Quantity  // what sample and base bring over what is written

	Scatter     float64 // of the points over what their spreads allow; at least 1
	Adjusted    bool    // the meter is as an adjusted one is
	TooFew      bool    // its points tell nothing of the acids yet, which stand as the recipe has them
	Contradicts bool    // no mixture of the recipe's acids titrates like this

	look   *burette.Outlook
	perMl  float64 // mol of base
	off    float64 // mol: how a volume was read
	poured float64 // ml up to the last point
}

// at keeps where the titration stands.
func (t Told) at(b sampled) Told {
	last := b.points[len(b.points)-1]
	t.perMl, t.off, t.poured = b.perMl, last.Off, last.Base/b.perMl
	return t
}

// Acid is one of the acids that were asked for, g in 100 g.
type Acid struct {
	*constituent.Constituent
	Expected estimate.Summary // by the recipe
	Read     estimate.Summary // by the curve beside it
	Used     estimate.Summary // within its own range, or between the two where they contradict each other
	Held     bool             // what was read is beyond its range
}

// Quantity is something that is asked for beside the acids, before the curve and after it.
type Quantity struct{ Expected, Read estimate.Summary }

// Joined is acids whose sum the curve tells and not the parts, by place of Acids.
type Joined struct {
	Acids       []int
	Correlation float64 // the least between two of them
	Sum         estimate.Summary
}

// Component gives the component that was titrated; empty: the drink.
func (t Told) Component() string { return strings.Join(t.Path, "") }

// begun is a titration whose points are too few to tell acids by.
func begun(m *drink.Measured, a asked, look *burette.Outlook, k burette.Kit) Told {
	t := Told{Path: m.Of(), Points: len(m.Titration), Scatter: 1, Adjusted: true, TooFew: true, look: look}
	for _, s := range suspects(a) {
		t.Acids = append(t.Acids, Acid{Constituent: s.Constituent, Expected: s.Recipe, Read: s.Recipe, Used: s.Recipe})
	}
	same := func(column []float64, by float64) Quantity {
		s := estimate.Summarise(times(column, by))
		return Quantity{s, s}
	}
	milli := unit.Hundred / a.grams * unit.Kilo
	if a.liquid.Nameless != nil {
		q := same(a.liquid.Nameless, milli)
		t.Nameless = &q
	}
	t.Strong, t.Zero, t.Slope, t.Base = same(a.liquid.Strong, milli), same(k.Zero, 1), same(k.Slope, 1), same(k.Factor, 1/k.Factor[0])
	return t
}

// toldOf summarises a posterior. used is mol in the sample, by acid and draw, as the pot has it.
func toldOf(p *burette.Posterior, m *drink.Measured, a asked, k burette.Kit, read, used [][]float64) Told {
	t := Told{Path: m.Of(), Points: len(m.Titration), Scatter: p.Scatter, Adjusted: p.Adjusted, Contradicts: p.Contradicts(), look: p.Outlook()}
	per := unit.Hundred / a.grams
	for i, of := range a.liquid.Acids {
		grams := func(mol []float64) []float64 { return times(mol, acid.All()[of.Acid].Molar*per) }
		t.Acids = append(t.Acids, Acid{
			Constituent: constituent.Must(acid.All()[of.Acid].Constituent),
			Expected:    estimate.Summarise(grams(of.Mol)), Read: estimate.Summarise(grams(read[i])), Used: estimate.Summarise(grams(used[i])),
		})
	}
	for _, group := range burette.Together(read) {
		t.Joined = append(t.Joined, joinedOf(group, a, used, per))
	}
	milli := per * unit.Kilo
	if a.liquid.Nameless != nil {
		t.Nameless = &Quantity{estimate.Summarise(times(a.liquid.Nameless, milli)), estimate.Summarise(times(p.Nameless, milli))}
	}
	t.Strong = Quantity{estimate.Summarise(times(a.liquid.Strong, milli)), estimate.Summarise(times(p.Strong, milli))}
	t.Zero = Quantity{estimate.Summarise(k.Zero), estimate.Summarise(p.Zero)}
	t.Slope = Quantity{estimate.Summarise(k.Slope), estimate.Summarise(p.Slope)}
	over := 1 / k.Factor[0]
	t.Base = Quantity{estimate.Summarise(times(k.Factor, over)), estimate.Summarise(times(p.Factor, over))}
	return t
}

func joinedOf(group []int, a asked, used [][]float64, per float64) Joined {
	j := Joined{Acids: group, Correlation: 1}
	sum := make([]float64, len(used[0]))
	for _, i := range group {
		for d, x := range used[i] {
			sum[d] += x * acid.All()[a.liquid.Acids[i].Acid].Molar * per
		}
		for _, other := range group {
			if other != i {
				j.Correlation = min(j.Correlation, stat.Correlation(used[i][1:], used[other][1:], nil))
			}
		}
	}
	j.Sum = estimate.Summarise(sum)
	return j
}

// times multiplies a column.
func times(column []float64, by float64) []float64 {
	out := make([]float64, len(column))
	for d, x := range column {
		out[d] = x * by
	}
	return out
}
