package sheet

import (
	"cmp"
	"fmt"
	"slices"

	"sipsum/internal/acid"
	"sipsum/internal/acidity"
	"sipsum/internal/chemistry"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/evidence"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
	"sipsum/internal/solution"
)

// The constituents on the screen, the acids apart: of these there are those that the drink has.
const (
	chlorogenic constituent.ID = "CHLRAC"
	phosphate   constituent.ID = "phosphate"
	quinine     constituent.ID = "quinine"
)

var briefly = []constituent.ID{
	constituent.Sugar, constituent.Polyols, constituent.OrganicAcids, constituent.Caffeine, chlorogenic, quinine, constituent.Alcohol,
	constituent.Fat, constituent.Protein, constituent.CarbonDioxide,
}

// acids are the acids that somebody has named, and phosphate.
func acids(pot *ledger.Pot) []constituent.ID {
	var ids []constituent.ID
	for _, c := range constituent.Sums().Leaves(constituent.OrganicAcids) {
		if c.Kind != constituent.Rest && pot.Columns.At(c.ID) >= 0 {
			ids = append(ids, c.ID)
		}
	}
	if pot.Columns.At(phosphate) >= 0 {
		ids = append(ids, phosphate)
	}
	return ids
}

// taster reads the senses off a serving.
type taster struct {
	s       briefing
	coffee  *coffee
	further []*coffee
	pot     *ledger.Pot
	meter   *composition.Meter
	all     composition.Composition // of the pot, as far as the assay does not say
}

// figure gives a constituent of the serving; false where no food says anything of it.
func (t *taster) figure(id constituent.ID) (composition.Result, bool) {
	if f, ok := t.s.Assay.PerServing.Find(id); ok {
		return f.Result, true
	}
	if t.all == nil {
		rows := make([]int, len(t.pot.Rows))
		for row := range rows {
			rows[row] = row
		}
		t.all = composed(t.pot, rows)
	}
	f, ok := t.all.Find(id)
	return f.Result, ok
}

// pours reports whether a food of a kind is in the serving.
func (t *taster) pours(kind func(food.Group) bool) bool {
	return slices.ContainsFunc(t.pot.Rows, func(r ledger.Row) bool { return kind(r.Profile.Food.Facts()) })
}

// add puts a constituent into a sense: its figure, or that nobody has measured it.
func (t *taster) add(x *Sense, id constituent.ID, leads bool) {
	c := constituent.Must(id)
	r, ok := t.figure(id)
	switch {
	case !ok || None(r):
		return
	}
	by := Ingredients(t.s.Sheet, c)
	for _, i := range by {
		if i.Unknown {
			x.gaps = append(x.gaps, Gapping{c, i, t.s.madeUnknown(i.Food.ID, c), unknownUpTo(i.Most, c.Unit)})
		}
	}
	if Hollow(r) {
		x.Unmeasured = append(x.Unmeasured, WordsFor(c))
		return
	}
	f := SenseFigure{Key: string(id), Words: WordsFor(c), Leads: leads, Form: Metered, Result: r, By: by}
	t.beside(&f, func(k *coffee) (composition.Result, bool) {
		alone, ok := k.figures.Find(id)
		return alone.Result, ok && alone.Mean != r.Mean // it is not all there is
	})
	x.Figures = append(x.Figures, f)
}

// beside puts what each coffee alone has beside a figure.
func (t *taster) beside(f *SenseFigure, of func(*coffee) (composition.Result, bool)) {
	alone := func(k *coffee) *composition.Result {
		if k == nil {
			return nil
		}
		if r, ok := of(k); ok {
			return &r
		}
		return nil
	}
	f.Alone = alone(t.coffee)
	for _, k := range t.further {
		f.Further = append(f.Further, alone(k))
	}
}

