package assay

import (
	"slices"

	"sipsum/internal/curdling"
	"sipsum/internal/estimate"
)

// Curdling is where a drink with milk or plant protein stays smooth. Where Why
// is not empty there is no estimate, and Do is the reading to take.
type Curdling struct {
	Milk    []string // parts of the build that may curdle
	Sour    string   // the part that sours them most
	Protein string   // what curdles first
	Celsius float64  // of the pour
	Assumed bool     // the drink states no temperature
	Why, Do string
	PH      Result // of the drink, at curdling.BenchCelsius
	Stand   curdling.Stand
	Map     curdling.Map
	Ways    []curdling.Way // out, the smallest change first
}

// mapDraws is how many draws a map is judged with: a share of 100 is good to 1 %.
const mapDraws = 100

// curdle judges the serving; nil if nothing in it may curdle or nothing sours it.
func (a *Assay) curdle(w *walk, celsius float64) *Curdling {
	n := min(a.Serving.N, mapDraws+1)
	parts := a.partsThatCurdle(celsius)
	if len(parts.milk) == 0 || len(parts.others) == 0 {
		return nil
	}
	c := &Curdling{Celsius: celsius, Assumed: a.Drink.At == nil}
	for _, id := range parts.milk {
		c.Milk = append(c.Milk, a.names[id])
	}
	if parts.protein == nil {
		c.Why = "nobody has published at which pH the protein of " + listed(parts.foods) + " curdles"
		c.Do = "pour a little at the drink's temperature and note the pH at which it first flakes"
		return c
	}
	c.Protein = parts.protein.Name
	m := curdling.Mixture{Protein: parts.protein, Celsius: celsius, Place: w.curdlingPlace(parts.protein, n)}
	var open []string // parts whose acids nobody has stated
	dissolved := map[PartID]curdling.Part{}
	for _, id := range a.parts() {
		part, missing := a.dissolvePart(w, id, &parts, celsius, n)
		if missing != nil {
			c.Why, c.Do = missing.why, missing.do
			return c
		}
		if part.open {
			open = append(open, a.names[id])
		}
		m.Lowest = max(m.Lowest, part.lowest)
		dissolved[id] = part.Part
	}
	sour, found := sourest(parts.others, dissolved, parts.protein.At(celsius).High)
	if !found {
		return nil
	}
	c.Sour = a.names[sour]
	for _, id := range a.parts() {
		switch {
		case slices.Contains(parts.milk, id):
			m.Milk = pooled(m.Milk, dissolved[id])
		case id == sour:
			m.Sour = dissolved[id]
		default:
			m.Rest = pooled(m.Rest, dissolved[id])
		}
	}
	if err := c.judge(&m, open); err != nil {
		c.Why, c.Do = err.Error(), "check the amounts"
	}
	return c
}

// judge fills in the verdicts. open lists the parts whose acids nobody has stated.
func (c *Curdling) judge(m *curdling.Mixture, open []string) (err error) {
	if c.Stand, err = m.Stand(); err != nil {
		return err
	}
	c.PH = known((&meter{}).Of(c.Stand.PH), "pH")
	if half := (c.PH.High - c.PH.Low) / 2; half > spanOf("widest").high {
		if len(open) == 0 {
			open = []string{c.Sour}
		}
		c.Why, c.Do = "what its foods do not say leaves the pH open", "measure the pH of "+listed(open)
		return nil
	}
	if c.Map, err = m.Map(); err != nil {
		return err
	}
	c.Ways, err = m.Ways()
	return err
}

// curdlingPlace draws where in its band the pH lies at which a protein curdles.
func (w *walk) curdlingPlace(p *curdling.Protein, n int) []float64 {
	const middle = 0.5
	col := make([]float64, n)
	estimate.Input{
		Central: middle, Shape: estimate.Uniform, Low: 0, High: 1,
		Stream: estimate.KeyOf(w.amounts.seed, "curdling", p.ID),
	}.Fill(col)
	return col
}
