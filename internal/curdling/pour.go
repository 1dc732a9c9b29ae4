package curdling

import (
	"fmt"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
	"sipsum/internal/unit"
)

// curdlingParts sorts the parts of a pour by whether they may curdle.
type curdlingParts struct {
	milk, others []int    // parts of the pour
	foods        []string // that may curdle
	protein      *Protein // that curdles first; nil if nobody knows of one of them
}

// thatCurdle looks at the protein of every row. What a component has curdled already is
// whey.
func (p Pour) thatCurdle() curdlingParts {
	var parts curdlingParts
	unknown := false
	for i, part := range p.Parts {
		milk := false
		for row, r := range part.Pot.Rows {
			protein, curdles := Of(r.Profile.Food)
			if !curdles || p.Curdled(r) || part.Pot.CentralOf(row, constituent.Protein) <= 0 {
				continue
			}
			milk = true
			parts.foods = append(parts.foods, r.Profile.Food.ID.String())
			switch {
			case protein == nil:
				unknown = true
			case parts.protein == nil || protein.At(p.Celsius).High > parts.protein.At(p.Celsius).High:
				parts.protein = protein
			}
		}
		if milk {
			parts.milk = append(parts.milk, i)
		} else {
			parts.others = append(parts.others, i)
		}
	}
	if unknown {
		parts.protein = nil
	}
	return parts
}

// noEstimate says why a part has no ions to count on, and the reading to take.
type noEstimate struct{ why, do string }

// dissolvedPart is a part of the build as solutions, of its amount in a serving.
type dissolvedPart struct {
	Part
	open   bool    // nobody has stated the acids of a food of it
	lowest float64 // pH that was titrated; 0 if nothing was
}

// dissolve gives a part of the pour as solutions, or what keeps it from being one.
func (p Pour) dissolve(lab *acidity.Laboratory, of PourPart, protein *Protein, n int) (dissolvedPart, *noEstimate) {
	pot, name := of.Pot, of.Name
	if why := p.buffersUnseen(pot); why != "" {
		return dissolvedPart{}, &noEstimate{name + ": " + why, titrate(of, protein)}
	}
	in := lab.IonsOf(pot, n)
	if len(in.Bare) > 0 {
		return dissolvedPart{}, &noEstimate{"potassium unknown of " + note.Listed(in.Bare), "measure the pH of " + name}
	}
	band := protein.At(p.Celsius)
	part := dissolvedPart{Part: Part{Grams: pot.Mass()[:n]}, open: len(in.Unknown) > 0}
	for _, t := range in.Titrated {
		part.lowest = max(part.lowest, t.Lowest)
		switch {
		case t.Lowest > band.Low:
			return part, &noEstimate{fmt.Sprintf("the titration of %s ends at pH %.1f, and curdling begins below", t.Of, t.Lowest), titrate(of, protein)}
		case t.Highest < band.High:
			return part, &noEstimate{fmt.Sprintf("the titration of %s ends at pH %.1f, and curdling begins above", t.Of, t.Highest), fmt.Sprintf("titrate %s with base up to pH %.1f", name, band.High)}
		}
	}
	for d := range n {
		sol := acid.New(0)
		in.Fill(sol, d)
		part.Solutions = append(part.Solutions, sol)
	}
	return part, nil
}

// titrate says how to take the titration that a part lacks, as far down as any
// pour may need.
func titrate(of PourPart, p *Protein) string {
	how := fmt.Sprintf("titrate %s: 10 g of it with acid of 0.1 mol/l, a little at a time, down to pH %.1f; write measured: {titration: [[0 ml, pH], …], acid: 0.1 mol/l, sample: 10 g}",
		of.Name, p.At(p.Coldest()).Low)
	if !of.House {
		how += " under a component made of it alone"
	}
	return how
}

// buffersUnseen tells why a part's composition does not say how it buffers, if so:
// what curdles buffers itself, and so does other protein, counted in the drink.
func (p Pour) buffersUnseen(part *ledger.Pot) string {
	protein := 0.0
	for row, r := range part.Rows {
		if acidity.Titrated(part, row) {
			continue
		}
		grams := part.CentralOf(row, constituent.Protein)
		if _, curdles := Of(r.Profile.Food); curdles && grams > 0 && !p.Curdled(r) {
			return "its protein and salts buffer, and no table says how much"
		}
		protein += grams
	}
	if share := unit.Hundred * protein / p.Mass; share > acidity.SpanOf("protein").High {
		return fmt.Sprintf("%.1f g of protein in 100 g of the drink buffer as its acids do", share)
	}
	return ""
}

// sourest gives the part that needs the most base to come to a pH; found is false if
// none does.
func sourest(among []int, parts []Part, pH float64) (sourest int, found bool) {
	s, err := acid.NewSolver(BenchCelsius)
	if err != nil {
		return 0, false
	}
	most := 0.0
	for _, i := range among {
		sol := parts[i].Solutions[0]
		if base, err := s.Base(sol, pH, acid.State{}); err == nil && base*sol.Solvent > most {
			most, sourest = base*sol.Solvent, i
		}
	}
	return sourest, most > 0
}

// pooled adds one part to another.
func pooled(a, b Part) Part {
	if a.Grams == nil {
		return b
	}
	sum := Part{}
	for d := range b.Grams {
		sol := acid.New(0)
		sol.Pour(a.Solutions[d], 1)
		sol.Pour(b.Solutions[d], 1)
		sum.Grams, sum.Solutions = append(sum.Grams, a.Grams[d]+b.Grams[d]), append(sum.Solutions, sol)
	}
	return sum
}
