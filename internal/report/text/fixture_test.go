package textreport_test

import (
	"math"

	"sipsum/internal/allergen"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/caution"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/drivers"
	"sipsum/internal/estimate"
	"sipsum/internal/evidence"
	"sipsum/internal/label"
	"sipsum/internal/ladder"
	"sipsum/internal/note"
	"sipsum/internal/recipe"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
	"sipsum/internal/unit"
)

// The figures below are made up to show every form a figure can take; they
// speak of no food.

// hostile is a name that tries everything.
const hostile = "cordial\x1b[2J\u202e of \x07nothing\r\nforged line"

// figure makes a known figure of a serving.
func figure(id constituent.ID, mean, sd float64) composition.Figure {
	c := constituent.Must(id)
	return composition.Figure{Constituent: c, Result: composition.Result{
		Summary: estimate.Summary{Mean: mean, SD: sd, Low: mean - 1.6*sd, High: mean + 1.7*sd},
		Unit:    c.Unit, State: estimate.Calculated, Coverage: 1, WithBounds: mean, UpTo: mean + 1.7*sd,
	}}
}

// partly makes a figure with an unknown part of at most rest; NaN = no bound.
func partly(f composition.Figure, rest float64) composition.Figure {
	f.Partial, f.WithBounds, f.UpTo = true, f.Mean+rest, f.High+rest
	f.Coverage = f.Mean / f.WithBounds
	return f
}

// nothing makes a figure of which nothing is known.
func nothing(id constituent.ID, most float64) composition.Figure {
	f := partly(figure(id, 0, 0), most)
	f.Unknown, f.State, f.Coverage = true, estimate.Unknown, 0
	return f
}

func in(f composition.Figure, s estimate.State) composition.Figure {
	f.State = s
	return f
}

// share gives a part's share of the serving.
func share(f composition.Figure, mean, low, high float64) composition.Figure {
	f.Share = composition.Share{Mean: mean, Low: low, High: high}
	return f
}

func size(mean, sd float64, unitName string) composition.Result {
	r := figure(constituent.Water, mean, sd).Result
	r.Unit = unitName
	return r
}

func works(ids ...string) []source.Work {
	var list []source.Work
	for _, id := range ids {
		list = append(list, source.Work{ID: id, Citation: "Author of " + id + " (2001) Journal of Drinks 1:2", URL: "https://example.org/" + id, Grade: "B"})
	}
	return list
}