// dissolved puts a figure of the solution into a sense, and that of the coffee alone beside it.
func (t *taster) dissolved(x *Sense, key, words string, form Form, of func(*chemistry.Chemistry) (composition.Result, bool)) {
	c := t.s.Assay.Chemistry
	if c == nil {
		return
	}
	if r, ok := of(c); ok {
		f := SenseFigure{Key: key, Words: words, Leads: true, Form: form, Result: r, FromMemory: len(c.Unseen) > 0 && form == Estimated}
		t.beside(&f, func(k *coffee) (composition.Result, bool) {
			if k.chemistry == nil {
				return composition.Result{}, false
			}
			return of(k.chemistry)
		})
		x.Figures = append(x.Figures, f)
	}
}

func (t *taster) sweet() Sense {
	x := Sense{Name: "sweet"}
	t.add(&x, constituent.Sugar, true)
	if r, ok := t.figure(constituent.Polyols); ok && !Hollow(r) {
		t.add(&x, constituent.Polyols, false)
	}
	words := ""
	if a, ok := t.figure(constituent.Alcohol); ok && solution.ABV(a.Mean, servingMl(t.s.Assay)) >= leastABV {
		words = "with its alcohol" // which bends light as sugar does
	}
	t.dissolved(&x, "brix", words, Metered, func(c *chemistry.Chemistry) (composition.Result, bool) {
		return c.Brix, c.TooDry == "" && !None(c.Brix)
	})
	if len(x.Figures) == 0 && len(x.Unmeasured) == 0 {
		x.None = "no sugars known"
	}
	return x
}

func (t *taster) sour() Sense {
	x := Sense{Name: "sour"}
	t.dissolved(&x, "ph", fmt.Sprintf("pH at %g °C", acidity.MeterCelsius), Estimated, func(c *chemistry.Chemistry) (composition.Result, bool) {
		return c.PHMeter.Result, c.PHMeter.Why == "" && c.PHMeter.Unit != ""
	})
	titratable := func(c *chemistry.Chemistry) (composition.Result, bool) {
		if len(c.Acidity) == 0 {
			return composition.Result{}, false
		}
		return c.Acidity[0].Per100g.Result, c.Acidity[0].Per100g.Why == "" && c.Acidity[0].Per100g.Unit != ""
	}
	t.dissolved(&x, "titratable_acidity", "acidity", Estimated, titratable)
	if n := len(x.Figures); n > 0 && x.Figures[n-1].Key == "titratable_acidity" && x.Figures[n-1].Result.High < chemistry.HardlySour {
		x.Figures[n-1].Form = HardlyThere
	}
	if c := t.s.Assay.Chemistry; c != nil {
		x.Withheld = slices.DeleteFunc(withheld(c), func(w Withheld) bool { return w.What == noBrix || w.What == noBrixAlone })
		for i := range x.Withheld {
			x.Withheld[i].Why = t.s.inWords(x.Withheld[i].Why)
		}
	}
	t.acids(&x)
	return x
}

// acids puts the acids into a sense, first what makes most of the sourness: by equivalents, since
// what a burette finds of a gram hangs on the acid.
func (t *taster) acids(x *Sense) {
	single := Sense{}
	for _, id := range acids(t.pot) {
		t.add(&single, id, false)
	}
	slices.SortStableFunc(single.Figures, func(a, b SenseFigure) int {
		switch string(phosphate) { // a salt as much as an acid: after them
		case a.Key:
			return 1
		case b.Key:
			return -1
		}
		return cmp.Compare(sourness(b), sourness(a))
	})
	x.Figures = append(x.Figures, single.Figures...)
	x.Unmeasured, x.gaps = append(x.Unmeasured, single.Unmeasured...), append(x.gaps, single.gaps...)
	if r, ok := t.figure(constituent.OrganicAcids); ok && Hollow(r) && len(single.Figures) == 0 {
		x.Unmeasured = []string{WordsFor(constituent.Must(constituent.OrganicAcids))}
	}
}

