package textreport

import (
	"fmt"
	"math"

	"sipsum/internal/assay"
	"sipsum/internal/sheet"
)

// chemistry prints a drink and its house-made components as solutions.
func (p *page) chemistry(a *assay.Assay, whole bool, works sheet.PHWorks, notes *footnotes) {
	if a.Chemistry == nil {
		return
	}
	p.heading("As a solution")
	p.solution("", a.Chemistry, whole)
	p.restsOn(a.Chemistry, works, notes)
	if a.Degassed {
		p.gasGone(a.Chemistry)
	}
	defer p.paragraph(0, 0, "Acidity is titratable acidity as citric acid, without gas. Estimates from composition: a meter knows better.")
	dosed := false
	for _, c := range a.Components {
		if c.Chemistry != nil {
			p.strong(marginWidth, 0, Clean(c.Name, mostName))
			p.solution(c.Name, c.Chemistry, false)
			p.restsOn(c.Chemistry, works, notes)
			p.keeping(c.Chemistry.Keeping)
			p.doses(c.Chemistry.Doses)
			dosed = dosed || len(c.Chemistry.Doses) > 0
		}
	}
	if dosed {
		p.handling()
	}
}

// solution prints one liquid, a component or the drink; whole adds the other end points of
// titration.
func (p *page) solution(of string, c *assay.Chemistry, whole bool) {
	memory := p.memory(len(c.Unseen) > 0)
	if whole && c.Celsius != assay.MeterCelsius {
		p.estimate(fmt.Sprintf("pH at %g °C", c.Celsius), memory, c.PH)
	}
	p.estimate(fmt.Sprintf("pH at %g °C", assay.MeterCelsius), memory, c.PHMeter)
	if c.Degassed.Unit != "" {
		p.estimate(fmt.Sprintf("pH at %g °C, gas gone", assay.MeterCelsius), memory, c.Degassed)
	}
	for i, t := range c.Acidity {
		switch name := fmt.Sprintf("acidity to pH %.1f", t.EndPoint); {
		case i > 0 && !whole:
		case t.Per100g.Why == "" && t.Per100g.High < assay.HardlySour:
			p.row(name, memory, shown{number: fmt.Sprintf("< %g", assay.HardlySour), unit: "%"}, "")
		default:
			p.estimate(name, memory, t.Per100g)
		}
	}
	if c.TooDry == "" {
		p.row("refractometer", "", p.show(c.Brix), "")
	}
	if whole && c.BrixCorrected.Mean-c.Brix.Mean >= hiddenBrix {
		p.estimate("with its acid, °Bx", memory, c.BrixCorrected)
	}
	if d := c.Density; d.Mean > 0 {
		last := place(d.Mean, d.SD, densityDigits)
		p.row("density at 20 °C", "", shown{number: rounded(d.Mean, last), unit: d.Unit, interval: span(d.Low, d.High, last)}, "")
	}
	p.estimate("°Brix to acidity", memory, c.BrixAcid)
	switch {
	case c.CO2.Mean > 0 && c.Water != nil: // most of it is bicarbonate
		p.row("carbon dioxide, bound too", "", p.show(c.CO2), "")
	case c.CO2.Mean > 0:
		p.row("carbon dioxide", "", p.show(c.CO2), "")
	}
	if w := c.Water; w != nil {
		p.row("hardness, as CaCO₃", "", p.show(w.Hardness), "")
		p.row("alkalinity, as CaCO₃", "", p.show(w.Alkalinity), "")
	}
	if c.TooDry != "" {
		p.paragraph(marginWidth, 2, "no °Brix and no density: "+Clean(c.TooDry, mostProse))
	}
	if c.PHMeter.Why != "" {
		p.paragraph(marginWidth, 2, noPH(c.PHMeter)+toWrite(of, c.PHMeter.Why, "A meter tells", "ph"))
	}
	if len(c.Acidity) > 0 {
		if first := c.Acidity[0]; first.Per100g.Why != "" && first.Per100g.Why != c.PHMeter.Why {
			p.paragraph(marginWidth, 2, fmt.Sprintf("no acidity to pH %.1f: ", first.EndPoint)+Clean(first.Per100g.Why, mostProse)+toWrite(of, first.Per100g.Why, "A burette tells", "ta"))
		}
	}
	if whole && c.Capacity.Why == "" {
		p.estimate("buffer, per litre and pH", memory, c.Capacity)
		p.estimate("strong ions, per litre", memory, c.StrongIons)
	}
	p.curve(c.Curve)
}

// hiddenBrix is what acid hides from a refractometer before it is worth a line.
const hiddenBrix = 0.05

// restsOn says on whose published pH a pH rests that is printed.
func (p *page) restsOn(c *assay.Chemistry, works sheet.PHWorks, notes *footnotes) {
	if c.PHMeter.Why != "" || len(c.RestsOn) == 0 {
		return
	}
	var foods []string
	for _, r := range c.RestsOn {
		var numbers []int
		for _, w := range works[r.Food] {
			numbers = append(numbers, notes.number(citation(w)))
		}
		of := Clean(r.Food.String(), mostName)
		switch {
		case r.Group != "":
			of += " as a " + r.Group
		case r.Brewed:
			of += " as brewed"
		case r.Parted:
			of += " where it parts"
		}
		foods = append(foods, fmt.Sprintf("%s, %.2f to %.2f%s", of, r.Low, r.High, signs(numbers)))
	}
	p.paragraph(marginWidth, 2, "The pH rests on the published pH of "+join(foods)+", not on composition alone.")
}

// noPH says why there is no pH, and what bounds it all the same.
func noPH(e assay.Estimate) string {
	text := "no pH: " + Clean(e.Why, mostProse)
	switch {
	case !math.IsNaN(e.Low) && !math.IsNaN(e.High):
		text += fmt.Sprintf("; by what they say it is between %.1f and %.1f", e.Low, e.High)
	case !math.IsNaN(e.High):
		text += fmt.Sprintf("; it is below %.2f", e.High)
	case !math.IsNaN(e.Low):
		text += fmt.Sprintf("; it is above %.2f", e.Low)
	}
	return text
}

// gasGone explains the pH of an open glass beside that of a closed bottle.
func (p *page) gasGone(c *assay.Chemistry) {
	switch {
	case c.CO2.Mean == 0:
		p.paragraph(marginWidth, 2, "It holds no carbon dioxide to lose: the pH is the same when the drink has stood open.")
	case c.Degassed.Why == "":
		p.paragraph(marginWidth, 2, "The other pH are of a closed bottle, which keeps all of its carbon dioxide; gas gone is an open glass, which holds only what air keeps in it.")
	}
}

// shortUnit fits units into their column: grams in 100 g are per cent, and the name of
// the row says per what.
var shortUnit = map[string]string{"g/100 g": "%", "mmol/(l·pH)": "mmol", "mmol/l": "mmol"}

// estimate prints a figure that is not withheld.
func (p *page) estimate(name, signs string, e assay.Estimate) {
	if e.Why == "" {
		s := p.show(e.Result)
		s.unit = shortUnit[s.unit]
		p.row(name, signs, s, "")
	}
}
