package claims

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/assay"
	"sipsum/internal/claim"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/liquid"
	"sipsum/internal/note"
	"sipsum/internal/solution"
	"sipsum/internal/spelling"
)

// Declared reports whether an allergen is declared; an error says which words there are.
type Declared func(allergen string) (bool, error)

// Glass is a drink as claims ask of it. What they have asked is kept, for the next.
type Glass struct {
	assay    *assay.Assay
	declared Declared
	shelf    Shelf               // nil: foods are not ranked
	standFor map[food.ID]food.ID // own foods of a nearest world, by the food that they stand for
	kept     map[question]claim.Figure
	unknowns map[string]unknown // by the key of their gap
	remarks  []string           // of the last claim

	places  map[question]placed
	tables  entered
	drawn   []placed         // what the last claim ranked
	sweet   *claim.Figure    // once it was asked for
	factors []estimate.Entry // how sweet each substance is, in its draws
	among   string           // among how many foods the last claim ranked one; empty if it ranked none
}

// unknown is a figure of a food that nobody knows, and the most that a gram holds of it; NaN where
// nothing bounds it.
type unknown struct {
	food  *food.Food
	of    *constituent.Constituent
	bound float64
}

type question struct {
	of   constituent.ID
	part claim.Part
}

// NewGlass makes the drink of claims of an assay that was run with draws and chemistry.
func NewGlass(a *assay.Assay, declared Declared) *Glass {
	return &Glass{assay: a, declared: declared, kept: map[question]claim.Figure{}, unknowns: map[string]unknown{}, places: map[question]placed{}, tables: entered{}}
}

// RankBy gives the glass tables to rank foods of.
func (g *Glass) RankBy(s Shelf) *Glass {
	g.shelf = s
	return g
}

// stands gives the food that one stands for.
func (g *Glass) stands(id food.ID) food.ID {
	if other, ok := g.standFor[id]; ok {
		return other
	}
	return id
}

// Amount is what a part of the serving holds, in grams or kJ.
func (g *Glass) Amount(c *constituent.Constituent, of claim.Part) (claim.Figure, error) {
	part, err := g.find(of)
	if err != nil {
		return claim.Figure{}, err
	}
	if part.remark != "" && !slices.Contains(g.remarks, part.remark) {
		g.remarks = append(g.remarks, part.remark)
	}
	asked := question{c.ID, of}
	if f, ok := g.kept[asked]; ok {
		return f, nil
	}
	factor := 1.0
	if c.ID == constituent.EnergyKcal {
		factor = solution.KilojoulesOfAKilocalorie()
	}
	pot := g.assay.Serving
	sort := composition.SortOf(pot, c)
	f := claim.Figure{Known: make([]float64, pot.N)}
	for row, r := range pot.Rows {
		if part.holds(r) == of.Rest {
			continue
		}
		if below := faint(pot, row, c); below != nil {
			gap := g.gap(row, c, below, factor)
			gap.What = "how much " + c.Words() + " there is in " + shortName(r.Profile.Food) + ": less than could be found"
			f.Gaps = added(f.Gaps, gap)
		} else {
			for d, x := range sort.Of(row) {
				f.Known[d] += factor * x
			}
		}
		if most := sort.UnknownOf(row); most != nil {
			f.Gaps = added(f.Gaps, g.gap(row, c, most, factor))
		}
	}
	f.Unknown = f.Known[0] == 0 && len(f.Gaps) > 0
	g.kept[asked] = f
	return f, nil
}

// gap is what a row does not know of a constituent.
func (g *Glass) gap(row int, c *constituent.Constituent, most []float64, factor float64) claim.Gap {
	r := g.assay.Serving.Rows[row]
	f := r.Profile.Food
	gap := claim.Gap{Key: string(c.ID) + " of " + g.stands(f.ID).String(), Most: make([]float64, len(most)), What: c.Words() + " of " + shortName(f)}
	g.unknowns[gap.Key] = unknown{f, c, boundOf(r.Profile, c)}
	if math.IsNaN(most[0]) {
		most, gap.Loose = room(g.assay.Serving, row, c), true
	}
	for d, x := range most {
		gap.Most[d] = factor * x
	}
	of := []*constituent.Constituent{c}
	if c.Kind == constituent.Figure {
		if open := composition.OpenEnergy(g.assay.Serving, row); len(open) > 0 {
			of = open
			gap.What += " (its " + note.Listed(wordsOf(open)) + ")"
		}
	}
	gap.Settle, gap.Where = lineFor(f, of...)
	return gap
}

