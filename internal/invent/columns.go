package invent

import (
	"context"
	"fmt"
	"math"
	"strings"

	"sipsum/internal/acidity"
	"sipsum/internal/assay"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/prep"
	"sipsum/internal/recipe"
)

// condition is a target, or a part of one, as a sum of what adds up.
type condition struct {
	claim.Form
	aim int // whose part it is; −1: that of the glass
}

// columns are what something adds to each condition, by condition and draw, the central value first: with
// what nobody knows at the end that hurts, and at the end that helps.
type columns struct {
	hurt, help [][]float64
	hand       []float64 // by how many grams of a serving whoever pours it is off; nil: by none
}

// addends are the figures of an assay that conditions ask for.
type addends struct {
	a *assay.Assay
	g *claims.Glass
	n int

	group food.Group // of a food alone: between what pH such foods are, where nobody has stated their acids
}

func newAddends(a *assay.Assay, n int) addends {
	return addends{a: a, g: claims.NewGlass(a, nil), n: n}
}

// ofFood are the addends of a cup of a food.
func ofFood(f *food.Food, a *assay.Assay, n int) addends {
	x := newAddends(a, n)
	x.group = f.Facts()
	return x
}

// mayHelp reports whether acids that nobody has stated may bring a term nearer to its end. Two liquids that are
// both less sour than a pH make none that is as sour, whatever their acids are.
func (x addends) mayHelp(t claim.Term) bool {
	if x.group.PHHigh == 0 {
		return true
	}
	end := t.Of.PH
	if t.Of.Property == claim.Acidity {
		end = acidity.EndPoints[0]
	}
	if t.Times > 0 {
		return x.group.PHLow < end
	}
	return x.group.PHHigh > end
}

// of gives the least and the most of a figure in its draws, and what of it nobody knows.
func (x addends) of(ad claim.Addend) (least, most []float64, gaps []claim.Gap) {
	switch {
	case ad.Constituent != nil:
		return x.amount(ad)
	case ad.Property == claim.PH:
		return x.base(ad.PH, 1)
	case ad.Property == claim.Acidity:
		return x.base(acidity.EndPoints[0], acidity.AsGrams(1))
	}
	return x.property(ad.Property)
}

// base gives the base that brings a liquid to a pH, in mol or in grams of an acid. Acids that nobody has
// stated of a food are in it as they are drawn; that they may be others is a gap.
func (x addends) base(pH, factor float64) (least, most []float64, gaps []claim.Gap) {
	base, open := x.a.BaseTo(pH)
	least, most = make([]float64, len(base)), make([]float64, len(base))
	for d, b := range base {
		if least[d], most[d] = factor*b, factor*b; math.IsNaN(b) {
			least[d], most[d] = math.Inf(-1), math.Inf(1)
		}
	}
	if open || math.IsNaN(base[0]) {
		gaps = []claim.Gap{{What: openAcids}}
	}
	return least, most, gaps
}

// openAcids is the gap of a food whose acids nobody has stated.
const openAcids = "which acids it holds"

func isOpen(gaps []claim.Gap) bool { return len(gaps) > 0 && gaps[0].What == openAcids }

func (x addends) amount(ad claim.Addend) (least, most []float64, gaps []claim.Gap) {
	f, err := x.g.Amount(ad.Constituent, ad.Part)
	if err != nil { // it has no such part: nothing of it is in the part, all of it beside it
		if !ad.Part.Rest {
			none := constant(x.n, 0)
			return none, none, nil
		}
		ad.Part = claim.Part{}
		return x.amount(ad)
	}
	least, most = x.ends(f)
	return least, most, f.Gaps
}

func (x addends) property(p claim.Property) (least, most []float64, gaps []claim.Gap) {
	f, err := x.g.Property(p)
	if err != nil {
		f = claim.Figure{Known: []float64{0}, Gaps: []claim.Gap{{Most: []float64{math.Inf(1)}, What: err.Error()}}}
	}
	least, most = x.ends(f)
	size := claim.Volume
	switch p {
	case claim.Mass, claim.Volume:
		return least, most, f.Gaps
	case claim.Brix:
		size = claim.Mass
	}
	of, _, _ := x.property(size)
	return product(least, of), product(most, of), f.Gaps
}

func product(a, b []float64) []float64 {
	out := make([]float64, len(a))
	for d := range out {
		out[d] = a[d] * b[d]
	}
	return out
}

