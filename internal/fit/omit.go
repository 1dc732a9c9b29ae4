package fit

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/claims"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/recipe"
	"sipsum/internal/taste"
	"sipsum/internal/unit"
)

// Kitchen makes benches of drinks that nobody wrote.
type Kitchen func(context.Context, *drink.Drink) (Bench, *recipe.Recipe, error)

// Omission is a drink and its match, which lacks a part of it.
type Omission struct {
	Name    string                   // as it was asked for
	Of      *constituent.Constituent // for which the part was chosen; nil: the part itself was named
	What    string                   // what is left out, as lines write it: a component, or a food
	Called  string                   // as pages call it
	Lines   []drink.Line             // that are left out
	Unread  []string                 // components whose readings no longer hold
	Drink   *drink.Drink             // without it, and with what was added
	Fillers []string                 // paths of what was added
	A       *assay.Assay             // the drink as it is written, with draws
	*Result                          // of the match: After is B
	Close   bool                     // the figures are as near as a scale can bring them, and not only within what a judge notices
	Remarks []string                 // what is not held, and why
}

// Omit makes a drink's match without a component, or without the food that brings most of a
// constituent. Sugar, an acid and water take the place of what is gone, as fitted; every other line
// stays, so that nothing else differs. Errors are *fail.Error.
func Omit(ctx context.Context, b Bench, r *recipe.Recipe, name string, kitchen Kitchen) (*Omission, error) {
	o := &Omission{Name: name}
	a, err := b.Central.Run(ctx, nil, assay.Want{Draws: true, Chemistry: true})
	if err != nil {
		return nil, err
	}
	if err := o.find(a, r, name); err != nil {
		return nil, err
	}
	if o.Drink, err = o.without(b.Drink); err != nil {
		return nil, err
	}
	bare, _, err := kitchen(ctx, o.Drink)
	if err != nil {
		return nil, err
	}
	rest, err := bare.Central.Run(ctx, nil, assay.Want{Draws: true, Chemistry: true})
	if err != nil {
		return nil, fail.Because(fail.Wrong, err, "without "+o.What+" the drink cannot be made as its steps say", "omit the whole component in which it is")
	}
	o.fill(a, rest)
	bench, _, err := kitchen(ctx, o.Drink)
	if err != nil {
		return nil, err
	}
	if o.A, err = b.Drawn.Run(ctx, nil, assay.Want{Figures: slices.Concat(Beside, []constituent.ID{constituent.Sugar}), Intervals: true, Chemistry: true, Draws: true}); err != nil {
		return nil, err
	}
	for _, o.Close = range []bool{true, false} {
		aims, err := o.aims(a, b.Declared)
		if err != nil {
			return nil, err
		}
		if o.Result, err = bench.Fit(ctx, aims); err != nil || o.Met {
			return o, err
		}
	}
	return o, nil
}

// find tells what a name means: a component, a food that a line pours, or a constituent.
func (o *Omission) find(a *assay.Assay, r *recipe.Recipe, name string) error {
	for i := range r.Drink.Components {
		if c := &r.Drink.Components[i]; strings.EqualFold(c.Name, name) {
			o.What, o.Called = c.Name, c.Name
			return nil
		}
	}
	for _, in := range r.Lines {
		if p := in.Profile; p != nil && (in.Line.Food == name || p.Food.ID.String() == name || strings.EqualFold(p.Food.Name(), name)) {
			o.What, o.Called = in.Line.Food, p.Food.Name()
			return nil
		}
	}
	c, err := constituent.Read(name, constituent.Any)
	if err != nil {
		return fail.New(fail.Wrong, note.Quote(name)+" is no component, food or constituent of the drink", "name a component as the file does, a food by its code (core:lemon-juice), or a constituent (malic acid)")
	}
	o.Of = c
	by := map[food.ID]float64{}
	lines := map[food.ID]string{}
	sort := composition.SortOf(a.Serving, c)
	var most food.ID
	for row, of := range a.Serving.Rows {
		if col := sort.Of(row); col != nil && of.Line != "" {
			id := of.Profile.Food.ID
			by[id] += col[0]
			lines[id] = r.Lines[of.Line].Line.Food
			if by[id] > by[most] {
				most, o.Called = id, of.Profile.Food.Name()
			}
		}
	}
	if o.What = lines[most]; o.What == "" {
		return fail.New(fail.Wrong, "nobody knows of "+c.Name+" in the drink", "name the component that is to be left out")
	}
	return nil
}

// without gives the drink without what is left out.
func (o *Omission) without(d *drink.Drink) (*drink.Drink, error) {
	next := *d
	next.Targets, next.Vary, next.Claims, next.Categories, next.CompareWith, next.CompareAlso, next.Glass = nil, nil, nil, nil, "", nil, nil
	next.Mentions = nil
	next.Components = slices.Clone(d.Components)
	gone, touched := []string{o.What}, map[string]bool{}
	for again := true; again; { // a component of which nothing is left goes too, and what it was in is read no more
		again = false
		for i := range next.Components {
			c := &next.Components[i]
			for _, s := range c.Steps {
				for _, l := range s.Lines() {
					if slices.Contains(gone, l.Food) {
						return nil, fail.New(fail.Wrong, note.Quote(o.What)+" goes into "+c.Name+" by a step ("+s.Kind()+")", "omit "+note.Quote(c.Name)+" as a whole")
					}
				}
			}
			kept := o.drop(c.Ingredients, gone)
			changes := len(kept) < len(c.Ingredients) || slices.ContainsFunc(kept, func(l drink.Line) bool { return touched[l.Food] })
			c.Ingredients = kept
			if changes && !touched[c.Name] {
				touched[c.Name], again = true, true
				o.unread(c)
			}
			if len(kept) == 0 && !slices.Contains(gone, c.Name) {
				gone, again = append(gone, c.Name), true
			}
		}
	}
	for _, s := range d.Finish {
		for _, l := range s.Lines() {
			if slices.Contains(gone, l.Food) {
				return nil, fail.New(fail.Wrong, note.Quote(o.What)+" goes into the drink by a step under finish ("+s.Kind()+")", "move its line to build, or omit another part")
			}
		}
	}
	next.Build, next.Garnish = o.drop(d.Build, gone), o.drop(d.Garnish, gone)
	next.Components = slices.DeleteFunc(next.Components, func(c drink.Component) bool { return slices.Contains(gone, c.Name) })
	switch {
	case len(next.Build) == 0:
		return nil, fail.New(fail.Wrong, "without "+note.Quote(o.What)+" nothing is left of the drink", "omit a part of it")
	case len(o.Lines) == 0:
		return nil, fail.New(fail.Wrong, note.Quote(o.What)+" is in no line that is poured", "name what the build pours, or an ingredient of it")
	}
	return &next, nil
}