func wordsOf(list []*constituent.Constituent) []string {
	words := make([]string, len(list))
	for i, c := range list {
		words[i] = c.Words()
	}
	return words
}

// added joins the gaps of one food in several pots.
func added(list []claim.Gap, gap claim.Gap) []claim.Gap {
	for i := range list {
		if list[i].Key == gap.Key {
			for d, x := range gap.Most {
				list[i].Most[d] += x
			}
			list[i].Loose = list[i].Loose || gap.Loose
			return list
		}
	}
	return append(list, gap)
}

// lineFor is the line that states figures of a food.
func lineFor(f *food.Food, of ...*constituent.Constituent) (line, where string) {
	var values []string
	for _, c := range of {
		values = append(values, string(c.ID)+": … "+c.Unit)
	}
	value := strings.Join(values, ", ")
	if f.ID.Table == food.Own {
		return "values: {" + value + "}", "foods, " + f.ID.Code
	}
	return ownLine(f, value), "foods; then pour own:" + slug(f)
}

// ownLine writes a food of a table as an own food that borrows all but some values from it.
func ownLine(f *food.Food, values string) string {
	of := `name: "` + f.Name() + `"`
	if f.Group != "" {
		of += ", group: " + f.Group
	}
	if food.Stated(f.Density.GramsPerMl) {
		of += fmt.Sprintf(", density: %g g/ml", f.Density.GramsPerMl)
	}
	return slug(f) + ": {" + of + `, fill: "` + f.ID.String() + `", per: 100 g, values: {` + values + `}, source: "…"}`
}

// Property is what the drink is as a liquid.
func (g *Glass) Property(p claim.Property) (claim.Figure, error) {
	switch a := g.assay; p {
	case claim.Mass:
		return column(a.Mass, 1), nil
	case claim.Volume:
		return g.roomy(column(a.Volume, 1)), nil
	case claim.Strength:
		return g.strength()
	case claim.Sweetness:
		return g.sweetness(), nil
	}
	return g.solution(p)
}

// roomy gives a figure that hangs on the volume: where nobody knows how much room a food takes, no
// more of it is known than the lower end of its interval, and up to the upper end is a gap.
func (g *Glass) roomy(f claim.Figure) claim.Figure {
	if why := liquid.NoVolume(g.assay.Serving); why != "" {
		ends := estimate.Summarise(f.Known)
		f.Known = slices.Repeat([]float64{ends.Low}, len(f.Known))
		f.Gaps = append(f.Gaps, claim.Gap{
			Key: "volume", Most: []float64{ends.High - ends.Low}, What: "how much room it takes (" + why + ")",
			Settle: "density: … g/ml", Where: "foods, beside what they state",
		})
	}
	return f
}

// Contains reports whether an allergen is declared. What nobody declares may be there all the same.
func (g *Glass) Contains(allergen string) (bool, claim.Gap, error) {
	is, err := g.declared(allergen)
	if err != nil {
		return false, claim.Gap{}, fail.New(fail.Wrong, err.Error(), "see: sipsum allergens")
	}
	gap := claim.Gap{
		Key: "contains " + allergen, Most: []float64{1}, What: "whether there is " + allergen + " in it: nobody declares it, and that is no proof of absence",
		Where: "no line of the file shows that there is none: ask who made each food; an own food that has it states allergens: [" + allergen + "]",
	}
	if slices.ContainsFunc(g.assay.Drink.MayContain, func(w drink.Word) bool { return spelling.Plain(w.Text) == spelling.Plain(allergen) }) {
		gap.What = "whether there is " + allergen + " in it: by the file it may come in at the bar"
	}
	return is, gap, nil
}

// Remarks gives what must be known of how names were meant since it was asked last.
func (g *Glass) Remarks() []string {
	list := g.remarks
	g.remarks = nil
	return list
}
