package batch

import "sipsum/internal/unit"

// measured reports whether an amount is of a mass or a volume that somebody measures.
func (w Weighed) measured() bool {
	return w.Amount.Measure.Kind == unit.Mass || w.Amount.Measure.Kind == unit.Volume
}

// all lists what is weighed: of the build that of one serve.
func (b *Batch) all() []*Weighed {
	var list []*Weighed
	for i := range b.Pots {
		list = append(list, b.Pots[i].all()...)
	}
	for _, pours := range [][]Pour{b.Build, b.Garnish} {
		for i := range pours {
			list = append(list, &pours[i].Weighed)
		}
	}
	return append(list, moves(b.Finish)...)
}

// Weighings lists what goes into pots and one glass.
func (b *Batch) Weighings() []Weighed {
	var list []Weighed
	for i := range b.Pots {
		for _, w := range b.Pots[i].all() {
			list = append(list, *w)
		}
	}
	for _, p := range b.Build {
		list = append(list, p.Weighed)
	}
	for _, p := range b.Garnish {
		list = append(list, p.Weighed)
	}
	return list
}

// all lists what is weighed of a pot.
func (p *Pot) all() []*Weighed {
	var list []*Weighed
	for i := range p.Lines {
		list = append(list, &p.Lines[i])
	}
	return append(list, moves(p.Moves)...)
}

// moves lists what is weighed in some steps.
func moves(from []Move) []*Weighed {
	var list []*Weighed
	for i := range from {
		for j := range from[i].Lines {
			list = append(list, &from[i].Lines[j])
		}
		for j := range from[i].Amounts {
			list = append(list, &from[i].Amounts[j])
		}
	}
	return list
}
