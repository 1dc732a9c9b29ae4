package batch

import (
	"context"
	"math"

	"sipsum/internal/assay"
	"sipsum/internal/unit"
)

// close takes no more of a pot than it makes: where rounding up would, a spoon less of it is poured.
func (c *cook) close(ctx context.Context) error {
	for range tries {
		a, err := c.now.Central.Run(ctx, nil, assay.Want{Volumes: true})
		if err != nil {
			return err
		}
		short := c.now.lacking(a)
		if len(short) == 0 {
			return nil
		}
		for name := range short {
			c.lower(name, short[name])
		}
		if err := c.measured(ctx); err != nil {
			return err
		}
	}
	return nil
}

// lacking tells which share of what is taken of a pot it does not make, by rounding alone.
func (b Bench) lacking(a *assay.Assay) map[string]float64 {
	makes, takes, lacks := map[string]float64{}, map[string]float64{}, map[string]float64{}
	for _, y := range a.Yields {
		makes[y.Component] = y.Out
		for _, p := range y.Poured {
			if in := b.Recipe.Lines[p.Path]; in.Component != nil {
				takes[in.Component.Name] += p.Grams
			}
		}
	}
	for name, grams := range takes {
		if unit.Over(grams, makes[name]) {
			lacks[name] = 1 - makes[name]/grams
		}
	}
	return lacks
}

// lower pours a share less of a pot, by whole steps of what measures it; of the rest only the file speaks.
func (c *cook) lower(pot string, share float64) {
	for i := range c.Home.Lines {
		l := &c.Home.Lines[i]
		m, found := c.fills[l.Path]
		in := c.now.Recipe.Lines[l.Path]
		switch {
		case l.Step || l.Garnish || in.Component == nil || in.Component.Name != pot:
		case l.Weigh != "":
			l.Scale.Number = below(l.Scale.Number*(1-share), math.Pow10(-l.Scale.Decimals))
		case found && m.to.Number > 0:
			if n := math.Round(m.grams / m.step * share); n > 0 {
				m.to = largest(m.to.Base() * (1 - n*m.step/m.grams))
				m.grams -= n * m.step
			} else { // less than a spoon shows: what there is of it is poured
				m.grams, m.said = below(m.grams*(1-share), lastDigit(m.grams)), false
			}
			l.To, c.fills[l.Path] = m.to, m
		}
	}
}

// below is the last step that is not above an amount.
func below(x, step float64) float64 { return math.Floor(x/step+unit.Closeness) * step }
