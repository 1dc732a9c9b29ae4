package textreport

import (
	"io"

	"sipsum/internal/sheet"
)

// Sheet prints everything about a drink on one page.
func Sheet(w io.Writer, s *sheet.Sheet, st Style) error { return printPage(w, s, st, sheet.WholePage) }

// Assay prints a drink's composition, what brings it, and what is not known.
func Assay(w io.Writer, s *sheet.Sheet, st Style) error { return printPage(w, s, st, sheet.AssayPage) }

// Evidence prints a drink by sensory category: each constituent's figure, what
// the coffee alone brings, the parts by component, sentences, sources.
func Evidence(w io.Writer, s *sheet.Sheet, st Style) error {
	return printPage(w, s, st, sheet.EvidencePage)
}

// Cards prints the nutrition declarations of a drink, one for each set of rules.
func Cards(w io.Writer, s *sheet.Sheet, st Style) error { return printPage(w, s, st, sheet.CardPage) }

// CardWorking prints the cards and, under each, how every figure came about.
func CardWorking(w io.Writer, s *sheet.Sheet, st Style) error {
	return printPage(w, s, st, sheet.WorkingPage)
}

// Allergens prints what must be declared under each set of rules, what somebody
// has to check, and what may hurt.
func Allergens(w io.Writer, s *sheet.Sheet, st Style) error {
	return printPage(w, s, st, sheet.AllergensPage)
}

// printers give each part of a page its form.
var printers = map[sheet.Part]func(v view, whole bool){
	sheet.Readings:       func(v view, _ bool) { v.readings() },
	sheet.Contradicting:  func(v view, _ bool) { contradicting(v.page, v.s) },
	sheet.InWords:        func(v view, _ bool) { v.gap(); v.paragraph(0, 0, summary(v.page, v.s.Summary())) },
	sheet.OnTop:          func(v view, _ bool) { v.garnish() },
	sheet.Smelled:        func(v view, _ bool) { v.smelled() },
	sheet.AloneInside:    func(v view, _ bool) { v.inside() },
	sheet.Composed:       func(v view, _ bool) { listing{v.page}.composition(v.s) },
	sheet.AsTheTablesSay: func(v view, _ bool) { listing{v.page}.tableEnergy(v.s) },
	sheet.InCategories:   func(v view, _ bool) { categories{v}.atLength() },
	sheet.InClaims:       func(v view, _ bool) { v.claims() },
	sheet.InHouseRules:   func(v view, _ bool) { v.houseRules() },
	sheet.Shortly:        func(v view, _ bool) { categories{v}.shortly() },
	sheet.FurtherRows:    func(v view, _ bool) { listing{v.page}.further(v.s) },
	sheet.Solutions: func(v view, whole bool) {
		solutions{v.page, v.notes, v.s.PHWorks}.print(v.s.Assay, whole)
	},
	sheet.OverTime:     func(v view, _ bool) { overTime{v.page, v.notes}.print(sheet.TenMinutesOf(v.s)) },
	sheet.ByNumbers:    func(v view, _ bool) { byNumbers{v.page, v.notes}.print(v.s) },
	sheet.MilkMap:      func(v view, whole bool) { milk{v.page}.print(v.s.Assay.Curdling, whole) },
	sheet.Foams:        func(v view, whole bool) { v.foams(whole) },
	sheet.WhatBrings:   func(v view, _ bool) { brought{v.page}.print(v.s, v.notes) },
	sheet.UnknownOf:    func(v view, _ bool) { listing{v.page}.gaps(v.s) },
	sheet.InCards:      func(v view, _ bool) { cards{v.page}.print(v.s, cards.atLength) },
	sheet.CardsShortly: func(v view, _ bool) { cards{v.page}.print(v.s, cards.shortly) },
	sheet.WorkedCards:  func(v view, _ bool) { cards{v.page}.worked(v.s, v.notes) },
	sheet.Declared:     func(v view, _ bool) { declared{v.page, v.notes}.print(v.s) },
	sheet.ToNote:       func(v view, _ bool) { v.remarks() },
	sheet.Signs:        func(v view, _ bool) { v.explain(v.s.Assay.Draws) },
	sheet.Daggers:      func(v view, _ bool) { v.explainDagger() },
	sheet.ToLog:        func(v view, _ bool) { logged{v.page}.print(v.s.Log()) },
	sheet.Sources:      func(v view, _ bool) { v.sources(v.notes) },
}

// view is a page about a drink that is being composed.
type view struct {
	*page
	s     *sheet.Sheet
	notes *footnotes
}

// printPage prints the parts of a page in their order, between a head and a foot.
func printPage(w io.Writer, s *sheet.Sheet, st Style, of sheet.Page) error {
	v := view{newPage(st), s, &footnotes{}}
	if of.Brief {
		briefly{v.page}.print(s)
		v.gap()
	}
	v.whole = of.Whole
	v.head(of.Kind)
	v.names = namesOfFoods(s)
	for _, part := range of.Parts {
		printers[part](v, of.Whole)
	}
	foot(v.page, s)
	return v.write(w)
}
