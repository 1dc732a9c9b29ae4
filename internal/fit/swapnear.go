package fit

import (
	"cmp"
	"math"
	"slices"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/food"
	"sipsum/internal/taste"
	"sipsum/internal/unit"
)

const titratable constituent.ID = "titratable"

// near is a food that may do, with how much of it may.
type near struct {
	food  *food.Food
	times float64 // of the mass of the food in whose place it stands
	far   float64 // in what a judge notices, as composition foretells
	asked bool    // nobody has looked whether it holds what it is to be without

	smelled bool // most of its acid is acetic, and that of the other food is not
}

// near gives the foods of a pool that come nearest by composition alone: of the same use, with what
// the food brings, and without what is asked.
func (s *swap) near(pool []*food.Food) []near {
	of := s.portrait(s.Of)
	var list []near
	for _, f := range pool {
		if f.ID == s.Of.ID || f.Carbonated() != s.Of.Carbonated() { // gas is held
			continue
		}
		c := s.portrait(f)
		if !of.stands(c) {
			continue
		}
		n := near{food: f}
		is, may, open := s.holds(itemOf(f))
		if is {
			continue
		}
		s.Looked++
		lead, read := s.known(c)
		if n.times, n.far = s.nearest(of, c, read != ""); read != "" || may {
			if may {
				read = "what it is made of: its name leaves open whether it holds what it is to be without"
			}
			if n.far <= 1 && f.Group == s.Of.Group {
				s.Would = append(s.Would, Would{f, read, n.far})
			}
			continue
		}
		n.smelled = c.smelled() && !of.smelled()
		if n.asked = open; lead > 0 && !math.IsInf(n.far, 0) {
			list = append(list, n)
		}
	}
	slices.SortStableFunc(list, func(a, b near) int { return cmp.Compare(a.far, b.far) })
	slices.SortStableFunc(s.Would, func(a, b Would) int { return cmp.Compare(a.far, b.far) })
	s.Would = s.Would[:min(len(s.Would), mostWould)]
	return list[:min(len(list), mostTried)]
}

// portrait is what a gram of a food holds of what is held.
type portrait struct {
	*food.Profile
	traits []float64 // by Kept: grams of its constituent, or of sucrose
	less   float64
}

func (s *swap) portrait(f *food.Food) portrait {
	p := portrait{Profile: food.Enter(f, nil)}
	if p.Food.ID == s.Of.ID {
		for _, l := range s.Lines {
			p.Profile = s.recipe.Lines[l.Path].Profile // with what its line lends it
		}
	}
	for _, t := range s.Kept {
		p.traits = append(p.traits, p.of(t))
	}
	if s.Less != nil {
		p.less = p.grams(s.Less.ID)
	}
	return p
}

// grams is what is known of a constituent, or of its parts.
func (p portrait) grams(id constituent.ID) (sum float64) {
	if c := p.Cell(id); c.Known {
		return c.Amount
	}
	for _, part := range constituent.Sums().Leaves(id) {
		if c := p.Cell(part.ID); c.Known && part.ID != id {
			sum += c.Amount
		}
	}
	return sum
}

func (p portrait) of(t Trait) float64 {
	switch t.Quality {
	case Sweet:
		return taste.AsSucrose(p.grams, 0)
	case Size:
		return 1
	case Sour:
		if v, ok := p.Food.Value(titratable); ok && food.Stated(v.Amount) {
			return v.Amount / unit.Hundred
		}
	}
	return p.grams(t.Of)
}

// stands reports whether a food is used as another is (data/swap_uses.csv): of its group, or of one of the same use
// that pours where it pours. Fat that holds water in it does not mix with a drink as water that holds fat does.
// A powder that leaves a rest does not stand for what pours.
func (p portrait) stands(c portrait) bool {
	if p.Food.Facts().Liquid && !p.powder() && c.powder() && !c.dissolves() {
		return false
	}
	if p.Food.Group == c.Food.Group {
		return true
	}
	shared := slices.ContainsFunc(uses()[p.Food.Group], func(use string) bool { return slices.Contains(uses()[c.Food.Group], use) })
	return shared && p.pours() == c.pours() && (c.wet() || !p.wet())
}

// uses are those of a group of foods.
var uses = sync.OnceValue(func() map[string][]string {
	all := map[string][]string{}
	for _, row := range embedded.Rows("swap_uses.csv") {
		group := row.Text("group")
		if _, ok := food.GroupOf(group); !ok {
			row.Fail("there is no group of foods called %s", group)
		}
		all[group] = append(all[group], row.Text("use"))
	}
	return all
})

