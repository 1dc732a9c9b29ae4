package textreport

import (
	"fmt"

	"sipsum/internal/assay"
)

// chemistry prints a drink and its house-made components as solutions.
func (p *page) chemistry(a *assay.Assay, whole bool) {
	if a.Chemistry == nil {
		return
	}
	p.heading("As a solution")
	p.solution(a.Chemistry, whole)
	defer p.paragraph(0, 0, "Acidity is titratable acidity as citric acid, without gas. Estimates from composition: a meter knows better.")
	for _, c := range a.Components {
		if c.Chemistry != nil {
			p.line("  ", p.bold(Clean(c.Name, mostName)))
			p.solution(c.Chemistry, false)
		}
	}
}

// solution prints one liquid; whole adds the other end points of titration.
func (p *page) solution(c *assay.Chemistry, whole bool) {
	memory := p.memory(len(c.Unseen) > 0)
	if whole && c.Celsius != assay.MeterCelsius {
		p.estimate(fmt.Sprintf("pH at %g °C", c.Celsius), memory, c.PH)
	}
	p.estimate(fmt.Sprintf("pH at %g °C", assay.MeterCelsius), memory, c.PHMeter)
	for i, t := range c.Acidity {
		if i == 0 || whole {
			p.estimate(fmt.Sprintf("acidity to pH %.1f", t.EndPoint), memory, t.Per100g)
		}
	}
	p.row("refractometer", "", p.show(c.Brix), "")
	p.estimate("°Brix to acidity", memory, c.BrixAcid)
	if c.CO2.Mean > 0 {
		p.row("carbon dioxide", "", p.show(c.CO2), "")
	}
	if c.PHMeter.Why != "" {
		p.paragraph(marginWidth, 2, "no pH: "+Clean(c.PHMeter.Why, mostProse))
	}
}

// shortUnit fits units into their column: grams in 100 g are per cent.
var shortUnit = map[string]string{"g/100 g": "%"}

// estimate prints a figure that is not withheld.
func (p *page) estimate(name, signs string, e assay.Estimate) {
	if e.Why == "" {
		s := p.show(e.Result)
		s.unit = shortUnit[s.unit]
		p.row(name, signs, s, "")
	}
}