// tide is a made-up drink with every form of figure, part, note and mark.
func tide() *sheet.Sheet {
	ml, _ := unit.FindMeasure("ml")
	water, _ := assaytest.Pot(1, assaytest.Poured{Code: "water", Grams: 118, Holds: map[constituent.ID]float64{"WATER": 1}})
	a := &assay.Assay{
		Serving: water,
		Drink: &drink.Drink{
			Name: "Quiet Harbour", Serves: 12000, CompareWith: "espresso shot",
			Service: drink.Service{At: &drink.Quantity{Number: 6, Unit: "°C"}, Glass: &unit.Amount{Number: 160, Measure: ml}},
		},
		Ensemble: assay.Ensemble{Seed: 7, Draws: 1000},
		Size:     assay.Size{Mass: size(118.0, 1.82, "g"), Volume: size(112.7, 1.82, "ml"), Density: size(1.04657, 0.00137, "g/ml")},
		Basis: assay.Basis{PerServing: composition.Composition{
			figure(constituent.Water, 103.9, 1.81),
			figure(constituent.Protein, 0.7706, 0.115),
			figure(constituent.Fat, 0.1266, 0.0469),
			partly(figure(constituent.Saturates, 0.00885, 0.00401), 0.16),
			figure("FAT-other", 0.1098, 0.045),
			figure(constituent.Sugar, 10.54, 0.125),
			in(partly(figure("GLUS", 0.00015, 0.0000868), 1.83), estimate.Below),
			figure(constituent.Sucrose, 5.999, 0.00759),
			figure("SUGAR-other", 4.541, 0.0737),
			figure("TRES", 0, 0),
			nothing(constituent.Polyols, 3.754),
			partly(figure("CITAC", 416.4, 57.4), 241.7),
			nothing("QUINAC", math.NaN()),
			figure("CHOCDF-other", 1.057, 0.153),
			in(figure("CHOLE", 0.145, 0.05), estimate.Below),
			figure(constituent.Caffeine, 72.36, 10.9),
			partly(in(figure("CHLRAC", 127.8, 46.5), estimate.Trace), math.NaN()),
			in(figure(constituent.Sodium, 36.33, 5.7), estimate.Assumed),
			partly(figure("TOCPHA", 0.0006012, 0.000298), 0.5),
			figure("VITK1", 0.0000249, 0.0000114),
			figure(constituent.Energy, 225.7, 4.21),
			figure(constituent.EnergyKcal, 53.14, 0.996),
		}, Per100ml: composition.Composition{
			figure(constituent.Energy, 200.1, 3.5),
			figure(constituent.Sugar, 9.352, 0.11),
			figure("TOCPHA", 0.000534, 0.000265),
			figure("VITK1", 0.0000221, 0.0000101),
			partly(figure("CITAC", 369.5, 51), 214),
		}},

		Components: []assay.Component{
			{ID: recipe.PartID{Component: "espresso shot"}, Name: "espresso shot", House: true, Constituents: composition.Composition{
				share(figure(constituent.Fat, 0.1266, 0.0469), 1, 1, 1),
				share(figure(constituent.Sugar, 0.02, 0.004), 0.0019, 0.001, 0.003),
				nothing("CITAC", 241.7),
				share(figure(constituent.Caffeine, 72.36, 10.9), 1, 1, 1),
				share(figure("CHLRAC", 127.8, 46.5), 1, 1, 1),
				figure(constituent.Energy, 27.4, 1),
			}},
			{ID: recipe.PartID{Component: hostile}, Name: hostile, House: true, Constituents: composition.Composition{
				share(figure(constituent.Sugar, 7.31, 0.1), 0.694, 0.681, 0.702),
				share(figure("CITAC", 310.2, 44.9), 0.745, 0.68, 0.8),
				figure(constituent.Energy, 129.3, 2),
			}},
			{ID: recipe.PartID{Component: "whey"}, Name: "抹茶 whey, a name that is far too long for its column", House: true, Constituents: composition.Composition{
				share(partly(figure(constituent.Sugar, 3.21, 0.1), 0.01), 0.304, 0.29, 0.31),
				share(figure("CITAC", 106.2, 12.1), 0.255, 0.2, 0.32),
				nothing("CHLRAC", math.NaN()),
				figure(constituent.Energy, 69, 2),
			}},
		},
		Notes: []note.Note{
			{Kind: "unknown", Constituent: "CITAC", Foods: []string{"core:espresso"}, Text: "not printed as it stands"},
			{Kind: "unknown", Constituent: "QUINAC", Foods: []string{"core:espresso", "sr:09160\x1b[31m"}},
			{Kind: "glass", Text: "a serving overflows\n\x1b[5mthe glass"},
		},
	}
	sugar, citric, caffeine, glucose := entryOf(a, constituent.Sugar, "w1"), entryOf(a, "CITAC", "w2", "w1"), entryOf(a, constituent.Caffeine), entryOf(a, "GLUS", "w9")
	caffeine.Contributions = []composition.Contribution{{Mean: 72.36, Table: "core"}}
	return &sheet.Sheet{
		Program: "sipsum test",
		Tables:  []source.Table{{ID: "core", Title: "A table of drink foods", Edition: "3", Citation: "The makers (2002) A table of drink foods", Licence: "public domain"}},
		Assay:   a,
		Evidence: evidence.View{CompareWith: "espresso shot", Categories: []evidence.Category{
			{Name: "sweet", Entries: []evidence.Entry{sugar, glucose}, Sentences: []ladder.Sentence{{Text: "The cordial brings most of the sugars: at least 68 %.", Rung: ladder.Most, Constituent: sugar.Constituent, Works: sugar.Works}}},
			{Name: "acid\u202e", Entries: []evidence.Entry{citric}},
			{Name: "bitter", Entries: []evidence.Entry{caffeine, entryOf(a, "CHLRAC", "w3")}},
		}},
		Cards:     cards,
		Allergens: declarations,
	}
}

// unruled is a sheet of an assay under no rules at all.
func unruled(a *assay.Assay) *sheet.Sheet {
	return &sheet.Sheet{Assay: a, Cards: func() []label.Card { return nil }, Allergens: func() []sheet.Declaration { return nil }}
}

// questioned is the same drink, asked why and what next.
func questioned() *sheet.Sheet {
	s := tide()
	f, _ := s.Assay.PerServing.Find("CITAC")
	s.Assay.Drivers = &drivers.Drivers{
		Figure: f,
		Shares: map[estimate.Cause]float64{estimate.Tables: 0.71, estimate.Hand: 0.2, estimate.Readings: 0.003},
		Inputs: []drivers.Driver{
			{Cause: estimate.Tables, Name: "citric acid of core:lemon-juice", Share: 0.71, Raises: true},
			{Cause: estimate.Hand, Name: "syrup\x1b[2J ~s 2~t/reduce/to", Share: 0.2},
			{Cause: estimate.Readings, Name: "brix of syrup", Share: 0.003, Raises: true},
		},
		Rest: 0.087,
	}
	narrow := func(id constituent.ID, by float64) drivers.Narrowing {
		return drivers.Narrowing{Constituent: constituent.Must(id), By: by}
	}
	s.Assay.Suggestions = []drivers.Suggestion{
		{Of: hostile, Reading: "brix", Unit: "°Bx", Expect: estimate.Summary{Mean: 49.43, SD: 0.7, Low: 48.2, High: 50.6}, Score: 0.2, Narrows: []drivers.Narrowing{narrow(constituent.Sugar, 0.41), narrow("CITAC", 0.08), narrow("MALAC", 0.004)}},
		{Reading: "density", Unit: "g/ml", Expect: estimate.Summary{Mean: 1.0457, SD: 0.0014, Low: 1.0433, High: 1.048}, Score: 0.1, Narrows: []drivers.Narrowing{narrow(constituent.Sugar, 0.04)}},
	}
	return s
}