func (p portrait) pours() bool { return p.Food.Facts().Liquid || p.dissolves() }

// powder reports whether a food is known to hold so little that is liquid that it does not pour.
func (p portrait) powder() bool {
	liquid := p.grams(constituent.Water) + p.grams(constituent.Alcohol)
	return p.Cell(constituent.Water).Known && liquid < unit.LimitOf("water of what is a powder", "share").High && 2*p.grams(constituent.Fat) < 1
}

// smelled reports whether so much of the acid of a food is acetic that it is smelled.
func (p portrait) smelled() bool {
	const acetic constituent.ID = "ACEAC"
	all := p.grams(constituent.OrganicAcids)
	return all > 0 && p.grams(acetic) >= all*unit.LimitOf("acid that is smelled", "share").Low
}

// dissolves reports whether a food goes into a liquid without a rest.
func (p portrait) dissolves() bool {
	if p.Food.Chemical {
		return true
	}
	sum := 0.0
	for _, id := range []constituent.ID{constituent.Sugar, constituent.Polyols, constituent.OrganicAcids, constituent.Alcohol} {
		sum += p.grams(id)
	}
	return sum >= (1-p.grams(constituent.Water))*unit.LimitOf("what goes into a liquid without a rest", "share").Low
}

func (p portrait) wet() bool {
	return p.grams(constituent.Fat) <= p.grams(constituent.Water)+p.grams(constituent.Sugar)
}

// known gives what a food has of what the other one brings most, and what nobody has measured of that
// and of what is to be less.
func (s *swap) known(c portrait) (lead float64, read string) {
	if s.even {
		return 1, ""
	}
	ids := []constituent.ID{leadOf(s.Brings[0])}
	if s.Less != nil {
		ids = append(ids, s.Less.ID)
	}
	for i, t := range s.Kept {
		if t.Figure == s.Brings[0].Figure {
			lead = c.traits[i]
		}
	}
	for _, id := range ids {
		if cell := c.Cell(id); !cell.Known && !(lead > 0 && id == ids[0]) && cell.Bound != 0 {
			if id == constituent.OrganicAcids {
				return lead, "titratable acidity, or its acids"
			}
			return lead, constituent.Must(id).Words()
		}
	}
	return lead, ""
}

func leadOf(t Trait) constituent.ID {
	switch t.Quality {
	case Sweet:
		return constituent.Sugar
	case Size:
		return constituent.Water
	}
	return t.Of
}

// nearest finds at how many times the mass a food comes nearest, and how far that is: the most of what
// a judge would notice, where steps keep of it what they keep of the food that it stands for. What it is there for
// is the most that it may be where nobody has measured it.
func (s *swap) nearest(of, c portrait, open bool) (times, far float64) {
	within := unit.LimitOf("mass of a swap", "times")
	if s.even {
		within.Low, within.High = 1, 1
	}
	const stride = 1.05
	far = math.Inf(1)
	for k := within.Low; k <= within.High; k *= stride {
		if s.Less != nil && c.less*k > of.less*unit.LimitOf("what a swap for less brings", "share").High {
			continue
		}
		most := 0.0
		for i, t := range s.Kept {
			change := 0.0
			has := c.traits[i]
			if open && t.Figure == s.Brings[0].Figure {
				if has = c.Cell(leadOf(t)).Bound; !(has > 0) {
					return 0, 1 // nothing bounds it: its kind alone speaks for it
				}
			}
			switch have := of.traits[i]; {
			case have > 0:
				change = t.Share * (k*has/have - 1)
			case has > 0:
				change = k * has * s.grams / s.glassOf(t)
			}
			most = max(most, t.noticed(1+change))
		}
		if most < far {
			times, far = k, most
		}
	}
	return times, far
}

// glassOf is what a serving holds of a trait, in grams.
func (s *swap) glassOf(t Trait) (sum float64) {
	for row := range s.central.Serving.Rows {
		if t.Quality == Sweet {
			sum += sucroseOf(s.central.Serving, row, 0)
			continue
		}
		sum += gramsOf(s.central.Serving, row, t.Of)
	}
	return sum
}

// noticed is how many times what a judge notices a share of a figure is off.
func (t Trait) noticed(share float64) float64 {
	if share >= 1 {
		return (share - 1) / (t.Most - 1)
	}
	return (1 - share) / (1 - t.Least)
}
