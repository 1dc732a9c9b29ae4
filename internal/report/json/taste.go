package jsonreport

import (
	"sipsum/internal/constituent"
	"sipsum/internal/sheet"
	"sipsum/internal/taste"
)

// tasteForm holds the numbers beside the tastes; why is there where there are none.
type tasteForm struct {
	Why    string     `json:"why,omitempty"`
	Limits string     `json:"limits"`
	Sweet  *sweetForm `json:"sweet,omitempty"`
	Sour   *sourForm  `json:"sour,omitempty"`
	Doses  []doseForm `json:"doses,omitempty"`
	Body   *bodyForm  `json:"body,omitempty"`
}

// indexForm is a figure and, if it is withheld, why.
type indexForm struct {
	Figure any    `json:"figure"`
	Why    string `json:"why,omitempty"`
}

// differenceForm is the least change that a judge notices, in per cent of what is there.
type differenceForm struct {
	Low    number `json:"low_percent"`
	High   number `json:"high_percent"`
	How    string `json:"how"`
	Source string `json:"source"`
}

type sweetForm struct {
	Per100ml indexForm        `json:"sucrose_per_100_ml"`
	Parts    []sweetPartForm  `json:"parts"`
	Without  []constituent.ID `json:"no_factor,omitempty"`
	Notices  differenceForm   `json:"noticed"`
}

type sweetPartForm struct {
	Constituent constituent.ID `json:"constituent"`
	Grams       any            `json:"per_100_ml"`
	Factor      number         `json:"factor"`
	Low         number         `json:"factor_low"`
	High        number         `json:"factor_high"`
	Equivalent  number         `json:"sucrose_g"`
	Sources     []string       `json:"sources"`
}

type sourForm struct {
	Molecules  indexForm      `json:"molecules_per_l"`
	Hydrogen   indexForm      `json:"hydrogen_ions_per_l"`
	Titratable indexForm      `json:"titratable_per_l"`
	EndPoint   number         `json:"end_point"`
	Hardly     bool           `json:"less_than_a_burette_reads,omitempty"`
	Notices    differenceForm `json:"noticed"`
}

// doseForm is a compound beside its thresholds, in mg of it per litre; they and the times are
// null where there is none.
type doseForm struct {
	Taste       taste.Taste    `json:"taste"`
	Constituent constituent.ID `json:"constituent"`
	Amount      any            `json:"per_l"`
	Low         *number        `json:"threshold_low"`
	High        *number        `json:"threshold_high"`
	TimesLow    *number        `json:"times_low"`
	TimesHigh   *number        `json:"times_high"`
	TimesUpTo   *number        `json:"times_up_to,omitempty"`
	Place       string         `json:"place,omitempty"`
	Why         string         `json:"why,omitempty"`
	Sources     []string       `json:"sources"`
}

type bodyForm struct {
	Viscosity indexForm      `json:"viscosity"`
	AtC       number         `json:"at_c"`
	Fat       any            `json:"fat_per_100_ml"`
	Protein   any            `json:"protein_per_100_ml"`
	Creamy    number         `json:"creamy_from_g_per_100_g"`
	Notices   differenceForm `json:"noticed"`
	Sources   []string       `json:"sources"`
}

var placeWords = map[taste.Place]string{taste.Below: "below", taste.Among: "among", taste.Above: "above"}

func tasteOf(p taste.Profile) *tasteForm {
	out := &tasteForm{Why: p.Why, Limits: sheet.TasteMeans}
	if p.Why != "" {
		return out
	}
	out.Sweet = sweetOf(p.Sweet)
	out.Sour = &sourForm{indexOf(p.Sour.Molecules), indexOf(p.Sour.Hydrogen), indexOf(p.Sour.Titratable), number(p.Sour.EndPoint), p.Sour.Hardly, differenceOf(p.Sour.Notices)}
	for _, d := range p.Doses {
		out.Doses = append(out.Doses, doseOf(d))
	}
	b := p.Body
	out.Body = &bodyForm{
		indexOf(b.Viscosity), number(b.Celsius), figureOf(b.Fat), figureOf(b.Protein), number(b.Creamy),
		differenceOf(b.Notices), []string{b.Source, b.CreamySource},
	}
	return out
}

func sweetOf(s taste.SweetIndex) *sweetForm {
	out := &sweetForm{Per100ml: indexOf(s.Index), Parts: []sweetPartForm{}, Notices: differenceOf(s.Notices)}
	for _, p := range s.Parts {
		out.Parts = append(out.Parts, sweetPartForm{
			p.Constituent.ID, figureOf(p.Grams), number(p.Factor), number(p.Low), number(p.High), number(p.Equivalent), p.Sources,
		})
	}
	for _, c := range s.Without {
		out.Without = append(out.Without, c.ID)
	}
	return out
}

func doseOf(d taste.Dose) doseForm {
	out := doseForm{
		Taste: d.Taste, Constituent: d.Constituent.ID, Amount: figureOf(d.Amount), Place: placeWords[d.Place()],
		Why: d.Why, Sources: append([]string{}, d.Sources...),
	}
	if d.High > 0 {
		low, high := number(d.Low), number(d.High)
		out.Low, out.High = &low, &high
		if !d.Amount.Unknown {
			least, most, upTo := number(d.Times.Low), number(d.Times.High), number(d.Times.UpTo)
			out.TimesLow, out.TimesHigh = &least, &most
			if d.Amount.Partial {
				out.TimesUpTo = &upTo
			}
		}
	}
	return out
}

func indexOf(x taste.Index) indexForm { return indexForm{figureOf(x.Result), x.Why} }

func differenceOf(d taste.Difference) differenceForm {
	return differenceForm{number(d.Low), number(d.High), d.How, d.Source}
}

// aromaForm is what is smelled and not calculated; volatiles are named, never dosed.
type aromaForm struct {
	Of          string   `json:"of"`
	Treatment   string   `json:"treatment"`
	Note        string   `json:"note,omitempty"`
	Volatiles   []string `json:"volatiles"`
	PublishedOf string   `json:"published_of,omitempty"`
	Source      string   `json:"source,omitempty"`
}

func aromaOf(s *sheet.Sheet) []aromaForm {
	var list []aromaForm
	for _, a := range sheet.Smells(s.Assay.Drink) {
		list = append(list, aromaForm{a.Of, a.Treatment, a.Note, append([]string{}, a.Volatiles...), a.PublishedOf, a.Source})
	}
	return list
}
