package contrast

import (
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
)

// Contrast is the second of two drinks against the first.
type Contrast struct {
	Mass, Volume Liquid   // of a serving
	Figures      []Figure // of a serving, as asked for
	Liquids      []Liquid // of what is liquid of it
	Sweet, Sour  Noticed
	Changes      []Change // of the file, in its order
}

// Same reports whether nothing differs at all.
func (c *Contrast) Same() bool {
	return c.Mass.None() && c.Volume.None() &&
		!slices.ContainsFunc(c.Figures, func(f Figure) bool { return !f.None() }) &&
		!slices.ContainsFunc(c.Liquids, func(l Liquid) bool { return !l.None() })
}

// Find gives the figure of a constituent.
func (c *Contrast) Find(id constituent.ID) (Figure, bool) {
	for _, f := range c.Figures {
		if f.Constituent.ID == id {
			return f, true
		}
	}
	return Figure{}, false
}

// pair is two assays of one ensemble.
type pair struct {
	assays   [2]*assay.Assay
	restated map[string]bool // own foods of which the two files say otherwise, by code
}

// Of sets assays against each other that were run in one ensemble, with draws and chemistry.
func Of(a, b *assay.Assay, ids []constituent.ID) *Contrast {
	p := &pair{assays: [2]*assay.Assay{a, b}, restated: restated(a.Drink, b.Drink)}
	c := &Contrast{
		Mass:    wholly(Mass, a.Mass, b.Mass),
		Volume:  wholly(Volume, a.Volume, b.Volume),
		Liquids: p.liquids(), Changes: changes(a.Drink, b.Drink),
	}
	c.Figures = make([]Figure, len(ids))
	_ = estimate.InBlocks(len(ids), func(from, to int) error {
		for i := from; i < to; i++ {
			c.Figures[i] = p.figure(constituent.Must(ids[i]))
		}
		return nil
	})
	c.Sweet, c.Sour = p.sweet(), p.sour()
	return c
}

func (p *pair) pots() [2]*ledger.Pot { return [2]*ledger.Pot{p.assays[0].Serving, p.assays[1].Serving} }

// wholly is the difference of two results that are known wholly.
func wholly(kind Kind, a, b composition.Result) Liquid {
	return Liquid{Kind: kind, A: a, B: b, Difference: differenceOf(less(columnOf(b), columnOf(a)), 1)}
}

// columnOf is a result as a column.
func columnOf(r composition.Result) []float64 { return slices.Concat([]float64{r.Mean}, r.Draws) }

// restated tells which own foods two files state otherwise.
func restated(a, b *drink.Drink) map[string]bool {
	of := map[string]bool{}
	for i := range a.Foods {
		if other, ok := b.OwnFood(a.Foods[i].Code); ok && !slices.Equal(ownFood(&a.Foods[i]), ownFood(other)) {
			of[a.Foods[i].Code] = true
		}
	}
	return of
}