// sourness is the central value of an acid's figure in mol of what a base takes; of an acid that
// no constants are known of, as citric acid.
func sourness(f SenseFigure) float64 {
	grams := f.Result.Mean / constituent.Must(constituent.ID(f.Key)).PerGram
	of := acid.All()[acid.Must("citric")]
	for _, a := range acid.All() {
		if a.Constituent == constituent.ID(f.Key) {
			of = a
		}
	}
	return grams / of.Equivalent()
}

func (t *taster) bitter() Sense {
	x := Sense{Name: "bitter"}
	t.add(&x, constituent.Caffeine, true)
	if r, ok := t.figure(chlorogenic); ok && !Hollow(r) || t.pours(func(f food.Group) bool { return f.Coffee }) {
		t.add(&x, chlorogenic, true)
	}
	if r, ok := t.figure(quinine); ok && r.Mean > 0 || t.s.cautioned(string(quinine)) {
		n := len(x.Figures)
		if t.add(&x, quinine, true); len(x.Figures) > n {
			x.Figures[n].Alone, x.Figures[n].Further = nil, nil // who pours a tonic does not ask it of the coffee
		}
	}
	if len(x.Figures) == 0 && len(x.Unmeasured) == 0 {
		x.None = "no caffeine and no chlorogenic acids known"
	}
	return x
}

// alcohol is what a drink holds of it, and its strength; false if nobody need be told.
func (t *taster) alcohol() (Sense, bool) {
	x, a := Sense{Name: "alcohol"}, t.s.Assay
	r, ok := t.figure(constituent.Alcohol)
	abv := solution.ABV(r.Mean, servingMl(a))
	if !ok || None(r) || !(abv >= leastABV) && !t.s.cautioned("alcohol") {
		return x, false
	}
	t.add(&x, constituent.Alcohol, true)
	if len(x.Figures) > 0 {
		f := &x.Figures[0]
		f.Alone, f.Further = nil, nil // what a drink is set against is there for its taste
		if abv > 0 {
			f.Also = fmt.Sprintf("%.1f %% vol", abv)
			if r.Partial {
				f.Also = "≥ " + f.Also
			}
		}
	}
	return x, true
}

func (t *taster) body() Sense {
	x := Sense{Name: "body"}
	solids := composition.Solids(t.pot)
	r := t.meter.InGrams(t.pot, solids)
	switch {
	case None(r):
		return Sense{Name: x.Name, None: "water alone"}
	case Hollow(r):
		x.Unmeasured = append(x.Unmeasured, "solids")
		return x
	}
	x.Figures = append(x.Figures, SenseFigure{Key: "solids", Words: "solids", Leads: true, Form: Metered, Result: r, By: t.s.ingredients(solids, nil)})
	t.add(&x, constituent.Fat, false)
	t.add(&x, constituent.Protein, false)
	return x
}

func (t *taster) sparkle() Sense {
	x := Sense{Name: "sparkle"}
	r, ok := t.figure(constituent.CarbonDioxide)
	switch {
	case !ok || None(r), evidence.Still(t.s.Assay, r):
		if x.None = "still"; t.s.cautioned("nitrogen-gas") || t.s.cautioned("nitrous-oxide-gas") {
			x.None = "how much of the nitrogen or nitrous oxide stays in the glass is not calculated"
		}
	case Hollow(r), evidence.Faint(t.s.Assay, r): // of the gas nobody has stated how much, and what water brings is none
		x.Unmeasured = []string{WordsFor(constituent.Must(constituent.CarbonDioxide))}
	default:
		t.dissolved(&x, "co2", "carbon dioxide", Metered, func(c *chemistry.Chemistry) (composition.Result, bool) { return c.CO2, c.CO2.Mean > 0 })
		if len(x.Figures) == 0 {
			t.add(&x, constituent.CarbonDioxide, true)
		} else {
			x.Figures[0].By = Ingredients(t.s.Sheet, constituent.Must(constituent.CarbonDioxide))
		}
	}
	return x
}
