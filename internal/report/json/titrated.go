package jsonreport

import (
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/sheet"
	"sipsum/internal/titration"
)

// gramsPer100g is the unit of what a titration tells of its liquid.
const gramsPer100g = "g/100 g"

// titratedForm is what a titration tells of a pot beside what its recipe expects.
type titratedForm struct {
	Of          *string        `json:"of"` // null: the drink
	Points      int            `json:"points"`
	Told        bool           `json:"told"` // its points are enough to tell acids
	Contradicts bool           `json:"contradicts"`
	Acids       []titratedAcid `json:"acids"`
	Joined      []joinedForm   `json:"not_told_apart"`
	Nameless    *beside        `json:"without_a_name,omitempty"`
	Strong      beside         `json:"strong_ions"`
	Meter       meterForm      `json:"meter"`
	Base        beside         `json:"base"`    // what sample and base bring over what is written
	Scatter     number         `json:"scatter"` // of the points over what their spreads allow
}

// titratedAcid is an acid in the liquid, and what of it comes into a serving.
type titratedAcid struct {
	Constituent constituent.ID `json:"constituent"`
	Expected    interval       `json:"expected"`
	Read        interval       `json:"read"`
	Used        interval       `json:"used"`
	Held        bool           `json:"beyond_its_range"`
	Serving     interval       `json:"serving"`
}

type joinedForm struct {
	Constituents []constituent.ID `json:"constituents"`
	Correlation  number           `json:"correlation"`
	Sum          interval         `json:"sum"`
}

// beside is a quantity by the recipe and the kit, and by the curve beside them.
type beside struct {
	Expected interval `json:"expected"`
	Read     interval `json:"read"`
}

type meterForm struct {
	Zero     beside `json:"zero"`  // pH that it shows too much at pH 7
	Slope    beside `json:"slope"` // of its electrode
	Adjusted bool   `json:"as_adjusted"`
}

func titratedOf(s *sheet.Sheet) []titratedForm {
	return each(s.Assay.Titrated, func(t titration.Told) titratedForm { return toldOf(s, t) })
}

func toldOf(s *sheet.Sheet, t titration.Told) titratedForm {
	f := titratedForm{
		Of: named(t.Component()), Points: t.Points, Told: !t.TooFew, Contradicts: t.Contradicts, Acids: []titratedAcid{}, Joined: []joinedForm{},
		Strong: besideOf(t.Strong, "mmol/100 g"), Base: besideOf(t.Base, "1"), Scatter: number(t.Scatter),
		Meter: meterForm{besideOf(t.Zero, "pH"), besideOf(t.Slope, "1"), t.Adjusted},
	}
	if t.Nameless != nil {
		q := besideOf(*t.Nameless, "mmol/100 g")
		f.Nameless = &q
	}
	for _, a := range t.Acids {
		f.Acids = append(f.Acids, titratedAcid{
			a.ID, summaryOf(a.Expected, gramsPer100g), summaryOf(a.Read, gramsPer100g), summaryOf(a.Used, gramsPer100g), a.Held,
			summaryOf(sheet.Through(s, t.Component(), a.ID), "g"),
		})
	}
	for _, j := range t.Joined {
		form := joinedForm{Correlation: number(j.Correlation), Sum: summaryOf(j.Sum, gramsPer100g)}
		for _, i := range j.Acids {
			form.Constituents = append(form.Constituents, t.Acids[i].ID)
		}
		f.Joined = append(f.Joined, form)
	}
	return f
}

func besideOf(q titration.Quantity, unit string) beside {
	return beside{summaryOf(q.Expected, unit), summaryOf(q.Read, unit)}
}

func summaryOf(s estimate.Summary, unit string) interval {
	return interval{number(s.Mean), number(s.SD), number(s.Low), number(s.High), unit, ""}
}