// ends are a figure with what is unknown at its least and at its most.
func (x addends) ends(f claim.Figure) (least, most []float64) {
	least, most = constant(x.n, 0), constant(x.n, 0)
	for d := range least {
		least[d] = f.Known[min(d, len(f.Known)-1)]
		most[d] = least[d]
		for _, g := range f.Gaps {
			if g.Loose {
				most[d] = math.Inf(1)
				continue
			}
			most[d] += g.Most[min(d, len(g.Most)-1)]
		}
	}
	return least, most
}

func constant(n int, x float64) []float64 { return estimate.Constant(n, x) }

// columns adds the figures of an assay up to what they are of each condition, less those of another, as
// far as a gram of so many has.
func (x addends) columns(list []condition, less *addends, grams float64) columns {
	var c columns
	for _, cond := range list {
		hurt, help := constant(x.n, 0), constant(x.n, 0)
		for _, t := range cond.Terms {
			least, most, gaps := x.of(t.Of)
			var off []float64
			if less != nil {
				off, _, _ = less.of(t.Of)
			}
			for d := range hurt {
				low, high := least[d], most[d]
				if off != nil {
					low, high = low-off[d], high-off[d]
				}
				if t.Times < 0 {
					low, high = high, low
				}
				hurt[d] += t.Times * low / grams
				add := t.Times * high / grams
				switch {
				case !isOpen(gaps):
				case x.mayHelp(t):
					add = math.Inf(1)
				default:
					add = min(add, 0)
				}
				help[d] += add
			}
		}
		c.hurt, c.help = append(c.hurt, hurt), append(c.help, help)
	}
	return c
}

// A food is measured in so much water, in which what is dry dissolves and has the room that it takes in a
// drink.
const (
	measured = 10.0 // g
	diluted  = 90.0 // g of water
)

// waterCup is the water of a cup alone.
var waterCup = fmt.Sprintf("drink: x\nserves: 1\nbuild:\n  - %g g ± 0 g core:water-pure\n", diluted)

// cup writes a drink that holds a food as it is prepared, and water.
func (l liquid) cup() string {
	text := "drink: x\nserves: 1\n"
	line := fmt.Sprintf("{food: %q, amount: %g g ± 0 g}", l.food.ID, measured)
	if l.by.Pot() {
		text += "components:\n" + l.pot("pot", "")
		line = fmt.Sprintf("%g g ± 0 g pot", measured)
	}
	return text + fmt.Sprintf("build:\n  - %s\n  - %g g ± 0 g core:water-pure\n", line, diluted)
}

// pot writes the pot in which a food is prepared, as it stands below components.
func (l liquid) pot(name, eol string) string {
	rows := []string{fmt.Sprintf("  %s:", quoted(name)), "    ingredients:"}
	for _, in := range l.by.ingredients {
		rows = append(rows, "      - "+quoted(strings.ReplaceAll(in, "{food}", l.food.ID.String())))
	}
	if len(l.by.steps) > 0 {
		rows = append(rows, "    steps:")
	}
	for _, step := range l.by.steps {
		rows = append(rows, "      - "+step)
	}
	if eol == "" {
		eol = "\n"
	}
	return strings.Join(rows, eol) + eol
}

// quoted puts what YAML would read otherwise into quotes.
func quoted(text string) string {
	if strings.ContainsAny(text, "#'\"{}[],&*!|>%@`\\") || strings.Contains(text, ": ") {
		return fmt.Sprintf("%q", text)
	}
	return text
}

// assayed calculates a cup.
func (s *search) assayed(ctx context.Context, text string, ens estimate.Ensemble) (*assay.Assay, error) {
	d, faults := drink.Parse("cup", []byte(text), nil)
	r, err := recipe.Find(ctx, d, faults, s.pantry)
	if err != nil {
		return nil, err
	}
	return assay.Prepare(r, ens).Run(ctx, nil, s.want)
}

// pantry is the foods that cups are made of.
type pantry map[food.ID]*food.Food

func newPantry(foods []*food.Food) pantry {
	p := pantry{}
	for _, f := range foods {
		p[f.ID] = f
	}
	p[prep.PureWater().ID] = prep.PureWater()
	return p
}

func (p pantry) Food(_ context.Context, id food.ID) (*food.Food, error) {
	if f, ok := p[id]; ok {
		return f, nil
	}
	return nil, fail.New(fail.Wrong, "there is no food "+id.String(), "")
}

func (p pantry) Named(context.Context, string) (food.ID, bool, error) { return food.ID{}, false, nil }

func (p pantry) Near(context.Context, string) []string { return nil }

var _ recipe.Foods = pantry{}
