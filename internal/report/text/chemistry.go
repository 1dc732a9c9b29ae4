package textreport

import (
	"fmt"
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/chemistry"
	"sipsum/internal/clean"
	"sipsum/internal/sheet"
)

// solutions prints a drink and its house-made components as solutions.
type solutions struct {
	*page
	notes *footnotes
	works sheet.PHWorks
}

func (p solutions) print(a *assay.Assay, whole bool) {
	if a.Chemistry == nil {
		return
	}
	p.heading("As a solution")
	p.solution("", a.Chemistry, whole)
	p.further(a.Chemistry)
	if text := sheet.GasGone(a.Chemistry); a.Want.Degassed && text != "" {
		p.paragraph(marginWidth, 2, text)
	}
	defer p.paragraph(0, 0, sheet.AcidityMeans)
	dosed := false
	for _, c := range a.Components {
		if c.Chemistry != nil {
			p.strong(marginWidth, 0, Clean(c.Name, mostName))
			p.solution(c.Name, c.Chemistry, false)
			p.further(c.Chemistry)
			p.keeping(c.Chemistry.Keeping)
			p.doses(c.Chemistry.Doses)
			dosed = dosed || len(c.Chemistry.Doses) > 0
		}
	}
	if dosed {
		p.paragraph(0, 0, Clean(sheet.Doses(), mostProse))
	}
}

// solution prints one liquid, a component or the drink.
func (p solutions) solution(of string, c *chemistry.Chemistry, whole bool) {
	l := sheet.LiquidOf(c, whole)
	if slices.ContainsFunc(l.Rows, func(r sheet.LiquidRow) bool { return r.FromMemory }) {
		p.weak(c.Unseen)
	}
	p.rows(l.Rows)
	for _, w := range l.Withheld {
		p.paragraph(marginWidth, 2, w.What+": "+p.inWords(w.Why)+w.Bounds+sheet.ToWrite(of, w))
	}
	p.rows(l.More)
}

// further tells how a pH came about, and what moves it, on the page that tells all.
func (p solutions) further(c *chemistry.Chemistry) {
	if p.page.whole {
		p.curve(c.Curve)
		p.restsOn(c)
	}
}

// rows prints figures of a liquid.
func (p solutions) rows(rows []sheet.LiquidRow) {
	for _, r := range rows {
		s := shown{}
		switch r.Form {
		case sheet.Estimated:
			s = p.show(r.Result)
			s.unit = shortUnit[s.unit]
		case sheet.Densely:
			last := place(r.Result.Mean, r.Result.SD, densityDigits)
			s = shown{number: rounded(r.Result.Mean, last), unit: r.Result.Unit, interval: span(r.Result.Low, r.Result.High, last)}
		case sheet.HardlyThere:
			s = shown{number: fmt.Sprintf("< %g", chemistry.HardlySour), unit: "%"}
		default:
			s = p.show(r.Result)
		}
		signs := ""
		if r.FromMemory {
			signs = " †"
		}
		p.row(r.Name, signs, s, "")
	}
}

// restsOn says on whose published pH a pH rests that is printed.
func (p solutions) restsOn(c *chemistry.Chemistry) {
	if !sheet.PHStands(c) {
		return
	}
	var foods []string
	for _, r := range c.RestsOn {
		var numbers []int
		for _, w := range p.works[r.Food] {
			numbers = append(numbers, p.notes.Number(citation(w)))
		}
		foods = append(foods, fmt.Sprintf("%s%s, %.2f to %.2f%s", p.foodWords(r.Food.String()), sheet.RestsAs(r), r.Low, r.High, signs(numbers)))
	}
	p.paragraph(marginWidth, 2, "The pH rests on composition and on the published pH of "+clean.Listed(foods)+".")
}

// shortUnit fits units into their column.
var shortUnit = sheet.ShortUnits
