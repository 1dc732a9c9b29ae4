package fit

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"sipsum/internal/assay"
	"sipsum/internal/claims"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/embedded"
	"sipsum/internal/solution"
	"sipsum/internal/taste"
	"sipsum/internal/unit"
)

// The parts of what takes the place of what is gone.
const (
	Sugars  = "sugars"
	Acidity = "acidity"
	Volume  = "volume"
)

// filler is a pure food that stands for what is gone.
type filler struct {
	food     string
	brings   []constituent.ID
	decimals int // that a line of it is written with
}

// fillers are those of data/match_fillers.csv by their part, the usual one first.
var fillers = sync.OnceValue(func() map[string][]filler {
	list := map[string][]filler{}
	for _, row := range embedded.Rows("match_fillers.csv") {
		f := filler{food: row.Text("food"), decimals: row.Whole("decimals")}
		for _, id := range strings.Fields(row.Text("brings")) {
			f.brings = append(f.brings, constituent.Must(constituent.ID(id)).ID)
		}
		list[row.Text("part")] = append(list[row.Text("part")], f)
	}
	return list
})

// filler gives the food of a part: the next is taken where one is, or brings, what was to be left out.
func (o *Omission) filler(part string) filler {
	list := fillers()[part]
	for _, f := range list {
		if f.food != o.food.String() && (o.Of == nil || !slices.Contains(f.brings, o.Of.ID)) {
			return f
		}
	}
	return list[0]
}

// fillPots pours sugar, acid and water where lines of a pot stood: as much as they brought, and
// together as heavy as they were, so that its steps find as much and the rest is as strong as it was.
func (o *Omission) fillPots(ctx context.Context, d *drink.Drink, kitchen Kitchen) error {
	for _, p := range o.Places {
		brought, err := alone(ctx, d, p.Line, kitchen)
		if err != nil {
			return err
		}
		sugar, acid := amountOf(brought), acidOf(brought)
		list := o.listAt(p)
		for _, x := range []struct {
			part  string
			grams float64
		}{{Sugars, sugar}, {Acidity, acid}, {Volume, brought.Mass.Mean - sugar - acid}} {
			by := x.grams
			if share(p.Line) { // of a hundred grams
				by *= p.Line.Amount.Number / unit.Hundred
			}
			if l, ok := o.add(*list, p.Line, x.part, by); ok {
				*list, p.By = append((*list)[:len(*list):len(*list)], l), append(p.By, l)
			}
		}
		o.setList(p, *list)
	}
	return nil
}

// alone calculates what a line pours as a drink of its own; of a share, a hundred grams.
func alone(ctx context.Context, d *drink.Drink, l drink.Line, kitchen Kitchen) (*assay.Assay, error) {
	only := *d
	only.Targets, only.Vary, only.Claims, only.Categories, only.CompareWith, only.CompareAlso, only.Glass = nil, nil, nil, nil, "", nil, nil
	only.Mentions, only.Finish, only.Garnish = nil, nil, nil
	if only.Serves = 1; share(l) {
		l.Amount = unit.Amount{Number: unit.Hundred, Measure: grams(), Decimals: 0}
	}
	l.Path, l.Eaten = "build/~alone", true // its own stands in its pot
	only.Build = []drink.Line{l}
	bench, _, err := kitchen(ctx, &only)
	if err != nil {
		return nil, err
	}
	return bench.Drawn.Run(ctx, nil, assay.Want{Draws: true, Chemistry: true})
}

func share(l drink.Line) bool { return l.Portion == "" && l.Amount.Measure.Kind == unit.Share }

func grams() unit.Measure {
	m, _ := unit.FindMeasure("g")
	return m
}

// listAt gives the lines among which a place is.
func (o *Omission) listAt(p *Place) *[]drink.Line {
	for i := range o.Drink.Components {
		c := &o.Drink.Components[i]
		if c.Name != p.Pot {
			continue
		}
		if p.step == "" {
			return &c.Ingredients
		}
		for _, s := range c.Steps {
			if s.StepPath() == p.step {
				lines := s.Lines()
				return &lines
			}
		}
	}
	return new([]drink.Line)
}

// setList puts the lines of an adding step into it; of one that is left empty the step goes.
func (o *Omission) setList(p *Place, lines []drink.Line) {
	for i := range o.Drink.Components {
		c := &o.Drink.Components[i]
		if c.Name != p.Pot || p.step == "" {
			continue
		}
		at := slices.IndexFunc(c.Steps, func(s drink.Step) bool { return s.StepPath() == p.step })
		if c.Steps = slices.Clone(c.Steps); len(lines) == 0 {
			c.Steps = slices.Delete(c.Steps, at, at+1)
			continue
		}
		c.Steps[at] = drink.WithLines(c.Steps[at], lines)
	}
}

