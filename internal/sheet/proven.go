package sheet

import (
	"fmt"
	"math"
	"strings"

	"sipsum/internal/chemistry"
	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/figure"
	"sipsum/internal/label"
	"sipsum/internal/proof"
)

// proving gathers the figures of a sheet for its proof pack: all that its pages print of the drink, in one
// order, each as it is printed and as it was calculated.
type proving struct {
	*Sheet
	in   string // the part of the drink of which figures follow
	list []proof.Figure
}

// ProofOf lists the figures of a drink that a proof pack states. Its assay was run whole.
func ProofOf(s *Sheet) []proof.Figure {
	p := &proving{Sheet: s, in: "A serving"}
	a := s.Assay
	p.result("size.mass", "mass", a.Mass)
	if NoLiquid(a) == "" {
		p.result("size.volume", "volume", a.Volume)
		p.result("size.density", "density at 20 °C", a.Density)
		p.result("size.strength", "alcohol, % by volume", a.Strength)
	}
	for i := range a.PerServing {
		f := &a.PerServing[i]
		p.result("serving."+string(f.Constituent.ID), WordsFor(f.Constituent), f.Result)
		p.list[len(p.list)-1].Parts = p.parts(f)
	}
	p.chemistry("serving", a.Chemistry)
	p.in = "In 100 ml"
	p.composition("per_100_ml", a.Per100ml)
	p.in = "In 100 g"
	p.composition("per_100_g", a.Per100g)
	for i := range a.Components {
		c := &a.Components[i]
		at := "component." + c.Name
		if !c.House {
			at = "component." + c.ID.Food.String()
		}
		p.in = "Of which " + clean.Name(c.Name)
		p.result(at+".mass", "mass", c.Mass)
		p.composition(at, c.Constituents)
		p.chemistry(at, c.Chemistry)
	}
	p.in = "Beside the tastes"
	for _, row := range TasteRows(TasteOf(s)) {
		if row.Withheld {
			p.printed("taste."+row.Name, row.Name, row.Said)
			continue
		}
		p.result("taste."+row.Name, row.Name, row.Result)
	}
	for _, c := range s.Cards() {
		p.in = "Card, " + rulesName(c.Rules)
		p.card(&c)
	}
	p.declared()
	p.in = "Claims"
	for i, c := range s.Said {
		p.printed(fmt.Sprintf("claim.%d", i+1), clean.Prose(c.Say), clean.Prose(c.InShort()))
	}
	return p.list
}

// printed states what is printed and is no number.
func (p *proving) printed(id, of, text string) {
	p.list = append(p.list, proof.Figure{ID: id, In: p.in, Of: of, Printed: text})
}

func (p *proving) result(id, of string, r composition.Result) {
	p.list = append(p.list, proof.Figure{ID: id, In: p.in, Of: of, Printed: inFull(r), Stored: storedOf(r)})
}

func (p *proving) composition(at string, c composition.Composition) {
	for i := range c {
		p.result(at+"."+string(c[i].Constituent.ID), WordsFor(c[i].Constituent), c[i].Result)
	}
}

// estimate states a figure of the chemistry; where it is withheld, why.
func (p *proving) estimate(id, of string, e chemistry.Estimate) {
	p.result(id, of, e.Result)
	if e.Why != "" {
		p.list[len(p.list)-1].Printed = "withheld: " + e.Why
	}
}

