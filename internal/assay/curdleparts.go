package assay

import (
	"fmt"
	"slices"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/curdling"
	"sipsum/internal/drink"
	"sipsum/internal/ledger"
)

// curdlingParts sorts the lines of the build by whether they may curdle.
type curdlingParts struct {
	milk, others []PartID
	foods        []string          // that may curdle
	protein      *curdling.Protein // that curdles first; nil if nobody knows of one of them
}

// partsThatCurdle looks at the protein of every row. What a component has curdled
// already is whey.
func (a *Assay) partsThatCurdle(celsius float64) curdlingParts {
	var parts curdlingParts
	unknown := false
	for row, r := range a.Serving.Rows {
		protein, curdles := curdling.Of(r.Profile.Food)
		if !curdles || a.curdled(r) || a.Serving.Of(row, constituent.Protein)[0] <= 0 {
			continue
		}
		if id := partOf(r); !slices.Contains(parts.milk, id) {
			parts.milk = append(parts.milk, id)
		}
		parts.foods = append(parts.foods, r.Profile.Food.ID.String())
		switch {
		case protein == nil:
			unknown = true
		case parts.protein == nil || protein.At(celsius).High > parts.protein.At(celsius).High:
			parts.protein = protein
		}
	}
	if unknown {
		parts.protein = nil
	}
	for _, id := range a.parts() {
		if !slices.Contains(parts.milk, id) {
			parts.others = append(parts.others, id)
		}
	}
	return parts
}

// curdled reports whether a component that a row came through was curdled.
func (a *Assay) curdled(r ledger.Row) bool {
	for i := range a.Drink.Components {
		c := &a.Drink.Components[i]
		isCurdle := func(s drink.Step) bool { _, ok := s.(*drink.Curdle); return ok }
		if slices.Contains(r.Path, c.Name) && slices.ContainsFunc(c.Steps, isCurdle) {
			return true
		}
	}
	return false
}

// noEstimate says why a part has no ions to count on, and the reading to take.
type noEstimate struct{ why, do string }

// dissolvedPart is a part of the build as solutions, of its amount in a serving.
type dissolvedPart struct {
	curdling.Part
	open   bool    // nobody has stated the acids of a food of it
	lowest float64 // pH that was titrated; 0 if nothing was
}

func (a *Assay) dissolvePart(w *walk, id PartID, parts *curdlingParts, celsius float64, n int) (dissolvedPart, *noEstimate) {
	pot, name, house := a.only(id), a.names[id], id.Component != ""
	if why := a.buffersUnseen(w, pot); why != "" {
		return dissolvedPart{}, &noEstimate{name + ": " + why, titrate(name, house, parts.protein)}
	}
	in := w.ionsOf(pot, n)
	if len(in.bare) > 0 {
		return dissolvedPart{}, &noEstimate{"potassium unknown of " + listed(in.bare), "measure the pH of " + name}
	}
	band := parts.protein.At(celsius)
	part := dissolvedPart{Part: curdling.Part{Grams: pot.Mass()[:n]}, open: len(in.unknown) > 0}
	for _, t := range in.titrated {
		part.lowest = max(part.lowest, t.lowest)
		switch {
		case t.lowest > band.Low:
			return part, &noEstimate{fmt.Sprintf("the titration of %s ends at pH %.1f, and curdling begins below", t.of, t.lowest), titrate(name, house, parts.protein)}
		case t.highest < band.High:
			return part, &noEstimate{fmt.Sprintf("the titration of %s ends at pH %.1f, and curdling begins above", t.of, t.highest), fmt.Sprintf("titrate %s with base up to pH %.1f", name, band.High)}
		}
	}
	for d := range n {
		sol := acid.New(0)
		in.fill(sol, d)
		part.Solutions = append(part.Solutions, sol)
	}
	return part, nil
}

// titrate says how to take the titration that a part lacks, as far down as any
// pour may need.
func titrate(name string, house bool, p *curdling.Protein) string {
	how := fmt.Sprintf("titrate %s: 10 g of it with acid of 0.1 mol/l, a little at a time, down to pH %.1f; write measured: {titration: [[0 ml, pH], …], acid: 0.1 mol/l, sample: 10 g}",
		name, p.At(p.Coldest()).Low)
	if !house {
		how += " under a component made of it alone"
	}
	return how
}

// buffersUnseen tells why a part's composition does not say how it buffers, if so:
// what curdles buffers itself, and so does other protein, counted in the drink.
func (a *Assay) buffersUnseen(w *walk, part *ledger.Pot) string {
	protein := 0.0
	for row, r := range part.Rows {
		if w.titrated(part, row) {
			continue
		}
		grams := part.Of(row, constituent.Protein)[0]
		if _, curdles := curdling.Of(r.Profile.Food); curdles && grams > 0 && !a.curdled(r) {
			return "its protein and salts buffer, and no table says how much"
		}
		protein += grams
	}
	const hundred = 100
	if share := hundred * protein / a.Serving.Central(constituent.Mass); share > spanOf("protein").high {
		return fmt.Sprintf("%.1f g of protein in 100 g of the drink buffer as its acids do", share)
	}
	return ""
}

// sourest gives the part that needs the most base to come to a pH; found is false if
// none does.
func sourest(ids []PartID, parts map[PartID]curdling.Part, pH float64) (sourest PartID, found bool) {
	s, err := acid.NewSolver(curdling.BenchCelsius)
	if err != nil {
		return PartID{}, false
	}
	most := 0.0
	for _, id := range ids {
		sol := parts[id].Solutions[0]
		if base, err := s.Base(sol, pH, acid.State{}); err == nil && base*sol.Solvent > most {
			most, sourest = base*sol.Solvent, id
		}
	}
	return sourest, most > 0
}

// pooled adds one part to another.
func pooled(a, b curdling.Part) curdling.Part {
	if a.Grams == nil {
		return b
	}
	sum := curdling.Part{}
	for d := range b.Grams {
		sol := acid.New(0)
		sol.Pour(a.Solutions[d], 1)
		sol.Pour(b.Solutions[d], 1)
		sum.Grams, sum.Solutions = append(sum.Grams, a.Grams[d]+b.Grams[d]), append(sum.Solutions, sol)
	}
	return sum
}
