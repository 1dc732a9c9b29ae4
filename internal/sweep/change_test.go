package sweep_test

import (
	"context"
	"math"
	"slices"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/constituent"
	"sipsum/internal/sheet"
)

// changedBy is how far an effect that is told may be off (our own bound: it is told in two digits).
const changedBy = 0.05

// unsaid is how much smaller a serving may be without a word (our own bound: what a free pour is off by).
const unsaid = 0.101

// aChangeDoesWhatItSays runs the drink with the amount that the brief proposes, by a plan of its own:
// it weighs what the scale can weigh, does what it is for, spills nothing, and says where it makes a
// serving smaller.
func aChangeDoesWhatItSays(s *subject, broken say) {
	c := s.sheet.Change
	if c == nil {
		return
	}
	plan := s.kitchen.plan(s.text, draws)
	run := func(other amount.Amounts) *assay.Assay {
		a, err := plan.Run(context.Background(), other, assay.Want{Chemistry: true, Draws: true})
		if err != nil {
			broken(1, "%s: %v", c.What, err)
			return nil
		}
		return a
	}
	before := run(nil)
	written, ok := plan.Written()[c.Path]
	if !ok || written.Number != c.From || !(c.To > 0) || c.To == c.From || c.To > 2.1*c.From || c.To < 0.4*c.From {
		broken(1, "%s: from %g to %g, written is %v", c.What, c.From, c.To, written)
		return
	}
	written.Number = c.To
	after := run(amount.Amounts{c.Path: written})
	if before == nil || after == nil {
		return
	}
	if g := after.Drink.Glass; g != nil && after.Volume.Mean > g.Base()*(1+rounding) {
		broken(after.Volume.Mean, "%s: %.4g ml in a glass of %s", c.What, after.Volume.Mean, g)
	}
	for _, e := range c.Effects {
		if e.Key != string(constituent.Sugar) {
			continue
		}
		from, to := before.Serving.Central(constituent.Sugar), after.Serving.Central(constituent.Sugar)
		// What was read moves the central values a little more where there are draws.
		if off := math.Abs(to - from - e.To + e.From); off > changedBy*math.Abs(to-from)+rounding*from {
			broken(1, "%s: %g to %g g of sugars, it says %g to %g", c.What, from, to, e.From, e.To)
		}
	}
	if less := 1 - after.Mass.Mean/before.Mass.Mean; less > unsaid && len(c.Shrinks) == 0 {
		broken(less, "%s: it makes the serving smaller by %.3g", c.What, less)
	}
}

// whatIsNotSaidDoesNotHold asks of what the brief warns of whether it is wrong indeed: who is credited
// with most brings less in some draw, and who is credited with something brings less than another in
// every draw.
func whatIsNotSaidDoesNotHold(s *subject, broken say) {
	d := sheet.BriefOf(s.sheet).Dont
	if d == nil || d.Constituent == nil {
		return
	}
	pot, id := s.assay.Serving, d.Constituent.ID
	least, beaten := math.Inf(1), true
	for draw := range pot.N {
		own, open, rest := 0.0, 0.0, 0.0
		each := map[string]float64{}
		for row, r := range pot.Rows {
			known, unknown := pot.Of(row, id)[draw], s.openIn(row, d.Constituent, draw)
			if r.Profile.Food.ID == d.Food {
				own, open = own+known, open+unknown
				continue
			}
			rest += known + unknown
			each[r.Profile.Food.ID.String()] += known
		}
		least = math.Min(least, own/(own+rest))
		beaten = beaten && slices.ContainsFunc(order(each), func(of string) bool { return each[of] > own+open })
	}
	switch d.Kind {
	case sheet.DontMost:
		if least >= 0.6 {
			broken(least, "%s: it brings at least %.3g", d.Sentence, least)
		}
		if isNumber(d.Least) && math.Abs(least-d.Least) > 1e-9 {
			broken(math.Abs(least-d.Least), "%s: it says %.4g, it is %.4g", d.Sentence, d.Least, least)
		}
	case sheet.DontName:
		if !beaten {
			broken(1, "%s: in some draw no other brings more (%s)", d.Sentence, d.Why)
		}
	}
}
