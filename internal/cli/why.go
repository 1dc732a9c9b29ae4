package cli

import (
	"context"

	"sipsum/internal/constituent"
	"sipsum/internal/fail"
	"sipsum/internal/report/json"
	"sipsum/internal/report/text"
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

// next prints which readings would narrow a drink's figures most.
func (a *app) next(ctx context.Context, arg string) error {
	s, err := a.sheet(ctx, arg, asked{next: true, whole: a.json()})
	if err != nil {
		return err
	}
	if a.json() {
		return jsonreport.Next(a.streams.Out, s)
	}
	return textreport.Next(a.streams.Out, s, a.style())
}