func (p *proving) chemistry(at string, c *chemistry.Chemistry) {
	if c == nil {
		return
	}
	p.estimate(at+".ph", fmt.Sprintf("pH at %s °C", figure.Plain(c.Celsius)), c.PH)
	p.estimate(at+".ph_meter", "pH at the meter", c.PHMeter)
	for _, x := range c.Acidity {
		p.estimate(fmt.Sprintf("%s.titratable_acidity_to_%.1f", at, x.EndPoint), fmt.Sprintf("titratable acidity to pH %.1f, as citric acid", x.EndPoint), x.Per100g)
	}
	if c.TooDry == "" {
		p.result(at+".brix", "°Brix", c.Brix)
	}
	p.estimate(at+".brix_acid_corrected", "°Brix with what the acid hides", c.BrixCorrected)
	p.estimate(at+".brix_acid_ratio", "°Brix over titratable acidity", c.BrixAcid)
	p.estimate(at+".buffer_capacity", "buffer capacity", c.Capacity)
	p.estimate(at+".strong_ion_difference", "strong ion difference", c.StrongIons)
	p.result(at+".co2", "carbon dioxide", c.CO2)
	if w := c.Water; w != nil {
		p.result(at+".hardness_as_caco3", "hardness as CaCO₃", w.Hardness)
		p.result(at+".alkalinity_as_caco3", "alkalinity as CaCO₃", w.Alkalinity)
	}
	if k := c.Keeping; k != nil {
		p.estimate(at+".water_activity", "water activity at 25 °C", k.WaterActivity)
		p.estimate(at+".ice_forms_at", "ice forms at", k.Freezing)
	}
}

// card states what a declaration prints.
func (p *proving) card(c *label.Card) {
	for i := range c.Rows {
		r := &c.Rows[i]
		for _, x := range []struct {
			column, words string
			cell          *label.Cell
		}{{"per_100_ml", ", 100 ml", r.Per100ml}, {"per_100_g", ", 100 g", r.Per100g}, {"serving", ", a serving", r.Serving}} {
			if x.cell == nil {
				continue
			}
			printed := strings.Join(saying(x.cell.Printed, x.cell.Reference, x.cell.DailyValue), " · ")
			f := proof.Figure{ID: "card." + c.Rules + "." + r.Key + "." + x.column, In: p.in, Of: r.Label + x.words, Printed: printed}
			if v := x.cell.Value; v != nil {
				f.Mean = number(*v)
			}
			if most := x.cell.Most; most != nil {
				f.UpTo = number(*most)
			}
			p.list = append(p.list, f)
		}
	}
}

// declared states what must be declared and decided, and what may hurt.
func (p *proving) declared() {
	for _, d := range p.Allergens() {
		at := "allergens." + d.Rules + "."
		p.in = "Allergens, " + rulesName(d.Rules)
		for _, e := range d.Contains {
			p.printed(at+"contains."+e.Code, "contains", clean.Name(e.Name)+" ("+clean.Listed(e.From)+")")
		}
		for _, e := range d.MayContain {
			p.printed(at+"may_contain."+e.Code, "may contain", clean.Name(e.Name))
		}
		for i, c := range d.Check {
			p.printed(fmt.Sprintf("%scheck.%d", at, i+1), "to check", clean.Prose(c.Text))
		}
	}
	p.in = "Cautions"
	for i, c := range p.Cautions() {
		p.printed(fmt.Sprintf("caution.%d.%s", i+1, c.Code), "caution", clean.Prose(c.Text))
	}
}

// inFull writes a result on one line: the figure, its ends, and up to what it may reach.
func inFull(r composition.Result) string {
	s := figure.Of(r)
	text := s.Number
	if s.AtLeast {
		text = "≥ " + text
	}
	if s.Unit != "" && !s.Unknown {
		text += " " + s.Unit
	}
	if s.Low != "" {
		text += ", " + s.Low + " to " + s.High
	}
	if s.UpTo != "" {
		text += ", up to " + s.UpTo + " " + s.UpToUnit
	}
	return strings.TrimSpace(text)
}

func storedOf(r composition.Result) proof.Stored {
	if r.Unknown {
		return proof.Stored{UpTo: number(r.UpTo)}
	}
	s := proof.Stored{Mean: number(r.Mean), SD: number(r.SD), Low: number(r.Low), High: number(r.High)}
	if r.Partial {
		s.UpTo = number(r.UpTo)
	}
	return s
}

// number is a figure of a pack; nil where there is none.
func number(x float64) *float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return nil
	}
	return &x
}

// saying leaves out what says nothing.
func saying(texts ...string) []string {
	var list []string
	for _, t := range texts {
		if t != "" {
			list = append(list, t)
		}
	}
	return list
}
