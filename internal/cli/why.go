package cli

import (
	"context"
	"strconv"

	"sipsum/internal/constituent"
	"sipsum/internal/fail"
	"sipsum/internal/report/json"
	"sipsum/internal/report/markdown"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
)

// why prints what the spread of a figure of a drink comes from.
func (a *app) why(ctx context.Context, arg, tag string) error {
	c, err := constituent.Read(tag, constituent.OfDrinks)
	if err != nil {
		return err
	}
	s, err := a.sheet(ctx, arg, asked{why: c.ID, whole: a.json()})
	if err != nil {
		return err
	}
	switch d := s.Assay.Drivers; {
	case d == nil || d.Figure.Unknown:
		return fail.New(fail.Wrong, "nothing is known of "+c.Name+" in this drink", "see what is with: sipsum assay")
	case d.Figure.Mean == 0 && d.Figure.High == 0:
		return fail.New(fail.Wrong, "no "+c.Name+" is known in this drink", "see what is with: sipsum assay")
	}
	if a.json() {
		return jsonreport.Why(a.streams.Out, s)
	}
	return textreport.Why(a.streams.Out, s, a.style())
}

// everyPot is what --next asks about where it names no pot.
const everyPot = "all"

// next prints which readings would narrow a drink's figures most, and what titrations would tell; of a
// pot its titration alone.
func (a *app) next(ctx context.Context, arg, pot string) error {
	s, err := a.sheet(ctx, arg, asked{next: true, kits: true, whole: a.json()})
	if err != nil {
		return err
	}
	if pot == everyPot {
		pot = ""
	}
	if _, known := s.Assay.Drink.Component(pot); pot != "" && !known && pot != sheet.PotWords("") {
		names := []string{sheet.PotWords("")}
		for _, c := range s.Assay.Drink.Components {
			names = append(names, c.Name)
		}
		return fail.New(fail.Wrong, "no pot is called "+strconv.Quote(pot), "ask --next of all, or --next=NAME of "+fail.Or(names))
	}
	switch a.options.format {
	case formatJSON:
		return jsonreport.Next(a.streams.Out, s, pot)
	case formatMarkdown:
		return markdownreport.Leaf(a.streams.Out, sheet.NextLeaf(s, pot))
	}
	return textreport.Next(a.streams.Out, s, pot, a.style())
}