func entryOf(a *assay.Assay, id constituent.ID, ids ...string) evidence.Entry {
	f, _ := a.PerServing.Find(id)
	e := evidence.Entry{Figure: f, Works: works(ids...)}
	if alone, ok := a.Components[0].Constituents.Find(id); ok {
		e.Alone = &alone
	}
	return e
}

func cards() []label.Card {
	cell := func(printed, reference, daily string) *label.Cell {
		return &label.Cell{Printed: printed, Reference: reference, DailyValue: daily}
	}
	return []label.Card{
		{
			Rules: "eu", Title: "Nutrition declaration", Percents: "% reference*", Basis: label.Per100ml, ServingG: 118, ServingMl: 112.7,
			Columns: []string{label.Per100ml, label.PerServing},
			Rows: []label.Row{
				{Key: "energy", Label: "Energy", Per100ml: cell("200 kJ / 47 kcal", "", ""), Serving: cell("226 kJ / 53 kcal", "3 %", "")},
				{Key: "saturates", Label: "of which saturates", Indent: 1, Per100ml: cell("<0.1 g", "", ""), Serving: cell("<0.1 g", "0 %", "")},
				{Key: "fibre", Label: "Fibre", FromMemory: true, Unknown: true, Per100ml: cell("not determined", "", ""), Serving: cell("not determined", "", "")},
			},
			Statements: []label.Text{{Text: "Reference intake of an average adult (8 400 kJ/2 000 kcal)"}},
			Notes: []label.Note{
				{Kind: "incomplete", Row: "saturates", Text: "Of which saturates: not complete."},
				{Kind: "scope", Text: "A served drink needs no card.", FromMemory: true},
			},
		},
		{
			Rules: "us", Title: "Nutrition Facts", Percents: "% Daily Value*", Basis: label.PerServing, ServingG: 118, Columns: []string{label.PerServing},
			Rows: []label.Row{
				{Key: "calories", Label: "Calories", Serving: cell("50", "", "")},
				{Key: "added-sugars", Label: "Added Sugars", Indent: 2, Line: "Includes 6 g Added Sugars", Serving: cell("6 g", "", "12 %")},
			},
			Claims: []label.Claim{
				{Claim: "low\x1b[2J sodium", Allowed: true, Why: "35 mg sodium per serving, at most 140", Verdict: "allowed", Disclosure: "a statement", Status: "secondary"},
				{Claim: "low fat", Allowed: true, Implied: true, Why: "implied", Verdict: "allowed", Status: "verified"},
				{Claim: "fat free", Near: true, Why: "at length", Short: "0.4 g fat, up to 0.6; below 0.5", Verdict: "not allowed yet", Status: "verified"},
				{Claim: "low sugars", Why: "10 g sugars per 100 ml, at most 2.5", Verdict: "not allowed", Status: "unverified"},
			},
		},
	}
}

func declarations() []sheet.Declaration {
	dose := caution.Caution{Code: "caffeine", Text: "One serving holds about 72 mg of caffeine.", Source: "EFSA Journal 2015;13(5):4102", Because: "caffeine per serving"}
	return []sheet.Declaration{
		{
			Declaration: allergen.Declaration{
				Rules: "eu",
				Contains: []allergen.Entry{{
					Code: "milk", Name: "Milk", From: []string{"core:milk-whole", "own:house"}, Via: []string{"clarified milk / \u202ewhey"},
					Ways: []allergen.Way{{Food: "core:milk-whole", Via: []string{"the build"}}, {Food: "own:house", Via: []string{"clarified milk / \u202ewhey"}}},
					Knowledge: []allergen.Evidence{
						{Food: "core:milk-whole", Leaf: "cow milk", How: allergen.Stated},
						{Food: "own:house", Leaf: "cow milk", How: allergen.Inferred, Rules: []string{"m1"}},
					},
					Source: "Regulation (EU) No 1169/2011, Annex II",
				}},
				MayContain: []allergen.Entry{{Name: "Nuts (almond)"}},
				Check: []allergen.Check{
					{Code: allergen.CheckNotAssessed, Foods: []string{"own:oat"}, Text: "Read its label."},
					{Code: allergen.CheckPossible, Leaf: "sulphites", Leaves: []string{"sulphites"}, Name: "Sulphites", Foods: []string{"sr:14096"}, Question: "how much sulphur dioxide?", Text: "Often in wine.", Source: "common practice, from memory"},
				},
			},
			Cautions: []caution.Caution{dose, {Code: "high", Text: "Say so beside the name.", Source: "Annex III, 4.1"}},
		},
		{
			Declaration: allergen.Declaration{Rules: "us", NotDeclared: []allergen.Entry{{Name: "oats"}}},
			Cautions:    []caution.Caution{dose},
		},
	}
}