// fillBuild adds what the rest lacks of sugars, acidity and volume, as near as it can be reckoned; the
// fit does the rest. What is lacking within what is matched is not lacking.
func (o *Omission) fillBuild(a, rest *assay.Assay) {
	serves, within := float64(o.Drink.Serves), (unit.LimitOf("what is matched of a variant", "share").High-1)/2
	lacks := func(was, is float64) float64 {
		if was-is <= within*was {
			return 0
		}
		return (was - is) * serves
	}
	sugar, acid := lacks(amountOf(a), amountOf(rest)), lacks(acidOf(a), acidOf(rest))
	water := lacks(a.Volume.Mean, rest.Volume.Mean) - sugar*millilitres(constituent.Sugar) - acid*millilitres("CITAC")
	for _, x := range []struct {
		part  string
		grams float64
	}{{Sugars, sugar}, {Acidity, acid}, {Volume, water}} {
		at := drink.Line{Path: "build/"}
		if l, ok := o.add(o.Drink.Build, at, x.part, x.grams); ok {
			o.Drink.Build = append(o.Drink.Build[:len(o.Drink.Build):len(o.Drink.Build)], l)
		}
	}
}

// millilitres is what a gram that is dissolved takes up: where the search begins.
func millilitres(id constituent.ID) float64 {
	v, _ := solution.VolumeOf(id)
	return v.MlPerGram
}

// add makes a line of a filler beside another, and lets it vary; of less than a scale shows there is none.
func (o *Omission) add(list []drink.Line, at drink.Line, part string, x float64) (drink.Line, bool) {
	f := o.filler(part)
	l := drink.Line{Path: listed(at.Path, f.food), Food: f.food, Eaten: true, Amount: unit.Amount{Measure: grams(), Decimals: f.decimals}}
	if at.Food != "" && share(at) {
		l.Amount.Measure, l.Amount.Decimals = at.Amount.Measure, f.decimals+1
	}
	steps := math.Pow10(l.Amount.Decimals)
	rounded := func(x float64) float64 { return math.Round(x*steps) / steps }
	if x = rounded(x); x <= 0 {
		return l, false
	}
	for slices.ContainsFunc(list, func(other drink.Line) bool { return other.Path == l.Path }) {
		l.Path += "~match"
	}
	amount := func(x float64) unit.Amount {
		a := l.Amount
		a.Number = rounded(x)
		return a
	}
	l.Amount = amount(x)
	o.Fillers = append(o.Fillers, l.Path)
	if at.Food == "" || !share(at) { // a share moves with its list and not by itself
		within := unit.LimitOf("amount that nobody lets vary", "share")
		o.Drink.Vary = append(o.Drink.Vary, drink.Vary{Of: l.Path, From: amount(max(1/steps, within.Low*x)), To: amount(max(2/steps, within.High*x))})
	}
	return l, true
}

func amountOf(a *assay.Assay) float64 {
	x, _, _ := a.AmountOf(constituent.Sugar)
	return x
}

// acidOf is the titratable acid of a serving in grams, as citric acid; none where it is withheld.
func acidOf(a *assay.Assay) float64 {
	if a.Chemistry == nil || len(a.Chemistry.Acidity) == 0 || a.Chemistry.Acidity[0].PerLitre.Why != "" {
		return 0
	}
	return a.Chemistry.Acidity[0].PerLitre.Mean * a.Volume.Mean / millilitresOfALitre
}

const millilitresOfALitre = 1000

// aims hold the match to the drink: near, or within what a judge does not notice.
func (o *Omission) aims(a *assay.Assay, declared claims.Declared) ([]Aim, error) {
	o.Remarks = nil
	r := ready{a, claims.NewGlass(a, declared), taste.Of(a.Glass())}
	near := unit.LimitOf("what is matched of a variant", "share")
	size := unit.LimitOf("what is kept of a serving", "share")
	var list []Aim
	add := func(figure, says string, low, high float64) error {
		if o.Close {
			low, high = near.Low, near.High
		}
		x, y, in, err := r.ends(figure)
		switch {
		case err != nil:
			return err
		case math.IsNaN(y) || math.IsInf(y, 0):
			o.Remarks = append(o.Remarks, "equal "+says+" is not held: nobody knows all of it")
			return nil
		case x == 0 && y == 0:
			return nil
		}
		aim, err := parsed(fmt.Sprintf("%s between %s %s and %s %s", figure, finer(low*x), in, finer(high*y), in), Ready{Says: "equal " + says, Kept: true, Least: low, Most: high})
		list = append(list, aim)
		return err
	}
	low, high := r.kept(Sweet)
	if err := add(sugars, Sugars, low, high); err != nil {
		return nil, err
	}
	if withheld := r.profile.Sour.Titratable.Why; withheld != "" {
		o.Remarks = append(o.Remarks, "equal acidity is not held: "+withheld)
	} else {
		low, high = r.kept(Sour)
		if err := add("ta()", Acidity, low, high); err != nil {
			return nil, err
		}
	}
	return list, add("volume()", Volume, size.Low, size.High)
}

func finer(x float64) string { return fmt.Sprintf("%.6f", x) }
