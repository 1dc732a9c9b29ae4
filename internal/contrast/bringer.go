package contrast

import (
	"math"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/recipe"
)

// Bringer is what brings most of a difference: a part of the serving, or one food of it where
// both drinks pour as much of the part.
type Bringer struct {
	Part recipe.PartID
	Name string     // of the part
	Food *food.Food // nil: the part
	Mean float64
	In   [2]bool // in which of the drinks it is
}

// mostly finds what brings most of a difference, given what each row has in grams.
func (p *pair) mostly(byRow [2][]float64, mean, scale float64) *Bringer {
	if mean == 0 || math.IsNaN(mean) {
		return nil
	}
	part := p.most(byRow, mean, func(r ledger.Row) Bringer { return Bringer{Part: partOf(r)} }, nil)
	if part == nil {
		return nil
	}
	var mass [2]float64
	for side, a := range p.assays {
		if c := component(a, part.Part); c != nil {
			part.Name, mass[side] = c.Name, c.Mass.Mean
		}
	}
	if part.Part.Component != "" && near(mass[0], mass[1]) {
		within := func(r ledger.Row) bool { return partOf(r) == part.Part }
		inner := p.most(byRow, mean, func(r ledger.Row) Bringer { return Bringer{Part: part.Part, Name: part.Name, Food: r.Profile.Food} }, within)
		if inner != nil {
			part = inner
		}
	}
	part.Mean *= scale
	return part
}

// most adds rows up by what brings them, and gives that which brings most in the direction of the
// difference. Foods are told apart by their ids.
func (p *pair) most(byRow [2][]float64, mean float64, of func(ledger.Row) Bringer, within func(ledger.Row) bool) *Bringer {
	var list []*Bringer
	for side, pot := range p.pots() {
		sign := float64(2*side - 1) // the first is taken away
		for row, r := range pot.Rows {
			if within != nil && !within(r) {
				continue
			}
			b := of(r)
			i := slices.IndexFunc(list, func(have *Bringer) bool {
				return have.Part == b.Part && (b.Food == nil || have.Food.ID == b.Food.ID)
			})
			if i < 0 {
				i = len(list)
				list = append(list, &b)
			}
			list[i].Mean += sign * byRow[side][row]
			list[i].In[side] = true
		}
	}
	var best *Bringer
	for _, b := range list {
		if b.Mean*mean > 0 && (best == nil || math.Abs(b.Mean) > math.Abs(best.Mean)) {
			best = b
		}
	}
	return best
}

// partOf gives the part of a serving that a row belongs to.
func partOf(r ledger.Row) recipe.PartID {
	if len(r.Path) > 0 {
		return recipe.PartID{Component: r.Path[0]}
	}
	return recipe.PartID{Food: r.Profile.Food.ID}
}

func component(a *assay.Assay, id recipe.PartID) *assay.Component {
	for i := range a.Components {
		if a.Components[i].ID == id {
			return &a.Components[i]
		}
	}
	return nil
}
