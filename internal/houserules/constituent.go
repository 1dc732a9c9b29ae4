package houserules

import (
	"cmp"
	"context"
	"slices"
	"strings"

	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/ledger"
	"sipsum/internal/liquid"
	"sipsum/internal/note"
)

// constituent answers for one forbidden constituent of what is drunk.
func (c Case) constituent(ctx context.Context, id string) (Line, error) {
	k := constituent.Must(constituent.ID(id))
	l := Line{Key: "constituents", Rule: "no " + k.Words() + " in a serving", Verdict: CannotTell}
	pot := c.Assay.Serving
	surely, faint := parted(pot, k)
	if holds, _ := claim.Sides(surely.share()); holds {
		l.Verdict = Fails
		l.Why = "there is " + note.Number(surely.total[0]*surely.perGram) + " " + k.Unit + ", of " + surely.most()
		if c.stillOf(k, surely) {
			l.Verdict, l.Why = Pass, l.Why+": a still water holds so little of itself, and no gas was put in"
		}
		return l, nil
	}
	if len(faint.foods) > 0 {
		l.Why = "a trace, or less than could be found, is in " + faint.most()
		l.Settle = []string{"ask whether the rule means that: if it allows some, write it as a limit"}
		return l, nil
	}
	zero := " <= 0 g"
	if k.Kind == constituent.Figure {
		zero = " <= 0 kJ"
	}
	said, err := c.Bench.Weigh(ctx, drink.Claim{Say: l.Rule, Check: "serving(" + id + ")" + zero})
	if err != nil {
		return l, err
	}
	if l.answer(said); l.Verdict == Pass {
		l.Why = "every food is known or taken to have none"
	}
	return l, nil
}

// stillOf tells of carbon dioxide whether it is no more than still water holds of itself, and nothing that puts gas
// into a drink was poured or done.
func (c Case) stillOf(k *constituent.Constituent, h held) bool {
	if k.ID != constituent.CarbonDioxide || !liquid.Still(slices.Max(h.total), c.Assay.Mass.Mean) {
		return false
	}
	return !slices.ContainsFunc(c.Assay.Serving.Rows, func(r ledger.Row) bool {
		return r.Modelled || r.Profile.Food.Chemical && r.Profile.Cells[k.Order].Amount > 0 || r.Profile.Food.Carbonated()
	})
}

// held is what some rows hold of a constituent.
type held struct {
	total   []float64
	perGram float64
	foods   []heldBy
}

type heldBy struct {
	name  string
	grams float64
}

// parted parts the rows that hold a constituent from those that are only known to hold a trace of it,
// or less than could be found.
func parted(pot *ledger.Pot, k *constituent.Constituent) (surely, faint held) {
	sort := composition.SortOf(pot, k)
	for _, h := range []*held{&surely, &faint} {
		h.total, h.perGram = make([]float64, pot.N), sort.PerGram
	}
	for row, r := range pot.Rows {
		col := sort.Of(row)
		switch some := slices.ContainsFunc(col, func(x float64) bool { return x > 0 }); {
		case some && !claims.OnlyFaint(pot, row, k):
			surely.add(r.Profile.Food.Name(), col)
		case some || pot.CentralOf(row, constituent.Mass) > 0 && claims.HasTrace(r.Profile, k):
			faint.add(r.Profile.Food.Name(), col)
		}
	}
	return surely, faint
}

func (h *held) add(name string, col []float64) {
	i := slices.IndexFunc(h.foods, func(x heldBy) bool { return x.name == name })
	if i < 0 {
		i, h.foods = len(h.foods), append(h.foods, heldBy{name: name})
	}
	for d, x := range col {
		h.total[d] += x
	}
	if len(col) > 0 {
		h.foods[i].grams += col[0]
	}
}

// share is in how many of the draws there is any.
func (h held) share() float64 {
	n := 0
	for _, x := range h.total {
		if x > 0 {
			n++
		}
	}
	return float64(n) / float64(len(h.total))
}

// most names the foods that hold the most of it.
func (h held) most() string {
	const few = 3
	foods := slices.Clone(h.foods)
	slices.SortStableFunc(foods, func(a, b heldBy) int { return cmp.Compare(b.grams, a.grams) })
	var names []string
	for _, f := range foods[:min(few, len(foods))] {
		names = append(names, f.name)
	}
	if len(foods) > few {
		names = append(names, "and others")
	}
	return strings.Join(names, "; ")
}
