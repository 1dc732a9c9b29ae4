package curdling

import (
	"math"
	"slices"

	"sipsum/internal/acidity"
	"sipsum/internal/composition"
	"sipsum/internal/estimate"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
)

// Judgement is where a drink with milk or plant protein stays smooth. Where Why
// is not empty there is no estimate, and Do is the reading to take.
type Judgement struct {
	Milk    []string // parts of the build that may curdle
	Sour    string   // the part that sours them most
	Protein string   // what curdles first
	Celsius float64  // of the pour
	Assumed bool     // the drink states no temperature
	Why, Do string
	About   float64            // without an estimate: the pH that its composition makes, where that may be one at which it curdles; else NaN
	PH      composition.Result // of the drink, at curdling.BenchCelsius
	Stand   Stand
	Map     Map
	Ways    []Way // out, the smallest change first
}

// mapDraws is how many draws a map is judged with: a share of 100 is good to 1 %.
const mapDraws = 100

// Pour is a drink as it is poured together.
type Pour struct {
	Parts   []PourPart
	Mass    float64                   // g, at central values
	Celsius float64                   // of the pour
	Assumed bool                      // the drink states no temperature
	Curdled func(row ledger.Row) bool // whether a component that a row came through was curdled
}

// PourPart is one part of a serving.
type PourPart struct {
	Name  string
	House bool
	Pot   *ledger.Pot
}

// Judge judges a pour; nil if nothing in it may curdle or nothing sours it.
func Judge(lab *acidity.Laboratory, pour Pour) *Judgement {
	parts := pour.thatCurdle()
	if len(parts.milk) == 0 || len(parts.others) == 0 {
		return nil
	}
	n, celsius := min(lab.Ens.N, mapDraws+1), pour.Celsius
	c := &Judgement{Celsius: celsius, Assumed: pour.Assumed, About: math.NaN()}
	for _, i := range parts.milk {
		c.Milk = append(c.Milk, pour.Parts[i].Name)
	}
	if parts.protein == nil {
		c.Why = "nobody has published at which pH the protein of " + note.Listed(parts.foods) + " curdles"
		c.Do = "pour a little at the drink's temperature and note the pH at which it first flakes"
		return c
	}
	c.Protein = parts.protein.Name
	m := Mixture{Protein: parts.protein, Celsius: celsius, Place: placeOf(lab.Ens, parts.protein, n)}
	var open []string // parts whose acids nobody has stated
	dissolved := make([]Part, len(pour.Parts))
	for i, p := range pour.Parts {
		part, missing := pour.dissolve(lab, p, parts.protein, n)
		if missing != nil {
			c.Why, c.Do = missing.why, missing.do
			if pH := pour.about(lab); pH < parts.protein.At(celsius).High {
				c.About = pH
			}
			return c
		}
		if part.open {
			open = append(open, p.Name)
		}
		m.Lowest = max(m.Lowest, part.lowest)
		dissolved[i] = part.Part
	}
	sour, found := sourest(parts.others, dissolved, parts.protein.At(celsius).High)
	if !found {
		return nil
	}
	c.Sour = pour.Parts[sour].Name
	for i, part := range dissolved {
		switch {
		case slices.Contains(parts.milk, i):
			m.Milk = pooled(m.Milk, part)
		case i == sour:
			m.Sour = part
		default:
			m.Rest = pooled(m.Rest, part)
		}
	}
	if err := c.judge(&m, open); err != nil {
		c.Why, c.Do = err.Error(), "check the amounts"
	}
	return c
}

// about gives the pH that the composition of all parts makes at central values, protein and all: to so
// much only as is printed at the widest. NaN: none can be worked out.
func (p Pour) about(lab *acidity.Laboratory) float64 {
	whole := p.Parts[0].Pot.First(1).Copy()
	for _, part := range p.Parts[1:] {
		whole.Join(part.Pot.First(1))
	}
	pH, _, err := lab.Acidity(whole)
	if err != nil {
		return math.NaN()
	}
	return pH[0]
}

// judge fills in the verdicts. open lists the parts whose acids nobody has stated.
func (c *Judgement) judge(m *Mixture, open []string) (err error) {
	if c.Stand, err = m.Stand(); err != nil {
		return err
	}
	c.PH = composition.Known((&composition.Meter{}).Of(c.Stand.PH), "pH")
	if half := (c.PH.High - c.PH.Low) / 2; half > acidity.SpanOf("widest").High {
		if len(open) == 0 {
			open = []string{c.Sour}
		}
		c.Why, c.Do = "what its foods do not say leaves the pH open", "measure the pH of "+note.Listed(open)
		return nil
	}
	if c.Map, err = m.Map(); err != nil {
		return err
	}
	c.Ways, err = m.Ways()
	return err
}

// placeOf draws where in its band the pH lies at which a protein curdles.
func placeOf(ens estimate.Ensemble, p *Protein, n int) []float64 {
	const middle = 0.5
	col := make([]float64, n)
	estimate.Input{
		Central: middle, Shape: estimate.Uniform, Low: 0, High: 1,
		Stream: ens.Stream("curdling", p.ID),
	}.Fill(col)
	return col
}
