package ladder

import (
	"cmp"
	"slices"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/source"
)

// Sentence says who brings a constituent, no more than holds in every draw with every unknown part
// at its most against it.
type Sentence struct {
	Text        string // "The passion syrup brings most of the sugars: at least 65 %." Sources follow it.
	Rung        Rung
	Constituent *constituent.Constituent
	Food        food.ID  // of an ingredient; zero: a component says it
	Component   string   // of a component, by its name in the drink file; empty: an ingredient says it
	Who         string   // as it is spoken of: "passion fruit juice", "passion syrup"
	Pots        []string // components that an ingredient comes through, the outermost of each
	Added       bool     // it is the constituent itself, and is added
	As          string   // how: "added pure", or "added as sugar"
	Least, Most float64  // ends of its share, 0 to 1; Most is NaN where nothing bounds what is unknown
	Works       []source.Work
}

// Highest gives the strongest sentence about a constituent: that of an ingredient, if one brings
// more than any other, else the higher rung; ok is false if there is none.
func (s Serving) Highest(c *constituent.Constituent) (best Sentence, ok bool) {
	if s.Pot == nil {
		return Sentence{}, false
	}
	foods := s.ingredients()
	if single(foods) {
		return Sentence{}, false
	}
	b := open(s.Pot, c)
	rows := make([][]int, len(foods))
	for i, w := range foods {
		rows[i] = w.rows
	}
	consider := func(w speaker, others [][]int, kind string) {
		if said, ok := s.sentence(b, w, others, kind, c); ok && (best.Rung == "" || stronger(said, best)) {
			best = said
		}
	}
	for i, w := range foods {
		if !b.slight(w.rows) {
			consider(w, without(rows, i), "ingredient")
		}
	}
	if best.Rung != "" && best.Rung.Height() <= Lead.Height() || len(s.Parts) < 2 {
		return best, best.Rung != ""
	}
	parts, all := s.parts(foods)
	for _, w := range parts {
		if !b.slight(w.rows) && !s.whole(w) && !s.misleads(b, w, foods, c) {
			i := slices.IndexFunc(all, func(rows []int) bool { return slices.Equal(rows, w.rows) })
			consider(w, without(all, i), "part of the drink")
		}
	}
	return best, best.Rung != ""
}

// without gives all groups but one.
func without(groups [][]int, i int) [][]int {
	return slices.Delete(slices.Clone(groups), i, i+1)
}

// stronger reports whether a sentence says more than another: by its rung, then an ingredient
// before a component, then by what it surely brings.
func stronger(a, b Sentence) bool {
	component := func(s Sentence) int { return min(len(s.Component), 1) }
	return cmp.Or(cmp.Compare(a.Rung.Height(), b.Rung.Height()), cmp.Compare(component(a), component(b)), cmp.Compare(b.Least, a.Least)) < 0
}

// sentence says what somebody brings, as far as it bears a rung and says anything.
func (s Serving) sentence(b book, w speaker, others [][]int, kind string, c *constituent.Constituent) (Sentence, bool) {
	of := b.standing(w.rows, others)
	step, ok := highest(of)
	if !ok || SaysNothing(w.word, c) && !s.bears(w, c) || step.rung.Height() > Half.Height() && !Worth(c, of.Amount, s.Ml) {
		return Sentence{}, false
	}
	out := Sentence{Rung: step.rung, Constituent: c, Component: w.component, Who: w.word, Least: of.Least, Most: of.Most}
	for _, pot := range w.pots {
		if pot != "" {
			out.Pots = append(out.Pots, pot)
		}
	}
	fill := []string{"{what}", c.Words(), "{is}", is(c), "{kind}", kind}
	if w.food != nil {
		out.Food = w.food.ID
	}
	as, added := w.added(s.Pot, c)
	if out.Added, out.As = added, as; added {
		out.Text = clean.UpperFirst(said(step.added, of, append(fill, "{as}", as)...)) + "."
		return out, true
	}
	out.Text = clean.UpperFirst(w.called()) + " " + said(step.brings, of, fill...) + "."
	return out, true
}

// bears reports whether an ingredient is the constituent by its whole name, and is added pure.
func (s Serving) bears(w speaker, c *constituent.Constituent) bool {
	_, added := w.added(s.Pot, c)
	return added && strings.EqualFold(Head(w.food.Name()), c.Words())
}

// called is who brings something, with the pots that it comes through: "the passion fruit juice of
// the passion syrup". Where it is poured by itself too, or in a pot of its name, it needs none.
func (w speaker) called() string {
	if w.plain || len(w.pots) == 0 {
		return The(w.word)
	}
	var pots []string
	for _, pot := range w.pots {
		if strings.EqualFold(pot, w.word) {
			return The(w.word)
		}
		pots = append(pots, "the "+clean.Name(pot))
	}
	return The(w.word) + " of " + clean.Listed(pots)
}

// Instead says in a few words what is so where somebody would credit another: "the apple juice
// brings more". Of who does not lead it says nothing.
func (s Sentence) Instead() string {
	much, who := map[Rung]string{All: "all", NearlyAll: "nearly all", Most: "most", Lead: "more"}[s.Rung], The(s.Who)
	switch {
	case much == "":
		return ""
	case s.Added:
		return much + " " + is(s.Constituent) + " " + s.As
	}
	return who + " brings " + much
}

// is agrees with a constituent.
func is(c *constituent.Constituent) string {
	if words := c.Words(); strings.HasSuffix(words, "s") && !strings.HasSuffix(words, "ss") {
		return "are"
	}
	return "is"
}