// drop leaves out the lines that pour what is gone.
func (o *Omission) drop(lines []drink.Line, gone []string) []drink.Line {
	var kept []drink.Line
	for _, l := range lines {
		if slices.Contains(gone, l.Food) {
			o.Lines = append(o.Lines, l)
			continue
		}
		kept = append(kept, l)
	}
	return kept
}

// unread forgets the readings of a component, which were of it as it was.
func (o *Omission) unread(c *drink.Component) {
	if forgotten(c) {
		o.Unread = append(o.Unread, c.Name)
	}
}

// forgotten takes what was read of a component out; false where nothing was.
func forgotten(c *drink.Component) bool {
	was := c.Measured != nil || slices.ContainsFunc(c.Steps, isReading)
	c.Measured, c.Steps = nil, slices.DeleteFunc(slices.Clone(c.Steps), isReading)
	return was
}

func isReading(s drink.Step) bool {
	_, is := s.(*drink.Measured)
	return is
}

// filler is a pure food that stands for what is gone.
type filler struct {
	food     string
	of       []constituent.ID // what it brings
	decimals int              // that a line of it is written with
}

// The fillers, the usual one first: the next is taken where it brings what was to be left out.
var (
	sweeteners = []filler{{"core:sugar-white", []constituent.ID{constituent.Sucrose, "SUCS"}, 1}, {"core:glucose", []constituent.ID{"GLUS"}, 1}, {"core:fructose", []constituent.ID{"FRUS"}, 1}}
	acids      = []filler{{"core:citric-acid", []constituent.ID{"CITAC"}, 2}, {"core:malic-acid", []constituent.ID{"MALAC"}, 2}}
	waters     = []filler{{"core:water-pure", []constituent.ID{constituent.Water}, 1}}
)

// fill adds what the rest lacks of sugars, acidity and volume, as near as it can be reckoned; the fit
// does the rest.
func (o *Omission) fill(a, rest *assay.Assay) {
	serves := float64(o.Drink.Serves)
	sugar := (amountOf(a) - amountOf(rest)) * serves
	acid := (acidOf(a) - acidOf(rest)) * serves
	water := (a.Volume.Mean-rest.Volume.Mean)*serves - perGramOfSugar*max(sugar, 0) - perGramOfSugar*max(acid, 0)
	o.add(sweeteners, sugar)
	o.add(acids, acid)
	o.add(waters, water)
}

// perGramOfSugar is the volume in ml that a gram of dissolved sugar takes: where the search begins.
const perGramOfSugar = 0.62

func (o *Omission) add(list []filler, grams float64) {
	f := list[0]
	for _, other := range list {
		if o.Of == nil || !slices.Contains(other.of, o.Of.ID) {
			f = other
			break
		}
	}
	step := math.Pow10(-f.decimals)
	if x := math.Round(grams/step) * step; x >= step {
		measure, _ := unit.FindMeasure("g")
		at := func(x float64) unit.Amount {
			return unit.Amount{Number: math.Round(x/step) * step, Measure: measure, Decimals: f.decimals}
		}
		path := "build/" + f.food
		for slices.ContainsFunc(o.Drink.Build, func(l drink.Line) bool { return l.Path == path }) {
			path += "~match"
		}
		o.Drink.Build = append(o.Drink.Build, drink.Line{Path: path, Amount: at(x), Food: f.food, Eaten: true})
		within := unit.LimitOf("amount that nobody lets vary", "share")
		o.Drink.Vary = append(o.Drink.Vary, drink.Vary{Of: path, From: at(max(step, within.Low*x)), To: at(max(2*step, within.High*x))})
		o.Fillers = append(o.Fillers, path)
	}
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
	add := func(figure, says, taste string, low, high float64) error {
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
		aim, err := parsed(fmt.Sprintf("%s between %s %s and %s %s", figure, finer(low*x), in, finer(high*y), in), Ready{cmp.Or(taste, says), true, low, high})
		list = append(list, aim)
		return err
	}
	low, high := r.kept(Sweet)
	if err := add(sugars, "sugars", "equal sugars", low, high); err != nil {
		return nil, err
	}
	if withheld := r.profile.Sour.Titratable.Why; withheld != "" {
		o.Remarks = append(o.Remarks, "equal acidity is not held: "+withheld)
	} else {
		low, high = r.kept(Sour)
		if err := add("ta()", "acidity", "equal acidity", low, high); err != nil {
			return nil, err
		}
	}
	return list, add("volume()", "volume", "equal volume", size.Low, size.High)
}

func finer(x float64) string { return fmt.Sprintf("%.6f", x) }
