package sheet

import (
	"cmp"
	"math"
	"slices"

	"sipsum/internal/amount"
	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/drivers"
	"sipsum/internal/estimate"
	"sipsum/internal/evidence"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// Next is the reading that would tell most, and the line that it takes in the drink file.
type Next struct {
	Of      string // a component, or empty: the finished drink
	Reading string
	Unit    string
	Expect  estimate.Summary    // by the recipe; NaN where it does not tell
	Narrows []drivers.Narrowing // what is on the screen, the most first
	Why     string              // it is withheld without the reading; empty: it is not

	Line  string // to paste, with a gap for what was read
	Under string // where: a component's name, or finish
	Adds  bool   // there are readings already: the line's key goes to them
	More  int    // further readings that would narrow something
}

// shownIn is the unit in which a reading is written.
var shownIn = map[string]string{"mass": " g", "brix": "", "tds": " %", "density": " g/ml", "abv": " %", "ph": "", "ta": " %"}

// next gives the reading to take: of what is withheld without one, else the one that narrows most
// of what is on the screen.
func (s briefing) next(senses []Sense) *Next {
	list := narrowing(s.Assay.Suggestions, senses)
	if c := s.Assay.Chemistry; c != nil {
		for _, w := range withheld(c) {
			if w.Reading != "" {
				none := math.NaN()
				n := lineOf(s.Assay, "", w.Reading)
				n.Why, n.More = w.What, len(list)
				n.Expect = estimate.Summary{Mean: none, SD: none, Low: none, High: none}
				return n
			}
		}
	}
	if len(list) == 0 {
		return nil
	}
	n := lineOf(s.Assay, list[0].Of, list[0].Reading)
	n.Expect, n.Narrows, n.More = list[0].Expect, list[0].Narrows, len(list)-1
	return n
}

// narrowing keeps of some readings what they narrow on the screen, and sorts them by that.
func narrowing(list []drivers.Suggestion, senses []Sense) []drivers.Suggestion {
	var out []drivers.Suggestion
	for _, g := range list {
		shown := func(n drivers.Narrowing) bool {
			return slices.ContainsFunc(senses, func(x Sense) bool {
				return slices.ContainsFunc(x.Figures, func(f SenseFigure) bool { return f.Key == string(n.Constituent.ID) })
			})
		}
		var narrows []drivers.Narrowing
		g.Score = 0
		for _, n := range g.Narrows {
			if n.By > leastShare && shown(n) {
				narrows = append(narrows, n)
				g.Score += n.By
			}
		}
		if g.Narrows = narrows; len(narrows) > 0 && narrows[0].By >= worthReading() {
			out = append(out, g)
		}
	}
	slices.SortStableFunc(out, func(a, b drivers.Suggestion) int { return cmp.Compare(b.Score, a.Score) })
	return out
}

// lineOf writes the line of a reading.
func lineOf(a *assay.Assay, of, reading string) *Next {
	n := &Next{Of: of, Reading: reading, Unit: amount.MustInstrument(reading).Unit, Under: "finish"}
	gap := reading + ": …" + shownIn[reading]
	n.Line = "- measured: {" + gap + "}"
	if c, ok := a.Drink.Component(of); ok {
		n.Line, n.Under, n.Adds = "measured: {"+gap+"}", c.Name, c.Measured != nil
		if n.Adds {
			n.Line = gap
		}
	}
	return n
}

// Gapping is the unknown that matters most: a constituent on the screen of which a food's part
// nobody has measured, or of which a step left nobody knows how much.
type Gapping struct {
	Constituent *constituent.Constituent
	By          Ingredient
	In          string             // the component whose steps made it unknown; empty: nobody has measured it
	Result      composition.Result // of what the food brings: nothing known, up to its most
}

// gapping finds the food and the constituent of which the unknown may be most beside what the
// sense is known to hold; what nothing bounds only where nothing else weighs, and of a food that is
// more than a spice. Of a sense of which nothing is known the line itself says so. Only what speaks
// for a sense is looked at: nobody decides anything by an acid that stands in no category.
func (s briefing) gapping(senses []Sense) *Gapping {
	var most, open *Gapping
	worst := ledger.Weighty
	decides := evidence.Constituents(s.Assay.Drink)
	for _, x := range senses {
		beside := 0.0
		for _, f := range x.Figures {
			if c, ok := constituent.Find(f.Key); ok {
				beside += f.Result.Mean / c.PerGram
			}
		}
		for _, g := range x.gaps {
			if g.Constituent.ID == phosphate || !slices.Contains(decides, g.Constituent.ID) {
				continue
			}
			unknown := g.By.Most / g.Constituent.PerGram
			weight := unknown / (beside + unknown)
			switch {
			case beside == 0:
			case math.IsNaN(weight) && open == nil && s.pours(g.By.Food.ID):
				open = &g
			case weight > worst:
				worst, most = weight, &g
			}
		}
	}
	return cmp.Or(most, open)
}

// pours reports whether a food is more than a spice of the drink.
func (s briefing) pours(of food.ID) bool {
	mass := 0.0
	for row, r := range s.Assay.Serving.Rows {
		if r.Profile.Food.ID == of {
			mass += s.Assay.Serving.CentralOf(row, constituent.Mass)
		}
	}
	return mass >= ledger.Weighty*s.Assay.Mass.Mean
}

// madeUnknown names the component whose steps left nobody knows how much of what a table states of
// a food; empty if the table states nothing.
func (s briefing) madeUnknown(of food.ID, c *constituent.Constituent) string {
	for _, r := range s.Assay.Serving.Rows {
		if known := r.Profile.Cell(c.ID).State < estimate.Trace; r.Profile.Food.ID == of && known && len(r.Path) > 0 {
			return r.Path[0]
		}
	}
	return ""
}

// unknownUpTo is a result of which nothing is known but its end.
func unknownUpTo(most float64, unit string) composition.Result {
	return composition.Result{Unit: unit, State: estimate.Unknown, Unknown: true, Partial: true, WithBounds: most, UpTo: most}
}
