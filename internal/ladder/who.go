package ladder

import (
	"slices"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// Part is a component of a build, or a food that it pours, with its rows of a serving.
type Part struct {
	Component string // its name in the drink file; empty: a food
	Name      string // by which readers tell it from the others
	Rows      []int
}

// Serving is what sentences are about.
type Serving struct {
	Pot   *ledger.Pot
	Parts []Part
	Ml    float64 // not more than 0: nobody knows
}

// speaker is somebody who may bring something: an ingredient through all its pots, or a component.
type speaker struct {
	rows      []int
	food      *food.Food // nil: a component
	word      string
	pots      []string // that an ingredient comes through; empty: the build pours it
	plain     bool     // one of them holds nothing beside it, so that none need be named
	component string
}

// ingredients are the foods of a serving, in the order of its rows.
func (s Serving) ingredients() []speaker {
	words, alone := Words(s.Pot), s.alone()
	var list []speaker
	at := map[food.ID]int{}
	for row, r := range s.Pot.Rows {
		f := r.Profile.Food
		i, have := at[f.ID]
		if !have {
			i = len(list)
			at[f.ID] = i
			list = append(list, speaker{food: f, word: words[f.ID]})
		}
		list[i].rows = append(list[i].rows, row)
		pot := ""
		if len(r.Path) > 0 {
			pot = r.Path[0]
		}
		if !slices.Contains(list[i].pots, pot) {
			list[i].pots = append(list[i].pots, pot)
			list[i].plain = list[i].plain || pot == "" || alone[pot]
		}
	}
	return list
}

// alone lists the components that hold no more than one food beside water.
func (s Serving) alone() map[string]bool {
	holds := map[string]map[food.ID]bool{}
	for _, r := range s.Pot.Rows {
		if len(r.Path) == 0 || r.Profile.Food.Facts().Water {
			continue
		}
		if holds[r.Path[0]] == nil {
			holds[r.Path[0]] = map[food.ID]bool{}
		}
		holds[r.Path[0]][r.Profile.Food.ID] = true
	}
	alone := map[string]bool{}
	for pot, foods := range holds {
		alone[pot] = len(foods) == 1
	}
	return alone
}

// misleads reports whether the name of a component suggests an ingredient that is not the one which
// brings most of a constituent there, though that one could be named.
func (s Serving) misleads(b book, w speaker, foods []speaker, c *constituent.Constituent) bool {
	most, top, suggested := 0.0, speaker{}, map[string]bool{}
	for _, f := range foods {
		inside := 0.0
		for _, row := range f.rows {
			if slices.Contains(w.rows, row) {
				suggested[f.word] = Suggests(w.word, f.word)
				if b.known[row] != nil {
					inside += b.known[row][0]
				}
			}
		}
		if inside > most {
			most, top = inside, f
		}
	}
	if top.food == nil || suggested[top.word] || SaysNothing(top.word, c) && !s.bears(top, c) {
		return false
	}
	for _, is := range suggested {
		if is {
			return true
		}
	}
	return false
}

// parts are those of the build that are made, each beside all others of the build and what nobody
// poured there, such as the water of melting ice.
func (s Serving) parts(foods []speaker) (list []speaker, others [][]int) {
	poured := map[int]bool{}
	for _, p := range s.Parts {
		others = append(others, p.Rows)
		for _, row := range p.Rows {
			poured[row] = true
		}
		if p.Component != "" {
			list = append(list, speaker{rows: p.Rows, word: clean.Name(p.Name), component: p.Component})
		}
	}
	for _, in := range foods {
		var loose []int
		for _, row := range in.rows {
			if !poured[row] {
				loose = append(loose, row)
			}
		}
		if len(loose) > 0 {
			others = append(others, loose)
		}
	}
	return list, others
}

// whole reports whether a component is the whole drink but for water, so that it brings all there is.
func (s Serving) whole(w speaker) bool {
	for row, r := range s.Pot.Rows {
		if !r.Profile.Food.Facts().Water && !slices.Contains(w.rows, row) {
			return false
		}
	}
	return true
}

// single reports whether no more than one of some foods stands beside water.
func single(foods []speaker) bool {
	n := 0
	for _, in := range foods {
		if !in.food.Facts().Water {
			n++
		}
	}
	return n < 2
}

// added reports whether an ingredient is a constituent and hardly anything else, so that it is
// added and does not bring it; as is how: "pure", or "as sugar".
func (w speaker) added(pot *ledger.Pot, c *constituent.Constituent) (as string, ok bool) {
	if w.food == nil {
		return "", false
	}
	holds := 0.0
	profile := pot.Rows[w.rows[0]].Profile
	for _, col := range pot.Columns.Below(c.ID) {
		holds += profile.Cells[pot.Columns.List[col].Order].Amount
	}
	switch {
	case holds < worthSaying().pure && !w.food.Chemical:
		return "", false
	case strings.EqualFold(Head(w.food.Name()), c.Words()):
		return "added pure", true
	}
	return "added as " + w.word, true
}

// SaysNothing reports whether a name says already what its bearer brings: sugar brings the sugars.
func SaysNothing(word string, c *constituent.Constituent) bool {
	name, what := strings.Fields(strings.ToLower(word)), strings.ToLower(c.Words())
	if len(name) == 0 || strings.HasPrefix(what, name[len(name)-1]) {
		return true
	}
	first, _, _ := strings.Cut(what, " ")
	return slices.ContainsFunc(name, func(n string) bool { return n == first || n+"s" == first || n == first+"s" })
}
