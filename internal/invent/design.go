package invent

import (
	"context"
	"slices"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/caution"
	"sipsum/internal/claim"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/fit"
	"sipsum/internal/food"
	"sipsum/internal/unit"
)

// Part is a food of a design.
type Part struct {
	Food *food.Food
	By   *Preparation
	Name string      // what its line pours: the food's code, or a pot
	Pour unit.Amount // for all servings together

	least, most float64
}

// Design is what to put into a drink, calculated as the drink that it makes: the result of the fit is of
// it, with every draw of the run.
type Design struct {
	Parts []Part
	*fit.Result
	Text     []byte // the drink's file with it
	Weakest  *Weakest
	Cautions []caution.Caution // beyond those of the drink as it is written

	of    []int
	grams []float64
}

// try calculates a set as the drink that it makes. What does not do there is dropped.
func (s *search) try(ctx context.Context, a answer) error {
	s.calculated++
	d := Design{of: a.of, Parts: s.parts(a)}
	text, first, err := file{s.Bench.Drink, s.Text}.with(d.Parts)
	if err != nil {
		return err
	}
	b, err := s.Read(ctx, text)
	if err != nil {
		return err
	}
	if _, err := b.Central.Run(ctx, nil, assay.Want{Draws: true}); fail.ExitCode(err) == fail.Wrong {
		s.pool.dropped[key(a.of)] = true // a step of the drink cannot be done with it
		return nil
	}
	lines := paths(b.Drink, len(d.Parts), first)
	vary(b.Drink, lines, d.Parts)
	if d.Result, err = b.Fit(ctx, s.aims); err != nil {
		return err
	}
	if !d.Met || d.Sure < s.res.Enough {
		s.pool.dropped[key(a.of)] = true
		s.misses(d.Result)
		return nil
	}
	if d.Text, err = amount.Rewrite(b.Drink, text, b.Central.Written(), d.Amounts()); err != nil {
		return err
	}
	for i, path := range lines {
		j := slices.IndexFunc(d.Moves, func(m fit.Move) bool { return m.Path == path })
		d.Parts[i].Pour.Number = d.Moves[j].To
		d.grams = append(d.grams, d.Moves[j].To/float64(max(s.Bench.Drink.Serves, 1)))
	}
	if refused, err := s.cautioned(ctx, &d); err != nil || refused {
		s.pool.dropped[key(a.of)] = true
		return err
	}
	if d.Weakest, err = s.weakest(ctx, d); err != nil {
		return err
	}
	s.res.Designs = append(s.res.Designs, d)
	return nil
}

// Missed is a target that sets missed when they were calculated as the drinks that they make.
type Missed struct {
	Target string
	Times  int
	Gap    *claim.Gap // what of it nobody knows, in the first of them; nil: nothing
}

// misses counts which targets a calculated set misses, or holds less surely than is enough.
func (s *search) misses(r *fit.Result) {
	for _, h := range r.Held {
		if h.Met && h.Hurt >= s.res.Enough {
			continue
		}
		i := slices.IndexFunc(s.res.Missed, func(m Missed) bool { return m.Target == h.Text })
		if i < 0 {
			i = len(s.res.Missed)
			s.res.Missed = append(s.res.Missed, Missed{Target: h.Text, Gap: h.Settle})
		}
		s.res.Missed[i].Times++
	}
}

// cautioned notes what of a design may hurt and of the drink as written does not. What may kill is proposed
// to nobody.
func (s *search) cautioned(ctx context.Context, d *Design) (refused bool, err error) {
	list, err := s.Hurts(ctx, d.After)
	if err != nil {
		return false, err
	}
	for _, c := range list {
		switch {
		case s.hurts[c.Code]:
		case c.Rank == worst:
			if len(d.of) == 1 {
				s.banned[d.Parts[0].Food.ID] = true
			}
			s.res.Refused = append(s.res.Refused, Refused{d.Parts, c})
			return true, nil
		default:
			d.Cautions = append(d.Cautions, c)
		}
	}
	return false, nil
}

// worst is the rank of a caution of what may kill.
const worst = 1

// parts gives what a set pours.
func (s *search) parts(a answer) []Part {
	gram, _ := unit.FindMeasure("g")
	serves := float64(max(s.Bench.Drink.Serves, 1))
	var list []Part
	for n, i := range a.of {
		l := s.liquids[i]
		p := Part{Food: l.food, By: l.by, Name: l.food.ID.String(), least: serves * l.from, most: serves * l.to}
		if l.by.Pot() {
			p.Name = file{s.Bench.Drink, s.Text}.potName(l)
		}
		p.Pour = unit.Amount{Number: serves * a.grams[n], Measure: gram, Decimals: decimalsOf(s.Bench.Drink, l)}
		list = append(list, p)
	}
	return list
}

// paths gives the lines that pour so many parts: the first or the last of the build.
func paths(d *drink.Drink, n int, first bool) []string {
	lines := d.Build[len(d.Build)-n:]
	if first {
		lines = d.Build[:n]
	}
	list := make([]string, n)
	for i, l := range lines {
		list[i] = l.Path
	}
	return list
}

// vary lets the lines of parts vary, and no other.
func vary(d *drink.Drink, paths []string, parts []Part) {
	d.Vary = nil
	for i, path := range paths {
		from, to := parts[i].Pour, parts[i].Pour
		from.Number, to.Number = parts[i].least, parts[i].most
		d.Vary = append(d.Vary, drink.Vary{Of: path, From: from, To: to})
	}
}
